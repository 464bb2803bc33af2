"""From what was typed to an answer: the one path that every face takes."""

import dataclasses
from collections.abc import Iterator, Mapping
from contextlib import suppress
from functools import cached_property
from types import SimpleNamespace
from typing import Any

from calculators.asking.declaration import Answer, Calculator, Field, InvalidInput
from calculators.asking.house_method import HouseMethod, on_ruler
from calculators.asking.site_method import site_method
from calculators.values.kind import InvalidValue
from calculators.values.measure import Ruler, quote
from calculators.values.phrase import Phrase


@dataclasses.dataclass(frozen=True)
class Asking:
    """The circumstances of one question: what was typed, what comes from elsewhere, whose method, which ruler.

    typed: field name → text, only for fields the person filled in.
    taken: field name → exact value taken over from another calculator's answer.
    wanted_ruler: as for HouseMethod.ruler, empty for the one the house reads by habit.
    """

    typed: Mapping[str, str]
    taken: Mapping[str, Any] = dataclasses.field(default_factory=dict)
    method: HouseMethod = dataclasses.field(default_factory=site_method)
    wanted_ruler: str = ""
    _found: dict[int, tuple[Field, str]] = dataclasses.field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    @cached_property
    def ruler(self) -> Ruler:
        """The ruler in hand."""
        return self.method.ruler(self.wanted_ruler)

    def text(self, field: Field) -> str:
        """What stands in a field: what was typed, else what was taken over, else the house's measure.

        A blank that is emptied asks for a value, unless there is one to take over again; no job keeps an empty text.
        """
        typed = self.typed.get(field.name)
        taken_again = field.name in self.taken or (field.optional and field.from_method)
        if typed is not None and (typed.strip() or not taken_again):
            return typed
        if field.name in self.taken:
            return field.kind.write(self.taken[field.name], self.ruler)
        return self.usual(field)

    def usual(self, field: Field) -> str:
        """What fills a field that is left alone and takes nothing over."""
        if field.default:
            return self.method.measure(field.default, self.ruler)
        return field.kind.on_ruler(self._of_the_method(field), self.ruler) or on_ruler(field.fixed or "", self.ruler)

    def value(self, field: Field) -> Any:
        """The value of a field, None where it may stay empty and does; raises InvalidValue when it cannot be read."""
        if not self.typed.get(field.name, "").strip() and field.name in self.taken:
            return field.kind.carried(self.taken[field.name], self.ruler)
        text = self.text(field)
        if not text.strip():
            if field.optional:
                return None
            raise InvalidValue(f"nothing is written here. Write {_sample(field, self)}.")
        as_the_house_wrote_it = (
            "" if self.typed.get(field.name, "").strip() else self._of_the_method(field) or self._exactly(field)
        )
        return field.kind.parse(as_the_house_wrote_it or text, self.ruler)

    def _exactly(self, field: Field) -> str:
        """What stands behind a measure of the house that its text rounds to the ruler; empty where the text is all
        there is."""
        return on_ruler(self.method.exactly.get(field.default or "", ""), self.ruler)

    def _of_the_method(self, field: Field) -> str:
        """What several entries of the method come to, worked out once: it may take as long as the answer."""
        if not field.from_method:
            return ""
        if id(field) not in self._found:
            try:
                text = field.from_method(self.method, self.ruler, *map(self.value, field.beside))
            except InvalidValue:
                text = ""  # a field beside it is asked again
            self._found[id(field)] = field, text  # the field is held, so that no other gets its number
        return self._found[id(field)][1]


def answers(calculator: Calculator, asking: Asking) -> Iterator[Answer | None]:
    """Answers that may still improve, the best last; None between two of them is a moment to look up from the work.

    Raises InvalidInput with a sentence for every field whose value cannot be used.
    """
    worked = calculator.work(SimpleNamespace(**read(calculator, asking), ruler=asking.ruler, asking=asking))
    if isinstance(worked, Answer):
        yield worked
    else:
        yield from worked


def answer(calculator: Calculator, asking: Asking) -> Answer:
    """Work out a calculator's answer to the end; raises as `answers` does."""
    *_, best = (each for each in answers(calculator, asking) if each is not None)
    return best


def read(calculator: Calculator, asking: Asking) -> dict[str, Any]:
    """The value of every field; raises InvalidInput naming all that cannot be read."""
    values, messages = {}, {}
    names = [f.name for f in calculator.fields]
    for field in calculator.fields:
        try:
            values[field.name] = asking.value(field)
        except InvalidValue as problem:
            messages[field.name] = f"{field.label}: {problem}"
    for stray in (name for name in asking.typed if name not in names):
        messages[stray] = f"There is no blank called “{quote(stray)}” here. The blanks are: {', '.join(names)}."
    if messages:
        raise InvalidInput(messages)
    return values


def _sample(field: Field, asking: Asking) -> str:
    usual = asking.usual(field)
    return f"a value, such as {usual}" if usual else "a value"


def written(calculator: Calculator, asking: Asking) -> dict[str, str]:
    """What was typed and can be read, with the unit it was read in added where there was none."""
    texts = {}
    for field in (each for each in calculator.fields if each.name in asking.typed):
        text = asking.typed[field.name]
        with suppress(InvalidValue):
            field.kind.parse(text, asking.ruler)
            texts[field.name] = field.kind.write_out(text, asking.ruler)
    return texts


def filled(phrase: Phrase, calculator: Calculator, ruler: Ruler) -> str:
    """A phrase of an answer as text, its blanks shown as the calculator declares them."""
    return phrase.filled(ruler, calculator.kinds)
