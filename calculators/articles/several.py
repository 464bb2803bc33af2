"""Several of an article: their time, and the ways on to the cloth and to thread and cost."""

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil
from types import SimpleNamespace

from calculators.articles.article import Article
from calculators.articles.line import MINUTES_EACH, line_of
from calculators.articles.widths import usable_width
from calculators.asking.declaration import Field, InvalidInput, Onward, Result
from calculators.asking.house_method import HouseMethod, Written, on_ruler
from calculators.asking.timing import FIRST_ONES, house_waiting, minutes_for
from calculators.trade.articles.counting import OPERATIONS, Counted, rows_begun
from calculators.trade.articles.cutting import ArticlePiece
from calculators.trade.articles.parts import ROUND, FlatPart
from calculators.trade.articles.work import MakingUp, listed
from calculators.values.duration import Minutes
from calculators.values.kind import InvalidValue
from calculators.values.kinds import Count
from calculators.values.measure import MM_IN, Ruler, show_exactly
from calculators.values.phrase import Phrase, say

_COUNT = Field("count", "How many", Count(least=1, most=1_000), "Of this size, all alike.", fixed="1", known_as=())
TIME = Result("time", "Hands-on time", Minutes(), "For all of them, by the minutes for each.")
_LAY_PLAN, _COSTS, _ORDER, _TEMPLATES = "plan/lay-plan/", "plan/cost/", "plan/order/", "cut/templates/"
_CURTAINS, _TABLECLOTHS = "projects/curtains/", "projects/tablecloths/"
_UNITS = {"metre": "m", "yard": "yd"}


def how_many(fields: Sequence[Field]) -> Field:
    """The blank for how many are made; of curtains, as many as hang on the rod."""
    hang = next((each for each in fields if each.name == "curtains"), None)
    if hang is None:
        return _COUNT
    return replace(_COUNT, from_method=lambda _method, _ruler, curtains: str(curtains), beside=(hang,))


class Timed:
    """The minutes of one article, by what is counted of its operations. counted: from its measures, by name."""

    def __init__(self, names: Sequence[str], counted: Callable[[SimpleNamespace], Mapping[str, Counted]]) -> None:
        self._names, self._counted = names, counted

    def __call__(self, method: HouseMethod, ruler: Ruler, *values: object) -> str:
        try:
            counted = self._counted(SimpleNamespace(**dict(zip(self._names, values, strict=True))))
        except InvalidInput:
            return ""  # its measures cannot go together, which is said at their blanks
        minutes = sum((_minutes(line, counted, ruler) for line in method.tables.get("operations", ())), Fraction(0))
        return Minutes().show(minutes, ruler) if minutes else ""


def minutes_each(fields: Sequence[Field], timed: Timed) -> Field:
    """The blank for the minutes of one article, begun with the house's for each of its operations."""
    return replace(
        MINUTES_EACH,
        help="Hands-on, by the house’s minutes for each operation; write your own once you have timed the first.",
        fixed="30 min",
        from_method=timed,
        beside=tuple(fields),
    )


def _minutes(line: Mapping[str, Written], counted: Mapping[str, Counted], ruler: Ruler) -> Fraction:
    """What one line of the house's list comes to for one article [min]; 0 where it says nothing that can be read."""
    operation, minutes, each = (on_ruler(line.get(name, ""), ruler) for name in ("operation", "minutes", "for_each"))
    there = counted.get(operation, Counted())
    many = there.stitching / MM_IN[_UNITS[each]] if each in _UNITS else Fraction(there.times)
    try:
        return Minutes().parse(minutes, ruler) * many
    except InvalidValue:
        return Fraction(0)  # which the page of the method says


def untimed(given: SimpleNamespace, counted: Mapping[str, Counted]) -> Iterator[Phrase]:
    """What the house’s list has no minutes for, so that they are missing from those it begins with; nothing where the
    minutes are her own."""
    if MINUTES_EACH.name in given.asking.typed:
        return
    lines = given.asking.method.tables.get("operations", ())
    timed = {on_ruler(line.get("operation", ""), given.ruler) for line in lines}
    if missing := [OPERATIONS[kind] for kind in counted if kind not in timed]:
        yield say("The house’s list has no minutes for this, so the time is without it: {missing:text}.",
            missing=listed(missing))  # fmt: skip


