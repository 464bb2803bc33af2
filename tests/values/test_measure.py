"""Lengths: every way a workroom writes them, exactly; shown on a ruler, and said when rounded; refused in one
sentence."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.values.measure import (
    CENTIMETRES,
    MILLIMETRES,
    MM_IN,
    SIXTEENTHS,
    InvalidLength,
    Ruler,
    parse_length,
    quote,
    show_exactly,
    show_length,
)
from tests.sentences import is_one_message

INCH = F(254, 10)


def test_inch_foot_and_yard_are_the_agreed_ones():
    """Source: NBS, agreement of 1 July 1959, in Addendum to Circular 572 (1960): yard 0.9144 m, inch 25.4 mm
    exactly."""
    assert MM_IN["yd"] == F("914.4")
    assert MM_IN["in"] == F("25.4")
    assert MM_IN["yd"] == 3 * MM_IN["ft"] == 36 * MM_IN["in"]


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("36 cm", 360), ("360mm", 360), ("1.1 m", 1100), ("14 1/4 in", F(57, 4) * INCH), ("14¼\"", F(57, 4) * INCH),
        ("1 yd 4 in", F("1016")), ("2'6\"", 30 * INCH), ("35,7 cm", 357), ("35,7", 357), ("36", 360),
        ("14.25 in", F(57, 4) * INCH), ("14-1/4 in", F(57, 4) * INCH), ("14 ¼ in", F(57, 4) * INCH),
        ("¾ in", F(3, 4) * INCH),
        ("3/8\"", F(3, 8) * INCH), ("1⁄2 in", F(1, 2) * INCH), ("2’ 6”", 30 * INCH), ("2′ 6″", 30 * INCH),
        ("6''", 6 * INCH),
        ("2 ft 6 1/2 in", F(61, 2) * INCH), ("2'6½\"", F(61, 2) * INCH), ("1 yd 1 ft 1 in", 49 * INCH),
        ("1 m 20 cm 5 mm", 1205), ("1m20cm", 1200),
        (".5 in", INCH / 2), ("0.5cm", 5), ("  36   CM ", 360), ("36\u00a0cm", 360), ("+36 cm", 360),
        ("36 centimetres", 360), ("1 Yard", F("914.4")),
        ("3 yds", F("2743.2")), ("6 in.", 6 * INCH), ("1 inch", INCH), ("2 feet", 24 * INCH), ("0", 0), ("0 mm", 0),
        ("0,125 in", INCH / 8),
        ("1 1/2 yd", F("1371.6")), ("7/4 in", F(7, 4) * INCH), ("100000 mm", 100_000), ("1.100 m", 1100),
        ("1/3 cm", F(10, 3)),
        ("14-¼ in", F(57, 4) * INCH), ("14⅙ in", F(85, 6) * INCH), ("⅘ cm", 8), ("3 1/2“", F(7, 2) * INCH),
        ("2‘ 6“", 30 * INCH), ("1.125 cm", F("11.25")),
        ("1.500 m", 1500), ("1.500 in", F(3, 2) * INCH), ("3/4 cm", F("7.5")), ("100/8 in", F(25, 2) * INCH),
    ],
)  # fmt: skip
def test_reads(text, mm):
    assert parse_length(text, "cm") == mm


@pytest.mark.parametrize("unit", ["mm", "cm", "m", "in", "ft", "yd"])
def test_a_bare_number_is_in_the_unit_of_the_ruler_in_hand(unit):
    assert parse_length("14 1/4", unit) == F(57, 4) * MM_IN[unit]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "Nothing is written"), ("  \t", "Nothing is written"), ("-36 cm", "minus"), ("−36 cm", "minus"),
        ("36 banana", "not a length"),
        ("1e99", "not a length"), ("3000 km", "not a length"), ("nan", "not a length"), ("inf", "not a length"),
        ("14 1/", "not finished"),
        ("14 1/ in", "not finished"), ("1/0 in", "0 parts"), ("3 1/0", "0 parts"), ("14 5/4 in", "less than one"),
        ("36 cm 14 in", "one length"),
        ("5 cm 5 cm", "one length"), ("4 in 1 yd", "one length"), ("1,100", "two ways"), ("1,100 mm", "two ways"),
        ("36 36", "not a length"),
        ("36 cm 4", "not a length"), ("1.2.3 cm", "not a length"), ("36..5", "not a length"), ("cm", "not a length"),
        ("/4", "not a length"),
        ("1/2/3 in", "not a length"), ("x" * 10_000, "10000 characters"), ("36²", "not a length"),
        ("²", "not a length"), ("٣٦ cm", "not a length"),
        ("३६", "not a length"), ("３６cm", "not a length"),
        ("36 c\u0131m", "not a length"), ("36\x00cm", "not a length"),
        ("\u202e36 cm", "not a length"),
        ("0x24", "not a length"), ("36_0 cm", "not a length"), ("1 ½½ in", "not a length"),
        ("31/2 in", "Write 3 1/2 or 15 1/2, whichever"), ("11/4 yd", "Write 1 1/4 or 2 3/4,"),
        ("115/8", "Write 11 5/8 or 14 3/8,"), ("14 - 1/4 in", "not a length"),
        ("14 -1/4 in", "not a length"), ("1,500", "Write 1500 or 1.5,"), ("1.500", "Write 1500 or 1.5,"),
        ("1.250 cm", "Write 1250 or 1.25,"), ("2.500mm", "2500 or 2.5,"),
        ("3/4", "Write 3/4 in, or 0.75 cm."), ("½", "Write 1/2 in, or 0.5 cm."), ("1/3", "Write 1/3 in, or 0.333 cm."),
        ("40 x 40", "not a length but two"), ("40×40 cm", "length but two"), ("14 in by 19 1/2 in", "length but two"),
        ("++36", "not a length"), ("36 cm,", "not a length"),
    ],
)  # fmt: skip
def test_refuses_in_one_message_that_says_what_would_be_right(text, says):
    with pytest.raises(InvalidLength) as refused:
        parse_length(text)
    assert says in str(refused.value)
    assert is_one_message(str(refused.value))


def test_a_bare_fraction_is_read_on_an_inch_ruler():
    assert parse_length("3/4", "in") == F(3, 4) * INCH


@given(st.text(max_size=80) | st.text("0123456789 /.,-'\"¼½cminyd⁄−+", max_size=30))
def test_no_text_does_worse_than_being_refused(text):
    try:
        length = parse_length(text)
    except InvalidLength as refused:
        assert is_one_message(str(refused))
    else:
        assert length >= 0


def fractions(most=200_000):
    return st.fractions(min_value=0, max_value=most, max_denominator=10_000)


@given(fractions(), st.sampled_from(sorted(MM_IN)))
def test_a_length_written_exactly_reads_back_as_itself(mm, unit):
    assert parse_length(show_exactly(mm, unit)) == mm


@given(st.integers(0, 20_000), st.sampled_from([1, 2, 4, 8, 16, 32]), st.integers(0, 31))
def test_inch_fractions_survive_being_shown_and_read(whole, parts, part):
    mm = (whole + F(part % parts, parts)) * INCH
    assert parse_length(show_length(mm, Ruler("in", F(1, 32)))) == mm


@given(
    fractions(),
    st.sampled_from(
        [CENTIMETRES, MILLIMETRES, SIXTEENTHS, Ruler("in", F(1, 2)), Ruler("cm", F(1, 20)), Ruler("cm", F(1, 2))]
    ),
)
def test_what_is_shown_reads_back_as_the_division_it_fell_on(mm, ruler):
    shown = show_length(mm, ruler)
    read = ruler.fine_enough_for(mm).read(mm)
    assert read or not mm or shown.startswith("under ")
    if read or not mm:
        assert parse_length(shown.removeprefix("about ")) == read
        assert shown.startswith("about ") == (read != mm)


@given(fractions(), st.sampled_from([CENTIMETRES, SIXTEENTHS, Ruler("in", F(1, 8))]))
def test_rounding_keeps_to_its_direction_and_stays_within_one_division(mm, ruler):
    down, nearest, up = (ruler.read(mm, toward) for toward in ("down", "nearest", "up"))
    assert down <= mm <= up
    assert down <= nearest <= up and abs(nearest - mm) <= ruler.step_mm / 2
    assert up - down in (0, ruler.step_mm)
    assert (up == down) == (mm % ruler.step_mm == 0)


@pytest.mark.parametrize(
    ("mm", "ruler", "toward", "shown"),
    [
        (F("357.142857"), CENTIMETRES, "nearest", "about 35.7 cm"),
        (F("357.142857"), CENTIMETRES, "up", "about 35.8 cm"),
        (F("357.9"), CENTIMETRES, "down", "about 35.7 cm"), (F(357), CENTIMETRES, "nearest", "35.7 cm"),
        (F(360), CENTIMETRES, "up", "36 cm"),
        (F(360), MILLIMETRES, "nearest", "360 mm"), (F("361.95"), SIXTEENTHS, "nearest", "14 1/4 in"),
        (F(360), SIXTEENTHS, "nearest", "about 14 3/16 in"),
        (F(360), SIXTEENTHS, "down", "about 14 1/8 in"), (F(0), CENTIMETRES, "nearest", "0 cm"),
        (F(1, 100), SIXTEENTHS, "nearest", "under 1/64 in"),
        (F("0.25"), Ruler("cm", F(1, 20)), "nearest", "0.025 cm"),
        (F("2.5"), Ruler("cm", F(1, 20)), "nearest", "0.25 cm"),
        (F(100_000), CENTIMETRES, "nearest", "10000 cm"), (-INCH / 4, SIXTEENTHS, "nearest", "−1/4 in"),
    ],
)  # fmt: skip
def test_shows(mm, ruler, toward, shown):
    assert show_length(mm, ruler, toward) == shown


@pytest.mark.parametrize("noise", [-1e-9, 0.0, 1e-9])
@pytest.mark.parametrize("toward", ["nearest", "down", "up"])
def test_a_float_a_hair_off_a_division_is_on_it(noise, toward):
    assert show_length(357.0 + noise, CENTIMETRES, toward) == "35.7 cm"


def test_a_quotation_is_short_and_holds_nothing_that_does_not_print():
    assert quote("a" * 100) == "a" * 23 + "…"
    assert quote("36\x00 \u202ecm\u2066\ud800").isprintable()
