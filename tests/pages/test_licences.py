"""Everything that the site ships and others made stands on one page with the text of its licence."""

import json
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from scripts.pages import shipped
from scripts.pages.shipped import MissingLicence


def test_every_package_and_every_part_of_the_theme_has_a_text(site: Path):
    page = BeautifulSoup((site / "reference/licences/index.html").read_text(), "html.parser")
    listed = {part.summary.get_text().split()[0]: part.pre.get_text() for part in page.select("article details")}
    assert set(shipped.npm_packages()) | {"Python", "PyYAML", "mkdocs-material", "lunr", "rxjs"} <= set(listed)
    assert {"Rosario", "Brygada"} <= set(listed)
    assert "Mozilla Public License Version 2.0" in listed["pyodide"]
    assert "PYTHON SOFTWARE FOUNDATION LICENSE VERSION 2" in listed["Python"]
    for name, text in listed.items():
        assert "icen" in text or "Permission" in text, name


def test_the_search_does_not_find_it(site: Path):
    found = json.loads((site / "search/search_index.json").read_text())["docs"]
    assert len(found) > 100
    assert [each["location"] for each in found if "licences" in each["location"]] == []


def test_a_package_without_a_text_stops_the_build(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    (tmp_path / "idb").mkdir()
    with pytest.raises(MissingLicence, match="idb"):
        shipped.of_npm("idb", tmp_path)
    monkeypatch.setattr(shipped, "_sources", lambda: [("../node_modules/new-thing/index.js", "export default 1")])
    with pytest.raises(MissingLicence, match="new-thing"):
        shipped.shipped()
