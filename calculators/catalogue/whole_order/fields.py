"""What is asked of an order of several articles."""

from fractions import Fraction

from calculators.articles import articles
from calculators.articles.line import size_fields
from calculators.asking.declaration import Field
from calculators.asking.edge_questions import MEASURED
from calculators.asking.rows import Rows
from calculators.catalogue.lay_plan import CALCULATOR as LAY_PLAN
from calculators.catalogue.thread_time_cost import CALCULATOR as COSTS
from calculators.catalogue.thread_time_cost.from_method import nothing
from calculators.catalogue.whole_order import from_method
from calculators.values.kinds import Choice, Count, DimensionalChange, Length, NamedMeasures, Text, YesNo
from calculators.values.money import Amount, PriceOfLength

MOST_LINES = 24
_SIZE = Length(least=Fraction(10), most=Fraction(20_000))
_CHANGE = DimensionalChange(least=Fraction(-40), most=Fraction(20), sample="−4.8")

LINES = Rows(
    columns=(
        Field("article", "Article", Choice(options={"": "", **{each.name: each.title for each in articles().values()}}),
            "What is made."),
        Field("count", "How many", Count(least=1, most=1_000), "Of this size.", fixed="1"),
        Field("size", "Size", _SIZE, "The first size that its own page asks for.", optional=True),
        Field("by", "By", _SIZE, "The second.", optional=True),
        Field("cloth", "Cloth", Text(longest=30), "As it is called below; empty for the first.", optional=True),
        Field("measures", "Other measures", NamedMeasures(), "Such as “Overlap 12 cm, Hem depth 2 cm”; the rest as "
            "the house does it.", optional=True),
    ),
    one="line",
    most=MOST_LINES,
    rarer=("cloth", "measures"),
    told_as=(("× ", ("count", "article")), (" × ", ("size", "by")), ("", ("cloth",))),
    called={
        column: {
            article.name: sizes[place].label
            for article in articles().values()
            if len(sizes := size_fields(article)) > place
        }
        for place, column in enumerate(("size", "by"))
    },
)  # fmt: skip
CLOTHS = Rows(
    columns=(
        Field("name", "Cloth", Text(longest=30), "What you call it.", fixed="Cloth"),
        Field("width", "Width", Length(least=Fraction(20), most=Fraction(6_000)), "As it is bought, before the wash."),
        Field("price", "Price", PriceOfLength(), "For a metre, or for a yard on an inch ruler.", optional=True),
        Field("change_length", "Wash, along", _CHANGE, "Change still to come; empty for the house’s.", optional=True),
        Field("change_width", "Wash, across", _CHANGE, "Change still to come; empty for the house’s.", optional=True),
        Field("one_way", "One-way", YesNo(), "Nap, or a print that points one way.", fixed="no"),
        MEASURED,
    ),
    one="cloth",
    most=8,
    rarer=("change_length", "change_width", "one_way", "measured"),
    told_as=(("", ("name",)), ("", ("width",)), ("", ("price",))),
)
#: Asked as the lay plan and the page of thread, time and cost ask them.
_OF_THE_CLOTH = ("gap", "selvedge", "end_loss", "skew", "change_length", "change_width", "keep", "order")
_OF_THE_WORK = (
    "minutes_batch", "waiting_batch", "rate", "price_spool", "stitch", "thickness", "thread_end", "waste", "spool",
    "bobbin",
)  # fmt: skip

FIELDS = (
    Field(
        "lines",
        "What is made",
        LINES,
        "A line for each article of one size. Its own page puts it in here with all its measures.",
        fixed=from_method.LINES,
    ),
    Field(
        "cloths",
        "Cloths to buy",
        CLOTHS,
        "A lining, a border or a wadding is a cloth of that name.",
        fixed=from_method.CLOTHS,
        from_method=from_method.cloths,
    ),
    Field(
        "bought_besides",
        "What is bought besides costs",
        Amount(),
        "Zips, buttons, cord, labels, all together.",
        fixed="0",
        from_method=nothing,
    ),
    *map(LAY_PLAN.field, _OF_THE_CLOTH),
    *map(COSTS.field, _OF_THE_WORK),
)
QUESTION = "The order of {order}."
