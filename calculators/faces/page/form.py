"""The asked half of a calculator on a page: a sentence with blanks to fill in, and the rarer questions behind
*more*."""

import json
import re
import xml.etree.ElementTree as ET
from collections.abc import Collection, Sequence

from calculators.asking.answering import Asking
from calculators.asking.declaration import Calculator, Field
from calculators.asking.rows import Rows, begins_with, rows_of
from calculators.faces.page.keyboard import keyboard
from calculators.faces.page.markup import LONGEST_LINE, Attributes, add, element
from calculators.values.kind import Kind

_BLANK = re.compile(r"\{(\w+)\}")


def form_html(calculator: Calculator, asking: Asking, place: str, settled: Collection[str] = ()) -> ET.Element:
    """The form of a calculator.

    place: a word that keeps the ids of this form apart from others on the page. settled: choices that its page makes,
    so that they are told and not asked.
    """
    sentence = element("p", {"class": "sentence"})
    for index, part in enumerate(_BLANK.split(calculator.question)):
        if index % 2 and part in settled:
            words = _chosen(calculator.field(part), asking)
            add(sentence, words if sentence.text else f"{words[:1].upper()}{words[1:]}")
        else:
            add(sentence, _blank(calculator.field(part), asking, place) if index % 2 else part)
    form = element(
        "form", {"class": "asked", "autocomplete": "off", "novalidate": True, "aria-label": calculator.title}, sentence
    )
    add(form, *(_refusal(name, place) for name in calculator.in_question if name not in settled))
    rare = [calculator.field(name) for name in calculator.beside_question if name not in settled]
    tables = [field for field in rare if _is_shown(field)]
    add(form, *(_row(field, asking, place) for field in tables))
    if behind := [field for field in rare if field not in tables]:
        rows = (_row(field, asking, place) for field in behind)
        add(form, element("details", {"class": "more"}, element("summary", None, f"More: {_named(behind)}"), *rows))
    add(form, *(_unasked(calculator.field(name), asking) for name in settled))
    add(
        form,
        _undo(),
        _meanings(calculator, place),
        element("p", {"class": "tools"}, _afresh(), " ", _carry(), " ", _begin_job()),
    )
    return form


def _named(fields: list[Field]) -> str:
    """The labels of fields inside a line of text, the first few of many."""
    labels = [field.label[0].lower() + field.label[1:] for field in fields]
    return ", ".join(labels if len(labels) < 5 else [*labels[:4], "and others"])


def _blank(field: Field, asking: Asking, place: str) -> ET.Element:
    """A blank inside the sentence: its name for those who cannot see the sentence, and the control."""
    return element(
        "label",
        {"class": "blank"},
        element("span", {"class": "blank-name"}, field.label),
        _control(field, asking, place),
    )


def _unasked(field: Field, asking: Asking) -> ET.Element:
    return element("input", {"type": "hidden", "name": field.name, "value": asking.text(field)})


def _chosen(field: Field, asking: Asking) -> str:
    return field.kind.choices[asking.text(field)]


def _row(field: Field, asking: Asking, place: str) -> ET.Element:
    if (rows := rows_of(field.kind)) is not None:
        return _rows(field, rows, asking, place)
    return element(
        "div",
        {"class": "field"},
        element("label", {"for": _id(place, field.name)}, field.label),
        _control(field, asking, place),
        element("p", {"class": "help", "id": _id(place, field.name, "help")}, field.help),
        _refusal(field.name, place),
    )


def _rows(field: Field, kind: Rows, asking: Asking, place: str) -> ET.Element:
    """A small table of blanks, one row for each thing asked about; buttons to add and take away rows wait for a
    script. On a phone each row is one line until it is tapped; a script serves that too."""
    heads = {
        column.name: element("th", {"scope": "col", "id": _id(place, field.name, column.name)}, column.label)
        for column in kind.columns
    }
    body = element("tbody")
    for row in kind.cells(asking.text(field)):
        add(body, _one_row(field, kind, [text or begins_with(each) for each, text in zip(kind.columns, row)], place))
    table = element(
        "table",
        {
            "class": "rows",
            "id": _id(place, field.name),
            "data-field": field.name,
            "data-line": json.dumps(kind.line, ensure_ascii=False),
            "data-one": kind.one.capitalize(),
            "data-called": json.dumps(_called_by_place(kind), ensure_ascii=False) if kind.called else None,
            "aria-describedby": _described_by(place, field.name),
        },
        element("caption", None, field.label),
        element("thead", None, _in_a_row(kind, heads, element("td"), element("td"), element("td"))),
        body,
    )
    one_more = element(
        "button",
        {"type": "button", "class": "one-more", "data-field": field.name, "hidden": True},
        f"One more {kind.one}",
    )
    return element(
        "div",
        {"class": "order"},
        table,
        one_more,
        None if _is_shown(field) else element("p", {"class": "help", "id": _id(place, field.name, "help")}, field.help),
        _refusal(field.name, place),
    )


