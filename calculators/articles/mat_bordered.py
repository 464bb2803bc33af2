"""A table mat with a border of another cloth, mitred at its corners."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import refuse_unless, size, turn_and_hem
from calculators.asking.declaration import Example, Field
from calculators.asking.house_measures import ALLOWANCE
from calculators.trade.articles.operation import SeamKind
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length, border = given.width, given.length, given.border
    refuse_unless(2 * (border + given.turn) < min(width, length), "border", "Two borders, with what is turned under, "
        "cover the mat, {least:length} across. Write less.", least=min(width, length))  # fmt: skip
    refuse_unless(given.turn < border, "turn", "The turn is as wide as the border, {border:length}. Write less.",
        border=border)  # fmt: skip
    mitre = border, border
    mat = work.rectangle("mat", width, length)
    top = work.slanted("top border", width, border, {"bottom left": mitre, "bottom right": mitre}, "border")
    bottom = work.slanted("bottom border", width, border, {"top left": mitre, "top right": mitre}, "border")
    left = work.slanted("left border", border, length, {"top right": mitre, "bottom right": mitre}, "border")
    right = work.slanted("right border", border, length, {"top left": mitre, "bottom left": mitre}, "border")
    kind = SeamKind("plain seam", given.seam_allowance, 1, "plain")
    work.seam(
        (top.side("bottom left"), left.side("top right")),
        (top.side("bottom right"), right.side("top left")),
        (bottom.side("top left"), left.side("bottom right")),
        (bottom.side("top right"), right.side("bottom left")),
        kind=kind, angle=0,
        do="Join the borders at their mitres, right sides together, {allowance}, and stop {turn} from the inner edge",
        lengths={"turn": given.turn},
        how="Press the seams open.",
    )  # fmt: skip
    work.seam(
        (mat.top, top.top), (mat.right, right.right), (mat.bottom, bottom.bottom), (mat.left, left.left),
        kind=kind, over=True,
        do="Right side of the border on the wrong side of the mat: stitch all round, {allowance}",
        how="At each corner stop at the mitre, turn and go on.",
    )  # fmt: skip
    work.lay_on(
        *((outer.between(border, outer.length - border), inner) for outer, inner in
            ((mat.top, top.bottom), (mat.right, right.left), (mat.bottom, bottom.top), (mat.left, left.right))),
        inset=border, turn=given.turn, over=True,
        do="Turn the border to the right side, turn its inner edge under by {turn}, and stitch it down",
    )  # fmt: skip
    return width, length


ARTICLE = Article(
    name="mat-bordered",
    title="Table mat with a mitred border",
    purpose="What to cut for a mat and for the border of another cloth that lies on it, mitred at its corners.",
    fields=(
        size("width", "Finished width", "With its border.", "45 cm", "18 in"),
        size("length", "Finished length", "With its border.", "33 cm", "13 in"),
        size("border", "Border", "As wide as it is seen, on every side.", "4 cm", "1 1/2 in"),
        Field("seam_allowance", "Seam of the border", ALLOWANCE, "Taken up at each edge of a seam.",
            "facing_allowance", known_as=()),
        turn_and_hem("Placemat")[0],
    ),
    question="A mat {width} by {length} with a border of {border}.",
    make=_make,
    cut=("mat", "top border", "bottom border", "left border", "right border"),
    examples=(
        Example(
            {"width": "45 cm", "length": "33 cm", "border": "4 cm", "seam_allowance": "1 cm", "turn": "1 cm"},
            {"mat_width": 470, "mat_length": 350, "top_border_width": 498.28427, "top_border_length": 60,
                "stitching": 3026.27417, "right_border_width": 60, "right_border_length": 378.28427},
            "worked by hand: 45 + 2 cm, 33 + 2 cm; a border 4 + 1 + 1 = 6 cm wide; its slanting ends stand out by "
            "1 × (1 + √2) = 2.414214 cm at its outer corners, so 45 + 4.828427 cm; "
            "stitched 4 × 4 × √2 cm, 2 × (45 + 33) and 2 × (37 + 25) cm",
            tolerance=0.001,
        ),
    ),
    template=("top border", "left border"),
)  # fmt: skip
