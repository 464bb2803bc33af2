"""A walk on a page: one calculator after another, each showing where its numbers come from."""

import xml.etree.ElementTree as ET
from dataclasses import replace
from functools import partial
from typing import Any

from calculators.answering import Asking, written
from calculators.faces.answered import answered
from calculators.faces.job_in_hand import job_line, job_places
from calculators.faces.markup import add, element
from calculators.faces.shown import refused, shown
from calculators.faces.widget import section
from calculators.phrase import Phrase, say
from calculators.walk import Departure, Stop, Walk, go


def walk_on_page(walk: Walk, asking: Asking, place: str, home: str) -> ET.Element:
    """All steps of a walk with the house's numbers, and the places of the job it is filled in for.

    place: a word that keeps ids apart. home: the way from the page back to the top of the site.
    """
    whole = element("div", {"class": "walk", "data-walk": walk.name, "id": place}, job_line(home))
    stops = go(walk, {}, asking)
    for number, stop in enumerate(stops, start=1):
        here = f"{place}-{stop.calculator.name}"
        add(
            whole,
            element("h2", {"id": f"{here}-step"}, f"{number}. {stop.step.title}"),
            section(stop.calculator, stop.asking, here, {}, answered(stop.calculator, stop.answer, stop.asking, folded=True)),
        )
    add(whole, *job_places(len(stops) + 1, place))
    return whole


def walk_replies(walk: Walk, typed: dict[str, dict[str, str]], asking: Asking) -> dict[str, Any]:
    """What the browser shows for each step: calculator name → its reply."""
    return {stop.calculator.name: _reply(stop) for stop in go(walk, typed, asking)}


def _reply(stop: Stop) -> dict[str, Any]:
    if stop.waits_for:
        sentence = f"This waits for “{stop.waits_for}”, where a blank needs mending."
        return {"waits": sentence, "written": written(stop.calculator, stop.asking)}
    if stop.refusal:
        return refused(stop.calculator, stop.refusal, stop.asking)
    return shown(stop.calculator, replace(stop.answer, notes=(*map(partial(_departure, stop), stop.departures), *stop.answer.notes)), stop.asking, folded=True)


def _departure(stop: Stop, departure: Departure) -> Phrase:
    """That something is written by hand where the walk gives another value: meant, perhaps, but then both steps should be looked at."""
    field, ruler = stop.calculator.field(departure.name), stop.asking.ruler
    return say(
        "{label:text}: you wrote {written:text}, and “{title:text}” gives {given:text}. Empty the blank to take that over.",
        label=field.label, written=stop.asking.text(field), title=departure.title, given=field.kind.show(departure.value, ruler),
    )
