"""The order: how many pieces of which kind a batch is to become."""

from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.asking.house_method import HouseMethod
from calculators.asking.site_method import site_method
from calculators.values.kinds import Choice, Count
from calculators.values.phrase import say

NO_KIND = "none"
_MOST = 50_000


def kinds_of_piece(method: HouseMethod) -> Choice:
    """The kinds of piece that a house method has a line for, to choose from."""
    return Choice(
        options={
            NO_KIND: "none of these – usual turn and hem",
            **{kind.lower(): kind for kind in method.kinds_of_piece},
        }
    )


def _work(given: SimpleNamespace) -> Answer:
    if given.ordered is None:
        return Answer(
            {"pieces": None},
            say("**As many pieces** as the cloth gives."),
            notes=(say("Write in how many are ordered, and the later steps make that many."),),
        )
    pieces = given.ordered + given.spare
    return Answer(
        {"pieces": pieces},
        say("**{pieces:piece|pieces}** to make.", pieces=pieces),
        working=(
            say(
                "{ordered:count} ordered + {spare:count} to spare = {pieces:count}.",
                ordered=given.ordered,
                spare=given.spare,
                pieces=pieces,
            ),
        ),
    )


CALCULATOR = Calculator(
    name="order",
    title="The order",
    purpose="How many pieces of which kind a batch is to become.",
    fields=(
        Field(
            "ordered",
            "Pieces ordered",
            Count(least=1, most=_MOST),
            "How many are wanted; leave it empty to make as many as the cloth gives.",
            optional=True,
            known_as=("pieces",),
        ),
        Field(
            "spare",
            "Pieces to spare",
            Count(most=_MOST),
            "Made on top of the order, such as the one you try first.",
            fixed="0",
        ),
        Field(
            "piece",
            "Kind of piece",
            kinds_of_piece(site_method()),
            "A kind of piece of the house method; a batch then begins with its turn and hem.",
            fixed=NO_KIND,
        ),
    ),
    question="Ordered {ordered}, and {spare} to spare. Kind of piece: {piece}.",
    results=(Result("pieces", "Pieces to make", Count(), "Ordered and to spare together."),),
    work=_work,
    examples=(Example({"ordered": "24", "spare": "1"}, {"pieces": 25}, "arithmetic: 24 + 1"),),
)
