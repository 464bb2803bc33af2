"""Jobs in the browser: kept from the batch, opened again, listed; two windows lose nothing; nothing in them runs."""

import json
import re

from playwright.sync_api import Page, expect

from calculators.documents.exchange.share_link import packed
from tests.browser.reader import (
    ANSWERS_HELD_BACK,
    blank,
    calculator,
    hold_back,
    let_through,
    move,
    one_window,
    open_file,
    reached,
)
from tests.documents.exchange.test_handing import JOB, WRITTEN
from tests.documents.exchange.whole_file import file_of, saved

pytestmark = one_window
NASTY = "<img src=x onerror=window.ran=1><script>window.ran=1</script>[x](javascript:window.ran=1)"
#: Choose a file of 50 MB, made in the page itself.
LARGE = """(input) => {
    const chosen = new DataTransfer();
    chosen.items.add(new File([new Uint8Array(50_000_000)], "x.json"));
    input.files = chosen.files;
    input.dispatchEvent(new Event("change"));
}"""


def kept_jobs(page: Page) -> list[dict]:
    return page.evaluate(
        "async () => (await (await import(__md_scope + 'assets/javascript/store.js')).newest('job')).map(({ text }) => "
        "JSON.parse(text))"
    )


def put(page: Page, kind: str, identity: str, text: str) -> None:
    page.evaluate(
        "async ([kind, id, text]) => (await import(__md_scope + 'assets/javascript/store.js')).keep(kind, id, text, 0)",
        [kind, identity, text],
    )


def says(page: Page, words: str | re.Pattern) -> None:
    expect(page.locator(".said").first).to_contain_text(words)


def write(page: Page, name: str, text: str) -> None:
    place = reached(page.locator(f".walk .jobs [name={name}]"))
    place.fill(text)
    place.blur()


def job_is(page: Page, **entries) -> None:
    """Wait until what is kept says so."""
    for _ in range(600):
        found = kept_jobs(page)
        if found and found[0] | entries == found[0]:
            return
        page.wait_for_timeout(100)
    raise AssertionError(f"{entries} is not in {found}")


def test_what_was_typed_last_is_kept_when_the_page_is_put_away(page: Page):
    page.goto("./batch/")
    page.get_by_role("button", name="Keep this as a job").click()
    expect(page.locator(".job-in-hand [name=name]")).to_be_focused()
    page.evaluate("setTimeout = () => 0")  # the pause that a keystroke is kept after never ends
    reached(page.locator(".walk .jobs [name=notes]")).fill("The blue one shrinks more")
    page.evaluate("""() => {
        Object.defineProperty(document, "visibilityState", { value: "hidden" });
        document.dispatchEvent(new Event("visibilitychange"));
    }""")  # fmt: skip
    job_is(page, notes="The blue one shrinks more")


