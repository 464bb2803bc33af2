"""Looks an order over before it is planned: what could never be cut is said at once, at the part where it can be
mended."""

from fractions import Fraction

from calculators.trade.lay_plan.order import CannotPlan, Order, Wanted
from calculators.trade.lay_plan.usable import Usable

MOST_PIECES = 1_000
MOST_CLOTHS = 24


def check_order(order: Order, pieces: tuple[Wanted, ...], cloths: list[Usable]) -> None:
    """Whether an order can be planned at all.

    pieces: to be cut, joins already taken apart; cloths: what of each cloth can be used.
    Raises CannotPlan with one sentence.
    """
    rules = order.rules
    if sum(cloth.how_many for cloth in order.cloths) > MOST_CLOTHS:
        raise CannotPlan("cloths", "These are more than {most:count} cloths. Plan them in two goes.", most=MOST_CLOTHS)
    if rules.aim in ("most", "shelf"):
        for cloth in order.cloths:
            if cloth.length is None:
                raise CannotPlan(
                    "cloths",
                    "“{cloth:text}” has no length. Write its length, or ask for the shortest length or the least "
                    "cloth to buy.",
                    cloth=cloth.name,
                )
    elif any(piece.count is None for piece in pieces):
        nameless = next(piece for piece in pieces if piece.count is None)
        raise CannotPlan(
            "pieces",
            "“{piece:text}” has no number. To find the least length, write how many of it are wanted.",
            piece=nameless.name,
        )
    if rules.aim in ("shortest", "buy") and rules.strips in ("along", "sections", "free"):
        raise CannotPlan(
            "strips",
            "The least length is looked for in strips across the cloth. Choose those, or ask for the most pieces.",
        )
    open_ended = rules.aim in ("shortest", "buy")
    for piece in pieces:
        if not any(_fits(piece, cloth, open_ended) for cloth in cloths):
            raise _too_large(piece, cloths)
    if sum(_at_most(piece, cloths) for piece in pieces) > MOST_PIECES:
        raise CannotPlan(
            "pieces",
            "These are more than {most:count} pieces. Plan {most:count} or fewer at a time, or write how many you "
            "want.",
            most=MOST_PIECES,
        )


def _ways(piece: Wanted, cloth: Usable) -> list[tuple[Fraction, Fraction]]:
    turned = (
        [(piece.length, piece.width)]
        if piece.may_turn and not cloth.cloth.one_way and not (piece.matched and cloth.repeat)
        else []
    )
    return [(piece.width, piece.length), *turned]


def _fits(piece: Wanted, cloth: Usable, open_ended: bool) -> bool:
    long = None if open_ended else cloth.length
    return any(width <= cloth.width and (long is None or length <= long) for width, length in _ways(piece, cloth))


def _at_most(piece: Wanted, cloths: list[Usable]) -> int:
    if piece.count is not None:
        return piece.count
    return sum(int(cloth.area // (piece.width * piece.length)) * cloth.cloth.how_many for cloth in cloths)


def _too_large(piece: Wanted, cloths: list[Usable]) -> CannotPlan:
    widest = max(cloths, key=lambda cloth: cloth.area or cloth.width)
    values = {
        "piece": piece.name or "The piece",
        "width": piece.width,
        "length": piece.length,
        "cloth_width": widest.width,
    }
    size = (
        "“{piece:text}” is {width:length} wide and {length:length} "
        f"long{' with its hems' if piece.finished else ''}"
    )
    if widest.length is None or piece.length <= widest.length and piece.width > widest.width:
        wide = f"{size}, and only {{cloth_width:length_down}} of cloth can be used across. "
        return CannotPlan(
            "pieces", wide + "Let it be joined from widths, let it turn, or write a narrower piece.", **values
        )
    return CannotPlan(
        "pieces",
        f"{size}; however it lies, the cloth has only {{cloth_width:length_down}} by {{cloth_length:length_down}}. "
        "Write a smaller piece or a longer cloth.",
        cloth_length=widest.length,
        **values,
    )
