"""What tests of built pages share."""

from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from tests.pages.built import pages


@pytest.fixture(scope="session")
def built(site: Path) -> dict[str, BeautifulSoup]:
    """Every page of the built site, by its path; nobody changes one."""
    return pages()
