"""A Roman blind: rods at its back, at even distances, on which cords fold it up."""

from fractions import Fraction
from math import ceil
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, part_of_size, refuse_unless, size
from calculators.asking.declaration import Example
from calculators.trade.articles.operation import Operation
from calculators.trade.articles.work import MakingUp
from calculators.values.phrase import say

_MOST_FOLDS = 99


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, drop, folded = given.width, given.drop, given.drop - given.rail
    refuse_unless(folded >= 3 * given.casing, "rail", "Below it nothing is left to fold of a drop of {drop:length}. "
        "Write less.", drop=drop)  # fmt: skip
    folds = max(3, ceil(folded / given.fold))
    folds += 1 - folds % 2
    refuse_unless(folds <= _MOST_FOLDS, "fold", "That makes {folds:count} folds. Write a deeper fold.",
        folds=folds)  # fmt: skip
    fold, rods = folded / folds, (folds - 1) // 2
    refuse_unless(given.casing < fold, "casing", "The casing is as deep as a fold, {fold:length_down}. Write less.",
        fold=fold)  # fmt: skip
    cords = max(2, ceil(width / given.apart) + 1)
    blind = work.rectangle("blind", width, drop)
    work.hem(blind.left, blind.right, turn=given.turn, hem=given.hem)
    work.hem(blind.bottom, turn=given.turn, hem=given.casing, casing=True, do="Turn the foot up for its bar: turn in "
        "{turn}, then {hem}, and stitch, the ends open")  # fmt: skip
    work.hem(blind.top, turn=Fraction(0), hem=given.head, do="Fold the top down by {hem} and stitch the soft half of "
        "the hook tape over its raw edge")  # fmt: skip
    work.do(
        Operation(
            "rods",
            f"At the back stitch {rods} tape{'s' if rods > 1 else ''} to hold the rods: the first {{first}} above the "
            "foot, each further one {next} above the last",
            {"first": fold, "next": 2 * fold},
            how=f"Sew {cords} rings to each, one above the other, the outer ones near the sides.",
            across=tuple((blind, (2 * number + 1) * fold) for number in range(rods)),
            stitched=2 * rods * width,
            rows=0,
        )
    )
    work.buy("rods", rods)
    work.buy("rings", rods * cords)
    work.buy("cord", cords, 2 * drop + width)
    work.notes.append(
        say(
            "{folds:count} folds of {fold:length}; drawn up it is {stack:length} high. {cords:count} cords: no loop of "
            "cord, a breakaway joint where they meet, and a cleat out of a child’s reach, as the law where it hangs "
            "has it.",
            folds=folds, fold=fold, stack=given.rail + fold, cords=cords,
        )
    )  # fmt: skip
    return width, drop


ARTICLE = Article(
    name="roman-blind",
    title="Roman blind",
    purpose="What to cut for a Roman blind, where its rods lie, and what rods, rings and cord it takes.",
    fields=(
        size("width", "Finished width", "Of the blind.", "100 cm", "40 in"),
        size("drop", "Finished drop", "From the top edge to the foot, let down.", "150 cm", "60 in"),
        part_of_size("rail", "Kept for the head rail", "At the top; it is not folded.", "6.5 cm", "2 1/2 in"),
        size("fold", "Folds at most so deep", "Once it is drawn up.", "20 cm", "8 in"),
        size("apart", "Cords at most so far apart", "Across the blind.", "40 cm", "16 in"),
        hem_of("hem", "Side hem", "Of each side.", "3 cm", "1 1/4 in"),
        hem_of("casing", "Casing at the foot", "For the bar that weighs it down.", "3 cm", "1 1/4 in"),
        hem_of("turn", "First turn of both", "The first fold of the raw edge.", "1 cm", "3/8 in"),
        hem_of("head", "Folded down at the top", "Under the hook tape.", "2 cm", "3/4 in"),
    ),
    question="A blind {width} wide with a drop of {drop}, folds at most {fold} deep.",
    make=_make,
    cut=("blind",),
    examples=(
        Example(
            {"width": "100 cm", "drop": "150 cm", "rail": "6.5 cm", "fold": "21 cm", "apart": "40 cm", "hem": "3 cm",
                "casing": "3 cm", "turn": "1 cm", "head": "2 cm"},
            {"blind_width": 1080, "blind_length": 1560, "rods": 3, "rings": 12, "cord": 16_000,
                "stitching": 11_000},
            "worked by hand: 150 − 6.5 = 143.5 cm in 7 folds of 20.5 cm, so 3 rods; 4 cords of 2 × 150 + 100 cm; "
            "100 + 8 cm, 150 + 4 + 2 cm; stitched 2 × 150 + 2 × 100 cm and 3 tapes of 2 × 100 cm",
        ),
    ),
    buys=("rods", "rings", "cord"),
)  # fmt: skip
