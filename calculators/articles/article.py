"""What a made-up article is: the few measures a maker has in hand, and how parts and work follow from them."""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Example, Field
from calculators.trade.articles.work import MakingUp

Size = tuple[Fraction, Fraction]


@dataclass(frozen=True)
class Article:
    """An article, declared once.

    name: as typed at a terminal. fields, question: as a calculator's. make: puts parts and work down and returns the
    finished width and length [mm]; raises InvalidInput where measures cannot go together. cut: the names of the parts
    that begin a piece to cut, in their order, whatever is asked; not_always: those of them that some measures do
    without. about: what the finished size is of, such
    as “cover”. buys: what is bought besides the cloth, by name in WHAT_IS_BOUGHT. is_bent: whether a part of
    it lies round and in no plane, as that of a bolster. template: the parts that are printed in true size, since they
    are no rectangles. is_let_down: whether its foot may have to be let down one day, so that the corners there are
    folded and not trimmed. joined_as: the article that it is joined as where it is wider than its cloth; that one asks
    for all that this one asks for.
    """

    name: str
    title: str
    purpose: str
    fields: tuple[Field, ...]
    question: str
    make: Callable[[MakingUp, SimpleNamespace], Size]
    cut: tuple[str, ...]
    examples: tuple[Example, ...]
    not_always: tuple[str, ...] = ()
    about: str = ""
    buys: tuple[str, ...] = ()
    is_bent: bool = False
    template: tuple[str, ...] = ()
    is_let_down: bool = False
    joined_as: str = ""
    sources: tuple[str, ...] = ()
