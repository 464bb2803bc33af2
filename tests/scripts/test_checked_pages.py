"""The page that shows how each number was checked, and the part of it on every reference page."""

import pytest

from calculators.catalogue import catalogue
from calculators.faces.page.markup import html
from scripts.checked.cases import cases, why_fewer
from scripts.checked.pages import checked, held_against, in_numbers, summary


def lines(element) -> list[list[str]]:
    """The cells of every line of every table, as text."""
    return [
        ["".join(cell.itertext()).replace("\N{NO-BREAK SPACE}", " ") for cell in row]
        for row in element.iter("tr")
        if row.find("td") is not None
    ]


def test_every_case_has_a_line_with_what_was_given_printed_and_found():
    shown = lines(checked("../../"))
    assert len(shown) == len(cases())
    for case, (given, printed, ours, difference, source, seen) in zip(cases(), shown, strict=True):
        assert (given.lower(), printed) == (case.said.lower(), case.printed)
        assert ours and difference and source and seen


def test_what_was_rounded_away_is_shown():
    shown = {line[1]: line for line in lines(checked(""))}
    assert shown["3.26 yd"][2:4] == ["3.261 yd", "0.001 yd"]
    assert shown["31.04 in"][2:4] == ["31.04 in", "none"]


def test_it_is_said_whose_each_number_is():
    seen = {case.name: line[5] for case, line in zip(cases(), lines(checked("")), strict=True)}
    assert seen["cloth to buy for a hot wash"] == "read in a copy"
    assert seen["skew as a share of the width"] == "rule read in a copy, number ours"
    assert seen["four layers of 63 cm"] == "number ours"
    assert seen["corner to line at 110°"] == "worked out by a library"


@pytest.mark.parametrize("name", catalogue())
def test_a_reference_page_shows_its_values_or_why_there_are_few(name):
    text = html(held_against(catalogue()[name], "../../")[1])
    assert len([line for part in held_against(catalogue()[name], "") for line in lines(part)]) == sum(
        c.outside for c in cases() if c.calculator == name
    )
    assert why_fewer().get(name, "<table") in text


def test_the_numbers_told_are_those_of_the_data():
    many = in_numbers()
    assert many["printed"] + many["library"] + many["ours"] == len(cases())
    assert "".join(summary().itertext()).startswith(f"{many['printed']} values printed by {many['sources']} sources")
    assert many["printed"] >= 40 and many["cutting"] == 82
