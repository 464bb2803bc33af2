"""What was typed and could not be taken stands there again after the page is loaded anew: as typed, marked, and nowhere
kept as a value."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.reader import WAKING, reached
from tests.browser.test_house_method import begin, blank, fill, kept

NONSENSE = "36 banana"
REFUSED = """() => [...document.querySelectorAll('.house-body [aria-invalid=true]')].map((each) => {
    const place = document.querySelector(`.house-body .refusal[data-field="${each.name}"]`);
    return [each.name, each.value, place.textContent, place.hidden || !place.checkVisibility()];
})"""


def loaded_again(page: Page) -> None:
    page.reload()
    expect(blank(page, "name")).to_be_visible(timeout=WAKING)


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_nonsense_in_every_blank_of_a_method_stands_there_again_or_is_kept_as_words(page: Page):
    begin(page)
    names = page.evaluate(
        "() => [...document.querySelectorAll('.house-body input[type=text]')].map(({ name }) => name)"
    )
    assert len(names) > 60
    page.evaluate("""([names, text]) => {
        for (const name of names) {
            const blank = document.querySelector(`.house-body [name="${name}"]`);
            if (!blank || name === "name") continue;
            blank.value = text;
            blank.dispatchEvent(new Event("change", { bubbles: true }));
        }
    }""", [names, NONSENSE])  # fmt: skip
    page.wait_for_function(
        "() => document.querySelectorAll('.house-body [aria-invalid=true]').length > 40", timeout=WAKING
    )
    page.get_by_role("button", name="Done").click()  # in its turn, after all that was typed
    page.get_by_role("button", name="Change it").click()
    expect(page.locator(".house-body [aria-invalid=true]").first).to_be_attached()
    before = page.evaluate(REFUSED)
    assert {text for _, text, _, _ in before} == {NONSENSE}
    assert not [name for name, _, sentence, unseen in before if not sentence or unseen]
    loaded_again(page)
    assert page.evaluate(REFUSED) == before
    document = kept(page)
    stands = page.evaluate(
        "(names) => names.map((name) => document.querySelector(`.house-body [name='${name}']`)?.value ?? '')", names
    )
    lost = [name for name, text in zip(names, stands, strict=True) if name != "name" and text != NONSENSE]
    assert not lost, lost
    assert document.count(NONSENSE) == len(names) - 1 - len(
        before
    )  # words are words; what was refused is in no document


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_a_refused_text_goes_with_its_line_and_once_it_is_mended(page: Page):
    begin(page)
    page.locator("details.line > summary", has_text="Runner").click()
    page.locator("details.line > summary", has_text="Placemat").click()
    runner = page.locator(".house-body details.line", has=page.locator("summary", has_text="Runner")).locator(
        "input[name$='.hem']"
    )
    runner.fill(NONSENSE)
    runner.blur()
    expect(runner).to_have_attribute("aria-invalid", "true")
    fill(page, "measures.turn", "half")
    expect(blank(page, "measures.turn")).to_have_attribute("aria-invalid", "true")
    page.get_by_role("button", name="Take out Placemat").click()
    expect(page.locator("details.line > summary", has_text="Placemat")).to_have_count(0)
    loaded_again(page)
    expect(runner).to_have_value(NONSENSE)
    expect(page.locator(".house-body details.line [aria-invalid=true]")).to_have_count(1)
    runner.fill("3")
    runner.blur()
    expect(runner).to_have_value("3 cm")
    loaded_again(page)
    expect(blank(page, "measures.turn")).to_have_value("half")
    expect(runner).to_have_value("3 cm")
    fill(page, "measures.turn", "1")
    expect(blank(page, "measures.turn")).to_have_value("1 cm")
    page.reload()
    expect(page.get_by_role("button", name="Change it")).to_be_visible(timeout=WAKING)
    assert not page.evaluate("() => Object.keys(localStorage).filter((name) => name.includes('refused/'))")


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_on_a_job_and_its_ticket_too(page: Page):
    page.goto("./batch/")
    page.get_by_role("button", name="Keep this as a job").click()
    name = page.locator(".job-in-hand [name=name]")
    expect(name).to_be_focused(timeout=WAKING)
    cloth, width = page.locator(".job-in-hand [name=cloth]"), page.locator(".walk [name=cloth_width]").first
    cloth.fill("Oat\x07")  # as a paste from elsewhere brings it
    cloth.blur()
    sentence = page.locator(".job-in-hand .refusal[data-field=cloth]")
    expect(sentence).to_have_text("That holds characters that cannot be shown. Type it again.")
    reached(width).fill(NONSENSE)
    width.blur()
    expect(page.locator(".walk .refusal[data-field=cloth_width]").first).to_contain_text("is not a length")
    expect(page.locator(".job-in-hand > .said")).to_contain_text("Kept at")
    page.reload()
    expect(page.locator(".walk .refusal[data-field=cloth_width]").first).to_contain_text(
        "is not a length", timeout=WAKING
    )
    expect(width).to_have_value(NONSENSE)
    expect(sentence).to_be_visible()
    expect(cloth).to_have_value(re.compile("^Oat"))
    expect(cloth).to_have_attribute("aria-invalid", "true")
    cloth.fill("Oat linen")
    cloth.blur()
    expect(sentence).to_be_hidden()
    reached(width).fill("150")
    width.blur()
    expect(width).to_have_value("150 cm")
    page.get_by_role("link", name="Its work ticket").click()
    bundle = page.locator(".settle [name=bundle]")
    expect(bundle).to_be_visible(timeout=WAKING)
    bundle.fill("a few")
    bundle.blur()
    refused = page.locator(".settle .refusal[data-field=bundle]")
    expect(refused).to_be_visible()
    page.reload()
    expect(bundle).to_have_value("a few", timeout=WAKING)
    expect(refused).to_be_visible()
    bundle.fill("4")
    bundle.blur()
    expect(refused).to_be_hidden()
    page.reload()
    expect(bundle).to_have_value("4", timeout=WAKING)
