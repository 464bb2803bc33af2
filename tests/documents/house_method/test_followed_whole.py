"""A method is followed whole: wherever a house has said something, no page shows what the handbook's own method says of
it."""

import json
import re
import shlex
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from calculators.asking.answering import Asking, answer
from calculators.asking.declaration import InvalidInput
from calculators.asking.house_method import FORMAT, VERSION, HouseMethod
from calculators.asking.rows import Rows
from calculators.asking.site_method import example_method, site_document, site_method
from calculators.asking.usual_cloth import usual_cloth
from calculators.batch.walk import BATCH, go
from calculators.catalogue import calculator_named, catalogue
from calculators.documents.house_method.format import normal
from calculators.documents.house_method.reading import house_of, written_down
from calculators.documents.house_method.sections import entries, sections, tables
from calculators.documents.house_method.two_rulers import agree
from calculators.faces.browser import replies
from calculators.faces.job.walk import walk_replies
from calculators.faces.page.markup import html
from calculators.faces.page.own_words import AT_STEPS
from calculators.faces.page.reply import answer_reply, invalid_reply
from calculators.faces.page.sentence_number import HOUSE, number_text
from calculators.faces.ticket.sheets import ticket_sheets
from calculators.ticket.batch import batch_of
from calculators.values.kinds import Choice, Count, Length, Text
from calculators.values.measure import Ruler, parse_length, show_exactly, system_of

DOCS = Path(__file__).parents[3] / "docs"
INCHES = {"cm": Ruler("cm", Fraction(1, 10)), "in": Ruler("in", Fraction(1, 8))}


def ask(**request):
    return json.loads(list(replies(json.dumps(request)))[-1])


def text(question: str, **request) -> str:
    return re.sub(
        r"\s+",
        " ",
        re.sub("<[^>]*>", " ", json.dumps(ask(ask=question, **request), ensure_ascii=False)).replace(
            "\N{NO-BREAK SPACE}", " "
        ),
    )


def other_length(name: str, kind: Length, times: Fraction) -> str:
    """Another length than the handbook's, on a ruler of eighths or, for a small one, of sixty-fourths."""
    value = parse_length(site_method().measure(name, INCHES["in"]))
    step = Fraction(254, 10) / (8 if value > 30 else 64)
    value *= times if value > 30 else times**3
    return show_exactly(max(1, round(value / step)) * step, "in")


def document(times: Fraction = Fraction(9, 10), word: str = "Studio") -> dict:
    """A wholly different house, in inches: every measure, table and text its own."""
    measures = {}
    for name, entry in entries().items():
        if isinstance(entry.kind, Length):
            measures[name] = other_length(name, entry.kind, times)
        elif isinstance(entry.kind, Count):
            measures[name] = {"layers": "3", "bundle": "5"}.get(name, "7")
        else:
            measures[name] = {"money": "$", "cloth": f"{word} linen", "learning": f"{80 + len(word)} %"}.get(
                name, f"{word} {name}"
            )
    lines = {
        "pieces": [{"piece": f"{word} square", "turn": other_length("turn", entries()["turn"].kind, times),
            "hem": "1/2 in"}],
        "cloths": [
            {"cloth": f"{word} linen", "needle": "70/10", "thread": "silk", "change_length": "−3 %",
                "change_width": "−1 %", "found_on": "today"},
            {"cloth": f"{word} hemp", "needle": "110/18", "thread": "tow", "change_length": "−9 %",
                "change_width": "−6 %"},
        ],
        "steps": [{"step": f"{word} cutting", "minutes": "2.25", "for_each": "piece"},
            {"step": "Laying", "minutes": "11", "for_each": "batch"}],
        "operations": [{"operation": "hem", "minutes": "3.75", "for_each": "yard"},
            {"operation": "cut", "minutes": "2.5", "for_each": "time"}],
        "prices": [
            {"thing": f"{word} linen", "price": "14.25", "per": "yard"},
            {"thing": f"{word} hemp", "price": "9.75", "per": "yard"},
            {"thing": "Thread", "price": "4.15", "per": "spool"}, {"thing": "Hour", "price": "41", "per": "hour"},
        ],
    }  # fmt: skip
    own = {"opening": f"{word} opening.", **{each.name: f"{word} words on {each.name}." for each in sections()}}
    return normal(
        {
            "format": FORMAT,
            "version": VERSION,
            "id": "studio",
            "name": f"{word} house",
            "ruler": {"unit": "in", "in_step": "1/8", "cm_step": "1/2"},
            "measures": measures,
            "tables": lines,
            "texts": own,
        }
    )


