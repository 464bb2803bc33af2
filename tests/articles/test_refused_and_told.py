"""What an article refuses at a blank, and what it tells of a width of cloth that is just missed."""

from fractions import Fraction

import pytest

from calculators.articles import articles
from calculators.asking.answering import Asking, answer
from calculators.asking.declaration import InvalidInput, Onward
from calculators.catalogue import calculator_named
from calculators.trade.articles.operation import SeamKind
from calculators.trade.articles.work import MakingUp
from tests.articles.checks import finished_size, not_finished_once, out_of_order, too_narrow_to_turn
from tests.sentences import is_one_message

REFUSED = [
    ("tablecloth", {"table_width": "0"}, "table_width"),
    ("tablecloth-joined", {"table_width": "0"}, "table_width"),
    ("tablecloth-joined", {"table_width": "60 cm", "drop": "20 cm", "cloth_width": "150 cm"}, "cloth_width"),
    ("tablecloth-joined", {"table_width": "90 cm", "drop": "30 cm", "cloth_width": "153 cm"}, "drop"),
    ("tablecloth-joined", {"cloth_width": "12 cm", "selvedge": "0"}, "cloth_width"),
    ("runner-pointed", {"point": "120 cm"}, "point"),
    ("runner-pointed", {"point": "110 cm"}, "point"),
    ("runner-pointed", {"point": "3 cm"}, "point"),
    ("mat-bordered", {"border": "17 cm"}, "border"),
    ("mat-bordered", {"border": "16 cm", "turn": "1 cm"}, "border"),
    ("placemat", {"hem": "20 cm"}, "hem"),
    ("curtain", {"cloth_width": "8 cm", "selvedge": "0"}, "cloth_width"),
    ("curtain", {"side_turn": "3 cm"}, "side_turn"),
    ("curtain", {"lower_hem": "3 m", "lower_turn": "1 cm"}, "lower_hem"),
    ("curtain-lined", {"back": "5 cm"}, "back"),
    ("curtain-sheer", {"drop": "290 cm"}, "drop"),
    ("curtain-tab-top", {"tab": "2 m"}, "tab"),
    ("valance", {"drop": "10 cm"}, "drop"),
    ("tie-back", {"gap": "60 cm"}, "gap"),
    ("roman-blind", {"rail": "149 cm"}, "rail"),
    ("roman-blind", {"fold": "2 cm", "drop": "20 m"}, "fold"),
    ("apron", {"bib": "80 cm"}, "bib"),
    ("cushion-piped", {"shut": "20 cm"}, "shut"),
    ("oven-glove", {"pocket": "40 cm"}, "pocket"),
    ("oven-glove", {"pocket": "2 cm"}, "pocket"),
]


@pytest.mark.parametrize("name, typed, field", REFUSED)
def test_measures_that_cannot_be_made_are_refused_in_one_sentence_at_their_blank(name, typed, field):
    calculator = calculator_named(name)
    with pytest.raises(InvalidInput) as refused:
        answer(calculator, Asking(typed))
    assert list(refused.value.sentences) == [field]
    shown = refused.value.sentences[field].filled(Asking({}).ruler, calculator.kinds)
    assert is_one_message(shown), shown


def told(name, **typed):
    """The notes of an article, as they are read, without the ways on to other pages."""
    calculator = calculator_named(name)
    asking = Asking(typed)
    notes = [each for each in answer(calculator, asking).notes if not isinstance(each, Onward)]
    return [note.filled(asking.ruler, calculator.kinds) for note in notes]


JUST_MISSED = [
    ("tablecloth", {"table_width": "90 cm", "table_length": "160 cm", "cloth_width": "147 cm"}, "30 cm"),
    ("tablecloth-round", {"table_width": "100 cm", "table_length": "100 cm", "cloth_width": "144 cm"}, "25 cm"),
    ("tablecloth-joined", {"table_width": "90 cm", "table_length": "160 cm", "cloth_width": "138 cm"}, "35 cm"),
    ("tablecloth-joined", {"table_width": "220 cm", "table_length": "260 cm", "cloth_width": "138 cm"}, "40 cm"),
    ("tablecloth-joined", {"table_width": "345 cm", "table_length": "400 cm", "cloth_width": "138 cm"}, "45 cm"),
]


