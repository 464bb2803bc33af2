"""Nothing is read as what was not meant: whatever a kind takes from what was typed is what the characters say.

The judge (`plain_reading`) reads every text a second way.
"""

from fractions import Fraction as F

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from calculators.asking.answering import Asking, answer
from calculators.asking.rows import Rows
from calculators.catalogue import calculator_named, catalogue
from calculators.values.duration import Minutes
from calculators.values.kind import InvalidValue
from calculators.values.kinds import Angle, Count, DimensionalChange, Length, LongLength, Number, Percent
from calculators.values.measure import CENTIMETRES, MILLIMETRES, SIXTEENTHS, InvalidLength, parse_length, write_units
from calculators.values.money import Amount, PriceOfLength
from tests.sentences import is_one_message
from tests.values import plain_reading

RULERS = [CENTIMETRES, MILLIMETRES, SIXTEENTHS]
DIGITS = st.text("0123456789", min_size=1, max_size=4)
SIGNS = st.sampled_from(plain_reading.FRACTION_SIGNS)
PIECES = (
    DIGITS
    | SIGNS
    | st.sampled_from(
        [
            " ",
            ".",
            ",",
            "/",
            "⁄",
            "-",
            "+",
            "cm",
            "mm",
            "m",
            " in",
            "in.",
            '"',
            "'",
            "ft",
            "yd",
            "h",
            "min",
            "s",
            ":",
            "%",
            "°",
            "deg",
            "dozen",
            "€",
        ]
    )
)
#: Whatever may be typed into one blank: pieces of numbers and units in any order, close together or apart.
TYPED = st.lists(PIECES, min_size=1, max_size=7).map("".join)

RUN_ON = [
    "1½0 cm",
    "2½3 cm",
    "⅝0 in",
    "1½0",
    "½½",
    "45½0",
    "1½.5 cm",
    "½/2 in",
    "1/½ in",
    "1/20½",
    "1⁄2½",
    "14 1/4½ in",
    "1.5½",
    "½,5",
    "1½0%",
    "1½0 h",
    "1½0 dozen",
    "1½0 per m",
    "1/2 0 cm",
]


def _read(kind, text, ruler):
    try:
        return kind.parse(text, ruler)
    except InvalidValue as refused:
        assert is_one_message(str(refused)), refused
        return None


def _means(kind, text, ruler):
    """What the judge makes of a text for a kind."""
    if isinstance(kind, Length):
        return (
            plain_reading.length(text, "yd" if ruler.unit == "in" else "m")
            if isinstance(kind, LongLength)
            else plain_reading.length(text, ruler.unit)
        )
    if isinstance(kind, Number):
        return plain_reading.plain(text, ((kind.sign.strip(),) if kind.sign else ()) + kind.words)
    if isinstance(kind, Count):
        return plain_reading.count(text)
    return plain_reading.minutes(text) if isinstance(kind, Minutes) else plain_reading.amount(text)


WIDE = F(10) ** 12
KINDS = [
    Length(most=WIDE), LongLength(most=WIDE), Number(least=-WIDE, most=WIDE), Percent(least=-WIDE, most=WIDE),
    DimensionalChange(least=-WIDE, most=WIDE), Angle(least=-WIDE, most=WIDE),
    Count(most=10**12), Amount(most=WIDE), Minutes(most=WIDE),
]  # fmt: skip


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: type(kind).__name__)
@settings(max_examples=400)
@given(text=TYPED, ruler=st.sampled_from(RULERS))
@example("1½0 cm", CENTIMETRES)
@example("2½3", CENTIMETRES)
@example("⅝0", SIXTEENTHS)
@example("1 ft.5 in", SIXTEENTHS)
@example("1 yd 4", SIXTEENTHS)
@example("38+20", CENTIMETRES)
@example("1,000", CENTIMETRES)
@example("1,250.00", CENTIMETRES)
@example("1 h ½", CENTIMETRES)
def test_what_is_read_is_what_the_characters_say(kind, text, ruler):
    value = _read(kind, text, ruler)
    if value is not None:
        assert value == _means(kind, text, ruler), text


@pytest.mark.parametrize("text", RUN_ON)
def test_a_digit_straight_after_a_fraction_is_read_by_no_kind(text):
    for kind in [*KINDS, PriceOfLength(most=WIDE)]:
        for ruler in RULERS:
            assert _read(kind, text, ruler) is None, kind


@given(
    st.sampled_from(plain_reading.FRACTION_SIGNS),
    DIGITS,
    st.sampled_from(["", "1", "14 ", "2-"]),
    st.sampled_from(["", " cm", " in", '"']),
)
def test_the_sentence_says_that_a_digit_after_a_fraction_sign_is_wrong(sign, digits, before, unit):
    with pytest.raises(InvalidLength, match="has a digit after"):
        parse_length(f"{before}{sign}{digits}{unit}", "in")


