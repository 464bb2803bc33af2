"""What the house method holds for thread, time and cost: minutes of its steps, prices, and the size of its usual
piece."""

from collections.abc import Iterator
from fractions import Fraction

from calculators.asking.house_method import HouseMethod, on_ruler
from calculators.asking.timing import BATCH, house_steps, house_waiting
from calculators.trade.cloth import LongEdges
from calculators.trade.corners.mitre_marks import mitre_marks
from calculators.trade.pieces import threads_of_a_piece
from calculators.values.duration import Minutes
from calculators.values.kind import InvalidValue, Kind
from calculators.values.kinds import Length, Number
from calculators.values.measure import MM_IN, Ruler, show_exactly
from calculators.values.money import Amount

_MINUTES = Number(most=Fraction(10_000), sign=" min", places=2)
_UNITS = {"metre": "m", "yard": "yd"}


def minutes_for_the_batch(method: HouseMethod, ruler: Ruler) -> str:
    """The minutes of all steps that are done once."""
    return _minutes(sum(house_steps(method, ruler, BATCH), Fraction(0)), ruler)


def waiting_of_the_batch(method: HouseMethod, ruler: Ruler) -> str:
    """The minutes of all steps that are waiting."""
    return Minutes().write(house_waiting(method, ruler), ruler)


def minutes_for_a_piece(
    method: HouseMethod,
    ruler: Ruler,
    corners: int,
    across: int,
    sides_along: int,
    sides_across: int,
    width: Fraction,
    length: Fraction,
) -> str:
    """The minutes of all steps that are done to every piece: to the piece itself, its corners, its hems, and its share
    of the drawn threads."""
    hem = sides_across * width + sides_along * length
    times = {
        "piece": Fraction(1),
        "corner": Fraction(corners),
        "metre": hem / MM_IN["m"],
        "yard": hem / MM_IN["yd"],
        "thread": threads_of_a_piece(across),
    }
    return _minutes(
        sum((many * sum(house_steps(method, ruler, each), Fraction(0)) for each, many in times.items()), Fraction(0)),
        ruler,
    )


def side_by_side(method: HouseMethod, ruler: Ruler) -> str:
    """How many of the usual piece lie side by side on the usual cloth."""
    piece = _length(method, ruler, "piece_width")
    edges = LongEdges(selvedge=_length(method, ruler, "selvedge"))
    across = edges.between(_length(method, ruler, "cloth_width")) // piece if piece else 0
    return str(across) if across else ""


def price_of_cloth(method: HouseMethod, ruler: Ruler) -> str:
    """The price of the cloth that the house uses most, or of the only cloth that has one."""
    prices = [(thing, f"{price} per {_UNITS[per]}") for thing, price, per in _priced(method, ruler) if per in _UNITS]
    used_most = on_ruler(method.measures.get("cloth", ""), ruler).casefold()
    return next(
        (price for thing, price in prices if thing.casefold() == used_most), prices[0][1] if len(prices) == 1 else ""
    )


def price_of_a_spool(method: HouseMethod, ruler: Ruler) -> str:
    """The first price of a spool."""
    return next((price for _, price, per in _priced(method, ruler) if per == "spool"), "")


def price_of_an_hour(method: HouseMethod, ruler: Ruler) -> str:
    """The first price of an hour."""
    return next((price for _, price, per in _priced(method, ruler) if per == "hour"), "")


def nothing(method: HouseMethod, ruler: Ruler) -> str:
    """No amount, in the money of the house."""
    return Amount().write(Fraction(0), ruler)


def finished_width(method: HouseMethod, ruler: Ruler) -> str:
    """Across the usual piece, hemmed with the usual turn and hem."""
    return _hemmed(method, ruler, "piece_width")


def finished_length(method: HouseMethod, ruler: Ruler) -> str:
    """Along the usual piece, hemmed."""
    return _hemmed(method, ruler, "piece_length")


def cloth_bought(method: HouseMethod, ruler: Ruler) -> str:
    """The usual cloth."""
    return method.measure("cloth_length", ruler)


def mitre_seam(method: HouseMethod, ruler: Ruler) -> str:
    """The seam of a square mitre of the usual hem, finer than the ruler in hand: a batch has many of them."""
    hem = _length(method, ruler, "hem")
    finer = Ruler(ruler.unit, Fraction(1, 64) if ruler.unit == "in" else ruler.step / 10)
    return Length().write(mitre_marks(hem, hem, Fraction(90), Fraction(0), Fraction(0)).half_line, finer) if hem else ""


def _hemmed(method: HouseMethod, ruler: Ruler, cut: str) -> str:
    size = _length(method, ruler, cut) - 2 * (_length(method, ruler, "turn") + _length(method, ruler, "hem"))
    return show_exactly(size, ruler.unit) if size > 0 else ""


def _length(method: HouseMethod, ruler: Ruler, name: str) -> Fraction:
    return _read(Length(), method.measure(name, ruler), ruler) or Fraction(0)


def _minutes(minutes: Fraction, ruler: Ruler) -> str:
    return _MINUTES.show(minutes, ruler) if minutes else ""


def _priced(method: HouseMethod, ruler: Ruler) -> Iterator[tuple[str, str, str]]:
    """What is bought, its price in digits, and what that is for."""
    for line in method.tables.get("prices", ()):
        thing, price, per = (on_ruler(line.get(name, ""), ruler).strip() for name in ("thing", "price", "per"))
        if (amount := _read(Amount(), price, ruler)) is not None:
            yield thing, Amount().write(amount, ruler), per


def _read(kind: Kind, text: str, ruler: Ruler) -> Fraction | None:
    """The value of an entry; None where it is empty or cannot be read, which the page of the method says."""
    try:
        value: Fraction = kind.parse(text, ruler)
    except InvalidValue:
        return None
    return value
