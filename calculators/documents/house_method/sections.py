"""What a house method holds, section by section: declared once for the form, the sheet, the checks and the format."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from calculators.asking.house_measures import (
    ALLOWANCE,
    ALLOWANCE_OR_NONE,
    BOBBIN,
    EDGE_STITCH,
    HEM_OR_NONE,
    HEM_THICKNESS,
    LEARNING,
    SPOOL,
    STITCH,
    TURN,
)
from calculators.asking.site_method import site_method
from calculators.asking.timing import BATCH, WAITING
from calculators.catalogue import catalogue
from calculators.trade.articles.counting import OPERATIONS
from calculators.values.kind import Kind
from calculators.values.kinds import Choice, DimensionalChange, Length, Number, Text
from calculators.values.money import ListedPrice

_SHORT = Length(most=Fraction(1_000))
_WORDS = Text(longest=80)


@dataclass(frozen=True)
class Entry:
    """One thing that a house settles.

    name: its name in the format. label: as read on the page. help: one line for the person who fills it in.
    """

    name: str
    label: str
    kind: Kind
    help: str


@dataclass(frozen=True)
class MethodTable:
    """A table of a house method; the first column names the row."""

    name: str
    title: str
    one: str
    columns: tuple[Entry, ...]

    def called(self, line: Mapping[str, Any]) -> str:
        """What a row is called on a page; empty where it has no name yet."""
        first = self.columns[0]
        name = str(line.get(first.name, ""))
        return first.kind.choices.get(name, name)


@dataclass(frozen=True)
class Section:
    """A part of the house method, with its own text beside its measures."""

    name: str
    title: str
    about: str
    entries: tuple[Entry, ...] = ()
    rows: MethodTable | None = None


PIECES = MethodTable(
    "pieces",
    "Turn and hem by kind of piece",
    "a kind of piece",
    (
        Entry("piece", "Kind of piece", _WORDS, "As you call it: napkin, runner, tea towel."),
        Entry("turn", "First turn", TURN, "The first fold of the raw edge; empty for the usual turn."),
        Entry("hem", "Hem depth", HEM_OR_NONE, "The visible border; empty for the usual hem."),
    ),
)
_CHANGE = DimensionalChange(least=Fraction(-60), most=Fraction(60), sample="−3.5")
CLOTHS = MethodTable(
    "cloths",
    "Needle, thread and wash by cloth",
    "a cloth",
    (
        Entry("cloth", "Cloth", _WORDS, "As you would ask for it from the shelf."),
        Entry("needle", "Needle", _WORDS, "Size and point, as on the packet."),
        Entry("thread", "Thread", _WORDS, "Kind and thickness, as on the reel."),
        Entry(
            "change_length",
            "Change along the length",
            _CHANGE,
            "Found by a wash test, with its sign: −4 for cloth that loses 4 %, +4 for cloth that grows.",
        ),
        Entry("change_width", "Change across the width", _CHANGE, "As along the length."),
        Entry("found_on", "Found on", _WORDS, "The day of the wash test, so that you know how old it is."),
    ),
)
_MINUTES = Number(most=Fraction(10_000), sign=" min", sample="4.5")
EACH = {
    "piece": "piece",
    "corner": "corner",
    "metre": "metre of hem",
    "yard": "yard of hem",
    "thread": "drawn thread",
    BATCH: "batch",
    WAITING: "batch, as waiting",
}
STEPS = MethodTable(
    "steps",
    "Time per step",
    "a step",
    (
        Entry("step", "Step", _WORDS, "As it stands on your work tickets."),
        Entry(
            "minutes",
            "Minutes",
            _MINUTES,
            "Measured over a whole batch, then divided.",
        ),
        Entry(
            "for_each",
            "For each",
            Choice(options=EACH),
            "What the minutes are counted for. A piece takes a drawn thread of its own, and its share of the one "
            "that parts its strip. Waiting needs no hands: it stands apart and costs nothing.",
        ),
        Entry(
            "kinds",
            "Only for",
            _WORDS,
            "Kinds of piece from the list above, with a comma between them; empty for every piece.",
        ),
    ),
)
MADE_UP = MethodTable(
    "operations",
    "Time per operation",
    "an operation",
    (
        Entry("operation", "Operation", Choice(options=OPERATIONS), "What is done to the article."),
        Entry("minutes", "Minutes", _MINUTES, "Timed on the first ones you make, then divided."),
        Entry(
            "for_each",
            "For each",
            Choice(options={"time": "time it is done", "metre": "metre of stitching", "yard": "yard of stitching"}),
            "What the minutes are counted for: a long seam takes longer.",
        ),
    ),
)
PRICES = MethodTable(
    "prices",
    "Prices",
    "a price",
    (
        Entry("thing", "What", _WORDS, "What you pay for."),
        Entry("price", "Price", ListedPrice(), "In the money named above; with its sign or without."),
        Entry(
            "per",
            "For",
            Choice(
                options={"metre": "a metre", "yard": "a yard", "spool": "a reel", "piece": "a piece", "hour": "an hour"}
            ),
            "What the price is for: metre, yard, reel, piece or hour.",
        ),
    ),
)

_DECLARED = (
    Section(
        "hems",
        "Turn and hem",
        "The two folds of a double hem. A batch that names its kind of piece begins with that kind’s turn and hem; "
        "everything else, and a kind with a blank left empty, with the usual ones.",
        (
            Entry("turn", "First turn", TURN, "The first fold of the raw edge, hidden in the hem."),
            Entry("hem", "Hem depth", HEM_OR_NONE, "The second fold: the visible border."),
        ),
        PIECES,
    ),
    Section(
        "seams",
        "Seams and edges",
        "What each kind of seam takes up, what is left where a mitre is trimmed, and how far from the edge a seen "
        "line runs.",
        (
            Entry(
                "seam_allowance",
                "Plain seam",
                ALLOWANCE_OR_NONE,
                "Allowance: what the seam takes up at each of its two edges.",
            ),
            Entry(
                "felled_allowance",
                "Felled seam",
                ALLOWANCE_OR_NONE,
                "Taken up at each of its two edges; the narrow one is trimmed after stitching.",
            ),
            Entry(
                "french_allowance",
                "French seam",
                ALLOWANCE_OR_NONE,
                "Taken up at each of its two edges, both its rows together.",
            ),
            Entry(
                "zip_allowance",
                "Seam at a zip",
                ALLOWANCE_OR_NONE,
                "Taken up at each side of the zip; its tape must lie on it.",
            ),
            Entry(
                "facing_allowance",
                "Seam of a facing or border",
                ALLOWANCE,
                "Cloth outside the seam that joins a facing or a border to its piece.",
            ),
            Entry(
                "mitre_allowance", "Left at a mitre when trimmed", ALLOWANCE, "Cloth left outside the seam of a mitre."
            ),
            Entry(
                "edge_stitch",
                "Edge stitch from the fold",
                EDGE_STITCH,
                "From the inner fold of the hem to the line that holds it.",
            ),
            Entry("topstitch", "Topstitch from the edge", _SHORT, "From the finished edge to a line further in."),
        ),
    ),
    Section(
        "stitches",
        "Stitches",
        "Stitch length as it stands on the machine, and the thread on a bobbin and a reel.",
        (
            Entry("stitch_seam", "Stitch length for seams", STITCH, "One stitch."),
            Entry("stitch_hem", "Stitch length for hems", STITCH, "One stitch of a hem or an edge."),
            Entry(
                "stitch_topstitch",
                "Stitch length for topstitching",
                STITCH,
                "One stitch of a line that is meant to be seen.",
            ),
            Entry("bobbin", "Thread on a full bobbin", BOBBIN, "Wind one, measure it off once, and write it here."),
            Entry("spool", "Thread on a reel", SPOOL, "As it stands on the reel, in metres or yards."),
            Entry(
                "seam_thickness",
                "Thickness of a stitched hem",
                HEM_THICKNESS,
                "All its layers, pressed together; measure several on one another and divide.",
            ),
            Entry(
                "thread_end",
                "Thread end left at a seam",
                _SHORT,
                "What one thread hangs out where a seam begins or ends, before it is cut.",
            ),
        ),
    ),
    Section(
        "cloths",
        "Cloths",
        "What each cloth of the shelf needs, and what its wash test found.",
        (
            Entry(
                "cloth",
                "Cloth used most",
                _WORDS,
                "As it is called in the list below; a work ticket begins with its needle and thread.",
            ),
        ),
        CLOTHS,
    ),
    Section(
        "tolerances",
        "Tolerances",
        "How far off a measure may be before the piece is put aside.",
        (
            Entry("tolerance_cut", "A cut piece may be off by", _SHORT, "More or less than the cut size."),
            Entry(
                "tolerance_finished", "A finished piece may be off by", _SHORT, "More or less than the finished size."
            ),
            Entry("tolerance_square", "Its diagonals may differ by", _SHORT, "Measure corner to corner both ways."),
        ),
    ),
    Section(
        "time",
        "Time",
        "How long each step takes, once it has been timed.",
        (
            Entry(
                "learning",
                "Rate of learning",
                LEARNING,
                "Where the first pieces of a batch were timed: once twice as many are made, a piece takes this share "
                "of the time on average. 100 % for work that grows no quicker.",
            ),
        ),
        STEPS,
    ),
    Section(
        "making_up",
        "Making up",
        "How long each operation takes on cushions, curtains, bed linen and other articles that are made up.",
        (),
        MADE_UP,
    ),
    Section(
        "prices",
        "Prices",
        "What cloth, thread and an hour of work cost.",
        (Entry("money", "Money", Text(longest=12), "The sign or name that stands beside every amount."),),
        PRICES,
    ),
)
USUAL = "usual"
_LABELS = {
    "cloth_width": "Width of the cloth",
    "cloth_length": "Length of the cloth",
    "layers": "Layers when folded",
    "folded_length": "Length of one layer",
    "extra_length": "What hangs over the last layer",
    "usable_length": "Usable length of the cloth",
    "before_length": "Test square: marks along the length, before",
    "after_length": "Test square: along the length, after the wash",
    "before_width": "Test square: marks across the width, before",
    "after_width": "Test square: across the width, after the wash",
    "needed_length": "Cloth needed after the wash, length",
    "needed_width": "Cloth needed after the wash, width",
    "piece_width": "Width of a cut piece",
    "piece_length": "Length of a cut piece",
}  # where the label of the blank says too little away from its sentence


@cache
def sections() -> tuple[Section, ...]:
    """All sections in order. What a calculator's blank begins with and no section declares comes last, as the
    calculator names it."""
    declared = {entry.name for section in _DECLARED for entry in section.entries}
    fields = {
        field.default: field
        for calculator in reversed(catalogue().values())
        for field in calculator.fields
        if field.default
    }
    found = tuple(
        Entry(name, _LABELS.get(name, fields[name].label), fields[name].kind, fields[name].help)
        for name in site_method().measures
        if name not in declared and name in fields
    )
    usual = Section(USUAL, "Usual cloth and pieces", "What the blanks of the calculators begin with.", found)
    return (*_DECLARED, usual)


@cache
def entries() -> dict[str, Entry]:
    """Every single measure by name."""
    return {entry.name: entry for section in sections() for entry in section.entries}


@cache
def tables() -> dict[str, MethodTable]:
    """Every table by name."""
    return {section.rows.name: section.rows for section in sections() if section.rows}
