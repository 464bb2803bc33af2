"""The browser is killed while what was typed is not yet where browsers keep it for good: everything stands there again.
How soon a kill may come is measured by `scripts/bench/leave.py`; here the machine may be busy."""

from pathlib import Path

import pytest
from playwright.sync_api import Playwright

from scripts.bench.leave import PLACES, left_once, reading

TIMES = 2
SOON = 1  # [s] browsers take five and more


@pytest.mark.parametrize("place", [PLACES[0], PLACES[3]], ids=["job", "numbers of no job"])
def test_killed_at_once_nothing_typed_is_lost(playwright: Playwright, served: str, tmp_path: Path, place):
    with reading(playwright, f"{served}/", tmp_path) as reader:
        lost = [fault for number in range(1, TIMES + 1) for fault in left_once(reader, place, "kill", number, SOON)]
    assert lost == []
