"""The checker of accessible pages (axe-core) finds nothing, light or dark, on a wide screen, nor while a value is in
trouble; `test_every_page.py` runs it on every page on a phone."""

from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from scripts.tools.places import NODE_MODULES
from tests.browser.reader import WAKING, answered, blank, calculator, forget_typed, profile, refusal

PHONE, SCREEN = {"width": 390, "height": 844}, {"width": 1280, "height": 844}
COLOUR = ["color-contrast", "link-in-text-block"]
EVERY_FOLD = "for (const each of document.querySelectorAll('article details')) each.open = true"
GROUND = "() => getComputedStyle(document.body).backgroundColor"
AXE = NODE_MODULES / "axe-core/axe.min.js"


@pytest.fixture(scope="module", params=["light", "dark"])
def checked(request, browser: Browser, served: str) -> Iterator[tuple[Page, Callable[[], list[str]]]]:
    """A page in a light or dark room, and what axe finds on it."""
    look = {"viewport": PHONE, "color_scheme": request.param, "reduced_motion": "reduce"}
    context = profile(browser, served, **look)
    context.add_init_script(path=AXE)
    page = context.new_page()
    yield page, lambda: violations(page)
    context.close()


def violations(page: Page, rules: list[str] | None = None, *, style_sheets: bool = True) -> list[str]:
    """What axe finds. rules: those it goes by, all of them where none are named; style_sheets: whether it reads those
    once more by itself, for the one rule on them, which is half of its work on a page."""
    options = {"resultTypes": ["violations"], "preload": style_sheets, **({"runOnly": rules} if rules else {})}
    found = page.evaluate("async (options) => (await axe.run(document, options)).violations", options)
    return [
        f"{each['id']}: {node['target']} {node['failureSummary'][:160]}" for each in found for node in each["nodes"]
    ]


@pytest.mark.parametrize(
    "path",
    [
        "./",
        "./batch/",
        "./plan/lay-plan/",
        "./plan/cost/",
        "./corners/mitre/",
        "./house/",
        "./house/ticket/",
        "./reference/glossary/",
    ],
)
def test_the_kinds_of_page_on_a_wide_screen(checked, path):
    page, found = checked
    page.set_viewport_size(SCREEN)
    page.goto(path)
    problems = found()
    page.set_viewport_size(PHONE)
    assert problems == []


def test_a_page_after_an_answer_and_while_a_value_is_in_trouble(checked):
    page, found = checked
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    blank(section, "piece_width").fill("36 cm")
    expect(section.locator("button.undo")).to_be_visible()
    answered(page)
    page.evaluate(EVERY_FOLD)
    assert found() == []
    blank(section, "least_width").fill("banana")
    blank(section, "piece_width").fill("36 banana")
    expect(refusal(section, "piece_width")).to_be_visible(timeout=WAKING)
    assert found() == []
    forget_typed(page)


def test_what_stands_round_a_page_is_as_large_as_a_fingertip(checked):
    page, _ = checked
    small = """() => [...document.querySelectorAll(
        ".md-tabs__link, .md-header__button, .md-nav--secondary .md-nav__link, .headerlink, " +
        ".md-search__icon[for], [type=file]")]
        .map((it) => [it.className, it.getBoundingClientRect()])
        .filter(([, box]) => box.width && (box.height < 44 || (box.width < 44)))
        .map(([name, box]) => `${name} ${box.width} ${box.height}`)"""
    try:
        for width in (390, 1280):
            page.set_viewport_size({"width": width, "height": 844})
            for address in ("./fold/hems/", "./house/hand-over/"):
                page.goto(address)
                assert page.evaluate(small) == []
    finally:
        page.set_viewport_size({"width": 390, "height": 844})


def test_a_planted_fault_is_found(checked):
    page, found = checked
    page.goto("./")
    page.evaluate(
        "document.querySelector('article').append(Object.assign(document.createElement('input'), { type: 'text' }))"
    )
    assert any(problem.startswith("label:") for problem in found())
