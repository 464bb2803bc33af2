"""Gauges as they leave the printer: the page printed to PDF by Chromium, and measured there to a tenth of a
millimetre."""

import re

import pytest
from playwright.sync_api import expect

from calculators.drawing.gauge import OVERLAP, PAPERS
from tests.browser.reader import WAKING, blank, calculator, elsewhere, printed, says

MM = 25.4 / 72  # [mm] a PDF point
TENTH = 0.1
SHEETS = 2  # a mitre gauge and a hem gauge; nothing else of the page is printed
SIZES = {"A4": (210, 297), "Letter": (215.9, 279.4)}


@pytest.fixture(scope="module", params=SIZES)
def sheets(request, browser, served):
    """The pages of the printed gauges, each with a gauge and nothing else."""
    page = elsewhere(browser, served)
    page.goto("./corners/gauges/")
    with printed(page, request.param) as pdf:
        page.context.close()
        assert (pdf.pages[0].width * MM, pdf.pages[0].height * MM) == pytest.approx(SIZES[request.param], abs=1)
        assert all(len(page.extract_text().splitlines()) < 10 for page in pdf.pages)
        yield [page.lines for page in pdf.pages]


def level(lines):
    """Lengths of the level lines [mm]."""
    return [(line["x1"] - line["x0"]) * MM for line in lines if abs(line["bottom"] - line["top"]) < 0.1]


def holds(lengths, wanted):
    return any(abs(length - wanted) < TENTH for length in lengths)


def test_every_sheet_has_both_check_bars_in_true_size(sheets):
    assert len(sheets) == SHEETS
    for lines in sheets:
        assert holds(level(lines), 100) and holds(level(lines), 101.6)


def test_the_mitre_gauge_has_its_marks_and_its_trim_line(sheets):
    """The house's corner: hems of 20 mm, so marks at 40 mm; trimmed 6 mm outside the line, 40 − 6·√2 mm from the
    corner."""
    lines = sheets[0]
    uprights = [line for line in lines if line["x1"] - line["x0"] < 0.1]
    side = min((line for line in uprights if (line["bottom"] - line["top"]) * MM > 40), key=lambda line: line["x0"])
    corner_x, corner_y = side["x0"], side["bottom"]
    ticks = [
        line
        for line in uprights
        if abs((line["bottom"] - line["top"]) * MM - 4) < TENTH and abs(line["bottom"] - corner_y) < 0.3
    ]
    assert [(tick["x0"] - corner_x) * MM for tick in ticks] == pytest.approx([40], abs=TENTH)
    slanted = [line for line in lines if line["x1"] - line["x0"] > 1 and line["bottom"] - line["top"] > 1]
    assert any(abs((line["x1"] - corner_x) * MM - (40 - 6 * 2**0.5)) < TENTH for line in slanted)


def test_the_hem_gauge_is_as_long_as_it_says(sheets):
    assert holds(level(sheets[1]), 140)


LARGE = {"hem_1": "15 cm", "hem_2": "9 cm", "seam_allowance": "6 mm"}
MARKS = (180, 300)  # [mm] twice the hem of the other edge
BAR_BELOW = 11  # [mm] from the gauge's lowest line to the first bar


@pytest.mark.parametrize(("paper", "size"), [("a4", "A4"), ("letter", "Letter")])
def test_a_large_gauge_is_glued_from_sheets_that_overlap(browser, served, paper, size):
    """Laid with their overlap, the printed sheets carry both marks where they belong, and bars on every one."""
    page = elsewhere(browser, served)
    page.goto("./corners/gauges/")
    gauge = calculator(page, "mitre-gauge")
    for name, text in LARGE.items():
        blank(gauge, name).fill(text)
    gauge.locator('[name="paper"]').select_option(paper)
    says(gauge, re.compile(rf"4 sheets of {size}"))
    with printed(page, size) as pdf:
        page.context.close()
        *sheets, _hem_gauge = pdf.pages
        found = [page.lines for page in sheets]
        assert [re.search(r"Sheet (\d) of 4", page.extract_text()).group(1) for page in sheets] == list("1234")
    ticks = []
    for number, lines in enumerate(found):
        assert holds(level(lines), 100) and holds(level(lines), 101.6)
        bar = max(
            (
                line
                for line in lines
                if abs(line["bottom"] - line["top"]) < 0.1 and abs((line["x1"] - line["x0"]) * MM - 100) < TENTH
            ),
            key=lambda line: line["x0"],
        )
        left, foot = bar["x0"], bar["top"] - (BAR_BELOW / MM)  # the sheet's own corner: bars begin below it
        column, row = number % 2, number // 2
        across, up = (step * (of - OVERLAP) for step, of in zip((column, row), PAPERS[paper]))
        ticks += [
            ((line["x0"] - left) * MM + across, (foot - line["bottom"]) * MM + up) for line in lines if is_tick(line)
        ]
    wanted = [(MARKS[0], 0), (0, MARKS[1])]
    for place in wanted:
        assert any(abs(x - place[0]) < TENTH and abs(y - place[1]) < TENTH for x, y in ticks), (place, ticks)


def is_tick(line):
    """A mark: 4 mm long, level or upright."""
    width, height = (line["x1"] - line["x0"]) * MM, (line["bottom"] - line["top"]) * MM
    return (abs(width - 4) < TENTH and height < TENTH) or (abs(height - 4) < TENTH and width < TENTH)


def test_one_gauge_is_printed_alone_and_the_whole_page_where_it_is_asked_for(page):
    page.goto("./corners/gauges/")
    page.evaluate("void (print = () => (window.printed = (window.printed ?? 0) + 1))")
    page.get_by_role("button", name="Print these sheets alone").click()
    with printed(page, "A4") as pdf:
        (only,) = pdf.pages
        assert holds(level(only.lines), 100) and "How" not in only.extract_text()
    page.get_by_role("button", name="Print the whole page").click()
    with printed(page, "A4") as pdf:
        assert "What goes wrong" in "".join(sheet.extract_text() for sheet in pdf.pages)
    assert page.evaluate("window.printed") == 2
    with printed(page, "A4") as pdf:
        assert len(pdf.pages) == SHEETS


def test_no_sheet_is_printed_while_a_number_is_refused(page):
    page.goto("./corners/gauges/")
    gauge = calculator(page, "mitre-gauge")
    page.emulate_media(media="print")
    assert gauge.locator(".gauge-sheet").first.is_visible()
    page.emulate_media(media="screen")
    blank(gauge, "hem_1").fill("abc")
    expect(gauge.locator(".answer.is-old")).to_be_visible(timeout=WAKING)
    page.emulate_media(media="print")
    expect(gauge.locator(".gauge-sheet").first).to_be_hidden()
    expect(gauge.get_by_text("Correct the marked box")).to_be_visible()