@pytest.mark.parametrize("name, typed, drop", JUST_MISSED)
def test_the_smaller_drop_that_is_told_saves_a_width_and_a_larger_one_does_not(name, typed, drop):
    typed = {**typed, "measured": "trimmed"}
    *_, note = told(name, **typed, drop=drop)
    offered = Fraction(note.split("a drop of ")[1].split(" cm")[0])
    assert offered < Fraction(drop.split()[0])
    assert lengths_of(name, typed, f"{float(offered)} cm") < lengths_of(name, typed, drop)
    assert lengths_of(name, typed, f"{float(offered) + 0.3:.1f} cm") >= lengths_of(name, typed, drop)


def lengths_of(name, typed, drop):
    """How many lengths of cloth and seams a tablecloth with such a drop takes, of which nothing is told where it comes
    out of one."""
    try:
        notes = told(name, **typed, drop=drop)
    except InvalidInput as refused:
        return 1 if "cloth_width" in refused.sentences else 99  # no join is needed, or a side that is all hem
    joined = [note for note in notes if note.startswith("It takes")]
    return 2 if not joined and notes else 1 if not joined else int(joined[0].split()[2]) + ("seams" in notes[-1])


def test_a_cloth_that_is_wide_enough_tells_nothing():
    assert told("tablecloth", cloth_width="160 cm", measured="trimmed") == []
    assert told("valance", rod="50 cm", cloth_width="160 cm", measured="trimmed") == []
    assert len(told("valance", rod="60 cm", cloth_width="160 cm", measured="trimmed")) == 1
    assert len(articles()) >= 28


@pytest.mark.parametrize(
    "drop, rail, fold", [("150 cm", "6.5 cm", "21 cm"), ("173 cm", "8 cm", "17 cm"), ("40 cm", "0", "30 cm")]
)
def test_a_blind_drawn_up_on_its_rods_ends_level(drop, rail, fold):
    """Drawn up, all rods lie below the rail: the part below the lowest hangs down from it, every other in a loop."""
    calculator = calculator_named("roman-blind")
    answered = answer(calculator, Asking({"drop": drop, "rail": rail, "fold": fold, "casing": "1 cm", "turn": "3 mm"}))
    (rods,) = (each for each in answered.drawn_from.work.operations if each.across)
    heights = [high for _, high in rods.across]
    below_the_rail = 10 * (Fraction(drop.split()[0]) - Fraction(rail.split()[0]))
    loops = [(high - low) / 2 for low, high in zip(heights, [*heights[1:], below_the_rail])]
    assert {heights[0], *loops} == {heights[0]} and heights[0] <= 10 * Fraction(fold.split()[0])
    _, flat = calculator.drawing(answered.drawn_from, Asking({}).ruler)
    assert sum("stitch" in (line.get("class") or "") for line in flat.svg.iter()) == len(heights)


def band(gap=Fraction(100), opening=Fraction(100)):
    """A band folded lengthwise, turned out through a gap."""
    work = MakingUp()
    front, back = (work.rectangle(name, Fraction(600), Fraction(80)) for name in ("front", "back"))
    work.fold(front.bottom, back.bottom)
    work.seam((front.left, back.left), (front.right, back.right), (front.top.between(0, 500), back.top.between(0, 500)),
        kind=SeamKind("plain seam", Fraction(15)))  # fmt: skip
    work.turn_out(opening)
    work.close_gap(front.top.between(600 - gap, 600), back.top.between(600 - gap, 600), Fraction(15))
    return work


def test_a_gap_is_closed_after_the_turning_and_one_that_is_too_small_or_left_open_is_found():
    good = band()
    assert not (not_finished_once(good) or list(out_of_order(good)) or too_narrow_to_turn(good))
    assert finished_size(good) == (600, 80)
    assert too_narrow_to_turn(band(opening=Fraction(101)))
    assert not_finished_once(band(gap=Fraction(90))) == ["front, top", "back, top"]
    good.operations.pop()
    assert not_finished_once(good) == ["front, top", "back, top"] and too_narrow_to_turn(good)
