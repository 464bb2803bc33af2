"""The words in every drawing stand apart from each other and on their sheet, at the house's numbers and at odd ones.

All drawings are laid into one page of the site, where its own letters and sizes hold, and measured there.
"""

from collections.abc import Iterator
from functools import cache

from playwright.sync_api import Browser

from calculators.articles import articles
from calculators.asking.answering import Asking, answer
from calculators.asking.declaration import Calculator, InvalidInput
from calculators.catalogue import catalogue
from calculators.drawing.at_the_table import WORKS
from calculators.drawing.machine_row import ROWS
from calculators.faces.page.answer_html import figure
from calculators.faces.page.markup import html
from calculators.trade.corners.comparison import VARIANTS
from calculators.trade.corners.constructions import CONSTRUCTIONS
from calculators.trade.sections.edges import EDGES
from calculators.trade.stitches.hand import STITCHES
from tests.browser.reader import elsewhere

HEMS = (
    {"hem_1": "34 mm", "hem_2": "21 mm", "angle": "104", "turn": "7 mm"},
    {"hem_1": "1 3/8 in", "hem_2": "1 3/8 in", "angle": "72", "turn": "3/8 in"},
)
WIDER = (
    {"hem_1": "34 mm", "hem_2": "34 mm", "angle": "104", "turn": "7 mm"},
    {"hem_1": "1 3/8 in", "hem_2": "1 3/8 in", "angle": "115", "turn": "3/8 in"},
)
ODD = {
    "at-the-table": (
        {"piece_width": "4 cm", "piece_length": "2.7 m", "layers": "31", "folded_length": "173 cm", "skew": "11 cm"},
        {"piece_width": "13 5/8 in", "piece_length": "1 1/16 in", "layers": "1", "extra_length": "0", "skew": "0"},
    ),
    "binding": (
        {"cut": "straight", "bound_edge": "31.7 m", "binding_width": "7 mm"},
        {"cut": "bias", "bound_edge": "137 in", "binding_width": "1 1/8 in", "layers": "double"},
        {"cut": "spiral", "bound_edge": "9 m", "binding_width": "7 mm"},
        {"cut": "spiral", "bound_edge": "91 in", "piece_width": "53 1/8 in", "piece_length": "13 3/8 in"},
    ),
    "corner-bulk": WIDER,
    "corner-steps": HEMS,
    "curtains": (
        {
            "rod": "3.17 m",
            "drop": "64 cm",
            "curtains": "1",
            "pattern_repeat": "64 cm",
            "cloth_width": "137 cm",
            "side_hem": "2.7 cm",
        },
        {"rod": "31 3/8 in", "drop": "142 5/8 in", "curtains": "3", "cloth_width": "53 3/8 in"},
        {"rod": "20 m", "drop": "40 cm", "curtains": "1", "lower_hem": "1.3 cm", "heading": "0"},
        {"rod": "30 cm", "drop": "20 m", "curtains": "2", "pattern_repeat": "3 m"},
    ),
    "edge-steps": tuple(
        {"edge": edge, "hem": hem, "turn": "3 mm", "edge_stitch": "1.5 mm", "seam_allowance": seam}
        for edge in EDGES
        for hem, seam in (("6 mm", "1/8 in"), ("7.7 cm", "3.1 cm"))
    ),
    "even-spacing": (
        {"marked_edge": "9.37 m", "about_apart": "31 mm"},
        {"things": "bands", "marked_edge": "91 3/8 in", "each_width": "1 1/8 in", "about_apart": "3 in"},
        {"things": "gathers", "marked_edge": "3.1 m", "gathered_to": "37 cm"},
    ),
    "finished-size": (
        {"width": "31.7 cm", "length": "140 cm", "hem_top": "7 cm"},
        {"width": "72 3/8 in", "length": "15 1/16 in"},
    ),
    "gauge-finder": tuple({name: text for name, text in hems.items() if name != "turn"} for hems in HEMS),
    "label-text": (
        {"fibres": "linen | 100", "change_width": "−3", "change_length": "−4.8"},
        {"fibres": "polyester | 33.3; cotton | 33.4; viscose | 33.3", "finished_width": "15 3/8 in"},
    ),
    "lay-plan": (
        {
            "cloths": "White two-layer cotton, row 2 | 132 cm | 4.6 m | 1 | no",
            "pieces": "Napkin | 46 cm | 46 cm | 18 | no",
        },
        {
            "cloths": "Linen | 138 cm | 11 m | 1 | no",
            "pieces": "Napkin | 7 cm | 9 cm | 30 | yes; Runner | 31 cm | 173 cm | 4 | no",
        },
        {"cloths": "Remnant | 60 cm | 41 cm | 1 | no", "pieces": "Mat | 13 5/8 in | 9 in | 2 | yes"},
    ),
    "machine-row": (
        {"stitch_seam": "1.4 mm", "edge_stitch": "7 mm", "lap": "7 mm"},
        {"stitch_seam": "5/32 in", "stitch_hem": "3/16 in", "edge_stitch": "1/32 in", "lap": "1 1/8 in"},
    ),
    "mitre-gauge": HEMS,
    "mitre-marks": (
        *HEMS,
        *({"hem_1": "30 mm", "hem_2": "30 mm", "angle": angle} for angle in ("45", "60", "120", "135")),
    ),
    "pieces-from-cloth": (
        {"cloth_width": "138 cm", "cloth_length": "9 m", "piece_width": "13 cm", "piece_length": "47 cm"},
        {"cloth_width": "54 in", "cloth_length": "1 yd", "piece_width": "13 3/8 in", "piece_length": "9 in"},
    ),
    "pointed-end": (
        {"runner_width": "34.7 cm", "point_length": "1.3 m"},
        {"runner_width": "15 3/8 in", "point_length": "1 1/16 in"},
    ),
    "stitch-count": (
        {"finished_width": "31.7 cm", "stitch_hem": "1.4 mm"},
        {"finished_width": "15 3/8 in", "stitch_hem": "3/16 in", "row_in": "1/8 in"},
    ),
    "stitch-path": ({"stitch_length": "1.7 mm"}, {"stitch_length": "1 1/8 in"}),
    "template": (
        {"article": "mat-bordered", "size": "41 cm", "by": "11 3/8 in", "paper": "letter"},
        {"article": "bolster", "size": "45 cm", "by": "39 cm"},
    ),
    "thread-and-needle": ({"thread_number": "18"}, {"thread_number": "300"}),
    "usable-cloth": (
        {"layers": "2", "folded_length": "4.3 m", "full_width": "90 cm"},
        {"full_width": "60 in", "folded_length": "1 yd", "layers": "1"},
    ),
    "wash-test": (
        {"before_length": "37.4 cm", "after_length": "31.6 cm", "before_width": "135 cm", "after_width": "135.4 cm"},
        {"before_length": "14 3/8 in", "after_length": "13 5/8 in"},
    ),
    "whole-order": (
        {"lines": "napkin | 11 | 31 cm | 47 cm; cushion-piped | 3 | 37 cm | 61 cm", "cloths": "Half linen | 137 cm"},
        {
            "lines": "curtain-lined | 2 | 1.9 m | 83 in; pot-holder | 9",
            "cloths": "Linen | 59 in; Lining | 55 in; Wadding | 90 cm",
        },
    ),
}
MEASURE = """() => [...document.querySelectorAll('figure[data-of]')].flatMap((figure) => {
  const svg = [...figure.querySelectorAll('svg')].find((each) => each.checkVisibility());
  const [begins, over, width, height] = svg.getAttribute('viewBox').split(' ').map(Number);
  const there = svg.getScreenCTM().inverse();
  const words = [...svg.querySelectorAll('text')].filter((text) => text.checkVisibility()).map((text) => {
    const { x, y, width, height } = text.getBBox();
    const here = there.multiply(text.getScreenCTM());
    const corners = [[x, y + 0.2 * height], [x + width, y + 0.2 * height], [x, y + 0.8 * height],
        [x + width, y + 0.8 * height]].map(([x, y]) => new DOMPoint(x, y).matrixTransform(here));
    const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
    return { says: text.textContent, left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys),
        low: Math.max(...ys) };
  });
  const strays = words.filter((each) => each.left < begins - 2 || each.right > begins + width + 2 ||
    each.top < over - 2 || each.low > over + height + 2).map((each) => `“${each.says}” leaves its sheet`);
  const meet = (a, b) => a.left < b.right && b.left < a.right && a.top < b.low && b.top < a.low;
  const clashes = words.flatMap((a, i) => words.slice(i + 1).filter((b) => meet(a, b))
    .map((b) => `“${a.says}” lies on “${b.says}”`));
  return [...strays, ...clashes].map((fault) => `${figure.dataset.of}: ${fault}`);
})"""


