"""A value that cannot be used gets its sentence at its blank; the last good answer stays and is marked as an old
one."""

import json
import re

from playwright.sync_api import Page, expect

from calculators.faces.browser import replies
from tests.bad_values import IMPOSSIBLE_TOGETHER, REFUSED_EVERYWHERE
from tests.browser.reader import WAKING, blank, calculator, forget_typed, one_window, reached, refusal, says, spoken

pytestmark = one_window

PAGES = {
    "pieces-from-cloth": "plan/pieces/",
    "wash-test": "prepare/wash-test/",
    "usable-cloth": "prepare/measure/",
    "finished-size": "fold/hems/",
    "mitre-marks": "corners/mitre/",
    "curtains": "projects/curtains/",
}


def sentences(name: str, typed: dict) -> dict:
    (reply,) = map(
        json.loads,
        replies(json.dumps({"ask": "calculator", "calculator": name, "given": {}, "typed": typed, "ruler": ""})),
    )
    return reply["refusals"]


def test_every_bad_value_gets_its_sentence_and_the_last_good_answer_stays(page: Page):
    page.goto("./" + PAGES["pieces-from-cloth"])
    section = calculator(page, "pieces-from-cloth")
    piece = blank(section, "piece_width")

    def line_below():
        return piece.evaluate(
            "it => { const { borderBottomColor, borderBottomStyle } = getComputedStyle(it); return [borderBottomColor, "
            "borderBottomStyle]; }"
        )

    untouched = line_below()
    piece.fill("36 cm")
    says(section, "4 across")
    assert line_below() == untouched  # a good value looks like one
    good = spoken(section).inner_text()
    seen = 0
    for bad in REFUSED_EVERYWHERE:
        if bad == "\ud83d":
            continue  # half a character cannot be typed
        piece.fill(bad)
        typed = piece.input_value()  # a blank of one line drops line ends
        if typed.strip().isdigit():
            continue
        expect(refusal(section, "piece_width")).to_have_text(
            re.sub(r"\s+", " ", sentences("pieces-from-cloth", {"piece_width": typed})["piece_width"]), timeout=WAKING
        )
        seen += 1
    assert seen >= 60
    piece.fill("36 cm")
    says(section, "4 across")
    piece.select_text()
    page.keyboard.press("Delete")  # emptied, and not yet left: leaving it would bring the house's number back
    expect(refusal(section, "piece_width")).to_contain_text("nothing is written", timeout=WAKING)
    assert piece.get_attribute("aria-invalid") == "true"
    assert line_below() != untouched
    assert refusal(section, "piece_width").get_attribute("id") in piece.get_attribute("aria-describedby")
    expect(section.locator(".answer")).to_have_class(re.compile("is-old"))
    expect(section.locator(".old-answer")).to_be_visible()
    assert spoken(section).inner_text() == good
    expect(section.locator("figure.drawing > svg")).to_be_visible()
    piece.fill("46 cm")
    says(section, "3 across")
    expect(refusal(section, "piece_width")).to_be_hidden()
    expect(piece).to_have_attribute("aria-invalid", "false")


def test_values_that_cannot_go_together_are_refused_at_their_blanks(page: Page):
    for name, address in PAGES.items():  # orders are tables; their own browser test writes into them
        page.goto("./" + address)
        section = calculator(page, name)
        together = [(typed, fields) for calculator, typed, fields in IMPOSSIBLE_TOGETHER if calculator == name]
        assert together
        for typed, fields in together:
            for field, text in typed.items():
                control = blank(section, field)
                control.select_option(text) if control.evaluate("it => it.matches('select')") else control.fill(text)
            for field in fields:
                expect(refusal(section, field)).to_be_visible(timeout=WAKING)
            expect(section.locator(".old-answer")).to_be_visible()
            reached(section.locator(".afresh")).click()
            for field in fields:
                expect(refusal(section, field)).to_be_hidden(timeout=WAKING)
            expect(section.locator(".old-answer")).to_be_hidden(timeout=WAKING)
        forget_typed(page)  # the next page starts from the house's numbers


def test_a_fold_opened_by_a_number_half_typed_is_folded_again(page: Page):
    page.goto("./" + PAGES["pieces-from-cloth"])
    section = calculator(page, "pieces-from-cloth")
    fold = section.locator("details.more")
    blank(section, "cloth_width").fill("1 cm")
    expect(refusal(section, "selvedge")).to_be_visible(timeout=WAKING)
    expect(fold).to_have_attribute("open", "")
    blank(section, "cloth_width").fill("110 cm")
    expect(fold).not_to_have_attribute("open", "", timeout=WAKING)
    fold.locator("summary").click()
    blank(section, "cloth_width").fill("1 cm")
    expect(refusal(section, "selvedge")).to_be_visible(timeout=WAKING)
    blank(section, "cloth_width").fill("110 cm")
    says(section, "2 across")
    expect(fold).to_have_attribute("open", "")
