"""A batch on paper: its record, each answer on the sheet of its question."""

import pytest
from playwright.sync_api import Page

from tests.browser.reader import choose_ruler, one_window, printed, says

pytestmark = one_window

#: Of every step: its heading and the first words of its answer.
STEPS = """[...document.querySelectorAll(".walk section.calculator")].map((step) =>
    [step.closest(".walk-step").querySelector("h2").textContent, step.querySelector(".answer .spoken").textContent])"""


def squeezed(text: str) -> str:
    """Without the blanks that a line's end may add, and with fractions as they are typed."""
    return "".join(text.replace("\N{FRACTION SLASH}", "/").split())


@pytest.mark.parametrize(
    ("paper", "ruler", "spoken"), [("A4", "cm 1/10", "40 cm by 40 cm"), ("Letter", "in 1/16", "15 3/4 in")]
)
def test_a_batch_prints_each_answer_on_the_sheet_of_its_question(page: Page, paper: str, ruler: str, spoken: str):
    page.goto("./batch/")
    choose_ruler(page, ruler)
    says(page.locator("section[data-calculator=finished-size]"), spoken)
    with printed(page, paper) as pdf:
        sheets = [squeezed(sheet.extract_text()) for sheet in pdf.pages]
    assert len(sheets) <= 8
    assert "Howitwasworkedout" not in "".join(sheets)
    for question, answer in page.evaluate(STEPS):
        (on,) = (sheet for sheet in sheets if squeezed(question) in sheet)
        assert squeezed(answer)[:8] in on, question


def test_the_hazards_word_of_a_caution_at_the_head_of_a_sheet_is_clear_of_the_line_above(page: Page):
    page.goto("./projects/cushion-covers/")
    with printed(page, "A4") as pdf:
        words = pdf.pages[1].extract_words()
    (head,) = (word for word in words if word["text"] == "Cushion" and word["top"] < 60)
    (hazard,) = (word for word in words if word["text"] == "Fire")
    assert hazard["top"] - head["bottom"] > 6, "points"
