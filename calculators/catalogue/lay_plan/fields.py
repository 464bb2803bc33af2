"""What a lay plan asks, and the order that the answers make."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Field, InvalidInput, invalid_input
from calculators.asking.edge_questions import MEASURED, SELVEDGE, TRIMMED
from calculators.asking.rows import Rows
from calculators.asking.seams import JOINS, seam_fields
from calculators.asking.usual_cloth import change_found
from calculators.catalogue.lay_plan import from_method
from calculators.catalogue.lay_plan.finished import FINISHED, HEMS, SIZES, cut_size
from calculators.trade.lay_plan.order import CannotPlan, Cloth, Flaw, Order, Repeat, Rules, Wanted
from calculators.values.kinds import Choice, Count, DimensionalChange, Length, Text, YesNo
from calculators.values.phrase import say

_SIZE = Length(least=Fraction(20), most=Fraction(20_000))
_ACROSS = Length(least=Fraction(20), most=Fraction(6_000))
_ALONG = Length(least=Fraction(20), most=Fraction(100_000))
_PLACE = Length(most=Fraction(100_000))
_REPEAT = Length(most=Fraction(6_000))

AIMS = {
    "most": "for the most pieces",
    "shortest": "for the whole order on the shortest length",
    "buy": "for the least cloth to buy",
    "shelf": "for the whole order from the shelf",
}
STRIPS = {
    "across": "in strips across the cloth",
    "along": "in strips along the cloth",
    "either": "in strips across or along",
    "sections": "in strips across, then sections, then pieces",
    "free": "edge to edge any way",
}
WAYS = {"thread": "drawn thread", "tear": "torn", "ruled": "ruled line"}
CUT_AS = {"plain": "plain", "matched": "matched to the repeat", "joined": "joined if too wide"}

IF_NOT_ALL_FIT = "If not all fit"
MATTERS = {"1": "may be left out", **{str(count): f"counts as {count}" for count in range(2, 10)}}

_CLOTHS = Rows(
    columns=(
        Field("name", "Cloth", Text(longest=30), "What you call it.", fixed="Cloth"),
        Field("width", "Width", _ACROSS, "Across, lying without tension."),
        Field("length", "Length", _ALONG, "End to end; empty for cloth to buy.", optional=True),
        Field("how_many", "How many", Count(least=1, most=24), "Such cloths.", fixed="1"),
        Field("one_way", "One-way", YesNo(), "Nap, or a print that points one way.", fixed="no"),
        MEASURED,
    ),
    one="cloth",
    most=12,
    rarer=("one_way", "measured"),
    told_as=(("× ", ("how_many", "name")), (" × ", ("width", "length"))),
)
_PIECES = Rows(
    columns=(
        Field("name", "Piece", Text(longest=30), "What you call it.", fixed="Piece"),
        Field("width", "Width", _SIZE, "Across the cloth."),
        Field("length", "Length", _SIZE, "Along the cloth."),
        Field("count", "How many", Count(least=1, most=1_000), "Empty: as many as fit.", optional=True),
        Field("may_turn", "May turn", YesNo(), "Its length may lie across the cloth.", fixed="no"),
        Field("cut_as", "Matched or joined", Choice(options=CUT_AS), "Matched, or joined from widths.", fixed="plain"),
        Field(
            "matters", IF_NOT_ALL_FIT, Choice(options=MATTERS), "Which are left out first where not all fit.", fixed="1"
        ),
    ),
    one="piece",
    most=20,
    rarer=("may_turn", "cut_as", "matters"),
    told_as=(("× ", ("count", "name")), (" × ", ("width", "length"))),
)
_FLAWS = Rows(
    columns=(
        Field("from_end", "From the end", _PLACE, "Straight end to flaw."),
        Field("from_selvedge", "From the selvedge", _PLACE, "Selvedge to flaw."),
        Field("length", "Long", Length(least=Fraction(1), most=Fraction(20_000)), "Along the cloth."),
        Field("width", "Wide", Length(least=Fraction(1), most=Fraction(6_000)), "Across the cloth."),
        Field("cloth", "On", Text(longest=30), "Name of the cloth; empty for the first.", optional=True),
    ),
    one="flaw",
    least=0,
    rarer=("cloth",),
)
_REPEATS = Rows(
    columns=(
        Field("along", "Repeat along", _REPEAT, "Empty when it does not repeat along.", optional=True),
        Field("across", "Repeat across", _REPEAT, "Empty when it does not repeat across.", optional=True),
        Field("first_along", "First, from the end", _PLACE, "Where it first starts.", optional=True),
        Field("first_across", "First, from the selvedge", _PLACE, "Where it first starts.", optional=True),
        Field("cloth", "On", Text(longest=30), "Name of the cloth; empty for the first.", optional=True),
    ),
    one="repeat",
    most=12,
    least=0,
    rarer=("cloth",),
)

FIELDS = (
    Field(
        "cloths",
        "Cloths",
        _CLOTHS,
        "Width and length as they lie now. A width measured selvedge to selvedge loses what is trimmed off each "
        "side; a remnant may be trimmed already.",
        fixed=from_method.CLOTHS,
        from_method=from_method.cloths,
    ),
    Field(
        "pieces",
        "Pieces",
        _PIECES,
        "Width across the cloth, length along it. Leave “how many” empty for as many as fit. Where not all fit, one "
        "of every kind is kept, unless you say which count more: one that counts as 2 goes after two that may be "
        "left out.",
        fixed=from_method.PIECES,
        from_method=from_method.pieces,
    ),
    SIZES,
    Field(
        "flaws",
        "Flaws",
        _FLAWS,
        "Places no piece may cover, measured from the end and the selvedge as the cloth lies now. None: leave it "
        "empty.",
        optional=True,
    ),
    Field(
        "repeats",
        "Repeats",
        _REPEATS,
        "Where a pattern starts again, for pieces that are matched. None: leave it empty.",
        optional=True,
    ),
    HEMS,
    Field("aim", "Plan", Choice(options=AIMS), "What the plan is to be good at.", fixed="most"),
    Field(
        "strips",
        "How it is cut",
        Choice(options=STRIPS),
        "Strips: the first cuts part the whole cloth, each strip is then cut into pieces, and a piece may be trimmed "
        "once more. Sections: each strip is first cut along into sections, and those across into pieces. Any "
        "way: cuts may turn as often as they like, so more may fit and more cuts are made.",
        fixed="across",
    ),
    Field(
        "gap",
        "Lost between pieces",
        Length(most=Fraction(100)),
        "Width lost at a cut between two pieces; 0 where one line parts both.",
        fixed="0",
    ),
    SELVEDGE,
    Field(
        "end_loss",
        "Cut off each end",
        Length(most=Fraction(5_000)),
        "Cut off each end once, to reach clean, whole threads.",
        "end_loss",
    ),
    Field(
        "skew",
        "Slant of one end",
        Length(most=Fraction(3_000)),
        "How far along the selvedge a drawn thread comes out from where a square line would; 0 for cloth that lies "
        "square. The plan counts on the cloth being pulled square, and keeps that much clearer of flaws; pull it "
        "square before you measure a repeat.",
        "skew",
    ),
    Field(
        "change_length",
        "Change in the wash, along",
        DimensionalChange(least=Fraction(-40), most=Fraction(20), sample="−4.8"),
        "Still to come, with its sign: −4 for cloth that loses 4 %. 0 for cloth already washed.",
        fixed="0",
        from_method=change_found("change_length"),
        known_as=("change_length",),
    ),
    Field(
        "change_width",
        "Change in the wash, across",
        DimensionalChange(least=Fraction(-40), most=Fraction(20), sample="−2.4"),
        "As before, for the width.",
        fixed="0",
        from_method=change_found("change_width"),
        known_as=("change_width",),
    ),
    *seam_fields("felled", JOINS),
    Field("way_across", "Cuts across", Choice(options=WAYS), "How you cut from side to side.", fixed="thread"),
    Field("way_along", "Cuts along", Choice(options=WAYS), "How you cut the other way.", fixed="ruled"),
    Field(
        "order",
        "Name of the order",
        Text(longest=60),
        "Stands on the printed cutting list. Empty: the open job’s name, or a line to write on.",
        optional=True,
    ),
    Field(
        "keep",
        "Remnant worth keeping",
        Length(least=Fraction(10), most=Fraction(5_000)),
        "At least this long and this wide.",
        fixed={"cm": "10 cm", "in": "4 in"},
    ),
)


def order_from(given: SimpleNamespace) -> Order:
    """The order that was written; raises InvalidInput when its rows do not go together."""
    repeats = _by_cloth(given, "repeats")
    flaws = _by_cloth(given, "flaws")
    for each in (row for rows in repeats.values() for row in rows):
        _refuse_empty_repeat(each)
    for index, rows in repeats.items():
        if len(rows) > 1:
            raise invalid_input(
                "repeats",
                "“{cloth:text}” has more than one repeat. Write one row for it.",
                cloth=given.cloths[index].name,
            )
    cloths = tuple(
        Cloth(
            row.name,
            row.width,
            row.length,
            row.how_many,
            row.one_way,
            next(
                (
                    Repeat(each.along, each.across, each.first_along or Fraction(0), each.first_across or Fraction(0))
                    for each in repeats.get(index, ())
                ),
                None,
            ),
            tuple(Flaw(each.from_end, each.from_selvedge, each.length, each.width) for each in flaws.get(index, ())),
            row.measured == TRIMMED,
        )
        for index, row in enumerate(given.cloths)
    )
    pieces = tuple(
        Wanted(
            row.name, *cut_size(row, given), row.count, row.may_turn, row.cut_as == "matched", row.cut_as == "joined",
            int(row.matters),
            (row.width, row.length) if given.sizes == FINISHED else None,
        )
        for row in given.pieces
    )  # fmt: skip
    if any(piece.matched for piece in pieces) and not any(cloth.repeat for cloth in cloths):
        raise invalid_input(
            "repeats",
            "A piece is to be matched, but no repeat is written. Write after which distance the pattern starts again.",
        )
    rules = Rules(
        given.aim,
        given.strips,
        given.gap,
        given.selvedge,
        given.end_loss,
        given.skew,
        given.change_length,
        given.change_width,
        given.seam_allowance,
        given.keep,
    )
    return Order(cloths, pieces, rules)


def as_invalid_input(problem: CannotPlan) -> InvalidInput:
    """The refusal at the field where an order that cannot be planned is to be mended."""
    return InvalidInput({problem.part: say(problem.sentence, **problem.values)})


def _by_cloth(given: SimpleNamespace, name: str) -> dict[int, list[SimpleNamespace]]:
    """The rows of a field by the number of the cloth they belong to."""
    numbers = {cloth.name: index for index, cloth in reversed(list(enumerate(given.cloths)))}
    found: dict[int, list[SimpleNamespace]] = {}
    for row in getattr(given, name) or ():
        if row.cloth and row.cloth not in numbers:
            raise invalid_input(
                name,
                "There is no cloth called “{cloth:text}”. Write the name as it stands among the cloths.",
                cloth=row.cloth,
            )
        found.setdefault(numbers[row.cloth] if row.cloth else 0, []).append(row)
    return found


def _refuse_empty_repeat(row: SimpleNamespace) -> None:
    if row.along == 0 or row.across == 0:
        raise invalid_input(
            "repeats",
            "A repeat of 0 never starts again. Write the distance from one motif to the next, or leave it empty.",
        )
    if not row.along and not row.across:
        raise invalid_input(
            "repeats", "This row says no distance. Write after which distance along or across the pattern starts again."
        )
    for distance, first, way in ((row.along, row.first_along, "along"), (row.across, row.first_across, "across")):
        if first is not None and distance is None:
            raise invalid_input(
                "repeats",
                "There is a first repeat {way:text}, but no distance {way:text}. Write the distance as well.",
                way=way,
            )
