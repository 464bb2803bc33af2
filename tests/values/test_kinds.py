"""Kinds of value: what each reads, shows, passes on as plain data and refuses."""

import json
from fractions import Fraction as F

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators.values.kind import InvalidValue, Kind, plain_number
from calculators.values.kinds import Angle, Choice, Column, Count, Length, Lengths, Number, Percent, Table, Text, YesNo
from calculators.values.measure import CENTIMETRES, SIXTEENTHS, InvalidLength, Ruler, parse_length
from tests.sentences import is_one_message

CHOICE = Choice(options={"cut": "cut size", "finished": "finished size"})
EVERY_KIND = [Length(), Number(), Percent(), Angle(), Count(), CHOICE, YesNo(), Text()]


@pytest.mark.parametrize(
    ("kind", "text", "value"),
    [
        (Length(), "36", F(360)), (Length(), "14 1/4 in", F("361.95")), (Number(), "3.5", F(7, 2)),
        (Number(), " 3,5 ", F(7, 2)),
        (Percent(), "5 %", F(5)), (Percent(least=F(-50)), "-5%", F(-5)), (Percent(least=F(-50)), "−5", F(-5)),
        (Angle(most=F(180)), "120°", F(120)),
        (Angle(most=F(180)), "67.5", F(135, 2)), (Count(), "18", 18), (Count(), " 4 ", 4), (Count(), "2 dozen", 24),
        (Count(), "3doz.", 36), (Count(), "a dozen", 12),
        (Count(), "Half a dozen", 6), (CHOICE, "Cut", "cut"), (CHOICE, " finished ", "finished"),
        (YesNo(), "Yes", True), (YesNo(), "no", False), (Text(), " a napkin ", "a napkin"),
    ],
)  # fmt: skip
def test_reads(kind, text, value):
    assert kind.parse(text, CENTIMETRES) == value


@pytest.mark.parametrize(
    ("kind", "text", "says"),
    [
        (Length(least=F(20)), "0", "least that works is 2 cm"),
        (Length(most=F(6000)), "7 m", "most that works is 600 cm"),
        (Length(), "36 banana", "not a length"), (Number(), "1e9", "not a number"), (Number(), "inf", "not a number"),
        (Number(), "nan", "not a number"),
        (Number(), "٣", "not a number"), (Number(), "101", "from 0 to 100"), (Percent(), "-1", "from 0 % to 100 %"),
        (Angle(least=F(20), most=F(160)), "180", "from 20° to 160°"),
        (Count(), "4.5", "not a count"), (Count(), "-4", "not a count"), (Count(), "", "not a count"),
        (Count(), "a", "not a count"), (Count(), "half a", "not a count"), (Count(), "2 dozen or so", "not a count"),
        (Count(most=20), "2 dozen", "from 0 to 20"), (Count(most=200), "201", "from 0 to 200"),
        (Count(), "9" * 40, "not a count"), (CHOICE, "sewn", "cut, finished"), (YesNo(), "perhaps", "yes or no"),
        (Text(), "x" * 81, "81 characters"),
    ],
)  # fmt: skip
def test_refuses_with_what_would_be_right(kind, text, says):
    with pytest.raises(InvalidValue) as refused:
        kind.parse(text, CENTIMETRES)
    assert says in str(refused.value)
    assert is_one_message(str(refused.value))


@pytest.mark.parametrize("kind", EVERY_KIND, ids=lambda kind: type(kind).__name__)
@given(text=st.text(max_size=90))
def test_no_text_does_worse_than_being_refused(kind, text):
    try:
        value = kind.parse(text, CENTIMETRES)
    except InvalidValue as refused:
        assert is_one_message(str(refused))
    else:
        json.dumps(kind.plain(value))
        assert isinstance(kind.show(value, SIXTEENTHS), str)


@given(
    st.text("0123456789 /.,-¼½⁄", min_size=1, max_size=12),
    st.sampled_from([(CENTIMETRES, SIXTEENTHS), (SIXTEENTHS, CENTIMETRES)]),
)
def test_a_bare_number_written_out_means_the_same_on_the_other_ruler(text, rulers):
    one, other = rulers
    try:
        meant = parse_length(text, one.unit)
    except InvalidLength:
        assume(False)
    assert parse_length(Length().write_out(text, one), other.unit) == meant


@pytest.mark.parametrize("text", ["36 cm", '14¼"', "2'6\"", "1 yd 4 in", "360mm"])
def test_a_length_with_its_unit_is_left_as_typed(text):
    assert Length().write_out(text, CENTIMETRES) == text


@pytest.mark.parametrize(
    ("kind", "value", "shown"),
    [
        (Length(), F(357), "35.7 cm"), (Length(toward="up"), F("357.1"), "about 35.8 cm"),
        (Lengths(), [F(360), F(720)], "36 cm · 72 cm"),
        (Number(places=3), F(1, 3), "0.333"), (Percent(), F(-5), "−5 %"), (Percent(), F(-1, 1000), "0 %"),
        (Percent(), F(1, 6), "0.2 %"), (Angle(), F(135, 2), "67.5°"),
        (Angle(), F(90), "90°"), (Count(), 1200, "1,200"), (CHOICE, "cut", "cut size"), (YesNo(), True, "yes"),
        (Text(), "linen", "linen"),
        (Number(places=0), F(100), "100"),
    ],
)  # fmt: skip
def test_shows(kind, value, shown):
    assert kind.show(value, CENTIMETRES) == shown


def test_a_table_shows_and_passes_on_its_gaps():
    table = Table(columns=(Column("size", "Size", Length()), Column("count", "Pieces", Count())))
    rows = [{"size": F("357.5"), "count": 7}, {"size": None, "count": 8}]
    assert table.cells(rows[1], CENTIMETRES) == ["", "8"]
    assert table.plain(rows) == [{"size": 357.5, "count": 7}, {"size": None, "count": 8}]
    assert table.show(rows, CENTIMETRES) == "about 35.8 cm, 7; 8"


@pytest.mark.parametrize(
    ("value", "plain"), [(F(360), 360), (F("361.95"), 361.95), (1 / 3, 0.333333333333), (0.1 + 0.2, 0.3), (7, 7)]
)
def test_plain_numbers_are_whole_where_they_can_be_and_free_of_noise(value, plain):
    assert plain_number(value) == plain
    assert isinstance(plain_number(value), type(plain))


@pytest.mark.parametrize("value", [float("inf"), float("nan")])
def test_a_number_that_is_none_is_not_passed_on(value):
    with pytest.raises(ValueError, match="finite"):
        plain_number(value)


def test_a_kind_must_say_how_it_reads_and_shows():
    with pytest.raises(NotImplementedError):
        Kind().parse("1", CENTIMETRES)
    with pytest.raises(NotImplementedError):
        Kind().show(1, Ruler("cm", F(1)))
