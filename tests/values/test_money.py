"""Amounts and prices: what they read, show and refuse."""

from dataclasses import replace
from fractions import Fraction as F

import pytest
from babel import Locale
from hypothesis import given
from hypothesis import strategies as st

from calculators.values.kind import InvalidValue
from calculators.values.measure import CENTIMETRES, MILLIMETRES, SIXTEENTHS
from calculators.values.money import CODES, Amount, ListedPrice, PriceOfLength, two_decimals, with_sign
from tests.sentences import is_one_message


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12.50", F("12.5")), ("12,50", F("12.5")), (" 12 ", F(12)), (".5", F(1, 2)), ("0", F(0)),
        ("1250.99", F("1250.99")),
        ("€12.50", F("12.5")), ("12,50 €", F("12.5")), ("£ 3", F(3)), ("CHF 12.50", F("12.5")),
        ("12.50 EUR", F("12.5")),
    ],
)  # fmt: skip
def test_an_amount_is_read_with_or_without_its_sign(text, value):
    assert Amount().parse(text, CENTIMETRES) == value


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "not an amount"), ("dear", "not an amount"), ("12.505.1", "not an amount"), ("1e3", "not an amount"),
        ("٣", "not an amount"), ("€", "not an amount"), ("€€5", "not an amount"),
        ("12 cm", "not an amount"), ("12.5000", "not an amount"), ("1,250", "Write 1250 or 1.25"),
        ("1.250", "Write 1250 or 1.25"), ("-5", "never less than nothing"), ("−5.20", "never less"),
        ("2000000", "from 0.00 to 1,000,000.00"), ("9" * 40, "not an amount"), ("=1+1", "not an amount"),
        ("12:50", "not an amount"),
    ],
)  # fmt: skip
def test_what_is_no_amount_is_refused_with_what_would_be_right(text, says):
    for kind in (Amount(), PriceOfLength()):
        with pytest.raises(InvalidValue) as refused:
            kind.parse(text, CENTIMETRES)
        assert says in str(refused.value) and is_one_message(str(refused.value))


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (F(0), "0.00"),
        (F("12.5"), "12.50"),
        (F("1234.5"), "1,234.50"),
        (F(1, 3), "0.33"),
        (F("0.005"), "0.01"),
        (F("0.0049"), "0.00"),
        (F("0.995"), "1.00"),
    ],
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
        ("18.50", CENTIMETRES, F("18.5")), ("18.50", MILLIMETRES, F("18.5")), ("9.144", None, None),
        ("9.14", SIXTEENTHS, F("9.14") / F("0.9144")), ("18,50 per m", SIXTEENTHS, F("18.5")),
        ("€18.50/m", CENTIMETRES, F("18.5")), ("18.50 a metre", CENTIMETRES, F("18.5")),
        ("9 per yd", CENTIMETRES, F(9) / F("0.9144")), ("9 € a yard", CENTIMETRES, F(9) / F("0.9144")),
    ],
)  # fmt: skip
def test_a_price_is_for_a_metre_or_a_yard(text, ruler, for_a_metre):
    """A yard is 0.9144 m exactly, so 9.144 a yard would be 10 a metre; three decimals are asked again."""
    if for_a_metre is None:
        with pytest.raises(InvalidValue):
            PriceOfLength().parse(text, CENTIMETRES)
    else:
        assert PriceOfLength().parse(text, ruler) == for_a_metre


@pytest.mark.parametrize("text", ["18.50 m", "18.50 per cm", "per m", "18.50 per", "18.50 per m per m"])
def test_a_price_for_something_else_is_refused(text):
    with pytest.raises(InvalidValue) as refused:
        PriceOfLength().parse(text, CENTIMETRES)
    assert is_one_message(str(refused.value))


def test_a_bare_price_keeps_its_meaning_on_the_other_ruler():
    kind = PriceOfLength()
    assert (
        kind.write_out("18.50", CENTIMETRES) == "18.50 per m" and kind.write_out("18.50", SIXTEENTHS) == "18.50 per yd"
    )
    assert kind.parse(kind.write_out("18.50", CENTIMETRES), SIXTEENTHS) == F("18.5")
    assert kind.write_out("18.50/yd", CENTIMETRES) == "18.50/yd"
    assert (kind.show(F(10), CENTIMETRES), kind.show(F(10), SIXTEENTHS)) == ("10.00 per m", "9.14 per yd")


MONEYS = ("€", "$", "£", "US$", "EUR", "CHF", "kr", "zł", "Kč", "R", "francs")


def in_hand(money):
    return replace(CENTIMETRES, money=money)


@pytest.mark.parametrize("money", MONEYS)
@given(st.integers(0, 10**8))
def test_in_every_money_what_is_shown_bears_its_sign_and_reads_back(money, hundredths):
    amount = F(hundredths, 100)
    for kind in (Amount(), PriceOfLength()):
        ruler, shown = in_hand(money), kind.show(amount, in_hand(money))
        assert money in shown and kind.parse(kind.write(amount, ruler), ruler) == amount
        assert kind.parse(kind.write_out(two_decimals(amount).replace(",", ""), ruler), ruler) == amount


