"""What is asked for thread, time and cost."""

from fractions import Fraction

from calculators.asking.declaration import Field
from calculators.asking.house_measures import BOBBIN, HEM_THICKNESS, SPOOL, STITCH
from calculators.asking.timing import FIRST_ONES
from calculators.catalogue.thread_time_cost import from_method
from calculators.values.duration import Minutes
from calculators.values.kinds import Count, Length, Percent
from calculators.values.money import Amount, PriceOfLength

_SIZE = Length(least=Fraction(1), most=Fraction(20_000))
_CORNERS = Field(
    "corners",
    "Corners of a piece",
    Count(most=100),
    "All its corners, mitred or folded: 4, or 6 for a runner with two points. The house’s minutes for a corner count "
    "for each.",
    fixed="4",
)
_ACROSS = Field(
    "across",
    "Pieces side by side",
    Count(least=1, most=1_000),
    "How many are cut from one strip of the cloth. The house’s minutes for a drawn thread count for a piece’s own "
    "and its share of the strip’s.",
    fixed="3",
    from_method=from_method.side_by_side,
)
_WIDTH = Field(
    "finished_width",
    "Finished width",
    _SIZE,
    "Across a piece, hemmed.",
    fixed={"cm": "40 cm", "in": "16 in"},
    from_method=from_method.finished_width,
    known_as=("finished_width",),
)
_LENGTH = Field(
    "finished_length",
    "Finished length",
    _SIZE,
    "Along a piece, hemmed.",
    fixed={"cm": "40 cm", "in": "16 in"},
    from_method=from_method.finished_length,
    known_as=("finished_length",),
)
_ALONG = Field(
    "sides_along",
    "Hemmed sides along its length",
    Count(most=2),
    "Sides along a piece that have a hem; 1 or 0 where a selvedge stays as it is.",
    fixed="2",
)
_ENDS = Field(
    "sides_across",
    "Hemmed ends",
    Count(most=2),
    "Ends across a piece that have a hem. A pointed end is one; it is counted as if it were square, which is a "
    "little more.",
    fixed="2",
)

FIELDS = (
    Field(
        "pieces",
        "Pieces",
        Count(least=1, most=100_000),
        "How many are wanted of this batch.",
        fixed="18",
        known_as=("pieces",),
    ),
    _WIDTH,
    _LENGTH,
    Field(
        "rows",
        "Rows of stitching",
        Count(most=20),
        "Rows that run along every hemmed side: 1 for the hem, 2 with a second line at the edge, 0 for hems sewn by "
        "hand.",
        fixed="1",
    ),
    _CORNERS,
    Field(
        "minutes_batch",
        "Minutes once for the batch",
        Minutes(),
        "Hands-on, however many pieces follow: setting out, straightening, threading.",
        fixed="20 min",
        from_method=from_method.minutes_for_the_batch,
    ),
    Field(
        "minutes_piece",
        "Minutes for each piece",
        Minutes(),
        "Hands-on, from marking out to the last check, its corners, hems and drawn threads too; measured on one test "
        "piece.",
        fixed="15 min",
        from_method=from_method.minutes_for_a_piece,
        beside=(_CORNERS, _ACROSS, _ALONG, _ENDS, _WIDTH, _LENGTH),
    ),
    *FIRST_ONES,
    Field(
        "waiting_batch",
        "Waiting time of the batch",
        Minutes(),
        "No hands are at work: cloth that dries, hems that cool. It stands apart and costs nothing.",
        fixed="0 min",
        from_method=from_method.waiting_of_the_batch,
    ),
    Field(
        "rate",
        "Price of an hour",
        Amount(),
        "What an hour of work costs you; 0 to leave time out of the sum.",
        optional=True,
        from_method=from_method.price_of_an_hour,
    ),
    Field(
        "cloth_bought",
        "Cloth bought",
        Length(most=Fraction(1_000_000)),
        "The length paid for, as it was bought, unwashed.",
        fixed={"cm": "3 m", "in": "3 yd 10 in"},
        from_method=from_method.cloth_bought,
    ),
    Field(
        "price_cloth",
        "Price of the cloth",
        PriceOfLength(),
        "For a metre, or for a yard on an inch ruler; or write which, such as 12.50 per yd. 0 to leave cloth out of "
        "the sum.",
        optional=True,
        from_method=from_method.price_of_cloth,
    ),
    Field(
        "price_spool",
        "Price of a reel",
        Amount(),
        "What a reel of thread costs; 0 to leave thread out of the sum.",
        optional=True,
        from_method=from_method.price_of_a_spool,
    ),
    Field(
        "other",
        "Other costs of a piece",
        Amount(),
        "Labels, buttons, wrapping: what every piece needs besides.",
        fixed="0",
        from_method=from_method.nothing,
    ),
    Field(
        "mitre_seam",
        "Seam of one corner",
        Length(most=Fraction(5_000)),
        "The seam of a mitred corner, from the fold to its end; 0 for folded corners, which have none.",
        fixed={"cm": "3 cm", "in": "1 1/8 in"},
        from_method=from_method.mitre_seam,
    ),
    _ACROSS,
    _ALONG,
    _ENDS,
    Field(
        "gives",
        "Pieces that the cloth gives",
        Count(least=1, most=100_000),
        "Where that is fewer than are wanted, what can be made comes first; where it is more, only the rows that are "
        "cut are charged. Empty where all the cloth goes into these.",
        optional=True,
    ),
    Field(
        "cloth_more",
        "Further cloth for the rest",
        Length(most=Fraction(1_000_000)),
        "Where this cloth gives fewer: the further length, unwashed, that the rest of them take.",
        optional=True,
    ),
    Field(
        "stitching_each",
        "Stitching of a piece",
        Length(most=Fraction(1_000_000)),
        "All rows of one, where it is no hemmed piece; empty where size, rows and corners say it.",
        optional=True,
    ),
    Field(
        "rows_each",
        "Rows of it",
        Count(least=1, most=1_000),
        "How often that stitching starts and stops; each time it leaves ends of thread.",
        fixed="4",
    ),
    Field("stitch", "Stitch length", STITCH, "One stitch, as it stands on the machine.", "stitch_hem"),
    Field(
        "thickness",
        "Thickness stitched through",
        HEM_THICKNESS,
        "All layers of the hem, pressed together; measure several on one another and divide.",
        "seam_thickness",
    ),
    Field(
        "thread_end",
        "Thread end left at a seam",
        Length(most=Fraction(1_000)),
        "What one thread hangs out at each start and at each stop, before it is cut.",
        "thread_end",
    ),
    Field(
        "waste",
        "Thread for waste",
        Percent(),
        "Samples, broken threads, the rest of a bobbin. Texts for clothing makers add 10 to 15 %.",
        fixed="15 %",
    ),
    Field("spool", "Thread on a reel", SPOOL, "As it stands on the reel, in metres or yards.", "spool"),
    Field("bobbin", "Thread on a full bobbin", BOBBIN, "Wind one and measure it off once.", "bobbin"),
)
QUESTION = (
    "{pieces} pieces, {finished_width} by {finished_length} finished. Rows of stitching: {rows}; corners of each: "
    "{corners}. "
    "Work: {minutes_batch} once for the batch and {minutes_piece} for each piece, at {rate} an hour. "
    "Cloth: {cloth_bought} at {price_cloth}. Thread: {price_spool} a reel. Plus {other} for each piece."
)
