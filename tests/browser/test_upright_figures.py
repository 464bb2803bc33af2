"""A figure with a stem stands as upright as the figures beside it, in every form and weight that pages use."""

import io

import pytest
from PIL import Image
from playwright.sync_api import Page

FORMS = ("lnum", "tnum", "dnom", "onum")
STEMS = "145"
SHOW = """([figure, form, weight, lean]) => {
    const shown = Object.assign(document.createElement("div"), { id: "figure", textContent: figure });
    Object.assign(shown.style, { position: "fixed", zIndex: 9, inset: 0, font: `${weight} 500px Rosario`, color: "#000",
        background: "#fff", boxShadow: "0 0 0 900px #fff",
        fontFeatureSettings: `"${form}", "lnum" ${form === "onum" ? 0 : 1}`,
        transform: `skewX(${lean}deg)`, padding: "0 200px", lineHeight: "600px" });
    document.querySelector("#figure")?.remove();
    document.body.append(shown);
    return document.fonts.load(`${weight} 500px Rosario`).then((found) => found.length);
}"""


def lean(page: Page, figure: str, form: str, weight: int, leaning: int = 0) -> float:
    """How far a stem leans below its top, across for each length down; of its two sides the more upright counts."""
    assert page.evaluate(SHOW, [figure, form, weight, leaning])
    grey = Image.open(io.BytesIO(page.screenshot())).convert("L").point(lambda tone: 255 * (tone < 128))
    drawn = grey.crop(grey.getbbox())
    top, low = round(drawn.height * 0.22), round(drawn.height * 0.32)
    spans = [drawn.crop((0, row, drawn.width, row + 1)).getbbox() for row in (top, low)]
    return min(abs(spans[0][side] - spans[1][side]) for side in (0, 2)) / (low - top)


@pytest.mark.parametrize("weight", [400, 700])
def test_stems_of_figures_are_upright(page: Page, weight: int):
    page.set_viewport_size({"width": 900, "height": 700})
    page.goto("./corners/mitre/")
    leans = {(figure, form): lean(page, figure, form, weight) for figure in STEMS for form in FORMS}
    assert {each: round(by, 2) for each, by in leans.items() if by > 0.06} == {}
    assert all(lean(page, figure, "lnum", weight, leaning=-13) > 0.15 for figure in STEMS)
