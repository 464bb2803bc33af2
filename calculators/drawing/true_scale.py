"""A lay plan at true scale: one millimetre of cloth is one millimetre of the drawing, for a plotter or a projector."""

import xml.etree.ElementTree as ET
from fractions import Fraction

from calculators.trade.lay_plan.laid import Lay
from calculators.trade.lay_plan.planning import PlannedOrder
from calculators.values.measure import Ruler, show_length

_MARGIN, _BETWEEN = 50, 150  # mm
_PLAIN = {"fill": "none", "stroke": "black", "stroke-width": "1"}
_LETTERS = {
    "font-family": "sans-serif",
    "text-anchor": "middle",
}  # said once for a cloth, since there may be many pieces


def true_scale(outcome: PlannedOrder, ruler: Ruler) -> str:
    """The text of an SVG file, in millimetres, every cloth under the one before; lengths lie across the drawing.

    outcome: the order as planned; ruler: the one that sizes are named on.
    """
    widest = max(lay.length for lay in outcome.lays)
    height = sum((lay.cloth.width + _BETWEEN for lay in outcome.lays), Fraction(_MARGIN))
    width = widest + 2 * _MARGIN
    svg = ET.Element("svg", {
        "xmlns": "http://www.w3.org/2000/svg", "width": f"{_mm(width)}mm", "height": f"{_mm(height)}mm",
        "viewBox": f"0 0 {_mm(width)} "
            f"{_mm(height)}",
    })  # fmt: skip
    ET.SubElement(svg, "title").text = "Lay plan, true scale in millimetres"
    down = Fraction(_MARGIN)
    for number, lay in enumerate(outcome.lays, start=1):
        _cloth(svg, lay, number, down, ruler)
        down += lay.cloth.width + _BETWEEN
    return ET.tostring(svg, encoding="unicode", xml_declaration=False)


def _cloth(svg: ET.Element, lay: Lay, number: int, down: Fraction, ruler: Ruler) -> None:
    group = ET.SubElement(
        svg, "g", {**_LETTERS, "id": f"cloth-{number}", "transform": f"translate({_MARGIN} {_mm(down)})"}
    )
    _box(group, Fraction(0), Fraction(0), lay.length, lay.cloth.width, {"stroke-width": "2"})
    for flaw in lay.cloth.flaws:
        _box(
            group,
            flaw.from_end,
            flaw.from_selvedge,
            flaw.length,
            flaw.width,
            {"stroke": "red", "stroke-dasharray": "4 3"},
        )
    for placed in lay.placed:
        box = placed.box
        _box(group, box.y, box.x, box.length, box.width, {})
        name = lay.pieces[placed.piece].name
        size = min(40, float(box.width) / 4, float(box.length) / max(4, len(name) * 0.6))
        place = {"x": _mm(box.y + box.length / 2), "y": _mm(box.x + box.width / 2), "font-size": f"{size:.1f}"}
        ET.SubElement(group, "text", place).text = name
    cloth = (
        f"{lay.cloth.cloth.name}: {show_length(lay.length, ruler, 'down')} by "
        f"{show_length(lay.cloth.width, ruler, 'down')}, grain along the drawing"
    )
    ET.SubElement(
        group, "text", {"text-anchor": "start", "x": "0", "y": _mm(lay.cloth.width + 40), "font-size": "28"}
    ).text = cloth


def _box(group: ET.Element, x: Fraction, y: Fraction, width: Fraction, height: Fraction, style: dict[str, str]) -> None:
    ET.SubElement(
        group, "rect", {"x": _mm(x), "y": _mm(y), "width": _mm(width), "height": _mm(height), **_PLAIN, **style}
    )


def _mm(value: Fraction) -> str:
    return f"{float(value):.4f}".rstrip("0").rstrip(".")
