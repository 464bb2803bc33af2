"""The answered half of a calculator on a page: spoken answer, drawing and notes; behind lines to tap marks, measures,
tables, and how it was worked out."""

import json
import xml.etree.ElementTree as ET
from base64 import b64encode
from collections.abc import Iterator
from dataclasses import replace

from calculators.asking.answering import Asking, filled
from calculators.asking.bibliography import source_named
from calculators.asking.declaration import Answer, Calculator, FieldText, Offer, Onward
from calculators.asking.rows import rows_of
from calculators.drawing.picture import SIZES, Picture, PictureSeries, pictures_of
from calculators.drawing.small import made_small
from calculators.faces.page.all_measures import all_measures, both, results_in_columns
from calculators.faces.page.markup import NOT_SEARCHED, Content, element, fold
from calculators.faces.page.step_list import step_list
from calculators.faces.page.steps_left_out import steps_left_out
from calculators.faces.page.two_figures import clash_notes
from calculators.values.measure import Ruler
from calculators.values.phrase import Phrase, figure_parts, without_marks

TAKE_UP = "Change it so"
SHEET, TO_TABLE = "sheet", "to-table"
TALL = 1.3  # heights to a width: such a drawing has a sheet of paper to itself


def answer_html(calculator: Calculator, answer: Answer, asking: Asking) -> list[ET.Element]:
    """What stands in a calculator's answer, in reading order: the sentence, the drawing, what to do next; all else
    waits behind lines to tap."""
    ruler = asking.ruler
    answer = replace(
        answer, notes=(*clash_notes(calculator, asking), *steps_left_out(calculator, asking), *answer.notes)
    )
    drawn = figure(calculator, answer, ruler) if calculator.drawing else None
    is_tall = drawn is not None and "tall" in (drawn.get("class") or "").split()
    parts = [
        _heading(answer),
        element("p", {"class": "spoken"}, *spoken_parts(calculator, answer, ruler)),
        drawn,
        _steps(calculator, answer, ruler),
        _edges(calculator, answer, ruler),
        *notes(calculator, answer, ruler),
        _marks(calculator, answer, ruler),
        all_measures(calculator, answer, ruler),
        *_listed(_to_the_table(calculator, answer, ruler), is_tall),
        _files(calculator, answer, ruler),
        _working(calculator, answer, ruler),
    ]
    return [part for part in parts if part is not None]


def _heading(answer: Answer) -> ET.Element | None:
    """What stands over the answer on paper: the order's name and the day, or lines to write them on. A script, which
    knows the open job and the day, has a head for every sheet instead."""
    if answer.headed is None:
        return None
    name, day = (
        element("span", {"class": kind}, text)
        for kind, text in (("to-write name", answer.headed), ("to-write day", ""))
    )
    return element("p", {"class": "headed"}, "Order ", name, " Date ", day)


def spoken_parts(calculator: Calculator, answer: Answer, ruler: Ruler) -> list[Content]:
    parts = figure_parts(filled(answer.spoken, calculator, ruler))
    return [element("strong", {"class": "figure"}, text) if is_figure else text for text, is_figure in parts]


def spoken_text(calculator: Calculator, answer: Answer, ruler: Ruler) -> str:
    """The spoken answer as plain text."""
    return without_marks(filled(answer.spoken, calculator, ruler))


def figure(calculator: Calculator, answer: Answer, ruler: Ruler) -> ET.Element:
    """The drawing with its caption; drawings that follow one another as numbered steps, and their key."""
    if calculator.drawing is None:
        raise ValueError(f"{calculator.name} has no drawing")
    drawn = calculator.drawing(answer.drawn_from, ruler)
    if isinstance(drawn, Picture):
        return _drawing(drawn)
    if isinstance(drawn, tuple):
        return element("div", {"class": "drawings"}, *map(_drawing, drawn))
    if all(each.told for each in drawn.pictures):
        return step_list(drawn, _drawing(drawn.key))
    steps = (element("li", None, _step(each)) for each in drawn.pictures)
    alone = _print_alone("Print these sheets alone") if any(map(_is_true_size, drawn.pictures)) else None
    return element(
        "div",
        {"class": "steps", **NOT_SEARCHED},
        element("ol", None, *steps),
        alone,
        element("figure", {"class": "drawing"}, _key(drawn.key.svg)),
    )


