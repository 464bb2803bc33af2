"""Numbers of single articles that no result shows, counted by hand: pieces of a kind, buttons, tabs, rods, what is
told."""

from fractions import Fraction

import pytest

from calculators.articles import articles
from calculators.asking.answering import Asking, answer
from calculators.asking.site_method import example_method
from calculators.catalogue import calculator_named
from calculators.drawing.article import told_of
from calculators.trade.articles.parts import TOP
from calculators.values.phrase import without_marks


def asked(name, typed):
    calculator = calculator_named(name)
    asking = Asking(typed, method=example_method())
    reply = answer(calculator, asking)
    notes = " ".join(note.filled(asking.ruler, calculator.kinds) for note in reply.notes)
    steps = " ".join(f"{told.do} {told.line}" for told in (told_of(each, asking.ruler)
        for each in reply.drawn_from.work.operations))  # fmt: skip
    return reply, " ".join(f"{notes} {without_marks(steps)}".split())  # spaces that do not break, too


#: Pieces that an article has several of; all others are cut once.
SEVERAL = {
    "apron": {"tie": 2},
    "bolster": {"end": 2},
    "oven-glove": {"pocket": 2, "pocket wadding": 2, "pocket lining": 2},
    "curtain-tab-top": {"tab": 8},
}


@pytest.mark.parametrize("name", articles())
def test_it_is_cut_from_so_many_pieces_of_a_kind(name):
    """A tabbed curtain of 130 cm as in its example: 125 cm between the middles of the outer tabs, in 7 gaps of at most
    18 cm."""
    reply, _ = asked(name, dict(articles()[name].examples[0].given))
    several = {piece.parts[0].part.name: piece.count for piece in reply.drawn_from.pieces if piece.count != 1}
    assert several == SEVERAL.get(name, {})


TOLD = [
    # 125 cm in 7 gaps
    ("curtain-tab-top", dict(articles()["curtain-tab-top"].examples[0].given), ["two tabs: about 17.9 cm"]),
    # 90 + 2 × 30 cm, and 2 × (1 + 2) cm of hem
    ("tablecloth", {"table_width": "90 cm", "table_length": "160 cm", "drop": "30 cm", "turn": "1 cm", "hem": "2 cm",
        "cloth_width": "140 cm", "measured": "trimmed"}, ["gives 140 cm across, and it is cut 156 cm wide"]),
    ("tablecloth-round", {"table_width": "90 cm", "table_length": "120 cm", "drop": "30 cm", "turn": "1 cm",
        "hem": "2 cm", "cloth_width": "140 cm", "measured": "trimmed"}, ["gives 140 cm across, and it is cut 156 cm"]),
    # (60 + 2 × 10) × 2 cm, and 4 × 1 cm
    ("valance", {"rod": "60 cm", "side_return": "10 cm", "fullness": "2", "side_hem": "1 cm", "cloth_width": "163 cm",
        "measured": "trimmed"}, ["It is cut 164 cm wide and your cloth gives 163 cm across"]),
    # 143.5 cm in 7 folds; rods on the folds 1, 3 and 5; 100 cm in 4 gaps of at most 30 cm
    ("roman-blind", {"width": "100 cm", "drop": "150 cm", "rail": "6.5 cm", "fold": "21 cm", "apart": "30 cm"},
        ["7 folds of 20.5 cm", "drawn up it is 27 cm high", "5 cords", "stitch 3 tapes", "the first 20.5 cm above",
            "one 41 cm above the last", "Sew 5 rings"]),
    # 6 folds would put a rod at the rail: 7
    ("roman-blind", {"drop": "126 cm", "rail": "6 cm", "fold": "20 cm"},
        ["7 folds of about 17.1 cm", "stitch 3 tapes"]),
    ("roman-blind", {"drop": "106 cm", "rail": "6 cm", "fold": "20 cm"}, ["5 folds of 20 cm", "stitch 2 tapes"]),
    # never fewer than 3 folds, so that one rod is there, nor fewer cords than 2
    ("roman-blind", {"width": "25 cm", "drop": "36 cm", "rail": "6 cm", "fold": "40 cm", "apart": "30 cm",
        "casing": "2 cm"}, ["3 folds of 10 cm", "2 cords", "stitch 1 tape to hold", "the first 10 cm above"]),
    # 32 + 2 cm down to the raw edge, less the 1 cm that its seam takes
    ("fitted-sheet", {**articles()["fitted-sheet"].examples[0].given, "seam": "french", "seam_allowance": "1 cm"},
        ["Cut a square of 33 cm out of every corner"]),
    # 250 cm and 6 cm of hem, two seams of 2 cm: one full width of 140 cm, and 60 cm at either side, both from one more
    ("tablecloth-joined", {"table_width": "190 cm", "table_length": "200 cm", "drop": "30 cm", "turn": "1 cm",
        "hem": "2 cm", "seam_allowance": "1 cm", "cloth_width": "140 cm", "measured": "trimmed"},
        ["It takes 2 lengths of the cloth"]),
    # 286 cm: sides of 75 cm each, two of which are more than the cloth is wide
    ("tablecloth-joined", {"table_width": "220 cm", "table_length": "200 cm", "drop": "30 cm", "turn": "1 cm",
        "hem": "2 cm", "seam_allowance": "1 cm", "cloth_width": "140 cm", "measured": "trimmed"},
        ["It takes 3 lengths of the cloth"]),
    # 166 cm on 138: one width is saved, not two seams
    ("tablecloth-joined", {"table_width": "90 cm", "table_length": "160 cm", "drop": "35 cm", "turn": "1 cm",
        "hem": "2 cm", "cloth_width": "138 cm", "measured": "trimmed"}, ["less, and it comes out of one width"]),
]  # fmt: skip


@pytest.mark.parametrize(("name", "typed", "sentences"), TOLD)
def test_it_tells_what_was_counted_by_hand(name, typed, sentences):
    _, told = asked(name, typed)
    assert [each for each in sentences if each not in told] == [], told


@pytest.mark.parametrize(
    ("name", "typed", "buttons"),
    [
        ("cushion-buttons", {"pad_width": "12 cm", "smaller": "0", "apart": "20 cm"}, 1),
        ("cushion-buttons", {"pad_width": "41 cm", "smaller": "0", "apart": "10 cm"}, 4),  # 5 gaps of 8.2 cm
        ("duvet-cover", {"opening": "15 cm", "apart": "20 cm"}, 1),
        ("duvet-cover", {"opening": "61 cm", "apart": "15 cm"}, 4),  # 5 gaps of 12.2 cm
    ],
)
def test_it_takes_so_many_buttons(name, typed, buttons):
    reply, _ = asked(name, typed)
    assert reply.results["buttons"] == buttons


def test_the_bib_of_an_apron_is_as_wide_as_it_was_asked_for():
    reply, _ = asked("apron", {"width": "71 cm", "bib": "28 cm"})
    assert reply.drawn_from.work.parts[0].length_of(TOP) == Fraction(280)
