"""Where care pays on a mitred corner: what a small error in each step does to the finished piece."""

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from itertools import islice
from math import ceil
from types import SimpleNamespace

from calculators.asking.corner_questions import FIELDS, creases_that_meet
from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.trade.corners.care import effects, pieces
from calculators.trade.corners.corner import Corner
from calculators.values.kinds import Column, Length, Table, Text
from calculators.values.phrase import Phrase, say

STEPS = {
    "turn": "First turn",
    "hem": "Second fold",
    "marks": "Marks",
    "alignment": "Laying mark on mark",
    "stitching": "Stitching on the line",
}
SEEN = {
    "edge": "Edge moves",
    "diagonal": "Corner moves",
    "depth": "Hem depth",
    "inner": "Inner corner misses",
    "point": "Point misses",
}
WORST = {
    "edge": "**Care pays most in: {step:text}.** Off by {off:length}, it moves the finished edge by {most:length}.",
    "diagonal": "**Care pays most in: {step:text}.** Off by {off:length}, it moves the finished corner by "
    "{most:length}.",
    "depth": "**Care pays most in: {step:text}.** Off by {off:length}, it changes the hem’s depth by {most:length}.",
    "inner": "**Care pays most in: {step:text}.** Off by {off:length}, it sets the hems {most:length} apart at the "
    "inner corner.",
    "point": "**Care pays most in: {step:text}.** Off by {off:length}, it misses the point by {most:length}.",
}
# Step, and thing seen: what the one does to the other [mm].
Effects = Mapping[str, Mapping[str, float]]
BATCH, OF_TWENTY = 200, 0.95
_OFF = Length(least=Fraction(0), most=Fraction(10))


def _work(given: SimpleNamespace) -> Iterator[Answer | None]:
    corner = Corner(*map(float, (given.hem_1, given.hem_2, given.angle, given.turn)))
    likely = {step: float(getattr(given, f"off_{step}")) for step in STEPS}
    with creases_that_meet():
        found = {
            step: {seen: _known(size) for seen, size in sizes.items()}
            for step, sizes in effects(corner, likely).items()
        }
    ranked = sorted(STEPS, key=lambda step: -max(found[step].values()))
    made = []
    for piece in islice(pieces(corner, likely), BATCH):
        made.append(piece)
        if len(made) % 10 == 0:
            yield None
    results = {
        "most_care": STEPS[ranked[0]],
        "steps": [{"step": STEPS[step], "off": likely[step], **found[step]} for step in ranked],
        "width": _nearly_all(piece.width for piece in made),
        "diagonals": _nearly_all(piece.diagonals for piece in made),
        "unevenness": _nearly_all(piece.unevenness for piece in made),
        "inner_corner": _nearly_all(piece.inner for piece in made),
    }
    yield Answer(results, _spoken(ranked[0], found, likely), tuple(_notes(found, likely)), tuple(_working()))


def _known(size: float) -> float:
    """What is known of a small difference between long lengths [mm]: the last digits are the machine's, not the
    corner's."""
    return round(size, 9)


def _nearly_all(differences: Iterable[Fraction | float]) -> float:
    """The difference that 19 of 20 pieces do not exceed."""
    sizes = sorted(abs(float(each)) for each in differences)
    return _known(sizes[ceil(len(sizes) * OF_TWENTY) - 1])


def _spoken(step: str, found: Effects, likely: Mapping[str, float]) -> Phrase:
    seen = max(found[step], key=found[step].__getitem__)
    if found[step][seen] < 1e-9:
        return say("**Nothing goes wrong** where every step is exact.")
    return say(WORST[seen], step=STEPS[step].lower(), off=likely[step], most=found[step][seen])


def _notes(found: Effects, likely: Mapping[str, float]) -> Iterator[Phrase]:
    harmless = [STEPS[step].lower() for step in STEPS if likely[step] and found[step]["inner"] < 1e-9]
    for step in harmless:
        yield say("The {step:text} leaves the mitre right: all marks are taken from what it leaves.", step=step)
    if likely["hem"]:
        yield say("Press the second fold against a gauge, and measure it at both ends of every side.")


def _working() -> Iterator[Phrase]:
    yield say("A corner is made with one step off at a time, every step starting from what the step before has left.")
    yield say(
        "What goes wrong on one edge is taken to have nothing to do with the other, so that effects add as squares. "
        "Then {count:count} pieces of four corners are made by chance, "
        "each step off as often one way as the other; 19 of 20 pieces lie within the figures given.",
        count=BATCH,
    )


def _off_field(step: str, help: str) -> Field:
    return Field(f"off_{step}", f"{STEPS[step]}: usually off by", _OFF, help, fixed={"cm": "1 mm", "in": "1/32 in"})


CALCULATOR = Calculator(
    name="corner-care",
    title="Where care pays",
    purpose="Which step of a mitred corner deserves the most care.",
    fields=(
        *(FIELDS[name] for name in ("hem_1", "hem_2", "angle", "turn")),
        _off_field("turn", "How far a first turn is usually off."),
        _off_field("hem", "How far a second fold is usually off."),
        _off_field("marks", "How far a mark is usually off."),
        _off_field("alignment", "How far one mark usually lies from the other once folded."),
        _off_field("stitching", "How far from the line the seam usually runs, at its ends."),
    ),
    question="Hems of {hem_1} and {hem_2} at a corner of {angle}. A first turn is usually off by {off_turn}, a second "
    "fold by {off_hem}, a mark by "
    "{off_marks}; marks lie {off_alignment} apart, and the seam runs {off_stitching} beside its line.",
    results=(
        Result("most_care", "Most care", Text(), "The step that shows most when it is as far off as usual."),
        Result("width", "Width, 19 of 20 pieces within", Length(toward="up"), "At one end of the piece, either way."),
        Result("diagonals", "Diagonals differ, 19 of 20 within", Length(toward="up"), "How far from square."),
        Result("unevenness", "Hem, widest less narrowest, 19 of 20 within", Length(toward="up"), "Around one piece."),
        Result(
            "inner_corner",
            "Worst inner corner, 19 of 20 within",
            Length(toward="up"),
            "How far the hems miss each other before they are eased.",
        ),
        Result(
            "steps",
            "What each step does",
            Table(
                columns=(
                    Column("step", "Step", Text()),
                    Column("off", "Off by", Length()),
                    *(Column(name, label, Length()) for name, label in SEEN.items()),
                )
            ),
            "The step that shows most comes first.",
        ),
    ),
    work=_work,
    examples=(
        Example(
            {
                "hem_1": "2 cm",
                "hem_2": "2 cm",
                "off_turn": "2 mm",
                "off_hem": "0",
                "off_marks": "0",
                "off_alignment": "0",
                "off_stitching": "0",
            },
            {"most_care": "First turn", "inner_corner": 0, "unevenness": 0},
            "common practice, no source: a first turn that is off moves the edge and leaves the mitre right",
            tolerance=1e-9,
        ),
        Example(
            {"hem_1": "2 cm", "hem_2": "2 cm"},
            {"most_care": "Second fold"},
            "common practice, no source: a second fold that is off does spoil the mitre",
        ),
    ),
)
