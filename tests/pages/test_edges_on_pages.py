"""Every hem, seam and closing that can be drawn is drawn where somebody makes it."""

import re
from pathlib import Path

from calculators.trade.sections.edges import EDGES

DOCS = Path(__file__).parents[2] / "docs"
SHOWN = re.compile(r"\{\{ (?:steps|figure|beside) edge-steps ([^}]*)\}\}")
EDGE = re.compile(r'edge="([\w-]+)"')


def test_every_edge_stands_on_a_page():
    markers = (fields for page in DOCS.rglob("*.md") for fields in SHOWN.findall(page.read_text("utf-8")))
    shown = {name for fields in markers for name in EDGE.findall(fields)}
    assert shown == set(EDGES)
