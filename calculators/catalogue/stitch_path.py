"""A hand stitch, drawn: where the thread lies over the cloth and under it, and which way the needle goes."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.asking.house_measures import STITCH
from calculators.asking.house_method import HouseMethod
from calculators.drawing.picture import Picture
from calculators.drawing.stitch import stitch_on_cloth
from calculators.trade.stitches.hand import STITCHES
from calculators.trade.stitches.stitch import Stitch
from calculators.values.kinds import Choice, Count, Length
from calculators.values.measure import Ruler
from calculators.values.phrase import say
from calculators.values.small_lengths import show_small


def _usual(_: HouseMethod, ruler: Ruler, stitch: str) -> str:
    """How long a stitch of this kind usually is."""
    return STITCHES[stitch].usual["in" if ruler.unit == "in" else "cm"]


def _work(given: SimpleNamespace) -> Answer:
    stitch = STITCHES[given.stitch]
    advance = stitch.advance * given.stitch_length
    holes = sum(place.goes_through for place in stitch.once)
    return Answer(
        {"advance": advance, "holes": holes},
        say("**{advance:text}** from one stitch to the next.", advance=show_small(advance, given.ruler)),
        (),
        (say("{do:text}.", do=stitch.do),),
        drawn_from=(stitch, given.stitch_length),
    )


def _drawing(drawn_from: tuple[Stitch, Fraction], ruler: Ruler) -> Picture:
    return stitch_on_cloth(*drawn_from, ruler)


_STITCH = Field(
    "stitch",
    "Stitch",
    Choice(options={name: each.title[0].lower() + each.title[1:] for name, each in STITCHES.items()}),
    "Which stitch is drawn.",
    fixed="running",
)

CALCULATOR = Calculator(
    name="stitch-path",
    title="A hand stitch drawn",
    purpose="How a hand stitch goes: the thread over the cloth and under it, and the needle’s way in figures.",
    fields=(
        _STITCH,
        Field(
            "stitch_length",
            "Length of one stitch",
            STITCH,
            "Along the work, as its drawing shows.",
            fixed={"cm": "3 mm", "in": "1/8 in"},
            from_method=_usual,
            beside=(_STITCH,),
            known_as=(),
        ),
    ),
    question="{stitch}, each {stitch_length} long.",
    results=(
        Result("advance", "From one stitch to the next", Length(), "How far on the next stitch begins."),
        Result("holes", "Times through the cloth", Count(), "How often the needle goes through for one stitch."),
    ),
    work=_work,
    drawing=_drawing,
    examples=(
        Example(
            {"stitch": "running", "stitch_length": "3 mm"},
            {"advance": 6, "holes": 2},
            "derived: as long under the cloth as over it, out once and in once",
        ),
        Example(
            {"stitch": "back", "stitch_length": "1/8 in"},
            {"advance": 3.175},
            "derived: two on below, one back on top, so one stitch on",
        ),
    ),
)
