"""Bad values: each gets one sentence at its field, from the browser's face and from the terminal, and nothing ever
breaks."""

import json

import pytest

from calculators.catalogue import calculator_named, catalogue
from calculators.faces.browser import replies
from calculators.faces.command_line import main
from calculators.values.kinds import Length, Text
from tests.bad_values import BEYOND_LIMITS, EMPTY, IMPOSSIBLE_TOGETHER, OTHER_KINDS, REFUSED_EVERYWHERE
from tests.sentences import is_one_message

LENGTH_FIELDS = [
    (calculator.name, field.name)
    for calculator in catalogue().values()
    for field in calculator.fields
    if isinstance(field.kind, Length)
]
ONE_FIELD = [*BEYOND_LIMITS, *OTHER_KINDS]


def shorten(value):
    return ascii(value)[:24] if isinstance(value, str) else None


def refused(calculator, typed):
    (reply,) = map(
        json.loads,
        replies(json.dumps({"ask": "calculator", "calculator": calculator, "given": {}, "typed": typed, "ruler": ""})),
    )
    assert reply["final"] and "answer" not in reply, "it was answered"
    assert all(is_one_message(sentence) for sentence in reply["refusals"].values()), reply["refusals"]
    return reply["refusals"]


def test_the_list_is_long_enough():
    assert len(set(REFUSED_EVERYWHERE)) == len(REFUSED_EVERYWHERE) >= 60


@pytest.mark.parametrize("bad", REFUSED_EVERYWHERE, ids=shorten)
def test_every_length_field_refuses_it_with_its_own_sentence(bad):
    for calculator, field in LENGTH_FIELDS:
        sentences = refused(calculator, {field: bad})
        assert set(sentences) == {field}
        assert sentences[field].startswith(calculator_named(calculator).field(field).label)


@pytest.mark.parametrize("empty", EMPTY, ids=shorten)
def test_every_field_that_must_be_given_asks_for_something_when_it_is_empty(empty):
    for calculator in catalogue().values():
        for field in calculator.fields:
            if not field.optional:
                sentences = refused(calculator.name, {field.name: empty})
                assert set(sentences) == {field.name} and "such as" in sentences[field.name]


@pytest.mark.parametrize(("calculator", "field", "bad"), ONE_FIELD, ids=shorten)
def test_what_is_beyond_a_field_is_refused_there(calculator, field, bad):
    assert set(refused(calculator, {field: bad})) == {field}


@pytest.mark.parametrize(("calculator", "typed", "fields"), IMPOSSIBLE_TOGETHER)
def test_what_cannot_go_together_is_refused_where_it_can_be_mended(calculator, typed, fields):
    assert set(refused(calculator, typed)) == fields


def test_all_bad_values_at_once_get_a_sentence_each():
    for calculator in catalogue().values():
        typed = {
            field.name: "36 banana" for field in calculator.fields if type(field.kind) is not Text
        }  # the name of an order may be any words
        assert set(refused(calculator.name, typed)) == set(typed)


def at_terminal(capsys, *words):
    code = main(list(words))
    spoken = capsys.readouterr()
    return code, spoken.out, spoken.err


@pytest.mark.parametrize("bad", [*REFUSED_EVERYWHERE, *EMPTY], ids=shorten)
def test_the_terminal_says_the_same_and_leaves_with_2(bad, capsys):
    code, out, err = at_terminal(capsys, "pieces-from-cloth", f"piece_width={bad}", "--json")
    assert code == 2
    (sentence,) = json.loads(out)["errors"].values()
    assert json.loads(out) == {"errors": refused("pieces-from-cloth", {"piece_width": bad})}
    assert err == sentence + "\n"


@pytest.mark.parametrize(("calculator", "field", "bad"), ONE_FIELD, ids=shorten)
def test_the_terminal_names_the_field(calculator, field, bad, capsys):
    code, out, err = at_terminal(capsys, calculator, f"{field}={bad}", "--json")
    assert (code, set(json.loads(out)["errors"]), err.count("\n")) == (2, {field}, 1)
    code, out, err = at_terminal(capsys, calculator, f"{field}={bad}")
    assert (code, out, err.count("\n")) == (2, "", 1)


def test_a_field_that_is_not_asked_is_named_with_those_that_are(capsys):
    code, out, err = at_terminal(capsys, "mitre-marks", "colour=red", "--json")
    assert code == 2 and set(json.loads(out)["errors"]) == {"colour"} and "hem_1" in err


@pytest.mark.parametrize(
    "strange", ["\u202e=1", "\ud83d=1", "x" * 5_000 + "=1", "<b>=1", "=", "=36", "loose", "🧵"], ids=shorten
)
def test_a_word_that_is_no_field_is_refused_too(strange, capsys):
    code, out, err = at_terminal(capsys, "mitre-marks", strange, "--json")
    (sentence,) = json.loads(out)["errors"].values()
    assert code == 2 and is_one_message(sentence) and len(err) < 300


@pytest.mark.parametrize("ruler", ["cubit", "in 1/7", "cm cm", "🧵", "x" * 500])
def test_an_unknown_ruler_is_refused(ruler, capsys):
    code, out, _ = at_terminal(capsys, "mitre-marks", "--ruler", ruler, "--json")
    assert code == 2 and set(json.loads(out)["errors"]) == {"ruler"}