def test_a_job_is_kept_from_the_batch_left_and_opened_again(page: Page):
    page.goto("./batch/")
    pieces = calculator(page, "pieces-from-cloth")
    blank(pieces, "piece_width").fill("40")
    page.get_by_role("button", name="Keep this as a job").click()
    expect(page.locator(".job-in-hand [name=name]")).to_be_focused()
    write(page, "name", "Towels")
    write(page, "time", "3 h, with pressing")
    blank(pieces, "piece_length").fill("18 in")
    job_is(
        page,
        name="Towels",
        time="3 h, with pressing",
        typed={"pieces-from-cloth": {"piece_width": "40 cm", "piece_length": "18 in"}},
    )
    says(page, "Kept at")
    page.reload()
    expect(blank(pieces, "piece_length")).to_have_value("18 in")
    expect(page.locator(".job-in-hand [name=name]")).to_have_value("Towels")
    expect(page.locator(".in-hand")).to_contain_text("Towels")
    page.locator("[data-do=stop]").click()
    expect(page.locator(".in-hand")).not_to_contain_text("Towels")
    expect(blank(pieces, "piece_length")).not_to_have_value("18 in")
    expect(blank(pieces, "piece_width")).to_have_value(re.compile("40"))
    blank(pieces, "piece_width").fill("50 cm")
    move(page, "./house/jobs/")
    expect(page.locator(".job-list li")).to_contain_text("Each is cut 40 cm by 18 in.")
    page.get_by_role("button", name="Duplicate: Towels").click()
    page.get_by_role("button", name="Move to finished jobs: Towels, a copy").click()
    expect(page.locator("details.finished summary")).to_have_text("Finished jobs: 1")
    says(page, "Nothing is deleted")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("details.finished")).to_have_count(0)
    page.get_by_role("button", name="Move to finished jobs: Towels, a copy").click()
    expect(page.locator("details.finished summary")).to_have_text("Finished jobs: 1")
    versions = (
        "async (id) => (await (await import(__md_scope + 'assets/javascript/store.js')).versions('job', id))"
        ".map(({ at, text }) => [at, text])"
    )
    towels = page.get_by_role("link", name="Towels", exact=True).locator("xpath=ancestor::li").get_attribute("data-job")
    before = page.evaluate(versions, towels)
    expect(page.locator(".reminder")).to_contain_text("2 jobs are kept")
    page.get_by_role("button", name="Delete: Towels", exact=True).click()
    says(page, "Press again if you are sure")
    expect(page.locator(f'[data-job="{towels}"] .said')).to_be_in_viewport(ratio=1)
    page.get_by_role("button", name="Delete: Towels", exact=True).click()
    says(page, "“Towels” is deleted")
    expect(page.get_by_role("button", name="Undo")).to_be_in_viewport(ratio=1)
    expect(page.locator(".reminder")).to_contain_text("1 job is kept")
    assert {job["name"] for job in kept_jobs(page)} == {"Towels, a copy"}
    page.get_by_role("button", name="Undo").click()
    says(page, "“Towels” is back")
    assert page.evaluate(versions, towels) == before, "with every change and when it was made"
    page.get_by_role("button", name="Delete: Towels", exact=True).click()
    says(page, "Press again if you are sure")
    page.get_by_role("link", name="Towels", exact=True).click()
    expect(blank(pieces, "piece_width")).to_have_value("40 cm")
    page.locator(".job-changes summary").click()
    page.locator(".changes li", has_text="Time, your own figure").get_by_role("button").click()
    expect(page.locator(".walk .jobs [name=time]")).to_have_value("")
    assert {job["name"] for job in kept_jobs(page)} == {"Towels", "Towels, a copy"}


def test_two_windows_on_one_job_lose_nothing_in_silence(page: Page):
    page.context.add_init_script(ANSWERS_HELD_BACK)
    page.goto("./house/jobs/")
    put(page, "job", "sage-napkins", JOB)
    other = page.context.new_page()
    for window in (page, other):
        window.goto("./batch/#job=sage-napkins")
        expect(window.locator(".job-in-hand [name=name]")).to_have_value("Napkins in sage linen")
    write(page, "thread", "two spools")
    expect(other.locator(".walk .jobs [name=thread]")).to_have_value("two spools")
    hold_back(page)  # so that the other window is first, before this one can hear of it
    write(page, "cost", "mine")
    write(other, "notes", "kept by the other")
    write(other, "cost", "theirs")
    job_is(other, notes="kept by the other", cost="theirs")
    let_through(page)
    says(page, "changed in another window too. Cost, your own figure: here “mine” stands, there it was “theirs”")
    job_is(page, thread="two spools", notes="kept by the other", cost="mine")
    history = page.evaluate(
        "async () => (await (await import(__md_scope + 'assets/javascript/store.js')).versions('job', 'sage-napkins'))"
        ".map(({ text }) => JSON.parse(text).cost)"
    )
    assert {"mine", "theirs"} <= set(history), "each was kept before the other took its place"
    other.close()