def _is_shown(field: Field) -> bool:
    """Whether a field beside the sentence stands below it, and not behind *more*: rows that must be there."""
    return field.kind.control == "rows" and not field.optional


def _one_row(field: Field, kind: Rows, texts: list[str], place: str) -> ET.Element:
    opens = {"type": "button", "aria-expanded": "false"}
    cells = {
        column.name: _cell(column, kind, texts, text, place, field.name) for column, text in zip(kind.columns, texts)
    }
    rarer = [column for column in kind.columns if column.name in kind.rarer]
    leave_out = element(
        "button",
        {"type": "button", "class": "leave-out", "hidden": True, "aria-label": f"Leave out this {kind.one}"},
        "×",
    )
    return _in_a_row(
        kind,
        cells,
        element("td", None, element("button", {**opens, "class": "open-row"}, kind.in_one_line(texts))),
        element("td", None, element("button", {**opens, "class": "open-more"}, f"More: {_named(rarer)}")),
        element("td", None, leave_out),
    )


def _in_a_row(
    kind: Rows, cells: dict[str, ET.Element], line: ET.Element, more: ET.Element, end: ET.Element
) -> ET.Element:
    """A row of the table: its line, its cells, the way to the rarer ones, these, and its end."""
    for cell, style in ((line, "row-line"), (more, "row-more"), (end, "row-end")):
        cell.set("class", style)
    rarer = [cells[column.name] for column in kind.columns if column.name in kind.rarer]
    for cell in rarer:
        cell.set("class", "rarer")
    usual = [cell for cell in cells.values() if cell not in rarer]
    return element("tr", None, line, *usual, *([more, *rarer] if rarer else []), end)


def _cell(column: Field, kind: Rows, row: Sequence[str], text: str, place: str, table: str) -> ET.Element:
    """A blank under its column's name, or under the one that it has in this row."""
    label = kind.label(column, row)
    if column.name not in kind.called:
        named: Attributes = {"aria-labelledby": _id(place, table, column.name)}
        return element("td", {"data-label": label}, _blank_for(column.kind, text, named))
    return element("td", {"data-label": label, "class": "called"}, _blank_for(column.kind, text, {"aria-label": label}))


def _called_by_place(kind: Rows) -> dict[int, dict[str, str]]:
    """What columns are called by what the first of a row holds, each column by its place from 0."""
    return {
        at: {"": column.label, **kind.called[column.name]}
        for at, column in enumerate(kind.columns)
        if column.name in kind.called
    }


def _control(field: Field, asking: Asking, place: str) -> ET.Element:
    common: Attributes = {
        "id": _id(place, field.name),
        "name": field.name,
        "aria-describedby": _described_by(place, field.name),
        "data-taken": field.name in asking.taken and field.name not in asking.typed,
    }
    return _blank_for(field.kind, asking.text(field), common)


def _blank_for(kind: Kind, text: str, common: Attributes) -> ET.Element:
    """A list to choose from for the kinds that have few answers, else a line to write on."""
    if kind.control != "list":
        width = {"size": str(max(6, len(text) + 1))}
        return element(
            "input",
            {
                **common,
                **width,
                "type": "text",
                **keyboard(kind),
                "maxlength": str(LONGEST_LINE),
                "value": text,
                "placeholder": " ",
                "spellcheck": "false",
            },
        )
    choices = (element("option", {"value": key, "selected": key == text}, words) for key, words in kind.choices.items())
    return element("select", common, *choices)


def _described_by(place: str, name: str) -> str:
    return f"{_id(place, name, 'help')} {_id(place, name, 'refusal')}"


def _refusal(name: str, place: str) -> ET.Element:
    return element("p", {"class": "refusal", "id": _id(place, name, "refusal"), "data-field": name, "hidden": True})


def _meanings(calculator: Calculator, place: str) -> ET.Element:
    listed = element("dl")
    tables = [field for field in map(calculator.field, calculator.beside_question) if _is_shown(field)]
    for field in (*map(calculator.field, calculator.in_question), *tables):
        add(listed, element("dt", None, field.label), element("dd", {"id": _id(place, field.name, "help")}, field.help))
    return element("details", {"class": "meanings"}, element("summary", None, "What to measure"), listed)


def _undo() -> ET.Element:
    """The way back from the last change; its place is kept, so that nothing moves when a script shows it."""
    return element("button", {"type": "button", "class": "undo", "hidden": True}, "Undo")


def _afresh() -> ET.Element:
    return element("button", {"type": "button", "class": "afresh", "hidden": True}, "Back to the house’s numbers")


def _carry() -> ET.Element:
    return element("a", {"class": "carry", "hidden": True}, "Link that carries these numbers")


def _begin_job() -> ET.Element:
    return element("a", {"class": "begin-job", "hidden": True}, "Begin a job")


def _id(place: str, *parts: str) -> str:
    return "-".join((place, *parts))
