"""The words of an edge cut through: what is named, at most seven things, and where each stands."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from calculators.drawing.picture import WIDTH, text_width
from calculators.drawing.section_layout import END, THICK, Place, SectionLayout
from calculators.trade.sections.section import CutEnd, Row, Run

ROW = 16.0  # [drawing units] from one row of words to the next
MOST = 7  # words in one drawing
_SAME = 16.0  # [drawing units] ends that are nearer than this are named as one
_TRIES = 300  # places tried before a word is left out
_ROWS = 5  # of words on either side of the edge
_LARGEST = 16.5  # [drawing units] letters in a narrow column
_ON_LINE = 1.5  # [drawing units] of words that stand beyond their line
_APART = 5.0  # [drawing units] between words of one row
_AT_SIDE = 60.0  # [drawing units] from the side of the sheet to the words for a side of the cloth
_NEAR_SIDE = 14.0  # the same at least
ROWS, ENDS, SOLIDS, SIDES, NAMES, FOLDS = range(6)  # from what must be named to what may be left out


@dataclass(frozen=True)
class Leader:
    """Words for a thing that stands at a place [drawing units].

    weight: the less, the sooner they are named. above: where they must stand, None where they may on either side.
    foot: where their line ends where they stand below, if that is another place; they stand above if they can.
    """

    words: str
    at: Place
    weight: int
    above: bool | None = None
    foot: Place | None = None


@dataclass(frozen=True)
class PlacedWords:
    """A leader with where its words stand [drawing units]."""

    leader: Leader
    at: Place


def placed_labels(drawn: SectionLayout, top: float, foot: float) -> tuple[list[PlacedWords], int, int]:
    """The words of a drawing, none on another nor on another's line, and how many rows they take above and below.

    top, foot: of what is drawn [drawing units].
    """
    chosen = sorted(_named(drawn), key=lambda each: each.weight)[:MOST]
    middle = (top + foot) / 2
    above, below = _Side(), _Side()
    for each in chosen:
        upwards = each.foot is not None or each.at[1] <= middle if each.above is None else each.above
        for up in (upwards, not upwards) if each.above is None else (upwards,):
            side, leader = (above, each) if up else (below, replace(each, at=each.foot or each.at))
            if side.takes(leader):
                break
    return [*above.placed(top, -1), *below.placed(foot, 1)], above.rows, below.rows


def place_of(drawn: SectionLayout, row: Row) -> tuple[float, float, float]:
    """Where a row of stitches is drawn: across, its upper and its lower end [drawing units]."""
    places = [drawn.height_of(strip, flat) for strip, flat in row.holds if drawn.has(strip, flat)]
    x = sum(each for each, _ in places) / len(places)
    return x, min(y for _, y in places) - THICK / 2 - 2, max(y for _, y in places) + THICK / 2 + 2


def _named(drawn: SectionLayout) -> Iterator[Leader]:
    section = drawn.section
    for row in section.rows:
        x, high, low = place_of(drawn, row)
        yield Leader(row.name, (x, high), ROWS, foot=(x, low))
    yield from _ends(drawn)
    for solid in section.solids:
        (x, y), (_, up) = drawn.ellipse(solid)
        yield Leader(solid.strip, (x, y - up), SOLIDS)
    for run in section.layers:
        if run.runs_on:
            yield from _sides(drawn, run)
    for strip in section.strips:
        runs = section.runs_of(strip)
        if not runs[-1].runs_on:
            longest = max(runs, key=lambda run: run.right - run.left)
            x = (drawn.x(longest.left) + drawn.x(longest.right)) / 2
            yield Leader(strip, (x, drawn.y(drawn.level_at(longest, longest.left))), NAMES)
    for one, other in list(section.folds())[-1:]:
        at = one.at(one.high)
        y = drawn.y((drawn.level_at(one, at) + drawn.level_at(other, at)) / 2)
        yield Leader("fold", (drawn.x(at) + (-2 if one.left < at else 2), y), FOLDS)


def _ends(drawn: SectionLayout) -> Iterator[Leader]:
    """Ends of strips; those that lie close together and are called alike are named once."""
    groups: list[list[CutEnd]] = []
    for end in drawn.section.ends():
        near = (
            group for group in groups
            if group[0].words == end.words and abs(drawn.end(group[0])[0] - drawn.end(end)[0]) < _SAME
        )  # fmt: skip
        if end.words:
            group = next(near, None)
            if group is None:
                groups.append([end])
            else:
                group.append(end)
    for group in groups:
        x, y = min((drawn.end(end) for end in group), key=lambda place: place[1])
        words = group[0].words
        many = len(group) > 1 and words.endswith(("edge", "selvedge"))
        yield Leader(f"{words}s" if many else words, (x + group[0].way * 2, y), ENDS)


def _sides(drawn: SectionLayout, run: Run) -> Iterator[Leader]:
    """The side of a strip that is seen where it runs on: its upper one above, its lower one below."""
    section = drawn.section
    ends = [drawn.x(end) for each in section.layers for end in (each.left, each.right)]
    room = WIDTH - max(x for x in ends if x < WIDTH - END) if run.way > 0 else min(x for x in ends if x > END)
    x = min(_AT_SIDE, max(room / 2, _NEAR_SIDE))
    x = WIDTH - x if run.way > 0 else x
    y = drawn.y(drawn.level_at(run, run.at(run.high)))
    named = "" if len(section.strips) == 1 else f"{run.strip.removesuffix(' piece')}, "
    beside = [each for each in section.layers if each.runs_on and each.way == run.way]
    if run == beside[-1]:
        yield Leader(f"{named}{'right' if run.right_up else 'wrong'} side", (x, y - THICK / 2), SIDES, above=True)
    if run == beside[0]:
        yield Leader(f"{named}{'wrong' if run.right_up else 'right'} side", (x, y + THICK / 2), SIDES, above=False)


@dataclass(frozen=True)
class _Spot:
    """Where words can stand: their row, counted away from the edge, from where to where they reach, and their line."""

    row: int
    left: float
    right: float
    line: float

    def is_clear_of(self, other: "_Spot") -> bool:
        """Whether neither lies on the other nor on the other's line."""
        if self.row == other.row:
            return self.left - _APART >= other.right or other.left >= self.right + _APART
        outer, inner = (self, other) if self.row > other.row else (other, self)
        return not inner.left - 1 < outer.line < inner.right + 1


