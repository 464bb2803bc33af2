"""Changing a method as its form does, and comparing and merging what came of it."""

from fractions import Fraction

import pytest

from calculators.asking.house_method import FORMAT, VERSION
from calculators.asking.site_method import site_document
from calculators.documents.house_method.change import changed, written_at
from calculators.documents.house_method.check import mended
from calculators.documents.house_method.difference import differences, label
from calculators.documents.house_method.format import LONGEST_TEXT, LONGEST_WHY, MOST_ROWS, Document, normal
from calculators.documents.house_method.merge import merged
from calculators.documents.house_method.reading import LONGEST, house_of, read_method, written_down
from calculators.documents.house_method.sections import sections, tables
from calculators.faces.house_method.compare import changes_replies, differences_table
from calculators.faces.house_method.form import form
from calculators.faces.house_method.sheet import sheet
from calculators.faces.page.markup import html
from calculators.values.kind import InvalidValue
from calculators.values.measure import CENTIMETRES

OURS = normal({"format": FORMAT, "version": VERSION, "name": "Ours"})


def after(*changes, start: Document = OURS, unit: str = "cm") -> Document:
    for path, typed in changes:
        start = changed(start, path, typed, unit)
    return start


def test_a_bare_number_gets_the_unit_of_the_ruler_in_hand():
    assert after(("measures.turn", "1.2"))["measures"] == {"turn": "1.2 cm"}
    assert after(("measures.turn", "12"), unit="mm")["measures"] == {"turn": "12 mm"}
    assert after(("measures.turn", "1/2"), unit="in")["measures"] == {"turn": "1/2 in"}


def test_each_ruler_may_have_its_round_figure():
    both = changed(after(("measures.turn", "1.2")), "measures.turn", "1/2", "in")
    assert both["measures"] == {"turn": {"cm": "1.2 cm", "in": "1/2 in"}}
    assert changed(both, "measures.turn", "12", "mm")["measures"] == {"turn": {"cm": "12 mm", "in": "1/2 in"}}
    assert changed(both, "measures.turn", "11", "mm")["measures"] == {"turn": "11 mm"}


def test_an_emptied_blank_goes_back_to_the_handbook_and_keeps_its_reason():
    document = after(("measures.turn", "1.2"), ("why.measures.turn", "It frays."), ("measures.turn", ""))
    assert document["measures"] == {"turn": {"why": "It frays."}}
    assert after(("why.measures.turn", ""), start=document) == OURS


def test_the_first_change_of_a_table_begins_with_the_lines_that_stand_there():
    document = after(("tables.pieces.1.hem", "26 mm"))
    sites = site_document()["tables"]["pieces"]
    assert [line["piece"] for line in document["tables"]["pieces"]] == [line["piece"] for line in sites]
    assert written_at(document, "tables.pieces.1.hem") == "26 mm"


def test_lines_are_added_and_taken_out():
    lines = len(site_document()["tables"]["pieces"])
    document = after(
        (f"tables.pieces.{lines}.piece", "Apron"),
        (f"tables.pieces.{lines}.hem", "2"),
        (f"why.tables.pieces.{lines}", "Wide."),
    )
    assert document["tables"]["pieces"][-1] == {"piece": "Apron", "hem": "2 cm", "why": "Wide."}
    assert len(after((f"tables.pieces.{lines}", ""), start=document)["tables"]["pieces"]) == lines


@pytest.mark.parametrize(
    ("path", "typed", "words"),
    [
        ("name", " ", "needs a name"),
        ("name", "x" * 81, "Keep it to 80"),
        ("measures.turn", "soon", "not a length"),
        ("measures.turn", "30 m", "most that works"),
        (
            "tables.cloths.0.change_length",
            "4",
            "does it shrink by 4 %, or grow? Write −4 if it shrinks, +4 if it grows.",
        ),
        ("tables.cloths.0.change_width", "3,5 %", "Write −3,5 if it shrinks"),
        ("tables.cloths.0.change_width", "+-4", "not a number"),
        ("measures.money", "x" * 13, "Keep it to 12"),
        ("why.measures.turn", "x" * (LONGEST_WHY + 1), "Keep it to 500"),
        ("texts.hems", "a\x07b", "cannot be shown"),
        ("tables.cloths.0.cloth", "", "take the whole line out"),
        ("tables.cloths.3.needle", "80/12", "Name a cloth first"),
        ("why.tables.cloths.3", "soft", "Name a cloth first"),
        ("tables.steps.0.for_each", "hundred", "not one of the choices"),
        ("ruler.unit", "ell", "not one of the choices"),
    ],
)
def test_what_cannot_stand_in_a_blank_gets_its_sentence(path, typed, words):
    with pytest.raises(InvalidValue) as refused:
        after((path, typed))
    assert words in str(refused.value)


