"""The pages of the built site, read."""

from urllib.parse import urlsplit
from xml.etree import ElementTree

from bs4 import BeautifulSoup

from scripts.tools.places import ADDRESS_FILE, SITE


def pages() -> dict[str, BeautifulSoup]:
    """Every page that the site map names, by its path in the site."""
    below = urlsplit(ADDRESS_FILE.read_text()).path  # the site may be built for a folder of a host
    found = ElementTree.parse(SITE / "sitemap.xml").iterfind(".//{*}loc")
    names = ["/" + urlsplit(name.text).path.removeprefix(below) for name in found]
    return {
        name: BeautifulSoup((SITE / name.lstrip("/") / "index.html").read_text("utf-8"), "html.parser")
        for name in names
    }
