"""Times: how they are read, shown and refused."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.values.duration import Minutes
from calculators.values.kind import InvalidValue
from calculators.values.measure import CENTIMETRES
from tests.sentences import is_one_message


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("80", 80), ("80 min", 80), ("80min", 80), ("80 minutes", 80), ("1 h 20", 80), ("1h20", 80), ("1 h 20 min", 80),
        ("1:20", 80), ("1 hour 20 minutes", 80), ("1.5 h", 90), ("1,5 h", 90), ("2 h", 120),
        ("8.5", F(17, 2)), ("8,5 min", F(17, 2)), ("8 min 30 s", F(17, 2)), ("90 s", F(3, 2)), ("0", 0), ("0:05", 5),
        ("1 h 0 min 30 s", F(121, 2)), ("12 1/2", F(25, 2)), ("12½ min", F(25, 2)), ("½ h", 30), ("1 1/2 h", 90),
        (".5 min", F(1, 2)), ("1 h 2 1/2", F(125, 2)), ("3/4 hour", 45),
    ],
)  # fmt: skip
def test_reads(text, minutes):
    assert Minutes().parse(text, CENTIMETRES) == minutes


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "soon",
        "1:80",
        "1:2",
        "1:20:30",
        "1 h 80",
        "1 h 60 min",
        "8 min 90 s",
        "-5",
        "1e3",
        "٣",
        "h",
        "min",
        "1 h 20 h",
        "20 min 1 h",
        "20 cm",
        "8 30 s",
        "nan",
        "1..5",
        "90/2",
        "1½0",
        "12 1/2 1/2",
        "1 h ½ h",
        "8 30",
    ],
)
def test_refuses_with_what_would_be_right(text):
    with pytest.raises(InvalidValue) as refused:
        Minutes().parse(text, CENTIMETRES)
    assert "such as" in str(refused.value) and is_one_message(str(refused.value))


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("1,200", "Write 1200 or 1.2"),
        ("99999999", "from 0 min to"),
        ("9" * 61, "at most 60"),
        ("1/0 min", "0 parts"),
        ("1 5/4", "less than one"),
    ],
)
def test_says_what_else_is_wrong(text, sentence):
    with pytest.raises(InvalidValue, match=sentence):
        Minutes().parse(text, CENTIMETRES)


def test_refuses_what_is_beyond():
    with pytest.raises(InvalidValue, match="from 0 min to 10 h"):
        Minutes(most=F(600)).parse("11 h", CENTIMETRES)


@pytest.mark.parametrize(
    ("minutes", "shown"),
    [
        (F(0), "0 min"),
        (F(17, 2), "8.5 min"),
        (F(1, 3), "0.3 min"),
        (F(20), "20 min"),
        (F(60), "1 h"),
        (F(80), "1 h 20 min"),
        (F(281), "4 h 41 min"),
        (F("119.5"), "2 h"),
        (F("59.99"), "60 min"),
    ],
)
def test_shows_hours_and_minutes_from_an_hour_on(minutes, shown):
    assert Minutes().show(minutes, CENTIMETRES) == shown


@given(st.integers(0, 100_000))
def test_whole_minutes_read_back_as_they_are_shown(minutes):
    assert Minutes().parse(Minutes().show(F(minutes), CENTIMETRES), CENTIMETRES) == minutes


def test_what_was_read_is_written_out():
    assert [Minutes().write_out(text, CENTIMETRES) for text in ("80", "1:20", "1 h 20", "8.5", "12 1/2")] == [
        "80 min",
        "1 h 20 min",
        "1 h 20",
        "8.5 min",
        "12 1/2 min",
    ]