def test_a_table_has_an_end():
    document = OURS | {"tables": {"steps": [{"step": f"Step {number}"} for number in range(MOST_ROWS)]}}
    with pytest.raises(InvalidValue, match="room for 60"):
        after((f"tables.steps.{MOST_ROWS}.step", "One more"), start=document)


@pytest.mark.parametrize("path", ["measures.unheard_of", "tables.spoons.0.a", "colour", "why.measures.unheard_of"])
def test_a_path_that_no_form_has_is_a_mistake_in_the_page(path):
    with pytest.raises(KeyError):
        after((path, "1"))


def test_what_a_change_leaves_is_always_whole():
    document = after(
        ("measures.turn", "1.2"),
        ("tables.cloths.0.change_length", "-5"),
        ("ruler.unit", "in"),
        ("texts.opening", " Words \r\n\r\n"),
    )
    assert mended(document) == (document, {})
    assert document["texts"] == {"opening": "Words"}


def test_differences_say_what_stands_where():
    one = after(("measures.turn", "1.2"), ("texts.hems", "Slowly."))
    other = after(("name", "Winter"), ("tables.pieces.0.hem", "3 cm"))
    found = {each.label: (each.one, each.other) for each in differences(one, other)}
    assert found["Name"] == ("Ours", "Winter")
    assert found["First turn"] == ("1.2 cm", "the handbook’s 1 cm (3/8 in)")
    assert found["Your own words on turn and hem"] == ("Slowly.", "")
    assert found["Turn and hem by kind of piece: Napkin, hem depth"] == ("2 cm (3/4 in)", "3 cm")
    assert not any("Placemat" in label for label in found)
    assert differences(one, one) == []


@pytest.mark.parametrize(
    ("path", "one", "other", "are_same"),
    [
        ("measures.cloth_length", "3.2 m", "320 cm", True),
        ("measures.cloth_length", "3.2 m", "321 cm", False),
        ("measures.turn", "10 mm", "1 cm", True),
        ("measures.bundle", "6", "06", True),
        ("tables.cloths.0.change_length", "-4.80 %", "−4.8", True),
        ("tables.cloths.0.needle", "90/14", "90 / 14", False),
        ("measures.cloth_width", "60 in", "152.4 cm", True),
    ],
)
def test_lengths_are_compared_by_what_they_mean_and_shown_as_written(path, one, other, are_same):
    found = differences(after((path, one)), after((path, other)))
    assert [(each.one, each.other) for each in found] == (
        [] if are_same else [(written_at(after((path, one)), path), written_at(after((path, other)), path))]
    )


def test_a_round_figure_for_one_ruler_is_no_length_alike_on_both():
    pair = changed(after(("measures.turn", "1 cm")), "measures.turn", "3/8", "in")
    assert [each.label for each in differences(pair, after(("measures.turn", "1 cm")))] == ["First turn"]


def test_own_words_are_compared_as_they_are_read():
    one, other = after(("texts.hems", "Press the **first turn** flat.")), after(("texts.hems", "Press *slowly*."))
    table = html(differences_table("One", "Other", differences(one, other)))
    assert "<strong>first turn</strong>" in table and "*" not in table
    states = [
        {"at": "2026-11-25T14:03:07+01:00", "revision": number, "text": written_down(each)}
        for number, each in enumerate((one, other), start=1)
    ]
    *_, listed = changes_replies(
        states, lambda before, after: differences(read_method(before)[0], read_method(after)[0])
    )
    assert "Press the first turn flat. → Press slowly." in listed["body"]


def test_a_line_that_only_one_of_them_has_is_listed_part_by_part():
    lines = len(site_document()["tables"]["pieces"])
    more = after(
        (f"tables.pieces.{lines}.piece", "Apron"),
        (f"tables.pieces.{lines}.hem", "2"),
        (f"tables.pieces.{lines}.turn", "1"),
    )
    found = [each for each in differences(OURS, more) if "Apron" in each.label]
    assert [(each.one, each.other) for each in found] == [("not there", "first turn 1 cm; hem depth 2 cm")]
    assert "<li>first turn 1\N{NO-BREAK SPACE}cm</li><li>hem depth 2\N{NO-BREAK SPACE}cm</li>" in html(
        differences_table("One", "Other", found)
    )


def test_changes_that_do_not_touch_each_other_are_both_kept():
    mine, theirs = (
        after(("measures.turn", "1.2"), ("why.measures.turn", "Mine.")),
        after(("measures.hem", "3"), ("texts.opening", "Theirs.")),
    )
    document, both = merged(OURS, mine, theirs)
    assert both == []
    assert document == after(
        ("measures.turn", "1.2"), ("why.measures.turn", "Mine."), ("measures.hem", "3"), ("texts.opening", "Theirs.")
    )


def test_two_changes_of_one_entry_are_never_lost_in_silence():
    document, both = merged(OURS, after(("measures.turn", "1.2")), after(("measures.turn", "1.4"), ("name", "Theirs")))
    assert document["measures"]["turn"] == "1.2 cm"
    assert document["name"] == "Theirs"
    assert [(each.label, each.one, each.other) for each in both] == [("First turn", "1.4 cm", "1.2 cm")]


