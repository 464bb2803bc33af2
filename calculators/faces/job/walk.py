"""A walk on a page: one calculator after another, each showing where its numbers come from."""

import xml.etree.ElementTree as ET
from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from typing import Any

from calculators.asking.answering import Asking, written
from calculators.asking.usual_cloth import WAYS, for_cloth
from calculators.batch.in_hand import own_in_walk
from calculators.batch.walk import Departure, StepResult, Walk, go
from calculators.faces.job.in_hand import job_line, job_places, step_of_walk
from calculators.faces.page.answer_html import answer_html, spoken_parts
from calculators.faces.page.markup import Content, add, element
from calculators.faces.page.reply import answer_reply, invalid_reply
from calculators.faces.page.widget import section, unanswered
from calculators.trade.pieces import further_length
from calculators.values.phrase import Phrase, say

MEND = "A blank needs mending."
WAITS = "This waits for “{title}”, where a blank needs mending."


def walk_on_page(walk: Walk, asking: Asking, place: str, home: str) -> ET.Element:
    """All steps of a walk with the house's numbers, and the places of the job it is filled in for.

    place: a word that keeps ids apart. home: the way from the page back to the top of the site.
    """
    whole = element("div", {"class": "walk", "data-walk": walk.name, "id": place}, job_line(home))
    step_results = go(walk, {}, asking)
    for number, step_result in enumerate(step_results, start=1):
        here = f"{place}-{step_result.calculator.name}"
        told = element("p", {"class": "told-first"}, step_result.step.told) if step_result.step.told else None
        asked = section(
            step_result.calculator,
            step_result.asking,
            here,
            {},
            _in_answer(step_result),
            own=own_in_walk(step_result.step),
        )
        heading = element("h2", {"id": f"{here}-step"}, f"{number}. {step_result.step.title}")
        add(
            whole,
            step_of_walk(heading, element("span", {"class": "step-answer"}, *_in_short(step_result)), told, asked),
        )
    add(whole, job_places(len(step_results) + 1, place))
    return whole


def _in_short(step_result: StepResult) -> list[Content]:
    """What stands beside the title of a step: its answer in a sentence; a script keeps it so."""
    if step_result.answer:
        return spoken_parts(step_result.calculator, step_result.answer, step_result.asking.ruler)
    return [MEND if step_result.refusal else WAITS.format(title=step_result.waits_for)]


def _in_answer(step_result: StepResult) -> list[ET.Element]:
    if step_result.answer:
        return answer_html(step_result.calculator, step_result.answer, step_result.asking)
    if step_result.refusal:
        return unanswered(step_result.calculator, step_result.refusal, step_result.asking)
    return [element("p", {"class": "trouble"}, WAITS.format(title=step_result.waits_for))]


def walk_replies(walk: Walk, typed: dict[str, dict[str, str]], asking: Asking, cloth: str = "") -> dict[str, Any]:
    """What the browser shows for each step: calculator name → its reply; ``choices``: what a list of the step now
    offers.

    cloth: as the batch names it; empty for the one that the method uses most.
    """
    step_results = go(walk, typed, replace(asking, method=for_cloth(asking.method, cloth)))
    made = {
        step_result.calculator.name: _reply(
            _counted_on_the_order(step_result, step_results),
            (*_of_the_cloth(step_result, cloth), *_on_the_order(step_result, step_results)),
        )
        for step_result in step_results
    }
    step, name = walk.kind_in
    asked = next(step_result.calculator for step_result in step_results if step_result.calculator.name == step).field(
        name
    )
    made[step]["choices"] = {name: [*map(list, asked.kind.choices.items())]}
    return made


def _reply(step_result: StepResult, on_the_order: tuple[Phrase, ...]) -> dict[str, Any]:
    if step_result.refusal:
        return invalid_reply(step_result.calculator, step_result.refusal, step_result.asking)
    if step_result.answer is None:
        return {
            "waits": WAITS.format(title=step_result.waits_for),
            "written": written(step_result.calculator, step_result.asking),
        }
    notes = (
        *_of_the_kind(step_result),
        *map(partial(_departure, step_result), step_result.departures),
        *on_the_order,
        *step_result.answer.notes,
    )
    return answer_reply(step_result.calculator, replace(step_result.answer, notes=notes), step_result.asking)


