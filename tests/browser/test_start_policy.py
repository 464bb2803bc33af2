"""When Python starts: never before the page can be read, and on a spared connection only at the first touch."""

import json
import math
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

CALCULATOR = "./plan/pieces/"
LONG = 60_000  # [ms]
SPARED = "Object.defineProperty(navigator, 'connection', { value: { saveData: true } })"


@pytest.fixture
def fresh(browser: Browser, served: str) -> Iterator[Page]:
    context = browser.new_context(base_url=f"{served}/")
    page = context.new_page()
    yield page
    context.close()


def is_runtime(url: str) -> bool:
    return "/assets/runtime/" in url or url.endswith("python-worker.js")


def test_nothing_of_the_runtime_is_fetched_before_the_page_can_be_read(fresh: Page):
    """The page's answers are in it, and a picture of them has been drawn, when the first byte of the runtime is asked
    for."""
    fetched = []
    fresh.on("requestfinished", lambda request: fetched.append(request) if "/assets/runtime/" in request.url else None)
    fresh.add_init_script(
        """window.Worker = class extends Worker {
            constructor(...all) {
                super(...all);
                window.answerStood ??= document.querySelector(".calculator .answer .spoken").textContent.trim() !== "";
            }
        }"""
    )
    with fresh.expect_event("worker", lambda worker: is_runtime(worker.url)):
        fresh.goto(CALCULATOR)
    assert fresh.evaluate("window.answerStood") is True
    fresh.wait_for_function("performance.getEntriesByName('first-contentful-paint').length")
    drawn = fresh.evaluate(
        "performance.timeOrigin + performance.getEntriesByName('first-contentful-paint')[0].startTime"
    )
    expect(fresh.locator("[data-topic=ready]")).to_be_visible(timeout=LONG)
    assert fetched and drawn <= min(request.timing["startTime"] for request in fetched)


def test_a_page_without_anything_to_work_out_starts_nothing(fresh: Page):
    asked_for: list[str] = []
    fresh.on("request", lambda request: asked_for.append(request.url))
    fresh.context.set_default_timeout(LONG)
    fresh.add_init_script(SPARED)  # else the runtime is fetched to be kept, which is another matter
    fresh.goto("./reference/sources/", wait_until="networkidle")
    fresh.wait_for_timeout(1500)
    assert [url for url in asked_for if is_runtime(url)] == []


def megabytes_kept(site: Path) -> int:
    """What the copy for use without a network takes, as the list of its files says."""
    handbook = json.JSONDecoder().raw_decode((site / "sw.js").read_text().removeprefix("const HANDBOOK = "))[0]
    return math.ceil(sum(size for size, _ in handbook["files"].values()) / 1e6)


def test_on_a_spared_connection_python_waits_for_the_first_touch_and_keeping_for_a_yes(fresh: Page, site: Path):
    asked_for: list[str] = []
    fresh.on("request", lambda request: asked_for.append(request.url))
    fresh.add_init_script(SPARED)
    fresh.goto(CALCULATOR, wait_until="networkidle")
    keep = fresh.locator("[data-topic=keep]")
    expect(keep).to_contain_text("can be kept on this device", timeout=LONG)
    expect(keep).to_contain_text(f"It takes {megabytes_kept(site)} MB of room.")
    assert [url for url in asked_for if is_runtime(url)] == []
    blank = fresh.locator(".calculator input[type=text]:visible").first
    with fresh.expect_event("worker", lambda worker: is_runtime(worker.url)):
        blank.click()
    keep.get_by_role("button", name="Keep it").click()
    expect(fresh.locator("[data-topic=ready]")).to_be_visible(timeout=LONG)
