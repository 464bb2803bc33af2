"""Every page of the site, opened in a browser: nothing goes against the policy, nothing leaves the site, all can be hit
and seen."""

from pathlib import Path
from xml.etree import ElementTree

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.reader import PYTHON_SENT_AWAY


def addresses(site: Path, served: str) -> list[str]:
    """Every page that the site map names."""
    names = ElementTree.parse(site / "sitemap.xml").iterfind(".//{*}loc")
    found = [name.text for name in names]
    assert len(found) > 5 and all(address.startswith(served) for address in found)
    return found


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


@pytest.mark.parametrize("width", [390], ids=["phone, then screen"])
def test_every_page_keeps_to_the_policy_and_fits_the_hand(page: Page, site: Path, served: str):
    page.add_init_script(PYTHON_SENT_AWAY)
    wide, small = {}, {}
    for address in [*addresses(site, served), f"{served}/no-such-page/"]:
        page.goto(address)
        assert page.locator("h1").count() == 1
        for across in (390, 1280):
            page.set_viewport_size({"width": across, "height": 844})
            where = f"{address.removeprefix(served)} at {across}"
            beyond = page.evaluate("document.scrollingElement.scrollWidth - innerWidth")
            if beyond > 0:
                wide[where] = beyond
            if found := page.evaluate(TOO_SMALL):
                small[where] = found
    assert wide == {}, "pages that scroll sideways"
    assert small == {}


#: Names what is marked as hidden and is seen all the same.
SEEN_THOUGH_HIDDEN = """() => [...document.querySelectorAll(".md-content [hidden]")]
    .filter((each) => each.checkVisibility({ visibilityProperty: true }))
    .map((each) => each.outerHTML.slice(0, 120))"""


@pytest.mark.parametrize("width", [390], ids=["phone"])
@pytest.mark.parametrize("scripts", ["none", "late"])
def test_nothing_can_be_pressed_before_the_script_that_works_it_has_come(
    browser: Browser, site: Path, served: str, scripts: str, width: int
):
    context = browser.new_context(viewport={"width": width, "height": 844}, java_script_enabled=scripts == "late")
    context.route("**/*.js", lambda route: route.abort())
    page = context.new_page()
    seen = {}
    for address in addresses(site, served):
        page.goto(address, wait_until="domcontentloaded")
        if found := page.evaluate(SEEN_THOUGH_HIDDEN):
            seen[address.removeprefix(served)] = found
    context.close()
    assert seen == {}
