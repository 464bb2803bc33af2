"""The steps of a batch in working order, each with this batch's own numbers."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from calculators.asking.house_method import Written
from calculators.batch.corner_of_a_batch import folded_steps
from calculators.drawing.folding import corner_step_by_step
from calculators.drawing.picture import Picture
from calculators.ticket import care as cares
from calculators.ticket.batch import Batch, edges_of
from calculators.ticket.care import Care, corner_care
from calculators.ticket.cautions import BLADE, IRON, NEEDLE, PINS
from calculators.trade.cloth import LongEdges, cloth_to_buy_for
from calculators.trade.corners.steps import CornerStep as CornerStep
from calculators.trade.pieces import Grid, further_length
from calculators.trade.trade_rules import brief
from calculators.values.kinds import DimensionalChange
from calculators.values.measure import CENTIMETRES, Ruler
from calculators.values.phrase import Phrase, say
from calculators.values.small_lengths import show_small

ONCE = frozenset({"wash", "straighten", "measure", "mark"})
"""Keys of the steps that are ticked once for the whole batch; all others are ticked bundle by bundle."""


@dataclass(frozen=True)
class TicketStep:
    """One step of a ticket.

    key: the name under which it is ticked, which never changes. instructions: what to do, a sentence or more each.
    settings: names of the settings it needs. cautions: what can hurt in it.
    picture: how the corner then lies, where there is a drawing of it.
    """

    key: str
    title: str
    instructions: tuple[Phrase, ...]
    care: Care
    settings: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    picture: Picture | None = None


@dataclass(frozen=True)
class _OfCorner:
    """What a ticket adds to a step of the corner's construction; more: instructions for steps made in one with it."""

    key: str
    title: str
    care: str | Care
    more: tuple[Phrase, ...] = ()
    settings: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()


def _rules(*keys: str) -> tuple[Phrase, ...]:
    """The rules of the trade that a step needs, as a ticket tells them."""
    return tuple(say(brief(key)) for key in keys)


_CORNER = {
    "First turn": _OfCorner("turn", "First turn", "turn", _rules("press", "set-fold"), (), (IRON,)),
    "Second fold": _OfCorner("hem", "Second fold", "hem", _rules("gauge", "press", "cool"), (), (IRON,)),
    "Fold the hem": _OfCorner("hem", "Fold the hem", "hem", _rules("gauge", "press", "set-fold", "cool"), (), (IRON,)),
    "Mark": _OfCorner("mark-mitres", "Mark the mitres", "marks"),
    "Right sides together": _OfCorner("pin", "Pin the corners", "alignment", _rules("bobbin"), (),
        (PINS,)),
    "Stitch": _OfCorner("stitch", "Stitch the mitres", "stitching", (),
        ("needle", "thread", "stitch_seam"), (NEEDLE,)),
    "Trim": _OfCorner("trim", "Trim", cares.TRIM, (), (), (BLADE,)),
    "Turn out": _OfCorner("turn-out", "Turn out", cares.TURN_OUT, (), (), (IRON,)),
    "Edge stitch": _OfCorner("edge-stitch", "Edge stitch", cares.EDGE_STITCH,
        _rules("begin", "start-seam", "needle-stop", "lap"),
        ("needle", "thread", "stitch_hem", "edge_stitch"), (NEEDLE,)),
    "Right side": _OfCorner("press", "Final press", cares.PRESS,
        (say("Cut the thread ends."), *_rules("pins-found", "last-press")), (), (IRON,)),
}  # fmt: skip
_WAYS = (("length", "along"), ("width", "across"))
_TOLD_WITH_THE_NEXT = {"Open the hem"}
_TOLD_BY_TICKET = {"Right side"}


def ticket_steps(batch: Batch) -> list[TicketStep]:
    """All steps of a batch."""
    return [*_of_the_cloth(batch), *_of_the_corners(batch), _checked(batch)]


