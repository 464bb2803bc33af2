"""A length that is not zero is never shown as zero, on any ruler and any face, and a small one is shown as finely as it
is meant."""

import ast
import re
from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calculators.asking.answering import Asking, answer, filled
from calculators.asking.declaration import InvalidInput
from calculators.asking.house_method import RULER_STEPS
from calculators.asking.site_method import site_method
from calculators.batch.walk import BATCH, go
from calculators.catalogue import catalogue
from calculators.documents.house_method.sections import entries
from calculators.drawing.picture import pictures_of
from calculators.faces.page.answer_html import answer_html
from calculators.faces.page.markup import html
from calculators.faces.page.plain import plain_answer
from calculators.faces.page.sentence_number import value_text
from calculators.faces.ticket.sheets import ticket_sheets
from calculators.ticket.batch import batch_of
from calculators.ticket.care import corner_care
from calculators.ticket.steps import ticket_steps
from calculators.values.kinds import Length, Lengths, Table
from calculators.values.measure import MM_IN, Ruler, parse_length, show_divisions, show_length
from calculators.values.small_lengths import show_small
from scripts.tools.places import ROOT
from tests.catalogue.test_every_calculator import typed

COARSE = [Ruler("cm", F(1)), Ruler("mm", F(10)), Ruler("in", F(1))]
RULERS = [*(Ruler(unit, F(step)) for unit, steps in RULER_STEPS.items() for step in steps), *COARSE]
every_ruler = pytest.mark.parametrize("ruler", RULERS, ids=lambda each: f"{each.unit} {each.step}")
every_calculator = pytest.mark.parametrize("calculator", catalogue().values(), ids=lambda each: each.name)
A_HAIR = F(1, 10**6)
ABOUT_NOTHING = re.compile(r"about\s0\s|(?<![\d.,/])−?0\.0+\s(?:cm|mm|m|in|yd)\b")
NOTHING = re.compile(r"(?<![\d.,/])0 (?:cm|mm|m|in|yd|ft)\b")


def asking(ruler, typed=()):
    """A question on a ruler, coarser ones than any house has among them."""
    method = replace(site_method(), unit=ruler.unit, rulers={**site_method().rulers, ruler.unit: ruler})
    return Asking(dict(typed), method=method)


def reads(shown):
    """What a shown length comes to [mm]."""
    return parse_length(shown.removeprefix("about ").replace("−", "").replace("\N{NO-BREAK SPACE}", " "))


def faults(shown, value):
    """What is wrong with how a length [mm] is shown."""
    if abs(value) <= A_HAIR:
        return [] if NOTHING.search(shown) else [f"{shown} for nothing"]
    if shown.startswith("under "):
        return [] if abs(value) < reads(shown.removeprefix("under ")) else [f"{shown} for {float(value)} mm"]
    if not reads(shown):
        return [f"{shown} for {float(value)} mm"]
    too_far = abs(reads(shown) - abs(value)) > max(abs(value) / 8, F(254, 640) if shown.endswith("in") else F(1, 20))
    return [f"{shown} for {float(value)} mm, which is far off"] if too_far else []


def test_a_planted_fault_is_found():
    assert (
        faults("about 0 in", F(2))
        and faults("0 cm", F("0.4"))
        and faults("about 1/2 in", F(8))
        and faults("under 1/64 in", F(1))
    )
    assert not faults("5/64 in", F(2)) and not faults("under 1/64 in", F(1, 5)) and not faults("0 in", F(0))


@settings(max_examples=500)
@given(
    mm=st.fractions(F(1, 10**5), 40) | st.fractions(F(1, 10**5), 20_000) | st.floats(1e-5, 1e5).map(F),
    ruler=st.sampled_from(RULERS),
)
def test_no_length_is_shown_as_nothing_or_far_off(mm, ruler):
    assert faults(show_length(mm, ruler), mm) == []
    assert not NOTHING.search(show_length(mm, ruler, "down")) and not NOTHING.search(show_length(mm, ruler, "up"))
    if not show_length(mm, ruler, "down").startswith("under "):
        assert reads(show_length(mm, ruler, "down")) <= mm + A_HAIR
    assert reads(show_length(mm, ruler, "up")) >= mm - A_HAIR


@given(st.fractions(4, 10_000), st.sampled_from(RULERS))
def test_a_length_of_some_divisions_is_read_on_the_ruler_in_hand_and_no_finer(divisions, ruler):
    mm = divisions * ruler.step_mm
    assert show_length(mm, ruler) == show_divisions(mm, ruler)


@every_ruler
def test_every_small_measure_of_the_house_is_shown_as_finely_as_it_is_meant(ruler):
    """Stitch lengths, edge stitch, tolerances, allowances and thickness; turn and hem beside them."""
    method, found = site_method(), []
    names = [name for name in method.measures if name in entries() and isinstance(entries()[name].kind, Length)]
    assert {"stitch_hem", "edge_stitch", "tolerance_cut", "seam_allowance", "seam_thickness"} <= set(names)
    for name in names:
        for unit in ("cm", "in"):
            meant = entries()[name].kind.parse(method.measure(name, method.rulers[unit]), method.rulers[unit])
            found += faults(entries()[name].kind.show(meant, ruler), meant)
            found += faults(show_small(meant, ruler), meant) if meant < 50 else []
    assert found == []


