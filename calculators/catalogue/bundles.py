"""Bundles: how a batch is split up to go through the workroom."""

from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.trade.bundles import Bundles
from calculators.values.kinds import Count
from calculators.values.phrase import say


def _work(given: SimpleNamespace) -> Answer:
    bundles = Bundles(given.pieces, given.bundle)
    results = {"bundles": bundles.count, "last_bundle": bundles.last}
    if bundles.count == 1:
        spoken = "**{bundles:bundle|bundles}** of {pieces:piece|pieces}."
    elif bundles.last == given.bundle:
        spoken = "**{bundles:bundle|bundles}** of {bundle:piece|pieces} each."
    else:
        spoken = "**{bundles:bundle|bundles}** of {bundle:piece|pieces}, the last of {last_bundle:count}."
    return Answer(
        results,
        say(spoken, pieces=given.pieces, bundle=given.bundle, **results),
        notes=(
            say(
                "Finish one step for a whole bundle before the next step begins; the first bundle shows what goes "
                "wrong while it can be mended."
            ),
        ),
        working=(
            say(
                "{pieces:count} ÷ {bundle:count}, rounded up: {bundles:bundle|bundles}.",
                pieces=given.pieces,
                bundle=given.bundle,
                bundles=bundles.count,
            ),
        ),
    )


CALCULATOR = Calculator(
    name="bundles",
    title="Bundles",
    purpose="How a batch is split into bundles that go through the workroom together.",
    fields=(
        Field(
            "pieces",
            "Pieces to make",
            Count(least=1, most=100_000),
            "How many pieces are made in this batch.",
            fixed="18",
            known_as=("pieces",),
        ),
        Field(
            "bundle",
            "Pieces in a bundle",
            Count(least=1, most=1_000),
            "How many pieces go through a step together; one box of the ticket is ticked for them.",
            "bundle",
        ),
    ),
    question="{pieces} pieces in bundles of {bundle}.",
    results=(
        Result("bundles", "Bundles", Count(), "Bundles in all, the last one counted too."),
        Result("last_bundle", "In the last bundle", Count(), "Pieces in the last bundle."),
    ),
    work=_work,
    examples=(
        Example(
            {"pieces": "500", "bundle": "12"},
            {"bundles": 42, "last_bundle": 8},
            "arithmetic: 41 × 12 = 492, and 8 are left",
        ),
    ),
)
