"""The work ticket on paper: two pages whatever the order and the maker’s own words, with boxes to tick by hand."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.reader import WAKING, elsewhere, move, printed, reached
from tests.browser.work_ticket import TICKET

SMALLEST = 9.4  # [pt] of words; the numbers beside boxes are smaller
OF_A4 = {"width": 722, "height": 1000}  # [CSS px]


def test_on_paper_what_is_said_of_a_size_has_the_line_below_its_blanks(phone: Page):
    phone.locator('[name="7.width"]').fill("40.2")
    phone.locator('[name="7.width"]').blur()
    expect(phone.locator('[data-size="7.width"]')).to_contain_text("wider than", timeout=WAKING)
    phone.emulate_media(media="print")
    line = phone.locator(".size-line", has=phone.locator('[name="7.width"]'))
    whole, which, blank, said = (
        each.bounding_box()
        for each in (
            line,
            line.locator(".which"),
            line.locator('[name="7.width"]'),
            line.locator('[data-size="7.width"]'),
        )
    )
    phone.emulate_media(media="null")
    assert said["width"] > 0.6 * whole["width"] and said["y"] >= blank["y"] + blank["height"] - 1
    assert which["x"] + which["width"] <= blank["x"] and abs(which["y"] - blank["y"]) < blank["height"]


@pytest.mark.parametrize(("paper", "ruler", "check"), [("A4", "cm 1/10", "276 cm"), ("Letter", "in 1/16", "108 in")])
def test_it_prints_on_two_pages_with_the_check_mark(phone: Page, paper: str, ruler: str, check: str):
    phone.locator(".ruler-choice select").select_option(ruler)
    expect(phone.locator(".check-mark").first).to_contain_text(check, timeout=WAKING)
    with printed(phone, paper) as pdf:
        words = [page.extract_text() for page in pdf.pages]
        assert len(words) == 2
        assert f"last mark must read {check}" in words[0].replace("\n", " ")
        assert "Second fold" in words[1] and "Measured sizes" in words[1]
        assert words[1].splitlines()[1].startswith("Steps: This batch"), "the second page may lie alone"
        today = re.compile(r"The handbook’s numbers \d{1,2} [A-Z][a-z]+ 20\d\d$")
        assert all(today.search(page.splitlines()[0]) for page in words), "and either says of which day it is"
        assert {
            int(re.match(r"\d+", line)[0]) for line in words[1].splitlines() if re.match(r"\d+ ?[A-Z][a-z]", line)
        } >= {1, 2}
        assert "W width, L length, D 1 and D 2 from corner to corner" in words[1]
        small = {letter["text"] for letter in pdf.pages[1].chars if letter["size"] < SMALLEST}
        assert not small - set("0123456789 "), "too small to read beside the work"
        assert "At the machine" not in words[0] + words[1]


#: A box on paper against the words of the step beside it: [box side in mm, whether it lies on a title].
BOXES = """() => [...document.querySelectorAll(".ticket-step")].flatMap((step) => {
    const range = document.createRange();
    range.selectNodeContents(step.querySelector("h3"));
    const words = [...range.getClientRects()];
    return [...step.querySelectorAll(".box")].map((each) => {
        const box = each.getBoundingClientRect();
        const on = words.some((line) => line.right > box.left + 1 && line.left < box.right - 1 &&
            line.bottom > box.top + 1 && line.top < box.bottom - 1);
        return [(Math.min(box.width, box.height) * 25.4) / 96, on];
    });
})"""


@pytest.fixture(scope="module")
def sheet(browser: Browser, served: str) -> Iterator[Page]:
    """A page as wide as the text of an A4 page, for all orders."""
    page = elsewhere(browser, served, viewport=OF_A4)
    page.goto("./")
    yield page
    page.context.close()


@pytest.mark.parametrize(("pieces", "cloth"), [(1, ""), (24, "6 m"), (54, "16 m"), (90, "16 m"), (519, "84 m")])
def test_any_order_prints_on_two_pages_with_boxes_to_tick_by_hand(sheet: Page, pieces: int, cloth: str):
    move(sheet, "./batch/")
    reached(sheet.locator("[data-calculator=order] [name=ordered]")).fill(str(pieces))
    if cloth:
        reached(sheet.locator("[data-calculator=wash-test] [name=cloth_length]")).fill(cloth)
    move(sheet, TICKET)
    expect(sheet.locator(".ticket.is-live .order")).to_contain_text(re.compile(f"^{pieces} piece"), timeout=WAKING)
    for paper in ("A4", "Letter"):
        with printed(sheet, paper) as pdf:
            words = [each.extract_text() for each in pdf.pages]
            outside = [
                word["text"]
                for each in pdf.pages
                for word in each.extract_words()
                if word["x1"] > each.width or word["bottom"] > each.height or word["x0"] < 0
            ]
        assert len(words) == 2, paper
        assert outside == []
        assert "The maker’s manual of each tool" in words[0] and "Measured sizes" in words[1]
    sheet.emulate_media(media="print")
    found = sheet.evaluate(BOXES)
    sheet.emulate_media(media="null")
    assert min(side for side, _ in found) >= 4 - 0.05
    assert not any(on for _, on in found), "no box lies on a title"


@pytest.fixture(scope="module")
def job(sheet: Page) -> None:
    """The batch on that page is kept as a job."""
    move(sheet, "./batch/")
    sheet.get_by_role("button", name="Keep this as a job").click()
    expect(sheet.locator(".job-in-hand [name=name]")).to_be_visible(timeout=WAKING)
    move(sheet, "./")


@pytest.mark.usefixtures("job")
@pytest.mark.parametrize(
    ("figure", "name"),
    [
        ("five spools of the grey", "Long table"),
        ("five spools of the grey thread from the second shelf " * 8, "Long table, again " * 4),
        ("M" * 400, "N" * 80),
    ],
)
def test_own_figures_stand_on_the_printed_ticket_and_leave_it_on_two_pages(sheet: Page, figure: str, name: str):
    """However long her own words are; on the screen they stand whole, and the page is no wider than a phone."""
    move(sheet, "./batch/")
    expect(sheet.locator(".job-in-hand [name=name]")).to_be_visible(timeout=WAKING)
    reached(sheet.locator("[data-calculator=order] [name=ordered]")).fill("54")
    reached(sheet.locator("[data-calculator=wash-test] [name=cloth_length]")).fill("16 m")
    for blank, text in {
        "input[name=name]": name,
        "input[name=cloth]": name,
        "textarea[name=thread]": figure,
        "textarea[name=time]": f"two days {figure}",
        "textarea[name=cost]": f"seven hundred {figure}",
    }.items():
        reached(sheet.locator(f".jobs {blank}")).fill(text)
        sheet.locator(f".jobs {blank}").blur()
    sheet.wait_for_timeout(1000)  # longer than a text rests before it is kept
    move(sheet, TICKET)
    expect(sheet.locator("[data-setting=sum-cost]")).to_contain_text(f"seven hundred {figure.strip()}", timeout=WAKING)
    for paper in ("A4", "Letter"):
        with printed(sheet, paper) as pdf:
            words = [each.extract_text() for each in pdf.pages]
        assert len(words) == 2, paper
        assert (
            "The maker’s manual of each tool" in words[0]
            and "two days" in words[0]
            and (figure[:20] in words[0] or " " not in figure)
        )
    sheet.set_viewport_size({"width": 390, "height": 844})
    assert sheet.evaluate("document.documentElement.scrollWidth") == 390
    assert sheet.evaluate(
        "[...document.querySelectorAll('.settings dd')].every((each) => each.scrollHeight <= each.clientHeight + 1)"
    ), "nothing is cut off on the screen"
    sheet.set_viewport_size(OF_A4)
