"""A napkin, or any other piece with a hem on all four sides and nothing else."""

from calculators.articles.hemmed import hemmed_piece
from calculators.articles.measures import HEM_FIELD, TURN_FIELD
from calculators.asking.declaration import Example

ARTICLE = hemmed_piece(
    "napkin",
    "Napkin",
    ("40 cm", "40 cm"),
    ("16 in", "16 in"),
    (TURN_FIELD, HEM_FIELD),
    Example(
        {"width": "18 in", "length": "18 in", "turn": "1/4 in", "hem": "1/4 in"},
        {"napkin_width": 19 * 25.4, "napkin_length": 19 * 25.4, "stitching": 4 * 18 * 25.4},
        "derived: finished + 2·(hem + turn); 18 in with 1/4 + 1/4 in → 19 in",
    ),
)