def ways_on(
    article: Article, work: MakingUp, pieces: Sequence[ArticlePiece], given: SimpleNamespace
) -> Iterator[Onward]:
    """On to the cloth with all pieces to cut, to thread and cost with the stitching and the minutes, and into an order
    of several articles."""
    unit = "in" if given.ruler.unit == "in" else "cm"
    for cloth in dict.fromkeys(each.cloth for each in pieces):
        yield _to_the_cloth(cloth, [each for each in pieces if each.cloth == cloth], given, unit)
    if article.template:
        name, _, size, by, _, measures = line_of(article, given)
        yield Onward(
            "Not all of it is cut straight.",
            does="Print its shape in true size",
            page=_TEMPLATES,
            calculator="template",
            carries={"article": name, "size": size, "by": by, "measures": measures},
        )
    for part in work.parts:
        if part.is_round and len(work.parts) == 1:
            yield _bound_round(part, unit)
    if article.joined_as and min(pieces[0].on_the_cloth) > usable_width(given):
        yield _joined_first(article, work, given)
    if article.is_let_down and (corner := _corner_at_the_foot(work, unit)):
        yield corner
    waiting = house_waiting(given.asking.method, given.ruler)
    yield Onward(
        "Hands-on: {time:minutes}" + ("; waiting, once: {waiting:minutes}." if waiting else "."),
        {"time": minutes_for(given.count, given.minutes_each, given), "waiting": waiting},
        does="Thread and cost",
        page=_COSTS,
        calculator="thread-time-cost",
        carries={
            "pieces": str(given.count),
            "stitching_each": show_exactly(work.stitching, unit),
            "rows_each": str(rows_begun(work)),
            "minutes_piece": Minutes().write(given.minutes_each, given.ruler),
            **{field.name: given.asking.text(field) for field in FIRST_ONES if given.timed},
        },
    )
    yield Onward(
        "Together with other articles: cloth, work list, time and cost of all.",
        does="Put it in an order",
        page=_ORDER,
        calculator="whole-order",
        carries={"lines": json.dumps([line_of(article, given)])},
        adds=True,
    )


def _bound_round(part: FlatPart, unit: str) -> Onward:
    """On to a binding for a round edge, of a length that a tape can measure."""
    edge = Fraction(ceil(part.length_of(ROUND)))
    return Onward(
        "Round its edge it is {edge:long}.",
        {"edge": edge},
        does="Bind it in place of the hem",
        page="corners/binding/",
        calculator="binding",
        carries={"bound_edge": show_exactly(edge, unit), "cut": "bias"},
    )


def _joined_first(article: Article, work: MakingUp, given: SimpleNamespace) -> Onward:
    """On to the widths that it is joined from, with all that is asked of it."""
    return Onward(
        "Joined first, hemmed only once it is cut round."
        if work.parts[0].is_round
        else "Joined from widths it goes in.",
        does="Widths to join",
        page=_TABLECLOTHS,
        calculator=article.joined_as,
        carries={
            field.name: field.kind.write_exactly(getattr(given, field.name), given.ruler) for field in article.fields
        },
    )


def _corner_at_the_foot(work: MakingUp, unit: str) -> Onward | None:
    """On to the corner where the foot's hem meets that of the left side; None where either has none."""
    foot, side = (
        next((each for each in work.finishes if each.hem and each.stretch.side == name), None)
        for name in ("bottom", "left")
    )
    if foot is None or side is None:
        return None
    carries = {"hem_1": foot.hem, "turn": foot.takes - foot.hem, "hem_2": side.hem, "turn_2": side.takes - side.hem}
    return Onward(
        "The corners at the foot are folded, not trimmed, so that it can be let down.",
        does="See such a corner folded",
        page=_CURTAINS,
        calculator="corner-steps",
        carries={name: show_exactly(length, unit) for name, length in carries.items()},
    )


def _to_the_cloth(cloth: str, pieces: Sequence[ArticlePiece], given: SimpleNamespace, unit: str) -> Onward:
    rows = [
        (
            each.named_on_the_cloth,
            *(show_exactly(side, unit) for side in each.on_the_cloth),
            str(given.count * each.count),
        )
        for each in pieces
    ]
    from_cloth = " from the {cloth:text}" if cloth else ""
    return Onward(
        f"To cut{from_cloth}: {{pieces:piece|pieces}}.",
        {"pieces": given.count * sum(each.count for each in pieces), "cloth": cloth},
        does=f"Lay {'these' if cloth else 'them'} out on the {cloth or 'cloth'}",
        page=_LAY_PLAN,
        calculator="lay-plan",
        carries={"pieces": json.dumps(rows), "sizes": "cut", "flaws": "[]", "repeats": "[]"},
    )