def test_an_entry_taken_back_here_and_changed_there_is_said_too():
    base = after(("measures.turn", "1.2"))
    document, both = merged(base, after(("measures.turn", ""), start=base), after(("measures.turn", "1.4"), start=base))
    assert "measures" not in document
    assert [each.one for each in both] == ["1.4 cm"]


@pytest.mark.parametrize(
    ("typed", "change"),
    [
        ("-4", -4),
        ("−4 %", -4),
        ("+4", 4),
        ("+ 4", None),
        ("0", 0),
        ("0 %", 0),
        ("+2,5 %", Fraction(5, 2)),
        ("4", None),
        ("0.1", None),
    ],
)
def test_a_change_in_the_wash_is_read_with_its_sign_only(typed, change):
    kind = {column.name: column.kind for column in tables()["cloths"].columns}["change_length"]
    try:
        assert kind.parse(typed, CENTIMETRES) == change
    except InvalidValue:
        assert change is None


def test_a_change_kept_without_its_sign_is_asked_about_and_nothing_is_worked_out_from_it():
    document, messages = mended(OURS | {"tables": {"cloths": [{"cloth": "Sage linen", "change_length": "4 %"}]}})
    assert document["tables"]["cloths"] == [{"cloth": "Sage linen"}]
    assert "shrink by 4 %, or grow" in messages["tables.cloths.0.change_length"]


def test_a_step_only_for_a_kind_the_method_does_not_have_is_asked_for_again_with_the_kinds_it_has():
    path = "tables.steps.16.kinds"
    for typed, words in (
        ("Tea towl", "“Tea towl” is not a kind of piece of this method. It has Napkin, Placemat, Runner, Tea towel."),
        (
            "Napkin, Tea towl, Runer",
            "“Tea towl” and “Runer” are not kinds of piece of this method. It has Napkin, Placemat, Runner, Tea towel.",
        ),
    ):
        with pytest.raises(InvalidValue) as error:
            after((path, typed))
        assert str(error.value) == words
    assert after((path, "napkin , Tea Towel"))["tables"]["steps"][16]["kinds"] == "napkin , Tea Towel"
    assert "kinds" not in after((path, ""))["tables"]["steps"][16]
    assert after(("tables.pieces.4.piece", "Apron"), (path, "Apron"))["tables"]["steps"][16]["kinds"] == "Apron"


def test_a_kind_that_is_renamed_later_is_told_at_the_steps_that_name_it_and_stays_there():
    renamed = after(("tables.steps.16.kinds", "Tea towel"), ("tables.pieces.3.piece", "Glass cloth"))
    page = "".join(map(html, form(renamed, CENTIMETRES)))
    assert page.count("is not a kind of piece of this method. It has Napkin, Placemat, Runner, Glass cloth.") == 1
    assert written_at(renamed, "tables.steps.16.kinds") == "Tea towel"
    assert "is not a kind" not in "".join(
        map(html, form(after(("tables.pieces.3.piece", "Glass cloth")), CENTIMETRES))
    )  # the handbook's own line


def test_no_form_lets_a_method_grow_past_what_can_be_read():
    """Each entry is as short as its own blank asks for, and all together are too long: refused at the last one."""
    lines = {
        table.name: [
            {table.columns[0].name: f"{table.one} {number}", "why": '"' * LONGEST_WHY} for number in range(MOST_ROWS)
        ]
        for table in tables().values()
    }
    document, refused = normal({**OURS, "tables": lines}), ""
    for section in sections():
        try:
            document = changed(document, f"texts.{section.name}", '"' * LONGEST_TEXT, "cm")
        except InvalidValue as error:
            refused = str(error)
    assert "no room for this" in refused and "\n" not in refused
    assert LONGEST - 2 * LONGEST_TEXT - 100 < len(written_down(document)) <= LONGEST
    assert read_method.__wrapped__(written_down(document))[0] == document


def test_a_row_named_by_a_choice_is_called_by_its_words_wherever_it_stands():
    """An operation as its list offers it, never the word it is kept under: on the sheet, in the form, in changes."""
    operations = tables()["operations"].columns[0].kind.choices
    document = normal({**OURS, "tables": {"operations": [{"operation": each, "minutes": "5"} for each in operations]}})
    rows = [element for each in sheet(house_of(document), CENTIMETRES) for element in each.iter("th")]
    on_sheet = {"".join(each.itertext()) for each in rows if each.get("scope") == "row"}
    in_form = {"".join(each.itertext()) for every in form(document, CENTIMETRES) for each in every.iter("summary")}
    in_changes = [label(f"tables.operations.{number}.minutes", document) for number in range(len(operations))]
    for number, (kept, words) in enumerate(operations.items()):
        assert words in on_sheet and words in in_form, kept
        assert in_changes[number] == f"Time per operation: {words}, minutes"
