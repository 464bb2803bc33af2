"""The browser's way in: a question as JSON text, replies as JSON texts.

Every question names what it asks for; every reply is an object; the last of a question's replies has ``"final": true``.
Questions: ``calculator`` (one calculator's answer), ``walk`` (all steps of a walk), ``numbers`` (live numbers in
sentences), ``plain`` (an answer as plain data), and those of house methods and jobs. A question may carry the reader's
``method``, as the text it is kept as, and the ``ruler`` in hand. The scripts name them in ``Question`` of
docs/assets/javascript/python/messages.js; a test holds the two lists together.
"""

import json
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from typing import Any

from calculators.asking.answering import Asking, answer, answers, written
from calculators.asking.bibliography import bibliography
from calculators.asking.declaration import InvalidInput
from calculators.asking.site_method import site_method
from calculators.batch.follows import following, into_walk
from calculators.batch.in_hand import measured
from calculators.batch.walk import WALKS
from calculators.catalogue import calculator_named, catalogue
from calculators.faces.handing.questions import HANDING_QUESTIONS
from calculators.faces.house_method.questions import METHOD_QUESTIONS
from calculators.faces.job.questions import JOB_QUESTIONS
from calculators.faces.job.walk import walk_replies
from calculators.faces.page.answer_html import figure, small_figure
from calculators.faces.page.beside import beside
from calculators.faces.page.in_hand import in_hand_lines
from calculators.faces.page.markup import html, together
from calculators.faces.page.plain import plain_answer, refusals
from calculators.faces.page.questions import Reply, Request, asking_of, careful, house, measures_of, ruler_wanted
from calculators.faces.page.reply import answer_reply, invalid_reply
from calculators.faces.page.sentence_number import value_text, worked
from calculators.faces.ticket.questions import TICKET_QUESTIONS
from calculators.trade.trade_rules import trade_rules

NO_NUMBER = "(none with this house method)"

for _ready in (site_method, bibliography, catalogue, trade_rules):
    _ready()  # read while Python is being made ready: a snapshot of its memory then holds them, and needs no files


def replies(request_text: str) -> Iterator[str]:
    """Answer one question: an iterator of JSON texts, the last of them final."""
    request = json.loads(request_text)
    latest: Reply = {}  # an answer is held back one step, since it may be the last
    untold = False
    for reply in QUESTIONS[request["ask"]](request):
        if "working" in reply:
            yield json.dumps(latest if untold else reply)
            untold = False
            continue
        if untold:
            yield json.dumps(latest)
        latest, untold = reply, True
    yield json.dumps({**latest, "final": True})


def _calculator(request: Request) -> Iterator[Reply]:
    """{"ask": "calculator", "calculator", "given", "typed", "measures", "ruler"} → what `answer_reply` or
    `invalid_reply` says, or {"working"}."""
    calculator = calculator_named(request["calculator"])
    asking = asking_of(request, {**request.get("given", {}), **request["typed"]})
    asking = replace(asking, taken=following(calculator, asking, measures_of(request)))
    try:
        for reply in answers(calculator, asking):
            yield answer_reply(calculator, reply, asking) if reply else {"working": True}
    except InvalidInput as error:
        yield invalid_reply(calculator, error, asking)


def _walk(request: Request) -> Iterator[Reply]:
    """{"ask": "walk", "walk", "typed": calculator → typed, "measures", "cloth": as the batch names it, "ruler"} →
    {"steps": calculator → reply}. measures: those in hand, for a walk of no job."""
    walk, asking = WALKS[request["walk"]], asking_of(request, {})
    typed = into_walk(walk, request["typed"], measures_of(request), asking)
    yield {"steps": walk_replies(walk, typed, asking, request.get("cloth", ""))}


