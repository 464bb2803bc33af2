"""The boxes of the work ticket: ticked bundle by bundle, kept, and taken back."""

import json

import pytest
from bs4 import BeautifulSoup

from calculators.documents.job.reading import opened, written_down
from tests.faces.ticket_asked import ask


def test_boxes_are_by_bundle_and_five_hundred_pieces_have_few():
    few = BeautifulSoup(ask("ticket")["body"], "html.parser")
    assert [len(step.select(".box")) for step in few.select(".ticket-step")][:6] == [1, 1, 1, 1, 3, 3]
    body = ask("ticket", typed={"wash-test": {"cloth_length": "84 m"}, "bundles": {"bundle": "10"}})["body"]
    many = BeautifulSoup(body, "html.parser")
    assert "519 pieces" in many.select_one(".order").text
    assert max(len(step.select(".box")) for step in many.select(".ticket-step")) <= 10
    assert len(many.select(".size-line")) <= 10
    assert "One box is 6 bundles, 60 pieces" in many.select_one(".box-words").text


@pytest.mark.parametrize(
    ("ordered", "words"),
    [
        ("1", "One box is one piece: the number beside it is that piece’s."),
        ("12", "One box is a bundle, 6 pieces: the number beside it is the last of them."),
    ],
)
def test_what_a_box_stands_for_is_said_of_one_piece_too(ordered, words):
    page = BeautifulSoup(ask("ticket", typed={"order": {"ordered": ordered}})["body"], "html.parser")
    assert page.select_one(".box-words").text.split(" *")[0] == words


def test_a_tick_is_kept_and_taken_back():
    one = ask("ticket tick", title="T", step="hem", by=1)
    assert json.loads(one["loose"])["ticks"] == {"hem": 6} and "1 of 3 bundles done: 6 of 18 pieces." in one["done"]
    three = ask(
        "ticket tick",
        title="T",
        step="hem",
        by=1,
        kept=ask("ticket tick", title="T", step="hem", by=1, kept=one["loose"])["loose"],
    )
    assert "3 of 3 bundles done: 18 of 18 pieces." in three["done"]
    assert ask("ticket tick", title="T", step="hem", by=1, kept=three["loose"])["loose"] == three["loose"]
    back = ask("ticket tick", title="T", step="hem", by=-1, kept=one["loose"])
    assert "ticks" not in json.loads(back["loose"])
    once = ask("ticket tick", title="T", step="wash", by=1)
    assert json.loads(once["loose"])["ticks"] == {"wash": 1} and "Done." in once["done"]


def test_what_is_ticked_stands_in_the_sheets_again():
    kept = ask("ticket tick", title="T", step="hem", by=1)["loose"]
    body = BeautifulSoup(ask("ticket", kept=kept)["body"], "html.parser")
    assert len(body.select('[data-ticks="hem"] .box.ticked')) == 1 and not body.select(
        '[data-ticks="turn"] .box.ticked'
    )


def test_bundles_ticked_by_number_count_too():
    job = written_down(
        opened(
            {"format": "job", "version": 1, "id": "j", "name": "N", "walk": "batch", "ticks": {"hem": [1, 3]}}
        ).document
    )
    body = BeautifulSoup(ask("ticket", kind="job", kept=job)["body"], "html.parser")
    assert "2 of 3 bundles done" in body.select_one('[data-ticks="hem"] .count').text


def turn(kept, box, **more):
    return ask("ticket tick", title="T", step="hem", box=box, kept=kept, **more)


