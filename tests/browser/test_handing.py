"""A method goes to another browser as a link or a file; what is opened is shown first, and nothing in it runs."""

import json
import re
from pathlib import Path

from playwright.sync_api import Page, expect

from calculators.documents.exchange.share_link import packed
from calculators.documents.house_method.reading import read_method, written_down
from tests.browser.reader import elsewhere, forget_typed, move, one_window, open_file
from tests.documents.exchange.test_handing import states
from tests.documents.exchange.whole_file import file_of, saved

SAMPLE = written_down(
    read_method(
        (Path(__file__).parents[1] / "documents/house_method/samples/method-1.json").read_text(encoding="utf-8")
    )[0]
)
pytestmark = one_window


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
    move(page, "./corners/mitre/")
    expect(page.locator(".whose-method")).to_contain_text("Summer linen")
    expect(page.locator(".answer .figure").first).to_have_text(re.compile(r"4\.8\scm"))
    expect(page.locator("[data-number*='raw_mark_1']").first).to_have_text("7.2 cm")  # and twice the turn
    return page.locator("[data-number], .answer .results td").all_inner_texts()


def but_the_moment(download) -> bytes:
    """A saved file without when it was saved."""
    text = Path(download.value.path()).read_bytes()
    assert text.count(b'"saved":"20') == 1
    return re.sub(rb'"saved":"[^"]*"', b"", text)