def test_no_script_runs_from_a_job_or_a_method(page: Page):
    job, method = json.loads(JOB), json.loads(WRITTEN)
    method |= {"name": NASTY[:80], "texts": dict.fromkeys(("opening", "hems", "cloths", "prices"), NASTY)}
    method["tables"] = {
        "cloths": [{"cloth": NASTY[:80], "needle": NASTY[:80], "why": NASTY}],
        "pieces": [{"piece": NASTY[:80]}],
    }
    method["measures"] |= {"turn": {"value": "1 cm", "why": NASTY}, "hem": NASTY[:80]}
    job |= dict.fromkeys(("notes", "thread", "time", "cost"), NASTY) | {
        "name": NASTY[:80],
        "cloth": NASTY[:80],
        "measured": [{"piece": NASTY[:80], "note": NASTY}],
        "method": method,
    }
    job["typed"] = {
        "wash-test": {"cloth_width": "<img src=x onerror=alert()>"},
        "usable-cloth": {"x": NASTY},
        "x": {"y": NASTY},
    }
    page.goto(f"./house/hand-over/#handed={packed(json.dumps(job))}")
    expect(page.locator(".opened")).to_contain_text("<img src=x onerror=window.ran=1>")
    page.get_by_role("button", name="Keep it").first.click()
    says(page, "Kept.")
    everything = file_of(
        [
            saved("method", "x", [{"at": NASTY[:40], "text": json.dumps(method)}]),
            saved("job", "y", [{"at": "", "text": NASTY}]),
        ]
    )
    open_file(page, {"name": NASTY, "mimeType": "application/json", "buffer": everything.encode()})
    page.get_by_role("button", name="Keep all that is new here (2)").click()
    says(page, "All that was new")
    move(page, "./house/jobs/")
    expect(page.locator(".job-list li")).to_have_count(2)
    expect(page.locator(".job-list")).to_contain_text("cannot be read here")
    page.get_by_role("link", name="Open").click()
    expect(page.locator(".walk .jobs [name=notes]")).to_have_value(NASTY)
    expect(page.locator(".walk .refusal:not([hidden])").first).to_contain_text("“<img src=x")
    write(page, "notes", NASTY + "!")
    page.locator(".job-changes summary").click()
    expect(page.locator(".changes li")).to_contain_text("<script>window.ran=1</script>")
    move(page, "./house/")
    page.locator("[name=followed]").select_option(index=1)
    expect(page.locator(".whose-method")).to_contain_text("<img src=x")
    page.get_by_role("button", name="Change it").click()
    expect(page.locator("[name='texts.opening']")).to_have_value(NASTY)
    assert page.locator("article img, article script").count() == 0
    move(page, "./house/hand-over/")
    for broken, words in (
        ("{", "damaged"),
        ("[" * 5000, "nested"),
        (json.dumps({"format": "job", "version": 9, "name": "x"}), "newer handbook"),
    ):
        open_file(page, {"name": "x.json", "mimeType": "application/json", "buffer": broken.encode()})
        says(page, words)
    page.locator("[name=file]").evaluate(LARGE)
    says(page, "not a file of this handbook")
    assert page.evaluate("window.ran") is None


def test_a_job_says_of_the_other_pages_what_is_so_whenever_another_method_is_followed(page: Page):
    page.goto("./house/jobs/")
    method = json.loads(WRITTEN)
    put(page, "method", method["id"], WRITTEN)
    put(
        page,
        "job",
        "sage",
        json.dumps({"format": "job", "version": 2, "id": "sage", "name": "Sage", "walk": "batch", "method": method}),
    )
    page.goto("./batch/#job=sage")
    about = page.locator(".about-job")
    expect(about).to_contain_text("Take over the measures")
    choose = "async (id) => (await import(__md_scope + 'assets/javascript/store.js')).choose('method', id)"
    page.evaluate(choose, method["id"])
    expect(about).not_to_contain_text("Take over the measures")
    move(page, "./house/jobs/")
    page.get_by_role("button", name="New job").click()
    expect(page.locator(".job-in-hand [name=name]")).to_have_value(re.compile("Job of"))
    expect(page.locator(".walk")).not_to_have_attribute("inert", "")
    expect(about).not_to_contain_text("other numbers")


def test_the_cloth_that_a_job_names_brings_its_wash_and_its_price(page: Page):
    page.goto("./batch/")
    page.get_by_role("button", name="Keep this as a job").click()
    expect(page.locator(".job-in-hand [name=name]")).to_be_focused()
    write(page, "cloth", "Half linen, light")
    wash = calculator(page, "wash-test")
    expect(wash.locator(".answer .spoken")).to_contain_text("−5.5 %")
    expect(wash.locator(".answer")).to_contain_text("The square after the wash is that of “Half linen, light”")
    expect(calculator(page, "thread-time-cost").locator("[name=price_cloth]")).to_have_value("")
    move(page, "./house/ticket/")
    expect(page.locator(".ticket-step[data-step=wash]")).to_contain_text("shrinks 5.5 % along")


def test_her_own_words_stand_on_the_page_they_are_about_and_leave_with_her_method(page: Page):
    page.goto("./house/jobs/")
    method = {**json.loads(WRITTEN), "texts": {"hems": "Press <b>twice</b>."}}
    put(page, "method", method["id"], json.dumps(method))
    page.evaluate(
        "async (id) => (await import(__md_scope + 'assets/javascript/store.js')).choose('method', id)", method["id"]
    )
    move(page, "./fold/hems/")
    words = page.locator("[data-own-words=hems]")
    expect(words).to_contain_text("Press <b>twice</b>.")
    page.get_by_role("button", name="Show the handbook’s numbers").click()
    expect(words).to_be_hidden()
