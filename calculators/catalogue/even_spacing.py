"""Even spacing: buttons, rings, hooks, pleats, tabs and gathers that come out even along an edge."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.drawing.spacing import MarkedEdge, marked_edge
from calculators.trade.spacing import Spacing, divided
from calculators.trade.trade_rules import brief
from calculators.values.kinds import Choice, Count, Length, Lengths
from calculators.values.phrase import Phrase, say

_MOST = 500
_LEFT_OVER = {"any": (0, 1), "odd": (1,), "even": (0,)}
_NOTHING = Fraction(0)


def _work(given: SimpleNamespace) -> Answer:
    gathers = given.things == "gathers"
    width = given.each_width if given.things == "bands" else _NOTHING
    from_end = None if gathers or given.at_ends == "half" else given.end_space
    spacing = Spacing(given.marked_edge, width, from_end)
    if from_end is not None and 2 * from_end + width >= given.marked_edge:
        raise invalid_input(
            "end_space",
            "The two ends leave no room on an edge of {edge:length}. Write less.",
            edge=given.marked_edge,
        )
    count = _count(given, spacing)
    return _gathered(given, count) if gathers else _spaced(given, spacing, count)


def _count(given: SimpleNamespace, spacing: Spacing) -> int:
    allowed = _LEFT_OVER[given.odd_even]
    if given.how_many is None:
        if given.marked_edge > _MOST * (spacing.width + given.about_apart):
            raise invalid_input("about_apart", "That makes more than {most:count}. Write a larger space.", most=_MOST)
        found = spacing.nearest(given.about_apart, allowed)
        if found is None:
            raise invalid_input("about_apart", "Nothing so wide comes out even on this edge. Write a smaller space.")
        return found
    if given.how_many % 2 not in allowed:
        raise invalid_input(
            "how_many",
            "{count:count} is not {wanted:text}. Write another number, or choose odd or even.",
            count=given.how_many,
            wanted=given.odd_even,
        )
    if not spacing.fits(given.how_many):
        raise invalid_input(
            "how_many", "So many have no room on an edge of {edge:length}. Write fewer.", edge=given.marked_edge
        )
    count: int = given.how_many
    return count


def _spaced(given: SimpleNamespace, spacing: Spacing, count: int) -> Answer:
    marks, space, width = spacing.begins(count), spacing.space(count), spacing.width
    results = {"count": count, "space": space, "marks": marks, "ends": None, "joined": None, "left": None}
    if width:
        results |= {"ends": [mark + width for mark in marks], "left": given.marked_edge - count * width}
    return Answer(
        results,
        say("**{count:count}**, in the middle.", count=count)
        if space is None
        else say(
            "**{count:count}**, with {space:length} from one to the next; the first at {first:length}.",
            count=count,
            space=space,
            first=marks[0],
        ),
        (_measured_from_one_end(),),
        (_working(given, spacing, count),),
        drawn_from=MarkedEdge(given.marked_edge, marks, width),
    )


def _working(given: SimpleNamespace, spacing: Spacing, count: int) -> Phrase:
    if spacing.from_end is None:
        return say(
            "{edge:length} ÷ {count:count} − {width:length} = {space:length}, half of it at each end.",
            edge=given.marked_edge,
            count=count,
            width=spacing.width,
            space=spacing.space(count),
        )
    if count == 1:
        return say("Half of {edge:length}.", edge=given.marked_edge)
    return say(
        "({edge:length} − 2 × {end:length} − {count:count} × {width:length}) ÷ {spaces:count} = {space:length}.",
        edge=given.marked_edge,
        end=spacing.from_end,
        count=count,
        width=spacing.width,
        spaces=count - 1,
        space=spacing.space(count),
    )


def _gathered(given: SimpleNamespace, parts: int) -> Answer:
    if parts == 1:
        raise invalid_input("how_many" if given.how_many else "about_apart", "One part has no mark. Ask for more.")
    marks, joined = divided(given.marked_edge, parts), divided(given.gathered_to, parts)
    return Answer(
        {
            "count": parts,
            "space": given.marked_edge / parts,
            "marks": marks,
            "ends": None,
            "joined": joined,
            "left": None,
        },
        say(
            "**{parts:part|parts}**: a mark every {space:length} on the edge to gather, every {other:length} on the "
            "other.",
            parts=parts,
            space=given.marked_edge / parts,
            other=given.gathered_to / parts,
        ),
        (_measured_from_one_end(),),
        (
            say(
                "{edge:length} ÷ {parts:count} and {other:length} ÷ {parts:count}.",
                edge=given.marked_edge,
                other=given.gathered_to,
                parts=parts,
            ),
        ),
        drawn_from=MarkedEdge(given.marked_edge, marks, to=given.gathered_to),
    )


def _measured_from_one_end() -> Phrase:
    return say(brief("one-end"))


_APART = Length(least=Fraction(2), most=Fraction(10_000))
CALCULATOR = Calculator(
    name="even-spacing",
    title="Even spacing",
    purpose="Buttons, rings, hooks, pleats, tabs and gathers that come out even along an edge.",
    fields=(
        Field("things", "What", Choice(options={"points": "buttons, rings or hooks", "bands": "pleats or tabs",
              "gathers": "gathers"}), "Each by its middle; or each with a width of its own; or two edges in equal "
              "parts.", fixed="points"),
        Field("marked_edge", "Edge", Length(least=Fraction(20), most=Fraction(30_000)), "From end to end, as it lies "
              "when it is marked.", fixed={"cm": "100 cm", "in": "40 in"}),
        Field("about_apart", "About how far apart", _APART, "From one to the next; the nearest that comes out even is "
              "taken.", fixed={"cm": "12 cm", "in": "4 3/4 in"}),
        Field("how_many", "How many", Count(least=1, most=_MOST), "Left empty, as many as come nearest. Of gathers, "
              "the parts.", optional=True),
        Field("odd_even", "Odd or even", Choice(options={"any": "either", "odd": "odd", "even": "even"}),
              "An odd number has one in the middle.", fixed="any"),
        Field("at_ends", "First and last", Choice(options={"distance": "so far from the ends", "half": "half a space "
              "from the ends"}), "Half a space: edges joined end to end go on evenly.", fixed="distance"),
        Field("end_space", "From each end", Length(most=Fraction(10_000)), "To the middle of the first, or to where it "
              "begins; 0 at the very end.", fixed={"cm": "2 cm", "in": "3/4 in"}),
        Field("each_width", "Width of each", Length(least=Fraction(1), most=Fraction(5_000)), "Cloth that a pleat "
              "takes up, or the width of a tab.", fixed={"cm": "10 cm", "in": "4 in"}),
        Field("gathered_to", "Gathered to", Length(least=Fraction(20), most=Fraction(30_000)), "Length of the edge "
              "that gathers are joined to.", fixed={"cm": "50 cm", "in": "20 in"}),
    ),
    question="{things} on an edge of {marked_edge}, about {about_apart} apart, {end_space} from each end.",
    results=(
        Result("count", "How many", Count(), "Things along the edge; of gathers, parts."),
        Result("space", "From one to the next", Length(), "From middle to middle, or the cloth between two."),
        Result("marks", "Mark at", Lengths(), "From one end: each middle, or where each begins."),
        Result("ends", "Each ends at", Lengths(), "Where each is over."),
        Result("joined", "On the other edge mark at", Lengths(), "From one end of it."),
        Result("left", "Width when pleated", Length(), "The edge, less what pleats take up."),
    ),
    work=_work,
    drawing=marked_edge,
    examples=(
        Example(
            {"things": "points", "marked_edge": "100 cm", "how_many": "5", "end_space": "2 cm"},
            {"count": 5, "space": 240},
            "worked by hand: (100 − 2 × 2) ÷ 4 = 24 cm",
        ),
        Example(
            {"things": "bands", "marked_edge": "40 in", "about_apart": "3 in", "odd_even": "even", "end_space": "2 in",
             "each_width": "4 in"},
            {"count": 6, "space": 60.96, "left": 406.4},
            "worked by hand: 6 × 4 = 24 in of 36 in; 12 ÷ 5 = 2.4 in is nearer to 3 in than 20 ÷ 3 in",
        ),
        Example(
            {"things": "gathers", "marked_edge": "120 cm", "gathered_to": "60 cm", "how_many": "4"},
            {"count": 4, "space": 300},
            "worked by hand: quarters of 120 cm and of 60 cm",
        ),
    ),
)  # fmt: skip
