"""Sizes measured on the work ticket: compared, kept, and counted together."""

import json

import pytest
from bs4 import BeautifulSoup

from tests.faces.ticket_asked import ask


def test_a_measured_size_is_kept_with_its_unit_and_compared():
    reply = ask("ticket size", piece="7", side="width", text="40.2")
    assert (reply["shown"], reply["said"], reply["within"]) == (
        "40.2 cm",
        "2 mm wider than the ticket says; within 4 mm.",
        True,
    )
    body = BeautifulSoup(ask("ticket", kept=reply["loose"])["body"], "html.parser")
    assert body.select_one('[name="7.width"]')["value"] == "40.2 cm"
    assert "2\N{NO-BREAK SPACE}mm wider" in body.select_one('[data-size="7.width"]').text
    emptied = ask("ticket size", piece="7", side="width", text=" ", kept=reply["loose"])
    assert json.loads(emptied["loose"])["measured"] == [{"piece": "7"}]


def lines(body):
    return BeautifulSoup(body, "html.parser").select(".sizes .size-line")


@pytest.mark.parametrize(
    ("bundle", "pieces"),
    [("18", "1 2 3 4 5"), ("6", "1 2 7 8 13"), ("4", "1 5 9 13 17"), ("2", "1 3 5 7 9 11 13 15 17")],
)
def test_five_pieces_can_be_measured_and_one_of_every_box(bundle, pieces):
    made = lines(ask("ticket", typed={"bundles": {"bundle": bundle}})["body"])
    assert [line.select_one("input")["name"].removesuffix(".width") for line in made] == pieces.split()
    assert all(
        [blank["name"].partition(".")[2] for blank in line.select("input")]
        == ["width", "length", "diagonal_1", "diagonal_2", "note"]
        for line in made
    )
    assert len({line["aria-label"] for line in made}) == len(made)


def test_fewer_pieces_than_five_have_a_line_each():
    made = lines(ask("ticket", typed={"bundles": {"pieces": "3"}})["body"])
    assert [line.select_one("input")["name"] for line in made] == ["1.width", "2.width", "3.width"]


def measure(kept, **texts):
    reply = {}
    for place, text in texts.items():
        piece, side = place.lstrip("_").split("_", 1)
        reply = ask("ticket size", piece=piece, side=side, text=text, kept=kept)
        kept = reply["loose"]
    return reply


def test_squareness_is_said_once_both_diagonals_are_written_down():
    one = measure("", _1_diagonal_1="56.6")
    assert (one["said"], one["square"], one["is_square"]) == ("", "", True)
    both = measure(one["loose"], _1_diagonal_2="57.2")
    assert (both["square"], both["is_square"]) == (
        "The diagonals differ by 6 mm, more than the 5 mm allowed: not square, put it aside.",
        False,
    )
    assert json.loads(both["loose"])["measured"] == [{"piece": "1", "diagonal_1": "56.6 cm", "diagonal_2": "57.2 cm"}]
    (place,) = BeautifulSoup(ask("ticket", kept=both["loose"])["body"], "html.parser").select('[data-size="1.square"]')
    assert "differ by 6" in place.text and "off" in place["class"]
    taken_back = measure(both["loose"], _1_diagonal_2="")
    assert (taken_back["square"], taken_back["is_square"]) == ("", True)


def test_mean_and_spread_are_of_what_was_typed_and_of_nothing_else():
    one = measure("", _1_width="40.2", _7_length="40")
    assert one["all"] == "", "of one piece there is no mean"
    two = BeautifulSoup(measure(one["loose"], _7_width="39.8")["all"], "html.parser")
    (said,) = (each.text.replace("\N{NO-BREAK SPACE}", " ") for each in two.select("p"))
    assert (
        said == "Width of 2 pieces: 40 cm on average, as the ticket says; from the smallest to the largest it is 4 mm."
    )


def test_a_line_that_cannot_be_read_has_no_part_in_the_mean():
    measured = [
        {"piece": "1", "width": "40 cm"},
        {"piece": "2", "width": "banana"},
        {"piece": "99", "width": "41 cm"},
        {"piece": "7", "width": "40.2 cm"},
    ]
    body = BeautifulSoup(
        ask(
            "ticket",
            kept=json.dumps(
                {"format": "job", "version": 2, "id": "batch", "name": "B", "walk": "batch", "measured": measured}
            ),
        )["body"],
        "html.parser",
    )
    assert "Width of 2" in body.select_one(".all-sizes").text and "99, 41" in body.select(".size-line")[-1].text


def test_a_bad_size_is_kept_as_it_was_typed_with_one_sentence_and_no_part_in_the_mean():
    reply = ask("ticket size", piece="7", side="width", text=" 40 x 40 ")
    assert (
        "not a length" in reply["refusal"]
        and reply["shown"] == "40 x 40"
        and not reply["within"]
        and reply["all"] == ""
    )
    assert json.loads(reply["loose"])["measured"] == [{"piece": "7", "width": "40 x 40"}]
    body = BeautifulSoup(ask("ticket", kept=reply["loose"])["body"], "html.parser")
    assert (
        body.select_one('[name="7.width"]')["value"] == "40 x 40"
        and body.select_one('[name="7.width"]')["aria-invalid"] == "true"
    )
    assert "not a length" in body.select_one('[data-size="7.width"]').text
    assert not body.select_one('[name="7.length"]').has_attr("aria-invalid")


def test_a_size_too_long_to_be_one_is_refused_and_not_kept():
    reply = ask("ticket size", piece="7", side="width", text="4" * 500)
    assert set(reply) == {"refusal", "final"} and reply["refusal"]
