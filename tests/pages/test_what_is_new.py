"""What is new stands by day, the newest first."""

import re
from datetime import date, datetime

from scripts.tools.places import ROOT

PAGE = ROOT / "docs/reference/new.md"


def days(text: str) -> list[date]:
    return [datetime.strptime(heading, "%d %B %Y").date() for heading in re.findall(r"^## (.+)$", text, re.MULTILINE)]


def newest_first(found: list[date]) -> bool:
    return bool(found) and found == sorted(set(found), reverse=True)


def test_the_newest_day_leads():
    assert newest_first(days(PAGE.read_text(encoding="utf-8")))


def test_days_out_of_order_would_be_noticed():
    one, two = "## 2 May 2026\n", "## 3 May 2026\n"
    assert newest_first(days(two + one))
    assert not newest_first(days(one + two))
    assert not newest_first(days(one + one))
    assert not newest_first([])
