"""Ways to make one corner beside each other: how thick each gets."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TypedDict

from calculators.trade.corners.binding import Pleats
from calculators.trade.corners.bulk import Bulk, bulk
from calculators.trade.corners.constructions import CONSTRUCTIONS, Measures
from calculators.trade.corners.mitre_lines import CreasesMiss
from calculators.trade.corners.stack import NothingThere
from calculators.trade.corners.turning_out import PokesOut, Pressing, Trimming


class _Own(TypedDict, total=False):
    """What a way does otherwise than the measures say."""

    trimming: Trimming
    pressed: Pressing
    pleats: Pleats


VARIANTS: Mapping[str, tuple[str, str, _Own]] = {
    "folded-corner": ("Folded, no mitre", "folded-corner", {}),
    "mitre-whole-side": (
        "Mitre, corner left whole, pressed to one side",
        "mitre",
        {"trimming": "left whole", "pressed": "to one side"},
    ),
    "mitre-whole": ("Mitre, corner left whole, pressed open", "mitre", {"trimming": "left whole"}),
    "mitre-side": ("Mitre, trimmed, pressed to one side", "mitre", {"trimming": "trimmed", "pressed": "to one side"}),
    "mitre-trimmed": ("Mitre, trimmed, pressed open", "mitre", {"trimming": "trimmed"}),
    "mitre-snipped": ("Mitre, trimmed, point snipped", "mitre", {"trimming": "trimmed, point snipped"}),
    "mitre-flat": (
        "Mitre, everything opened flat, point snipped",
        "mitre-opened-flat",
        {"trimming": "trimmed, point snipped"},
    ),
    "folded-mitre": ("Folded mitre, no seam", "folded-mitre", {"trimming": "trimmed"}),
    "faced-whole": ("Faced, point left whole", "faced", {"trimming": "left whole"}),
    "faced": ("Faced, point cut across", "faced", {"trimming": "trimmed"}),
    "binding-same": ("Binding, both mitres laid the same way", "binding", {"pleats": "the same way"}),
    "binding": ("Binding, mitres laid opposite ways", "binding", {"pleats": "opposite ways"}),
}
"""Name → what it is called, the construction, and what it does its own way."""


@dataclass(frozen=True)
class ComparedCorner:
    """One way to make the corner. bulk: its layers; None where this corner cannot be made that way."""

    name: str
    title: str
    bulk: Bulk | None


def compared(measures: Measures) -> Iterator[ComparedCorner]:
    """Every way in turn, for the same hems, turn and angle."""
    for name, (title, way, own) in VARIANTS.items():
        yield ComparedCorner(name, title, _layers(way, replace(measures, **own)))


@lru_cache(maxsize=4 * len(VARIANTS))
def _layers(way: str, measures: Measures) -> Bulk | None:
    """The layers of one corner; kept, since a page shows one corner in several places, and most of what is typed next
    changes only what is shown."""
    try:
        steps = CONSTRUCTIONS[way].steps(measures)
    except (CreasesMiss, NothingThere, PokesOut):
        return None
    return bulk(steps[-1].seen)