STUDIO = document()
TEXT = written_down(STUDIO)


@cache
def over(which: str) -> HouseMethod:
    """The studio's method over the handbook's own, or over a handbook that says something else everywhere."""
    if which == "handbook":
        return house_of(STUDIO)
    strange = house_of(document(Fraction(21, 20), "Strange"))
    return house_of(STUDIO, strange)


@pytest.mark.parametrize("ruler", ["", "cm"])
@pytest.mark.parametrize("name", sorted(catalogue()))
def test_a_calculator_shows_nothing_of_the_handbooks_method(name, ruler):
    """Over another handbook the studio's pages are the same letter for letter: nothing in them is from below."""
    calculator = calculator_named(name)

    def page(which: str) -> dict:
        asking = Asking({}, method=over(which), wanted_ruler=ruler)
        try:
            return answer_reply(calculator, answer(calculator, asking), asking)
        except InvalidInput as error:
            return invalid_reply(calculator, error, asking)

    assert page("handbook") == page("strange")


@pytest.mark.parametrize("ruler", ["", "cm"])
def test_nor_do_the_steps_of_a_batch_and_its_ticket(ruler):
    typed = {"order": {"piece": "studio square", "ordered": "12"}}

    def whole(which: str):
        asking = Asking({}, method=over(which), wanted_ruler=ruler)
        steps = walk_replies(BATCH, typed, asking)
        return steps, [
            html(each) for each in ticket_sheets("Job", batch_of(go(BATCH, typed, asking), asking.method), {}, [])
        ]

    assert whole("handbook") == whole("strange")
    assert all("answer" in each for each in whole("handbook")[0].values())


def _markers(verb: str):
    for page in sorted(DOCS.rglob("*.md")):
        for found in re.findall(r"\{\{\s*(.*?)\s*\}\}", page.read_text(encoding="utf-8")):
            words = shlex.split(found)
            if words[:1] == [verb]:
                yield (
                    page.name,
                    [each for each in words[1:] if "=" not in each and each != "but"],
                    dict(each.split("=", 1) for each in words[1:] if "=" in each),
                )


def test_nor_does_a_live_number_of_any_page():
    def number(which: str, calculator: str, result: str, given: dict) -> str:
        try:
            return number_text(calculator, result, given, Asking({}, method=over(which)))
        except InvalidInput as error:
            return str(error)

    seen = 0
    for page, (calculator, result), given in _markers("number"):
        assert number("handbook", calculator, result, given) == number("strange", calculator, result, given), (
            page,
            calculator,
            result,
        )
        seen += 1
    assert seen > 50


@pytest.mark.parametrize("ruler, seam, zip_", [("cm 1/10", "1.5 cm", "2 cm"), ("in 1/16", "5/8 in", "3/4 in")])
def test_a_measure_of_the_house_stands_in_a_sentence_and_follows_the_readers_own(ruler, seam, zip_):
    measures = [measure for _, (measure,), _ in _markers("house")]
    assert {"seam_allowance", "zip_allowance"} <= set(measures)

    def shown(method: str) -> list[str]:
        wanted = [{"calculator": HOUSE, "result": measure, "given": {}, "readOn": ""} for measure in measures]
        return [
            text.replace("\N{NO-BREAK SPACE}", " ")
            for text in ask(ask="numbers", numbers=wanted, values=[], figures=[], ruler=ruler, method=method)["numbers"]
        ]

    own = {
        "format": "house method",
        "version": 2,
        "id": "oat",
        "name": "Oat",
        "measures": {"zip_allowance": {"cm": "3 cm", "in": "1 1/4 in"}},
    }
    assert shown("") == [{"seam_allowance": seam, "zip_allowance": zip_}[each] for each in measures]
    assert shown(json.dumps(own))[measures.index("zip_allowance")] == {"cm": "3 cm", "in": "1 1/4 in"}[ruler[:2]]


