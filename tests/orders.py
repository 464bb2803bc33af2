"""Orders of several articles by chance, as a maker may write them: lopsided, on both rulers, other measures changed."""

import json
import os
import random
from collections.abc import Iterator

from calculators.articles import articles
from calculators.articles.line import other_fields, size_fields
from calculators.asking.answering import Asking
from calculators.values.kinds import Length
from calculators.values.measure import show_exactly

#: How many are tried: few in the whole run, ``ORDERS=500`` for a long one.
ORDERS = int(os.environ.get("ORDERS", "8"))
_CLOTHS = ("lining", "border", "wadding")


def random_orders(seed: int) -> Iterator[dict[str, str]]:
    """What is typed into the order, one after another."""
    chance = random.Random(seed)
    for _ in range(ORDERS):
        unit = chance.choice(["cm", "in"])
        lines = [_line(chance, unit) for _ in range(chance.randint(1, 6))]
        width = show_exactly(chance.randint(280, 400) * 10, unit)
        cloths = [["Linen", width, chance.choice(["", "18.50 per m"]), "", "", "no", "selvedges"]]
        cloths += [[name, width, "9.00 per m", "-3", "-1", "no", "trimmed"] for name in _CLOTHS]
        yield {"lines": json.dumps(lines), "cloths": json.dumps(cloths), "bought_besides": "12.40"}


def _line(chance: random.Random, unit: str) -> list[str]:
    article = chance.choice(list(articles().values()))
    usual = Asking({})
    sizes = [_near(usual.value(field), chance, unit) for field in size_fields(article)]
    other = [
        f"{field.label} {_near(usual.value(field), chance, unit)}"
        for field in other_fields(article)
        if field.name != "minutes_each" and isinstance(field.kind, Length) and chance.random() < 0.2
    ]
    return [article.name, str(chance.randint(1, 30)), *sizes, "", ", ".join(other)]


def _near(length, chance, unit):
    return show_exactly(round(length * chance.uniform(0.85, 1.2) * 16) / 16 or length, unit)
