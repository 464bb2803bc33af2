"""An unlined curtain with a heading tape, joined from widths of cloth."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.hangings import (
    HEM_FIELDS,
    NAMES,
    PAIR_FIELDS,
    ROD_FIELDS,
    WIDTHS_FIELD,
    hanging,
    head_with_tape,
    hem_sides_and_foot,
    refuse_what_cannot_hang,
)
from calculators.articles.measures import hem_of, seam_kind, seam_of
from calculators.articles.widths import CLOTH_FIELDS
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp
from calculators.trade.curtains import Hem


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    refuse_what_cannot_hang(given, given.heading)
    made = hanging(work, given, seam_kind(given), Hem(given.side_hem, given.side_turn))
    hem_sides_and_foot(work, given, made)
    head_with_tape(work, made.edges("top"), given.heading, made.width)
    return made.width, given.drop


ARTICLE = Article(
    name="curtain",
    title="Curtain, unlined",
    purpose="What to cut for one unlined curtain of a rod or track: its widths, and how they are joined and hemmed.",
    fields=(
        *ROD_FIELDS,
        *PAIR_FIELDS,
        *CLOTH_FIELDS,
        WIDTHS_FIELD,
        *HEM_FIELDS,
        hem_of("heading", "Heading allowance", "All the cloth beyond the finished top edge.", "5 cm", "2 in"),
        *seam_of("french", "french", "felled", "plain"),
    ),
    question="A rod of {rod} for {curtains} curtains, a drop of {drop}, fullness {fullness}, cloth {cloth_width} wide.",
    make=_make,
    cut=NAMES,
    not_always=NAMES,
    examples=(
        Example(
            {"rod": "200 cm", "curtains": "2", "drop": "240 cm", "fullness": "2", "side_return": "10 cm",
                "overlap": "10 cm", "gathered": "flat", "cloth_width": "140 cm", "measured": "trimmed",
                "widths_in": "half", "side_hem": "3 cm", "side_turn": "3 cm", "lower_hem": "10 cm",
                "lower_turn": "10 cm", "heading": "5 cm", "seam_allowance": "1 cm"},
            {"finished_width": 2660, "left_width_width": 1400, "left_width_length": 2650, "right_width_width": 1400},
            "worked by hand: (2 × 200 + 30) ÷ 2 = 215 cm; 2 widths are 280 − 2 − 12 = 266 cm; 240 + 5 + 20 = 265 cm",
        ),
    ),
    about="curtain",
    is_let_down=True,
    buys=("tape",),
    sources=("ufgs-12-22-00",),
)  # fmt: skip
