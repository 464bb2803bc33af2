"""What a house's own method holds for a lay plan: its cloth, its usual piece and what its wash does.

The example of the handbook as it comes is a longer cloth than the house's, three kinds of piece, and the house's wash.
"""

import json

from calculators.asking.house_method import HouseMethod
from calculators.values.measure import Ruler

CLOTHS = {"cm": "Linen | 150 cm | 450 cm | 1 | no", "in": "Linen | 60 in | 180 in | 1 | no"}
PIECES = {
    "cm": "Napkin | 46 cm | 46 cm | 12 | no; Placemat | 35 cm | 48 cm | 8 | no; Runner | 45 cm | 140 cm | 2 | no",
    "in": "Napkin | 18 in | 18 in | 12 | no; Placemat | 14 in | 19 in | 8 | no; Runner | 18 in | 55 in | 2 | no",
}
LONGEST_NAME = 30


def cloths(method: HouseMethod, ruler: Ruler) -> str:
    """The usual cloth as it is bought, where the house says what it is; the example's length where it says no
    length."""
    if not _settled(method, "cloth", "cloth_width", "cloth_length"):
        return ""
    name, width, length = _example(CLOTHS, ruler)[0][:3]
    name = method.measure("cloth", ruler)[:LONGEST_NAME] if "measures.cloth" in method.settled else name
    length = method.measure("cloth_length", ruler) if "measures.cloth_length" in method.settled else length
    width = method.measure("cloth_width", ruler) if "measures.cloth_width" in method.settled else width
    return json.dumps([[name, width, length, "1", "no"]], ensure_ascii=False)


def pieces(method: HouseMethod, ruler: Ruler) -> str:
    """The usual piece, where the house says what it is; beside it those of the example, unless the house has kinds of
    its own."""
    has_kinds = "tables.pieces" in method.settled
    if not has_kinds and not _settled(method, "piece_width", "piece_length"):
        return ""
    first, *others = _example(PIECES, ruler)
    name = next(iter(method.kinds_of_piece), "Piece")[:LONGEST_NAME] if has_kinds else first[0]
    size = [method.measure(each, ruler) for each in ("piece_width", "piece_length")]
    return json.dumps([[name, *size, *first[3:]], *([] if has_kinds else others)], ensure_ascii=False)


def _settled(method: HouseMethod, *names: str) -> bool:
    return any(f"measures.{name}" in method.settled for name in names)


def _example(rows: dict[str, str], ruler: Ruler) -> list[list[str]]:
    text = rows["in" if ruler.unit == "in" else "cm"]
    return [[cell.strip() for cell in row.split("|")] for row in text.split(";")]