def lengths_in(kind, value):
    """Every length in a result, with the kind that shows it."""
    if value is None:
        return
    if isinstance(kind, Length):
        yield kind, value
    elif isinstance(kind, Lengths):
        yield from ((Length(), each) for each in value)
    elif isinstance(kind, Table):
        for row in value:
            for column in kind.columns:
                yield from lengths_in(column.kind, row[column.name])


def shown_by(calculator, asked):
    """Everything a calculator shows: words and tables, drawing, and faults of every length among its results."""
    reply = answer(calculator, asked)
    found = []
    for result in calculator.results:
        for kind, value in lengths_in(result.kind, reply.results[result.name]):
            shown = kind.show(value, asked.ruler)
            if value and abs(value) > A_HAIR and NOTHING.search(shown):
                found.append(f"{result.name}: {shown} for {float(value)} mm")
    said = " ".join(filled(phrase, calculator, asked.ruler) for phrase in (reply.spoken, *reply.notes, *reply.working))
    pages = "".join(html(part) for part in answer_html(calculator, reply, asked))
    drawn = pictures_of(calculator.drawing(reply.drawn_from, asked.ruler)) if calculator.drawing else ()
    words = " ".join(
        [
            said,
            pages,
            str(plain_answer(calculator, asked)),
            *(
                " ".join(picture.svg.itertext()) + str(picture.svg.get("aria-label")) + picture.caption
                for picture in drawn
            ),
        ]
    )
    return found + [words[max(0, hit.start() - 40) : hit.end() + 20] for hit in ABOUT_NOTHING.finditer(words)]


@every_calculator
@every_ruler
def test_no_calculator_shows_a_length_as_nothing_on_any_ruler(calculator, ruler):
    for example in ({}, *(example.given for example in calculator.examples if ruler in COARSE)):
        try:
            assert shown_by(calculator, asking(ruler, example)) == []
        except InvalidInput:
            assert example  # written for another ruler's bare numbers


@every_calculator
@settings(max_examples=12, suppress_health_check=[HealthCheck.data_too_large, HealthCheck.too_slow])
@given(chance=st.randoms(use_true_random=False), ruler=st.sampled_from(RULERS))
def test_nor_whatever_its_blanks_let_through(calculator, chance, ruler):
    try:
        assert shown_by(calculator, asking(ruler, typed(calculator, chance))) == []
    except InvalidInput as refused:
        assert refused.sentences  # and the test above shows that not everything is


@every_ruler
def test_a_ticket_shows_no_length_as_nothing(ruler):
    """Sheet and machine view say the same words; measured sizes and what they are off by stand among them."""
    asked = asking(ruler)
    for written in (
        {},
        {"finished-size": {"hem": "1 in", "turn": "3/8 in"}, "mitre-marks": {"seam_allowance": "3 mm"}},
    ):
        batch = batch_of(go(BATCH, written, asked), asked.method)
        measured = [
            {"piece": "1", "width": "40.2 cm", "length": "40 cm", "diagonal_1": "56.6 cm", "diagonal_2": "56.4 cm"}
        ]
        words = " ".join(
            text for sheet in ticket_sheets("A batch", batch, {}, measured) for text in sheet.itertext()
        ).replace("\N{NO-BREAK SPACE}", " ")
        assert not ABOUT_NOTHING.search(words)
        assert [words[max(0, hit.start() - 60) : hit.end() + 20] for hit in NOTHING.finditer(words)] == []
        told = {
            step.key: " ".join(phrase.filled(ruler) for phrase in step.instructions) for step in ticket_steps(batch)
        }
        stitched = re.search(r"stitch (.+?) in from the inner edge", told["edge-stitch"], re.IGNORECASE) or re.search(
            r"stitch (.+?) from", told["edge-stitch"], re.IGNORECASE
        )
        assert stitched and not re.match(r"(about )?0\b", stitched.group(1)), told["edge-stitch"]
        assert all(not NOTHING.search(care.why.filled(ruler)) for care in corner_care(batch).values())


@pytest.mark.parametrize("text", ["1 mm", "0.5 mm", "1–3 mm", "1/16 in", "1/32–1/8 in", "0.2 mm"])
@every_ruler
def test_a_value_of_a_source_is_never_nothing_on_the_other_ruler(text, ruler):
    assert not re.search(r"\((about )?0[ –]", value_text(text, asking(ruler)))


def test_only_what_a_shop_cuts_is_shown_in_whole_divisions():
    """Whatever else shows a length goes through `show_length`, which never rounds to nothing."""
    named = {}
    for file in (ROOT / "calculators").rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text())):
            if isinstance(node, ast.ImportFrom) and node.module == "calculators.values.measure":
                named.setdefault(file.relative_to(ROOT).as_posix(), set()).update(each.name for each in node.names)
    assert [file for file, names in named.items() if "show_divisions" in names] == [
        "calculators/catalogue/curtains/fields.py"
    ]
    assert not [file for file, names in named.items() if any(name.startswith("_") for name in names)]
    assert MM_IN["yd"] / 8 > 100  # an eighth of a yard, rounded up to: never nothing
