"""What a reader does on a page: the calculators, their blanks and their answers, by what she sees."""

import io
import re
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pdfplumber
import pytest
from playwright.sync_api import Browser, BrowserContext, Locator, Page, Route, expect

from tests.same_origin import strangers

#: Where the same is done in any window, one is enough.
one_window = pytest.mark.parametrize("width", [390], ids=["phone"])
both_windows = pytest.mark.parametrize("width", [390, 1280], ids=["phone", "screen"])

WAKING = 60_000  # [ms] Python wakes on first use; on a busy machine that takes a while

#: Said to a page before it is opened: it keeps no copy of the site, which every new profile would fetch whole.
KEEPS_NO_COPY = "delete Navigator.prototype.serviceWorker"

#: Said to a page before it is opened: Python does not warm up, which costs as much as its waking.
NO_WARM_UP = """{
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (message, ...rest) {
        if (message?.type !== "warm up") return post.call(this, message, ...rest);
    };
}"""

#: Said to a page before it is opened: Python never wakes, where what is looked at is what the page came with.
NO_PYTHON = "window.Worker = class { postMessage() {} terminate() {} };"

#: Said to a page before it is opened: Python is sent for, by the page's policy, and sent away before it has woken.
PYTHON_SENT_AWAY = """{
    const Prompt = Worker;
    window.Worker = class Worker extends Prompt {
        constructor(...given) { super(...given); setTimeout(() => this.terminate()); }
    };
}"""

#: Said to a page before it is opened: what Python answers arrives late, while `window.heldBack` is a list.
ANSWERS_HELD_BACK = """{
    const Prompt = Worker;
    window.heldBack = null;
    window.Worker = class Worker extends Prompt {
        get onmessage() { return super.onmessage; }
        set onmessage(hear) { super.onmessage = (event) => (heldBack ? heldBack.push(() => hear.call(this, event))
            : hear.call(this, event)); }
    };
}"""


#: Said to a page before it is opened: what Python is asked stands in `window.asked`, each question by its name.
QUESTIONS_NOTED = """{
    const post = Worker.prototype.postMessage;
    window.asked = [];
    Worker.prototype.postMessage = function (message, ...rest) {
        if (message?.type === "ask") asked.push(JSON.parse(message.request).ask);
        return post.call(this, message, ...rest);
    };
}"""

#: Said to a page before it is opened: whoever waits for long waits a tenth of it.
LESS_PATIENT = """{
    const wait = setTimeout;
    window.setTimeout = (act, ms = 0, ...rest) => wait(act, ms < 5000 ? ms : ms / 10, ...rest);
}"""

#: Every fold that an element lies in is opened, and the line of its row where that is one.
OPEN_TO = """(it) => {
    for (let fold = it.closest("details"); fold; fold = fold.parentElement.closest("details"))
        if (!fold.open) fold.querySelector("summary").click();
    for (const way of it.closest("tr")?.querySelectorAll("[aria-expanded=false]") ?? [])
        if (way.checkVisibility()) way.click();
}"""


def hold_back(page: Page) -> None:
    """From now on what Python answers does not arrive."""
    page.evaluate("() => { heldBack = []; }")


def let_through(page: Page) -> None:
    """Everything that was held back arrives, and what is answered from now on."""
    page.evaluate("() => { const late = heldBack; heldBack = null; late.forEach((arrive) => arrive()); }")


def until(page: Page, function: str, *given: object) -> None:
    """Wait until an async function of the page gives true. (`wait_for_function` takes its promise for true.)"""
    late = time.monotonic() + WAKING / 1000
    while not page.evaluate(function, *given):
        if time.monotonic() > late:
            raise AssertionError(f"does not come true: {function}")
        page.wait_for_timeout(20)


@contextmanager
def scripts_held_back(page: Page) -> Iterator[None]:
    """Inside the block no script of a page arrives, but for the first, which a page waits for before it shows anything;
    at
    the end of the block all do. Open a page with `wait_until="commit"`."""
    late: list[Route] = []
    go_on = late.append
    page.route(re.compile(r"/(?!at-first-paint)[^/]*\.js$"), lambda route: go_on(route))
    yield
    go_on = Route.continue_
    for each in late:
        each.continue_()


def profile(
    browser: Browser, served: str, *, keeps_copy: bool = False, warms_up: bool = False, **look
) -> BrowserContext:
    """A reader's own profile; `page.goto("./")` opens the home page.

    keeps_copy, warms_up: whether it fetches the whole site for itself, and whether Python warms up; most tests need
    neither.
    """
    context = browser.new_context(base_url=f"{served}/", **look)
    if not keeps_copy:
        context.add_init_script(KEEPS_NO_COPY)
    if not warms_up:
        context.add_init_script(NO_WARM_UP)
    return context


