"""Parts of an article that are no rectangles, in true size to print."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from types import SimpleNamespace

from calculators.articles import articles
from calculators.articles.line import size_fields
from calculators.articles.written import made_as_written
from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.catalogue.mitre_gauge import PAPER
from calculators.catalogue.whole_order.fields import LINES
from calculators.drawing.gauge import PAPER_NAMES, PAPERS, gauge_sheets, sheets_of
from calculators.drawing.picture import PictureSeries
from calculators.trade.articles.cutting import ArticlePiece
from calculators.trade.articles.template import template_of
from calculators.trade.articles.work import MakingUp, listed
from calculators.trade.corners.gauge import Gauge
from calculators.values.kind import InvalidValue
from calculators.values.kinds import Choice, Count, Length
from calculators.values.measure import Ruler
from calculators.values.phrase import Phrase, say

FOLDED_IN_FOUR = " A quarter: both straight sides on the folds."
_MOST = 40  # sheets that anybody would glue together
_SIZE, _BY, _MEASURES = (next(each for each in LINES.columns if each.name == name) for name in
    ("size", "by", "measures"))  # fmt: skip
_SHAPED = {each.name: each.title for each in articles().values() if each.template}

Template = tuple[str, Gauge, bool]  # the part, its lines, and whether they are a quarter of it


def _work(given: SimpleNamespace) -> Answer:
    article = articles()[given.article]
    try:
        _, made = made_as_written(article, (given.size, given.by), given.measures or "", given.asking, {})
    except InvalidValue as problem:
        raise invalid_input(
            "article", "{title:text}: {message:text}", title=article.title, message=str(problem)
        ) from None
    pieces = {each.parts[0].part.name: each for each in made.pieces}
    templates = [_template(pieces[name], made.work, given.paper) for name in article.template if name in pieces]
    sheets = [sheets_of(gauge, given.paper) for _, gauge, _ in templates]
    if sum(sheets) > _MOST:
        raise invalid_input(
            "size",
            "That would be {sheets:count} sheets. Write less, or draw it on the cloth itself: a curve with chalk and "
            "a tape held at its middle, a slanting edge with a ruler.",
            sheets=sum(sheets),
        )
    first = templates[0][1].measures
    results = {
        "sheets": sum(sheets), "template_width": Fraction(first["width"]), "template_length": Fraction(first["length"])
    }  # fmt: skip
    spoken = say(
        "**{sheets:sheet|sheets}** of {paper:text} for {parts:text}, to print at full size.",
        sheets=sum(sheets), paper=PAPER_NAMES[given.paper], parts=listed([f"the {name}" for name, *_ in templates]),
    )  # fmt: skip
    of = say(
        f"{article.title}, {{width:length}} by {{length:length}} finished.", width=made.size[0], length=made.size[1]
    )
    return Answer(
        results, spoken, tuple(_notes(article.name, given, made.pieces)), drawn_from=(templates, given.paper, of)
    )


def _template(piece: ArticlePiece, work: MakingUp, paper: str) -> Template:
    """A round part whole where one sheet takes it, else a quarter of it."""
    width, height = PAPERS[paper]
    whole = float(piece.width) <= width and float(piece.length) <= height
    return piece.parts[0].part.name, template_of(piece, work, whole), piece.is_round and not whole


def _notes(name: str, given: SimpleNamespace, pieces: Sequence[ArticlePiece]) -> Iterator[Phrase]:
    yield say(
        "Print at full size, not fitted to the page, and measure both check bars. Glue each sheet on the thin line of "
        "the one before."
    )
    if any(each.is_round for each in pieces):
        yield say("A quarter goes on cloth folded in four, both its dashed sides on the folds.")
    for field, value in zip(size_fields(articles()[name]), (given.size, given.by)):
        if value is None:
            yield say("{label:text} is left empty, so the handbook’s counts.", label=field.label)


def _drawing(drawn_from: tuple[Sequence[Template], str, Phrase], ruler: Ruler) -> PictureSeries:
    templates, paper, of = drawn_from
    sheets = [
        gauge_sheets(
            gauge, paper, ruler, name.capitalize(), f"{of.filled(ruler)}{FOLDED_IN_FOUR if is_quarter else ''}"
        )
        for name, gauge, is_quarter in templates
    ]
    return PictureSeries(tuple(picture for each in sheets for picture in each.pictures), sheets[0].key)


CALCULATOR = Calculator(
    name="template",
    title="A shape in true size",
    purpose="The parts of an article that are cut round or slanting, to print in true size and glue together.",
    fields=(
        Field("article", "Article", Choice(options=_SHAPED), "What is made.", fixed="bolster"),
        _SIZE,
        _BY,
        _MEASURES,
        PAPER,
    ),
    question="{article}: {size} by {by}, on {paper}.",
    results=(
        Result("sheets", "Sheets of paper", Count(), "More than one overlap and are glued together."),
        Result("template_width", "Template across", Length(), "Cut, or half of it where a quarter is printed."),
        Result("template_length", "Template upwards", Length(), "Cut, or half of it where a quarter is printed."),
    ),
    work=_work,
    drawing=_drawing,
    examples=(
        Example(
            {"article": "bolster", "size": "45 cm", "by": "18 cm", "measures": "Seam allowance 1.5 cm", "paper": "a4"},
            {"sheets": 1, "template_width": 105, "template_length": 105},
            "worked by hand: (18 + 2 × 1.5) ÷ 2 = 10.5 cm, and 10.5 cm by 10.5 cm fit on one sheet",
        ),
    ),
)
