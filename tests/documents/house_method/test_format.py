"""The format of a house method: every version opens, equal methods are written alike, what cannot be used is said."""

import json
from pathlib import Path

import fastjsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.asking.house_method import FORMAT, VERSION, read_house_method
from calculators.asking.site_method import site_document, site_method
from calculators.catalogue import catalogue
from calculators.documents.house_method.check import mended
from calculators.documents.house_method.format import migrated, normal, schema
from calculators.documents.house_method.reading import method_in_hand, read_method, written_down
from calculators.documents.house_method.sections import entries, sections
from calculators.documents.json_text import LONGEST, InvalidDocument, read_json, write_json
from tests.published_schema import check_agreement

SAMPLES = sorted(Path(__file__).parent.glob("samples/method-*.json"))
OURS = {"format": FORMAT, "version": VERSION, "name": "Ours"}


def read(**parts):
    return read_method(json.dumps(OURS | parts))


def test_there_is_a_sample_of_every_version():
    assert [path.stem for path in SAMPLES] == [f"method-{version}" for version in range(1, VERSION + 1)]


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_a_method_of_every_version_opens(path):
    document, method, messages = read_method(path.read_text(encoding="utf-8"))
    assert messages == {}
    assert method.name == "Summer linen"
    assert method.measure("turn", method.ruler()) == "1.2 cm"
    assert method.measure("turn", method.ruler("in")) == "1/2 in"
    assert method.why["measures.turn"] == "Thin cloth frays further."
    assert method.tables["pieces"][0]["hem"] == {"cm": "1.8 cm", "in": "23/32 in"}, (
        "the inch figure follows, on the method's ruler of thirty-seconds"
    )
    assert document["measures"]["a_measure_of_another_edition"] == "3 cm"


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_written_down_and_read_again_it_is_the_same_byte_for_byte(path):
    once = written_down(read_method(path.read_text(encoding="utf-8"))[0])
    assert written_down(read_method(once)[0]) == once


def test_the_sites_own_method_is_of_the_format_and_whole():
    document, messages = mended(migrated(site_document()))
    assert messages == {}
    assert set(entries()) <= set(site_method().measures)
    assert set(site_method().measures) == set(document["measures"])


def test_every_measure_of_the_site_has_a_place_on_the_sheet():
    assert set(site_method().measures) == set(entries())


def test_every_blank_that_begins_with_a_measure_finds_it():
    wanted = {field.default for calculator in catalogue().values() for field in calculator.fields if field.default}
    assert wanted <= set(site_method().measures)


def test_a_method_saved_from_a_browser_can_be_the_sites_file():
    saved = written_down(normal(site_document()))
    method = read_house_method(json.loads(saved))
    assert {name: method.measure(name, method.ruler()) for name in method.measures} == {
        name: site_method().measure(name, method.ruler()) for name in site_method().measures
    }


def test_what_is_left_empty_comes_from_the_site_and_is_known_to():
    _, method, _ = read(measures={"turn": "15 mm"})
    assert [method.measure("turn", method.ruler(unit)) for unit in ("cm", "in")] == ["15 mm", "9/16 in"]
    assert method.measure("hem", method.ruler()) == site_method().measure("hem", site_method().ruler())
    assert "measures.turn" in method.own and "measures.hem" not in method.own
    assert "measures.turn" not in method.why, "the site's reason does not stand beside another measure"


@pytest.mark.parametrize(
    ("measures", "path", "words"),
    [
        ({"turn": "36 banana"}, "measures.turn", "not a length"),
        ({"turn": {"cm": "1 cm", "in": "1/0 in"}}, "measures.turn", "divided into 0"),
        ({"hem": {"value": "3000 km", "why": "wide"}}, "measures.hem", "not a length"),
        ({"layers": "many"}, "measures.layers", "not a count"),
        ({"bobbin": "2 cm"}, "measures.bobbin", "too small"),
    ],
)
def test_a_value_that_cannot_be_used_is_left_out_with_one_sentence(measures, path, words):
    document, method, messages = read(measures=measures)
    assert list(messages) == [path] and words in messages[path]
    name = path.removeprefix("measures.")
    assert method.measure(name, method.ruler()) == site_method().measure(name, site_method().ruler())


