"""Finished sizes in place of cut sizes: each kind of piece with its turn and hem, as the house method has them."""

import json
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Field, invalid_input
from calculators.asking.house_method import HouseMethod
from calculators.asking.rows import Rows
from calculators.trade.hems import Hems
from calculators.values.kinds import Choice, Length, Text
from calculators.values.measure import Ruler

CUT, FINISHED = "cut", "finished"
ANY_OTHER = "Any other"
_HEM = Length(most=Fraction(500))


def hems_of_the_house(method: HouseMethod, ruler: Ruler) -> str:
    """The house's turn and hem for each of its kinds of piece, and for any other, as rows of text."""
    kinds = [(kind, method.for_kind(kind)) for kind in dict.fromkeys(method.kinds_of_piece)]
    return json.dumps(
        [
            [kind, *(own.measure(name, ruler) for name in ("turn", "hem"))]
            for kind, own in [*kinds, (ANY_OTHER, method)]
        ],
        ensure_ascii=False,
    )


SIZES = Field(
    "sizes",
    "Sizes",
    Choice(options={CUT: "cut sizes", FINISHED: "finished sizes"}),
    "Whether all hems are in the sizes below, or are to be added.",
    fixed=CUT,
)
HEMS = Field(
    "hems",
    "Hems, for finished sizes",
    Rows(
        columns=(
            Field("kind", "Kind of piece", Text(longest=60), "As its row in the order is called.", fixed=ANY_OTHER),
            Field("turn", "Turn", _HEM, "First fold of the raw edge."),
            Field("hem", "Hem", _HEM, "Second fold; 0 where all four sides are left as they are."),
        ),
        one="kind of piece",
        most=60,
        least=0,
    ),
    "Added on all four sides where finished sizes are written. A row of the order takes those of its own name, else "
    f"“{ANY_OTHER}”.",
    optional=True,
    from_method=hems_of_the_house,
)


def hems_for(name: str, given: SimpleNamespace) -> Hems:
    """The hems on all four sides of a piece of that name; raises InvalidInput where none are written.

    name: as its row in the order is called; “Napkins” are Napkin too.
    """
    written = {row.kind.casefold(): row for row in given.hems or ()}
    own = name.casefold()
    row = next((written[each] for each in (own, own.removesuffix("s"), ANY_OTHER.casefold()) if each in written), None)
    if row is None:
        raise invalid_input(
            "hems",
            "There is no hem for “{name:text}”. Write a row for it, or one called “{other:text}”.",
            name=name,
            other=ANY_OTHER,
        )
    return Hems(row.turn, row.hem, row.hem, row.hem, row.hem)


def cut_size(row: SimpleNamespace, given: SimpleNamespace) -> tuple[Fraction, Fraction]:
    """Width and length to cut for a row of the order, as written or with its hems added [mm]."""
    if given.sizes == CUT:
        return row.width, row.length
    hems = hems_for(row.name, given)
    return row.width + hems.across, row.length + hems.along
