"""An article as a line of an order: what it is, how many, its two sizes, and its other measures in one text, such as
“Overlap 12 cm, Seams french”."""

import re
from types import SimpleNamespace

from calculators.articles.article import Article
from calculators.asking.declaration import Field
from calculators.asking.timing import FIRST_ONES
from calculators.values.duration import Minutes
from calculators.values.kind import InvalidValue
from calculators.values.kinds import NamedMeasures
from calculators.values.measure import Ruler, quote

#: What the order says of the cloth itself, and a line of it therefore does not.
OF_THE_CLOTH = ("cloth_width", "measured", "selvedge")
_SIZES, _MOST_NAMED = 2, 8
MINUTES_EACH = Field("minutes_each", "Minutes for each", Minutes(), "Hands-on.", known_as=())
_OF_THE_TIME = (MINUTES_EACH, *FIRST_ONES)


def size_fields(article: Article) -> tuple[Field, ...]:
    """The one or two blanks that say how large it is: the first lengths that its sentence asks for."""
    lengths = {each.name: each for each in article.fields if _is_length(each)}
    asked = re.findall(r"\{(\w+)\}", article.question)
    return tuple(lengths[name] for name in asked if name in lengths and name not in OF_THE_CLOTH)[:_SIZES]


def other_fields(article: Article) -> tuple[Field, ...]:
    """The blanks whose values stand in the text of a line, its minutes last."""
    beside = (*size_fields(article), *(each for each in article.fields if each.name in OF_THE_CLOTH))
    return (*(each for each in article.fields if each not in beside), *_OF_THE_TIME)


def line_of(article: Article, given: SimpleNamespace) -> list[str]:
    """An article as it was asked for, as a line: its name, how many, two sizes, no cloth, and its other measures."""
    sizes = [each.kind.write_exactly(getattr(given, each.name), given.ruler) for each in size_fields(article)]
    sizes += [""] * (_SIZES - len(sizes))
    return [article.name, str(given.count), *sizes, "", ", ".join(_told(article, given))]


def _is_length(field: Field) -> bool:
    return "cm" in field.kind.units


def _told(article: Article, given: SimpleNamespace) -> list[str]:
    told = []
    for field in other_fields(article):
        value = getattr(given, field.name)
        if value is None or (field in _OF_THE_TIME and field.name not in given.asking.typed):
            continue  # the house’s minutes stay the house’s
        told.append(f"{field.label} {field.kind.write_exactly(value, given.ruler)}")
    return told


def measures_in(article: Article, text: str, ruler: Ruler) -> dict[str, str]:
    """The measures in the text of a line, by the names of their blanks; raises InvalidValue with one sentence for what
    is none, stands there twice, or is a length without its unit."""
    found: dict[str, str] = {}
    fields = other_fields(article)
    for part in NamedMeasures.parts(text):
        field = _begun_with(fields, part)
        if field is None:
            raise InvalidValue(f"“{quote(part)}” is none of its measures. They are: {_named(fields)}.")
        if field.name in found:
            raise InvalidValue(f"{field.label} stands there twice. Write it once.")
        value = part[len(field.label) :].lstrip(" :").strip()
        if not value:
            raise InvalidValue(f"{field.label} has no value. Write it behind the name.")
        if _is_length(field):
            _refuse_bare(field, value, ruler)
        found[field.name] = value
    return found


def _refuse_bare(field: Field, value: str, ruler: Ruler) -> None:
    try:
        field.kind.parse(value, ruler)
    except InvalidValue as problem:
        raise InvalidValue(f"{field.label}: {problem}") from None
    with_unit = field.kind.write_out(value, ruler)
    if with_unit != value and value != "0":
        raise InvalidValue(f"{field.label} has no unit. Write which is meant, such as {with_unit}.")


def _begun_with(fields: tuple[Field, ...], part: str) -> Field | None:
    """The blank whose label a text begins with, the longest of those that fit."""
    fitting = [each for each in fields if re.match(rf"{re.escape(each.label)}(?![^\W\d_])", part, re.IGNORECASE)]
    return max(fitting, key=lambda each: len(each.label), default=None)


def _named(fields: tuple[Field, ...]) -> str:
    """The names of measures, the first few of many."""
    names = [each.label for each in fields]
    more = f" and {len(names) - _MOST_NAMED} more, as on its page" if len(names) > _MOST_NAMED else ""
    return f"{', '.join(names[:_MOST_NAMED])}{more}"
