"""Amounts and prices: what they read, show and refuse."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.kinds import Refused
from calculators.measure import CENTIMETRES, MILLIMETRES, SIXTEENTHS
from calculators.money import Amount, PriceOfLength, two_decimals
from tests.sentences import is_one_message


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12.50", F("12.5")), ("12,50", F("12.5")), (" 12 ", F(12)), (".5", F(1, 2)), ("0", F(0)), ("1250.99", F("1250.99")),
        ("€12.50", F("12.5")), ("12,50 €", F("12.5")), ("£ 3", F(3)), ("CHF 12.50", F("12.5")), ("12.50 EUR", F("12.5")),
    ],
)  # fmt: skip
def test_an_amount_is_read_with_or_without_its_sign(text, value):
    assert Amount().parse(text, CENTIMETRES) == value


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "not an amount"), ("dear", "not an amount"), ("12.505.1", "not an amount"), ("1e3", "not an amount"), ("٣", "not an amount"), ("€", "not an amount"), ("€€5", "not an amount"),
        ("12 cm", "not an amount"), ("12.5000", "not an amount"), ("1,250", "Write 1250 or 1.25"), ("1.250", "Write 1250 or 1.25"), ("-5", "never less than nothing"), ("−5.20", "never less"),
        ("2000000", "from 0.00 to 1,000,000.00"), ("9" * 40, "not an amount"), ("=1+1", "not an amount"), ("12:50", "not an amount"),
    ],
)  # fmt: skip
def test_what_is_no_amount_is_refused_with_what_would_be_right(text, says):
    for kind in (Amount(), PriceOfLength()):
        with pytest.raises(Refused) as refused:
            kind.parse(text, CENTIMETRES)
        assert says in str(refused.value) and is_one_message(str(refused.value))


@pytest.mark.parametrize(
    ("value", "shown"), [(F(0), "0.00"), (F("12.5"), "12.50"), (F("1234.5"), "1,234.50"), (F(1, 3), "0.33"), (F("0.005"), "0.01"), (F("0.0049"), "0.00"), (F("0.995"), "1.00")]
)
def test_an_amount_is_rounded_only_when_shown(value, shown):
    assert two_decimals(value) == shown == Amount().show(value, CENTIMETRES)


@given(st.integers(0, 10**8))
def test_what_stands_in_a_blank_reads_back(hundredths):
    amount = F(hundredths, 100)
    assert Amount().parse(Amount().write(amount, CENTIMETRES), CENTIMETRES) == amount


@pytest.mark.parametrize(
    ("text", "ruler", "for_a_metre"),
    [
        ("18.50", CENTIMETRES, F("18.5")), ("18.50", MILLIMETRES, F("18.5")), ("9.144", None, None), ("9.14", SIXTEENTHS, F("9.14") / F("0.9144")), ("18,50 per m", SIXTEENTHS, F("18.5")),
        ("€18.50/m", CENTIMETRES, F("18.5")), ("18.50 a metre", CENTIMETRES, F("18.5")), ("9 per yd", CENTIMETRES, F(9) / F("0.9144")), ("9 € a yard", CENTIMETRES, F(9) / F("0.9144")),
    ],
)  # fmt: skip
def test_a_price_is_for_a_metre_or_a_yard(text, ruler, for_a_metre):
    """A yard is 0.9144 m exactly, so 9.144 a yard would be 10 a metre; three decimals are asked again."""
    if for_a_metre is None:
        with pytest.raises(Refused):
            PriceOfLength().parse(text, CENTIMETRES)
    else:
        assert PriceOfLength().parse(text, ruler) == for_a_metre


@pytest.mark.parametrize("text", ["18.50 m", "18.50 per cm", "per m", "18.50 per", "18.50 per m per m"])
def test_a_price_for_something_else_is_refused(text):
    with pytest.raises(Refused) as refused:
        PriceOfLength().parse(text, CENTIMETRES)
    assert is_one_message(str(refused.value))


def test_a_bare_price_keeps_its_meaning_on_the_other_ruler():
    kind = PriceOfLength()
    assert kind.write_out("18.50", CENTIMETRES) == "18.50 per m" and kind.write_out("18.50", SIXTEENTHS) == "18.50 per yd"
    assert kind.parse(kind.write_out("18.50", CENTIMETRES), SIXTEENTHS) == F("18.5")
    assert kind.write_out("18.50/yd", CENTIMETRES) == "18.50/yd"
    assert (kind.show(F(10), CENTIMETRES), kind.show(F(10), SIXTEENTHS)) == ("10.00 per m", "9.14 per yd")
