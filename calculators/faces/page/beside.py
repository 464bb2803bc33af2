"""Two ways of making one thing beside each other: one slider takes both from step to step. Without a script, and on
paper, each stands there as it is before and after."""

import xml.etree.ElementTree as ET
from collections.abc import Mapping, Sequence
from copy import deepcopy

from calculators.asking.answering import Asking, answer
from calculators.asking.declaration import Calculator
from calculators.drawing.in_step import InStep
from calculators.drawing.picture import Picture, PictureSeries
from calculators.faces.page.markup import NOT_SEARCHED, element
from calculators.faces.page.step_list import player, view_of


def beside(
    calculator: Calculator, one: Asking, other: Asking, differ: tuple[Mapping[str, str], Mapping[str, str]]
) -> ET.Element:
    """Both, at one scale.

    one, other: what is asked of each. differ: what each does otherwise than the other: field → text.
    """
    if calculator.beside is None:
        raise ValueError(f"{calculator.name} has no drawings that can stand beside each other")
    first, second = (answer(calculator, asking).drawn_from for asking in (one, other))
    drawn = calculator.beside(first, second, one.ruler)
    titles = [_title(calculator, fields) for fields in differ]
    return element(
        "div",
        {"class": "in-step", **NOT_SEARCHED},
        element("p", {"class": "alike"}, f"Alike up to “{drawn.alike}”.") if drawn.alike else None,
        _states(drawn, titles),
        _played(drawn, titles),
    )


def _title(calculator: Calculator, fields: Mapping[str, str]) -> str:
    """What is made, by what it does its own way."""
    words = ", ".join(calculator.field(name).kind.choices[text] for name, text in fields.items())
    return f"{words[:1].upper()}{words[1:]}"


def _states(drawn: InStep, titles: list[str]) -> ET.Element:
    """How each is before and after."""
    return element(
        "div",
        {"class": "states halves"},
        *(
            element(
                "div",
                {"class": "half"},
                element("p", {"class": "made"}, title),
                *(_state(each) for each in (series.pictures[0], series.pictures[-1])),
            )
            for series, title in zip((drawn.one, drawn.other), titles)
        ),
    )


def _state(picture: Picture) -> ET.Element:
    style = "drawing cropped" if picture.crop else "drawing"
    return element("figure", {"class": style}, view_of(deepcopy(picture)), element("figcaption", None, picture.title))


def _played(drawn: InStep, titles: list[str]) -> ET.Element | None:
    """What takes both drawings from step to step; a script shows it and serves it."""
    both = (drawn.one, drawn.other)
    stages = [stage for number, series in enumerate(both) if (stage := _stage(series, number, drawn)) is not None]
    if len(stages) < len(both):
        return None
    _level(stages[0], stages[1])
    whole = all(picture.crop is None for series in both for picture in series.pictures)
    halves = (
        element(
            "div",
            {"class": "half"},
            element("p", {"class": "made"}, title),
            element("div", {"class": "stage"}, stage),
            element("p", {"class": "now"}),
        )
        for title, stage in zip(titles, stages)
    )
    return element(
        "div",
        {"class": "played read-whole" if whole else "played", "data-begins": f"{_last_unlike(stages)}", "hidden": True},
        element("div", {"class": "halves"}, *halves),
        player(len(drawn.stops) - 1),
    )


def _last_unlike(stages: Sequence[ET.Element]) -> int:
    """The last place at which the two can be told apart: there they are looked at first."""
    drawn = [
        [
            [ET.tostring(each, encoding="unicode") for each in steps[int(stop)]]
            for stop in stage.get("data-stops", "").split()
        ]
        for stage in stages
        for steps in [stage.findall("g[@class='step']")]
    ]
    unlike = [number for number, (one, other) in enumerate(zip(*drawn)) if one != other]
    return max(unlike, default=len(drawn[0]) - 1)


def _level(one: ET.Element, other: ET.Element) -> None:
    """Let what lies on a table lie as high in both drawings, where that is known."""
    tables = [float(each.get("data-table", "0")) for each in (one, other)]
    if not all(tables):
        return
    boxes = [[float(at) for at in each.get("viewBox", "").split()] for each in (one, other)]
    below = max(high - table for table, (*_, high) in zip(tables, boxes))
    for each, table, (left, _, wide, _) in zip((one, other), tables, boxes):
        top, high = table - max(tables), max(tables) + below
        each.set("viewBox", f"{left:g} {top:g} {wide:g} {high:g}")


def _stage(series: PictureSeries, number: int, drawn: InStep) -> ET.Element | None:
    """What is played of a series, with the drawing of every step in it. number: of the series, 0 or 1."""
    if series.played is None:
        return None
    made = deepcopy(series.played)
    made.set("data-stops", " ".join(str(stop[number]) for stop in drawn.stops))
    steps = [step for step in made.iterfind("g[@class='step']") if step.get("data-ahead") is None]
    for step, picture in zip(steps, series.pictures, strict=True):
        step.set("data-told", picture.svg.get("aria-label", ""))
        if step.get("data-drawn") is None:
            step.set("data-drawn", "")
            step.extend(deepcopy(list(picture.svg)))
    return made
