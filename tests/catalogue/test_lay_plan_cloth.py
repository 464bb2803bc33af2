"""A cutting list names the cloths it is for, so that the right one is laid on the table."""

from calculators.asking.answering import Asking, answer
from calculators.values.measure import CENTIMETRES, SIXTEENTHS
from tests.catalogue.lay_plans import LAY, WASHED


def told(ruler=CENTIMETRES, **typed) -> list[dict]:
    """The rows of the table of cloths as a maker reads them, empty cells left out."""
    table = LAY.result("on_table").kind
    asking = Asking(typed, wanted_ruler=ruler.unit)
    rows = answer(LAY, asking).results["on_table"]
    return [
        {column.label: cell for column, cell in zip(table.read, table.cells(row, asking.ruler)) if cell} for row in rows
    ]


def test_a_cloth_is_told_as_bought_with_selvedges_and_wash():
    cloth = {"Cloth": "Linen", "Width": "150 cm", "Length": "450 cm"}
    assert told(**WASHED) == [cloth | {"Selvedges": "on; 1.5 cm off each", "Wash allowed for": "none"}]
    assert told()[0]["Wash allowed for"] == "−4.8 % along, −2.4 % across"
    assert told(selvedge="0")[0]["Selvedges"] == "on, none trimmed"
    washed = told(change_length="-4", change_width="−2")
    assert washed == [
        cloth
        | {
            "Selvedges": "on; 1.5 cm off each",
            "Wash allowed for": "−4 % along, −2 % across",
            "Washed width": "147 cm",
            "Washed length": "432 cm",
        }
    ]
    assert told(**WASHED | {"change_width": "-2"})[0]["Wash allowed for"] == "−2 % across"


def test_of_several_cloths_those_are_told_that_are_cut_and_how_many():
    cloths = "Linen | 150 cm | 200 cm | 2 ; Offcut | 60 cm | 60 cm | 1 | no | trimmed ; Scrap | 30 cm | 30 cm"
    rows = told(cloths=cloths, pieces="Napkin | 46 cm | 46 cm | 26")
    assert [(row["Cloth"], row["How many"], row["Selvedges"]) for row in rows] == [
        ("Linen", "2", "on; 1.5 cm off each"),
        ("Offcut", "1", "trimmed already"),
    ]


def test_cloth_to_buy_is_as_long_as_what_is_bought():
    typed = {"cloths": "Linen | 60 in", "aim": "buy", "change_length": "-5"}
    (row,) = told(SIXTEENTHS, **typed)
    said = answer(LAY, Asking(typed, wanted_ruler="in"))
    assert row["Length"] == LAY.result("to_start_from").kind.show(
        said.results["to_start_from"], SIXTEENTHS
    ).removeprefix("about ")
