"""HTML made of elements: whatever is put in comes out as text."""

import pytest
from bs4 import BeautifulSoup

from calculators.faces.page.markup import add, element, html

NASTY = "<script>alert(\"1\")</script> & 'x' \u202e “36” \x00"


def test_content_stays_in_order():
    made = element("p", None, "one ", element("b", None, "two"), " three", None, " four")
    add(made, element("i"), " five")
    assert html(made) == "<p>one <b>two</b> three four<i></i> five</p>"


def test_attributes_may_stand_alone_or_be_left_out():
    assert (
        html(element("input", {"hidden": True, "value": None, "checked": False, "id": "a"}))
        == '<input hidden="" id="a">'
    )


def test_whatever_is_put_in_comes_out_as_text():
    page = BeautifulSoup(html(element("p", {"title": NASTY}, NASTY, element("b", None, NASTY), NASTY)), "html.parser")
    assert page.find("script") is None
    assert page.p["title"] == NASTY
    assert page.get_text() == NASTY * 3


@pytest.mark.parametrize(
    ("text", "joined"),
    [
        ("mark about 2.8 cm from it", "mark about~2.8~cm from it"),
        ("14 1/16 in wide", "14~1/16~in wide"),
        ("1/8 in or 3 %", "1/8~in or 3~%"),
        ("12 pieces in 3 rows", "12 pieces in 3 rows"),
        ("4 inches, about a hand", "4 inches, about a hand"),
    ],
)
def test_a_number_stays_on_one_line_with_its_unit(text, joined):
    assert element("p", None, text).text == joined.replace("~", "\N{NO-BREAK SPACE}")
    assert element("textarea", None, text).text == text