def jobs(calculator: Calculator) -> Iterator[dict[str, str]]:
    """What is drawn of a calculator: at the house's numbers and at two odd jobs, every way that it knows."""
    for given in ({}, *(() if calculator.name in articles() else ODD[calculator.name])):
        if calculator.name == "corner-steps":
            yield from ({**given, "way": way} for way in CONSTRUCTIONS)
        elif calculator.name == "corner-bulk":
            yield from ({**given, "shown": shown} for shown in VARIANTS)
        elif calculator.name == "at-the-table":
            yield from ({**given, "work": work} for work in WORKS)
        elif calculator.name == "machine-row":
            yield from ({**given, "row": row} for row in ROWS)
        elif calculator.name == "stitch-path":
            yield from ({**given, "stitch": stitch} for stitch in STITCHES)
        elif calculator.name == "mitre-gauge":
            yield from ({**given, "gauge": gauge} for gauge in ("mitre", "hem"))
        else:
            yield given


@cache  # the same for both windows
def drawings() -> str:
    return "".join(_each_drawing())


def _each_drawing() -> Iterator[str]:
    for calculator in catalogue().values():
        if not calculator.drawing:
            continue
        for given in jobs(calculator):
            for ruler in ("cm", "in"):
                asking = Asking(given, wanted_ruler=ruler)
                try:
                    drawn = figure(calculator, answer(calculator, asking), asking.ruler)
                except InvalidInput:
                    continue  # some ways cannot be made with some measures
                figures = [drawn] if drawn.tag == "figure" else list(drawn.iter("figure"))
                for number, each in enumerate(figures, 1):
                    each.set("data-of", f"{calculator.name} {given} on the {ruler} ruler, drawing {number}")
                yield html(drawn)


def test_no_words_lie_on_each_other(browser: Browser, served: str, width: int):
    """A drawing may be laid out anew for a screen: what is shown at this width is measured."""
    page = elsewhere(browser, served, viewport={"width": width, "height": 844})
    page.goto("./corners/mitre/")
    page.evaluate(
        "(all) => { document.querySelector('article').innerHTML = `<section class='calculator'><div "
        "class='answer'>${all}</div></section>`; }",
        drawings(),
    )
    page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
    page.evaluate("document.fonts.ready")
    faults = page.evaluate(MEASURE)
    planted = page.evaluate("""() => {
      const word = [...document.querySelectorAll('figure[data-of] svg text')]
        .find((text) => text.checkVisibility() && text.getBBox().width > 0);
      word.after(word.cloneNode(true));
    }""") or page.evaluate(MEASURE)
    page.context.close()
    assert faults == []
    assert len(planted) == 1
