"""An edge with its marks, to scale: middles, bands, or parts of two edges that are joined."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from calculators.drawing import lines
from calculators.drawing.picture import Picture, Sheet, rectangle, text_width, thinned
from calculators.values.measure import Ruler, show_length

_DEEP = 0.16  # of the edge: how much cloth is drawn below it


@dataclass(frozen=True)
class MarkedEdge:
    """An edge and its marks. length: of it [mm]; marks: from its left end [mm]; width: of each band that begins at a
    mark, 0 where there are none [mm]; to: the edge it is gathered to, None where it is not [mm]."""

    length: Fraction
    marks: Sequence[Fraction]
    width: Fraction = Fraction(0)
    to: Fraction | None = None


def marked_edge(edge: MarkedEdge, ruler: Ruler) -> Picture:
    """The edge above, the cloth below it; running distances stand above their marks."""
    return _gathered(edge, ruler) if edge.to is not None else _spaced(edge, ruler)


def _spaced(edge: MarkedEdge, ruler: Ruler) -> Picture:
    deep = edge.length * Fraction(_DEEP)
    words = [show_length(mark, ruler).removeprefix("about ") for mark in edge.marks]
    widest = max(map(text_width, words))
    beside = max(26.0, widest / 2 + 2)
    sheet = Sheet((0, 0, edge.length, deep), margins=(beside, 34, beside, 40))
    sheet.area(lines.CLOTH_RIGHT, rectangle(0, 0, edge.length, deep))
    sheet.line(lines.EDGE, (0, 0), (0, deep), (edge.length, deep), (edge.length, 0))
    sheet.cut_off((0, 0), (edge.length, 0))
    for mark in edge.marks:
        if edge.width:
            sheet.area(lines.OTHER_RIGHT, rectangle(mark, deep / 3, mark + edge.width, deep), pattern=True)
    for mark in edge.marks:
        sheet.tick((mark, deep), (0, 7))
        if edge.width:
            sheet.tick((mark + edge.width, deep), (0, 7))
    if edge.width:
        sheet.name(lines.OTHER_RIGHT, "pleat or tab")
        sheet.used.remove(lines.OTHER_RIGHT)
    for index in thinned(edge.marks, sheet.scale, widest + 10):
        sheet.words(words[index], (edge.marks[index], deep), shift=(0, -12))
    sheet.dimension((edge.length, 0), (0, 0), show_length(edge.length, ruler), away=14)
    named = ", ".join(show_length(mark, ruler) for mark in edge.marks[:12])
    return sheet.finish(
        "The edge with its marks",
        f"An edge {show_length(edge.length, ruler)} long with {_marks(len(edge.marks))}, measured from its left end: "
        f"{named}{' …' if len(edge.marks) > 12 else ''}.",
        caption="Every distance is measured from the left end, to scale.",
    )


def _gathered(edge: MarkedEdge, ruler: Ruler) -> Picture:
    other = edge.to or edge.length
    longest = max(edge.length, other)
    deep, apart = longest * Fraction(_DEEP) / 2, longest * Fraction(_DEEP)
    sheet = Sheet((0, 0, longest, 2 * deep + apart), margins=(26, 34, 30, 56))
    low, high = deep, deep + apart
    sheet.area(lines.CLOTH_RIGHT, rectangle(0, 0, edge.length, low))
    sheet.area(lines.CLOTH_RIGHT, rectangle(0, high, other, high + deep))
    sheet.line(lines.EDGE, (0, 0), (0, low), (edge.length, low), (edge.length, 0))
    sheet.line(lines.EDGE, (0, high + deep), (0, high), (other, high), (other, high + deep))
    sheet.cut_off((0, 0), (edge.length, 0))
    sheet.cut_off((0, high + deep), (other, high + deep))
    parts = len(edge.marks) + 1
    for number, mark in enumerate(edge.marks, start=1):
        meets = other * number / parts
        sheet.line("leader", (mark, low), (meets, high))
        sheet.tick((mark, low), (0, 6))
        sheet.tick((meets, high), (0, 6))
    sheet.dimension((edge.length, 0), (0, 0), f"{show_length(edge.length, ruler)}, gathered", away=16)
    sheet.dimension((0, high + deep), (other, high + deep), show_length(other, ruler), away=14)
    return sheet.finish(
        "Two edges marked in as many parts",
        f"Below, an edge {show_length(edge.length, ruler)} long; above, the edge {show_length(other, ruler)} long that "
        f"it is gathered to. Both have {_marks(len(edge.marks))} in equal parts; each meets the one of its number.",
        caption="Both edges in equal parts; pin mark to mark, then draw the gathers up between them.",
    )


def _marks(count: int) -> str:
    return "one mark" if count == 1 else f"{count} marks"
