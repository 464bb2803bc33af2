"""On every page with numbers of its own calculator in the text: while its blanks are typed into, all those numbers are
of one calculation."""

import json
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

from bs4 import BeautifulSoup
from playwright.sync_api import Browser, expect

from calculators.asking.answering import Asking
from calculators.asking.declaration import Calculator, InvalidInput
from calculators.batch.follows import following
from calculators.batch.in_hand import measured
from calculators.catalogue import calculator_named
from calculators.faces.page.sentence_number import worked
from calculators.values.kinds import Count, Length
from tests.browser.reader import WAKING, blank, calculator, elsewhere, forget_typed, refusal

#: Everything that the numbers of one calculation showed, together, each time any of them changed.
WATCHED = """([calculator, given]) => {
    const mine = [...document.querySelectorAll("article [data-number]")].filter((each) => {
        const wanted = JSON.parse(each.dataset.number);
        return wanted.calculator === calculator && JSON.stringify(wanted.given) === given;
    });
    const all = () => mine.map((each) => each.textContent.replaceAll("\\u00a0", " "));
    window.seen = [all()];
    window.shownNow = all;
    const watch = new MutationObserver(() => seen.push(all()));
    for (const each of mine) watch.observe(each, { childList: true, characterData: true, subtree: true });
    return mine.map((each) => each.dataset.number);
}"""


def mixed_pages(site: Path) -> Iterator[tuple[str, str, str]]:
    """(page, calculator, what the page fills in) of every page whose text has live numbers of a calculator that stands
    in it."""
    for page in sorted(site.rglob("*.html")):
        text = page.read_text(encoding="utf-8")
        if "data-number=" not in text or "data-calculator=" not in text:
            continue
        parts = BeautifulSoup(text, "html.parser")
        for section in parts.select("section.calculator"):
            own = (section["data-calculator"], json.loads(section["data-given"]))
            numbers = [json.loads(each["data-number"]) for each in parts.select("[data-number]")]
            if not section.find_parent(class_="walk") and any(
                (each["calculator"], each["given"]) == own for each in numbers
            ):
                yield (
                    f"./{page.parent.relative_to(site).as_posix()}/",
                    own[0],
                    json.dumps(own[1], separators=(",", ":")),
                )


def other_values(name: str, given: dict[str, str]) -> Iterator[tuple[str, str]]:
    """Blanks of a calculator, each with a text that can stand there and changes what comes of it."""
    asked = calculator_named(name)
    before = worked(name, given, Asking({}))
    for field in (
        field
        for field in asked.fields
        if field.name not in given and field.name in asked.in_question and isinstance(field.kind, (Length, Count))
    ):
        value = Asking(given).value(field)
        for part in (Fraction(11, 10), Fraction(9, 10)):
            text = str(value + 1) if isinstance(field.kind, Count) else f"{float(value * part):.1f} mm"
            try:
                if worked(name, {**given, field.name: text}, Asking({})) != before:
                    yield field.name, text
                    break
            except InvalidInput:
                continue


def known(asked: Calculator, name: str) -> bool:
    """Whether a field holds a measure in hand, as it is or whatever other blanks say."""
    return bool(asked.field(name).names_in_hand)


def as_worked_out(numbers: list[str], typed: dict[str, str]) -> list[str]:
    """What numbers of a page come to in CPython; a measure typed into one blank stands in every other that follows
    it."""
    wanted = [json.loads(each) for each in numbers]
    asked = calculator_named(wanted[0]["calculator"])
    measures = {asked.field(name).names_in_hand[0]: text for name, text in typed.items() if known(asked, name)}
    own = Asking({**wanted[0]["given"], **typed})
    as_written = {name: Asking({name: text}) for name, text in measures.items()}
    typed = {**typed, **{name: measures[found] for name, found in measured(asked, own, measures).items()}}
    followed = following(asked, own, as_written)
    typed = {
        **{name: asked.field(name).kind.write_exactly(value, own.ruler) for name, value in followed.items()},
        **typed,
    }
    return [
        worked(each["calculator"], {**each["given"], **typed, **each.get("but", {})}, Asking({}))[
            each["result"]
        ].replace("\u00a0", " ")
        for each in wanted
    ]


def test_on_every_page_the_numbers_of_its_calculation_change_together_or_wait_together(
    browser: Browser, served: str, site: Path
):
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844})
    pages = list(mixed_pages(site))
    assert len(pages) >= 8
    for path, name, given in pages:
        (one, first), (other, second) = [*other_values(name, json.loads(given))][:2]
        page.goto(path)
        numbers = page.evaluate(WATCHED, [name, given])
        section = calculator(page, name)

        def shown(typed, numbers=numbers):
            page.wait_for_function(
                "(wanted) => JSON.stringify(shownNow()) === JSON.stringify(wanted)",
                arg=as_worked_out(numbers, typed),
                timeout=WAKING,
            )

        blank(section, one).fill(first)
        shown({one: first})
        assert all(
            each in (as_worked_out(numbers, {}), as_worked_out(numbers, {one: first})) for each in page.evaluate("seen")
        ), path
        blank(section, one).fill("84 bananas")
        expect(refusal(section, one)).to_be_visible()
        page.evaluate("() => seen.splice(0)")
        blank(section, other).fill(second)
        page.wait_for_timeout(400)
        assert all(each == as_worked_out(numbers, {one: first}) for each in page.evaluate("seen")), (
            f"{path}: they wait while a blank needs mending"
        )
        page.evaluate("() => seen.splice(0)")
        blank(section, one).fill(first)
        both = {one: first, other: second}
        shown(both)
        assert all(each == as_worked_out(numbers, both) for each in page.evaluate("seen")), path
        forget_typed(page)  # what was typed stands on the next page of the same calculator
    page.context.close()
