"""Steps that can be played: one drawing that a script takes from each step to the next.

It holds a group for every step, which the script fills with that step's own drawing, and between two of them what moves
there: flaps that turn about a line, strips that bend, or the whole work turned over. Where nothing that moves can be
shown, there is no group, and one step follows the other.
"""

import xml.etree.ElementTree as ET
from collections.abc import Sequence
from dataclasses import dataclass

LIFT = 0.3  # of its width: how far up the sheet a flap is drawn that stands upright, as if seen a little from the front


@dataclass(frozen=True)
class PlayedStep:
    """A step in a drawing that is played.

    name: of the step. down: how far its own drawing is moved down on the sheet [drawing units]. arrives: what moves
    from the step before to it, in order. jumps: whether something moves that cannot be shown. drawn: what is to be seen
    of it, where the list of steps has no drawing of that. ahead: whether it comes before the first step.
    """

    name: str
    down: float = 0
    arrives: Sequence[ET.Element] = ()
    jumps: bool = False
    drawn: Sequence[ET.Element] = ()
    ahead: bool = False


def played(steps: Sequence[PlayedStep], box: tuple[float, float, float, float]) -> ET.Element | None:
    """The drawing; None where nothing moves. box: what of the sheet is shown: left, top, width, height [drawing
    units]."""
    if not any(each.arrives for each in steps):
        return None
    svg = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "class": "to-scale",
            "role": "img",
            "viewBox": " ".join(f"{each:.1f}".removesuffix(".0") for each in box),
            "data-lift": str(LIFT),
        },
    )
    for step in steps:
        svg.extend(step.arrives)
        made = ET.SubElement(svg, "g", {"class": "step", "data-name": step.name, "data-down": f"{step.down:.1f}"})
        if step.jumps:
            made.set("data-jumps", "")
        if step.ahead:
            made.set("data-ahead", "")
        if step.drawn:
            made.set("data-drawn", "")
            made.extend(step.drawn)
    return svg


def turned_over(about: float, upright: bool) -> ET.Element:
    """The whole work turned over about an upright or a level line at a place of the sheet [drawing units]."""
    return ET.Element("g", {"class": "turn", "data-about": f"{about:.1f}", "data-upright": "1" if upright else "0"})