def _of_the_cloth(batch: Batch) -> Iterator[TicketStep]:
    usable, pieces = batch.values["usable-cloth"], batch.values["pieces-from-cloth"]
    by_hand, edges = _sizes_by_hand(batch), edges_of(batch)
    grid = batch.grid
    if len(by_hand) < 2:
        yield TicketStep("wash", "Wash the cloth", tuple(_washed(batch, by_hand)), cares.WASH, (), (IRON,))
    yield TicketStep(
        "straighten", "Straighten one end", tuple(_straightened(usable, by_hand, edges)), cares.STRAIGHTEN, (), (BLADE,)
    )
    yield TicketStep(
        "measure", "Measure what there is",
        (
            say(
                "Between two ends that follow a thread there must be {length:length_down}; across, "
                    f"{'from trimmed edge to trimmed edge' if edges.trimmed else 'selvedge to selvedge'}, "
                        "{width:length_down}.",
                length=pieces["cloth_length"], width=pieces["cloth_width"],
            ),
            say(
                "With less than {length:length_up} by {width:length_up} the pieces do not fit: plan again.",
                length=grid.marks_along[-1], width=grid.marks_across[-1] + 2 * edges.strip,
            ),
        ),
        cares.MEASURE,
    )  # fmt: skip
    yield TicketStep(
        "mark", "Mark everything before cutting",
        tuple(_marked(grid, edges)),
        cares.MARK, (), (PINS,),
    )  # fmt: skip
    yield TicketStep("cut", "Cut along drawn threads", tuple(_cut(batch)), cares.CUT, ("tolerance_cut",), (BLADE,))


def _sizes_by_hand(batch: Batch) -> set[str]:
    """Which sizes of the cloth were written down as they can be used, so that no earlier step has a part in them."""
    return {
        departure.name.removeprefix("cloth_")
        for departure in batch.step_results["pieces-from-cloth"].departures
        if departure.name.startswith("cloth_")
    }


def _washed(batch: Batch, by_hand: set[str]) -> Iterator[Phrase]:
    wash, line = batch.values["wash-test"], batch.cloth_line
    yield say(
        f"Wash, dry and press the whole cloth as the pieces will be washed. By its wash test it {_told_change(wash)}.",
        **{way: abs(wash[f"change_{way}"]) for way, _ in _WAYS},
    )
    if _differs(line.get("change_length"), wash["change_length"]) or _differs(
        line.get("change_width"), wash["change_width"]
    ):
        listed = [f"{line[f'change_{way}']} {side}" for way, side in _WAYS if line.get(f"change_{way}")]
        yield say(
            "The house method has {listed:text} for {cloth:text}: make sure which is right for this cloth before you "
            "cut.",
            listed=" and ".join(listed),
            cloth=batch.cloth,
        )
    if not by_hand:
        yield say(
            "Then it must measure {length:length_down} by {width:length_down}.",
            length=wash["washed_length"],
            width=wash["washed_width"],
        )


def _told_change(wash: Mapping[str, Fraction]) -> str:
    """What the cloth does along and across, with a blank for how much of it; the verb once where it does the same."""
    told, before = [], ""
    for way, side in _WAYS:
        change = wash[f"change_{way}"]
        does = ("shrinks" if change < 0 else "grows") if change else "keeps its size"
        blank = f" {{{way}:percent}}" if change else ""
        told.append(f"{'' if does == before else does}{blank} {side}".strip())
        before = does
    return " and ".join(told)


def _differs(listed: Written | None, change: Fraction) -> bool:
    kind = DimensionalChange(least=Fraction(-100), most=Fraction(100))
    return bool(listed) and abs(kind.parse(str(listed), CENTIMETRES) - change) >= Fraction(1, 10)


def _straightened(usable: Mapping[str, Any], by_hand: set[str], edges: LongEdges) -> Iterator[Phrase]:
    usable_as_written = by_hand - ({"width"} if edges.strip else set())
    if usable_as_written:
        yield say("Draw a thread at one end and cut along it.")
        sizes = " and ".join(sorted(usable_as_written))
        yield say(
            f"The {sizes} of this cloth was written down as it can be used; the plan takes nothing more off there."
        )
    else:
        yield say(
            "Draw a thread at one end and cut along it; the plan allows {loss:length} for each end.",
            loss=usable["end_loss"],
        )
    if usable["skew"] and "length" not in by_hand:
        yield say("The far end may then slant by {skew:length}, which the plan has taken off.", skew=usable["skew"])


def _marked(grid: Grid, edges: LongEdges) -> Iterator[Phrase]:
    if edges.strip:
        yield say("Rule a trimming line {strip:length} inside each selvedge. " + brief("selvedges"), strip=edges.strip)
    sides = "long edges" if edges.trimmed else "selvedges"
    yield say(
        f"Set out every mark of the marking table, along both {sides} and across both ends. The last mark along must "
            "read {last:length}; "
        f"count {{across:count}} across × {{along:count}} along{_last_row(grid)}: {{count:piece|pieces}}.",
        last=grid.marks_along[-1], across=grid.columns, along=grid.rows, rest=grid.in_last_row, count=grid.cut,
    )  # fmt: skip


