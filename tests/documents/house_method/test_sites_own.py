"""A handbook of a studio's own: its method, partial as a browser saves it, lies over the packaged one."""

import copy
import json
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from calculators.asking import site_method as sites
from calculators.asking.house_method import HouseMethod
from calculators.catalogue.lay_plan import from_method
from calculators.documents.house_method.check import mended
from calculators.documents.house_method.format import migrated
from calculators.documents.house_method.reading import house_of, read_method
from calculators.documents.house_method.sites_own import check_packaged, sites_own
from calculators.documents.json_text import InvalidDocument, write_json
from calculators.faces.house_method.sheet import is_handbooks
from calculators.faces.page.markup import html
from calculators.faces.page.own_words import place_for_words, words_on_page

PARTIAL = {
    "format": "house method",
    "version": 2,
    "id": "harbour",
    "name": "Harbour Lane",
    "ruler": {"unit": "in", "in_step": "1/8"},
    "measures": {
        "hem": "1 in",
        "piece_width": "20 in",
        "turn": {"why": "As wide as our gauge."},
        "folded_length": {"value": "31 in", "why": "The width of the table."},
        "cloth": "Hemp",
    },
    "tables": {"cloths": [{"cloth": "Hemp", "change_length": "−6 %"}], "pieces": []},
    "texts": {"hems": "Press **hard**."},
}
SMALLEST = {"format": "house method", "version": 2, "name": "Harbour Lane"}


@pytest.fixture
def built_with(tmp_path: Path) -> Iterator[Callable[[dict], HouseMethod]]:
    """Makes a studio's method the handbook's."""
    (tmp_path / sites.PACKAGED).write_text(sites.place().joinpath(sites.PACKAGED).read_text(encoding="utf-8"))

    def make(document: dict) -> HouseMethod:
        (tmp_path / sites.SITES_OWN).write_text(write_json(sites_own(json.dumps(document))))
        sites.read_from(tmp_path)
        read_method.cache_clear()
        return sites.site_method()

    before = sites.place()
    yield make
    sites.read_from(before)
    read_method.cache_clear()


@pytest.mark.parametrize("document", [PARTIAL, SMALLEST], ids=["some", "nothing but a name"])
def test_a_partial_method_is_filled_from_the_packaged_one(built_with, document):
    packaged = sites.site_method()
    followed = house_of(mended(migrated(document))[0])  # what a reader who follows it over the packaged one gets
    site = built_with(document)
    for each in ("name", "unit", "rulers", "measures", "tables", "texts", "own", "because", "exactly"):
        if each == "tables":
            bare = {name: tuple(map(_without_reason, lines)) for name, lines in followed.tables.items()}
            assert {name: tuple(map(_without_reason, lines)) for name, lines in site.tables.items()} == bare
        else:
            assert getattr(site, each) == getattr(followed, each), each
    assert set(site.measures) == set(packaged.measures)


def _without_reason(line: dict) -> dict:
    return {name: each for name, each in line.items() if name != "why"}


@pytest.mark.parametrize("document", [PARTIAL, SMALLEST], ids=["some", "nothing but a name"])
def test_the_sites_document_is_whole_of_the_format_and_says_what_the_method_says(built_with, document):
    site = built_with(document)
    whole = sites.site_document()
    kept, messages = mended(migrated(whole))
    assert messages == {} and set(kept["measures"]) == set(site.measures)
    again = sites.read_house_method(whole)
    assert {**again.measures, "texts": again.texts} == {**site.measures, "texts": site.texts}
    assert again.tables == {name: tuple(lines) for name, lines in site.tables.items()} and again.rulers == site.rulers


def test_no_reason_and_no_words_of_the_made_up_workroom_stand_in_the_studios_name(built_with):
    site = built_with(PARTIAL)
    assert site.why == {
        "measures.turn": "As wide as our gauge.",
        "measures.folded_length": "The width of the table.",
    }
    assert not any("why" in line for lines in site.tables.values() for line in lines)
    assert sites.site_document()["texts"] == PARTIAL["texts"] and "Harbour" in sites.site_document()["name"]


def test_what_the_studio_settled_is_told_from_what_the_handbook_fills_in(built_with):
    assert not is_handbooks(sites.site_method(), "measures.bobbin"), "the example is the handbook's as a whole"
    assert "hidden" in html(place_for_words("hems"))
    site = built_with(PARTIAL)
    assert not is_handbooks(site, "measures.hem") and is_handbooks(site, "measures.bobbin")
    assert words_on_page(site, "hems") and not words_on_page(site, "cloths")
    assert "Press" in html(place_for_words("hems")) and "hidden" not in html(place_for_words("hems"))
    assert "hidden" in html(place_for_words("cloths"))


def test_a_lay_plan_begins_with_the_studios_cloth_and_piece_not_the_examples(built_with):
    assert from_method.cloths(sites.site_method(), sites.site_method().ruler()) == ""
    site = built_with(PARTIAL)
    assert '"Hemp"' in from_method.cloths(site, site.ruler())
    assert '"20 in"' in from_method.pieces(site, site.ruler())
    reader = house_of(mended(migrated({**SMALLEST, "name": "A reader's"}))[0])
    assert from_method.cloths(reader, site.ruler()) == from_method.cloths(site, site.ruler())


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ({"format": "recipe"}, "not a house method"),
        ({"version": 99}, "newer handbook"),
        ({"name": "  "}, "has no name"),
        ({"measures": {"hem": "36 banana"}}, "Hem depth: .*not a length"),
        ({"measures": {"hem": {"cm": "2 cm", "in": "3 in"}}}, "Two measures stand under this one name"),
        ({"tables": {"cloths": [{"needle": "80/12"}]}}, "Name a cloth"),
    ],
)
def test_what_cannot_be_built_with_is_told_in_a_sentence(change, told):
    with pytest.raises(InvalidDocument, match=told):
        sites_own(json.dumps({**PARTIAL, **change}))


@pytest.mark.parametrize("text", ["", "[]", "{", "name: x", '{"format": "house method"}'])
def test_a_file_that_is_no_method_is_told_in_a_sentence(text):
    with pytest.raises(InvalidDocument):
        sites_own(text)


@pytest.mark.parametrize("lost", ["name", "ruler unit", "ruler in_step", "measures hem", "tables cloths"])
def test_a_packaged_method_that_leaves_something_out_is_told_of_by_its_name(lost, monkeypatch):
    document = copy.deepcopy(sites.packaged_document())
    *groups, name = lost.split()
    del (document[groups[0]] if groups else document)[name]
    sites.example_method.cache_clear()
    monkeypatch.setattr(sites, "packaged_document", lambda: document)
    try:
        with pytest.raises(ValueError, match=rf"leaves out {name}\..*--house FILE"):
            check_packaged()
    finally:
        monkeypatch.undo()
        sites.example_method.cache_clear()


def test_the_packaged_method_is_whole():
    check_packaged()
