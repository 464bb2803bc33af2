"""Time: hands-on for every piece, quicker from piece to piece where the first were timed, and what a batch waits."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Field, invalid_input
from calculators.asking.house_measures import LEARNING
from calculators.asking.house_method import HouseMethod, on_ruler
from calculators.trade.learning import time_with_learning
from calculators.values.duration import Minutes
from calculators.values.kind import InvalidValue
from calculators.values.kinds import Count, Number
from calculators.values.measure import Ruler
from calculators.values.phrase import Phrase, say

#: How the house’s list of steps names what is done once, and what no hands are at while the batch waits for it.
BATCH, WAITING = "batch", "waiting"
_MINUTES = Number(most=Fraction(10_000), sign=" min", places=2)

TIMED = Field(
    "timed",
    "Pieces timed",
    Count(least=1, most=100_000),
    "How many, from the first on, you have made by the clock; empty until then.",
    optional=True,
)
TIMED_MINUTES = Field(
    "timed_minutes",
    "Minutes for those",
    Minutes(least=Fraction(1)),
    "Hands-on, all of them together. They count instead of the minutes for each.",
    optional=True,
)
RATE_OF_LEARNING = Field(
    "learning",
    "Rate of learning",
    LEARNING,
    "Once twice as many are made, a piece takes this share of the time on average; 100 % for work that grows no "
    "quicker. Only for pieces timed.",
    "learning",
    known_as=(),
)
FIRST_ONES = (TIMED, TIMED_MINUTES, RATE_OF_LEARNING)


def minutes_for(pieces: int, minutes_each: Fraction, given: SimpleNamespace) -> Fraction:
    """Hands-on for so many pieces, what is done once left out [min]: by the first ones where they were timed, else so
    many times the minutes for each.

    Source: `time_with_learning`.
    """
    if given.timed is None or given.timed_minutes is None:
        return pieces * minutes_each
    return time_with_learning(pieces, given.timed, given.timed_minutes, given.learning)


def refuse_half_timed(pieces: int, given: SimpleNamespace) -> None:
    """Raise InvalidInput where of the pieces timed and their minutes one is missing, or more were timed than are made
    in all."""
    if given.timed is None and given.timed_minutes is not None:
        raise invalid_input(
            TIMED.name, "Write how many pieces took the {minutes:minutes}.", minutes=given.timed_minutes
        )
    if given.timed is not None and given.timed_minutes is None:
        raise invalid_input(
            TIMED_MINUTES.name, "Write how long the {timed:piece|pieces} took together.", timed=given.timed
        )
    if given.timed is not None and given.timed > pieces:
        raise invalid_input(
            TIMED.name,
            "{timed:piece|pieces} timed, and only {pieces:count} wanted in all. Write how many of these were timed.",
            timed=given.timed,
            pieces=pieces,
        )


def told_of_time(pieces: int, minutes_each: Fraction, given: SimpleNamespace) -> Phrase:
    """How the time of so many pieces was worked out, as a part of a sentence."""
    if given.timed is None:
        return say("{count:count} × {each:minutes}", count=pieces, each=minutes_each)
    return say(
        "{all:minutes} for {count:count}, the first {timed:count} timed at {first:minutes}, with a rate of learning of "
        "{learning:percent}",
        all=minutes_for(pieces, minutes_each, given),
        count=pieces,
        timed=given.timed,
        first=given.timed_minutes,
        learning=given.learning,
    )


def told_of_waiting(waiting: Fraction, of: str) -> Phrase:
    """What is waited beside the work. of: what waits, such as “batch”."""
    return say(f"Plus {{waiting:minutes}} of waiting, once for the {of}; it costs nothing.", waiting=waiting)


def house_steps(method: HouseMethod, ruler: Ruler, each: str) -> Iterator[Fraction]:
    """The minutes of every step of the house that counts for each batch, piece, corner or the like [min]; those that
    cannot be read are left out, which the page of the method says."""
    for step in method.steps_of_its_kind:
        if on_ruler(step.get("for_each", ""), ruler) == each:
            try:
                yield _MINUTES.parse(on_ruler(step.get("minutes", ""), ruler), ruler)
            except InvalidValue:
                continue


def house_waiting(method: HouseMethod, ruler: Ruler) -> Fraction:
    """What a batch waits by the house’s list of steps [min].

    Source: derived, the minutes of its steps that are waiting added up.
    """
    return sum(house_steps(method, ruler, WAITING), Fraction(0))
