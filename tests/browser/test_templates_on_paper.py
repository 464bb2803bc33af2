"""Templates as they leave the printer, measured in the PDF to a tenth of a millimetre."""

import re

from tests.browser.reader import blank, calculator, printed, says
from tests.browser.test_gauges_on_paper import MM, holds, level


def test_a_quarter_of_a_round_cloth_is_glued_from_four_sheets(page):
    """A table of 20 cm, 10 cm of drop and 2 × 0.5 cm of hem: half of the cut is 210 mm, 164 mm of it on the first sheet
    and, 10 mm of them overlapping, 56 mm on the next."""
    page.goto("./cut/templates/")
    section = calculator(page, "template")
    section.locator('[name="article"]').select_option("tablecloth-round")
    for field, text in {"size": "20 cm", "by": "20 cm"}.items():
        blank(section, field).fill(text)
    blank(section, "measures").fill("Drop 10 cm, First turn 0.5 cm, Hem depth 0.5 cm")
    says(section, re.compile("4 sheets of A4"))
    with printed(page, "A4") as pdf:
        sheets = [each.lines for each in pdf.pages]
        assert len(sheets) == 4
        words = [each.dedupe_chars().extract_text() for each in pdf.pages]
    for lines in sheets:
        assert holds(level(lines), 100) and holds(level(lines), 101.6)
    assert holds(level(sheets[0]), 164) and holds(level(sheets[1]), 56)
    upright = [(line["bottom"] - line["top"]) * MM for line in sheets[0] if line["x1"] - line["x0"] < 0.1]
    assert holds(upright, 208)
    assert "sheet 2" in words[0] and "sheet 3" in words[0] and "sheet 4" in words[1]
