"""No sentence of any calculator or ticket, on any ruler, says a word twice, speaks of one thing as of several, or gives
a share that is the whole."""

import ast
import re

import pytest

from calculators.asking.answering import Asking, answer, filled
from calculators.asking.declaration import InvalidInput
from calculators.asking.house_method import RULER_STEPS
from calculators.asking.site_method import site_method
from calculators.batch.walk import BATCH, go
from calculators.catalogue import catalogue
from calculators.drawing.picture import pictures_of
from calculators.faces.job.walk import walk_replies
from calculators.faces.page.answer_html import answer_html
from calculators.faces.page.form import form_html
from calculators.faces.ticket.sheets import ticket_sheets
from calculators.ticket.batch import batch_of
from calculators.values.kinds import Count
from calculators.values.phrase import without_marks
from scripts.tools.places import ROOT

RULERS = [f"{unit} {step}" for unit, steps in RULER_STEPS.items() for step in steps]
ONE_OF_EACH_UNIT = {f"{unit} {steps[-1]}" for unit, steps in RULER_STEPS.items()}
SENTENCES = ("p", "li", "dd", "dt", "td", "th", "h2", "h3", "h4", "label", "figcaption", "caption", "text")
TWICE = re.compile(r"\b([^\W\d_]+) \1\b", re.IGNORECASE)
A_SHARE = re.compile(r"(?<![\w.,€$£])([^ ,;:(]+(?: min)?), \1 (?:a piece|each)\b")


def several():
    """Every word for several that some sentence has beside its word for one: {n:piece|pieces}."""
    words = {"pieces", "bundles", "rows", "marks", "corners", "widths", "threads", "strips", "cuts", "drops"}
    for file in (ROOT / "calculators").rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text())):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                words |= set(re.findall(r"\{+\w+:[\w ]+\|([\w ]+)\}", node.value))
    return {word.split()[-1] for word in words}


ONE_AS_SEVERAL = re.compile(rf"(?<![\d.,/×⁄–-])\b1 (?:more |further |whole )?(?:{'|'.join(sorted(several()))})\b")


def faults(sentence):
    """What reads badly in a sentence."""
    plain = without_marks(sentence).replace("\N{NO-BREAK SPACE}", " ")
    return [
        plain[max(0, hit.start() - 40) : hit.end() + 20]
        for pattern in (TWICE, ONE_AS_SEVERAL, A_SHARE)
        for hit in pattern.finditer(plain)
    ]


def test_a_planted_fault_is_found():
    for bad in (
        "3/8 in in from the selvedge",
        "It gives 1 pieces.",
        "€12.00, €12.00 a piece",
        "1 more pieces",
        "The the",
    ):
        assert len(faults(bad)) == 1, bad
    for good in (
        "11 pieces",
        "0.1 pieces",
        "1 1/2 widths",
        "1 piece, 12 min a piece",
        "edge 1 is 2",
        "12 min, 2 min each",
    ):
        assert faults(good) == [], good


def of_elements(*parts):
    """The sentences of elements, and what is told of a drawing to those who do not see it."""
    for part in parts:
        for node in part.iter():
            if node.tag in SENTENCES and not any(inner.tag in SENTENCES for inner in list(node.iter())[1:]):
                yield "".join(node.itertext())
            yield from (node.get(name) for name in ("aria-label", "title") if node.get(name))


def of_calculator(calculator, asking):
    reply = answer(calculator, asking)
    yield from (filled(each, calculator, asking.ruler) for each in (reply.spoken, *reply.notes, *reply.working))
    yield from of_elements(*answer_html(calculator, reply, asking), form_html(calculator, asking, "here"))
    if calculator.drawing:
        drawn = calculator.drawing(reply.drawn_from, asking.ruler)
        for picture in pictures_of(drawn):
            yield from (picture.caption, *of_elements(picture.svg))


def questions(calculator):
    """As it stands, its worked examples, and with one of each thing that is counted."""
    one = {each.name: "1" for each in calculator.fields if isinstance(each.kind, Count)}
    yield from ({}, *(each.given for each in calculator.examples), one)
    yield from ({name: "1"} for name in one)


@pytest.mark.parametrize("calculator", catalogue().values(), ids=lambda each: each.name)
@pytest.mark.parametrize("ruler", RULERS)
def test_every_calculator_reads_well(calculator, ruler):
    """Other numbers than those it stands with are asked on one ruler of each unit: its steps have the same words."""
    found = set()
    for typed in questions(calculator) if ruler in ONE_OF_EACH_UNIT else [{}]:
        try:
            found |= {
                fault for each in of_calculator(calculator, Asking(typed, wanted_ruler=ruler)) for fault in faults(each)
            }
        except InvalidInput:
            continue
    assert found == set()


@pytest.mark.parametrize("ruler", RULERS)
@pytest.mark.parametrize("wanted", ["1", "2", "519"])
def test_every_ticket_and_batch_reads_well(ruler, wanted):
    method, found = site_method(), set()
    for cloth in ("3.2 m", "60 cm"):
        typed = {"order": {"ordered": wanted}, "wash-test": {"cloth_length": cloth}}
        typed["bundles"] = {"bundle": "1"} if wanted == "2" else {}
        asking = Asking({}, method=method, wanted_ruler=ruler)
        for reply in walk_replies(BATCH, typed, asking).values():
            found |= {fault for part in re.split(r"<[^>]*>", reply["answer"]) for fault in faults(part)}
        sheets = ticket_sheets("A batch", batch_of(go(BATCH, typed, asking), method), {}, [])
        found |= {fault for each in of_elements(*sheets) for fault in faults(each)}
    assert found == set()


def test_no_page_says_a_word_twice():
    pages = sorted((ROOT / "docs").rglob("*.md"))
    said = {page.name: faults(re.sub(r"\{\{.*?\}\}|`[^`]*`", "…", page.read_text())) for page in pages}
    assert {name: found for name, found in said.items() if found} == {}