def test_any_box_is_ticked_and_taken_back_by_itself():
    third = turn("", 13)
    assert (
        json.loads(third["loose"])["ticks"] == {"hem": [3]} and "1 of 3 bundles done: 6 of 18 pieces." in third["done"]
    )
    boxes = BeautifulSoup(third["done"], "html.parser").select("[data-box]")
    assert [(box.get_text().lstrip("✓–"), box["aria-pressed"]) for box in boxes] == [
        ("Bundle 1: T, to piece 6", "false"),
        ("Bundle 2: T, to piece 12", "false"),
        ("Bundle 3: T, to piece 18", "true"),
    ]
    first = ask("ticket tick", title="T", step="hem", by=1, kept=third["loose"])
    assert json.loads(first["loose"])["ticks"] == {"hem": [1, 3]}, "one more is the first that lacks"
    whole = turn(first["loose"], 7)
    assert json.loads(whole["loose"])["ticks"] == {"hem": 18}, "in order again, as pieces"
    assert json.loads(turn(whole["loose"], 1)["loose"])["ticks"] == {"hem": [2, 3]}
    assert "ticks" not in json.loads(turn(third["loose"], 13)["loose"])
    back = ask("ticket tick", title="T", step="hem", by=-1, kept=first["loose"])
    assert json.loads(back["loose"])["ticks"] == {"hem": 6}
    assert turn(third["loose"], 99)["loose"] == third["loose"]


def test_a_box_for_several_bundles_shows_when_only_some_are_done():
    """90 pieces by 6 are 15 bundles, two a box, the last box one."""
    typed = {"wash-test": {"cloth_length": "16 m"}, "bundles": {"pieces": "90"}}
    one = ask("ticket tick", title="T", step="hem", by=1, typed=typed)
    boxes = BeautifulSoup(one["done"], "html.parser").select("[data-box]")
    assert [box["aria-pressed"] for box in boxes] == ["mixed", *["false"] * 7] and boxes[
        -1
    ].get_text() == "Bundle 15: T, to piece 90"
    assert json.loads(turn(one["loose"], 1, typed=typed)["loose"])["ticks"] == {"hem": 12}


def test_bundles_ticked_by_number_never_stand_for_other_pieces():
    """Bundle 3 of 6 is pieces 13 to 18: by 9 that is no whole bundle, by 3 it is the fifth and sixth, by 18 none."""
    third = turn("", 13)["loose"]
    for size, ticks in (("9", None), ("3", {"hem": [5, 6]}), ("18", None)):
        moved = ask("ticket settle", name="bundle", text=size, kept=third)
        assert moved["typed"]["text"] == size and json.loads(moved["loose"]).get("ticks") == ticks
    assert "loose" not in ask(
        "ticket settle", name="bundle", text="9", kept=ask("ticket tick", title="T", step="hem", by=1)["loose"]
    )


def test_two_windows_ticking_lose_nothing():
    base = ask("ticket tick", title="T", step="wash", by=1)["loose"]
    mine, theirs = (ask("ticket tick", title="T", step=step, by=1, kept=base)["loose"] for step in ("turn", "hem"))
    both = ask("loose merge", base=base, mine=mine, theirs=theirs)["loose"]
    assert json.loads(both)["ticks"] == {"wash": 1, "turn": 6, "hem": 6}


def test_a_loose_batch_keeps_nothing_that_the_walk_has():
    kept = json.loads(
        ask("ticket tick", title="T", step="hem", by=1, typed={"finished-size": {"hem": "3 cm"}})["loose"]
    )
    assert not {"typed", "method", "read_on"} & set(kept)


def test_a_job_keeps_ticks_sizes_and_what_is_settled_in_its_record():
    job = written_down(
        opened(
            {
                "format": "job",
                "version": 1,
                "id": "j",
                "name": "Long table",
                "walk": "batch",
                "typed": {"finished-size": {"hem": "3 cm"}},
            }
        ).document
    )
    ticked = ask("ticket tick", title="T", kind="job", kept=job, step="hem", by=1)["job"]
    settled = ask("ticket settle", kind="job", kept=ticked, name="bundle", text="9")["job"]
    named = ask("ticket settle", kind="job", kept=settled, name="cloth", text="Half linen, light")["job"]
    document = json.loads(named)
    assert (
        document["ticks"] == {"hem": 6}
        and document["typed"]["bundles"] == {"bundle": "9"}
        and document["cloth"] == "Half linen, light"
    )
    body = BeautifulSoup(ask("ticket", kind="job", kept=named)["body"], "html.parser")
    assert (
        body.select_one("h2").text == "Long table"
        and body.select_one("[data-setting=needle] dd").text == "80/12 universal"
    )
    assert "0 of 2 bundles done: 0 of 18 pieces, and 6 more." in body.select_one('[data-ticks="hem"] .count').text
