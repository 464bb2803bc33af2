"""What a house's own method holds for an order: its cloth, and what that costs."""

import json

from calculators.asking.house_method import HouseMethod
from calculators.catalogue.thread_time_cost.from_method import price_of_cloth
from calculators.values.measure import Ruler

CLOTHS = {"cm": "Linen | 150 cm", "in": "Linen | 60 in"}
LINES = {
    "cm": "napkin | 8 | 45 cm | 45 cm; cushion-overlap | 2 | 45 cm | 45 cm",
    "in": "napkin | 8 | 18 in | 18 in; cushion-overlap | 2 | 18 in | 18 in",
}
_LONGEST_NAME = 30


def cloths(method: HouseMethod, ruler: Ruler) -> str:
    """The usual cloth as it is bought, with its price where the house lists one."""
    name = method.measure("cloth", ruler)[:_LONGEST_NAME] or "Linen"
    return json.dumps([[name, method.measure("cloth_width", ruler), price_of_cloth(method, ruler)]], ensure_ascii=False)
