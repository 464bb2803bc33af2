"""Live numbers that stand together belong to one calculation: on every page, in every sentence and in a list with what
introduces it."""

import json
from itertools import chain

import pytest
from bs4 import BeautifulSoup

BLOCKS = ["p", "li", "td", "dd", "dt", "figcaption"]


def mixed(page_html: str) -> list[str]:
    """Blocks of a page in which numbers of one calculator come from two calculations."""
    page = BeautifulSoup(page_html, "html.parser")
    blocks = [[block] for block in page.find_all(BLOCKS)]
    for before in page.find_all("p"):
        after = before.find_next_sibling()
        if before.get_text().rstrip().endswith(":") and after is not None and after.name in ("ul", "ol"):
            blocks.append([before, after])
    found = []
    for block in blocks:
        calculations: dict[str, set[str]] = {}
        for number in chain.from_iterable(part.select("[data-number]") for part in block):
            wanted = json.loads(number["data-number"])
            calculations.setdefault(wanted["calculator"], set()).add(json.dumps(wanted["given"], sort_keys=True))
        found += [
            f"{name}: {' and '.join(sorted(given))} in “{block[0].get_text()[:60]}”"
            for name, given in calculations.items()
            if len(given) > 1
        ]
    return found


def test_no_page_mixes_two_calculations_in_what_stands_together(site):
    assert [
        (page.relative_to(site).as_posix(), fault)
        for page in site.rglob("*.html")
        for fault in mixed(page.read_text(encoding="utf-8"))
    ] == []


@pytest.mark.parametrize("between", ["</p><ul><li>", " and "])
def test_a_planted_fault_is_found(between):
    one, other = (
        f"<span data-number='{json.dumps({'calculator': 'curtains', 'result': name, 'given': given})}'>1</span>"
        for name, given in (("rod", {}), ("widths", {"gathered": "flat"}))
    )
    assert mixed(f"<p>For {one}:{between}{other}")
