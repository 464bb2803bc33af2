"""Visits of a reader, each in a browser of its own with an empty profile, and what they took."""

from __future__ import annotations

import json
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Page, Playwright

from scripts.setup import browser as chromium

SCRIPT = Path(__file__).with_name("page.js")
LONG = 120_000  # [ms]
OWN_START = 1_500  # [ms] a browser that has just been started is busy with its own window, whatever page it opens
ASKED = {"name": "pieces-from-cloth", "field": "piece_width", "page": "plan/pieces/"}
NEXT = {"name": "mitre-marks", "field": "turn", "page": "corners/mitre/"}
FIRST_TEXT = "37 cm"


@contextmanager
def visit(playwright: Playwright) -> Iterator[Page]:
    """A page of a browser that has never been here."""
    launched = playwright.chromium.launch(executable_path=chromium.ensure(), args=list(chromium.ARGUMENTS))
    context = launched.new_context(viewport={"width": 390, "height": 844}, reduced_motion="reduce")
    context.set_default_timeout(LONG)
    page = context.new_page()
    page.wait_for_timeout(OWN_START)
    yield page
    launched.close()


def first_answer_plain(playwright: Playwright, address: str) -> float:
    """Page opened → answer shown, of the plain page [ms]."""
    with visit(playwright) as page:
        page.goto(address)
        took: float = page.wait_for_function("window.answeredAt").json_value()
        return took


def first_answer(page: Page, address: str) -> float:
    """Page opened → answer to what is typed the moment the page has loaded [ms]."""
    page.add_init_script(path=SCRIPT)
    page.add_init_script(
        f"""window.answeredAt = new Promise((resolve) => addEventListener("load", async () => {{
            await bench.type({json.dumps(ASKED["name"])}, {json.dumps(ASKED["field"])}, {json.dumps(FIRST_TEXT)});
            resolve(performance.now());
        }}));"""
    )
    page.goto(address + ASKED["page"])
    took: float = page.evaluate("window.answeredAt")
    return took


def wait_until_kept(page: Page) -> None:
    """The handbook is being kept for use without a network, once in a reader's life: not what the other figures are
    about."""
    page.evaluate(
        "async () => { while (!navigator.serviceWorker.controller) await new Promise((resolve) => "
        "setTimeout(resolve, 100)); }"
    )


def typed_to_redrawn(page: Page, count: int) -> list[float]:
    """Typed → answer drawn, of an awake Python [ms]."""
    texts = [f"{20 + number * 0.1:.1f} cm" for number in range(count)]
    took: list[float] = page.evaluate(
        "([name, field, texts]) => bench.typeAll(name, field, texts)", [ASKED["name"], ASKED["field"], texts]
    )
    return took


def second_page(page: Page) -> tuple[float, float]:
    """A link followed in the same visit, something typed there at once: page in place → answer, and link pressed →
    answer [ms]."""
    in_place, pressed = page.evaluate(
        """async ({ name, field, page, text }) => {
            const home = document.querySelector(".md-header__button.md-logo").href;
            const made = Object.assign(document.createElement("a"), { href: new URL(page, home).href });
            const link = document.body.appendChild(made);
            const inPlace = new Promise((resolve) => {
                document$.subscribe(({ body }) =>
                    body.querySelector(`[data-calculator="${name}"]`) && resolve(performance.now()));
            });
            const pressed = performance.now();
            link.click();
            const there = await inPlace;
            await bench.type(name, field, text);
            return [performance.now() - there, performance.now() - pressed];
        }""",
        NEXT | {"text": "1.3 cm"},
    )
    return in_place, pressed


def worker_memory(page: Page) -> dict[str, int]:
    """What the worker holds: of JavaScript, and of buffers, of which Python's memory is nearly all [bytes]."""
    session = page.context.new_cdp_session(page)
    workers, heard = [], []
    session.on(
        "Target.attachedToTarget",
        lambda event: workers.append(event) if event["targetInfo"]["type"] == "worker" else None,
    )
    session.on("Target.receivedMessageFromTarget", lambda event: heard.append(json.loads(event["message"])))
    session.send("Target.setAutoAttach", {"autoAttach": True, "waitForDebuggerOnStart": False, "flatten": False})
    asked = json.dumps({"id": 1, "method": "Runtime.getHeapUsage"})
    (python,) = [each for each in workers if each["targetInfo"]["url"].endswith("python-worker.js")]
    session.send("Target.sendMessageToTarget", {"sessionId": python["sessionId"], "message": asked})
    while not (replies := [each for each in heard if each.get("id") == 1]):
        page.wait_for_timeout(20)
    usage = replies[0]["result"]
    return {"javascript": usage["usedSize"], "buffers": usage.get("backingStorageSize", 0)}