@pytest.mark.parametrize("money", MONEYS)
@pytest.mark.parametrize("written", ["{money}4.25", "{money} 4,25", "4.25 {money}", "4.25{money}"])
def test_the_houses_own_money_may_be_typed_on_either_side(money, written):
    assert Amount().parse(written.format(money=money), in_hand(money)) == F("4.25")


@pytest.mark.parametrize(
    ("money", "text"),
    [
        ("$", "USD 4.25"),
        ("$", "4.25 cad"),
        ("€", "EUR 4.25"),
        ("EUR", "€4.25"),
        ("£", "4.25 GBP"),
        ("GBP", "£4.25"),
        ("kr", "SEK 4.25"),
        ("USD", "$4.25"),
    ],
)
def test_a_sign_and_its_code_are_one_money(money, text):
    assert Amount().parse(text, in_hand(money)) == F("4.25")


@pytest.mark.parametrize("kind", [Amount(), PriceOfLength(), ListedPrice()])
@pytest.mark.parametrize(
    ("money", "text"),
    [
        ("€", "$4.25"),
        ("€", "4.25 £"),
        ("$", "EUR 4.25"),
        ("$", "4.25€"),
        ("kr", "€ 4.25"),
        ("CHF", "4.25 EUR"),
        ("€", "US$4.25"),
    ],
)
def test_another_money_is_refused_in_one_sentence_that_names_both(kind, money, text):
    with pytest.raises(InvalidValue) as refused:
        kind.parse(text, in_hand(money))
    assert f"the house’s money is {money}" in str(refused.value) and is_one_message(str(refused.value))


def test_a_listed_price_is_kept_without_its_sign_so_that_it_follows_the_houses_money():
    assert [ListedPrice().write_out(text, in_hand("$")) for text in ("$18.50", "18.50", "USD 18.50")] == ["18.50"] * 3


@pytest.mark.parametrize(
    ("money", "shown"),
    [
        ("€", "€4.25"),
        ("US$", "US$4.25"),
        ("EUR", "EUR\N{NO-BREAK SPACE}4.25"),
        ("kr", "4.25\N{NO-BREAK SPACE}kr"),
        ("", "4.25"),
    ],
)
def test_where_the_money_stands(money, shown):
    assert with_sign("4.25", money) == shown


AT_HOME = {
    "EUR": "de", "GBP": "en_GB", "USD": "en_US", "CAD": "en_CA", "AUD": "en_AU", "NZD": "en_NZ", "SGD": "en_SG",
    "HKD": "zh_Hant_HK", "MXN": "es_MX", "JPY": "ja", "CNY": "zh_Hans_CN", "INR": "en_IN",
    "SEK": "sv", "NOK": "nb", "DKK": "da", "PLN": "pl", "CZK": "cs", "HUF": "hu", "TRY": "tr", "UAH": "uk", "ILS": "he",
    "ZAR": "en_ZA", "BRL": "pt_BR",
}  # fmt: skip


@pytest.mark.parametrize(("sign", "code"), [(sign, code) for sign, codes in CODES.items() for code in codes])
def test_signs_and_codes_belong_together_as_the_cldr_has_them(sign, code):
    """Babel carries the Unicode CLDR: the sign of each money where it is at home."""
    found = Locale.parse(AT_HOME[code]).currency_symbols[code]
    assert found.rstrip(".").replace("HK", "").replace("￥", "¥") == sign


@pytest.mark.parametrize(
    ("kind", "text", "money", "under"),
    [
        (Amount(), "€18.50", "£", "£18.50"), (Amount(), "18,50 €", "£", "£18,50"), (Amount(), "CHF 7", "€", "€7"),
        (Amount(), "$3", "CHF", "CHF\N{NO-BREAK SPACE}3"),
        (PriceOfLength(), "€18.50 per m", "£", "£18.50 per m"), (PriceOfLength(), "18.50 € / yd", "$", "$18.50 / yd"),
        (PriceOfLength(), "€12", "£", "£12 per m"),
        (Amount(), "€18.50", "€", ""), (Amount(), "18.50", "£", ""), (Amount(), "dear", "£", ""),
        (Amount(), "€dear", "£", ""), (Amount(), "€1,250", "£", ""), (Amount(), "€2000000", "£", ""),
        (Amount(), "", "£", ""),
    ],
)  # fmt: skip
def test_an_amount_under_another_money_is_offered_under_the_houses_and_nothing_else_is(kind, text, money, under):
    ruler = replace(CENTIMETRES, money=money)
    offered = kind.instead(text, ruler)
    assert offered == under
    if under:
        assert kind.parse(offered, ruler) == kind.parse(text, replace(CENTIMETRES, money=""))
