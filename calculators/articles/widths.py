"""The width of the cloth that an article is cut from: whether it goes in, and what would save a width just missed."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Field
from calculators.asking.edge_questions import MEASURED, SELVEDGE, edges_that_leave_cloth
from calculators.asking.house_measures import CLOTH_WIDTH
from calculators.trade.articles.work import MakingUp
from calculators.values.phrase import say

CLOTH_FIELDS = (
    Field(
        "cloth_width", "Cloth width", CLOTH_WIDTH, "Of the cloth that it is cut from, after its wash.", "cloth_width"
    ),
    MEASURED,
    SELVEDGE,
)
_LEAST_HEM = Fraction(5)  # [mm]


def usable_width(given: SimpleNamespace) -> Fraction:
    """What can be used across the cloth [mm]; raises InvalidInput where its selvedges leave nothing."""
    return edges_that_leave_cloth(given, given.cloth_width).between(given.cloth_width)


def tell_what_saves_a_width(work: MakingUp, given: SimpleNamespace, over: Fraction, saved: str) -> None:
    """Note which smaller drop or hem would save a width, where a cloth with a drop on both sides is cut so much too
    wide [mm]. saved: what then happens, such as “it comes out of one width”."""
    values = {"over": over, "drop": given.drop - over / 2, "hem": given.hem - over / 2}
    smaller = [
        *(["a drop of {drop:length_down}"] if values["drop"] >= given.drop / 2 else []),
        *(["a hem of {hem:length_down}"] if values["hem"] >= _LEAST_HEM else []),
    ]
    if over > 0 and smaller:
        work.notes.append(say(f"{{over:length_up}} less, and {saved}: {' or '.join(smaller)} would do.", **values))


def tell_whether_it_goes_in(work: MakingUp, given: SimpleNamespace, least: Fraction) -> None:
    """Note where an article cut at least so wide [mm] is wider than the cloth, and what would help."""
    cloth = usable_width(given)
    if least <= cloth:
        return
    work.notes.append(
        say(
            "Your cloth gives {cloth:length_down} across, and it is cut {least:length_up} wide: join it from widths.",
            cloth=cloth,
            least=least,
        )
    )
    tell_what_saves_a_width(work, given, least - cloth, "it comes out of one width")