@pytest.mark.parametrize(
    "name", sorted(each.name for calculator in catalogue().values() for each in calculator.fields if each.default)
)
def test_one_measure_of_a_house_alone_is_what_every_blank_begins_with(name):
    for calculator in catalogue().values():
        for field in (each for each in calculator.fields if each.name == name and each.default):
            kind = entries()[field.default].kind
            own = other_length(field.default, kind, Fraction(9, 10)) if isinstance(kind, Length) else "5"
            method = house_of({"format": FORMAT, "version": VERSION, "name": "One", "measures": {field.default: own}})
            assert Asking({}, method=method, wanted_ruler="in").text(field) == own, (calculator.name, name)


@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_no_blank_stands_in_units_of_another_ruler(ruler):
    for calculator in catalogue().values():
        for method in (site_method(), over("handbook")):
            asking = Asking({}, method=method, wanted_ruler=ruler)
            for field in calculator.fields:
                texts = [asking.text(field)]
                kinds = [field.kind]
                if isinstance(field.kind, Rows) and texts[0]:
                    rows = field.kind.cells(texts[0])
                    texts, kinds = (
                        [cell for row in rows for cell in row],
                        [column.kind for _ in rows for column in field.kind.columns],
                    )
                for each, kind in zip(texts, kinds):
                    if isinstance(kind, Length) and each:
                        assert system_of(each) in ("", ruler), (
                            f"{calculator.name}: {field.label} begins with {each} on a ruler in {ruler}"
                        )


def test_what_a_field_begins_with_is_about_the_same_on_both_rulers():
    for calculator in catalogue().values():
        for field in calculator.fields:
            if (
                isinstance(field.kind, Length) and isinstance(field.fixed, dict) and field.name != "sold_in"
            ):  # as shops cut, here and there
                assert agree(parse_length(field.fixed["cm"]), parse_length(field.fixed["in"]), roughly=True), (
                    calculator.name,
                    field.name,
                )


def test_the_cloth_of_the_house_is_what_every_page_begins_with():
    ours = {
        "format": FORMAT,
        "version": VERSION,
        "name": "W",
        "ruler": {"unit": "in"},
        "measures": {"cloth_width": "54 in", "cloth_length": "5 yd"},
    }
    asking = Asking({}, method=house_of(ours))
    usable = answer(calculator_named("usable-cloth"), asking).results
    assert usable["usable_width"] / Fraction(254, 10) == 53
    assert (
        parse_length(asking.method.measure("usable_length", asking.ruler))
        == usable["usable_length"]
        == (180 - 1 - Fraction(3, 4)) * Fraction(254, 10)
    )
    for name in ("pieces-from-cloth", "curtains"):
        assert asking.text(calculator_named(name).field("cloth_width")) == "54 in"
    shown_here = text("calculator", calculator="pieces-from-cloth", typed={}, method=json.dumps(ours), ruler="")
    assert "53 in" in shown_here and not re.search(r"\b(59|60|147|150) (in|cm)", shown_here)
    own = house_of({**ours, "measures": {**ours["measures"], "usable_length": "4 yd"}})
    assert own.measure("usable_length", own.ruler("in")) == "4 yd", "what she wrote herself stands"


def test_a_lay_plan_begins_with_the_houses_cloth_piece_allowance_and_wash():
    asking = Asking({}, method=over("handbook"))
    stands = {field.name: asking.text(field) for field in calculator_named("lay-plan").fields}
    measure = asking.method.measure
    assert json.loads(stands["cloths"]) == [
        ["Studio linen", measure("cloth_width", asking.ruler), measure("cloth_length", asking.ruler), "1", "no"]
    ]
    assert json.loads(stands["pieces"])[0][:3] == [
        "Studio square",
        measure("piece_width", asking.ruler),
        measure("piece_length", asking.ruler),
    ]
    assert (stands["change_length"], stands["change_width"]) == ("−3 %", "−1 %")
    allowance = parse_length(stands["seam_allowance"])
    assert allowance in {parse_length(measure(name, asking.ruler)) for name in entries() if "allowance" in name}


@pytest.mark.parametrize("ruler", ["cm", "in"])
@pytest.mark.parametrize("method", [example_method(), over("handbook")], ids=["handbook", "studio"])
def test_whoever_asks_for_a_wash_still_to_come_begins_with_the_houses(method, ruler):
    """The handbook’s own examples too: none plans on a washed cloth where its house says what the wash takes."""
    line = usual_cloth(method)
    asked = [
        (each.name, field.name, Asking({}, method=method, wanted_ruler=ruler).text(field))
        for each in catalogue().values()
        for field in each.fields
        if field.name.startswith("change_")
    ]
    assert {name for name, _, _ in asked} >= {"lay-plan", "curtains"}
    assert asked == [(name, column, line[column]) for name, column, _ in asked]