def _numbers(request: Request) -> Iterator[Reply]:
    """{"ask": "numbers", "numbers": […], "values": […], "figures": […], "measures", "ruler"} → the same lists, as texts
    and HTML; ``hers``: whether each number, and then each figure, follows a measure in hand.

    A number or figure whose values cannot be used comes back as null: what stands in the page stays, unless it was
    worked out
    with another house method; then ``none`` takes its place. Numbers of one calculation are worked out once.
    """
    asking = asking_of(request, {})
    once: dict[str, dict[str, str] | None] = {}

    def number(each: Request) -> str | None:
        given = _given(each, request)
        key = json.dumps([each["calculator"], given], sort_keys=True)
        if key not in once:
            once[key] = _or_none(lambda: worked(each["calculator"], given, asking))
        results = once[key]
        return together(results[each["result"]]) if results else None

    yield {
        "numbers": [number(each) for each in request.get("numbers", [])],
        "values": [together(value_text(text, asking)) for text in request.get("values", [])],
        "figures": [_or_none(partial(_figure, each, request, asking)) for each in request.get("figures", [])],
        "hers": [bool(_in_hand(each, request)) for each in (*request.get("numbers", []), *request.get("figures", []))],
        "none": NO_NUMBER,
    }


def _or_none(made: Callable[[], Any]) -> Any:
    try:
        return made()
    except InvalidInput:
        return None


def _figure(wanted: Request, request: Request, asking: Asking) -> str:
    calculator = calculator_named(wanted["calculator"])
    if "beside" in wanted:
        differ = wanted["but"], wanted["beside"]
        one, other = (
            replace(asking, typed=_given({**wanted, "given": {**wanted["given"], **but}, "but": but}, request))
            for but in differ
        )
        return html(beside(calculator, one, other, differ))
    given = replace(asking, typed=_given(wanted, request))
    made = small_figure if wanted.get("small") else figure
    return html(made(calculator, answer(calculator, given), asking.ruler))


def _given(wanted: Request, request: Request) -> dict[str, str]:
    """The texts of a number or figure, with the measures in hand; a bare number among them gets the unit of the ruler
    it was written on.

    What the page puts in place of the reader's own, ``but``, has the last word.
    """
    given = wanted["given"]
    if given and "readOn" in wanted:
        given = {**given, **_written_on(wanted["readOn"], wanted["calculator"], given, request)}
    return {**given, **_in_hand(wanted, request), **wanted.get("but", {})}


def _in_hand(wanted: Request, request: Request) -> dict[str, str]:
    """The texts of a number or figure that are measures in hand, those that can be read."""
    if wanted["calculator"] not in catalogue():  # a measure of the house stands as the house has it
        return {}
    measures, calculator = request.get("measures", {}), calculator_named(wanted["calculator"])
    texts: dict[str, str] = {}
    asking = asking_of(request, wanted["given"])
    for name, value in following(calculator, asking, measures_of(request)).items():
        texts[name] = calculator.field(name).kind.write_exactly(value, asking.ruler)
    for field, name in measured(calculator, asking, measures).items():
        texts |= _written_on(measures[name]["readOn"], calculator.name, {field: measures[name]["text"]}, request)
    return texts


def _written_on(ruler: str, calculator: str, texts: dict[str, str], request: Request) -> dict[str, str]:
    """Those texts that can be read, each with the unit of the ruler that a bare number was written on."""
    then = Asking(texts, method=house(request), wanted_ruler=ruler_wanted({**request, "ruler": ruler}))
    return written(calculator_named(calculator), then)


def _in_hand_line(request: Request) -> Iterator[Reply]:
    """{"ask": "in hand", "measures", "job", "ruler"} → {"line": HTML}: what is in hand, with the way to change it."""
    yield {
        "line": "".join(map(html, in_hand_lines(request["measures"], request.get("job", {}), asking_of(request, {}))))
    }


def _plain(request: Request) -> Iterator[Reply]:
    """{"ask": "plain", "calculator", "typed", "ruler"} → what the terminal prints with --json."""
    calculator = calculator_named(request["calculator"])
    asking = asking_of(request, {**request.get("given", {}), **request["typed"]})
    try:
        yield plain_answer(calculator, asking)
    except InvalidInput as error:
        yield {"errors": refusals(error, calculator, asking)}


QUESTIONS: dict[str, Callable[[Request], Iterator[Reply]]] = {
    "calculator": _calculator,
    "walk": _walk,
    "numbers": _numbers,
    "in hand": _in_hand_line,
    "plain": _plain,
    **{
        name: careful(question)
        for questions in (METHOD_QUESTIONS, JOB_QUESTIONS, TICKET_QUESTIONS, HANDING_QUESTIONS)
        for name, question in questions.items()
    },
}
