"""The batch walk hands its values on, and everything can be done from the keyboard."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.reader import WAKING, blank, both_windows, calculator, refusal, says, spoken


@pytest.fixture(params=[390], ids=["phone"])
def width(request) -> int:
    """One window where the same is done in any."""
    return request.param


def test_a_change_at_the_start_reaches_every_step(page: Page):
    page.goto("./batch/")
    pieces, usable = calculator(page, "pieces-from-cloth"), calculator(page, "usable-cloth")
    before = spoken(pieces).inner_text()
    wash = calculator(page, "wash-test")
    blank(wash, "cloth_width").fill("100 cm")
    expect(spoken(pieces)).not_to_have_text(before, timeout=WAKING)
    says(usable, re.compile("by 9[0-9]"))
    assert blank(pieces, "cloth_width").input_value().startswith(("9", "about 9"))


def test_a_step_in_trouble_stops_those_behind_it_and_only_those(page: Page):
    page.goto("./batch/")
    usable = calculator(page, "usable-cloth")
    blank(usable, "selvedge").fill("36 banana")
    expect(refusal(usable, "selvedge")).to_be_visible(timeout=WAKING)
    expect(calculator(page, "pieces-from-cloth").locator(".old-answer")).to_contain_text("waits")
    expect(calculator(page, "wash-test").locator(".old-answer")).to_be_hidden()
    blank(usable, "selvedge").fill("2 cm")
    expect(calculator(page, "pieces-from-cloth").locator(".old-answer")).to_be_hidden(timeout=WAKING)


@both_windows
def test_keyboard_alone_fills_in_reads_and_goes_back(page: Page):
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    first = blank(section, "cloth_width")
    for _ in range(150):
        page.keyboard.press("Tab")
        if first.evaluate("it => it === document.activeElement"):
            break
    else:
        raise AssertionError("the first blank cannot be reached by Tab")
    assert first.evaluate(
        "it => { const style = getComputedStyle(it); return style.outlineStyle !== 'none' || style.boxShadow !== "
        "'none'; }"
    )
    page.keyboard.press("Control+a")
    page.keyboard.type("110 cm")
    says(section, "2 across")
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.matches('details.more > summary')"):
            break
    page.keyboard.press("Enter")
    expect(section.locator("details.more")).to_have_attribute("open", "")
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.matches('.afresh')"):
            break
    page.keyboard.press("Enter")
    says(section, "3 across")


def test_the_kind_of_piece_brings_its_turn_and_hem_until_one_is_written_by_hand(page: Page):
    """46 − 2 × (0.8 + 1.2) = 42 cm for the house's tea towel; with a hem of 3 cm by hand 46 − 2 × (0.8 + 3) = 38.4
    cm."""
    page.goto("./batch/")
    order, finished = calculator(page, "order"), calculator(page, "finished-size")
    blank(order, "piece").select_option(label="Tea towel")
    blank(order, "ordered").fill("24")
    says(finished, re.compile("Finished 42.cm by 42.cm"))
    expect(finished.locator(".notes")).to_contain_text(
        re.compile("From your method, “The linen workroom”, for “Tea towel”: first turn 0.8.cm and hem depth 1.2.cm.")
    )
    expect(blank(finished, "turn")).to_have_value("0.8 cm")
    expect(blank(calculator(page, "bundles"), "pieces")).to_have_value("24")
    blank(finished, "hem").fill("3 cm")
    says(finished, re.compile("Finished 38.4.cm"))
    page.reload()
    expect(blank(order, "piece")).to_have_value("tea towel")
    says(finished, re.compile("Finished 38.4.cm"))
    blank(order, "piece").select_option("none")
    says(finished, re.compile("Finished 38.cm"))


def test_the_last_step_tells_what_the_batch_takes_and_costs(page: Page):
    """24 pieces: 60 + 24 × 30.73 = 797.52 min, 13 h 18 min; at 30 an hour 398.76, with 8 of the 20 rows that 10 m of
    cloth at 10 a metre give, 40, and no thread paid 438.76, 18.28 a piece."""
    page.goto("./batch/")
    last = calculator(page, "thread-time-cost")
    blank(calculator(page, "order"), "ordered").fill("24")
    expect(blank(last, "pieces")).to_have_value("24", timeout=WAKING)
    blank(last, "rate").fill("€30")
    says(last, re.compile("24 wanted; this cloth gives 18"))
    blank(calculator(page, "wash-test"), "cloth_length").fill("10 m")
    blank(last, "price_cloth").fill("10,00")
    blank(last, "price_spool").fill("0")
    says(last, re.compile("13.h 18.min of work, about.*of thread; €438.76 for the batch, €18.28 a piece"))
    blank(last, "minutes_piece").fill("soon")
    expect(refusal(last, "minutes_piece")).to_contain_text("such as 8.5")
    blank(last, "minutes_piece").fill("0:10")
    says(last, re.compile("5.h of work"))
    page.reload()
    says(last, re.compile("5.h of work"))
    expect(blank(last, "price_cloth")).to_have_value("€10,00 per m")
    blank(last, "rate").fill("")
    says(last, re.compile("€200.00 for the batch"))  # 300 min at the house's 32 an hour are 160
    expect(page.get_by_role("heading", name="9. Your own figures and notes")).to_be_visible()


#: The contrast of what is read in an old answer with its ground, opacity counted in, and the opacity of its drawing.
AS_SEEN = """(answer) => {
    const colour = (text) => text.match(/[\\d.]+/g).slice(0, 3).map(Number);
    const light = (rgb) => rgb.map((each) => each / 255)
        .map((each) => (each <= 0.04045 ? each / 12.92 : ((each + 0.055) / 1.055) ** 2.4))
            .reduce((sum, each, at) => sum + each * [0.2126, 0.7152, 0.0722][at], 0);
    const opacity = (node) => (node === answer ? 1 : getComputedStyle(node).opacity * opacity(node.parentElement));
    const hex = (text) => text.trim().match(/[0-9a-f]{2}/gi).map((each) => parseInt(each, 16));
    const sheet = hex(getComputedStyle(document.body).getPropertyValue("--sheet")),
        { backgroundColor } = getComputedStyle(answer);
    const grounds = [sheet, backgroundColor === "rgba(0, 0, 0, 0)" ? sheet : colour(backgroundColor)];
    const contrast = (node, ground) => {
        const share = opacity(node), over = colour(getComputedStyle(node).color)
            .map((each, at) => each * share + ground[at] * (1 - share));
        const [more, less] = [light(over), light(ground)].sort((a, b) => b - a);
        return (more + 0.05) / (less + 0.05);
    };
    const read = [...answer.querySelectorAll(".spoken, .spoken .figure, .notes li, summary, td, th, figcaption")]
        .filter((each) => !each.closest("figure"));
    return {least: Math.min(...read.flatMap((each) => grounds.map((ground) => contrast(each, ground)))),
        drawing: opacity(answer.querySelector("figure.drawing"))};
}"""


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_an_old_answer_steps_back_and_can_still_be_read(page: Page, scheme: str):
    page.emulate_media(color_scheme=scheme)
    page.goto("./fold/hems/")
    section = calculator(page, "finished-size")
    blank(section, "hem").fill("3 cm")
    says(section, "Finished 38")
    answer = section.locator(".answer")
    fresh, weight = (
        answer.evaluate(AS_SEEN),
        answer.locator(".figure").first.evaluate("it => getComputedStyle(it).fontWeight"),
    )
    blank(section, "hem").fill("3 banana")
    expect(answer).to_have_class(re.compile("is-old"), timeout=WAKING)
    old = answer.evaluate(AS_SEEN)
    assert 4.5 <= old["least"] < fresh["least"]
    assert old["drawing"] <= 0.5 < fresh["drawing"]
    assert int(answer.locator(".figure").first.evaluate("it => getComputedStyle(it).fontWeight")) < int(weight), (
        "not by colour alone"
    )
    assert answer.evaluate(
        "it => [getComputedStyle(it).borderLeftStyle, getComputedStyle(it).backgroundImage.startsWith('repeating')]"
    ) == ["dashed", True]


def test_a_ticket_that_cannot_be_made_leads_to_the_very_blank(page: Page):
    """The link on the ticket opens the batch with the blank in use, in view, and its sentence beside it."""
    page.goto("./batch/")
    blank(calculator(page, "finished-size"), "turn").fill("3 cm")
    expect(refusal(calculator(page, "finished-size"), "turn")).to_contain_text("deeper than the hem", timeout=WAKING)
    page.goto("./house/ticket/")
    page.get_by_role("link", name="Mend it in the batch").click(timeout=WAKING)
    turn = blank(calculator(page, "finished-size"), "turn")
    expect(turn).to_be_focused(timeout=WAKING)
    expect(turn).to_be_in_viewport()
    expect(turn).to_have_attribute("aria-invalid", "true")
    expect(refusal(calculator(page, "finished-size"), "turn")).to_contain_text("deeper than the hem")