def test_a_line_without_its_name_is_left_out_with_one_sentence():
    _, method, messages = read(tables={"cloths": [{"needle": "80/12"}, {"cloth": "Lawn", "change_length": "−80 %"}]})
    assert "Name a cloth" in messages["tables.cloths.0.cloth"]
    assert "outside what works" in messages["tables.cloths.1.change_length"]
    assert method.tables["cloths"] == ({"cloth": "Lawn"},)


@pytest.mark.parametrize(
    ("data", "words"),
    [
        ([], "not a house method"),
        ({"format": "job", "version": 1}, "not a house method"),
        (OURS | {"version": VERSION + 1}, "newer handbook"),
        (OURS | {"version": 10**400}, "newer handbook"),
        (OURS | {"version": True}, "which version"),
        (OURS | {"version": "1"}, "which version"),
        (OURS | {"version": 0}, "which version"),
        (OURS | {"name": ""}, "name"),
        (OURS | {"name": 5}, "name"),
        ({"format": FORMAT, "version": 1}, "name. This is missing"),
        (OURS | {"extra": 1}, "no entry called “extra”"),
        (OURS | {"measures": {"turn": 1}}, "measures.turn"),
        (OURS | {"measures": {"turn": {"cm": "1 cm"}}}, "measures.turn"),
        (OURS | {"measures": {"__proto__": "1 cm"}}, "no entry called"),
        (OURS | {"texts": {"opening": "x" * 10_001}}, "Keep it to 10,000"),
        (OURS | {"name": "a\u202eb"}, "characters that cannot be shown"),
        (OURS | {"name": "a\ud800"}, "characters that cannot be shown"),
        (OURS | {"tables": {"cloths": [{}] * 61}}, "Keep to 60"),
    ],
)
def test_what_is_not_of_the_format_is_refused_in_one_sentence(data, words):
    with pytest.raises(InvalidDocument) as refused:
        migrated(data)
    assert words in str(refused.value)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "damaged"), ("{", "damaged"), ("NaN", "damaged"), ('{"a": 1e999}x', "damaged"), ("[" * 100_000, "nested"),
        ('{"a":' * 13 + "1" + "}" * 13, "nested"), (" " * (LONGEST + 1), "at most"),
        ('"[[[[[[[[[[[[[[[[[[[" x', "damaged"), ("9" * 5_000, "damaged"),
    ],
)  # fmt: skip
def test_a_text_that_is_not_json_is_refused_in_one_sentence(text, words):
    with pytest.raises(InvalidDocument) as refused:
        read_json(text)
    assert words in str(refused.value)


_texts = st.text(max_size=12) | st.sampled_from(["1 cm", "3/8 in", "in", "1/16", FORMAT, "turn", "why", "cm", "value"])
_data = st.recursive(
    _texts | st.integers(-2, 3) | st.booleans() | st.none(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(_texts, inner, max_size=4),
    max_leaves=8,
)
_near = st.fixed_dictionaries(
    {"format": st.just(FORMAT), "version": st.just(VERSION), "name": st.just("N")},
    optional={
        name: _data
        | st.dictionaries(st.sampled_from(["turn", "unit", "in_step", "cloths", "hems", "opening"]), _data, max_size=3)
        for name in ("id", "ruler", "measures", "tables", "texts", "x")
    },
)
_published = fastjsonschema.compile(schema())


@given(_near | _data)
def test_the_check_and_the_published_schema_agree(data):
    check_agreement(_published, schema(), data, migrated)


@given(_near)
def test_reading_never_breaks_and_what_was_read_is_written_alike(data):
    try:
        document, _, _ = read_method(write_json(data))
    except (InvalidDocument, UnicodeEncodeError):
        document, _, _ = read_method(write_json({name: data[name] for name in ("format", "version", "name")}))
    text = written_down(document)
    assert written_down(read_method(text)[0]) == text


def test_sections_do_not_share_names():
    names = [entry.name for section in sections() for entry in section.entries]
    assert len(names) == len(set(names))


def test_an_empty_text_is_the_sites_method():
    assert method_in_hand("") is site_method()
