"""What a label says: fibres by weight, the mildest care of all parts, and the size after the wash."""

from collections.abc import Iterable, Mapping
from fractions import Fraction

#: Each treatment, the most severe first: what may be chosen, and what a label says of it.
CARE: Mapping[str, Mapping[str, str]] = {
    "wash": {
        "95": "Wash at 95 °C (203 °F) at most", "60": "Wash at 60 °C (140 °F) at most",
        "40": "Wash at 40 °C (104 °F) at most", "30": "Wash at 30 °C (86 °F) at most",
        "mild": "Wash at 30 °C (86 °F) at most, mild", "hand": "Wash by hand", "not": "Do not wash",
    },
    "bleach": {"any": "Any bleach", "oxygen": "Bleach without chlorine only", "not": "Do not bleach"},
    "dry": {
        "80": "Tumble dry at 80 °C (176 °F) at most", "60": "Tumble dry at 60 °C (140 °F) at most",
        "not": "Do not tumble dry",
    },
    "iron": {
        "200": "Iron at 200 °C (392 °F) at most", "150": "Iron at 150 °C (302 °F) at most",
        "110": "Iron at 110 °C (230 °F) at most, without steam", "not": "Do not iron",
    },
    "clean": {"p": "Dry clean, P", "f": "Dry clean, F only", "not": "Do not dry clean"},
}  # fmt: skip


def by_weight(shares: Iterable[tuple[str, Fraction]]) -> list[tuple[str, Fraction]]:
    """Fibres in the order of a label: the largest share first, each fibre once.

    shares: fibre and its share of the weight [%], in any order.
    Returns the same in the order of a label [%].
    Source: eu-1007-2011 has them in descending order.
    """
    found: dict[str, tuple[str, Fraction]] = {}
    for fibre, share in shares:
        name, before = found.get(fibre.casefold(), (fibre, Fraction(0)))
        found[fibre.casefold()] = (name, before + share)
    return sorted(found.values(), key=lambda each: -each[1])


def mildest(treatment: str, of_parts: Iterable[str]) -> str:
    """The mildest of what the parts bear; treatment: one of `CARE`; of_parts: a choice of each part."""
    order = list(CARE[treatment])
    return order[max(order.index(each) for each in of_parts)]


def after_the_wash(size: Fraction, change: Fraction) -> Fraction:
    """A size after the wash.

    size: before it [mm]; change: negative for shrinkage [%].
    Returns the size [mm].
    Source: iso-5077, the change is a share of the size before.
    """
    return size * (1 + change / 100)
