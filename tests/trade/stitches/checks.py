"""What must hold of any stitch: each check tells what a hand could not sew, or what would not hold."""

from collections.abc import Iterator
from itertools import pairwise

from calculators.trade.stitches.stitch import Place, Stitch, ThreadPart

TIMES = 4  # stitches looked at


def faults(stitch: Stitch) -> list[str]:
    """Everything that is wrong with a stitch, one sentence each; none where it can be sewn and holds."""
    return [*_turns(stitch), *_advances(stitch), *_below(stitch), *_holds(stitch), *_in_cloth(stitch)]


def _through(places: tuple[Place, ...]) -> list[Place]:
    return [place for place in places if place.goes_through]


def _turns(stitch: Stitch) -> Iterator[str]:
    """Out and in by turns: each part has as many places where it comes out as where it goes in."""
    for name, part in (("beginning", stitch.begin), ("stitch", stitch.once), ("end", stitch.end)):
        if len(_through(part)) % 2:
            yield f"the {name} has an odd number of places, so that out and in change places"
    if stitch.once and not stitch.once[0].goes_through:
        yield "the first place is none of the needle's"
    through = _through(tuple(stitch.places(TIMES)))
    if any(one == other for one, other in pairwise(through)):
        yield "the needle goes back through the hole that it came from"


def _advances(stitch: Stitch) -> Iterator[str]:
    """Each stitch gets on, and nothing of it lies farther back than where the last began."""
    if stitch.advance <= 0:
        yield "it does not get on"
    elif min(place.along for place in stitch.once) < -stitch.advance:
        yield "it goes back beyond the stitch before it"


def _below(stitch: Stitch) -> Iterator[str]:
    """Thread under the cloth is no longer than promised: long ones catch and draw up."""
    for thread in stitch.threads(TIMES):
        if not thread.over and _length(thread) > float(stitch.below) + 1e-9:
            yield "a thread under the cloth is longer than promised"
            return


def _length(thread: ThreadPart) -> float:
    return sum(float((b.along - a.along) ** 2 + (b.across - a.across) ** 2) ** 0.5 for a, b in pairwise(thread.places))


def _holds(stitch: Stitch) -> Iterator[str]:
    """The needle goes through each band that it promises to hold."""
    found = {stitch.band_at(place.across).name for place in _through(stitch.once)}
    for name in stitch.holds:
        if name not in found:
            yield f"it does not hold the {name}"


def _in_cloth(stitch: Stitch) -> Iterator[str]:
    """Where there is no cloth, the thread goes round an edge: that place lies between two in the cloth."""
    looks = [stitch.band_at(place.across).look for place in _through(tuple(stitch.places(TIMES)))]
    if any(one == other == "nothing" for one, other in pairwise(looks)):
        yield "it is sewn in the air"