class _Side:
    """The words on one side of the edge."""

    def __init__(self) -> None:
        self.leaders: list[Leader] = []
        self.spots: list[_Spot] = []

    def takes(self, leader: Leader) -> bool:
        """Whether one more finds a place; the others move for it if they must."""
        leaders = [*self.leaders, leader]
        choices = [list(_spots(each)) for each in leaders]
        spots = _search(choices[-1:], self.spots, _ROWS * 3) or _search(choices, [], _TRIES)
        if spots is None:
            return False
        self.leaders, self.spots = leaders, spots
        return True

    @property
    def rows(self) -> int:
        return max((spot.row + 1 for spot in self.spots), default=0)

    def placed(self, edge: float, way: int) -> Iterator[PlacedWords]:
        """The words, in rows away from the edge. way: -1 above it, 1 below it."""
        for leader, spot in zip(self.leaders, self.spots):
            y = edge + way * (10 + ROW * spot.row) + (-2 if way < 0 else 12)
            yield PlacedWords(leader, ((spot.left + spot.right) / 2, y))


def _spots(label: Leader) -> Iterator[_Spot]:
    """Where its words can stand, the best first: on its line, to the left of it or to its right, in each row."""
    half, line = text_width(label.words, _LARGEST) / 2, label.at[0]
    boxes = []
    for shift in (0, -1, 1):
        x = min(max(line + shift * (half - _ON_LINE), half), WIDTH - half)
        if x - half <= line <= x + half:
            boxes.append((x - half, x + half))
    for row in range(_ROWS):
        yield from (_Spot(row, left, right, line) for left, right in boxes)


def _search(choices: Sequence[Sequence[_Spot]], chosen: list[_Spot], tries: int) -> list[_Spot] | None:
    """One of each list of choices beside those that are chosen, all clear of each other. None where there are none, or
    too many were tried."""
    left = tries

    def search(depth: int, chosen: list[_Spot]) -> list[_Spot] | None:
        nonlocal left
        if depth == len(choices):
            return chosen
        for spot in choices[depth]:
            left -= 1
            if left < 0:
                return None
            if all(spot.is_clear_of(other) for other in chosen) and (found := search(depth + 1, [*chosen, spot])):
                return found
        return None

    return search(0, chosen)
