"""The wash test: how much a marked square changed, and how much cloth to start from."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, InvalidInput, Result
from calculators.asking.house_measures import CLOTH_WIDTH
from calculators.drawing.at_the_table import wash_marks
from calculators.trade.cloth import after_the_wash, cloth_to_start_from, dimensional_change
from calculators.values.kinds import Length, Percent
from calculators.values.phrase import Phrase, say

_CLOTH = Length(least=Fraction(10), most=Fraction(100_000))
_MARKED = Length(least=Fraction(50), most=_CLOTH.most)  # a whole cloth may be marked at its ends and washed
_UNLIKELY = 25  # [%] common practice, no source
_SHOWS = 3  # [%] common practice, no source


def _work(given: SimpleNamespace) -> Answer:
    changes, messages = {}, {}
    for way, before, after in (
        ("length", given.before_length, given.after_length),
        ("width", given.before_width, given.after_width),
    ):
        changes[way] = dimensional_change(before, after)
        if abs(_as_shown(changes[way])) > _UNLIKELY:
            messages[f"after_{way}"] = say(
                "From {before:length} to {after:length} is {change:percent}, more than cloth does. Measure between "
                "the same two marks again.",
                before=before,
                after=after,
                change=changes[way],
            )
    if messages:
        raise InvalidInput(messages)
    along, across = changes["length"], changes["width"]
    results = {
        "change_length": along,
        "change_width": across,
        "cut_length": _start_from(given.needed_length, along),
        "cut_width": _start_from(given.needed_width, across),
        "washed_length": after_the_wash(given.cloth_length, along),
        "washed_width": after_the_wash(given.cloth_width, across),
    }
    return Answer(
        results,
        say(
            "**{change_length} along the length**, {change_width} across."
            + _STARTS[given.needed_length is not None, given.needed_width is not None],
            **results,
        ),
        notes=tuple(_notes(given, along, across, results)),
        working=tuple(_working(given, along, results["cut_length"])),
        drawn_from=((given.before_length, given.after_length), (given.before_width, given.after_width)),
    )


_WASHED = "The cloth in hand will be {washed_length} by {washed_width} once it is washed."
_STARTS = {
    (True, True): " Start from {cut_length} by {cut_width}.",
    (True, False): " Start from a length of {cut_length}.",
    (False, True): " Start from a width of {cut_width}.",
    (False, False): f" {_WASHED}",
}


def _start_from(needed: Fraction | None, change: Fraction) -> Fraction | None:
    return None if needed is None else max(needed, cloth_to_start_from(needed, change))


def _as_shown(change: Fraction) -> Fraction:
    """A change rounded as it is shown [%], so that sentence and number agree."""
    return round(change, 1)


def _notes(
    given: SimpleNamespace, along: Fraction, across: Fraction, results: Mapping[str, Fraction | None]
) -> Iterator[Phrase]:
    grew = [_as_shown(change) > 0 for change in (along, across)]
    if any(grew):
        way = "both ways" if all(grew) else "one way"
        yield say(
            f"The cloth grew {way}, and growing is not counted on: start from what you need. Check that it dried "
            "flat and was not pulled, then measure again."
        )
    if _as_shown(min(along, across)) <= -_SHOWS:
        yield say(
            "Wash all of this cloth before cutting: a change of {shows:percent} or more shows in a finished piece "
            "(common practice, no source).",
            shows=_SHOWS,
        )
    for way, needed, in_hand, cut in (
        ("long", given.needed_length, given.cloth_length, results["cut_length"]),
        ("wide", given.needed_width, given.cloth_width, results["cut_width"]),
    ):
        if cut is not None and in_hand < cut:
            yield say(
                f"The cloth in hand is not {way} enough for the {{needed:length}} written as needed: it lacks "
                "{lacking:length_up}.",
                needed=needed,
                lacking=cut - in_hand,
            )
    if given.needed_length is not None or given.needed_width is not None:
        yield say(_WASHED, **results)


def _working(given: SimpleNamespace, along: Fraction, cut: Fraction | None) -> Iterator[Phrase]:
    yield say(
        "Change along the length: 100 × ({after:length} − {before:length}) ÷ {before:length} = {change:percent}.",
        before=given.before_length,
        after=given.after_length,
        change=along,
    )
    if given.needed_length is not None:
        yield say(
            "Cloth to start from: {needed:length} × {before:length} ÷ {after:length} = {cut:length_up}."
            if along < 0
            else "Cloth to start from: all of the {needed:length} needed, since the test piece did not shrink along "
            "its length.",
            needed=given.needed_length,
            before=given.before_length,
            after=given.after_length,
            cut=cut,
        )


CALCULATOR = Calculator(
    name="wash-test",
    title="Wash test",
    purpose="How much the cloth changes in the wash, and how much to start from so that what you need is left.",
    fields=(
        Field(
            "before_length",
            "Marks along the length, before",
            _MARKED,
            "Between the two marks along the selvedge, before washing.",
            "before_length",
        ),
        Field(
            "after_length",
            "the same after the wash",
            _MARKED,
            "Between the same marks, washed, dried and pressed.",
            "after_length",
        ),
        Field(
            "before_width",
            "Marks across the width, before",
            _MARKED,
            "Between the two marks across the cloth, before washing.",
            "before_width",
        ),
        Field(
            "after_width",
            "the same across, after",
            _MARKED,
            "Between the same marks, washed, dried and pressed.",
            "after_width",
        ),
        Field(
            "needed_length",
            "Length needed",
            _CLOTH,
            "Length you want to have once everything is washed; empty if you only ask what becomes of the cloth in "
            "hand.",
            "needed_length",
            optional=True,
        ),
        Field(
            "needed_width",
            "Width needed",
            _CLOTH,
            "Width you want to have once everything is washed; empty as before.",
            "needed_width",
            optional=True,
        ),
        Field(
            "cloth_length",
            "Length of the cloth in hand",
            _CLOTH,
            "Unwashed length of the cloth you have.",
            "cloth_length",
        ),
        Field(
            "cloth_width",
            "Width of the cloth in hand",
            CLOTH_WIDTH,
            "Unwashed width of the cloth you have.",
            "cloth_width",
            known_as=("unwashed_width",),
        ),
    ),
    question=(
        "Marked {before_length} apart along the length and {before_width} across; after the wash {after_length} and "
        "{after_width}. "
        "I need {needed_length} by {needed_width}."
    ),
    results=(
        Result(
            "change_length",
            "Change along the length",
            Percent(),
            "Dimensional change along the selvedge; shrinkage is negative.",
        ),
        Result(
            "change_width",
            "Change across the width",
            Percent(),
            "Dimensional change across the cloth; shrinkage is negative.",
        ),
        Result(
            "cut_length", "Length to start from", Length(toward="up"), "Unwashed length that leaves the length needed."
        ),
        Result("cut_width", "Width to start from", Length(toward="up"), "Unwashed width that leaves the width needed."),
        Result(
            "washed_length",
            "Cloth in hand, length washed",
            Length(toward="down"),
            "What the cloth in hand measures along once washed.",
        ),
        Result(
            "washed_width",
            "Cloth in hand, width washed",
            Length(toward="down"),
            "What the cloth in hand measures across once washed.",
        ),
    ),
    work=_work,
    drawing=wash_marks,
    examples=(
        Example(
            {"before_length": "350 mm", "after_length": "339.5 mm"},
            {"change_length": -3},
            "ISO 5077, restated: 350 → 339.5 is −3.0 %",
            tolerance=0.05,
        ),
        Example(
            {"before_length": "1000 mm", "after_length": "970 mm", "needed_length": "500 mm"},
            {"cut_length": 515.46},
            "derived: 500 ÷ (1 − 0.03), not 515.0",
            tolerance=0.005,
        ),
    ),
    sources=("iso-5077", "iso-3759", "aatcc-tm135"),
)
