"""What a maker writes once is known everywhere: the same measure reads the same on every page."""

import json
import random
import re
import time
from collections.abc import Callable
from itertools import pairwise

import pytest
from playwright.sync_api import Page, expect

from tests.browser.reader import (
    ANSWERS_HELD_BACK,
    WAKING,
    answered,
    blank,
    calculator,
    choose_ruler,
    hold_back,
    let_through,
    move,
    one_window,
    refusal,
    says,
)

pytestmark = one_window


def in_hand(page: Page):
    return page.locator(".in-hand")


def test_a_hem_written_on_one_page_is_the_hem_of_the_others(page: Page):
    """Arithmetic: a hem of 2.5 cm is marked at twice that, and a gauge cut for it has the same mark."""
    page.goto("./plan/sizes/")
    blank(calculator(page, "finished-size"), "hem").fill("2.5")
    expect(in_hand(page)).to_contain_text("Hem 2.5 cm", timeout=WAKING)
    move(page, "./corners/mitre/")
    marks = calculator(page, "mitre-marks")
    for hem in ("hem_1", "hem_2"):
        expect(blank(marks, hem)).to_have_value("2.5 cm")
    says(marks, "5 cm")
    expect(in_hand(page)).to_contain_text("Hem 2.5 cm")
    move(page, "./corners/gauges/")
    expect(blank(calculator(page, "mitre-gauge"), "hem_2")).to_have_value("2.5 cm")
    expect(blank(calculator(page, "gauge-finder"), "hem_1")).to_have_value("2.5 cm")
    page.goto("./batch/")
    expect(blank(calculator(page, "finished-size"), "hem")).to_have_value("2.5 cm")
    expect(blank(calculator(page, "mitre-marks"), "hem_1")).to_have_value("2.5 cm", timeout=WAKING)


def test_hems_written_apart_are_apart_everywhere(page: Page):
    page.goto("./corners/mitre/")
    marks = calculator(page, "mitre-marks")
    blank(marks, "hem_1").fill("3 cm")
    expect(blank(marks, "hem_2")).to_have_value("3 cm")
    blank(marks, "hem_2").fill("2 cm")
    says(marks, "4 cm")
    expect(blank(marks, "hem_1")).to_have_value("3 cm")
    move(page, "./plan/sizes/")
    size = calculator(page, "finished-size")
    expect(blank(size, "hem")).to_have_value("3 cm")
    expect(blank(size, "hem_top")).to_have_value("2 cm")
    move(page, "./corners/gauges/")
    expect(blank(calculator(page, "mitre-gauge"), "hem_1")).to_have_value("3 cm")
    expect(blank(calculator(page, "mitre-gauge"), "hem_2")).to_have_value("2 cm")


def test_a_page_with_an_example_of_its_own_keeps_that_and_shares_the_rest(page: Page):
    page.goto("./corners/mitre/")
    marks = calculator(page, "mitre-marks")
    blank(marks, "hem_1").fill("3 cm")
    blank(marks, "turn").fill("0.6 cm")
    expect(in_hand(page)).to_contain_text("First turn 0.6 cm", timeout=WAKING)
    move(page, "./corners/unequal/")
    unequal = calculator(page, "mitre-marks")
    expect(blank(unequal, "hem_1")).to_have_value("5 cm")
    expect(blank(unequal, "turn")).to_have_value("0.6 cm")


def test_the_line_changes_what_is_in_hand_and_puts_it_down(page: Page):
    page.goto("./corners/mitre/")
    marks = calculator(page, "mitre-marks")
    blank(marks, "hem_1").fill("3 cm")
    says(marks, "6 cm")
    line = in_hand(page)
    line.locator("summary").click()
    line.get_by_label("Hem", exact=True).fill("2.5 cm")
    line.get_by_label("Hem", exact=True).press("Tab")
    expect(blank(marks, "hem_1")).to_have_value("2.5 cm", timeout=WAKING)
    says(marks, "5 cm")
    line.get_by_role("button", name="Put down: Hem").click()
    expect(line).to_be_hidden(timeout=WAKING)
    says(marks, "4 cm")
    expect(blank(marks, "hem_2")).to_have_value("2 cm")


