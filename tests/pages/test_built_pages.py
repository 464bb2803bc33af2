"""The built pages as a reader without scripts gets them: forms, worked answers, links, all there and all sound."""

from collections import Counter
from urllib.parse import urljoin, urlsplit

from bs4 import BeautifulSoup, Tag

from calculators.asking.answering import Asking, answer, filled
from calculators.catalogue import catalogue
from calculators.faces.page.markup import together
from calculators.values.phrase import without_marks
from scripts.tools.places import SITE


def sections(built: dict[str, BeautifulSoup]) -> list[Tag]:
    found = [section for page in built.values() for section in page.select("section.calculator")]
    assert len(found) >= len(catalogue())
    return found


def test_every_calculator_stands_on_a_page_of_the_text(built):
    there = {
        section["data-calculator"]
        for path, page in built.items()
        if not path.startswith("/reference/")
        for section in page.select("section.calculator")
    }
    assert [name for name in catalogue() if name not in there] == []


def named(section: Tag, blank: Tag) -> bool:
    by_others = blank.get("aria-labelledby", "").split()
    return bool(
        blank.get("aria-label")
        or blank.find_parent("label")
        or (blank.get("id") and section.select_one(f'label[for="{blank["id"]}"]'))
        or (by_others and all(section.find(id=other) for other in by_others))
    )


def test_every_blank_has_its_name_and_those_of_a_sentence_are_filled_in(built):
    for section in sections(built):
        for blank in section.select("form.asked input:not([type=hidden]), form.asked select"):
            assert named(section, blank), blank
            assert blank.name == "select" or blank.get("type") == "checkbox" or blank.has_attr("value"), blank


def test_every_calculator_shows_the_worked_answer_to_what_stands_in_its_blanks(built):
    for section in sections(built):
        calculator = catalogue()[section["data-calculator"]]
        spoken = section.select_one(".answer .spoken")
        assert spoken and spoken.get_text(strip=True), calculator.name
        if section["data-given"] == "{}" and not section.find_parent(class_="walk"):
            asking = Asking({})
            expected = without_marks(filled(answer(calculator, asking).spoken, calculator, asking.ruler))
            assert spoken.get_text() == together(expected)


def test_nothing_waits_for_a_script(built):
    for path, page in built.items():
        text = page.select_one("article").get_text()
        assert "{{" not in text and "}}" not in text, path
        assert not page.select("article noscript"), path


def test_every_page_has_one_heading_a_title_a_description_and_its_language(built):
    for path, page in built.items():
        assert len(page.select("h1")) == 1, path
        assert page.title.get_text(strip=True) and page.html["lang"] == "en", path
        assert len(page.select_one('meta[name="description"]')["content"]) > 20, path
    descriptions = Counter(page.select_one('meta[name="description"]')["content"] for page in built.values())
    assert [text for text, count in descriptions.items() if count > 1] == []


def test_names_within_a_page_are_given_once(built):
    for path, page in built.items():
        counted = Counter(each["id"] for each in page.select("[id]"))
        assert [name for name, count in counted.items() if count > 1] == [], path


def test_every_link_leads_somewhere(built):
    broken, names = [], {path: {each["id"] for each in page.select("[id]")} for path, page in built.items()}
    for path, page in built.items():
        for link in page.select("a[href]"):
            address = urlsplit(urljoin(f"http://here{path}", link["href"]))
            if address.scheme not in ("http", "https") or address.path == path and not address.fragment:
                continue
            inside = address.hostname == "here" or address.hostname == "127.0.0.1"
            place = SITE / address.path.lstrip("/")
            if (
                inside
                and not (place.is_file() or (place / "index.html").is_file())
                or inside
                and address.fragment
                and address.path in built
                and address.fragment not in names[address.path]
            ):
                broken.append((path, link["href"]))
    assert broken == []
