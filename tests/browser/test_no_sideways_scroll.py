"""No page scrolls sideways, no blank, choice or button sticks out of its box, no table is cut off, no full stop stands
alone and nothing empty takes room, from a narrow phone to a computer's screen; `test_every_page.py` looks at each."""

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.reader import WAKING, profile, reached

WINDOWS = tuple((width, 844) for width in (320, 390, 600, 640, 820, 1280))  # [CSS px]
FAULTS = """() => {
  const root = document.documentElement, found = [];
  const named = (it) => `${it.localName}.${it.className.baseVal ?? it.className}`;
  const scrolls = (it) => {
    for (let up = it.parentElement; up; up = up.parentElement)
      if (up !== root && up !== document.body && getComputedStyle(up).overflowX !== "visible") return true;
  };
  if (root.scrollWidth > innerWidth) found.push("the page scrolls sideways");
  for (const it of document.querySelectorAll("article *")) {
    const box = it.getBoundingClientRect();
    if (!box.width || !it.checkVisibility() || scrolls(it)) continue;
    if (box.right > innerWidth + 1) found.push(`${named(it)} leaves the window`);
    if (!it.matches("input, select, button, textarea")) continue;
    const around = it.closest("section, article").getBoundingClientRect();
    if (box.right > around.right + 1.5 || box.left < around.left - 1.5)
      found.push(`${named(it)} sticks out of its box`);
  }
  for (const table of document.querySelectorAll("article table")) {
    if (!table.checkVisibility()) continue;
    for (let box = table; box !== document.body; box = box.parentElement) {
      if (getComputedStyle(box).overflowX === "visible" || box.scrollWidth <= box.clientWidth + 1) continue;
      const isTold = box.tabIndex >= 0 && box.getAttribute("aria-label");
      const words = table.textContent.trim().replace(/\\s+/g, " ").slice(0, 40);
      if (getComputedStyle(box).overflowX !== "auto" || !isTold)
        found.push(`a table is cut off by ${named(box)}: ${words}`);
    }
    for (const cell of table.querySelectorAll("th, td")) {
      if (cell.checkVisibility() && cell.clientWidth > 1 && cell.closest("thead, tbody").clientWidth > 1 &&
        cell.scrollWidth > cell.clientWidth + 1 && getComputedStyle(cell).display !== "inline")
        found.push(`a cell is cut off: ${cell.textContent.trim().slice(0, 40)}`);
    }
  }
  for (const it of document.querySelectorAll("article [role=status]:empty")) {
    const { marginTop, marginBottom } = getComputedStyle(it);
    if (it.checkVisibility() && it.offsetHeight + parseFloat(marginTop) + parseFloat(marginBottom) > 1)
      found.push(`${named(it)} says nothing and takes room`);
  }
  for (const blank of document.querySelectorAll(".sentence .blank")) {
    const after = blank.nextSibling, control = blank.querySelector("input, select");
    if (!control?.checkVisibility() || after?.nodeType !== Node.TEXT_NODE || !/^[.,;:)?]/.test(after.data)) continue;
    const mark = document.createRange();
    mark.setStart(after, 0);
    mark.setEnd(after, 1);
    if (mark.getBoundingClientRect().top >= control.getBoundingClientRect().bottom - 2)
      found.push(`“${after.data[0]}” stands alone below ${control.name}`);
  }
  return found;
}"""


def faults(page: Page) -> list[str]:
    page.evaluate("document.querySelectorAll('article details').forEach((each) => { each.open = true; })")
    found = []
    for width, height in WINDOWS:
        page.set_viewport_size({"width": width, "height": height})
        found += [f"at {width}: {fault}" for fault in page.evaluate(FAULTS)]
    return found


@pytest.fixture(scope="module")
def reader(browser: Browser, served: str):
    context = profile(browser, served, reduced_motion="reduce")
    yield context.new_page()
    context.close()


def test_the_longest_choice_of_a_row_stays_in_its_box(reader: Page):
    reader.goto("./plan/lay-plan/")
    rows = reader.locator("table.rows[data-field=pieces] select")
    for number in range(rows.count()):
        reached(rows.nth(number))
        longest = rows.nth(number).evaluate(
            "it => [...it.options].reduce((a, b) => (a.text.length >= b.text.length ? a : b)).value"
        )
        rows.nth(number).select_option(longest)
    assert faults(reader) == []


def test_the_house_method_stays_in_its_box(reader: Page):
    reader.goto("./house/")
    expect(reader.locator(".house-method select").first).to_be_visible(timeout=WAKING)
    assert faults(reader) == []


def test_a_planted_wide_box_is_found(reader: Page):
    reader.goto("./cut/marking/")
    reader.evaluate(
        "document.querySelector('article').append(Object.assign(document.createElement('button'), { style: 'width: "
        "1400px' }))"
    )
    assert faults(reader)


@pytest.mark.parametrize(
    ("page", "plant", "told"),
    [
        (
            "./plan/sizes/",
            "document.querySelector('.md-typeset__scrollwrap table').style.whiteSpace = 'nowrap'",
            "a table is cut off",
        ),
        (
            "./plan/sizes/",
            "document.querySelector('article table').style.cssText = 'table-layout: fixed; width: 100px; display: "
            "table'",
            "a cell is cut off",
        ),
        (
            "./plan/pieces/",
            "const blank = document.querySelector('.sentence .blank'); blank.style.display = 'block'; "
            "blank.after('.');",
            "stands alone",
        ),
        (
            "./batch/",
            "document.querySelector('article').append(Object.assign(document.createElement('p'), { role: 'status', "
            "style: 'min-height: 2em' }))",
            "takes room",
        ),
    ],
)
def test_a_planted_fault_of_each_kind_is_found(reader: Page, page: str, plant: str, told: str):
    reader.goto(page)
    assert not any(told in fault for fault in faults(reader))
    reader.evaluate(f"() => {{ {plant} }}")
    assert any(told in fault for fault in faults(reader))


CUT_OFF = """() => {
  const pen = document.createElement("canvas").getContext("2d");
  return [...document.querySelectorAll("article select")].filter((it) => it.checkVisibility()).flatMap((it) => {
    const style = getComputedStyle(it), [option] = it.selectedOptions;
    pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
    const room = it.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
    return option && pen.measureText(option.text).width > room + 1 ? [option.text] : [];
  });
}"""


@pytest.mark.parametrize("width", [390, 1280])
def test_what_is_chosen_in_a_row_of_an_order_can_be_read_whole(reader: Page, width):
    reader.set_viewport_size({"width": width, "height": 844})
    reader.goto("./plan/lay-plan/")
    reader.wait_for_selector("table.rows.live")  # its rows fold once the script is there
    for each in reader.locator("table.rows tbody tr select").all():
        reached(each)
    reader.evaluate("document.querySelectorAll('article details').forEach((each) => { each.open = true; })")
    assert reader.evaluate(CUT_OFF) == []
    reader.evaluate(
        "[...document.querySelectorAll('table.rows td select')]"
        ".find((each) => each.selectedOptions[0].text.length > 9).style.width = '2em'"
    )
    assert reader.evaluate(CUT_OFF), "a choice without room is found"
