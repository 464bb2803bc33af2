"""What stands in a blank can be typed again with the keyboard that comes up for it on a phone, but for a sign that goes
without saying."""

from collections.abc import Iterator
from contextlib import suppress
from random import Random
from xml.etree import ElementTree

from calculators.asking.answering import Asking
from calculators.asking.rows import rows_of
from calculators.catalogue import catalogue
from calculators.documents.house_method.sections import entries, tables
from calculators.faces.page.form import form_html
from calculators.values.kind import InvalidValue, Kind
from calculators.values.measure import CENTIMETRES, SIXTEENTHS, Ruler

#: What the keyboards of phones have in common, and what the row of keys adds (length-keys.js).
KEYBOARDS = {"numeric": set("0123456789"), "decimal": set("0123456789.,")}
KEYS = {"": set(), "length": set(" /+cmintyd")}


def kinds() -> list[Kind]:
    """Every kind that is written on a line: asked by a calculator, in a row of one, or by the house method."""
    asked = [field.kind for calculator in catalogue().values() for field in calculator.fields]
    in_rows = [column.kind for kind in asked if (rows := rows_of(kind)) for column in rows.columns]
    of_houses = [*(each.kind for each in entries().values())]
    in_lines = [column.kind for table in tables().values() for column in table.columns]
    return [kind for kind in (*asked, *in_rows, *of_houses, *in_lines) if kind.control == "line"]


def written(kind: Kind) -> Iterator[tuple[str, Ruler]]:
    """What a blank writes of the samples of a kind, on either ruler."""
    for ruler in (CENTIMETRES, SIXTEENTHS):
        for sample in kind.samples(Random(3)):
            with suppress(InvalidValue):  # too large for this one
                yield kind.write(kind.parse(sample, ruler), ruler), ruler


def test_each_kind_can_be_typed():
    faults = {}
    tried = 0
    for kind in kinds():
        if kind.mode == "text":
            continue
        have = KEYBOARDS[kind.mode] | KEYS[kind.keys]
        for text, ruler in written(kind):
            tried += 1
            typed = "".join(letter for letter in text if letter in have)
            with suppress(InvalidValue):
                if kind.parse(typed, ruler) == kind.parse(text, ruler):
                    continue
            faults[f"{type(kind).__name__} {text}"] = typed
    assert tried > 100
    assert faults == {}


def test_a_blank_has_the_row_of_keys_of_its_kind():
    made = form_html(catalogue()["pieces-from-cloth"], Asking({}), "here")
    blank = made.find(".//input[@name='piece_width']")
    assert blank is not None and (blank.get("inputmode"), blank.get("data-keys")) == ("decimal", "length")
    assert b"data-keys" in ElementTree.tostring(form_html(catalogue()["lay-plan"], Asking({}), "here"))
