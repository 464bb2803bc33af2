"""A plan as rows for a file: every mark and every piece, exact in millimetres."""

import csv
from collections.abc import Callable, Iterable, Iterator
from fractions import Fraction
from io import StringIO

from calculators.trade.lay_plan.cut_list import working_order
from calculators.trade.lay_plan.laid import Lay
from calculators.trade.lay_plan.marking import marked
from calculators.trade.lay_plan.order import Rules

CUTS_HEAD = ("step", "cloth", "in hand", "cut", "marks [mm]", "marks as read", "each cut is long [mm]")
MARKS_HEAD = ("cloth", "strip", "part of it", "direction", "mark [mm]", "mark as read", "gives")
PIECES_HEAD = (
    "cloth",
    "strip",
    "piece",
    "from the end [mm]",
    "from the first long edge [mm]",
    "length [mm]",
    "width [mm]",
    "turned",
)


def marks_listed(lays: Iterable[Lay], shown: Callable[[Fraction], str]) -> str:
    """The marking table as CSV.

    lays: each cloth as planned. shown: how a length [mm] is read on the ruler in hand.
    Returns the text; marks are exact [mm].
    Source: derived, the rows of `marked` written out, one a mark.
    """
    return _csv(MARKS_HEAD, (row for number, lay in enumerate(lays, start=1) for row in _marks(lay, number, shown)))


def cuts_listed(lays: Iterable[Lay], rules: Rules, shown: Callable[[Fraction], str], unit: str) -> str:
    """Every cut in working order as CSV, a row for each step; a strip off an end or an edge stands with its width as
    the mark.

    lays: each cloth as planned. rules: what is cut off ends and selvedges. shown: how a length [mm] is read
        on the ruler in hand, without its unit. unit: of that ruler.
    Returns the text; marks are exact [mm].
    Source: derived, the steps of `working_order` written out, one a row.
    """
    rows, step = [], 0
    for number, lay in enumerate(lays, start=1):
        for work in working_order(lay, rules):
            step += 1
            marks = work.marks or (work.off,)
            rows.append((
                str(step), f"{number} {lay.cloth.cloth.name}", work.in_hand, work.does,
                " ".join(map(exact, marks)), f"{'; '.join(map(shown, marks))} {unit}",
                "" if work.each is None else exact(work.each),
            ))  # fmt: skip
    return _csv(CUTS_HEAD, rows)


def pieces_listed(lays: Iterable[Lay]) -> str:
    """Every piece with its place as CSV."""
    return _csv(PIECES_HEAD, (row for number, lay in enumerate(lays, start=1) for row in _pieces(lay, number)))


def exact(length: Fraction) -> str:
    """A length in millimetres, nothing rounded: as a decimal where it ends, else as a fraction.

    length: what to write [mm].
    Returns the text.
    Source: derived, a fraction in lowest terms ends as a decimal when its denominator divides a power of ten.
    """
    length = Fraction(length)
    if 10**9 % length.denominator:
        return f"{length.numerator}/{length.denominator}"
    text = f"{length.numerator * 10**9 // length.denominator / 10**9:.9f}"
    return text.rstrip("0").rstrip(".")


def _marks(lay: Lay, number: int, shown: Callable[[Fraction], str]) -> Iterator[tuple[str, ...]]:
    name = f"{number} {lay.cloth.cloth.name}"
    for line in marked(lay):
        first, then = ("along", "across") if line.along else ("across", "along")
        gives = ", ".join(f"{count} x {lay.pieces[piece].name}" for piece, count in line.pieces)
        label = str(line.strip or "left over")
        ends = {end for _, end in line.waste}
        if not line.within:
            yield name, label, "", first, exact(line.end), shown(line.end), "waste" if line.is_waste else gives
        for mark in line.marks:
            yield (
                name,
                label,
                line.within,
                then,
                exact(mark),
                shown(mark),
                "waste up to this mark" if mark in ends else gives if line.within else "",
            )


def _pieces(lay: Lay, number: int) -> Iterator[tuple[str, ...]]:
    for placed in lay.placed:
        box = placed.box
        sizes = (exact(box.y), exact(box.x), exact(box.length), exact(box.width))
        yield (
            f"{number} {lay.cloth.cloth.name}",
            str(placed.strip),
            lay.pieces[placed.piece].name,
            *sizes,
            "yes" if placed.turned else "no",
        )


def _csv(head: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> str:
    text = StringIO()
    writer = csv.writer(text)
    writer.writerow(head)
    writer.writerows([_sanitized(cell) for cell in row] for row in rows)
    return text.getvalue()


def _sanitized(cell: str) -> str:
    """A name that a table programme would take for a formula is kept as a name."""
    return f"'{cell}" if cell[:1] in ("=", "+", "-", "@", "\t") else cell
