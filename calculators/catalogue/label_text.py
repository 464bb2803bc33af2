"""Text of a label: fibres by weight, the mildest care of all parts, and the size after the wash."""

from collections.abc import Mapping
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, File, Result, invalid_input
from calculators.asking.house_measures import PIECE
from calculators.asking.rows import Rows
from calculators.asking.usual_cloth import change_found
from calculators.drawing.label import label
from calculators.drawing.picture import Picture
from calculators.trade.labels import CARE, after_the_wash, by_weight, mildest
from calculators.values.kinds import Choice, Count, DimensionalChange, Length, Percent, Text
from calculators.values.measure import Ruler, show_length
from calculators.values.phrase import say

_PERCENT = Percent(places=1)
_LABELS = {"wash": "Wash", "bleach": "Bleach", "dry": "Tumble dry", "iron": "Iron", "clean": "Dry clean"}
_TO_CHOOSE = ""
_USUAL = {"wash": _TO_CHOOSE, "bleach": "not", "dry": "60", "iron": "200", "clean": "not"}


def _offered(name: str, options: Mapping[str, str]) -> Mapping[str, str]:
    """The choices of a treatment; how a part is washed is never taken for granted."""
    return {_TO_CHOOSE: "choose", **options} if name == "wash" else options


def _work(given: SimpleNamespace) -> Answer:
    total = sum(row.share for row in given.fibres)
    if total != 100:
        raise invalid_input(
            "fibres",
            "The shares come to {total:percent}, not to 100 %. Correct them, or add what is missing.",
            total=total,
        )
    if nameless := next((number for number, row in enumerate(given.fibres, start=1) if not row.fibre), None):
        raise invalid_input("fibres", "Row {row:count} has a share and no fibre. Write its name.", row=nameless)
    fibres = by_weight((row.fibre, row.share) for row in given.fibres)
    care = {each: mildest(each, (getattr(row, each) for row in given.parts)) for each in CARE}
    across, along = (
        after_the_wash(given.finished_width, given.change_width),
        after_the_wash(given.finished_length, given.change_length),
    )
    composition = ", ".join(f"{_PERCENT.show(share, given.ruler)} {fibre}" for fibre, share in fibres)
    told = [CARE[each][choice] for each, choice in care.items()]
    return Answer(
        {
            "composition": composition,
            "care": "; ".join(told),
            "largest": fibres[0][1],
            "named": len(fibres),
            "washed_width": across,
            "washed_length": along,
        },
        say("**{composition}**. {wash:text}.", composition=composition, wash=told[0]),
        (
            say(
                "This is not legal advice. What a label must say, and in which language, is settled where you sell: in "
                "the European Union by Regulation 1007/2011 for the fibres, elsewhere by its own law."
            ),
        ),
        (
            say(
                "The largest share first. Of each treatment, the mildest of {parts:part|parts}.", parts=len(given.parts)
            ),
            say(
                "Size × (1 + change): {width:length} at {across:percent} and {length:length} at {along:percent}.",
                width=given.finished_width,
                across=given.change_width,
                length=given.finished_length,
                along=given.change_length,
            ),
        ),
        drawn_from=(composition, told, (given.finished_width, given.finished_length), (across, along)),
    )


_Drawn = tuple[str, list[str], tuple[Fraction, Fraction], tuple[Fraction, Fraction]]


def _lines(drawn_from: _Drawn, ruler: Ruler) -> list[str]:
    composition, care, size, washed = drawn_from
    made = f"{show_length(size[0], ruler)} by {show_length(size[1], ruler)}"
    after = f"{show_length(washed[0], ruler)} by {show_length(washed[1], ruler)}"
    return [composition, *care, made if size == washed else f"{made}, after the wash {after}"]


def _drawing(drawn_from: _Drawn, ruler: Ruler) -> Picture:
    return label(_lines(drawn_from, ruler), ruler)


def _file(drawn_from: _Drawn, ruler: Ruler) -> str:
    return "\n".join(_lines(drawn_from, ruler)) + "\n"


def _change(name: str, label_: str) -> Field:
    return Field(name, label_, DimensionalChange(least=Fraction(-40), most=Fraction(20), sample="−3"),
                 "As the wash test found it, with its sign; 0 where it is already washed.", fixed="0",
                 from_method=change_found(name), known_as=(name,))  # fmt: skip


CALCULATOR = Calculator(
    name="label-text",
    title="Text of a label",
    purpose="Fibres by weight, the mildest care of all parts and the size after the wash, ready to print or copy.",
    fields=(
        Field("fibres", "Fibres", Rows(columns=(
            Field("fibre", "Fibre", Text(longest=30), "Its name by law.", fixed=""),
            Field("share", "Share of the weight", Percent(least=Fraction(1, 10), places=1, sample="60"), "All of them "
                  "make 100 %."),
        ), one="fibre", most=12), "Of the whole piece, by weight.", fixed="linen | 55 %; cotton | 45 %"),
        Field("parts", "Parts and their care", Rows(columns=(
            Field("part", "Part", Text(longest=30), "Cloth, thread, tape, button.", fixed="Part"),
            *(Field(name, _LABELS[name], Choice(options=_offered(name, options)), "What this part bears.",
                    fixed=_USUAL[name]) for name, options in CARE.items()),
        ), one="part", most=20, told_as=((", ", ("part",)),)), "All that is in the piece, and what its label allows.",
              fixed="cloth | 60 | not | 60 | 200 | not; tape | 40 | not | not | 150 | not"),
        Field("finished_width", "Finished width", PIECE, "As it is sold.", fixed={"cm": "40 cm", "in": "16 in"},
              known_as=("finished_width",)),
        Field("finished_length", "Finished length", PIECE, "As it is sold.", fixed={"cm": "40 cm", "in": "16 in"},
              known_as=("finished_length",)),
        _change("change_width", "Change in the wash, across"),
        _change("change_length", "Change in the wash, along"),
    ),
    question="A piece {finished_width} by {finished_length}.",
    results=(
        Result("composition", "Fibres", Text(longest=1000), "By weight, the largest first."),
        Result("care", "Care", Text(longest=1000), "The mildest that any part asks for."),
        Result("largest", "Largest share", _PERCENT, "Of the fibre named first."),
        Result("named", "Fibres named", Count(), "Each once."),
        Result("washed_width", "Width after the wash", Length(), "At the change that was found."),
        Result("washed_length", "Length after the wash", Length(), "At the change that was found."),
    ),
    work=_work,
    drawing=_drawing,
    files=(File("label.txt", "Save the text of the label", "text/plain", _file),),
    sources=("eu-1007-2011", "ginetex"),
    examples=(
        Example(
            {"fibres": "cotton | 45; linen | 55", "finished_width": "40 cm", "change_width": "−5"},
            {"largest": 55, "named": 2, "washed_width": 380},
            "worked by hand: 55 % before 45 %; 40 cm less a twentieth",
        ),
    ),
)  # fmt: skip