@given(
    st.integers(0, 999),
    st.integers(1, 63),
    st.sampled_from([2, 4, 8, 16, 32, 64]),
    st.sampled_from(["{} {}/{}", "{}-{}/{}", "{} {}⁄{}", "{} {} / {}"]),
)
def test_a_whole_and_a_fraction_are_read_by_every_kind_that_has_parts(whole, top, bottom, form):
    top = top % bottom or 1
    text, value = form.format(whole, top, bottom), whole + F(top, bottom)
    assert parse_length(text + " in") == value * F("25.4")
    assert Number(most=F(1000)).parse(text, CENTIMETRES) == Angle(most=F(1000)).parse(text + "°", CENTIMETRES) == value


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("77.97601800287129", F("77.97601800287129")), (".5", F(1, 2)), ("90.", F(90)), ("45 1/2", F("45.5")),
        ("45½", F("45.5")), ("90 deg", F(90)), ("90 degrees", F(90)),
        ("+5", F(5)), ("90 °", F(90)), ("90º", F(90)), ("67,5°", F("67.5")), ("½", F(1, 2)),
        ("0.0000000000000001", F(1, 10**16)),
    ],
)  # fmt: skip
def test_an_angle_is_read_however_many_digits_it_has(text, degrees):
    assert Angle(most=F(180)).parse(text, CENTIMETRES) == degrees


@pytest.mark.parametrize("angle", ["77.97601800287129", "77,97601800287129°", "45 1/2", "90 deg", "+60"])
def test_an_angle_with_many_digits_is_answered(angle):
    for name in ("mitre-marks", "gauge-finder"):
        assert answer(calculator_named(name), Asking({"angle": angle})).results


@pytest.mark.parametrize(
    ("text", "unit", "mm", "written"),
    [
        ("1 yd 4", "in", 40 * F("25.4"), "1 yd 4 in"), ("1 yd 4", "cm", 40 * F("25.4"), "1 yd 4 in"),
        ("2'6", "in", 30 * F("25.4"), "2'6 in"), ("2 ft 6 1/2", "in", F("30.5") * F("25.4"), "2 ft 6 1/2 in"),
        ("1 yd 2 ft 3", "in", 63 * F("25.4"), "1 yd 2 ft 3 in"), ("1 m 20", "cm", 1200, "1 m 20 cm"),
        ("1 m 05", "in", 1050, "1 m 05 cm"), ("1 m 20.5", "cm", 1205, "1 m 20.5 cm"),
        ("38+20", "cm", 580, "58 cm"), ("38+20", "in", 58 * F("25.4"), "58 in"), ("38 + 20 cm", "in", 580, "58 cm"),
        ("38 cm + 20", "in", 580, "58 cm"),
        ("14 1/4 + 1/2 in", "cm", F("14.75") * F("25.4"), "14 3/4 in"), ("1 yd + 4 in", "cm", 1016, "1 yd + 4 in"),
        ("1 m 20 + 5 cm", "cm", 1250, "1.25 m"), ("36. cm", "cm", 360, "36. cm"),
    ],
)  # fmt: skip
def test_a_unit_that_goes_without_saying_and_a_sum_are_read_and_written_out(text, unit, mm, written):
    assert parse_length(text, unit) == mm
    assert write_units(text, unit) == written
    for other in ("cm", "mm", "in"):
        assert parse_length(written, other) == mm


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("1 m 5", "Write 1 m 5 cm, or 1.5 m."), ("1 ft 1/2", "Write 1 ft 1/2 in, or 1 1/2 ft."),
        ("1 yd 0.5", "Write 1 yd 0.5 in, or 1.5 "
            "yd."), ("1 yd 40", "the 40 has no unit"), ("1 m 200", "the 200 has no unit"),
        ("36 cm 4", "the 4 has no unit"), ("6 in 1", "the 1 has no unit"), ("38+", "is not finished"),
        ("38 + 20 cm + 2 mm", "The 38 in"), ("1 yd 4 + 2", "The 2 in"), ("1/2 + 3", "1/2 in, or 0.5 cm"),
        ("38++20", "not a length"), ("+", "not a length"), ("38-20", "not a length"),
    ],
)  # fmt: skip
def test_what_can_be_meant_two_ways_is_asked_with_both(text, says):
    with pytest.raises(InvalidLength) as refused:
        parse_length(text, "cm")
    assert says in str(refused.value) and is_one_message(str(refused.value))


@settings(max_examples=300)
@given(TYPED, st.sampled_from(RULERS), st.sampled_from(RULERS))
def test_a_length_with_its_units_written_out_means_the_same_on_every_ruler(text, ruler, other):
    value = _read(Length(most=WIDE), text, ruler)
    if value is not None:
        assert Length(most=WIDE).parse(Length().write_out(text, ruler), other) == value


@given(st.integers(0, 10**7), st.sampled_from(RULERS))
def test_what_a_page_shows_of_counts_and_amounts_can_be_typed(number, ruler):
    assert Count(most=10**7).parse(Count().show(number, ruler), ruler) == number
    hundredths = F(number, 100)
    assert Amount(most=WIDE).parse(Amount().show(hundredths, ruler), ruler) == hundredths
    assert PriceOfLength(most=WIDE).parse("1,250.00 per m", ruler) == 1250


def _kinds(fields):
    for field in fields:
        yield from _kinds(field.kind.columns) if isinstance(field.kind, Rows) else [field.kind]


@pytest.mark.parametrize(
    "text", ["9" * 10_000, "1" + " " * 39_000 + "1", "½" * 5_000, "1/" * 5_000, "+" * 10_000, "1 h " * 5_000]
)
def test_a_text_longer_than_any_value_is_refused_by_every_kind_of_every_blank(text):
    """A text of 39,000 spaces between two digits took half a minute to refuse."""
    for kind in {
        repr(kind): kind for calculator in catalogue().values() for kind in _kinds(calculator.fields)
    }.values():
        assert _read(kind, text, CENTIMETRES) is None
