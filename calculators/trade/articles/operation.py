"""What an article is made up of and by: operations on edges, what is bought, straps, and kinds of seam."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from calculators.trade.articles.finishes import KEPT, RAW, SEAM, STRAP, TURNED_UNDER, Finish, Glue
from calculators.trade.articles.parts import EdgeStretch, FlatPart


@dataclass(frozen=True)
class Operation:
    """One operation of the making up.

    verb: the kind of operation. do: one command without its full stop, with ``{name}`` where one of its lengths
    belongs. lengths: those told [mm]. how: what belongs to doing it. rules: keys of the trade's rules it needs.
    finishes: what it does to which edges. glues: what it joins. along: where it is stitched besides. inset: how far
    inside those edges its row is seen, where it is no hem's [mm]. across: parts that
    it is stitched across, each with how far above their foot [mm]. rows: rows of stitches along all the others.
    stitched: what a stitching elsewhere comes to [mm]. section: which hem or seam of `trade/sections` it is, "" for
    none. by_hand: which stitch of `trade/stitches` its rows are sewn with by hand, "" for the machine.
    """

    verb: str
    do: str
    lengths: Mapping[str, Fraction] = field(default_factory=dict)
    how: str = ""
    rules: tuple[str, ...] = ()
    finishes: tuple[Finish, ...] = ()
    glues: tuple[Glue, ...] = ()
    along: tuple[EdgeStretch, ...] = ()
    inset: Fraction = Fraction(0)
    across: tuple[tuple[FlatPart, Fraction], ...] = ()
    rows: int = 1
    stitched: Fraction = Fraction(0)
    section: str = ""
    by_hand: str = ""

    @property
    def edges(self) -> tuple[EdgeStretch, ...]:
        """Where work is done."""
        return (*(each.stretch for each in self.finishes), *self.along)

    @property
    def stitching(self) -> Fraction:
        """The length of its rows of the machine on one article [mm].

        Source: derived, its rows, unless they are sewn by hand.
        """
        return Fraction(0) if self.by_hand else self.rows_sewn

    @property
    def rows_sewn(self) -> Fraction:
        """The length of its rows of stitches on one article, by machine or by hand [mm].

        Source: derived, each row as long as its finished edge, a seam once for both its edges. A row further in is
        shorter, so it is a little more than is stitched.
        """
        joined = merged([each.one for each in self.glues])
        seams = sum((each.length * each.part.count for each in joined), Fraction(0))
        sewn = {SEAM, KEPT, RAW, STRAP, TURNED_UNDER}
        hems = sum(
            (each.stretch.length * each.stretch.part.count for each in self.finishes if each.how not in sewn),
            Fraction(0),
        )
        beside = sum((each.length * each.part.count for each in self.along if not self.glues), Fraction(0))
        return self.rows * (seams + hems + beside) + self.stitched


@dataclass(frozen=True)
class Purchase:
    """Something to buy beside the cloth. length: of it, or how long it is [mm]; None where it is counted only."""

    thing: str
    count: int = 1
    length: Fraction | None = None


@dataclass(frozen=True)
class Strap:
    """A loop or a tie, and the stretches of edges that its ends come out of."""

    part: FlatPart
    ends: tuple[EdgeStretch, ...]


@dataclass(frozen=True)
class SeamKind:
    """A kind of seam: its name on a page, what it takes up at each edge [mm], its rows of stitches, which it is of
    `trade/sections`, how its pieces lie for the first row, where that is stitched, and what belongs to doing it.
    lengths: told in these texts besides the allowance [mm]."""

    name: str
    allowance: Fraction
    rows: int = 1
    section: str = ""
    lie: str = "right sides together"
    where: str = "{allowance} from the edges"
    how: str = ""
    lengths: Mapping[str, Fraction] = field(default_factory=dict)


def merged(stretches: Sequence[EdgeStretch]) -> list[EdgeStretch]:
    """Stretches of one side that overlap or meet, as one: two parts that overlap are sewn to it at once."""
    found: list[EdgeStretch] = []
    for each in stretches:
        low, high = sorted((each.start, each.end))
        for number, other in enumerate(found):
            if (other.part, other.side) == (each.part, each.side) and low <= other.end and other.start <= high:
                found[number] = replace(other, start=min(low, other.start), end=max(high, other.end))
                break
        else:
            found.append(replace(each, start=low, end=high))
    return found
