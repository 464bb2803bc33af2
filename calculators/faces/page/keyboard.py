"""How a kind of value is typed on a phone: which keyboard comes up, and which row of keys a script puts above it."""

from calculators.faces.page.markup import Attributes
from calculators.values.kind import Kind


def keyboard(kind: Kind) -> Attributes:
    """The attributes of a blank for a kind."""
    return {"inputmode": kind.mode, "data-keys": kind.keys or None}