def test_a_cloth_that_a_job_names_brings_its_own_price_and_wash():
    open_square = {
        **STUDIO,
        "measures": {name: each for name, each in STUDIO["measures"].items() if not name.startswith("after_")},
    }
    method = written_down(open_square)
    for cloth, price, wash in (
        ("", "$14.25 per yd", (-3, -1)),
        ("studio hemp", "$9.75 per yd", (-9, -6)),
        ("Sailcloth", "", (-3, -1)),
    ):
        steps = ask(ask="walk", walk="batch", typed={}, method=method, ruler="", cloth=cloth)["steps"]
        assert steps["thread-time-cost"]["texts"]["price_cloth"] == price
        job = {
            "format": "job",
            "version": 2,
            "id": "j",
            "name": "J",
            "walk": "batch",
            "method": open_square,
            "cloth": cloth or "Studio linen",
        }
        ticket = text("ticket", kind="job", kept=json.dumps(job), method=method, ruler="", home="../")
        assert f"it shrinks {-wash[0]} % along and {-wash[1]} % across" in ticket
        assert ("has no complete wash test" in steps["wash-test"]["answer"]) is (cloth == "Sailcloth")
    without = ask(
        ask="walk",
        walk="batch",
        typed={"wash-test": {"after_length": "19 in", "after_width": "19 in"}},
        method=TEXT,
        ruler="",
        cloth="studio hemp",
    )["steps"]
    assert "lists it" not in without["wash-test"]["answer"]


def test_her_own_words_stand_on_the_pages_they_are_about():
    placed = {section for _, names, _ in _markers("own_words") for section in names}
    assert placed == {each.name for each in sections()}, "every section of a method has a page of the text"
    words = ask(ask="own words", sections=["hems", "cloths"], method=TEXT)["words"]
    assert "Studio words on hems." in words[0] and "Studio words on cloths." in words[1]
    assert ask(ask="own words", sections=["hems"], method="")["words"] == [""]
    unsafe = written_down({**STUDIO, "texts": {"hems": "<script>x</script>"}})
    assert "<script>" not in ask(ask="own words", sections=["hems"], method=unsafe)["words"][0]


def test_and_at_the_steps_of_her_tickets():
    job = {"format": "job", "version": 2, "id": "j", "name": "J", "walk": "batch", "method": STUDIO}
    ticket = text("ticket", kind="job", kept=json.dumps(job), method=TEXT, ruler="", home="../")
    for section in AT_STEPS:
        assert ticket.count(f"Studio words on {section}.") == 1, section
    first_turn, next_step = ticket.index("First turn"), ticket.index("Second fold")
    assert first_turn < ticket.index("Studio words on hems.") < next_step
    plain = text("ticket", kind="job", kept=json.dumps({**job, "method": None}), method="", ruler="", home="../")
    assert "words on" not in plain and site_document()["texts"]["hems"][:20] not in plain


def test_a_part_of_the_ruler_that_is_not_there_is_never_shown_in_a_blank():
    """19 2/5 in on a ruler of eighths: the square after the wash is shown as it is read off, and read as it is."""
    method = house_of(
        {
            "format": FORMAT,
            "version": VERSION,
            "name": "E",
            "ruler": {"unit": "in", "in_step": "1/8"},
            "tables": {"cloths": [{"cloth": "L", "change_length": "−3 %", "change_width": "−4 %"}]},
        }
    )
    asking = Asking({}, method=method)
    wash = calculator_named("wash-test")
    assert [asking.text(wash.field(f"after_{way}")) for way in ("length", "width")] == ["19 3/8 in", "19 1/4 in"]
    found = answer(wash, asking).results
    assert (found["change_length"], found["change_width"]) == (-3, -4)


def test_every_table_and_kind_of_entry_is_made_different_here():
    assert set(STUDIO["tables"]) == set(tables()) and set(STUDIO["measures"]) == set(entries())
    for name, entry in entries().items():
        if not isinstance(entry.kind, (Choice, Text)):
            assert STUDIO["measures"][name] != site_method().measure(name, INCHES["in"]), name