def _steps(calculator: Calculator, answer: Answer, ruler: Ruler) -> ET.Element | None:
    """How it is made, step by step, where the calculator tells that beside its drawing."""
    if calculator.steps is None:
        return None
    drawn = calculator.steps(answer.drawn_from, ruler)
    made = step_list(drawn, _drawing(drawn.key))
    for key in made.iterfind("details[@class='key']"):
        key.set("class", "key of-steps")  # the drawing has one of its own
    return made


def _edges(calculator: Calculator, answer: Answer, ruler: Ruler) -> ET.Element | None:
    """Its hems and seams, each cut through, behind a line to tap."""
    drawn = calculator.edges(answer.drawn_from, ruler) if calculator.edges else ()
    return fold("edges", "Hems and seams in section", *map(_drawing, drawn)) if drawn else None


def small_figure(calculator: Calculator, answer: Answer, ruler: Ruler) -> ET.Element:
    """The drawing alone, or the first of several, without words, for where there is no room for them."""
    drawn = calculator.drawing(answer.drawn_from, ruler) if calculator.drawing else None
    if drawn is None or isinstance(drawn, PictureSeries):
        raise ValueError(f"{calculator.name} has no single drawing")
    return element("figure", {"class": "drawing small", **NOT_SEARCHED}, made_small(pictures_of(drawn)[0]))


def _print_alone(words: str) -> ET.Element:
    """A button that prints only what goes to the table; a script shows it and serves it."""
    return element("p", {"hidden": True}, element("button", {"type": "button", "class": "sheets"}, words))


def _drawing(picture: Picture) -> ET.Element:
    caption = element("figcaption", None, picture.caption or f"{picture.title}, to scale")
    if not picture.hint:
        return element("figure", {"class": "drawing", **NOT_SEARCHED}, picture.svg, caption, _key(picture.key))
    return element(
        "figure",
        {"class": "drawing tall" if _is_tall(picture) else "drawing", **NOT_SEARCHED},
        _sizes(),
        element("div", {"class": "frame"}, picture.svg, _for_screens(picture)),
        _hint(picture),
        caption,
        _key(picture.key),
    )


def _key(svg: ET.Element | None) -> ET.Element | None:
    """What the lines of a drawing are, behind a line to tap."""
    return None if svg is None else fold("key", "Key", svg)


def _is_tall(picture: Picture) -> bool:
    _, _, width, height = map(float, picture.svg.get("viewBox", "").split())
    return height > TALL * width


def _for_screens(picture: Picture) -> ET.Element | None:
    """The drawing as it is laid out for screens, beside the one for phones and paper; a style sheet shows one of
    them."""
    if picture.wide is not None:
        picture.wide.set("class", f"{picture.wide.get('class')} on-screens")
    return picture.wide


def _sizes() -> ET.Element:
    """Buttons that enlarge a drawing; a script shows them and serves them."""
    buttons = (
        element(
            "button",
            {"type": "button", "data-size": str(size), "aria-pressed": "true" if size == 1 else "false"},
            f"{size}×",
        )
        for size in SIZES
    )
    return element(
        "div", {"class": "sizes", "role": "group", "aria-label": "Size of the drawing", "hidden": True}, *buttons
    )


def _hint(picture: Picture) -> ET.Element:
    """Where the words about what is pointed at are shown."""
    return element(
        "p",
        {"class": "told", "role": "status", "hidden": True},
        f"Tap {picture.hint}, or go from one to the next with the arrow keys.",
    )


def _step(picture: Picture) -> ET.Element:
    """A drawing under the words that say what to do."""
    words = element("figcaption", None, element("strong", None, f"{picture.title}."), " ", picture.caption)
    return element(
        "figure", {"class": "drawing gauge-sheet" if _is_true_size(picture) else "drawing"}, words, picture.svg
    )


def _is_true_size(picture: Picture) -> bool:
    return "true-size" in picture.svg.get("class", "").split()


def notes(calculator: Calculator, answer: Answer, ruler: Ruler) -> list[ET.Element]:
    if not answer.notes:
        return []
    listed = (
        element("li", None, filled(note, calculator, ruler), *_to_press(note, calculator)) for note in answer.notes
    )
    return [element("ul", {"class": "notes"}, *listed)]


def _to_press(note: Phrase, calculator: Calculator) -> Iterator[ET.Element | str]:
    if isinstance(note, Offer):
        yield from _offer(note, calculator)
    elif isinstance(note, Onward):
        yield from _onward(note)


