"""Made-up orders with flaws or a repeat: small ones to try everything on, and larger ones in which everything fits by
construction."""

from fractions import Fraction as F
from random import Random

from calculators.trade.lay_plan.order import Cloth, Flaw, Order, Repeat, Rules, Wanted
from tests.trade.lay_plan.brute_force_around import Ground, Size

SIZES = (
    (40, 40),
    (35, 48),
    (46, 46),
    (33, 33),
    (50, 70),
    (45, 75),
    (36, 52),
    (30, 90),
    (42, 150),
    (28, 28),
    (25, 60),
)  # [cm]


def small(seed: int, side: int = 7) -> tuple[Ground, tuple[Size, ...]]:
    """A small cloth with up to two flaws, or a repeat, or both, and up to six pieces."""
    luck = Random(seed)
    width, length = luck.randint(2, side), luck.randint(2, side)
    flaws = []
    for _ in range(luck.choice((0, 1, 1, 1, 2))):
        x, y = luck.randrange(width), luck.randrange(length)
        flaws.append((x, min(width, x + luck.randint(1, 2)), y, min(length, y + luck.randint(1, 2))))
    repeat = (0, 0, 0, 0)
    if luck.random() < 0.4 or not flaws:
        across, along = luck.choice((2, 3, 4)), luck.choice((0, 2, 3, 4))
        repeat = (across, luck.randrange(across), along, luck.randrange(along) if along else 0)
    left, sizes = 6, []
    for _ in range(luck.randint(1, 3)):
        count = min(left, luck.randint(1, 4))
        matched = any(repeat) and luck.random() < 0.6
        if count:
            turns = not matched and luck.random() < 0.4
            sizes.append(
                Size(
                    luck.randint(1, max(1, width - 1)),
                    luck.randint(1, min(length, 4)),
                    count,
                    turns,
                    matched,
                    luck.choice((1, 1, 1, 2, 3)),
                )
            )
        left -= count
    return Ground(width, length, tuple(flaws), repeat, luck.choice((0, 0, 0, 1))), tuple(sizes)


def in_millimetres(ground: Ground, sizes: tuple[Size, ...], strips: str, aim: str = "most") -> Order:
    """The same as an order, a unit of the grid being a centimetre."""
    across, first_across, along, first_along = (F(10 * place) for place in ground.repeat)
    repeat = Repeat(along or None, across or None, first_along, first_across) if any(ground.repeat) else None
    flaws = tuple(
        Flaw(F(10 * low), F(10 * left), F(10 * (high - low)), F(10 * (right - left)))
        for left, right, low, high in ground.flaws
    )
    cloth = Cloth("c", F(10 * ground.width), F(10 * ground.length), repeat=repeat, flaws=flaws)
    pieces = tuple(
        Wanted(
            f"p{number}",
            F(10 * size.width),
            F(10 * size.length),
            size.count,
            size.may_turn,
            size.matched,
            matters=size.value,
        )
        for number, size in enumerate(sizes)
    )
    return Order((cloth,), pieces, Rules(aim=aim, strips=strips, gap=F(10 * ground.gap)))


def fitting_by_construction(seed: int, strips: str, flaws: int = 1, repeat: bool = False) -> Order | None:
    """A cloth filled at random with strips, flaws put into what is left free, and the pieces laid as the order; None
    where nothing is free.

    repeat: whether strips start where a repeat along the cloth starts, and every piece must match it.
    """
    luck = Random(f"{seed} {strips} {flaws} {repeat}")
    sizes = luck.sample(SIZES, luck.randint(2, 4))
    width, length = luck.choice((110, 120, 140, 150, 160)), luck.choice((150, 200, 260, 300, 360))
    every = luck.choice((13, 18, 24)) if repeat else 1
    turned = [size if strips == "across" else size[::-1] for size in sizes]
    wide, long = (width, length) if strips == "across" else (length, width)
    y, laid, free = 0, [], []
    while lead := [size for size in turned if y + size[1] <= long and size[0] <= wide]:
        height, row = luck.choice(lead)[1], []
        while fit := [size for size in turned if size[1] <= height and sum(w for w, _ in row) + size[0] <= wide]:
            row.append(luck.choice(fit))
        spare = wide - sum(w for w, _ in row)
        if spare >= 3:
            free.append((sum(w for w, _ in row[: luck.randrange(len(row) + 1)]), y, spare, height))
        laid += row
        end = y + height
        y = -(-end // every) * every
        if y - end >= 3 and y <= long:
            free.append((0, end, wide, y - end))
    if y <= long - 3:
        free.append((0, y, wide, long - y))
    if not free:
        return None
    spots = []
    for _ in range(flaws):
        x, start, across, along = luck.choice(free)
        spot_wide, spot_long = min(across, luck.randint(2, 8)), min(along, luck.randint(2, 8))
        spot = (
            x + luck.randint(0, across - spot_wide),
            start + luck.randint(0, along - spot_long),
            spot_wide,
            spot_long,
        )
        spots.append(spot if strips == "across" else (spot[1], spot[0], spot[3], spot[2]))
    distance = F(10 * every)
    matching = (Repeat(distance, None) if strips == "across" else Repeat(None, distance)) if repeat else None
    cloth = Cloth(
        "c",
        F(10 * width),
        F(10 * length),
        repeat=matching,
        flaws=tuple(Flaw(*(F(10 * side) for side in (y, x, along, across))) for x, y, across, along in spots),
    )
    pieces = tuple(
        Wanted(f"{size[0]} by {size[1]}", F(10 * size[0]), F(10 * size[1]), laid.count(way), matched=repeat)
        for size, way in zip(sizes, turned)
        if laid.count(way)
    )
    return Order((cloth,), pieces, Rules(strips=strips))
