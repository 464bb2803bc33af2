"""A thread's number in every system, and the needles for it in a cloth."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.drawing.needles import needles
from calculators.trade.thread_numbers import CLOTHS, NEEDLES, needles_for, number_of, tex_of
from calculators.values.kinds import Choice, Count, Number
from calculators.values.phrase import Phrase, say

_SYSTEMS = {
    "tex": "tex", "ticket": "metric ticket", "cotton": "cotton ticket", "nm": "Nm", "ne": "Ne", "den": "denier",
    "dtex": "decitex",
}  # fmt: skip
_WHOLE = ("ticket", "cotton")  # numbers of the whole thread
_FINEST, _THICKEST = 2, 500  # [tex] of what is sewn with
_CLOTHS = dict(
    zip(CLOTHS, ("light: lawn, voile, muslin", "medium: linen, sheeting", "heavy: curtain, upholstery cloth"))
)


def _work(given: SimpleNamespace) -> Answer:
    if given.system in _WHOLE and given.strands > 1:
        raise invalid_input("strands", "A ticket number is of the whole thread. Write 1.")
    tex = tex_of(given.thread_number, given.system, given.strands)
    if not _FINEST <= tex <= _THICKEST:
        raise invalid_input(
            "thread_number",
            "That would be {tex:number} tex, and sewing threads lie between {finest:count} and {thickest:count}. Look "
            "again at the number and its kind.",
            tex=tex,
            finest=_FINEST,
            thickest=_THICKEST,
        )
    found = needles_for(tex, given.cloth_kind)
    finest, thickest, suits = found or (None, None, False)
    return Answer(
        {system: number_of(tex, system) for system in _SYSTEMS}
        | {
            "finest": finest,
            "thickest": thickest,
            "finest_older": finest and NEEDLES[finest],
            "thickest_older": thickest and NEEDLES[thickest],
        },
        _told(tex, finest, thickest),
        tuple(_notes(found is not None, suits)),
        tuple(_working(given, tex)),
        drawn_from=None if found is None else (finest, thickest),
    )


def _told(tex: Fraction, finest: int | None, thickest: int | None) -> Phrase:
    thread = {"tex": tex, "ticket": number_of(tex, "ticket")}
    if finest is None or thickest is None:
        return say("**{tex} tex**, metric ticket {ticket}: thicker than these needles take.", **thread)
    return say(
        "**{tex} tex**, metric ticket {ticket}: needle **{finest:count}/{older:count}** to "
        "{thickest:count}/{older_of_thickest:count}.",
        **thread,
        finest=finest,
        older=NEEDLES[finest],
        thickest=thickest,
        older_of_thickest=NEEDLES[thickest],
    )


def _notes(taken: bool, suits: bool) -> Iterator[Phrase]:
    if not taken:
        yield say("Such a thread is for the hand, or for the bobbin alone.")
    elif not suits:
        yield say("The needles are for the thread alone: it is too thick or too fine for this cloth. Try another.")
    yield say("Which needle a thread takes is common practice, no source: try the pair on a scrap first.")


def _working(given: SimpleNamespace, tex: Fraction) -> Iterator[Phrase]:
    if given.strands > 1:
        yield say("{strands:count} strands twisted together weigh as much as all of them.", strands=given.strands)
    yield say(
        "tex = denier ÷ 9 = 1000 ÷ Nm = {hank:number} ÷ Ne = 3000 ÷ metric ticket; a cotton ticket is 3 times the Ne "
        "of the whole thread. Here {tex} tex.",
        hank=number_of(Fraction(1), "ne"),
        tex=tex,
    )


def _number(most: int = 100_000) -> Number:
    return Number(most=Fraction(most), places=2)


CALCULATOR = Calculator(
    name="thread-and-needle",
    title="Thread numbers and needles",
    purpose="A thread’s number in every system it is sold by, and the needles for it in a cloth.",
    fields=(
        Field("thread_number", "Number", Number(least=Fraction(1, 10), most=Fraction(10_000), places=2, sample="40"),
              "As it stands on the reel.", fixed="40"),
        Field("system", "Kind of number", Choice(options=_SYSTEMS), "A larger number is a thicker thread in tex, "
              "decitex and denier, a finer one in all others.", fixed="tex"),
        Field("strands", "Strands", Count(least=1, most=12), "The 2 in Nm 80/2; 1 where the number is of the whole "
              "thread.", fixed="1"),
        Field("cloth_kind", "Cloth", Choice(options=_CLOTHS), "What is sewn.", fixed="medium"),
    ),
    question="Thread {thread_number} {system}, in a cloth that is {cloth_kind}.",
    results=(
        Result("tex", "Tex", _number(), "Grams of 1000 m."),
        Result("ticket", "Metric ticket", _number(), "3000 ÷ tex."),
        Result("cotton", "Cotton ticket", _number(), "3 × Ne."),
        Result("nm", "Nm", _number(), "Metres of one gram."),
        Result("ne", "Ne", _number(), "Hanks of 840 yd in a pound."),
        Result("den", "Denier", _number(), "Grams of 9000 m."),
        Result("dtex", "Decitex", _number(), "Grams of 10,000 m."),
        Result("finest", "Finest needle", Count(), "Its metric number, hundredths of a millimetre."),
        Result("thickest", "Thickest needle", Count(), "Its metric number."),
        Result("finest_older", "Finest needle, older number", Count(), "Stands behind the stroke."),
        Result("thickest_older", "Thickest needle, older number", Count(), "Stands behind the stroke."),
    ),
    work=_work,
    drawing=needles,
    sources=("thread-count-text", "machine-manual-needles", "needle-numbers"),
    examples=(
        Example(
            {"thread_number": "90", "system": "den"}, {"tex": 10, "dtex": 100, "nm": 100, "ticket": 300},
            "worked by hand: 90 ÷ 9; 1000 ÷ 10; 3000 ÷ 10",
        ),
        Example(
            {"thread_number": "60", "system": "nm", "strands": "3", "cloth_kind": "heavy"},
            {"tex": 50, "ticket": 60, "finest": 90, "thickest": 100},
            "worked by hand: 3 × 1000 ÷ 60 = 50; 3000 ÷ 50 = 60",
        ),
    ),
)  # fmt: skip
