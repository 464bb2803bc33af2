"""Pointed end: the angles of a runner's corners, from its width and how long the point is."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.corner_questions import ANGLE
from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.drawing.pointed_end import pointed_end
from calculators.trade.pointed_end import PointedEnd
from calculators.values.kinds import Angle, Length
from calculators.values.phrase import Phrase, say


def _work(given: SimpleNamespace) -> Answer:
    end = PointedEnd(given.runner_width, given.point_length)
    results = {"tip": end.tip, "side": end.side, "slant": end.slant}
    return Answer(
        results,
        say("**{tip}** at the point, {side} at each of the two corners beside it.", **results),
        notes=tuple(_notes(end)),
        working=(
            say(
                "Half the width is {half:length}. An angle whose tangent is {half:length} ÷ {point:length} is "
                "{halved:angle}; the point has twice that, {tip:angle}.",
                half=end.width / 2,
                point=end.point,
                halved=end.tip / 2,
                tip=end.tip,
            ),
            say("Each side corner: 180° − {halved:angle} = {side:angle}.", halved=end.tip / 2, side=end.side),
        ),
        drawn_from=end,
    )


def _notes(end: PointedEnd) -> Iterator[Phrase]:
    tip, side = round(end.tip, 1), round(end.side, 1)  # as they are shown, and written above
    if tip < ANGLE.least:
        yield say(
            "A point under {least:angle} is too sharp for the mitre on this page. Make it shorter, or round it.",
            least=ANGLE.least,
        )
    elif tip > ANGLE.most:
        yield say(
            "A point over {most:angle} is too blunt for the mitre on this page. Make it longer, or leave the end "
            "straight.",
            most=ANGLE.most,
        )
    else:
        yield say(
            "For the point, write {tip:angle} as the angle of the corner at the head of this page; its marks follow.",
            tip=end.tip,
        )
    if side > ANGLE.most:
        yield say(
            "The two side corners are more open than {most:angle}, too open for this mitre: lay one hem over the "
            "other there (common practice, no source).",
            most=ANGLE.most,
        )
    else:
        yield say(
            "For the two side corners, write {side:angle} there, and mark them by what it then says.", side=end.side
        )


CALCULATOR = Calculator(
    name="pointed-end",
    title="Pointed end",
    purpose="The angles at the pointed end of a runner, from its width and how long the point is.",
    fields=(
        Field("runner_width", "Width of the runner", Length(least=Fraction(20), most=Fraction(3_000)),
            "Edge to edge, where the "
            "point begins.", fixed={"cm": "40 cm", "in": "16 in"}),
        Field("point_length", "Length of the point", Length(least=Fraction(5), most=Fraction(3_000)),
            "Along the middle, from "
            "where the point begins to its "
                "tip. Both measures finished, or both cut.", fixed={"cm": "20 cm", "in": "8 in"}),
    ),
    question="A runner {runner_width} wide, with a point {point_length} long.",
    results=(
        Result("tip", "Angle at the point", Angle(), "Inside angle of the tip."),
        Result("side", "Angle at each side corner", Angle(), "Inside angle where the point begins, the same on both "
            "sides."),
        Result("slant", "Each slanting edge", Length(), "From a side corner to the tip; both must measure the same."),
    ),
    work=_work,
    drawing=pointed_end,
    examples=(
        Example(
            {"runner_width": "16 in", "point_length": "8 in"}, {"tip": 90, "side": 135, "slant": 287.3682},
            "worked by hand: half of 16 in is 8 in, as long as the point, so two halves of 45°; √2 × 8 in = 11.3137 "
                "in", tolerance=0.001,
        ),
        Example(
            {"runner_width": "60 mm", "point_length": "40 mm"}, {"tip": 73.7398, "side": 143.1301, "slant": 50},
            "derived: two triangles of 3, 4 and 5; the angle opposite the 3 is 36.8699°", tolerance=0.001,
        ),
    ),
)  # fmt: skip