def test_what_was_put_down_comes_back_with_one_tap(page: Page):
    page.goto("./corners/mitre/")
    marks = calculator(page, "mitre-marks")
    blank(marks, "hem_1").fill("3 cm")
    says(marks, "6 cm")
    in_hand(page).locator("summary").click()
    in_hand(page).get_by_role("button", name="Put down: Hem").click()
    says(marks, "4 cm")
    page.get_by_role("button", name="Undo").and_(page.locator(".notice-action")).click()
    expect(blank(marks, "hem_1")).to_have_value("3 cm", timeout=WAKING)
    move(page, "./batch/")
    page.locator("[data-do=keep]").click()
    expect(page.locator(".job-in-hand [name=name]")).not_to_have_value("", timeout=WAKING)
    move(page, "./corners/mitre/")
    in_hand(page).locator("summary").click(timeout=WAKING)
    in_hand(page).get_by_role("button", name="Put the job down").click()
    back = page.locator(".told-here .notice", has_text="Put down: Job of")
    expect(back).to_contain_text("kept among your jobs", timeout=WAKING)
    back.get_by_role("button", name="Undo").click()
    expect(in_hand(page)).to_contain_text("Job of", timeout=WAKING)
    expect(blank(marks, "hem_1")).to_have_value("3 cm", timeout=WAKING)


def test_a_size_chosen_on_one_page_is_cut_on_the_next_from_the_cloth_that_was_washed(page: Page):
    """Arithmetic: 36 cm and twice a turn of 1 cm and a hem of 2.5 cm are 43 cm; of 138 cm are left 48.9 parts in 50."""
    page.goto("./plan/sizes/")
    size = calculator(page, "finished-size")
    blank(size, "hem").fill("2.5")
    for side in ("width", "length"):
        blank(size, side).fill("36")
    says(size, "43 cm")
    move(page, "./prepare/wash-test/")
    wash = calculator(page, "wash-test")
    blank(wash, "cloth_width").fill("138")
    blank(wash, "after_width").fill("48.9")
    says(wash, "2.2")
    move(page, "./plan/pieces/")
    pieces = calculator(page, "pieces-from-cloth")
    expect(blank(pieces, "piece_width")).to_have_value("43 cm", timeout=WAKING)
    expect(blank(pieces, "piece_length")).to_have_value("43 cm")
    expect(blank(pieces, "cloth_width")).to_have_value("134.9 cm")
    expect(in_hand(page)).to_contain_text("Finished width 36 cm · Finished length 36 cm · Hem 2.5 cm")
    blank(pieces, "piece_width").fill("50")
    says(pieces, "pieces")
    move(page, "./plan/sizes/")
    expect(blank(size, "width")).to_have_value("43 cm", timeout=WAKING)
    expect(blank(size, "length")).to_have_value("36 cm")


def test_what_cannot_be_read_stands_and_is_refused_wherever_it_is_asked_for(page: Page):
    page.goto("./corners/mitre/")
    marks = calculator(page, "mitre-marks")
    blank(marks, "hem_1").fill("two fingers")
    expect(refusal(marks, "hem_1")).to_be_visible(timeout=WAKING)
    page.goto("./corners/gauges/")
    gauge = calculator(page, "mitre-gauge")
    expect(blank(gauge, "hem_1")).to_have_value("two fingers")
    expect(refusal(gauge, "hem_1")).to_be_visible()
    answered(page)
    expect(refusal(gauge, "hem_1")).to_contain_text("two fingers")


def test_a_bare_number_means_the_same_on_another_page_and_ruler(page: Page):
    page.goto("./corners/mitre/")
    blank(calculator(page, "mitre-marks"), "hem_1").fill("3")
    choose_ruler(page, "in 1/16")
    move(page, "./corners/gauges/")
    expect(blank(calculator(page, "mitre-gauge"), "hem_1")).to_have_value("3 cm", timeout=WAKING)


def test_another_window_hears_of_it(page: Page):
    page.goto("./corners/mitre/")
    other = page.context.new_page()
    other.goto("./corners/gauges/")
    blank(calculator(page, "mitre-marks"), "hem_1").fill("3 cm")
    expect(blank(calculator(other, "mitre-gauge"), "hem_1")).to_have_value("3 cm", timeout=WAKING)


