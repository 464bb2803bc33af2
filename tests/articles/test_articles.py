"""What holds for every article, whatever is asked, and that each check finds a fault."""

from dataclasses import replace
from fractions import Fraction
from functools import cache
from types import SimpleNamespace

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st

from calculators.articles import articles
from calculators.articles.calculator import made
from calculators.asking.answering import Asking, answer, read
from calculators.asking.declaration import InvalidInput
from calculators.catalogue import calculator_named
from calculators.trade.articles.cutting import ArticlePiece, cut_pieces
from calculators.trade.articles.finishes import HEM
from calculators.trade.articles.operation import SeamKind
from calculators.trade.articles.work import MakingUp
from calculators.trade.sections.edge import EdgeMeasures
from calculators.trade.sections.edges import EDGES
from calculators.values.kinds import Length
from tests.articles.checks import (
    cut_amiss,
    cut_unlike,
    do_not_meet,
    do_not_walk,
    finished_size,
    hang_beside_an_edge,
    left_inside_out,
    not_finished_once,
    out_of_order,
    too_narrow_to_turn,
)
from tests.articles.work_checks import amiss

every_article = pytest.mark.parametrize("article", articles().values(), ids=lambda each: each.name)
FLAT = [each for each in articles().values() if not each.is_bent]
every_flat_article = pytest.mark.parametrize("article", FLAT, ids=lambda each: each.name)
PLAIN = SeamKind("plain seam", Fraction(10), 1, "plain")


@cache
def usual(name):
    """The value of every blank as the house has it."""
    return read(calculator_named(name), Asking({}))


