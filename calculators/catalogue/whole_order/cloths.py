"""What of each cloth an order takes: its pieces, gathered from all lines, and the plan that they are cut by."""

from collections.abc import Generator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import InvalidInput, invalid_input
from calculators.asking.edge_questions import TRIMMED
from calculators.catalogue.whole_order.lines import OrderLine, cloth_called
from calculators.trade.articles.cutting import ArticlePiece
from calculators.trade.lay_plan.order import CannotPlan, Cloth, Order, Rules, Wanted
from calculators.trade.lay_plan.planning import PlannedOrder, plan_order
from calculators.trade.lay_plan.usable import usable_part
from calculators.values.phrase import Phrase, say


@dataclass(frozen=True)
class PieceOfLine:
    """A piece to cut for a line. count: for all articles of the line."""

    line: OrderLine
    piece: ArticlePiece
    name: str
    count: int

    @property
    def area(self) -> Fraction:
        """What all of them take of the cloth [mm²].

        Source: derived, width times length of the rectangle on the cloth, so many times.
        """
        width, length = self.piece.on_the_cloth
        return self.count * width * length


@dataclass(frozen=True)
class PlannedCloth:
    """A cloth of an order, the pieces cut from it, and the best plan found for it."""

    row: SimpleNamespace
    pieces: tuple[PieceOfLine, ...]
    plan: PlannedOrder

    @property
    def to_buy(self) -> Fraction:
        """The length to buy, unwashed [mm].

        Source: derived, what the plan starts from.
        """
        return self.plan.to_start_from

    @property
    def cost(self) -> Fraction | None:
        """What it costs [money]; None without a price.

        Source: derived, length times the price of a metre.
        """
        return None if self.row.price is None else self.to_buy * self.row.price / 1000


def gathered(lines: Sequence[OrderLine], given: SimpleNamespace) -> dict[int, list[PieceOfLine]]:
    """The pieces to cut by the place of their cloth; raises InvalidInput at the cloths where one is not there."""
    found: dict[int, list[PieceOfLine]] = {}
    for line in lines:
        for piece in line.made.pieces:
            row = cloth_called(piece.cloth, given) if piece.cloth else line.cloth
            if row is None:
                raise invalid_input(
                    "cloths",
                    "Row {row:count}, {article:text}, is cut from {cloth:text} too. Write a cloth of that name here, "
                    "with its width.",
                    row=line.place + 1, article=line.name, cloth=piece.cloth,
                )  # fmt: skip
            found.setdefault(row.place, []).append(
                PieceOfLine(line, piece, _named(line, piece), line.count * piece.count)
            )
    return found


def _named(line: OrderLine, piece: ArticlePiece) -> str:
    return line.name if len(line.made.pieces) == 1 else f"{line.name}: {piece.named_on_the_cloth.lower()}"


def planned(
    row: SimpleNamespace, pieces: Sequence[PieceOfLine], given: SimpleNamespace
) -> Generator[None, None, PlannedCloth]:
    """The plan for a cloth, with moments to look up from the work; raises InvalidInput where there is none."""
    order = Order((_cloth(row),), tuple(_wanted(each) for each in pieces), _rules(row, given))
    best: PlannedOrder | None = None
    try:
        _refuse_too_wide(order)
        for outcome in plan_order(order):
            best = outcome or best
            yield None
    except CannotPlan as problem:
        raise _refused(row, problem) from problem
    assert best, "a plan is found, or CannotPlan is raised"
    return PlannedCloth(row, tuple(pieces), best)


def _refuse_too_wide(order: Order) -> None:
    cloth = usable_part(order.cloths[0], order.rules)
    for piece in order.pieces:
        if 0 < cloth.width < piece.width:
            raise invalid_input(
                "lines",
                "{piece:text} is cut {wide:length_up} wide, and {cloth:text} gives {across:length_down} across. Choose "
                "a wider cloth, a smaller size, or an article that is joined from widths.",
                piece=piece.name, wide=piece.width, cloth=cloth.cloth.name, across=cloth.width,
            )  # fmt: skip


def _cloth(row: SimpleNamespace) -> Cloth:
    return Cloth(row.name, row.width, one_way=row.one_way, trimmed=row.measured == TRIMMED)


def _wanted(each: PieceOfLine) -> Wanted:
    width, length = each.piece.on_the_cloth
    return Wanted(each.name, width, length, each.count)


def _rules(row: SimpleNamespace, given: SimpleNamespace) -> Rules:
    return Rules(
        "buy", "across", given.gap, given.selvedge, given.end_loss, given.skew,
        given.change_length if row.change_length is None else row.change_length,
        given.change_width if row.change_width is None else row.change_width,
        keep=given.keep,
    )  # fmt: skip


def _refused(row: SimpleNamespace, problem: CannotPlan) -> InvalidInput:
    """At the lines what is wrong with the pieces, at the cloths what is wrong with a cloth, else at its own blank."""
    field = {"pieces": "lines", "cloths": "cloths"}.get(problem.part, problem.part)
    message: Phrase = say(f"On {{on:text}}: {problem.sentence}", on=row.name, **problem.values)
    return InvalidInput({field: message})
