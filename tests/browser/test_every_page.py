"""Every page of the site, opened in a browser: nothing goes against the policy, nothing leaves the site, and all that
is looked for on any page holds on each of them.

A page is opened once for all looks, since that costs more than most of them. The calculators' own pages are made alike,
three tables without a form or a drawing: of ten of them one has the looks that cost most.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from urllib.parse import urlsplit
from xml.etree import ElementTree

import pytest
from playwright.sync_api import Browser, Page

from calculators.catalogue import catalogue
from scripts.bench.page_lengths import MEASURE
from tests.browser.reader import PYTHON_SENT_AWAY, profile, what_goes_amiss
from tests.browser.test_accessible import AXE, COLOUR, EVERY_FOLD, GROUND, violations
from tests.browser.test_in_glances import HEAD_OF_A_SHEET, LONGEST, OF_THE_DAY
from tests.browser.test_no_sideways_scroll import FAULTS
from tests.browser.test_no_sideways_scroll import WINDOWS as WINDOWS_TO_FIT
from tests.browser.test_words_in_drawings import OTHER_SIZES, SIZES
from tests.browser.test_words_in_drawings import WINDOWS as WINDOWS_TO_READ_IN

PHONE, SCREEN = (390, 844), (1280, 844)  # [CSS px]


def addresses(site: Path, served: str) -> list[str]:
    """Every page that the site map names."""
    names = ElementTree.parse(site / "sitemap.xml").iterfind(".//{*}loc")
    found = [name.text for name in names]
    assert len(found) > 5 and all(address.startswith(served) for address in found)
    return found


def are_made_alike(address: str) -> bool:
    """Whether it is a calculator's own page."""
    path = PurePosixPath(urlsplit(address).path)
    return path.parent.name == "reference" and path.name in catalogue()


def one_in_ten_alike(found: list[str]) -> list[str]:
    """All pages, but of those that are made alike one in ten."""
    alike = [address for address in found if are_made_alike(address)]
    assert len(alike) > 20
    return [address for address in found if address not in alike or address in alike[::10]]


#: Names what a finger must hit and cannot hit well: less than 44 px high or, where it is a button, wide. Links within
#: text are text.
TOO_SMALL = """() => [
    ...document.querySelectorAll(
        "button, summary, input:not([type=hidden]), select, textarea, .md-tabs__link, " +
        ".md-header a, article a.download")]
    .filter((each) => each.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
        !each.matches("[type=checkbox], [type=radio], .md-toggle"))
    .map((each) => [each, each.getBoundingClientRect()])
    .filter(([each, { width, height }]) => width && height &&
        (height < 43.5 || (each.localName === "button" && width < 43.5)))
    .map(([each, { width, height }]) =>
        `${each.outerHTML.slice(0, 120)}: ${Math.round(width)} by ${Math.round(height)}`)"""


def fits_the_hand(page: Page) -> list:
    return page.evaluate(TOO_SMALL)


def fits_the_window(page: Page) -> list:
    return page.evaluate(FAULTS)


def has_one_heading(page: Page) -> list:
    return [] if page.locator("h1").count() == 1 else ["none, or several"]


def is_read_in_glances(page: Page) -> list:
    """The answer and its drawing are seen with at most one screen of scrolling."""
    page.evaluate("document.fonts.ready.then(() => true)")
    found = page.evaluate(MEASURE)
    end = found["end"] if found["end"] is not None else found["answer"]
    far = found["answer"] is not None and (end > 2 or found["answer"] > 1.5)
    longest = next((high for path, high in LONGEST.items() if page.url.endswith(f"/{path}")), found["high"])
    return [found] if far or found["high"] > longest else []


def has_a_head_for_its_sheets(page: Page) -> list:
    *heads, left_over = page.evaluate(HEAD_OF_A_SHEET)
    said_well = len(heads) == 1 and re.match(OF_THE_DAY, heads[0])
    return [] if said_well and not left_over else [*heads, left_over]


def has_words_of_one_size_in_its_drawings(page: Page) -> list:
    return page.evaluate(OTHER_SIZES, SIZES)


def is_accessible(page: Page) -> list:
    """All pages have the same few style sheets; `test_accessible.py` has them read on a page of each kind."""
    return violations(page, style_sheets=False)


def has_contrast_in_the_dark(page: Page) -> list:
    """By the rules on colour alone, since nothing else is otherwise there."""
    return violations(page, COLOUR, style_sheets=False)


