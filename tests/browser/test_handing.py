"""A method goes to another browser as a link or a file; what is opened is shown first, and nothing in it runs."""

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from calculators.documents.exchange.share_link import packed
from calculators.documents.house_method.reading import read_method, written_down
from tests.browser.reader import elsewhere, open_file
from tests.documents.exchange.test_handing import states

SAMPLE = written_down(
    read_method(
        (Path(__file__).parents[1] / "documents/house_method/samples/method-1.json").read_text(encoding="utf-8")
    )[0]
)
pytestmark = pytest.mark.parametrize("width", [390], ids=["phone"])


def keep_and_follow(page: Page, text: str) -> None:
    """Put a method into the browser as if it had been set down there."""
    page.evaluate("""async (text) => {
        const { keep, choose } = await import(__md_scope + 'assets/javascript/store.js');
        await keep('method', 'summer-linen', text, 0);
        await choose('method', 'summer-linen');
    }""", text)  # fmt: skip
    expect(page.locator(".whose-method")).to_contain_text("Summer linen")


def numbers(page: Page) -> list[str]:
    """Every live number of the corner page, once they follow the method."""
    page.goto("./corners/mitre/")
    expect(page.locator(".whose-method")).to_contain_text("Summer linen")
    expect(page.locator(".answer .figure").first).to_have_text(re.compile(r"4\.8\scm"))
    expect(page.locator("[data-number*='mark_1']").first).to_have_text("4.8 cm")
    return page.locator("[data-number], .answer .results td").all_inner_texts()


def test_a_link_opens_elsewhere_with_the_same_numbers(page, browser, served):
    page.goto("./house/hand-over/")
    keep_and_follow(page, SAMPLE)
    page.goto("./house/")
    page.get_by_role("button", name="Share it").click()
    link = page.get_by_label("A link that holds this method").input_value()
    expect(page.get_by_role("img", name="square code")).to_be_visible()
    here = numbers(page)
    other = elsewhere(browser, served)
    other.goto(link)
    expect(other.locator(".opened h2").first).to_have_text("House method “Summer linen”")
    assert (
        other.evaluate(
            "async () => (await (await import(__md_scope + 'assets/javascript/store.js')).newest('method')).length"
        )
        == 0
    )
    other.get_by_role("button", name="Keep it, and let every page show its numbers").first.click()
    expect(other.locator(".said")).to_contain_text("Kept, and every page shows its numbers from now on.")
    other.goto("./house/")
    expect(other.locator("[name=followed] option:checked")).to_have_text("Summer linen")
    assert numbers(other) == here
    other.context.close()


def test_a_file_of_everything_comes_back_byte_for_byte(page, tmp_path):
    page.goto("./house/hand-over/")
    keep_and_follow(page, SAMPLE)
    page.evaluate("""async (texts) => {
        const { keep } = await import(__md_scope + 'assets/javascript/store.js');
        for (const [revision, text] of texts.entries()) await keep('job', 'sage-napkins', text, revision);
        (await import(__md_scope + 'assets/javascript/kept.js')).keepRuler('in 1/16');
    }""", [state["text"] for state in states()])  # fmt: skip
    with page.expect_download() as first:
        page.get_by_role("button", name="Save everything").click()
    saved = tmp_path / "workroom.json"
    first.value.save_as(saved)
    page.evaluate("""async () => {
        const { choose, remove } = await import(__md_scope + 'assets/javascript/store.js');
        await remove('method', 'summer-linen');
        await remove('job', 'sage-napkins');
        await choose('method', '');
        localStorage.clear();
    }""")  # fmt: skip
    page.goto("./house/hand-over/")
    open_file(page, saved)
    expect(page.locator(".handed > h2")).to_have_text(
        ["Job “Napkins in sage linen”", "House method “Summer linen”", "Choices"]
    )
    page.get_by_role("button", name="Keep all that is new here (2)").click()
    expect(page.locator(".said")).to_contain_text("All that was new")
    page.get_by_role("button", name="Choose the same here").click()
    expect(page.locator(".said")).to_contain_text("Every page shows it so from now on.")
    expect(page.locator(".whose-method")).to_contain_text("Summer linen")
    with page.expect_download() as second:
        page.get_by_role("button", name="Save everything").click()
    assert Path(second.value.path()).read_bytes() == saved.read_bytes()


def test_what_was_ticked_and_measured_without_a_job_comes_back_on_the_ticket(page, browser, served, tmp_path):
    page.goto("./house/ticket/")
    expect(page.locator(".ticket.is-live")).to_be_visible()
    page.get_by_role("button", name="Bundle 2: Second fold").click()
    expect(page.locator('[data-ticks="hem"] .count')).to_contain_text("1 of 3 bundles")
    page.locator('[name="7.diagonal_1"]').fill("56.6")
    page.locator('[name="7.diagonal_1"]').blur()
    expect(page.locator('[name="7.diagonal_1"]')).to_have_value("56.6 cm")
    page.goto("./house/hand-over/")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save everything").click()
    saved = tmp_path / "workroom.json"
    download.value.save_as(saved)
    other = elsewhere(browser, served)
    other.goto("./house/hand-over/")
    open_file(other, saved)
    expect(other.locator(".handed > h2")).to_have_text(["Work ticket “This batch”"])
    other.get_by_role("button", name="Keep it").first.click()
    expect(other.locator(".said")).to_contain_text("on the work ticket")
    with other.expect_download() as again:
        other.get_by_role("button", name="Save everything").click()
    assert Path(again.value.path()).read_bytes() == saved.read_bytes()
    other.goto("./house/ticket/")
    expect(other.get_by_role("button", name="Bundle 2: Second fold")).to_have_attribute("aria-pressed", "true")
    expect(other.locator('[name="7.diagonal_1"]')).to_have_value("56.6 cm")
    other.context.close()


def test_nothing_is_overwritten_unseen(page):
    page.goto("./house/hand-over/")
    keep_and_follow(page, SAMPLE)
    changed = written_down({**json.loads(SAMPLE), "name": "Winter linen"})
    page.goto(f"./house/hand-over/#handed={packed(changed)}")
    expect(page.locator(".handed > .wide tbody tr")).to_have_text(["NameSummer linenWinter linen"])
    newest = (
        "async () => JSON.parse((await (await import(__md_scope + 'assets/javascript/store.js')).last('method', "
        "'summer-linen')).text).name"
    )
    assert page.evaluate(newest) == "Summer linen"
    page.get_by_role("button", name="Put this in place of mine").first.click()
    expect(page.locator(".said")).to_contain_text("Kept.")
    assert page.evaluate(newest) == "Winter linen"
