"""The lines of an order, each made as its own page makes it."""

from dataclasses import dataclass
from fractions import Fraction
from types import SimpleNamespace
from typing import Any

from calculators.articles import articles
from calculators.articles.article import Article
from calculators.articles.calculator import Made
from calculators.articles.line import size_fields
from calculators.articles.written import made_as_written
from calculators.asking.declaration import Field, invalid_input
from calculators.asking.timing import minutes_for
from calculators.trade.articles.counting import rows_begun
from calculators.trade.cloth import after_the_wash
from calculators.values.kind import InvalidValue


@dataclass(frozen=True)
class OrderLine:
    """A line of an order as it is made.

    place: where it stands among all lines, from 0. cloth: the row of the cloth that it is cut from. given: the values
    of its blanks. sizes_left: the blanks of its size that were left empty.
    """

    place: int
    article: Article
    count: int
    cloth: SimpleNamespace
    given: SimpleNamespace
    made: Made
    sizes_left: tuple[Field, ...]

    @property
    def name(self) -> str:
        return self.article.title

    @property
    def stitching(self) -> Fraction:
        """All rows of all of them [mm].

        Source: derived, the stitching of one so many times.
        """
        return self.count * self.made.work.stitching

    @property
    def rows(self) -> int:
        """How often stitching starts and stops on all of them."""
        return self.count * rows_begun(self.made.work)

    @property
    def minutes(self) -> Fraction:
        """Hands-on for all of them, what is done once for the order left out [min].

        Source: `minutes_for`.
        """
        return minutes_for(self.count, self.given.minutes_each, self.given)


def lines_of(given: SimpleNamespace) -> list[OrderLine]:
    """Every line, made; raises InvalidInput at the lines with one sentence for the first that cannot be made."""
    return [_line(row, given) for row in given.lines]


def cloth_called(name: str, given: SimpleNamespace) -> SimpleNamespace | None:
    """The row of a cloth by its name, however it is written large or small; the first of several."""
    return next((each for each in given.cloths if each.name.casefold() == name.casefold()), None)


def washed_width(cloth: SimpleNamespace, given: SimpleNamespace) -> Fraction:
    """How wide a cloth is once it is washed [mm].

    Source: derived, by `after_the_wash`.
    """
    change = given.change_width if cloth.change_width is None else cloth.change_width
    return after_the_wash(cloth.width, change)


def _line(row: SimpleNamespace, order: SimpleNamespace) -> OrderLine:
    article = articles()[row.article]
    where = f"row {row.place + 1}, {article.title}"
    cloth = cloth_called(row.cloth, order) if row.cloth else order.cloths[0]
    if cloth is None:
        raise invalid_input(
            "lines",
            "{where:text}: there is no cloth called “{cloth:text}” below. Write its name as it stands there.",
            where=where, cloth=row.cloth,
        )  # fmt: skip
    of_the_cloth: dict[str, Any] = {
        "cloth_width": washed_width(cloth, order), "measured": cloth.measured, "selvedge": order.selvedge
    }  # fmt: skip
    sizes = row.size, row.by
    try:
        values, put_down = made_as_written(article, sizes, row.measures or "", order.asking, of_the_cloth, row.count)
    except InvalidValue as problem:
        raise invalid_input("lines", "{where:text}: {message:text}", where=where, message=str(problem)) from None
    left = tuple(field for field, value in zip(size_fields(article), sizes) if value is None)
    return OrderLine(row.place, article, row.count, cloth, values, put_down, left)