#: Every share from a quarter to four times with a denominator up to 97: one draw takes one of them.
_SHARES = sorted({Fraction(over, under) for under in range(1, 98) for over in range(-(-under // 4), 4 * under + 1)})
SHARES = st.integers(0, len(_SHARES) - 1).map(_SHARES.__getitem__)


@cache  # an article is long to write out, which is done for every strategy
def lopsided(name):
    """Measures that no two sides share, from a quarter of the usual ones to four times as much."""
    article = articles()[name]
    choices = {
        field.name: SHARES if isinstance(field.kind, Length) else st.sampled_from(sorted(field.kind.choices))
        for field in article.fields
        if isinstance(field.kind, Length) or field.kind.choices
    }
    lengths = {field.name for field in article.fields if isinstance(field.kind, Length)}

    def put_down(drawn):
        values = dict(usual(name))
        for field, each in drawn.items():
            values[field] = values[field] * each if field in lengths else each
        try:
            return made(article, SimpleNamespace(**values))
        except InvalidInput:
            reject()

    return st.fixed_dictionaries(choices).map(put_down)


@every_article
@settings(max_examples=40)
@given(data=st.data())
def test_every_edge_is_finished_once_and_what_is_joined_is_equally_long(article, data):
    work = data.draw(lopsided(article.name)).work
    assert not_finished_once(work) == []
    assert do_not_walk(work) == []


@every_flat_article
@settings(max_examples=40)
@given(data=st.data())
def test_made_up_it_has_the_size_asked_for(article, data):
    it = data.draw(lopsided(article.name))
    assert do_not_meet(it.work) == []
    assert finished_size(it.work) == it.size


@every_article
@settings(max_examples=40)
@given(data=st.data())
def test_its_order_of_work_can_be_done(article, data):
    it = data.draw(lopsided(article.name))
    assert list(out_of_order(it.work)) == [] and left_inside_out(it.work) == []
    assert not too_narrow_to_turn(it.work)
    assert amiss(it.work, article.is_bent) == []
    assert hang_beside_an_edge(it.work) == []


@every_article
@settings(max_examples=40)
@given(data=st.data())
def test_its_pieces_are_those_it_names_and_its_edges_take_what_their_sections_show(article, data):
    it = data.draw(lopsided(article.name))
    cut = [piece.parts[0].part.name for piece in it.pieces]
    assert cut == [each for each in article.cut if each in cut or each not in article.not_always]
    assert cut_unlike(it.work) == [] and [each for piece in it.pieces for each in cut_amiss(piece)] == []
    assert all(piece.width > 0 and piece.length > 0 for piece in it.pieces)
    for operation in it.work.operations:
        for finish in operation.finishes:
            if operation.section:
                takes = _of_the_section(operation)
                assert finish.takes == takes, (operation.verb, finish)


def _of_the_section(operation):
    turn, hem = (operation.lengths.get(name, Fraction(10)) for name in ("turn", "hem"))
    allowance = operation.lengths.get("allowance", Fraction(10))
    edge = EDGES[operation.section]
    return edge.takes(edge.steps(EdgeMeasures(turn, hem, min(Fraction(1), hem / 2), allowance))[-1].section)


@every_article
def test_its_steps_are_told_with_their_lengths_and_drawn(article):
    calculator = calculator_named(article.name)
    asking = Asking({})
    drawn = answer(calculator, asking).drawn_from
    for picture in calculator.steps(drawn, asking.ruler).pictures:
        assert picture.told.do.endswith(".") and "{" not in f"{picture.told}"
        assert (
            any("at-work" in (node.get("class") or "") for node in picture.svg.iter())
            or "turn" in picture.title.lower()
        )


def cushion(overlap=Fraction(40), hem_takes=None):
    """A cushion with an overlap, or one whose backs only meet."""
    work = MakingUp()
    front = work.rectangle("front", Fraction(300), Fraction(410))
    upper = work.rectangle("upper", Fraction(300), Fraction(200) + overlap)
    lower = work.rectangle("lower", Fraction(300), Fraction(210))
    work.hem(upper.bottom, lower.top, turn=Fraction(5), hem=Fraction(20))
    work.seam(
        (front.top, upper.top), (front.bottom, lower.bottom),
        (front.left.between(170, 410), upper.left), (front.left.between(0, 210), lower.left),
        (front.right.between(170, 410), upper.right), (front.right.between(0, 210), lower.right),
        kind=PLAIN,
    )  # fmt: skip
    work.turn_out(Fraction(300))
    return work


def test_a_good_cushion_has_no_fault():
    work = cushion()
    assert not (not_finished_once(work) or do_not_walk(work) or do_not_meet(work) or list(out_of_order(work)))
    assert finished_size(work) == (300, 410) and not too_narrow_to_turn(work)
    assert [(piece.width, piece.length) for piece in cut_pieces(work)] == [(320, 430), (320, 275), (320, 245)]


def test_an_overlap_that_was_forgotten_is_found():
    assert do_not_walk(cushion(overlap=Fraction(0))) and do_not_meet(cushion(overlap=Fraction(0)))


def test_an_edge_finished_twice_or_not_at_all_is_found():
    work = cushion()
    work.hem(work.parts[0].top, turn=Fraction(5), hem=Fraction(20))
    assert not_finished_once(work) == ["front, top"]
    work = cushion()
    work.operations.pop(0)
    assert not_finished_once(work) == ["upper, bottom", "lower, top"]


def test_a_hem_after_the_seams_and_a_turning_out_before_them_are_found():
    work = cushion()
    work.operations.append(work.operations.pop(0))
    work.operations.insert(0, work.operations.pop(1))
    assert len(list(out_of_order(work))) == 2


def test_a_cover_that_is_never_turned_out_is_found():
    work = cushion()
    assert left_inside_out(work) == []
    work.operations.pop()
    assert left_inside_out(work) == ["front and upper", "front and lower"]


def test_an_opening_that_is_too_small_to_turn_is_found():
    work = cushion()
    work.turn_out(Fraction(301))
    assert too_narrow_to_turn(work)


def test_a_hem_that_takes_only_its_depth_is_found():
    work = cushion()
    operation = work.operations[0]
    short = replace(operation, finishes=tuple(replace(each, takes=each.hem) for each in operation.finishes))
    assert short.finishes[0].how == HEM and short.finishes[0].takes != _of_the_section(short)


def test_a_part_that_is_joined_to_nothing_and_one_joined_a_corner_late_are_found():
    work = cushion()
    work.rectangle("stray", Fraction(100), Fraction(100))
    assert "stray hangs on nothing" in do_not_meet(work)
    work = MakingUp()
    top = work.rectangle("top", Fraction(300), Fraction(400))
    strip = work.rectangle("strip", Fraction(300), Fraction(50))
    side = work.rectangle("side", Fraction(400), Fraction(50))
    work.seam((top.bottom, strip.top), (top.right, side.top), (strip.left, side.left), kind=PLAIN, angle=90)
    assert do_not_meet(work)


def pointed(takes=Fraction(30)):
    """A runner 600 mm wide, its end a triangle of 300, 400 and 500 mm."""
    work = MakingUp()
    runner = work.slanted("runner", Fraction(600), Fraction(2000),
        dict.fromkeys(("top left", "top right", "bottom left", "bottom right"), (Fraction(300), Fraction(400))),
    )  # fmt: skip
    work.hem(*runner.around, turn=Fraction(10), hem=takes - 10)
    return work


def test_a_pointed_end_is_cut_longer_than_its_hem_is_deep():
    (piece,) = cut_pieces(pointed())
    assert (piece.width, round(piece.length, 6)) == (660, 2100) and cut_amiss(piece) == []
    assert not_finished_once(pointed()) == [] and finished_size(pointed()) == (600, 2000)
    assert [side for side in piece.parts[0].part.sides if side in ("top", "bottom")] == []


def test_a_slant_cut_as_if_it_were_level_is_found():
    class Naive(ArticlePiece):
        def cut_sides(self, laid):
            """Every side moved straight across or up."""
            return {
                side: tuple((x + 30 * (1 if x else -1), y + 30 * (1 if y else -1)) for x, y in ends)
                for side, ends in super().cut_sides(replace(laid)).items()
            }

    (piece,) = cut_pieces(pointed())
    assert cut_amiss(Naive(piece.parts, {}))


def test_parts_that_are_cut_alike_but_take_up_unlike_are_found():
    work = MakingUp()
    one = work.rectangle("one", Fraction(300), Fraction(400))
    other = work.rectangle("other", Fraction(300), Fraction(400), like="one")
    work.hem(*one.around, *other.around, turn=Fraction(5), hem=Fraction(20))
    assert cut_unlike(work) == [] and [piece.count for piece in cut_pieces(work)] == [2]
    work.hem(other.top, turn=Fraction(5), hem=Fraction(30))
    assert cut_unlike(work) == ["other"]


def bordered(inset=Fraction(40), mitre=Fraction(40)):
    """A mat with one strip of its border laid on."""
    work = MakingUp()
    mat = work.rectangle("mat", Fraction(450), Fraction(330))
    slant = mitre, Fraction(40)
    top = work.slanted("top border", Fraction(450), Fraction(40), {"bottom left": slant, "bottom right": slant})
    work.seam((mat.top, top.top), kind=PLAIN)
    work.lay_on((mat.top.between(40, 410), top.bottom), inset=inset, turn=Fraction(10), do="Stitch it down")
    return work


def test_a_border_that_is_laid_on_wider_than_it_is_and_one_with_a_false_mitre_are_found():
    assert do_not_meet(bordered()) == [] and do_not_walk(bordered()) == []
    assert do_not_meet(bordered(inset=Fraction(45))) and do_not_walk(bordered(mitre=Fraction(45)))
