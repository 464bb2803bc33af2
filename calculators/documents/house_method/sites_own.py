"""A studio's method as its own handbook carries it: checked, and every length with a figure for each ruler."""

from calculators.asking.house_method import HouseMethod, incomplete, parts_of, read_house_method
from calculators.asking.site_method import example_method
from calculators.catalogue import catalogue
from calculators.documents.house_method.check import UNNAMED
from calculators.documents.house_method.format import normal
from calculators.documents.house_method.reading import read_method
from calculators.documents.house_method.sections import tables
from calculators.documents.house_method.two_rulers import clashes_told, with_both_rulers
from calculators.documents.json_text import InvalidDocument
from calculators.documents.versions import Document


def sites_own(text: str) -> Document:
    """The document that a handbook of the studio's own is built with, from a method as the studio saved it.

    Raises InvalidDocument with a sentence where it cannot be read, or says something that no page could be right about.
    """
    document, _, messages = read_method(text)
    for sentence in (*messages.values(), *clashes_told(document)):
        raise InvalidDocument(f"This house method cannot be built with yet. {sentence}")
    if document["name"] == UNNAMED:
        raise InvalidDocument("This house method has no name. Give it one on the page House method, and save it again.")
    whole = with_both_rulers(read_house_method(document, example_method()))
    return normal({**document, "measures": _measures(document, whole), "tables": _tables(document, whole)})


def check_packaged() -> None:
    """Raises: ValueError with a sentence where the packaged method leaves out what a page begins with."""
    wanted = {field.default for calculator in catalogue().values() for field in calculator.fields if field.default}
    lacking = sorted((wanted - example_method().measures.keys()) | (tables().keys() - example_method().tables.keys()))
    if lacking:
        raise ValueError(incomplete(lacking))


def _measures(document: Document, whole: HouseMethod) -> Document:
    written = document.get("measures", {})
    reasons = {name: parts_of(each)["why"] for name, each in written.items() if "why" in parts_of(each)}
    values = {name: whole.measures[name] for name in written if f"measures.{name}" in whole.own}
    return {
        name: {"value": values.get(name, ""), "why": reasons[name]} if name in reasons else values[name]
        for name in written
    }


def _tables(document: Document, whole: HouseMethod) -> Document:
    return {name: [dict(line) for line in whole.tables[name]] for name in document.get("tables", {})}
