"""A tablecloth wider than the cloth: a whole width in the middle, and what is missing at both sides alike."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import part_of_size, refuse_unless, seam_kind, seam_of, size, turn_and_hem
from calculators.articles.widths import CLOTH_FIELDS, tell_what_saves_a_width, usable_width
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp
from calculators.trade.lay_plan.joins import full_and_sides
from calculators.values.phrase import say

_MOST = 9  # whole widths


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = given.table_width + 2 * given.drop, given.table_length + 2 * given.drop
    cloth, kind, takes = usable_width(given), seam_kind(given), given.turn + given.hem
    cut = width + 2 * takes
    refuse_unless(4 * kind.allowance < cloth, "seam_allowance", "The seams would take up half of {cloth:length_down}. "
        "Write what one edge loses in a seam.", cloth=cloth)  # fmt: skip
    refuse_unless(cut > cloth, "cloth_width", "The tablecloth comes out of one width: it is cut {cut:length} wide. "
        "Write a narrower cloth.", cut=cut)  # fmt: skip
    full, side = full_and_sides(cut, cloth, kind.allowance)
    refuse_unless(full <= _MOST, "cloth_width", "Of cloth this narrow it takes {full:count} widths and two sides. "
        "Write the whole width of the cloth.", full=full)  # fmt: skip
    seen = side - kind.allowance - takes
    refuse_unless(seen > given.hem, "drop", "The sides would be nothing but hem. Write at least {more:length_up}, or "
        "at most {less:length_down}, and they are not needed.", more=given.drop + given.hem - seen + 1,
        less=given.drop - side + 2 * kind.allowance)  # fmt: skip
    centre = [
        work.rectangle(f"centre {n}" if n else "centre", cloth - 2 * kind.allowance, length, "centre" if n else "")
        for n in range(full)
    ]
    left, right = work.rectangle("left side", seen, length), work.rectangle("right side", seen, length)
    widths = (left, *centre, right)
    work.seam(
        *((one.right, other.left) for one, other in zip(widths, widths[1:])), kind=kind, angle=0,
        do=f"Join the widths, the whole one in the middle, {kind.lie}, {kind.where}",
    )  # fmt: skip
    work.hem(
        left.left, right.right, *(each.side(end) for each in widths for end in ("top", "bottom")),
        turn=given.turn, hem=given.hem, do="Hem all sides of the joined cloth: turn in {turn}, then {hem}, and stitch",
    )  # fmt: skip
    lengths = full + (1 if 2 * side <= cloth else 2)
    work.notes.append(say("It takes {lengths:length|lengths} of the cloth.", lengths=lengths))
    if 2 * side > cloth:
        tell_what_saves_a_width(work, given, 2 * side - cloth, "both sides come out of one width")
    else:
        tell_what_saves_a_width(  # without the sides, the outermost widths have a seam less
            work, given, 2 * (side - 2 * kind.allowance),
            "it comes out of one width" if full == 1 else "two seams are saved",
        )  # fmt: skip
    return width, length


ARTICLE = Article(
    name="tablecloth-joined",
    title="Tablecloth joined from widths",
    purpose="What to cut for a tablecloth wider than the cloth: the middle, the sides, how many lengths it takes.",
    fields=(
        size("table_width", "Width of the table", "Across the top.", "120 cm", "48 in", known_as=("table_width",)),
        size("table_length", "Length of the table", "Along the top.", "200 cm", "80 in", known_as=("table_length",)),
        part_of_size("drop", "Drop", "From the table’s edge to the hem.", "40 cm", "16 in", known_as=("table_drop",)),
        *turn_and_hem("Tablecloth"),
        *CLOTH_FIELDS,
        *seam_of("felled", "felled", "french", "plain"),
    ),
    question="A table {table_width} by {table_length}, a drop of {drop}, of cloth {cloth_width} wide.",
    make=_make,
    cut=("centre", "left side", "right side"),
    examples=(
        Example(
            {"table_width": "120 cm", "table_length": "200 cm", "drop": "40 cm", "turn": "1 cm", "hem": "2 cm",
                "cloth_width": "150 cm", "measured": "trimmed", "seam": "felled", "seam_allowance": "1 cm"},
            {"finished_width": 2000, "centre_width": 1500, "left_side_width": 300, "centre_length": 2860},
            "worked by hand: 200 + 6 = 206 cm; the middle shows 150 − 2 = 148 cm, the sides 29 cm each and 1 cm for "
            "their seam; 200 + 80 + 6 cm",
        ),
    ),
)  # fmt: skip
