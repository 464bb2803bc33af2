"""The method the handbook is built with, which fills whatever a reader leaves out.

Two files: the packaged method of a made-up workroom, which says everything, and in a studio's own handbook what that
studio settled, which lies over it.
"""

import json
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from typing import Any

import yaml

from calculators.asking.house_method import HouseMethod, parts_of, read_house_method, value_of
from calculators.asking.usual_cloth import worked_out

PACKAGED, SITES_OWN = "house-method.yaml", "own-house-method.json"
_places: list[Traversable] = [files(__package__)]


def place() -> Traversable:
    """The folder that holds the two files."""
    return _places[0]


def read_from(folder: Traversable) -> None:
    """Take the two files from another folder than this one. To be called before anything asks for the method."""
    _places[:] = [folder]
    for kept in (site_method, example_method, site_document, packaged_document, sites_own_document):
        kept.cache_clear()


@cache
def site_method() -> HouseMethod:
    """The method the handbook is built with: a studio's own over the packaged one, or else that alone."""
    own = sites_own_document()
    return worked_out(read_house_method(own, example_method())) if own else example_method()


@cache
def example_method() -> HouseMethod:
    """The packaged method alone, which no studio settled: what worked examples from outside are worked with."""
    return read_house_method(packaged_document())


@cache
def site_document() -> dict[str, Any]:
    """The data of the site's method, whole, in the same format as a method kept in a browser or a file."""
    packaged, own = packaged_document(), sites_own_document()
    if not own:
        return packaged
    made = laid_over(own, packaged)
    found = {name: site_method().measures[name] for name in site_method().because}
    return {**made, "measures": {**made["measures"], **found}}


def laid_over(document: Mapping[str, Any], under: Mapping[str, Any]) -> dict[str, Any]:
    """A whole document: what one says, and beneath it what another fills in; its words and its name are the first
    one's."""
    measures = dict(under["measures"])
    for name, written in document.get("measures", {}).items():
        has_value = bool(value_of(written))
        measures[name] = written if has_value else {"value": value_of(measures.get(name, "")), **parts_of(written)}
    return {
        **{name: each for name, each in under.items() if name not in ("id", "texts")},
        **document,
        "ruler": {**under["ruler"], **document.get("ruler", {})},
        "measures": measures,
        "tables": {**under["tables"], **document.get("tables", {})},
    }


@cache
def packaged_document() -> dict[str, Any]:
    """The data of house-method.yaml, without the reasons where a studio's own lies over it: they are not its own."""
    document = yaml.safe_load(place().joinpath(PACKAGED).read_text(encoding="utf-8"))
    return _without_reasons(document) if sites_own_document() else document


@cache
def sites_own_document() -> dict[str, Any]:
    """What the studio whose handbook this is has settled, with a figure for each ruler; empty in the handbook as it
    comes."""
    own = place().joinpath(SITES_OWN)
    return json.loads(own.read_text(encoding="utf-8")) if own.is_file() else {}


def _without_reasons(document: Mapping[str, Any]) -> dict[str, Any]:
    rows = {
        name: [{column: each for column, each in row.items() if column != "why"} for row in lines]
        for name, lines in document["tables"].items()
    }
    return {
        **document,
        "measures": {name: value_of(each) for name, each in document["measures"].items()},
        "tables": rows,
    }
