"""What every kind of value can do: a kind says itself how it is asked, read, written, shown, tried out and refused, so
that no face, no test and no document asks which kind it has before it."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from random import Random
from typing import Any, ClassVar, Literal, Protocol

from calculators.values.measure import Ruler

Control = Literal["line", "list", "rows"]
Layout = Literal["figure", "marks", "table"]


class Headed(Protocol):
    """A column of a table: name of its value in a row, and the words over it."""

    @property
    def name(self) -> str: ...
    @property
    def label(self) -> str: ...


class InColumns(Protocol):
    """What a kind that is shown as a table says of it: the columns that a maker reads, and what stands in them."""

    @property
    def read(self) -> tuple[Headed, ...]: ...
    def cells(self, row: Mapping[str, Any], ruler: Ruler) -> list[str]: ...


class InvalidValue(ValueError):
    """Raised with one sentence for the person: what is wrong with what she typed and what would be right."""


LONGEST_NUMBER = 60


def number_as_typed(text: str) -> str:
    """What was typed where a number is asked for, without spaces around it; raises InvalidValue where it is longer than
    any number."""
    if len(text) > LONGEST_NUMBER:
        raise InvalidValue(
            f"that is {len(text)} characters long, and a number has at most {LONGEST_NUMBER}. Write it in fewer, "
            "such as 12.5."
        )
    return text.strip()


@dataclass(frozen=True)
class Kind:
    """What every kind of value can do.

    mode: the on-screen keyboard that suits it.
    keys: the row of keys above that keyboard, for what it lacks; empty where it lacks nothing.
    control: what it is asked with: a line to write on, a list to choose from, or rows of blanks.
    layout: how it is shown in an answer: as a figure among all measures, as marks one after another, or as a table of
    its own.
    in_words: whether words are written on its line, which is then a long one.
    two_figures: whether a house may settle it with a round figure for each ruler, of which the other follows where one
    is written.
    in_one_row: whether two equal ones may stand in one row of all measures, where none takes the figure for their sum.
    units: every unit it is written in, and how many of what `plain` counts in one of them is; a page holds each on one
    line with its number.
    format_specs: the words for it behind the colon of a blank in a sentence, each with what the kind is made with.
    """

    mode: ClassVar[str] = "text"
    keys: ClassVar[str] = ""
    control: ClassVar[Control] = "line"
    layout: ClassVar[Layout] = "figure"
    in_words: ClassVar[bool] = False
    two_figures: ClassVar[bool] = False
    in_one_row: ClassVar[bool] = False
    units: ClassVar[Mapping[str, Fraction]] = {}
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {}

    def __init_subclass__(cls, **others: Any) -> None:
        super().__init_subclass__(**others)
        _enter(cls)

    # Asked

    @property
    def choices(self) -> Mapping[str, str]:
        """What may be chosen, each with the words shown for it; empty where it is written."""
        return {}

    def parse(self, text: str, ruler: Ruler) -> Any:
        """Read what was typed; raises InvalidValue with one sentence."""
        raise NotImplementedError

    def carried(self, value: Any, ruler: Ruler) -> Any:
        """A value taken over from elsewhere, if it can stand here; raises InvalidValue with one sentence."""
        return value

    def instead(self, text: str, ruler: Ruler) -> str:
        """What a button beside a refused text offers to put there; empty where nothing is offered."""
        return ""

    # Written

    def write(self, value: Any, ruler: Ruler) -> str:
        """The value as text for a blank: it reads back as what is shown."""
        return self.show(value, ruler)

    def write_exactly(self, value: Any, ruler: Ruler) -> str:
        """The value as text that reads back as the value itself, however odd it looks on the ruler."""
        return self.write(value, ruler)

    def write_out(self, text: str, ruler: Ruler) -> str:
        """What was typed, with the unit it was read in added, so that it keeps its meaning on another ruler."""
        return text

    def standing(self, text: str) -> str:
        """A text that fills a field, in the form in which a page puts it into the field's control."""
        return text

    def on_ruler(self, text: str, ruler: Ruler) -> str:
        """A text of the house method, as it stands in a blank on the ruler in hand; read is always the text itself."""
        return text

    def system(self, text: str) -> str:
        """The ruler a text is written for: "cm", "in", or "" where it says neither."""
        return ""

    # Shown

    def show(self, value: Any, ruler: Ruler) -> str:
        """The value as a maker reads it."""
        raise NotImplementedError

    def house_text(self, text: str, ruler: Ruler) -> str:
        """A text of the house method as its pages tell it."""
        return text

    def plain(self, value: Any) -> Any:
        """The value as JSON: lengths as numbers in millimetres."""
        return value

    def marks(self, value: Any, ruler: Ruler) -> list[str]:
        """The value as marks one after another."""
        return [self.show(value, ruler)]

    @property
    def table(self) -> InColumns | None:
        """What is read in its columns; None where it is not shown as a table."""
        return None

    # Tried out

    def samples(self, chance: Random, near: str = "") -> list[str]:
        """Texts by chance that it lets through, its limits among them.

        near: a text that it lets through, to stay near to where that makes sense.
        """
        raise NotImplementedError(f"{type(self).__name__} gives no samples of what it lets through")

    def invalid_samples(self, chance: Random) -> list[str]:
        """Texts by chance that it refuses, those just beyond its limits among them."""
        raise NotImplementedError(f"{type(self).__name__} gives no samples of what it refuses")


_UNITS: dict[str, Fraction] = {}
_SAID_AS: dict[str, tuple[type[Kind], Mapping[str, Any]]] = {}


def _enter(kind: type[Kind]) -> None:
    """Make known the units of a new kind and the words for it; raises ValueError where two kinds differ on one."""
    for unit, size in kind.__dict__.get("units", {}).items():
        if _UNITS.setdefault(unit, size) != size:
            raise ValueError(f"{kind.__name__}: another kind has {unit} as well, of another size")
    for word, made_with in kind.__dict__.get("format_specs", {}).items():
        if _SAID_AS.setdefault(word, (kind, made_with))[0].__qualname__ != kind.__qualname__:
            raise ValueError(f"{kind.__name__}: {_SAID_AS[word][0].__name__} is said as {word} already")


def units() -> Mapping[str, Fraction]:
    """Every unit of every kind, and how many of what a plain answer counts in one of them is."""
    return _UNITS


def kind_for_spec(word: str) -> Kind:
    """The kind for a word behind the colon of a blank; raises KeyError where none is said so."""
    kind, made_with = _SAID_AS[word]
    return kind(**made_with)


def plain_number(value: Fraction | float | int) -> int | float:
    """A number for JSON: whole where it is whole, without the noise in the last bits that differs between machines."""
    if isinstance(value, float):
        value = float(f"{value:.12g}")
    number = float(value)
    if not math.isfinite(number):
        raise ValueError(f"{value} is not a finite number")
    return int(number) if number == int(number) else number
