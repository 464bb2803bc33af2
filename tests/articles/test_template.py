"""Templates: every part that is no rectangle, closed, as large as it is cut, and on as many sheets as it takes."""

from functools import cache
from math import dist, pi

import pytest

from calculators.articles import articles
from calculators.articles.line import size_fields
from calculators.asking.answering import Asking, answer, filled
from calculators.asking.declaration import InvalidInput, Onward
from calculators.catalogue import calculator_named
from calculators.drawing.gauge import OVERLAP, PAPERS
from calculators.trade.articles.template import template_of

TEMPLATE = calculator_named("template")
#: Its point alone is drawn, on a page of its own.
ELSEWHERE = {"runner-pointed"}
with_template = pytest.mark.parametrize("name", [each.name for each in articles().values() if each.template])


@cache
def usual_made(name):
    """An article as the house has it."""
    return answer(calculator_named(name), Asking({})).drawn_from


def cut(gauge):
    return [line for line in gauge.lines if line.kind == "cut"]


def test_every_part_that_is_no_rectangle_has_a_template_or_one_like_it_has():
    for article in articles().values():
        shaped = {each.parts[0].part.name for each in usual_made(article.name).pieces
            if each.is_round or each.parts[0].part.slants}  # fmt: skip
        assert set(article.template) <= shaped
        assert bool(shaped) == bool(article.template) or article.name in ELSEWHERE, article.name


@with_template
def test_the_outline_is_closed_and_as_large_as_the_piece_is_cut(name):
    made = usual_made(name)
    for piece in made.pieces:
        if piece.parts[0].part.name not in articles()[name].template:
            continue
        gauge = template_of(piece, made.work, whole=True)
        outline = cut(gauge)
        for line, following in zip(outline, [*outline[1:], outline[0]]):
            assert dist([float(each) for each in line.end], [float(each) for each in following.start]) < 1e-6
        left, low, right, high = gauge.box
        assert (right - left, high - low) == pytest.approx((float(piece.width), float(piece.length)), abs=1e-6)


def test_a_circle_is_as_long_round_as_it_should_be():
    made = usual_made("bolster")
    (end,) = [each for each in made.pieces if each.is_round]
    length = sum(dist(line.start, line.end) for line in cut(template_of(end, made.work, whole=True)))
    assert length == pytest.approx(pi * float(end.width), rel=1e-4)
    quarter = template_of(end, made.work, whole=False)
    assert sum(dist(line.start, line.end) for line in cut(quarter)) == pytest.approx(length / 4, rel=1e-6)
    assert quarter.box[2] - quarter.box[0] == pytest.approx(float(end.width) / 2)


@with_template
@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_the_page_of_an_article_brings_its_measures(name, ruler):
    sizes = {each.name: "32 cm" for each in size_fields(articles()[name])}
    made = answer(calculator_named(name), Asking(sizes, wanted_ruler=ruler))
    (note,) = [each for each in made.notes if isinstance(each, Onward) and each.calculator == "template"]
    printed = answer(TEMPLATE, Asking(note.carries, wanted_ruler=ruler))
    piece = next(each for each in made.drawn_from.pieces if each.parts[0].part.name == articles()[name].template[0])
    halves = 2 if piece.is_round else 1
    assert halves * printed.results["template_width"] == pytest.approx(piece.width, abs=1e-6)
    assert len(TEMPLATE.drawing(printed.drawn_from, Asking({}).ruler).pictures) == printed.results["sheets"]


@pytest.mark.parametrize("by, is_quarter", [("18 cm", True), ("10 cm", False)])
def test_every_sheet_says_what_it_is_of_and_how_a_quarter_lies_on_the_cloth(by, is_quarter):
    """With 1.5 cm of seam an end of 10 cm is 13 cm wide, whole on one sheet; one of 18 cm is not: its quarter is."""
    found = answer(TEMPLATE, Asking({"article": "bolster", "size": "45 cm", "by": by}))
    pictures = TEMPLATE.drawing(found.drawn_from, Asking({}).ruler).pictures
    for caption in (each.caption.replace("\N{NO-BREAK SPACE}", " ") for each in pictures):
        assert caption.startswith(f"Bolster cover, 45 cm by {by} finished.")
        assert ("A quarter: both straight sides on the folds." in caption) == is_quarter


def test_sheets_that_overlap_reach_over_all_of_it():
    for paper, (width, height) in PAPERS.items():
        for size in ("12 cm", "40 cm", "77 cm"):
            asked = {"article": "mat-bordered", "size": size, "by": "30 cm", "paper": paper}
            found = answer(TEMPLATE, Asking(asked))
            (_, gauge, _), *_ = found.drawn_from[0]
            left, low, right, high = gauge.box
            across, up = 1, 1
            while width + (across - 1) * (width - OVERLAP) < right - left:
                across += 1
            while height + (up - 1) * (height - OVERLAP) < high - low:
                up += 1
            first = [
                each for each in TEMPLATE.drawing(found.drawn_from, Asking({}).ruler).pictures if "Top" in each.title
            ]
            assert len(first) == across * up


@pytest.mark.parametrize(
    "typed, field, told",
    [
        ({"article": "tablecloth-round", "size": "3 m", "by": "3 m"}, "size", "a tape held at its middle"),
        ({"article": "bolster", "size": "2 cm", "by": "18 cm"}, "article", "Bolster cover"),
        ({"article": "bolster", "measures": "Overlap 3 cm"}, "article", "none of its measures"),
    ],
)
def test_what_cannot_be_printed_is_said(typed, field, told):
    with pytest.raises(InvalidInput) as raised:
        answer(TEMPLATE, Asking(typed))
    assert told in filled(raised.value.sentences[field], TEMPLATE, Asking({}).ruler)