def test_numbers_in_sentences_follow_what_is_in_hand(page: Page):
    page.goto("./plan/sizes/")
    blank(calculator(page, "finished-size"), "hem").fill("3 cm")
    expect(in_hand(page)).to_contain_text("Hem 3 cm", timeout=WAKING)
    move(page, "./stitch/by-hand/")
    hem = page.locator("""[data-number='{"calculator": "finished-size", "result": "hem", "given": {}}']""").first
    expect(hem).to_have_text(re.compile("^3\\scm$"), timeout=WAKING)
    expect(page.locator(".follows")).to_be_visible()


OLD = """() => {
    const start = Object.keys(localStorage).find((name) => name.includes("typed/")).split("typed/")[0];
    localStorage.clear();
    const kept = { texts: { hem_1: "2.8", angle: "100" }, readOn: "cm 1/10", refused: {}, edition: 2 };
    localStorage.setItem(`${start}typed/mitre-marks`, JSON.stringify(kept));
}"""


def test_what_an_earlier_edition_kept_for_one_page_comes_in_hand(page: Page):
    page.goto("./corners/mitre/")
    blank(calculator(page, "mitre-marks"), "hem_1").fill("3 cm")
    page.goto("./corners/mitre/")
    page.evaluate(OLD)
    page.goto("./corners/mitre/")
    expect(blank(calculator(page, "mitre-marks"), "hem_1")).to_have_value("2.8 cm", timeout=WAKING)
    expect(blank(calculator(page, "mitre-marks"), "angle")).to_have_value(re.compile("^100"))
    move(page, "./corners/gauges/")
    expect(blank(calculator(page, "mitre-gauge"), "hem_1")).to_have_value("2.8 cm", timeout=WAKING)


def test_the_job_in_hand_is_known_on_every_page_and_takes_what_is_typed_there(page: Page):
    page.goto("./corners/mitre/")
    blank(calculator(page, "mitre-marks"), "hem_1").fill("1.5 cm")
    says(calculator(page, "mitre-marks"), "3 cm")
    move(page, "./batch/")
    size = calculator(page, "finished-size")
    blank(size, "hem").fill("2.5 cm")
    says(calculator(page, "mitre-marks"), "5 cm")
    page.locator("[data-do=keep]").click()
    expect(page.locator(".job-in-hand .with-job")).to_be_visible(timeout=WAKING)
    expect(page.locator(".job-in-hand [name=name]")).not_to_have_value("", timeout=WAKING)
    move(page, "./corners/mitre/")
    marks = calculator(page, "mitre-marks")
    expect(blank(marks, "hem_1")).to_have_value("2.5 cm", timeout=WAKING)
    blank(marks, "hem_1").fill("3")
    expect(blank(marks, "hem_2")).to_have_value("3 cm", timeout=WAKING)
    in_job = "async () => (await import(__md_scope + 'assets/javascript/store.js')).newest('job')"
    expect(in_hand(page)).to_contain_text("Hem 3 cm", timeout=WAKING)
    until(
        lambda: (
            '"hem": "3 cm"' in page.evaluate(in_job)[0]["text"] or '"hem":"3 cm"' in page.evaluate(in_job)[0]["text"]
        )
    )
    move(page, "./batch/")
    expect(blank(calculator(page, "finished-size"), "hem")).to_have_value("3 cm", timeout=WAKING)
    page.goto("./corners/mitre/")
    line = in_hand(page)
    expect(line).to_be_visible(timeout=WAKING)
    line.locator("summary").click()
    line.get_by_role("button", name="Put down: Hem").click()
    until(lambda: "hem" not in json.loads(page.evaluate(in_job)[0]["text"]).get("typed", {}).get("finished-size", {}))
    move(page, "./batch/")
    expect(blank(calculator(page, "finished-size"), "hem")).to_have_value("2 cm", timeout=WAKING)


def until(true: Callable[[], bool]) -> None:
    """Waits until this is so, as long as Python may take."""
    deadline = time.monotonic() + WAKING / 1000
    while not true():
        assert time.monotonic() < deadline
        time.sleep(0.1)


