"""Every page of the site, opened in a browser: nothing goes against the policy, nothing leaves the site."""

from pathlib import Path
from xml.etree import ElementTree

from playwright.sync_api import Page


def addresses(site: Path, served: str) -> list[str]:
    """Every page that the site map names."""
    names = ElementTree.parse(site / "sitemap.xml").iterfind(".//{*}loc")
    found = [name.text for name in names]
    assert len(found) > 5 and all(address.startswith(served) for address in found)
    return found


def test_every_page_keeps_to_the_policy(page: Page, site: Path, served: str):
    for address in [*addresses(site, served), f"{served}/no-such-page/"]:
        page.goto(address)
        assert page.locator("h1").count() == 1