def _departure(step_result: StepResult, departure: Departure) -> Phrase:
    """That something is written by hand where the walk gives another value: meant, perhaps, but then both steps should
    be looked at."""
    field, ruler = step_result.calculator.field(departure.name), step_result.asking.ruler
    return say(
        "{label:text}: you wrote {written:text}, and “{title:text}” gives {given:text}. Empty the blank to take that "
        "over.",
        label=field.label,
        written=step_result.asking.text(field),
        title=departure.title,
        given=field.kind.show(departure.value, ruler),
    )


def _of_the_kind(step_result: StepResult) -> Iterator[Phrase]:
    """Which measures are those of the kind of piece, and which written by hand stand in their place."""
    asking, method = step_result.asking, step_result.asking.method
    fields = [
        (field, field.default)
        for field in step_result.calculator.fields
        if field.default and field.default in method.of_kind and field.name not in asking.taken
    ]
    by_hand = [(field, measure) for field, measure in fields if asking.typed.get(field.name, "").strip()]
    if followed := [
        f"{field.label.lower()} {method.measure(measure, asking.ruler)}"
        for field, measure in fields
        if (field, measure) not in by_hand
    ]:
        kind = next(iter(method.of_kind.values()))
        yield say(
            "From your method, “{method:text}”, for “{kind:text}”: {measures:text}.",
            method=method.name,
            kind=kind,
            measures=" and ".join(followed),
        )
    for field, measure in by_hand:
        theirs = method.measure(measure, asking.ruler)
        if field.kind.parse(theirs, asking.ruler) != field.kind.parse(asking.text(field), asking.ruler):
            yield say(
                "{label:text}: you wrote {written:text}; your method has {theirs:text} for “{kind:text}”. Empty the "
                "blank to take that over.",
                label=field.label,
                written=asking.text(field),
                theirs=theirs,
                kind=method.of_kind[measure],
            )


def _of_the_cloth(step_result: StepResult, cloth: str) -> Iterator[Phrase]:
    """Where the test square is from, or that no wash test of the cloth named is known."""
    method, typed = step_result.asking.method, step_result.asking.typed
    if (
        not cloth
        or step_result.calculator.name != "wash-test"
        or any(typed.get(f"after_{way}", "").strip() for way in WAYS)
    ):
        return
    line = method.cloth_line(cloth)
    known = {way: str(line[f"change_{way}"]) for way in WAYS if line.get(f"change_{way}")}
    if len(known) == len(WAYS):
        found = f", found on {line['found_on']}" if line.get("found_on") else ""
        yield say(
            "The square after the wash is that of “{cloth:text}”, as “{method:text}” lists it{found:text}: "
                "{length:text} along, {width:text} across.",
            cloth=cloth, method=method.name, found=found, **known,
        )  # fmt: skip
    else:
        yield say(
            "“{method:text}” has no complete wash test for “{cloth:text}”, so the square stands as for another cloth: "
            "test this one before you cut.",
            cloth=cloth,
            method=method.name,
        )


def _counted_on_the_order(step_result: StepResult, step_results: list[StepResult]) -> StepResult:
    """The step that counts the pieces says first that they are too few, where they are."""
    if not (told := _on_the_order(step_result, step_results)) or not step_result.answer:
        return step_result
    spoken = say("**{count:count} of {to_make:piece|pieces}**: {lacking:count} are lacking.", **told[0].values)
    return replace(step_result, answer=replace(step_result.answer, spoken=spoken))


def _on_the_order(step_result: StepResult, step_results: list[StepResult]) -> tuple[Phrase, ...]:
    """That the cloth gives fewer pieces than are to be made, told where the pieces are counted."""
    to_make = next(
        (each.answer.results["pieces"] for each in step_results if each.calculator.name == "order" and each.answer),
        None,
    )
    if (
        step_result.calculator.name != "pieces-from-cloth"
        or not step_result.answer
        or not to_make
        or to_make <= step_result.answer.results["count"]
    ):
        return ()
    pieces = step_result.answer.results
    lacking = to_make - pieces["count"]
    return (
        say(
            "{to_make:piece|pieces} are to be made, and this cloth gives {count:count}: {lacking:count} are lacking. "
            "They want a further length of it, as wide as this: {further:length_up} between straight ends.",
            to_make=to_make, count=pieces["count"], lacking=lacking,
            further=further_length(lacking, pieces["across"], pieces["marks_along"][0]),
        ),
        say("Or make them smaller: how small for one more across or along stands below, under all measures, in the "
            "table of other counts."),
    )  # fmt: skip
