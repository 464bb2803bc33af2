"""What a batch costs: its cloth, thread, hours and whatever else each piece needs."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

CLOTH, THREAD, TIME, OTHER = "cloth", "thread", "time", "other"


def cloth_of_the_rows(bought: Fraction, rows: int, of_rows: int) -> Fraction:
    """The share of a cloth that pieces take where it gives more rows than they need; the others are left whole.

    bought: the whole length [mm]. rows: those that are cut; of_rows: all that the cloth gives.
    Returns the length that these rows are charged with, ends and slant shared out alike [mm].
    Source: derived, bought × rows ÷ all rows.
    """
    return bought * min(rows, of_rows) / of_rows


@dataclass(frozen=True)
class Costs:
    """What a batch costs, part by part.

    pieces: how many are made.
    parts: CLOTH, THREAD, TIME and OTHER → what each costs for the batch [money]; None for one that has no price.
    for_one_more: the same parts → what one more piece adds [money].
    """

    pieces: int
    parts: Mapping[str, Fraction | None]
    for_one_more: Mapping[str, Fraction | None]

    @property
    def total(self) -> Fraction:
        """All parts that have a price [money].

        Source: derived, the parts that have a price added up.
        """
        return sum((cost for cost in self.parts.values() if cost is not None), Fraction(0))

    @property
    def each(self) -> Fraction:
        """A piece's share of the total [money].

        Source: derived, the total shared out evenly.
        """
        return self.total / self.pieces

    @property
    def one_more(self) -> Fraction:
        """What one more piece adds [money].

        Source: derived, what each part grows by, added up; what a batch costs once is not in it.
        """
        return sum((cost for cost in self.for_one_more.values() if cost is not None), Fraction(0))

    @property
    def largest(self) -> str:
        """The part that costs most, empty when nothing costs anything."""
        name = max(self.parts, key=lambda each: self.parts[each] or 0)
        return name if self.parts[name] else ""

    @property
    def without_price(self) -> tuple[str, ...]:
        """The parts that are not in the sum."""
        return tuple(name for name, cost in self.parts.items() if cost is None)


def costs_of(
    pieces: int,
    cloth: tuple[Fraction, int, Fraction | None],
    thread: tuple[int, Fraction, Fraction | None],
    time: tuple[Fraction, Fraction, Fraction | None],
    other: Fraction,
) -> Costs:
    """What a batch costs.

    pieces: how many are made.
    cloth: length that these pieces take [mm], pieces that so much gives, price of a metre of it [money].
    thread: spools bought, what one more piece takes of a spool [spools], price of a spool [money].
    time: hands-on for the batch [min] and for one more piece [min], price of an hour [money].
    other: what each piece needs besides [money].
    Returns every part, and what one more piece adds: its share of the cloth, its own thread and minutes, and the rest.
    Source: derived, amounts of cloth, thread and time, each times its price.
    """
    length, gives, of_metre = cloth
    spools, of_a_spool_more, of_spool = thread
    whole_time, time_more, of_hour = time
    whole_cloth = None if of_metre is None else length * of_metre / 1000
    return Costs(
        pieces,
        {
            CLOTH: whole_cloth,
            THREAD: None if of_spool is None else spools * of_spool,
            TIME: None if of_hour is None else whole_time * of_hour / 60,
            OTHER: pieces * other,
        },
        {
            CLOTH: None if whole_cloth is None else whole_cloth / gives,
            THREAD: None if of_spool is None else of_a_spool_more * of_spool,
            TIME: None if of_hour is None else time_more * of_hour / 60,
            OTHER: other,
        },
    )