PAGES = [
    "plan/pieces/",
    "plan/sizes/",
    "corners/mitre/",
    "corners/gauges/",
    "corners/unequal/",
    "prepare/measure/",
    "batch/",
]
#: What stands in the blanks of each measure in hand: its name there → the texts.
SEEN = """() => {
    const seen = {};
    for (const section of document.querySelectorAll(".calculator[data-in-hand]"))
        for (const [field, names] of Object.entries(JSON.parse(section.dataset.inHand))) {
            const textOf = (_, other) => section.querySelector(`[name=${other}]`).value;
            (seen[names[0].replace(/\\{(\\w+)\\}/g, textOf)] ??= []).push(textOf(null, field));
        }
    return seen;
}"""
IN_HAND = """() => Object.keys(localStorage).flatMap((name) => name.split("typed/in-hand//")[1] ?? [])"""


@pytest.mark.parametrize(("start", "comes_to"), [(0, Page.goto), (1, move)], ids=["opened", "moved to"])
def test_whatever_is_typed_on_whatever_page_the_same_measure_reads_the_same_on_all(page: Page, start: int, comes_to):
    """Pages are opened and moved to by chance while she types, and in one of the two ways when they are read."""
    chance = random.Random(start)
    page.goto("./")
    for before, place in pairwise(["", *chance.choices(PAGES, k=8)]):
        if place != before:
            chance.choice((Page.goto, move))(page, f"./{place}")
        section = chance.choice(page.locator(".calculator[data-in-hand]").all())
        fields = [
            name
            for name in json.loads(section.get_attribute("data-in-hand") or "")
            if name not in ("measured", "ordered")
        ]
        blank(section, chance.choice(fields)).fill(chance.choice(["2.5", "3 cm", "1 1/4 in", "31 mm", "nonsense"]))
        if chance.random() < 0.3:
            choose_ruler(page, chance.choice(["in 1/16", "cm 1/10"]))
        if chance.random() < 0.5:
            answered(page)
    page.goto("./")
    typed = page.evaluate(IN_HAND)
    assert len(typed) > 3
    seen: dict[str, set[str]] = {name: set() for name in typed}
    for place in PAGES:
        comes_to(page, f"./{place}")
        expect(in_hand(page)).to_be_visible(timeout=WAKING)  # Python has read what is typed
        answered(page)
        for name, texts in page.evaluate(SEEN).items():
            if name in seen:
                seen[name] |= {*texts}
    assert {name: texts for name, texts in seen.items() if len(texts) != 1} == {}


def test_what_was_put_down_elsewhere_does_not_come_back_with_a_late_answer(page: Page):
    page.context.add_init_script(ANSWERS_HELD_BACK)
    page.goto("./corners/mitre/")
    marks = calculator(page, "mitre-marks")
    blank(marks, "turn").fill("0.7 cm")
    expect(in_hand(page)).to_contain_text("First turn 0.7 cm", timeout=WAKING)
    hold_back(page)
    blank(marks, "hem_1").fill("3")
    other = page.context.new_page()
    other.goto("./corners/gauges/")
    other.evaluate("""() => {
        for (const name of Object.keys(localStorage)) if (name.includes("in-hand/")) localStorage.removeItem(name);
    }""")
    page.wait_for_function(f"() => !({IN_HAND})().length")  # the browser brings it from one window to the other
    let_through(page)
    answered(page)
    page.wait_for_timeout(300)
    assert page.evaluate(IN_HAND) == []


def test_a_hem_in_hand_is_no_hem_of_an_article_and_no_article_writes_into_another(page: Page):
    page.goto("./fold/hems/")
    hems = calculator(page, "finished-size")
    blank(hems, "hem").fill("2.5 cm")
    says(hems, "39 cm")
    for path, names in (("cushion-covers", ("cushion-overlap", "cushion-buttons")), ("bed-linen", ("duvet-cover",))):
        move(page, f"./projects/{path}/")
        for name in names:
            begins = blank(calculator(page, name), "hem")
            expect(begins).to_have_value({"cushion-covers": "2 cm", "bed-linen": "4 cm"}[path])
    move(page, "./projects/cushion-covers/")
    overlap = calculator(page, "cushion-overlap")
    blank(overlap, "overlap").fill("15 cm")
    says(overlap, "31 cm")
    expect(blank(calculator(page, "cushion-buttons"), "overlap")).to_have_value("12 cm")
