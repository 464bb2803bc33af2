"""Gauges as they leave the printer: the page printed to PDF by Chromium, and measured there to a tenth of a millimetre."""

import io

import pdfplumber
import pytest

MM = 25.4 / 72  # [mm] a PDF point
TENTH = 0.1
SHEETS = 2  # a mitre gauge and a hem gauge; what is drawn after them on the page is no gauge
SIZES = {"A4": (210, 297), "Letter": (215.9, 279.4)}


@pytest.fixture(scope="module", params=SIZES)
def sheets(request, browser, served):
    """The pages of the printed gauges that carry a gauge."""
    page = browser.new_page(base_url=served)
    page.goto("/corners/gauges/")
    printed = page.pdf(format=request.param, prefer_css_page_size=True)
    page.close()
    with pdfplumber.open(io.BytesIO(printed)) as pdf:
        assert (pdf.pages[0].width * MM, pdf.pages[0].height * MM) == pytest.approx(SIZES[request.param], abs=1)
        yield [page.lines for page in pdf.pages if page.lines][:SHEETS]


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
    """The house's corner: hems of 20 mm, so marks at 40 mm; trimmed 6 mm outside the line, 40 − 6·√2 mm from the corner."""
    lines = sheets[0]
    uprights = [line for line in lines if line["x1"] - line["x0"] < 0.1]
    side = min((line for line in uprights if (line["bottom"] - line["top"]) * MM > 40), key=lambda line: line["x0"])
    corner_x, corner_y = side["x0"], side["bottom"]
    ticks = [line for line in uprights if abs((line["bottom"] - line["top"]) * MM - 4) < TENTH and abs(line["bottom"] - corner_y) < 0.3]
    assert [(tick["x0"] - corner_x) * MM for tick in ticks] == pytest.approx([40], abs=TENTH)
    slanted = [line for line in lines if line["x1"] - line["x0"] > 1 and line["bottom"] - line["top"] > 1]
    assert any(abs((line["x1"] - corner_x) * MM - (40 - 6 * 2**0.5)) < TENTH for line in slanted)


def test_the_hem_gauge_is_as_long_as_it_says(sheets):
    assert holds(level(sheets[1]), 140)
