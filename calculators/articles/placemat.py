"""A placemat: hemmed as a napkin is, with a wider border that keeps its corners flat."""

from calculators.articles.hemmed import hemmed_piece
from calculators.articles.measures import turn_and_hem
from calculators.asking.declaration import Example

ARTICLE = hemmed_piece(
    "placemat",
    "Placemat",
    ("45 cm", "33 cm"),
    ("18 in", "13 in"),
    turn_and_hem("Placemat"),
    Example(
        {"width": "45 cm", "length": "33 cm", "turn": "1 cm", "hem": "2.5 cm"},
        {"placemat_width": 520, "placemat_length": 400, "stitching": 1560},
        "worked by hand: 45 + 2 × 3.5 = 52 cm, 33 + 7 = 40 cm; 2 × (45 + 33) cm round it",
    ),
)
