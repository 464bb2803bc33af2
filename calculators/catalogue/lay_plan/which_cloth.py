"""Each cloth of a lay plan by what can be measured of it, so that the right one is laid on the table."""

from collections import Counter
from collections.abc import Iterator
from typing import Any

from calculators.trade.cloth import LongEdges, after_the_wash
from calculators.trade.lay_plan.order import Rules
from calculators.trade.lay_plan.planning import PlannedOrder
from calculators.values.kinds import Column, Count, DimensionalChange, Length, Table, Text
from calculators.values.measure import Ruler, show_length

CLOTHS = Table(
    columns=(
        Column("cloth", "Cloth", Text()), Column("how_many", "How many", Count()), Column("width", "Width", Length()),
        Column("length", "Length", Length()),
        Column("selvedges", "Selvedges", Text()), Column("wash", "Wash allowed for", Text()),
        Column("washed_width", "Washed width", Length()), Column("washed_length", "Washed length", Length()),
    )
)  # fmt: skip


def cloths_told(outcome: PlannedOrder, ruler: Ruler) -> Iterator[dict[str, Any]]:
    """A row for each cloth that is cut; one still to be bought is as long as what is bought."""
    rules = outcome.order.rules
    washed = bool(rules.change_length or rules.change_width)
    for cloth, used in Counter(lay.cloth.cloth for lay in outcome.lays).items():
        length = ruler.read(outcome.to_start_from, "up") if cloth.length is None else cloth.length
        yield {
            "cloth": cloth.name, "how_many": used if len(outcome.lays) > 1 else None, "width": cloth.width,
            "length": length,
            "selvedges": _selvedges_said(cloth.edges(rules), ruler), "wash": _wash_said(rules, ruler),
            "washed_width": after_the_wash(cloth.width, rules.change_width) if washed else None,
            "washed_length": after_the_wash(length, rules.change_length) if washed else None,
        }  # fmt: skip


def _selvedges_said(edges: LongEdges, ruler: Ruler) -> str:
    if edges.trimmed:
        return "trimmed already"
    return f"on; {show_length(edges.strip, ruler)} off each" if edges.strip else "on, none trimmed"


def _wash_said(rules: Rules, ruler: Ruler) -> str:
    changes = ((rules.change_length, "along"), (rules.change_width, "across"))
    return ", ".join(f"{DimensionalChange().show(change, ruler)} {way}" for change, way in changes if change) or "none"
