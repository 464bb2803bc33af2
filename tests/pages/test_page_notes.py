"""Where a value comes from stands at the foot of its page, once; a small mark leads there and back."""

import re
from collections import Counter
from copy import copy
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from scripts.pages.markers import PRACTICE_WORDS, PageMarkers, with_rules

DOCS = Path(__file__).parents[2] / "docs"
PAGES = sorted(DOCS.rglob("*.md"))


def shown(markdown: str) -> BeautifulSoup:
    page = PageMarkers(home="../")
    return BeautifulSoup(page.put_back(page.take_out(markdown)), "html.parser")


def address(page: Path) -> str:
    """The path in the site of a page of the text."""
    name = page.relative_to(DOCS).with_suffix("")
    folder = (name.parent if name.name == "index" else name).as_posix()
    return "/" if folder == "." else f"/{folder}/"


def faults(page: BeautifulSoup) -> list[str]:
    """What is wrong with the marks and notes of a page."""
    ids = Counter(each["id"] for each in page.select("[id]"))
    found = [f"{name} stands twice" for name, times in ids.items() if times > 1 and re.match(r"note", name)]
    for link in page.select("sup.noted a, .page-notes .way-back"):
        target = page.find(id=link["href"].removeprefix("#"))
        if target is None:
            found.append(f"{link['href']} leads nowhere")
        if not link.get("aria-label"):
            found.append(f"{link} has no name")
    marks = page.select("sup.noted a")
    back = Counter(link["href"] for link in page.select(".page-notes .way-back"))
    found += [f"no way back to {mark['id']}" for mark in marks if back[f"#{mark['id']}"] != 1]
    notes = [each.get_text() for each in page.select(".page-notes > details > ol > li")]
    found += [f"“{note}” is noted twice" for note, times in Counter(map(plain, notes)).items() if times > 1]
    text = copy(page.select_one("article") or page)
    for outside in text.select(".page-notes, .ticket-sheet, .reference, .calculator, em"):  # em: where it is explained
        outside.decompose()
    if PRACTICE_WORDS in text.get_text():
        found.append("the words stand in the text")
    return found


def plain(note: str) -> str:
    return re.sub(r"\s[↑a-z0-9 ]+$", "", note)


def test_what_is_noted_twice_has_one_note_with_two_ways_back():
    page = shown('Leave {{ value "1/8 in" school-sewing }}. Press. {{ practice }} Turn {{ value "1 cm" practice }}.')
    assert [mark.get_text() for mark in page.select("sup.noted")] == ["1", "2", "2"]
    notes = page.select(".page-notes li")
    assert [len(note.select(".way-back")) for note in notes] == [1, 2]
    assert "Common practice, no source." in notes[1].get_text()
    assert notes[0].select_one("a.cite")["href"] == "../reference/sources/#school-sewing"
    assert faults(page) == []


def test_a_mark_stands_close_to_its_word_and_says_what_it_is():
    page = shown('Press. {{ practice }}\nLeave {{ value "1/8 in" school-sewing }}.')
    text = str(page).partition("<section")[0]
    assert 'Press.<sup class="noted"' in text and '</span><sup class="noted"' in text
    assert page.select_one("sup.noted a")["aria-label"] == f"Note 1: {PRACTICE_WORDS}"


def test_a_page_without_marks_has_no_notes():
    assert not shown("Press, lift, set down.").select(".page-notes")


@pytest.mark.parametrize(
    "spoil",
    (
        lambda page: page.select_one(".way-back").decompose(),
        lambda page: page.select_one(".page-notes li").decompose(),
        lambda page: page.select_one(".page-notes li").insert_after(page.new_tag("li", id="note-1")),
        lambda page: page.append(f"Press ({PRACTICE_WORDS})."),
        lambda page: page.select_one("sup.noted a").attrs.pop("aria-label"),
    ),
)
def test_a_planted_fault_is_found(spoil):
    page = shown("Press. {{ practice }} Leave it. {{ practice }}")
    assert faults(page) == []
    spoil(page)
    assert faults(page)


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(DOCS)))
def test_every_mark_of_a_built_page_leads_to_its_note_and_back(built, page):
    made = built[address(page)]
    asked_for = len(re.findall(r"\{\{ *(?:practice|cite|value)\b", with_rules(page.read_text("utf-8"))))
    assert len(made.select("sup.noted")) == asked_for
    assert faults(made) == []


def test_care_on_the_ticket_that_is_common_practice_is_marked_and_the_mark_leads_to_what_is_said_of_it(built):
    page = built["/house/ticket/"]
    marked = {step["data-step"] for step in page.select(".ticket-step") if step.select(".care .of-care")}
    assert {"wash", "straighten", "mark", "press"} <= marked and not {"turn", "hem", "pin"} & marked
    (place,) = {link["href"] for link in page.select(".of-care a")}
    assert "° are common practice" in " ".join(page.select_one(f"h2{place} ~ p").get_text().split())


def test_pages_have_notes(built):
    assert sum(bool(built[address(page)].select(".page-notes")) for page in PAGES) > 20
