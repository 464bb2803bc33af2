"""A pillowcase in one piece, with a flap inside that holds the pillow."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, part_of_size, refuse_unless, seam_kind, seam_of, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length, flap_length = given.width, given.length, given.flap
    refuse_unless(flap_length < length, "flap", "The flap is as long as the case, {length:length}. Write less.",
        length=length)  # fmt: skip
    refuse_unless(given.flap_hem < flap_length, "flap", "The flap is no longer than its hem, {hem:length}. Write more.",
        hem=given.flap_hem)  # fmt: skip
    front = work.rectangle("front", width, length)
    back = work.rectangle("back", width, length)
    flap = work.rectangle("flap", width, flap_length)
    work.fold(front.bottom, back.bottom)
    work.fold(front.top, flap.top)
    work.hem(back.top, turn=given.turn, hem=given.hem, do="Hem the end of the back, which is seen: turn in {turn}, "
        "then {hem}, and stitch")  # fmt: skip
    work.hem(flap.bottom, turn=given.turn, hem=given.flap_hem, do="Hem the end of the flap: turn in {turn}, then "
        "{hem}, and stitch")  # fmt: skip
    kind = seam_kind(given)
    folded = (
        "Wrong side up, fold the flap in, then the back over it, so that the right side is outside"
        if given.seam == "french"
        else "Right side up, fold the back over the front, then the flap over both"
    )
    work.seam(
        *((getattr(front, side), getattr(back, side)) for side in ("left", "right")),
        *((getattr(front, side).between(length - flap_length, length), getattr(flap, side))
            for side in ("left", "right")),
        kind=kind,
        do=f"{folded}; stitch both sides, {kind.where}",
        how="Fasten well at the opening.",
    )  # fmt: skip
    work.turn_out(width)
    return width, length


ARTICLE = Article(
    name="pillowcase",
    title="Pillowcase with a flap",
    purpose="The one long piece to cut for a pillowcase with a flap, and where it is folded.",
    fields=(
        size("width", "Width of the case", "Along the opening: as wide as the pillow.", "50 cm", "20 in"),
        size("length", "Length of the case", "Fold to opening: as long as the pillow.", "75 cm", "30 in"),
        part_of_size("flap", "Flap", "Finished, how far it goes in.", "18 cm", "7 in"),
        hem_of("hem", "Hem of the opening", "It is seen.", "3 cm", "1 1/4 in"),
        hem_of("flap_hem", "Hem of the flap", "It lies inside.", "1 cm", "3/8 in"),
        hem_of("turn", "First turn of both", "The first fold of the raw edge.", "1 cm", "3/8 in"),
        *seam_of("french", "french", "plain"),
    ),
    question="A case {width} by {length} with a flap of {flap}.",
    make=_make,
    cut=("front",),
    examples=(
        Example(
            {"width": "50 cm", "length": "75 cm", "flap": "15 cm", "hem": "3 cm", "flap_hem": "1 cm", "turn": "1 cm",
                "seam_allowance": "1 cm"},
            {"front_width": 520, "front_length": 1710},
            "worked by hand: 50 + 2 × 1 cm; 75 + 75 + 15, and hems of 3 + 1 and 1 + 1 = 171 cm",
        ),
    ),
    about="case",
)  # fmt: skip