def test_a_link_opens_elsewhere_with_the_same_numbers(page, browser, served):
    page.goto("./house/hand-over/")
    keep_and_follow(page, SAMPLE)
    move(page, "./house/")
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
    move(other, "./house/")
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
    }""")  # fmt: skip
    forget_typed(page)
    page.goto("./house/hand-over/")
    open_file(page, saved)
    expect(page.locator(".handed > h2")).to_have_text(
        ["House method “Summer linen”", "Job “Napkins in sage linen”", "Choices"]
    )
    page.get_by_role("button", name="Keep all that is new here (2)").click()
    expect(page.locator(".said")).to_contain_text("All that was new")
    page.get_by_role("button", name="Choose the same here").click()
    expect(page.locator(".said")).to_contain_text("Every page shows it so from now on.")
    expect(page.locator(".whose-method")).to_contain_text("Summer linen")
    with page.expect_download() as second:
        page.get_by_role("button", name="Save everything").click()
    assert but_the_moment(second) == but_the_moment(first)


def test_what_was_ticked_and_measured_without_a_job_comes_back_on_the_ticket(page, browser, served, tmp_path):
    page.goto("./house/ticket/")
    expect(page.locator(".ticket.is-live")).to_be_visible()
    page.get_by_role("button", name="Bundle 2: Second fold").click()
    expect(page.locator('[data-ticks="hem"] .count')).to_contain_text("1 of 3 bundles")
    page.locator('[name="7.diagonal_1"]').fill("56.6")
    page.locator('[name="7.diagonal_1"]').blur()
    expect(page.locator('[name="7.diagonal_1"]')).to_have_value("56.6 cm")
    move(page, "./house/hand-over/")
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
    assert but_the_moment(again) == but_the_moment(download)
    move(other, "./house/ticket/")
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


def fill_everything(page: Page) -> None:
    """Something of every kind that a browser keeps."""
    page.goto("./house/hand-over/")
    keep_and_follow(page, SAMPLE)
    page.evaluate("""async (texts) => {
        const { keep } = await import(__md_scope + 'assets/javascript/store.js');
        for (const [revision, text] of texts.entries()) await keep('job', 'sage-napkins', text, revision);
        const { keepTyped, keepRefused, keepRuler } = await import(__md_scope + 'assets/javascript/kept.js');
        const rows = JSON.stringify([["napkin", "40 cm", "40 cm", "24"]]);
        keepTyped('lay-plan', { pieces: rows }, 'cm 1/10', { cloth_width: 'Write a length.' });
        keepRefused('method/summer-linen', { 'measures.hem': { text: 'x', sentence: 'Write a length.' } });
        keepRuler('in 1/16');
        __md_set('__palette', { index: 2 });
    }""", [state["text"] for state in states()])  # fmt: skip
    move(page, "./house/ticket/")
    page.get_by_role("button", name="Bundle 2: Second fold").click()
    expect(page.locator('[data-ticks="hem"] .count')).to_contain_text("1 of")


#: Everything under the handbook's name in this browser, but for when the last copy was saved and what the journal has.
ALL_KEPT = """async () => {
    const kept = ({ name }) => name.startsWith('workroom') && !name.startsWith('workroom open pages');
    const open = indexedDB.open((await indexedDB.databases()).find(kept).name);
    await new Promise((resolve) => (open.onsuccess = resolve));
    const found = {};
    for (const store of open.result.objectStoreNames) {
        if (store === 'journal') continue;
        const all = open.result.transaction(store).objectStore(store).getAll();
        await new Promise((resolve) => (all.onsuccess = resolve));
        found[store] = all.result.filter(({ name }) => name !== 'copy').map((row) => JSON.stringify(row)).sort();
    }
    return { ...found, texts: { ...localStorage } };
}"""


def all_kept(page: Page) -> dict:
    """The same as data; a calculator that was opened has an entry, be nothing typed into it."""
    found = page.evaluate(ALL_KEPT)
    texts = {name: json.loads(text) for name, text in found["texts"].items()}
    return {
        **found,
        "texts": {
            name: each
            for name, each in texts.items()
            if not name.endswith("put down") and (not isinstance(each, dict) or each.get("texts") != {})
        },
    }


def test_everything_that_a_browser_keeps_is_in_the_copy_and_comes_back(page, browser, served, tmp_path):
    """Whatever stands in its database and beside it: a kind that is forgotten in the copy makes this fail."""
    fill_everything(page)
    move(page, "./house/hand-over/")
    expect(page.locator(".reminder")).to_have_text(
        "1 method, 1 job, the ticks of the batch without a job, the numbers typed in 1 calculator and the texts that "
        "1 form could not take are kept in this browser only: no copy is saved yet."
    )
    with page.expect_download() as first:
        page.get_by_role("button", name="Save everything").click()
    day = page.evaluate("() => new Date().toLocaleDateString('sv')")
    assert first.value.suggested_filename == f"workroom {day}.json"
    expect(page.locator(".said")).to_have_text(
        "Saved: 1 method, 1 job, the ticks of the batch without a job, the numbers typed in 1 calculator and the "
        "texts that 1 form could not take."
    )
    expect(page.locator(".reminder")).to_contain_text("Nothing has changed since your last copy on")
    saved = tmp_path / "workroom.json"
    first.value.save_as(saved)
    other = elsewhere(browser, served)
    other.goto("./house/hand-over/")
    open_file(other, saved)
    expect(other.locator(".handed > h2")).to_have_count(6)
    other.get_by_role("button", name="Keep all that is new here (5)").click()
    expect(other.locator(".said")).to_contain_text("All that was new")
    other.get_by_role("button", name="Choose the same here").click()
    expect(other.locator(".said")).to_contain_text("Every page shows it so from now on.")
    assert all_kept(other) == all_kept(page)
    with other.expect_download() as second:
        other.get_by_role("button", name="Save everything").click()
    assert but_the_moment(second) == but_the_moment(first)
    other.context.close()


def test_what_has_changed_since_the_last_copy_is_said_on_the_page_of_jobs(page):
    fill_everything(page)
    move(page, "./house/hand-over/")
    with page.expect_download():
        page.get_by_role("button", name="Save everything").click()
    expect(page.locator(".said")).to_contain_text("Saved:")
    page.evaluate("""async ([job]) => {
        const { choice, choose, keep } = await import(__md_scope + 'assets/javascript/store.js');
        const copy = JSON.parse(await choice('copy'));
        await choose('copy', JSON.stringify({ ...copy, at: `${new Date().getFullYear()}-11-03T09:00:00+01:00` }));
        for (const id of 'abcdefgh') await keep('job', id, job, 0);
        await keep('job', 'sage-napkins', job, 3);
    }""", [states()[0]["text"]])  # fmt: skip
    move(page, "./house/jobs/")
    expect(page.locator(".reminder")).to_have_text("9 jobs have changed since your last copy on 3 November.")


def test_of_many_things_each_is_opened_by_a_press_and_all_new_ones_are_kept(page):
    page.goto("./house/hand-over/")
    keep_and_follow(page, SAMPLE)
    job = json.loads(states()[0]["text"])
    texts = [json.dumps({**job, "id": f"j{number}", "name": f"Job {number}"}) for number in range(70)]
    whole = file_of(
        [saved("job", f"j{number}", [{"at": "", "text": text}]) for number, text in enumerate(texts)]
        + [saved("method", "summer-linen", [{"at": "", "text": SAMPLE}])]
    )
    open_file(page, {"name": "x.json", "mimeType": "application/json", "buffer": whole.encode()})
    expect(page.locator("details.handed")).to_have_count(50)
    page.get_by_role("button", name="Show all 71").click()
    expect(page.locator("details.handed")).to_have_count(71)
    expect(page.locator("details.handed summary").last).to_have_text("House method “Summer linen”: you have this")
    page.locator("details.handed summary", has_text="Job 7”").click()
    opened = page.locator("details.handed[open]")
    expect(opened).to_contain_text("20 pieces: 2 across, 10 along")
    opened.get_by_role("button", name="Keep it").first.click()
    expect(page.locator(".said")).to_contain_text("Kept.")
    page.get_by_role("button", name="Keep all that is new here (70)").click()
    expect(page.locator(".said")).to_contain_text("All that was new")
    expect(page.locator("details.handed summary", has_text="kept now")).to_have_count(70)
    move(page, "./house/jobs/")
    expect(page.locator(".job-list li")).to_have_count(50)
    page.get_by_role("button", name="Show all 70 jobs").click()
    expect(page.locator(".job-list li")).to_have_count(70)
    page.locator("li", has=page.get_by_role("link", name="Job 7", exact=True)).get_by_role(
        "button", name="Move to finished jobs"
    ).click()
    expect(page.locator(".listed > div > .job-list > li:not(.gone)")).to_have_count(69)
    page.get_by_text("Finished jobs: 1").click()
    expect(page.locator("details.finished li h2")).to_have_text(["Job 7"])
    page.get_by_role("button", name="Duplicate: Job 8", exact=True).click()
    expect(page.locator(".listed > div > .job-list > li h2").first).to_have_text("Job 8, a copy")


#: Said to a page before it is opened: how long each question is that Python is asked stands in `window.told`.
LENGTHS_NOTED = """{
    const post = Worker.prototype.postMessage;
    window.told = [];
    Worker.prototype.postMessage = function (message, ...rest) {
        if (message?.type === "ask") told.push(message.request.length);
        return post.call(this, message, ...rest);
    };
}"""


def asked_for_all(browser, served, count: int) -> list[int]:
    """How long the questions are that Python is asked while so many jobs are opened, kept and saved."""
    other = elsewhere(browser, served)
    other.add_init_script(LENGTHS_NOTED)
    other.goto("./house/hand-over/")
    whole = file_of([saved("job", f"j{number}", states()) for number in range(count)])
    open_file(other, {"name": "x.json", "mimeType": "application/json", "buffer": whole.encode()})
    other.get_by_role("button", name=f"Keep all that is new here ({count})").click()
    expect(other.locator(".said")).to_contain_text("All that was new")
    with other.expect_download():
        other.get_by_role("button", name="Save everything").click()
    expect(other.locator(".said")).to_contain_text(f"Saved: {count} jobs.")
    told = other.evaluate("told")
    other.context.close()
    return told


def test_of_four_times_as_many_things_python_is_told_four_times_as_much_a_little_at_a_time(page, browser, served):
    few, many = (asked_for_all(browser, served, count) for count in (25, 100))
    assert sum(many) < 1.3 * 4 * sum(few)
    assert max(many) < 1.3 * max(few) < 400_000


#: Presses the button that stops it as soon as it is seen how far the reading is, before it could be over.
STOPPED_AT_ONCE = """() => {
    const told = document.querySelector(".going-on"), stop = document.querySelector("[data-do=stop]");
    if (!told?.textContent.includes("of 300 read.") || !stop?.checkVisibility()) return false;
    stop.click();
    return true;
}"""


def test_what_is_being_read_can_be_stopped_and_the_page_is_whole(page):
    page.goto("./house/hand-over/")
    whole = file_of([saved("job", f"j{number}", states()) for number in range(300)])
    open_file(page, {"name": "x.json", "mimeType": "application/json", "buffer": whole.encode()})
    page.wait_for_function(STOPPED_AT_ONCE, polling=5)
    expect(page.locator(".said")).to_contain_text("Stopped.")
    expect(page.locator(".going-on")).to_be_hidden()
    open_file(page, {"name": "y.json", "mimeType": "application/json", "buffer": SAMPLE.encode()})
    expect(page.locator(".handed > h2")).to_have_text(["House method “Summer linen”"])


#: What the browser has lost of a file, as a change to its bytes.
LOST = {
    "the end": "bytes.slice(0, -40)",
    "most of it": "bytes.slice(0, 900)",
    "the beginning": "new Uint8Array([...new Array(700).fill(32), ...bytes.slice(700)])",
}


def test_a_file_that_cannot_be_read_back_is_not_called_saved(page):
    """As on a disk that is full, where the browser has lost a part of the file."""
    fill_everything(page)
    move(page, "./house/hand-over/")
    saved_files: list = []
    page.on("download", lambda download: saved_files.append(download))
    said = page.locator(".said")
    for lost in LOST.values():
        page.evaluate("""() => {
            Blob.prototype.stream = function () {
                const all = this.arrayBuffer();
                return new ReadableStream({ async start(out) {
                    const bytes = new Uint8Array(await all);
                    out.enqueue(LOST);
                    out.close();
                } });
            };
        }""".replace("LOST", lost))  # fmt: skip
        said.evaluate("(it) => { it.textContent = ''; }")
        page.get_by_role("button", name="Save everything").click()
        expect(said).to_contain_text("could not be read back, so it was not saved")
        expect(page.locator(".reminder")).to_contain_text("no copy is saved yet")
        assert saved_files == []
