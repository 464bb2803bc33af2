"""Where the device sets the colours, the lines of a drawing, the seam above an answer and the arrows of folds are still
seen, and a pressed button is told from the others."""

from playwright.sync_api import Browser

from tests.browser.reader import elsewhere

LOOK = """() => {
  const of = (what, name) => getComputedStyle(document.querySelector(what))[name];
  return { lines: [".edge", ".cut", ".mark"].map((each) => of(`svg.to-scale ${each}`, "stroke")),
    text: of("svg.to-scale text", "fill"), flaw: of("svg.to-scale .flaw-ground", "fill"),
    seams: [".calculator > .answer", ".next-page"].map((each) => of(each, "borderTopStyle")),
    arrows: [...document.querySelectorAll("article summary")].map((each) => getComputedStyle(each, "::before"))
        .filter(({ content }) => content !== "none").map(({ backgroundColor }) => backgroundColor),
           pressed: of('.sizes [aria-pressed="true"]', "backgroundColor"),
             other: of('.sizes [aria-pressed="false"]', "backgroundColor"), page: of("body", "backgroundColor") };
}"""


def test_lines_and_pressed_buttons_are_seen(browser: Browser, served: str):
    for scheme in ("light", "dark"):
        page = elsewhere(browser, served, forced_colors="active", color_scheme=scheme)
        page.goto("./plan/lay-plan/")
        page.locator(".sizes button").first.wait_for()
        look = page.evaluate(LOOK)
        page.context.close()
        assert set(look["lines"]) == {look["text"]} and look["text"] != look["page"]
        assert look["flaw"] == look["page"]
        assert look["pressed"] != look["other"]
        assert set(look["arrows"]) == {look["text"]}
        assert set(look["seams"]) == {"dashed"}


def test_the_words_of_a_large_button_are_seen(browser: Browser, served: str):
    page = elsewhere(browser, served, forced_colors="active")
    page.goto("./house/ticket/")
    colours = page.locator("button.first").evaluate_all(
        "them => them.map((it) => getComputedStyle(it)).map((it) => [it.forcedColorAdjust, it.color, "
        "it.backgroundColor])"
    )
    page.context.close()
    assert colours and all(adjust == "none" and words != ground for adjust, words, ground in colours)
