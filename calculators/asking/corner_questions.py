"""What every calculator about corners asks, and how measures that make no corner are asked for again."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from fractions import Fraction
from functools import lru_cache
from types import SimpleNamespace

from calculators.asking.declaration import Field, InvalidInput, invalid_input
from calculators.asking.house_measures import ALLOWANCE, EDGE_STITCH, HEM, TURN
from calculators.trade.corners.binding import Pleats
from calculators.trade.corners.constructions import CONSTRUCTIONS, Measures
from calculators.trade.corners.mitre_lines import CreasesMiss, mitre_lines
from calculators.trade.corners.plane import Number, distance
from calculators.trade.corners.steps import CornerStep
from calculators.trade.corners.turning_out import PokesOut, Pressing, Trimming
from calculators.values.kinds import Angle, Choice, Length

_FINEST = Fraction(1, 10_000)  # [mm] a thousand times what the folding rooms take for one place, a hundredth of a fibre
MITRED = {"mitre", "mitre-opened-flat", "folded-mitre", "self-bound"}
SEAMED = {"faced", "applied-border"}

#: Measures that a way has no use for.
WITHOUT = {
    "faced": ("hem_2", "turn", "turn_2"),
    "applied-border": ("hem_2", "turn_2"),
    "binding": ("hem_2", "turn", "turn_2"),
}

TRIMMINGS: Mapping[str, Trimming] = {"whole": "left whole", "trimmed": "trimmed", "snipped": "trimmed, point snipped"}
PRESSINGS: Mapping[str, Pressing] = {"open": "open", "side": "to one side"}
PLEATS: Mapping[str, Pleats] = {"opposite": "opposite ways", "same": "the same way"}
ANGLE = Angle(least=Fraction(30), most=Fraction(150))

FIELDS = {
    each.name: each
    for each in (
        Field(
            "way",
            "Way to make the corner",
            Choice(options={name: each.title.lower() for name, each in CONSTRUCTIONS.items()}),
            "How the corner is made.",
            fixed="mitre",
        ),
        Field(
            "hem_1",
            "Hem on edge 1",
            HEM,
            "Hem depth along the first edge; the width of a facing, border or binding.",
            "hem",
            known_as=("hem", "hem/2"),
        ),
        Field(
            "hem_2",
            "Hem on edge 2",
            HEM,
            "Hem depth along the other edge; facing, border and binding take that of edge 1.",
            "hem",
            known_as=("hem/2", "hem"),
        ),
        Field(
            "angle",
            "Angle of the corner",
            ANGLE,
            "Inside angle; 90 for a square corner, 120 in a hexagon.",
            fixed="90",
            known_as=("angle",),
        ),
        Field("turn", "First turn", TURN, "Hidden first fold; 0 for a single turned hem.", "turn"),
        Field(
            "turn_2",
            "First turn on edge 2",
            TURN,
            "Where it is another, as in equal folds; left empty, as deep as on edge 1.",
            optional=True,
            known_as=("turn/2",),
        ),
        Field(
            "seam_allowance",
            "Left at a mitre when trimmed",
            ALLOWANCE,
            "Cloth left outside the seam of a mitre when its corner is trimmed.",
            "mitre_allowance",
        ),
        Field(
            "facing_seam",
            "Seam of a facing or border",
            ALLOWANCE,
            "Cloth outside the seam that joins a facing or a border to its piece.",
            "facing_allowance",
        ),
        Field(
            "edge_stitch",
            "Edge stitch",
            EDGE_STITCH,
            "From the inner edge of the hem to its row of stitches.",
            "edge_stitch",
        ),
        Field(
            "trimming",
            "Corner trimmed",
            Choice(options=TRIMMINGS),
            "What is cut away once the mitre is stitched.",
            fixed="snipped",
        ),
        Field(
            "pressed",
            "Allowance pressed",
            Choice(options=PRESSINGS),
            "The mitre’s allowance opened, or both halves laid to one side.",
            fixed="open",
        ),
        Field(
            "pleats",
            "Mitres of a binding",
            Choice(options=PLEATS),
            "Whether front and back mitre are laid opposite ways.",
            fixed="opposite",
        ),
        Field(
            "cloth_thickness",
            "Thickness of one layer",
            Length(least=Fraction(1, 8), most=Fraction(20)),
            "Fold a scrap ten times, measure, divide by ten.",
            fixed={"cm": "0.4 mm", "in": "1/64 in"},
            known_as=("cloth_thickness",),
        ),
    )
}


def measures(given: SimpleNamespace) -> Measures:
    """The measures asked for, as the folding rooms take them; in floats, since they are only drawn and counted.

    Lengths are whole multiples of _FINEST, so that no two differ by less than the folds can tell apart.
    """
    hem_1, hem_2, turn, seam_allowance, edge_stitch, facing_seam = (
        float(round(each / _FINEST) * _FINEST)
        for each in (given.hem_1, given.hem_2, given.turn, given.seam_allowance, given.edge_stitch, given.facing_seam)
    )
    turn_2 = None if given.turn_2 is None else float(round(given.turn_2 / _FINEST) * _FINEST)
    return Measures(
        hem_1, hem_2, float(given.angle), turn, seam_allowance, edge_stitch,
        TRIMMINGS[given.trimming],
        PRESSINGS[given.pressed],
        PLEATS[given.pleats],
        facing_seam=facing_seam,
        turn_2=turn_2,
    )  # fmt: skip


def corner_steps(way: str, given: Measures) -> list[CornerStep]:
    """The steps of a construction.

    Raises InvalidInput with a sentence for the measure that makes this corner impossible.
    """
    check_before_folding(way, given)
    try:
        with creases_that_meet():
            return _folded(way, given)
    except PokesOut:
        raise InvalidInput({"angle": _too_sharp(way)}) from None


@contextmanager
def creases_that_meet() -> Iterator[None]:
    """Asks again for the angle where the two creases turn out not to meet."""
    try:
        yield
    except CreasesMiss:
        raise InvalidInput(
            {
                "angle": "At this angle the two creases do not cross inside the corner. Make the hems more alike, or "
                "the corner less open."
            }
        ) from None


def check_turn(turn: Number, hem: Number, field: str = "turn") -> None:
    """Refuse a turn deeper than the hem it lies in; one as deep makes a hem of three even layers.

    turn, hem: first turn and the narrower hem [mm]. field: that of the turn.
    """
    if turn > hem:
        raise invalid_input(
            field,
            "The turn is deeper than the hem it hides in. Turn at most {hem:length_down}, or make the hem deeper.",
            hem=hem,
        )


def check_turns(hem_1: Number, hem_2: Number, turn: Number, turn_2: Number | None) -> None:
    """Refuse turns deeper than their hems.

    hem_1, hem_2: both hems [mm]. turn: first turn on edge 1, and on edge 2 where that has none of its own [mm].
    """
    check_turn(turn, min(hem_1, hem_2) if turn_2 is None else hem_1)
    if turn_2 is not None:
        check_turn(turn_2, hem_2, "turn_2")


def room_to_trim(to_line: Number, half_line: Number) -> Number:
    """The cloth beyond a mitre's line that trimming may leave less of, the same for every page about it.

    to_line: from the folded corner straight to the line, the shorter way [mm]. half_line: from the crossing of the
    creases to an edge [mm].
    """
    return min(to_line, half_line / 2)


def check_trim(seam_allowance: Number, room: Number) -> None:
    """Refuse to leave more cloth beyond a mitre's line than there is.

    seam_allowance: what trimming leaves [mm]. room: from the folded corner straight to the line, the shorter way [mm].
    """
    if seam_allowance >= room:
        raise invalid_input(
            "seam_allowance",
            "Only {room:length_down} of cloth lies between the corner and the stitched line. Leave less than that.",
            room=room,
        )


@lru_cache(maxsize=8)
def _folded(way: str, given: Measures) -> list[CornerStep]:
    """The steps, kept: a page shows some corners both whole and step by step."""
    return CONSTRUCTIONS[way].steps(given)


def _too_sharp(way: str) -> str:
    if way in MITRED:
        return (
            "At a corner under 90° the point would stick out beyond the edge. Have it snipped, or make the corner "
            "wider."
        )
    if way == "binding":
        return (
            "At a corner under 90° the pleat of a binding would stick out. Make the corner wider or rounded, or "
            "bind "
            "each edge by itself."
        )
    return "At a corner under 60° the allowances would stick out past the other edge. Make the corner wider."


def check_before_folding(way: str, given: Measures) -> None:
    """Refuse what can be seen to be too much before anything is folded; raises InvalidInput as `corner_steps` does."""
    narrower = min(given.hem_1, given.hem_2) if way not in SEAMED | {"binding"} else given.hem_1
    if way not in {"binding", *SEAMED}:
        check_turns(given.hem_1, given.hem_2, given.turn, given.turn_2)
    if way == "applied-border" and not 0 < given.turn < narrower:
        raise invalid_input(
            "turn",
            "A border’s inner edge has to be turned under, by less than the border is wide: between 0 and "
            "{hem:length}.",
            hem=narrower,
        )
    if way != "binding" and given.edge_stitch >= narrower:
        raise invalid_input(
            "edge_stitch",
            "This row of stitches would miss the hem. Stitch less than {hem:length} from its inner edge.",
            hem=narrower,
        )
    if way in SEAMED and given.facing_seam >= narrower:
        raise invalid_input(
            "facing_seam", "The allowance must be less than the width it lies in, {hem:length}.", hem=narrower
        )
    if way in MITRED and given.trimming != "left whole":
        _check_trim(given)


def _check_trim(given: Measures) -> None:
    try:
        lines = mitre_lines(given.corner)
    except CreasesMiss:
        return  # said when the corner is folded
    foot = lines.line_1.foot(given.corner.at(0, 0))
    check_trim(given.seam_allowance, room_to_trim(distance(given.corner.at(0, 0), foot), lines.half_line))