Look = Callable[[Page], list]
LOOKS: tuple[Look, ...] = (
    fits_the_hand,
    fits_the_window,
    has_one_heading,
    is_read_in_glances,
    has_a_head_for_its_sheets,
    has_words_of_one_size_in_its_drawings,
    is_accessible,
    has_contrast_in_the_dark,
)


def resize(page: Page, window: tuple[int, int]) -> None:
    page.set_viewport_size({"width": window[0], "height": window[1]})


def states(page: Page, address: str, *, read_by_axe: bool) -> Iterator[tuple[str, list[Look]]]:
    """A page in each state that it is looked at in, by its name, with what is looked for."""
    page.emulate_media(color_scheme="light")
    resize(page, PHONE)
    page.goto(address)
    yield "as opened", [has_one_heading, is_read_in_glances, has_a_head_for_its_sheets, fits_the_hand, fits_the_window]
    resize(page, SCREEN)
    yield "on a screen", [fits_the_hand, fits_the_window]
    page.evaluate(EVERY_FOLD)
    for window in sorted({*WINDOWS_TO_FIT, *WINDOWS_TO_READ_IN}, reverse=True):
        resize(page, window)
        looks: list[Look] = []
        if window in WINDOWS_TO_FIT:
            looks.append(fits_the_window)
        if window in WINDOWS_TO_READ_IN:
            looks.append(has_words_of_one_size_in_its_drawings)
        yield "with every fold open at {} by {}".format(*window), looks
    if not read_by_axe:
        return
    resize(page, PHONE)
    yield "with every fold open in a light room", [is_accessible]
    light = page.evaluate(GROUND)
    page.emulate_media(color_scheme="dark")
    page.wait_for_function(f"(light) => ({GROUND})() !== light", arg=light)
    yield "with every fold open in a dark room", [has_contrast_in_the_dark]


@dataclass
class Visit:
    """What was found on the pages by each look, by page and state; and what went amiss."""

    found: dict[Look, dict[str, list]]
    amiss: list[str]


@pytest.fixture(scope="module")
def visit(browser: Browser, site: Path, served: str) -> Visit:
    width, height = PHONE
    look = {"viewport": {"width": width, "height": height}, "color_scheme": "light", "reduced_motion": "reduce"}
    context = profile(browser, served, **look)
    context.add_init_script(path=AXE)
    context.add_init_script(PYTHON_SENT_AWAY)
    found: dict[Look, dict[str, list]] = {look: {} for look in LOOKS}
    with what_goes_amiss(context, served) as amiss:
        page = context.new_page()
        every = [*addresses(site, served), f"{served}/no-such-page/"]
        read_by_axe = one_in_ten_alike(every)
        for address in every:
            for state, looks in states(page, address, read_by_axe=address in read_by_axe):
                for each in looks:
                    found[each][f"{address.removeprefix(served)} {state}"] = each(page)
    return Visit(found, amiss)


@pytest.mark.parametrize("look", LOOKS, ids=lambda look: look.__name__)
def test_every_page(visit: Visit, look: Look):
    assert len(visit.found[look]) > (50 if look in (is_accessible, has_contrast_in_the_dark) else 100)
    assert {where: faults for where, faults in visit.found[look].items() if faults} == {}


def test_every_page_keeps_to_the_policy(visit: Visit):
    assert visit.amiss == []


#: Names what is marked as hidden and is seen all the same.
SEEN_THOUGH_HIDDEN = """() => [...document.querySelectorAll(".md-content [hidden]")]
    .filter((each) => each.checkVisibility({ visibilityProperty: true }))
    .map((each) => each.outerHTML.slice(0, 120))"""


@pytest.mark.parametrize("scripts", ["none", "late"])
def test_nothing_can_be_pressed_before_the_script_that_works_it_has_come(
    browser: Browser, site: Path, served: str, scripts: str
):
    context = browser.new_context(viewport={"width": 390, "height": 844}, java_script_enabled=scripts == "late")
    page = context.new_page()
    wire = context.new_cdp_session(page)
    wire.send("Network.enable")
    wire.send("Network.setBlockedURLs", {"urls": ["*.js"]})
    seen = {}
    for address in one_in_ten_alike(addresses(site, served)):
        page.goto(address, wait_until="domcontentloaded")
        assert page.evaluate("typeof document$ === 'undefined'"), "a script has come"
        if found := page.evaluate(SEEN_THOUGH_HIDDEN):
            seen[address.removeprefix(served)] = found
    context.close()
    assert seen == {}
