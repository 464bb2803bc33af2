"""What the tests of the lay plan share."""

from calculators.asking.answering import Asking, filled
from calculators.catalogue import calculator_named
from calculators.values.measure import CENTIMETRES

LAY = calculator_named("lay-plan")

LARGE = {
    "cloths": "Linen | 150 cm | 60 m; Cotton | 140 cm | 30 m | 2",
    "pieces": "Napkin | 40 cm | 40 cm | 300 ; Placemat | 35 cm | 48 cm | 120 | yes; Runner | 45 cm | 150 cm | 20; "
    "Towel | 50 cm | 70 cm | 60 | yes",
}

RUNNERS = {
    "cloths": "Linen | 150 cm",
    "pieces": "Runner | 50 cm | 204 cm | 9",
    "aim": "buy",
    "selvedge": "0",
    "end_loss": "0",
    "skew": "0",
}
WASHED = {"change_length": "0", "change_width": "0"}


def of_washed_cloth(typed, **circumstances):
    """An order from cloth washed already; without a word of it the wash of the house's cloth is still to come."""
    return Asking({**WASHED, **typed}, **circumstances)


def notes(reply, ruler=CENTIMETRES):
    return " ".join(filled(note, LAY, ruler) for note in reply.notes)


def saved(reply, name):
    (wanted,) = (each for each in LAY.files if each.name == name)
    return wanted.text(reply.drawn_from, CENTIMETRES)
