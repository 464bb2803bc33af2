"""What a calculator is: what it asks, what it answers, and one function from the first to the second.

Everything a reader, a terminal or a test meets (the form, the answer, the reference page, the worked examples) is made
from this declaration.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from types import SimpleNamespace
from typing import Any

from calculators.asking.house_method import Written
from calculators.drawing.in_step import InStep
from calculators.drawing.picture import Drawn, Picture, PictureSeries
from calculators.values.kind import Kind
from calculators.values.measure import Ruler
from calculators.values.phrase import Phrase, say


@dataclass(frozen=True)
class Field:
    """One thing a calculator asks.

    name: as typed at a terminal. label: as read on the page.
    default: key of the house method that fills it when nothing is typed, or None.
    fixed: text that fills it when the house method has no say, such as ``no``; one for each ruler where a round figure
    differs.
    optional: may stay empty; the function then gets None.
    from_method: what entries of the house method come to for it on a ruler, such as the minutes of several steps; empty
    where they say nothing.
    beside: other fields of the same calculator whose values `from_method` is told as well, such as how many corners a
    piece has.
    known_as: what it measures of the work in hand, by the names that every page knows it under: what is typed goes
    under the first, what stands there is of the first that holds something. Left out, it is known as the measure of the
    house that fills it; empty where each page has its own. A name may hold ``{field}``, for the text of another field.
    """

    name: str
    label: str
    kind: Kind
    help: str
    default: str | None = None
    fixed: Written | None = None
    optional: bool = False
    from_method: Callable[..., str] | None = None
    beside: tuple["Field", ...] = ()
    known_as: tuple[str, ...] | None = None

    @property
    def names_in_hand(self) -> tuple[str, ...]:
        """What it is known as on every page, most its own first; empty where each page has its own."""
        if self.known_as is not None:
            return self.known_as
        return (self.default,) if self.default else ()


@dataclass(frozen=True)
class Result:
    """One thing a calculator answers. `meaning` says in one line what it is.

    sheet: whether this table goes to the work table on a sheet of its own, with the drawing. to_table: whether it goes
    there with them.
    """

    name: str
    label: str
    kind: Kind
    meaning: str
    sheet: bool = False
    to_table: bool = False


@dataclass(frozen=True)
class File:
    """Something of an answer to save as a file.

    name: of the file. label: as read on the page. media: such as ``text/csv``.
    text: from Answer.drawn_from and the ruler in hand to what stands in the file.
    """

    name: str
    label: str
    media: str
    text: Callable[[Any, Ruler], str]


@dataclass(frozen=True)
class FieldText:
    """A text that is put into a blank: of a field, or of one cell of its rows, by the place of the row and the name of
    its column."""

    field: str
    text: str
    row: int | None = None
    column: str = ""


@dataclass(frozen=True)
class Offer(Phrase):
    """A note that offers to change what was asked: what that does, such as ``cut in strips``, and what it puts into the
    blanks.

    Without scripts it is just its sentence, which therefore says all.
    """

    does: str = ""
    sets: tuple[FieldText, ...] = ()


@dataclass(frozen=True)
class Onward(Phrase):
    """A note that leads to a calculator of another page and takes numbers along, which are offered there.

    does: as it stands on the link. page: where that calculator is, from the top of the site, such as ``plan/pieces/``.
    calculator: its name. carries: its fields → the texts for them. adds: whether these are further rows, which go below
    those that the reader has there.
    Without scripts it is just its sentence, which therefore says all.
    """

    does: str = ""
    page: str = ""
    calculator: str = ""
    carries: Mapping[str, str] = field(default_factory=dict)
    adds: bool = False


@dataclass(frozen=True)
class Answer:
    """What a calculator's function returns.

    results: a value for every declared result (None where it has no meaning for these numbers).
    spoken: the one sentence that answers first.
    notes: what to do next, one phrase each; an Offer among them can be taken up at once.
    working: how it was worked out, with this job's numbers.
    drawn_from: what the calculator's drawing and its files need.
    settled: whether this is the last word, not one that may still improve.
    headed: what is printed over the sheets that go to the work table, such as the name of an order; empty for a line to
    write on, None for no such sheets.
    """

    results: Mapping[str, Any]
    spoken: Phrase
    notes: tuple[Phrase, ...] = ()
    working: tuple[Phrase, ...] = ()
    drawn_from: Any = None
    settled: bool = True
    headed: str | None = None


@dataclass(frozen=True)
class Example:
    """A worked example: what is given, what must come out, and where that number is from.

    expected: result name → value (lengths in mm); tolerance in the same unit, half the last digit the source prints.
    """

    given: Mapping[str, str]
    expected: Mapping[str, Any]
    source: str
    tolerance: float = 0.0


@dataclass(frozen=True)
class Calculator:
    """A calculator, declared once.

    name: as typed at a terminal, words joined by hyphens.
    question: the sentence with a ``{blank}`` for each field asked in it; fields not named there wait behind *more*.
    work: from the values asked (as attributes, with the ruler in hand as `ruler`, and the circumstances as `asking` for
    a calculator that asks others) to an Answer; raises InvalidInput when values cannot go together. Long work gives an
    iterator of ever better Answers instead, with None between them at least every few hundredths of a second, so that
    it can be broken off.
    drawing: from Answer.drawn_from and the ruler in hand to a Picture, several that stand by themselves, or a
    PictureSeries for steps that follow one another.
    steps: likewise, how it is made, step by step, where that stands beside the drawing.
    edges: likewise, its hems and seams, each cut through.
    beside: likewise from two answers, the steps of both at one scale, taken together.
    alone: whether its blanks that hold no measure in hand are its own, even where another of the page has one of that
    name.
    files: what can be saved of an answer.
    sources: keys of the bibliography.
    """

    name: str
    title: str
    purpose: str
    fields: tuple[Field, ...]
    question: str
    results: tuple[Result, ...]
    work: Callable[[SimpleNamespace], Answer | Iterator[Answer | None]]
    drawing: Callable[[Any, Ruler], Drawn] | None = None
    steps: Callable[[Any, Ruler], PictureSeries] | None = None
    edges: Callable[[Any, Ruler], tuple[Picture, ...]] | None = None
    beside: Callable[[Any, Any, Ruler], InStep] | None = None
    alone: bool = False
    files: tuple[File, ...] = ()
    examples: tuple[Example, ...] = ()
    sources: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        names = [f.name for f in self.fields] + [r.name for r in self.results]
        if len(set(names)) != len(names):
            raise ValueError(f"{self.name}: a field or result is named twice")
        if stray := Phrase(self.question).blanks() - {f.name for f in self.fields}:
            raise ValueError(f"{self.name}: the sentence asks for {sorted(stray)}, which no field declares")

    def field(self, name: str) -> Field:
        return next(f for f in self.fields if f.name == name)

    def result(self, name: str) -> Result:
        return next(r for r in self.results if r.name == name)

    @property
    def kinds(self) -> dict[str, Kind]:
        """How to show each field and result, by name."""
        fields = {each.name: each.kind for each in self.fields}
        return fields | {each.name: each.kind for each in self.results}

    @property
    def in_question(self) -> list[str]:
        blanks = Phrase(self.question).blanks()
        return [f.name for f in self.fields if f.name in blanks]

    @property
    def beside_question(self) -> list[str]:
        blanks = Phrase(self.question).blanks()
        return [f.name for f in self.fields if f.name not in blanks]


class InvalidInput(ValueError):
    """Raised when values cannot be used: one sentence for each field concerned, each the person's to mend."""

    def __init__(self, sentences: Mapping[str, Phrase | str]):
        self.sentences = {
            name: each if isinstance(each, Phrase) else say("{sentence:text}", sentence=each)
            for name, each in sentences.items()
        }
        super().__init__("; ".join(f"{name}: {getattr(each, 'template', each)}" for name, each in sentences.items()))


def invalid_input(field_name: str, template: str, **values: Any) -> InvalidInput:
    """The refusal of one field's value in one sentence."""
    return InvalidInput({field_name: say(template, **values)})
