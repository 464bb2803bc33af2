"""Two ways of making one thing, taken step by step together, so that it is seen where they part."""

import xml.etree.ElementTree as ET
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from calculators.drawing.picture import PictureSeries


@dataclass(frozen=True)
class InStep:
    """Two series of drawings at one scale, each with what is played of it."""

    one: PictureSeries
    other: PictureSeries

    @property
    def stops(self) -> list[tuple[int, int]]:
        """Where both stand together: numbers of their played steps, from 0."""
        return together(*(_names(series) for series in (self.one, self.other)))

    @property
    def alike(self) -> str:
        """The last step up to which both are drawn alike; "" where they part at once."""
        last = ""
        for one, other in zip(self.one.pictures, self.other.pictures):
            if one.title != other.title or ET.tostring(one.svg) != ET.tostring(other.svg):
                break
            last = one.title
        return last


def _names(series: PictureSeries) -> tuple[str, ...]:
    """The steps of what is played; of a series in which nothing moves, its drawings."""
    if series.played is None:
        return tuple(each.title for each in series.pictures)
    return tuple(step.get("data-name", "") for step in series.played.iterfind("g[@class='step']"))


def together(one: Sequence[str], other: Sequence[str]) -> list[tuple[int, int]]:
    """Where two ways stand together, step by step, from both first steps to both last ones.

    one, other: the names of their steps. Steps of one name are taken together, as many as can be; of what lies between,
    the last are, so that the way with less to do waits first.
    Source: derived, the longest common subsequence of both lists of names.
    """
    stops = [(0, 0)]
    for step, there in [*_common(tuple(one), tuple(other)), (len(one) - 1, len(other) - 1)]:
        while stops[-1] != (step, there):
            (at, by), far, long = stops[-1], step - stops[-1][0], there - stops[-1][1]
            stops.append((at + (far >= long), by + (long >= far)))
    return stops


@lru_cache(maxsize=256)
def _common(one: tuple[str, ...], other: tuple[str, ...]) -> tuple[tuple[int, int], ...]:
    """The steps that both have, in the order of both: as many as can be."""
    longest: list[list[tuple[tuple[int, int], ...]]] = [[()] * (len(other) + 1) for _ in range(len(one) + 1)]
    for at, name in enumerate(one):
        for by, there in enumerate(other):
            kept = max(longest[at][by + 1], longest[at + 1][by], key=len)
            longest[at + 1][by + 1] = (*longest[at][by], (at, by)) if name == there else kept
    return longest[-1][-1]