def _onward(onward: Onward) -> Iterator[ET.Element | str]:
    """A link that takes numbers along to another page; a script shows it and knows the way there."""
    yield " "
    yield element(
        "a",
        {
            "class": "onward",
            "hidden": True,
            "data-page": onward.page,
            "data-calculator": onward.calculator,
            "data-carries": json.dumps(dict(onward.carries)),
            "data-adds": onward.adds,
        },
        onward.does,
    )


def _offer(offer: Offer, calculator: Calculator) -> Iterator[ET.Element | str]:
    """A button that puts what is offered into the blanks; a script shows it and serves it."""
    sets = [[each.field, each.text, each.row, _column(calculator, each)] for each in offer.sets]
    yield " "
    yield element(
        "button",
        {
            "type": "button",
            "class": "offer",
            "hidden": True,
            "data-sets": json.dumps(sets),
            "data-does": offer.does,
            "aria-label": f"{TAKE_UP}: {offer.does}",
        },
        TAKE_UP,
    )


def _column(calculator: Calculator, setting: FieldText) -> int | None:
    """Where in its row a cell stands, from 0."""
    rows = rows_of(calculator.field(setting.field).kind)
    if setting.row is None or rows is None:
        return None
    return [each.name for each in rows.columns].index(setting.column)


def _marks(calculator: Calculator, answer: Answer, ruler: Ruler) -> ET.Element | None:
    """Marks to set out one after another, numbered; None where there are none."""
    listed = [(each, answer.results[each.name]) for each in calculator.results if each.kind.layout == "marks"]
    told = [(result, marks) for result, marks in listed if marks]
    if not told:
        return None
    labels = [result.label for result, _ in told]
    return fold(
        "set-out",
        (both(*labels) if len(labels) == 2 else None) or ", ".join(labels),
        *(
            element(
                "div",
                {"class": "marks"},
                element("p", {"class": "caption"}, f"{result.label}. {result.meaning}"),
                element("ol", None, *(element("li", None, mark) for mark in result.kind.marks(marks, ruler))),
            )
            for result, marks in told
        ),
    )


def _to_the_table(calculator: Calculator, answer: Answer, ruler: Ruler) -> list[ET.Element]:
    """The tables that go to the work table, each behind its name."""
    made = []
    for result in calculator.results:
        if not (result.sheet or result.to_table):
            continue
        shown = results_in_columns(result, answer, ruler)
        if shown is not None:
            kind = SHEET if result.sheet else TO_TABLE
            shown.set("class", f"wide {kind}")
            made.append(fold(f"{kind} {result.name.replace('_', '-')}", result.label, shown))
    return made


def _listed(tables: list[ET.Element], all_of_them: bool) -> list[ET.Element]:
    """The tables; those from the first that begins a sheet of its own in one group.

    all_of_them: whether all that go to the table are in it, since the drawing before them fills its sheet.
    """
    begins = (SHEET, TO_TABLE) if all_of_them else (SHEET,)
    start = next((at for at, each in enumerate(tables) if (each.get("class") or "").split()[0] in begins), None)
    if start is None:
        return tables
    return [*tables[:start], element("div", {"class": "listed"}, *tables[start:])]


def _files(calculator: Calculator, answer: Answer, ruler: Ruler) -> ET.Element | None:
    """Links that save what the calculator offers as files, which work without any script, and a button that prints what
    goes to the table."""
    if not calculator.files or not answer.settled:
        return None
    texts = [b64encode(each.text(answer.drawn_from, ruler).encode()).decode() for each in calculator.files]
    links = [
        element(
            "a",
            {"download": each.name, "href": f"data:{each.media};charset=utf-8;base64,{text}"},
            each.label,
        )
        for each, text in zip(calculator.files, texts)
    ]
    printed = [
        element(
            "p", {"hidden": True}, element("button", {"type": "button", "class": "sheets"}, "Print the cutting list")
        )
        for each in calculator.results
        if each.sheet
    ]
    saved = element("ul", None, *(element("li", None, link) for link in links))
    return element("div", {"class": "files"}, *printed, fold("saved", "Save as a file", saved))


def _working(calculator: Calculator, answer: Answer, ruler: Ruler) -> ET.Element | None:
    if not answer.working and not calculator.sources:
        return None
    steps = [element("p", None, filled(step, calculator, ruler)) for step in answer.working]
    sources = [element("li", None, source_named(key).cited) for key in calculator.sources]
    listed = [element("p", None, "Sources:"), element("ul", {"class": "sources"}, *sources)] if sources else []
    return fold("working", "How it was worked out", *steps, *listed)
