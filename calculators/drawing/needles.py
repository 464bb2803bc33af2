"""Needles cut through, all to one scale, and which of them suit."""

from calculators.drawing.picture import Picture, Sheet
from calculators.trade.thread_numbers import NEEDLES
from calculators.values.measure import Ruler

_PITCH = 1.6  # [mm] from one needle to the next, where the thickest is 1.2 mm


def needles(suiting: tuple[int, int] | None, ruler: Ruler) -> Picture:
    """Every needle as thick as its blade; metric numbers above, the older ones below, a line under those that suit.

    suiting: the finest and the thickest, by their metric numbers; None where none suits.
    """
    sheet = Sheet((0, 0, _PITCH * len(NEEDLES), 2.2), margins=(6, 24, 6, 44))
    places = {metric: _PITCH * (number + 0.5) for number, metric in enumerate(NEEDLES)}
    for metric, older in NEEDLES.items():
        x, reach = places[metric], metric / 200
        sheet.ellipse("needle-blade", (x, 1.1), (reach, reach))
        sheet.words(str(metric), (x, 2.2), shift=(0, 0))
        sheet.words(str(older), (x, 0), shift=(0, 8))
    told = "none of them suits."
    if suiting:
        finest, thickest = suiting
        left, right = places[finest] - 0.7, places[thickest] + 0.7
        sheet.line("edge", (left, -0.5), (left, -0.7), (right, -0.7), (right, -0.5))
        sheet.words("these suit", ((left + right) / 2, -0.7), shift=(0, 16))
        told = f"those from {finest}/{NEEDLES[finest]} to {thickest}/{NEEDLES[thickest]} suit."
    return sheet.finish(
        "Needles that suit",
        f"Nine needles cut through, from 60/8 to 120/19; {told}",
        with_key=False,
        caption="Blades cut through, all to one scale. Above: the metric number. Below: the older one.",
    )
