"""The steps of a construction as one list: each with its drawing, one command with its number, a line, and the reason
folded away."""

import re
import xml.etree.ElementTree as ET

from calculators.drawing.picture import Picture, PictureSeries
from calculators.faces.page.markup import NOT_SEARCHED, element
from calculators.values.phrase import figure_parts


def step_list(drawn: PictureSeries, key: ET.Element) -> ET.Element:
    """The list. key: of all its drawings."""
    listed = (_step(each) for each in drawn.pictures)
    what_lines_mean = element("details", {"class": "key"}, element("summary", None, drawn.key.title), key)
    whole = all(picture.crop is None for picture in drawn.pictures)  # each is read by its words, on paper too
    style = "steps in-order read-whole" if whole else "steps in-order"
    return element("div", {"class": style}, _played(drawn), what_lines_mean, element("ol", None, *listed))


def _played(drawn: PictureSeries) -> ET.Element | None:
    """What takes the drawing from step to step, behind a line to tap; a script shows it and serves it."""
    if drawn.played is None:
        return None
    return element(
        "details",
        {"class": "played", "hidden": True, **NOT_SEARCHED},
        element("summary", None, "See it made"),
        element("div", {"class": "stage"}, drawn.played),
        element("p", {"class": "now"}),
        player(len(drawn.played.findall("g[@class='step']")) - 1),
    )


def player(last: int) -> ET.Element:
    """The button and the slider that play. last: the number of the last place, counted from 0."""
    slider = {"type": "range", "min": "0", "max": str(last), "value": "0", "step": "1", "autocomplete": "off"}
    return element(
        "div",
        {"class": "player"},
        element("button", {"type": "button"}, "Play"),
        element("label", None, element("span", None, "Step"), element("input", slider)),
    )


def view_of(picture: Picture) -> ET.Element:
    """A step's drawing, cropped to what is to be seen of it where it is shown small."""
    if picture.crop:
        picture.svg.set("data-whole", picture.svg.get("viewBox", ""))
        picture.svg.set("viewBox", " ".join(f"{each:.1f}".removesuffix(".0") for each in picture.crop))
    return picture.svg


def _step(picture: Picture) -> ET.Element:
    told = picture.told
    if told is None:
        raise ValueError(f"“{picture.title}” is no step")
    command = (
        element("span", {"class": "number"}, text) if is_figure else text for text, is_figure in figure_parts(told.do)
    )
    name = "-".join(re.findall(r"\w+", picture.title.lower()))
    words = element(
        "div",
        {"class": "step-words"},
        element("p", {"class": "do"}, element("strong", None, *command)),
        element("p", None, told.line) if told.line else None,
        element("details", {"class": f"why {name}"}, element("summary", None, "Why"), element("p", None, told.why))
        if told.why
        else None,
    )
    figure = element("figure", {"class": "drawing", **NOT_SEARCHED}, view_of(picture))
    return element("li", {"class": "small" if picture.crop else "large"}, words, figure)
