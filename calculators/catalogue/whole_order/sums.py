"""What an order takes in thread, time and money, and what one article of each line has of it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from types import SimpleNamespace

from calculators.catalogue.whole_order.cloths import PlannedCloth
from calculators.catalogue.whole_order.lines import OrderLine
from calculators.trade.articles.counting import thread_by_hand
from calculators.trade.costing import CLOTH, OTHER, THREAD, TIME, Costs
from calculators.trade.thread import thread_ends, thread_for_each_length, whole_spools


@dataclass(frozen=True)
class OrderSums:
    """Stitching and thread [mm], reels and bobbins, hands-on time [min], costs, and of each line the cost of one by its
    place [money]; None where nothing has a price."""

    stitching: Fraction
    thread: Fraction
    spools: int
    bobbins: int
    time: Fraction
    costs: Costs
    each: Mapping[int, Fraction | None]

    @property
    def priced(self) -> bool:
        return len(self.costs.without_price) < 3 or bool(self.costs.parts[OTHER])


def sums_of(lines: Sequence[OrderLine], cloths: Sequence[PlannedCloth], given: SimpleNamespace) -> OrderSums:
    """All sums of an order."""
    stitching = sum((each.stitching for each in lines), Fraction(0))
    thread = sum((_thread(each, given) for each in lines), Fraction(0))
    spools = whole_spools(thread, given.spool)
    time = given.minutes_batch + sum((each.minutes for each in lines), Fraction(0))
    costs = Costs(
        sum(each.count for each in lines),
        {
            CLOTH: _cost_of(cloths),
            THREAD: None if given.price_spool is None else spools * given.price_spool,
            TIME: None if given.rate is None else time * given.rate / 60,
            OTHER: given.bought_besides,
        },
        {},
    )
    lower = sum((_of_the_machine(each, given) for each in lines), Fraction(0)) / 2
    found = OrderSums(stitching, thread, spools, whole_spools(lower, given.bobbin), time, costs, {})
    shares = {each.place: _share(each, lines, cloths, given, found) for each in lines}
    return OrderSums(
        stitching, thread, spools, found.bobbins, time, costs,
        {place: share if found.priced else None for place, share in shares.items()},
    )  # fmt: skip


def _thread(line: OrderLine, given: SimpleNamespace) -> Fraction:
    """The thread of a line, by machine and by hand, with what is wasted [mm].

    Source: derived: the machine's, and what is sewn by hand with the same share for waste.
    """
    by_hand: Fraction = line.count * thread_by_hand(line.made.work) * (1 + given.waste / 100)
    return _of_the_machine(line, given) + by_hand


def _of_the_machine(line: OrderLine, given: SimpleNamespace) -> Fraction:
    """Upper and lower thread of a line, with its ends and what is wasted [mm].

    Source: derived, as for a batch: length for each length of stitching, ends at each row, and a share for waste.
    """
    sewn = line.stitching * thread_for_each_length(given.stitch, given.thickness)
    with_waste: Fraction = (sewn + thread_ends(line.rows, given.thread_end)) * (1 + given.waste / 100)
    return with_waste


def _cost_of(cloths: Sequence[PlannedCloth]) -> Fraction | None:
    """What all cloths cost; None where one has no price, so that no part is taken for the whole."""
    costs = [each.cost for each in cloths]
    return None if None in costs else sum((each for each in costs if each is not None), Fraction(0))


def _share(
    line: OrderLine,
    lines: Sequence[OrderLine],
    cloths: Sequence[PlannedCloth],
    given: SimpleNamespace,
    sums: OrderSums,
) -> Fraction:
    """What one article of a line has of all costs [money].

    Source: derived: of each cloth by the area of its pieces, of the thread by its thread, of the time its own minutes
    and as much of those done once, and of what is bought besides by its number.
    """
    parts, whole = sums.costs.parts, Fraction(0)
    if parts[CLOTH] is not None:
        for cloth in cloths:
            own = sum((each.area for each in cloth.pieces if each.line is line), Fraction(0))
            whole += (cloth.cost or 0) * own / sum(each.area for each in cloth.pieces)
    if parts[THREAD] and sums.thread:
        whole += (parts[THREAD] or 0) * _thread(line, given) / sums.thread
    if parts[TIME]:
        minutes = sums.time - given.minutes_batch
        share = line.minutes / minutes if minutes else Fraction(line.count, sums.costs.pieces)
        whole += (line.minutes + given.minutes_batch * share) * (given.rate or 0) / 60
    whole += (parts[OTHER] or 0) * Fraction(line.count, sums.costs.pieces)
    return whole / line.count
