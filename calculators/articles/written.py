"""An article made from what is written of it elsewhere than on its own page: two sizes, and one text of all else."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from types import SimpleNamespace
from typing import Any

from calculators.articles.article import Article
from calculators.articles.calculator import Made, as_calculator, made
from calculators.articles.line import measures_in, size_fields
from calculators.asking.answering import Asking, filled, read
from calculators.asking.declaration import InvalidInput
from calculators.asking.timing import refuse_half_timed
from calculators.values.kind import InvalidValue


def made_as_written(
    article: Article,
    sizes: Sequence[Fraction | None],
    measures: str,
    asking: Asking,
    taken: Mapping[str, Any],
    count: int = 1,
) -> tuple[SimpleNamespace, Made]:
    """The values of its blanks and what it comes to.

    sizes: those written [mm], None for one left to the handbook. measures: the text of all others. asking: the
    circumstances. taken: by the names of blanks, what comes from elsewhere, such as the cloth.
    Raises InvalidValue with one sentence for the first thing that cannot be.
    """
    calculator = as_calculator(article)
    written = {
        field.name: field.kind.write_exactly(value, asking.ruler)
        for field, value in zip(size_fields(article), sizes)
        if value is not None
    }
    names = {field.name for field in article.fields}
    here = replace(
        asking,
        typed={"count": str(count), **written, **measures_in(article, measures, asking.ruler)},
        taken={name: value for name, value in taken.items() if name in names},
    )
    try:
        values = SimpleNamespace(**read(calculator, here), ruler=asking.ruler, asking=here)
        refuse_half_timed(count, values)
        return values, made(article, values)
    except InvalidInput as problem:
        first = next(iter(problem.sentences.values()))
        raise InvalidValue(filled(first, calculator, asking.ruler)) from None
