"""What cushion covers have in common: the pad, how much smaller its cover is, and a back of two parts that overlap."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.measures import hem_of, part_of_size, refuse_unless, size
from calculators.asking.declaration import Field
from calculators.asking.house_measures import ALLOWANCE
from calculators.trade.articles.operation import Operation, SeamKind
from calculators.trade.articles.parts import FlatPart
from calculators.trade.articles.work import MakingUp

COVER_FIELDS = (
    size("pad_width", "Width of the pad", "Seam to seam, lying flat.", "40 cm", "16 in", known_as=("pad_width",)),
    size("pad_length", "Height of the pad", "Seam to seam, lying flat.", "40 cm", "16 in", known_as=("pad_length",)),
    part_of_size("smaller", "Smaller than the pad", "So that a feather pad fills it; 0 for foam.", "2 cm", "3/4 in"),
)
#: A pad that is no square, its cover as large, for worked examples.
LIKE_THE_PAD = {"pad_width": "40 cm", "pad_length": "50 cm", "smaller": "0"}

OPENING_FIELDS = (
    part_of_size("overlap", "Overlap", "How far one back lies over the other.", "12 cm", "4 3/4 in"),
    hem_of("hem", "Hem of the opening", "On both backs.", "2 cm", "3/4 in"),
    hem_of("turn", "Its first turn", "The first fold of the raw edge.", "1 cm", "3/8 in"),
)
ZIP_FIELDS = (
    part_of_size("from_foot", "Zip above the lower edge", "Both as finished.", "8 cm", "3 in"),
    part_of_size("shut", "Sewn shut at each end", "Of the seam that the zip lies in.", "3 cm", "1 1/4 in"),
    Field("zip_allowance", "Allowance at the zip", ALLOWANCE, "At each side of the zip; its tape lies on it.",
        "zip_allowance", known_as=()),
)  # fmt: skip


def cover_size(given: SimpleNamespace) -> tuple[Fraction, Fraction]:
    """The finished width and height of the cover [mm]; raises InvalidInput where nothing is left of it."""
    least = min(given.pad_width, given.pad_length)
    refuse_unless(
        given.smaller <= least / 2,
        "smaller",
        "The cover would be less than half as large as the pad, {least:length}. Write less.",
        least=least,
    )
    return given.pad_width - given.smaller, given.pad_length - given.smaller


def backs_that_overlap(
    work: MakingUp, given: SimpleNamespace, width: Fraction, length: Fraction
) -> tuple[FlatPart, FlatPart]:
    """The two backs of a cover so large [mm], their opening hemmed; raises InvalidInput where they overlap all over."""
    refuse_unless(
        given.overlap < length,
        "overlap",
        "The overlap is as long as the cover, {length:length}. Write less.",
        length=length,
    )
    refuse_unless(
        given.overlap >= given.hem,
        "overlap",
        "The backs overlap by less than their hem, {hem:length}, so that the cover stands open. Write more.",
        hem=given.hem,
    )
    upper = work.rectangle("upper back", width, (length + given.overlap) / 2)
    lower = work.rectangle("lower back", width, (length + given.overlap) / 2)
    work.hem(upper.bottom, lower.top, turn=given.turn, hem=given.hem)
    return upper, lower


def sew_round(work: MakingUp, front: FlatPart, upper: FlatPart, lower: FlatPart, kind: SeamKind) -> None:
    """Join a front to the two backs behind it, one at the top and one at the foot, all round."""
    begins = front.length - upper.length
    work.seam(
        (front.top, upper.top),
        (front.bottom, lower.bottom),
        *((front.side(side).between(begins, front.length), upper.side(side)) for side in ("left", "right")),
        *((front.side(side).between(Fraction(0), lower.length), lower.side(side)) for side in ("left", "right")),
        kind=kind,
        do=f"Lay the upper back on the front, {kind.lie}, then the lower back over it, and stitch round, {kind.where}",
        how="Over the ends of the opening stitch to and fro.",
    )


def backs_with_zip(
    work: MakingUp, given: SimpleNamespace, width: Fraction, length: Fraction
) -> tuple[FlatPart, FlatPart]:
    """The two backs of a cover so large [mm], joined by the seam that the zip lies in; raises InvalidInput where it
    finds no room."""
    refuse_unless(2 * given.shut < width, "shut", "Both ends together leave nothing open of {width:length}. Write "
        "less.", width=width)  # fmt: skip
    refuse_unless(given.from_foot < length, "from_foot", "The zip would lie beyond the cover, which is "
        "{length:length} high. Write less.", length=length)  # fmt: skip
    upper = work.rectangle("upper back", width, length - given.from_foot)
    lower = work.rectangle("lower back", width, given.from_foot)
    work.zip(
        (upper.bottom, lower.top),
        kind=SeamKind("seam at a zip", given.zip_allowance, 1, "zip"),
        length=width - 2 * given.shut,
    )
    return upper, lower


def sew_round_zip(work: MakingUp, front: FlatPart, upper: FlatPart, lower: FlatPart, kind: SeamKind) -> None:
    """Join a front to the two backs that a zip holds together, all round."""
    foot = lower.length
    work.seam(
        (front.top, upper.top),
        (front.bottom, lower.bottom),
        *((front.side(side).between(foot, front.length), upper.side(side)) for side in ("left", "right")),
        *((front.side(side).between(Fraction(0), foot), lower.side(side)) for side in ("left", "right")),
        kind=kind,
        do="Open the zip. Lay front and back right sides together and stitch round, {allowance} from the edges",
    )


def stitch_border(work: MakingUp, front: FlatPart, border: Fraction) -> None:
    """Stitch a cover that is turned out all round, so far [mm] inside its edge."""
    inner_width, inner_length = front.width - 2 * border, front.length - 2 * border
    work.do(
        Operation(
            "border",
            "Press, pin all layers, and stitch {border} inside the edge all round",
            {"border": border},
            how="Mark the row with chalk.",
            rules=("start-seam", "pivot", "fasten"),
            stitched=2 * (inner_width + inner_length),
            rows=0,
            along=front.around,
            inset=border,
        )
    )
