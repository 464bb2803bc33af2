"""What is asked for curtains, and what is asked again."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.hangings import PAIR_FIELDS, ROD_FIELDS, WIDTHS_FIELD
from calculators.asking.declaration import Field, InvalidInput
from calculators.asking.edge_questions import MEASURED, SELVEDGE
from calculators.asking.house_measures import CLOTH_WIDTH, HEM_OR_NONE
from calculators.asking.seams import JOINS, seam_fields
from calculators.asking.usual_cloth import change_found
from calculators.trade.curtains import Hem
from calculators.values.kinds import Count, DimensionalChange, Length
from calculators.values.measure import Ruler, show_divisions
from calculators.values.phrase import Phrase, say


@dataclass(frozen=True)
class Bought(Length):
    """A length of cloth as a shop sells it: metres, or yards in eighths on an inch ruler."""

    def show(self, value: Fraction | float, ruler: Ruler) -> str:
        return show_divisions(
            value, Ruler("yd", Fraction(1, 8)) if ruler.unit == "in" else Ruler("m", Fraction(1, 100)), "up"
        )


_CHANGE = DimensionalChange(least=Fraction(-40), most=Fraction(20), sample="−4.8")


FIELDS = (
    *ROD_FIELDS,
    *PAIR_FIELDS,
    Field("cloth_width", "Cloth width", replace(CLOTH_WIDTH, toward="down"), "Across the cloth, lying without "
        "tension, at its narrowest.", "cloth_width", known_as=("unwashed_width",)),
    MEASURED,
    Field("pattern_repeat", "Pattern repeat", Length(most=Fraction(3_000)), "Along the cloth, from one motif to the "
        "next, as you buy it; 0 for plain cloth.", fixed="0"),
    WIDTHS_FIELD,
    Field("side_hem", "Side hem", HEM_OR_NONE, "Depth of the hem at each side; 0 for a selvedge left as it is.", "hem",
        known_as=()),
    Field("side_turn", "First turn of the side hem", HEM_OR_NONE, "Only if it differs: empty for two equal folds, 0 "
        "for a single one.", optional=True),
    Field("lower_hem", "Lower hem", HEM_OR_NONE, "Depth of the hem at the foot; 0 for none.",
        fixed={"cm": "10 cm", "in": "4 in"}),
    Field("lower_turn", "First turn of the lower hem", HEM_OR_NONE, "Only if it differs: empty for two equal folds, "
        "0 for a single one.", optional=True),
    Field("heading", "Heading allowance", HEM_OR_NONE, "All the cloth beyond the finished top edge.",
        fixed={"cm": "5 cm", "in": "2 in"}),
    SELVEDGE,
    *seam_fields("french", JOINS),
    Field(
        "change_length", "Change in the wash, along", _CHANGE, "Still to come, with its sign: −4 for cloth that "
            "loses 4 %. 0 for cloth already washed.", fixed="0",
        from_method=change_found("change_length"), known_as=("change_length",),
    ),
    Field("change_width", "Change in the wash, across", _CHANGE, "As before, for the width.", fixed="0",
        from_method=change_found("change_width"), known_as=("change_width",)),
    Field("spare_repeats", "Repeats to spare", Count(most=9), "So that the pattern may begin where you want it; of "
        "no account for plain cloth.", fixed="1"),
    Field("end_loss", "Cut off each end", Length(most=Fraction(5_000)), "Cut off each end once, to reach clean, "
        "whole threads.", "end_loss"),
    Field("skew", "Slant of one end", Length(most=Fraction(3_000)), "How far along the selvedge a drawn thread "
        "comes out from where a square line would; 0 for cloth that lies square.", "skew"),
    Field("sold_in", "Sold in steps of", Length(least=Fraction(1), most=Fraction(10_000)),
        "The shop cuts no finer than "
        "this.", fixed={"cm": "10 cm", "in": "1/8 yd"}),
    Field("cloth_in_hand", "Cloth in hand", Length(least=Fraction(10), most=Fraction(1_000_000)),
        "Length you have already, "
        "unwashed; empty if you are going to buy it.", optional=True),
)  # fmt: skip
QUESTION = (
    "Curtains for a rod or track of {rod}, with a finished drop of {drop} and fullness {fullness}, from cloth "
    "{cloth_width} wide."
)


def hem(depth: Fraction, turn: Fraction | None) -> Hem:
    """The hem that was written; without a turn of its own it has two equal folds."""
    return Hem(depth, depth if turn is None else turn)


def off_the_ends(given: SimpleNamespace) -> Fraction:
    """What both ends lose when they are cut clean and square [mm]."""
    lost: Fraction = 2 * given.end_loss + given.skew
    return lost


def refuse_what_cannot_be_sewn(given: SimpleNamespace, curtain: Fraction, cloth_width: Fraction) -> None:
    """Raises InvalidInput where hems and seams leave nothing of a curtain so wide [mm], made of cloth so wide [mm] once
    washed."""
    if messages := dict(_messages(given, curtain, cloth_width)):
        raise InvalidInput(messages)


def _messages(given: SimpleNamespace, curtain: Fraction, cloth_width: Fraction) -> Iterator[tuple[str, Phrase]]:
    for name, depth, turn in (
        ("side_turn", given.side_hem, given.side_turn),
        ("lower_turn", given.lower_hem, given.lower_turn),
    ):
        if turn is not None and turn > depth:
            yield (
                name,
                say(
                    "The turn is deeper than the hem it hides in. Turn at most {depth:length_down}, or make the hem "
                    "deeper.",
                    depth=depth,
                ),
            )
    if 2 * given.side_hem >= curtain:
        yield (
            "side_hem",
            say(
                "Two side hems of {depth:length} leave nothing between them on a curtain {curtain:length} wide. "
                "Write a shallower hem.",
                depth=given.side_hem,
                curtain=curtain,
            ),
        )
    if given.lower_hem >= given.drop:
        yield (
            "lower_hem",
            say(
                "A hem of {depth:length} is as deep as the curtain is long. Write less than {drop:length}.",
                depth=given.lower_hem,
                drop=given.drop,
            ),
        )
    if 4 * given.seam_allowance >= cloth_width:
        yield (
            "seam_allowance",
            say(
                "The seams would take up half a width of {cloth:length_down}. Write what one edge loses in a join.",
                cloth=cloth_width,
            ),
        )