def _last_row(grid: Grid) -> str:
    """What sets the last row apart, where fewer pieces are cut from it than from the others."""
    return ", only {rest:count} in the last row" if grid.in_last_row < grid.columns else ""


def _cut(batch: Batch) -> Iterator[Phrase]:
    pieces, size, grid = batch.values["pieces-from-cloth"], batch.values["finished-size"], batch.grid
    strip, strips = edges_of(batch).strip, "each strip" if grid.rows > 1 else "the strip"
    first, trim = (", selvedges and all", " Trim {strip:length} off at each selvedge") if strip else ("", "")
    yield say(
        f"Across the whole width first{first}, at {{along:mark|marks}}.{trim}{', t' if trim else ' T'}hen cut "
        f"{strips} at {{across:cross mark|cross marks}}{_last_row(grid)}. "
        "Each piece is {width:length} by {length:length}.",
        strip=strip,
        along=grid.rows,
        across=grid.columns,
        rest=grid.in_last_row,
        width=size["cut_width"],
        length=size["cut_length"],
    )
    if batch.bundles.pieces < pieces["count"]:
        made, are = batch.bundles.pieces, "is" if batch.bundles.pieces == 1 else "are"
        yield say(
            f"Only {{made:piece|pieces}} of the {{count:count}} that fit {are} made: leave the rest of the cloth "
            "whole.",
            made=made,
            count=pieces["count"],
        )
    elif batch.bundles.pieces > pieces["count"]:
        rest = batch.bundles.pieces - pieces["count"]
        further = further_length(rest, pieces["across"], pieces["marks_along"][0])
        yield say(
            "This cloth gives {count:piece|pieces}; {rest:count} more want a further length of it, as wide as this: "
            "{further:length_up} between straight ends.",
            count=pieces["count"],
            rest=rest,
            further=further,
        )
        if "length" not in _sizes_by_hand(batch):
            usable, wash = batch.values["usable-cloth"], batch.values["wash-test"]
            whole = cloth_to_buy_for(further, 2 * usable["end_loss"] + usable["skew"], wash["change_length"])
            yield say("Unwashed, that is {whole:length_up}.", whole=whole)


def _of_the_corners(batch: Batch) -> Iterator[TicketStep]:
    how_much = corner_care(batch)
    steps = folded_steps(batch.values["mitre-marks"], batch.step_results["mitre-marks"].asking)
    pictures = corner_step_by_step(steps, batch.ruler).pictures
    before: tuple[Phrase, ...] = ()
    for step, picture in zip(steps, pictures):
        if step.name in _TOLD_WITH_THE_NEXT:
            before = (_instruction(step, batch.ruler),)
            continue
        if step.name not in _CORNER:
            continue
        of_corner = _CORNER[step.name]
        instructions = () if step.name in _TOLD_BY_TICKET else (_instruction(step, batch.ruler),)
        care = of_corner.care if isinstance(of_corner.care, Care) else how_much[of_corner.care]
        extra = tuple(_other_sides(batch)) if of_corner.key == "hem" else ()
        yield TicketStep(
            of_corner.key,
            of_corner.title,
            (*before, *instructions, *extra, *of_corner.more),
            care,
            of_corner.settings,
            of_corner.cautions,
            picture,
        )
        before = ()


def _instruction(step: CornerStep, ruler: Ruler) -> Phrase:
    """The words of a step; the distance of the edge stitch as it stands among the settings, in millimetres."""
    template = step.instruction
    for name in step.lengths:
        kind = "text" if name == "edge_stitch" else "length"
        template = template.replace(f"{{{name}}}", f"{{{name}:{kind}}}")
    small = {name: show_small(each, ruler) for name, each in step.lengths.items() if name == "edge_stitch"}
    return say(template, **{**step.lengths, **small})


def _other_sides(batch: Batch) -> Iterator[Phrase]:
    """Sides whose hem is not the usual one."""
    hem = batch("finished-size", "hem")
    for side in ("top", "bottom", "left", "right"):
        own = batch("finished-size", f"hem_{side}")
        if own is not None and own != hem:
            yield say(
                f"The hem {'at the' if side in ('top', 'bottom') else 'on the'} {side} is {{own:length}}.", own=own
            )


def _checked(batch: Batch) -> TicketStep:
    instructions = (
        say(
            "Let each piece cool and lie flat. Finished it must measure {width:length} by {length:length}.",
            **batch.finished,
        ),
        say("Measure pieces of every bundle, both ways and from corner to corner, and write them down below."),
    )
    return TicketStep(
        "check", "Check and write down", instructions, cares.CHECK, ("tolerance_finished", "tolerance_square")
    )
