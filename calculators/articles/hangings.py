"""What curtains have in common: the rod, how full they are, and the widths that they are joined from."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from types import SimpleNamespace

from calculators.articles.measures import hem_of, refuse_unless
from calculators.articles.widths import usable_width
from calculators.asking.declaration import Field
from calculators.trade.articles.operation import SeamKind
from calculators.trade.articles.parts import EdgeStretch, FlatPart
from calculators.trade.articles.work import MakingUp
from calculators.trade.curtains import Hem, JoinedWidths, Window, widths_for
from calculators.values.kinds import Choice, Count, Length, Number
from calculators.values.phrase import say

_MOST = 20  # widths in a curtain
_BESIDE = Length(most=Fraction(1_000))
FULLNESS = Number(least=Fraction(1), most=Fraction(5), sample="2.5", places=2)

ROD_FIELDS = (
    Field("rod", "Rod or track", Length(least=Fraction(200), most=Fraction(20_000)), "From end to end, without the "
        "returns.", fixed={"cm": "180 cm", "in": "72 in"}, known_as=("rod",)),
    Field("drop", "Finished drop", Length(least=Fraction(100), most=Fraction(20_000)), "From the top edge of the "
        "curtain to its foot.", fixed={"cm": "220 cm", "in": "86 in"}, known_as=("curtain_drop",)),
    Field("fullness", "Fullness", FULLNESS, "Flat width of the curtain ÷ width it covers.", fixed="2",
        known_as=("fullness",)),
)  # fmt: skip
PAIR_FIELDS = (
    Field("curtains", "Curtains", Count(least=1, most=12), "How many hang side by side on it.", fixed="2",
        known_as=("curtains",)),
    Field("side_return", "Return at each end", _BESIDE, "Round the end of the rod to the wall; 0 if there is none.",
        fixed={"cm": "10 cm", "in": "4 in"}, known_as=("side_return",)),
    Field("overlap", "Overlap where two meet", _BESIDE, "How far one curtain crosses the next, wherever two "
        "meet.",
        fixed={"cm": "8 cm", "in": "3 in"}, known_as=("curtain_overlap",)),
    Field("gathered", "Returns and overlap",
        Choice(options={"flat": "are added flat", "gathered": "are gathered too"}),
        "Both ways of counting are in use: ask which one an order means. Flat: rod × fullness, then returns and "
        "overlap. Gathered: all of it × fullness.", fixed="flat", known_as=("gathered",)),
)  # fmt: skip
WIDTHS_FIELD = Field("widths_in", "Widths in a curtain",
    Choice(options={"half": "whole or half widths", "whole": "whole widths only"}), "Whether a width may be parted "
    "down its middle.", fixed="half", known_as=("widths_in",))  # fmt: skip
HEM_FIELDS = (
    hem_of("side_hem", "Side hem", "Of each side.", "2.5 cm", "1 in"),
    hem_of("side_turn", "First turn of the side hem", "As deep as the hem for two equal folds.", "2.5 cm", "1 in"),
    hem_of("lower_hem", "Lower hem", "At the foot.", "10 cm", "4 in"),
    hem_of("lower_turn", "First turn of the lower hem", "As deep as the hem for two equal folds.", "10 cm", "4 in"),
)


def window_of(given: SimpleNamespace) -> Window:
    """The rod with all that hangs on it."""
    return Window(given.rod, given.curtains, given.side_return, given.overlap, given.gathered == "gathered")


def flat_width(given: SimpleNamespace) -> Fraction:
    """The finished width of one curtain that is asked for, laid flat [mm]."""
    curtains: int = given.curtains
    return window_of(given).flat_width(given.fullness) / curtains


def refuse_what_cannot_hang(given: SimpleNamespace, top: Fraction) -> None:
    """Raise InvalidInput where turns are deeper than their hems, or hems leave nothing of the drop. top: what is folded
    down there [mm]."""
    for hem in ("side", "lower"):
        refuse_unless(getattr(given, f"{hem}_turn") <= getattr(given, f"{hem}_hem"), f"{hem}_turn", "The turn is "
            "deeper than the hem it hides in. Write at most {hem:length_down}.",
            hem=getattr(given, f"{hem}_hem"))  # fmt: skip
    refuse_unless(given.lower_hem + top < given.drop, "lower_hem", "The hems are as deep as the curtain is long, "
        "{drop:length}. Write less.", drop=given.drop)  # fmt: skip


def hem_sides_and_foot(work: MakingUp, given: SimpleNamespace, made: "Hanging") -> None:
    """Hem both sides, then the foot."""
    work.hem(
        *made.sides, turn=given.side_turn, hem=given.side_hem,
        do="Hem both sides: turn in {turn}, then {hem}, and stitch",
    )  # fmt: skip
    work.hem(
        *made.edges("bottom"), turn=given.lower_turn, hem=given.lower_hem,
        do="Hem the foot: turn in {turn}, then {hem}, and tack",
        how="When the curtain has hung for some days, level it, fold its corners untrimmed and sew it down.",
    )  # fmt: skip


def head_with_tape(work: MakingUp, edges: tuple[EdgeStretch, ...], heading: Fraction, width: Fraction) -> None:
    """Fold the top of so wide a curtain [mm] down and stitch a heading tape over its raw edge."""
    work.hem(
        *edges, turn=Fraction(0), hem=heading,
        do="Fold the top down by {hem}, lay the heading tape over its raw edge and stitch both edges of the tape",
        how="Both in the same direction, and not over its cords.",
    )  # fmt: skip
    work.buy("tape", length=width)


@dataclass(frozen=True)
class Hanging:
    """One curtain of its widths, from the left, and how wide it is, finished [mm]."""

    widths: tuple[FlatPart, ...]
    width: Fraction

    def edges(self, side: str) -> tuple[EdgeStretch, ...]:
        """The top or the foot of every width."""
        return tuple(each.side(side) for each in self.widths)

    @property
    def sides(self) -> tuple[EdgeStretch, EdgeStretch]:
        return self.widths[0].left, self.widths[-1].right


NAMES = ("curtain", "left width", "middle width", "right width")


def hanging(work: MakingUp, given: SimpleNamespace, kind: SeamKind, side: Hem) -> Hanging:
    """Cut and join the widths of one curtain, whole ones and perhaps a half; raises InvalidInput where it cannot be."""
    cloth = usable_width(given)
    refuse_unless(4 * kind.allowance < cloth, "seam_allowance", "The seams would take up half of {cloth:length_down}. "
        "Write what one edge loses in a seam.", cloth=cloth)  # fmt: skip
    joined = widths_for(flat_width(given), cloth, kind.allowance, side, given.widths_in == "half")
    refuse_unless(joined.number <= _MOST, "cloth_width", "Of cloth this narrow a curtain takes {count:count} widths. "
        "Write the whole width of the cloth.", count=ceil(joined.number))  # fmt: skip
    shares = [joined.number - joined.joins, *[Fraction(1)] * joined.joins]
    made = Hanging(tuple(_widths(work, [share * cloth for share in shares], given.drop, kind, side)), joined.finished)
    if joined.joins:
        work.seam(
            *((one.right, other.left) for one, other in zip(made.widths, made.widths[1:])), kind=kind, angle=0,
            do=f"Join the widths, {kind.lie}, {kind.where}"
            + ("; the half width goes to the outer side" if shares[0] < 1 else ""),
        )  # fmt: skip
    _tell(work, given, joined)
    return made


def _widths(work: MakingUp, cut: list[Fraction], drop: Fraction, kind: SeamKind, side: Hem) -> Iterator[FlatPart]:
    if len(cut) == 1:
        yield work.rectangle("curtain", cut[0] - 2 * side.taken_up, drop)
        return
    outer, inner = side.taken_up + kind.allowance, 2 * kind.allowance
    yield work.rectangle("left width", cut[0] - outer, drop)
    for number in range(len(cut) - 2):
        name = f"middle width {number + 1}" if number else "middle width"
        yield work.rectangle(name, cut[number + 1] - inner, drop, "middle width" if number else "")
    yield work.rectangle("right width", cut[-1] - outer, drop)


def _tell(work: MakingUp, given: SimpleNamespace, joined: JoinedWidths) -> None:
    reached = round(window_of(given).fullness(given.curtains * joined.finished), 2)
    work.notes.append(
        say(
            "{curtains:curtain|curtains} take {widths:width|widths} in all and come to a fullness of {reached:number}.",
            curtains=given.curtains,
            widths=ceil(given.curtains * joined.number),
            reached=reached,
        )
        if given.curtains > 1
        else say("It comes to a fullness of {reached:number}.", reached=reached)
    )
