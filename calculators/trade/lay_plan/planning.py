"""A whole order planned: on one cloth or several, for each aim, with what any other plan could reach at best."""

from collections import Counter
from collections.abc import Generator, Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from fractions import Fraction

from calculators.trade.lay_plan.fit import Fitting
from calculators.trade.lay_plan.fitted import Fit
from calculators.trade.lay_plan.joins import Join, with_joins
from calculators.trade.lay_plan.laid import Lay
from calculators.trade.lay_plan.order import CannotPlan, Order, Wanted
from calculators.trade.lay_plan.order_check import check_order
from calculators.trade.lay_plan.usable import Usable, length_to_start_from, usable_part

STEPS = 160
FEW_STEPS = 40


@dataclass(frozen=True)
class PlannedOrder:
    """An order as planned.

    pieces: what is cut, joins taken apart. lays: each cloth that is cut. result, bound: as in Fit, over all
    cloths, lengths in [mm].
    hindered: whether flaws or a repeat had to be stepped over.
    instead: a plan that leaves out a kind of piece, or some ordered by number, and so has more pieces than this one,
    which keeps them; result
        and bound here are then over plans that keep as much.
    """

    order: Order
    pieces: tuple[Wanted, ...]
    joins: tuple[Join, ...]
    lays: tuple[Lay, ...]
    result: Fraction
    bound: Fraction | None
    hindered: bool = False
    instead: "PlannedOrder | None" = None

    @property
    def counts(self) -> Counter[int]:
        return sum((lay.counts for lay in self.lays), Counter[int]())

    @property
    def missing(self) -> dict[int, int]:
        """How many of each piece are ordered and not cut, where any are."""
        counts = self.counts
        short = {
            number: piece.count - counts[number] for number, piece in enumerate(self.pieces) if piece.count is not None
        }
        return {number: count for number, count in short.items() if count > 0}

    @property
    def made(self) -> tuple[int, ...]:
        """How many of each piece ordered can be made; one joined from widths once all its parts are cut."""
        counts = self.counts
        return tuple(
            min(counts[number] // copies for number, copies in parts.items())
            for parts in _parts_of_one(self.order, self.joins)
        )

    @property
    def proven(self) -> bool:
        """Whether no plan under the same rules can be better."""
        return self.result == self.bound

    @property
    def open_ended(self) -> bool:
        """Whether the least length was asked for."""
        return self.order.rules.aim in ("shortest", "buy")

    @property
    def to_start_from(self) -> Fraction:
        """Unwashed length that the plan needs, with what is cut off both ends [mm].

        Source: derived, the length used taken back to unwashed cloth by `length_to_start_from`.
        """
        return length_to_start_from(self.lays[0].used_length, self.order.rules)

    @property
    def short_by(self) -> Fraction:
        """How much longer the first cloth would have to be, when the whole order does not fit on it [mm]; else 0.

        Source: derived, the length that the plan needs less the length there is.
        """
        length = usable_part(self.order.cloths[0], self.order.rules).length
        return (
            max(Fraction(0), self.result - length)
            if self.order.rules.aim == "shortest" and length is not None
            else Fraction(0)
        )


def plan_order(order: Order, steps: int = STEPS, keeping: bool = True) -> Iterator[PlannedOrder | None]:
    """Ever better plans for an order; None for a step that changed nothing.

    keeping: where not everything fits and no piece is said to count more than another, a plan that keeps every kind of
    piece is better than one
        with more pieces, and so is one that keeps what is ordered by number before what is cut as often as it fits.
    Raises CannotPlan with one sentence when the order cannot be planned.
    """
    cloths = [usable_part(cloth, order.rules) for cloth in order.cloths]
    pieces, joins = with_joins(order.pieces, max(cloth.width for cloth in cloths), order.rules.seam_allowance)
    check_order(order, pieces, cloths)
    planning = _Planning(order, pieces, joins, cloths, steps)
    best: PlannedOrder | None = None
    for outcome in {
        "most": planning.most,
        "shortest": planning.shortest,
        "buy": planning.to_buy,
        "shelf": planning.from_shelf,
    }[order.rules.aim]():
        best = outcome or best
        yield outcome
    if keeping and best and _leaves_out(best):
        yield from planning.keeping(best)


def _leaves_out(outcome: PlannedOrder) -> bool:
    """Whether a plan leaves out what nobody said could be spared: a kind of piece, or pieces ordered by number for
    others that were not."""
    pieces = outcome.order.pieces
    if outcome.open_ended or len({piece.matters for piece in pieces}) > 1:
        return False
    return not all(outcome.made) or bool(outcome.missing) and any(piece.count is None for piece in pieces)


def _kept(outcome: PlannedOrder) -> tuple[int, int, Fraction]:
    """How much a plan keeps: kinds of piece, then what was ordered by number where others were not, then all it
    gives."""
    open_ended = any(piece.count is None for piece in outcome.order.pieces)
    by_number = (
        sum(made for made, piece in zip(outcome.made, outcome.order.pieces) if piece.count is not None)
        if open_ended
        else 0
    )
    return sum(made > 0 for made in outcome.made), by_number, outcome.result


def _parts_of_one(order: Order, joins: tuple[Join, ...]) -> Iterator[dict[int, int]]:
    """For each piece ordered the parts to be cut for one of it: their number among the pieces to be cut, and how
    many."""
    part, waiting = 0, list(joins)
    for piece in order.pieces:
        if waiting and waiting[0].piece is piece:
            yield {part: waiting.pop(0).full_widths, part + 1: 2}
            part += 2
        else:
            yield {part: 1}
            part += 1


class _Planning:
    def __init__(
        self, order: Order, pieces: tuple[Wanted, ...], joins: tuple[Join, ...], cloths: list[Usable], steps: int
    ):
        self.order, self.pieces, self.joins, self.cloths, self.steps = order, pieces, joins, cloths, steps
        self.first: dict[int, int] = {}

    def keeping(self, left_out: PlannedOrder) -> Iterator[PlannedOrder | None]:
        """Plans that keep more than the best without such a wish, if there are any."""
        self.first = {
            number: copies for parts in _parts_of_one(self.order, self.joins) for number, copies in parts.items()
        }
        best = left_out
        with suppress(CannotPlan):
            for outcome in self._on_shelf("count" if self.order.rules.aim == "most" else "area"):
                if outcome and _kept(outcome) >= _kept(best) and _kept(outcome) > _kept(left_out):
                    bound = left_out.bound if outcome.bound is None else outcome.bound
                    best = replace(outcome, bound=bound, instead=left_out if left_out.result > outcome.result else None)
                    yield best
                else:
                    yield None

    def _on_shelf(self, goal: str) -> Iterator[PlannedOrder | None]:
        """Plans on all cloths there are."""
        shelf = self._shelf()
        if len(shelf) == 1:
            yield from self._on_one(shelf[0], goal)
        else:
            yield from self._one_after_another(shelf, goal)

    def most(self) -> Iterator[PlannedOrder | None]:
        shelf = self._shelf()
        if len(shelf) == 1:
            yield from self._on_one(shelf[0], "count")
            return
        lays = yield from self._one_after_another(shelf, "count")
        bound = yield from self._together(shelf)
        yield self._outcome(lays, self._worth(lays), bound, shelf)

    def shortest(self) -> Iterator[PlannedOrder | None]:
        yield from self._on_one(replace(self.cloths[0], length=None), "length")

    def to_buy(self) -> Iterator[PlannedOrder | None]:
        """The cloth of which the least area must be bought, bought in one length."""
        best: PlannedOrder | None = None
        steps = max(FEW_STEPS, self.steps // len(self.cloths))
        for cloth in self.cloths:
            if any(min((width for width, _ in _ways(piece, cloth))) > cloth.width for piece in self.pieces):
                continue
            for outcome in self._on_one(replace(cloth, length=None, flaws=()), "length", steps):
                if outcome and (
                    best is None
                    or self._bought(outcome) < self._bought(best)
                    or outcome.lays[0].cloth.cloth is best.lays[0].cloth.cloth
                ):
                    best = outcome
                    yield best
                else:
                    yield None

    def from_shelf(self) -> Iterator[PlannedOrder | None]:
        """The smallest cloth that takes the whole order, else cloth after cloth, the largest first."""
        wanted = sum(piece.count or 0 for piece in self.pieces)
        shelf = self._shelf()
        distinct = sorted({id(cloth): cloth for cloth in shelf}.values(), key=lambda cloth: cloth.area)
        need = sum(((piece.count or 0) * piece.width * piece.length for piece in self.pieces), Fraction(0))
        for cloth in distinct if len(shelf) > 1 else ():
            if cloth.area < need:
                continue
            for outcome in self._on_one(cloth, "area", max(FEW_STEPS, self.steps // len(distinct))):
                if outcome and not outcome.missing and sum(outcome.counts.values()) >= wanted:
                    yield outcome
                    return
                yield None
        if len(shelf) == 1:
            yield from self._on_one(shelf[0], "area")
            return
        lays = yield from self._one_after_another(shelf, "area")
        bound = None if self._missing(lays) else self._area(lays)
        yield self._outcome(lays, self._area(lays), bound, shelf)

    def _on_one(self, cloth: Usable, goal: str, steps: int | None = None) -> Iterator[PlannedOrder | None]:
        fitting = Fitting(cloth, self.pieces, self.order.rules, goal, self.first)
        best: Fit | None = None
        for fit in fitting.improving(steps or self.steps):
            best = fit or best
            yield self._from_fit(fit, fitting) if fit else None
        if best is None or not best.lay.placed:
            between = "where the repeat starts" if fitting.matched else "beside the flaws"
            raise CannotPlan(
                "pieces", "No piece fits {between:text}. Write a smaller piece or a larger cloth.", between=between
            )

    def _from_fit(self, fit: Fit, fitting: Fitting) -> PlannedOrder:
        return PlannedOrder(self.order, self.pieces, self.joins, (fit.lay,), fit.result, fit.bound, fitting.hindered)

    def _one_after_another(self, shelf: list[Usable], goal: str) -> Generator[PlannedOrder | None, None, list[Lay]]:
        """Plans each cloth for what the ones before have left; returns the plans."""
        left, lays, first = list(self.pieces), [], self.first
        steps = max(FEW_STEPS, self.steps // len(shelf))
        for cloth in shelf:
            if not any(piece.count is None or piece.count for piece in left):
                break
            best: Fit | None = None
            for fit in Fitting(cloth, tuple(left), self.order.rules, goal, first).improving(steps):
                best = fit or best
                yield None
            if best and best.lay.placed:
                lays.append(replace(best.lay, pieces=self.pieces))
                left = [
                    piece if piece.count is None else replace(piece, count=piece.count - best.lay.counts[number])
                    for number, piece in enumerate(left)
                ]
                first = {number: max(0, copies - best.lay.counts[number]) for number, copies in first.items()}
                yield self._outcome(lays, self._worth(lays) if goal == "count" else self._area(lays), None, shelf)
        return lays

    def _together(self, shelf: list[Usable]) -> Generator[None, None, Fraction | None]:
        """What all cloths together could hold at best: what each could alone, and no more than is wanted; None when
        unknown."""
        total = Fraction(0)
        known: dict[int, Fraction | None] = {}
        for cloth in shelf:
            if id(cloth) not in known:
                known[id(cloth)] = None
                for fit in Fitting(cloth, self.pieces, self.order.rules, "count").improving(FEW_STEPS):
                    known[id(cloth)] = fit.bound if fit else known[id(cloth)]
                    yield None
            bound = known[id(cloth)]
            if bound is None:
                return None
            total += bound
        wanted = Fraction(0)
        for piece in self.pieces:
            if piece.count is None:
                return total
            wanted += piece.count * piece.matters
        return min(total, wanted)

    def _shelf(self) -> list[Usable]:
        """Every cloth there is, the largest first."""
        return sorted(
            (cloth for cloth in self.cloths for _ in range(cloth.cloth.how_many)), key=lambda cloth: -cloth.area
        )

    def _outcome(self, lays: list[Lay], result: Fraction, bound: Fraction | None, shelf: list[Usable]) -> PlannedOrder:
        return PlannedOrder(
            self.order,
            self.pieces,
            self.joins,
            tuple(lays),
            result,
            bound,
            any(cloth.flaws or cloth.repeat for cloth in shelf),
        )

    def _worth(self, lays: list[Lay]) -> Fraction:
        counts = sum((lay.counts for lay in lays), Counter())
        return Fraction(sum(self.pieces[number].matters * count for number, count in counts.items()))

    def _area(self, lays: list[Lay]) -> Fraction:
        return sum((lay.piece_area for lay in lays), Fraction(0))

    def _missing(self, lays: list[Lay]) -> bool:
        return bool(self._outcome(lays, Fraction(0), None, []).missing)

    def _bought(self, outcome: PlannedOrder) -> Fraction:
        return outcome.to_start_from * outcome.lays[0].cloth.cloth.width


def _ways(piece: Wanted, cloth: Usable) -> list[tuple[Fraction, Fraction]]:
    turned = [(piece.length, piece.width)] if piece.may_turn and not cloth.cloth.one_way else []
    return [(piece.width, piece.length), *turned]
