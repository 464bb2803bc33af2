"""The browser is killed at many moments while it saves as fast as it can, and its files are harmed as a kill may harm
them: every save that was acknowledged is there, none is half-written."""

import itertools
import threading
from pathlib import Path

import pytest

from scripts.after_pages import join_scripts
from scripts.bench.kill import FAULTS, FILLING, Side, beside, whole

SIDES, KILLS_A_SIDE = 2, 8  # `scripts/bench/kill.py` kills as often as one likes


@pytest.fixture
def scripts_alone(tmp_path: Path) -> Path:
    """A site of no more than the scripts."""
    join_scripts.join(tmp_path / "site/assets/javascript")
    return tmp_path / "site"


def killed(*sides: Side) -> None:
    threads = [threading.Thread(target=side.run) for side in sides]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert [side.faults for side in sides] == [[]] * len(sides)
    assert all(side.done == side.kills for side in sides)


def test_killed_at_many_moments_every_acknowledged_save_is_there(scripts_alone: Path, tmp_path: Path):
    sides = [
        Side(tmp_path, number, KILLS_A_SIDE, typed=0, site=scripts_alone, faults_of=lambda _: "nothing")
        for number in range(SIDES)
    ]
    killed(*sides)
    assert all(side.said.kept > KILLS_A_SIDE for side in sides), "each kill came after at least one save"
    assert all(side.said.beside for side in sides)


def test_whatever_a_kill_leaves_behind_costs_nothing(scripts_alone: Path, tmp_path: Path):
    """Chromium writes on behind a torn log, and throws the whole database away the time after."""
    in_turn = itertools.cycle(FAULTS)
    side = Side(tmp_path, 0, len(FAULTS), typed=0, site=scripts_alone, faults_of=lambda _: next(in_turn))
    killed(side)
    assert set(side.after) == set(FAULTS) and side.said.beside


def test_a_job_typed_into_on_its_page_survives_too(site: Path, tmp_path: Path):
    in_turn = itertools.cycle(["database gone", "nothing"])
    side = Side(tmp_path, 0, 2, typed=1, site=site, faults_of=lambda _: next(in_turn))
    killed(side)
    assert side.said.typed >= 2


@pytest.mark.parametrize(
    ("there", "acknowledged", "words"),
    [
        ([[1, 1, FILLING], [2, 2, FILLING]], 3, "3 was acknowledged"),
        ([[1, 1, FILLING], [3, 3, FILLING]], 3, "missing"), ([], 1, "1 was acknowledged"),
        ([[1, 1, FILLING - 1]], 1, "half-written"), ([[1, 2, FILLING]], 1, "half-written"),
    ],
)  # fmt: skip
def test_a_lost_or_half_written_save_would_be_found(there, acknowledged, words):
    assert any(words in fault for fault in whole(there, acknowledged))
    assert whole([[3, 3, FILLING], [4, 4, FILLING]], 4) == []


@pytest.mark.parametrize("others", [["4", "5", 0], ["5", "4", 0], ["", "5", 0], ["5", "", 1]])
def test_what_is_lost_beside_would_be_found(others):
    assert beside(["5", "5", 0], 5) == []
    assert len(beside(others, 5)) == 1


def test_a_loss_is_found_in_a_browser(scripts_alone: Path, tmp_path: Path):
    """Both stores gone at once is more than they can make good."""
    side = Side(tmp_path, 0, 1, typed=0, site=scripts_alone, faults_of=lambda _: "database gone")
    harm = side._harm
    side._harm = lambda *given: [harm(fault, *given[1:]) for fault in ("database gone", "journal gone")]
    side.run()
    assert any("was acknowledged" in fault for fault in side.faults)