def elsewhere(browser: Browser, served: str, **look) -> Page:
    """A page in another profile, as of another reader; closed with its context."""
    return profile(browser, served, **look).new_page()


#: Follow a link, which need not stand on the page, to another page of the site.
FOLLOW = """(path) => {
    document.querySelector("h1").id = "before";
    const link = Object.assign(document.createElement("a"), { href: new URL(path, __md_scope).href });
    document.body.appendChild(link).click();
    return link.href;
}"""


def move(page: Page, path: str) -> None:
    """Follow a link to another page of the site, as a reader does: without a page load, so Python stays awake.

    path: from the home page on, as for `page.goto`.
    """
    page.wait_for_url(page.evaluate(FOLLOW, path))
    expect(page.locator("h1#before")).to_have_count(0)


def every_calculator_answers(page: Page, but: set[str], within: float) -> set[str]:
    """Types into each calculator of a page and waits for its answer [ms]; returns their names. but: those that are left
    alone."""
    answered = set()
    for section in page.locator(".calculator").all():
        name = section.get_attribute("data-calculator") or ""
        if name in but:
            continue
        answer = section.locator(".answer")
        answer.locator(".spoken").evaluate(
            "(spoken) => (spoken.appendChild(document.createElement('i')).dataset.earlier = '')"
        )
        blank = reached(section.locator("form.asked input[type=text]").first)
        blank.fill(blank.input_value() + " ")
        expect(answer.locator("[data-earlier]")).to_have_count(0, timeout=within)
        expect(answer.locator(".spoken")).not_to_be_empty()
        answered.add(name)
    return answered


@contextmanager
def what_goes_amiss(context: BrowserContext, served: str) -> Iterator[list[str]]:
    """Closes a reader's profile at the end. Gives a list of what was asked for beyond the served site, what broke in a
    script of a page, and what went against the site's policy."""
    amiss: list[str] = []
    context.on("request", lambda request: amiss.extend(strangers([request.url], served)))
    context.on("weberror", lambda problem: amiss.append(str(problem.error)))
    context.on(
        "console", lambda message: amiss.append(message.text) if "Content Security Policy" in message.text else None
    )
    yield amiss
    context.close()


@contextmanager
def nothing_amiss(context: BrowserContext, served: str) -> Iterator[None]:
    """Closes a reader's profile at the end, and fails when anything went amiss."""
    with what_goes_amiss(context, served) as amiss:
        yield
    assert amiss == []


def calculator(page: Page, name: str) -> Locator:
    return page.locator(f'section.calculator[data-calculator="{name}"]').first


def blank(section: Locator, name: str) -> Locator:
    """A blank, with the drawer it may lie in pulled open."""
    return reached(section.locator(f'[name="{name}"]'))


def reached(found: Locator) -> Locator:
    """A place on a page, with every fold opened that it lies in."""
    found.wait_for(state="attached")  # the page may still be on its way
    found.evaluate(OPEN_TO)  # in one step: the page may open it too
    return found


def spoken(section: Locator) -> Locator:
    return section.locator(".answer .spoken")


def answered(page: Page) -> None:
    """Wait until every answer of the page is there that was asked for."""
    expect(page.locator('.answer[aria-busy="true"]')).to_have_count(0, timeout=WAKING)


def printed(page: Page, paper: str) -> pdfplumber.PDF:
    """The page as the browser's own menu prints it, once every answer is there."""
    answered(page)
    return pdfplumber.open(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=True)))


def forget_typed(page: Page) -> None:
    """The browser has nothing any more of what was put down at once, and knows that nothing of it was lost."""
    page.evaluate("""() => {
        const number = Object.keys(localStorage).find((name) => name.endsWith("put down"));
        const last = number && localStorage.getItem(number);
        localStorage.clear();
        if (number) localStorage.setItem(number, last);
    }""")


def says(section: Locator, words: str | re.Pattern) -> None:
    """Wait until the answer says this, and is not marked as an old one."""
    expect(spoken(section)).to_contain_text(words, timeout=WAKING)
    expect(section.locator(".answer")).not_to_have_class(re.compile("is-old"), timeout=WAKING)
    expect(section.locator(".old-answer")).to_be_hidden()


def refusal(section: Locator, name: str) -> Locator:
    return section.locator(f'.refusal[data-field="{name}"]')


def choose_ruler(page: Page, ruler: str) -> None:
    page.locator(".ruler-choice select").select_option(ruler)


def open_file(page: Page, file: str | Path | dict) -> None:
    """Open a file that was handed over, once the page can take one."""
    expect(page.get_by_role("button", name="Save everything")).to_be_visible()
    page.locator("[name=file]").set_input_files(file)
