"""The hems and seams of an article, each cut through once."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from calculators.drawing.article import is_step
from calculators.drawing.picture import Picture
from calculators.drawing.section import edge_step
from calculators.trade.articles.parts import EdgeStretch
from calculators.trade.articles.work import MakingUp, listed
from calculators.trade.sections.edge import EdgeMeasures
from calculators.trade.sections.edges import EDGES
from calculators.values.measure import Ruler

_ROW = Fraction(2)  # [mm] from the inner fold of a hem to its row, or half of a hem that is no deeper
_ANY = Fraction(10)  # [mm] of what a kind of edge has not


def edges_cut_through(work: MakingUp, ruler: Ruler) -> tuple[Picture, ...]:
    """Every hem and seam that differs from the others, finished; where two are of one kind, with the sides that have
    it."""
    found: dict[tuple[str, EdgeMeasures], list[EdgeStretch]] = {}
    for each in filter(is_step, work.operations):
        if each.section:
            lengths = {"hem": each.lengths.get("width", _ANY), **each.lengths}
            turn, hem, allowance = (lengths.get(name, _ANY) for name in ("turn", "hem", "allowance"))
            measures = EdgeMeasures(turn, hem, min(_ROW, hem / 2), allowance, bool(each.by_hand))
            found.setdefault((each.section, measures), []).extend(finish.stretch for finish in each.finishes)
    kinds = [name for name, _ in found]
    return tuple(
        _drawn(name, measures, _where(edges) if kinds.count(name) > 1 else "", ruler)
        for (name, measures), edges in found.items()
    )


def _drawn(name: str, measures: EdgeMeasures, where: str, ruler: Ruler) -> Picture:
    steps, title = EDGES[name].steps(measures), EDGES[name].title
    return replace(edge_step(steps, len(steps), ruler), title=title, caption=f"{title}{where and f': {where}'}")


def _where(edges: Sequence[EdgeStretch]) -> str:
    """The sides, and the cloth where it is not the article's own."""
    cloths = {each.part.cloth for each in edges}
    cloth = f" of the {cloths.pop()}" if len(cloths) == 1 and "" not in cloths else ""
    return f"{listed(list(dict.fromkeys(each.side for each in edges)))}{cloth}"
