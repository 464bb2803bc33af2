"""Whatever a studio makes, its handbook can be built: no page asks for more than its numbers give."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest

from calculators.asking import site_method as sites
from calculators.documents.house_method.reading import read_method
from calculators.documents.house_method.sites_own import sites_own
from calculators.documents.json_text import write_json
from scripts.pages.markers import PageMarkers, UnknownMarker
from scripts.tools.places import ROOT

HOUSES = {
    "tablecloths": {"piece_width": "180 cm", "piece_length": "300 cm"},
    "deep hems": {"hem": "12 cm", "turn": "3 cm"},
    "a hem as deep as its piece": {"piece_width": "10 cm", "piece_length": "10 cm"},
    "ribbon": {"cloth_width": "30 cm"},
    "a short length": {"cloth_length": "40 cm"},
    "inches": {"hem": "1 in", "cloth_length": "5 yd", "cloth_width": "58 in"},
}
PAGES = sorted((ROOT / "docs").rglob("*.md"))


@pytest.fixture(params=HOUSES)
def house(request, tmp_path: Path) -> Iterator[str]:
    """A studio's method in place of the site's."""
    before = sites.place()
    (tmp_path / sites.PACKAGED).write_text(before.joinpath(sites.PACKAGED).read_text(encoding="utf-8"))
    document = {"format": "house method", "version": 2, "name": request.param, "measures": HOUSES[request.param]}
    (tmp_path / sites.SITES_OWN).write_text(write_json(sites_own(json.dumps(document))))
    sites.read_from(tmp_path)
    read_method.cache_clear()
    yield request.param
    sites.read_from(before)
    read_method.cache_clear()


def test_every_page_is_made(house):
    for page in PAGES:
        made = PageMarkers("../")
        made.take_out(page.read_text(encoding="utf-8"))
        assert "{piece" not in "".join(made.shown), "a sentence stands there with its places unfilled"


def test_a_page_of_the_handbook_as_it_comes_that_asks_too_much_still_stops_the_build():
    with pytest.raises(UnknownMarker):
        PageMarkers(home="").take_out('{{ calculator pieces-from-cloth cloth_width="20 cm" }}')
