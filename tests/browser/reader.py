"""What a reader does on a page: the calculators, their blanks and their answers, by what she sees."""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Locator, Page, Route, expect

WAKING = 60_000  # [ms] Python wakes on first use; on a busy machine that takes a while

#: Said to a page before it is opened: it keeps no copy of the site, which every new profile would fetch whole.
KEEPS_NO_COPY = "delete Navigator.prototype.serviceWorker"

#: Said to a page before it is opened: Python never wakes, where what is looked at is what the page came with.
NO_PYTHON = "window.Worker = class { postMessage() {} terminate() {} };"

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


def hold_back(page: Page) -> None:
    """From now on what Python answers does not arrive."""
    page.evaluate("() => { heldBack = []; }")


def let_through(page: Page) -> None:
    """Everything that was held back arrives, and what is answered from now on."""
    page.evaluate("() => { const late = heldBack; heldBack = null; late.forEach((arrive) => arrive()); }")


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


def elsewhere(browser: Browser, served: str, **look) -> Page:
    """A page in another profile, as of another reader; closed with its context."""
    context = browser.new_context(base_url=f"{served}/", **look)
    context.add_init_script(KEEPS_NO_COPY)
    return context.new_page()


def calculator(page: Page, name: str) -> Locator:
    return page.locator(f'section.calculator[data-calculator="{name}"]').first


def blank(section: Locator, name: str) -> Locator:
    """A blank, with the drawer it may lie in pulled open."""
    found = section.locator(f'[name="{name}"]')
    found.wait_for(state="attached")  # the page may still be on its way
    found.evaluate(
        "it => it.closest('details:not([open])')?.querySelector('summary').click()"
    )  # in one step: the page may open it too
    return found


def spoken(section: Locator) -> Locator:
    return section.locator(".answer .spoken")


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
