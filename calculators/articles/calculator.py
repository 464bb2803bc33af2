"""An article as a calculator: cut sizes, what to buy, stitching, a drawing of its parts, and its steps."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property, lru_cache
from types import SimpleNamespace
from typing import Any

from calculators.articles.article import Article, Size
from calculators.articles.several import TIME, Timed, how_many, minutes_each, untimed, ways_on
from calculators.asking.declaration import Answer, Calculator, Result, invalid_input
from calculators.asking.timing import FIRST_ONES, minutes_for, refuse_half_timed
from calculators.drawing.article import article_steps, parts_laid_flat
from calculators.drawing.article_edges import edges_cut_through
from calculators.drawing.article_made_up import article_made_up
from calculators.trade.articles.bulk import ArticleBulk, bulk
from calculators.trade.articles.counting import Counted, counted, thread_by_hand
from calculators.trade.articles.cutting import ArticlePiece, cut_pieces
from calculators.trade.articles.work import MakingUp, listed
from calculators.trade.stitches.hand import STITCHES
from calculators.values.kind import Kind
from calculators.values.kinds import Count, Length, LongLength
from calculators.values.phrase import Phrase, say

#: What may be bought besides the cloth: its label, how it is shown, and what it means.
WHAT_IS_BOUGHT: dict[str, tuple[str, Kind, str]] = {
    "zip": ("Zip", Length(toward="down"), "As long as the opening; a longer one is shortened."),
    "buttons": ("Buttons", Count(), "Evenly spaced along the opening."),
    "binding": ("Binding", LongLength(toward="up"), "Round the edge, without its joins."),
    "tape": ("Heading tape", LongLength(toward="up"), "As long as the curtain is wide, without its ends."),
    "rods": ("Rods", Count(), "As long as the blind is wide, a little less."),
    "rings": ("Rings", Count(), "Sewn on by hand."),
    "elastic": ("Elastic", LongLength(toward="up"), "Before it is drawn in, without what its join takes."),
    "strip": ("Strip for the piping", LongLength(toward="up"), "On the bias, without its joins."),
    "cord": ("Cord", LongLength(toward="up"), "All together."),
}


@dataclass(frozen=True)
class Made:
    """An article of certain measures: its work, its finished size [mm], and the pieces to cut."""

    work: MakingUp
    size: Size
    pieces: Sequence[ArticlePiece]

    @cached_property
    def bulk(self) -> ArticleBulk:
        """Its layers."""
        return bulk(self.work)


def made(article: Article, given: SimpleNamespace) -> Made:
    """Put the article down; raises InvalidInput where its measures cannot go together."""
    work = MakingUp()
    size = article.make(work, given)
    _refuse_hems_that_meet(article, work)
    return Made(work, size, cut_pieces(work))


def _refuse_hems_that_meet(article: Article, work: MakingUp) -> None:
    """Opposite hems leave something between them on every part."""
    for part in work.parts:
        for ends, between in ((("left", "right"), part.width), (("top", "bottom"), part.length)):
            folded = [each for each in work.finishes if each.stretch.part == part and each.stretch.side in ends]
            hems = sum((each.hem for each in folded), Fraction(0))
            if between <= hems:
                raise invalid_input(
                    next(field.name for field in article.fields if "hem" in field.name or field.name == "casing")
                    if hems
                    else article.fields[0].name,
                    "Nothing is left of the {part:text}, which would be {between:length}. Write less, or a larger "
                    "piece.",
                    part=part.name,
                    between=max(between, Fraction(0)),
                )


def as_calculator(article: Article) -> Calculator:
    """The calculator of an article, as every other is declared."""

    names = [field.name for field in article.fields]

    @lru_cache(maxsize=1, typed=True)  # its minutes and its sizes are asked one after the other
    def put_down(*values: object) -> Made:
        return made(article, SimpleNamespace(**dict(zip(names, values, strict=True))))

    def counted_in(given: SimpleNamespace) -> dict[str, Counted]:
        there = put_down(*(getattr(given, name) for name in names))
        return counted(there.work, there.pieces)

    def work(given: SimpleNamespace) -> Answer:
        refuse_half_timed(given.count, given)
        return _answer(article, put_down(*(getattr(given, name) for name in names)), given)

    work.__module__ = article.make.__module__  # where a reader of the reference page finds it declared

    timed = Timed(names, counted_in)

    return Calculator(
        name=article.name,
        title=article.title,
        purpose=article.purpose,
        fields=(*article.fields, how_many(article.fields), minutes_each(article.fields, timed), *FIRST_ONES),
        question=f"{article.question} Make {{count}}.",
        results=tuple(_results(article)),
        work=work,
        drawing=lambda drawn, ruler: (
            article_made_up(drawn.work, drawn.size, ruler),
            parts_laid_flat(drawn.work, drawn.pieces, ruler),
        ),
        steps=lambda drawn, ruler: article_steps(drawn.work, drawn.size, drawn.pieces, ruler),
        edges=lambda drawn, ruler: edges_cut_through(drawn.work, ruler),
        alone=True,
        examples=article.examples,
        sources=article.sources,
    )


def _results(article: Article) -> Iterator[Result]:
    of = f" of the {article.about}" if article.about else ""
    yield Result("finished_width", "Finished width", Length(), f"Across{of}, made up.")
    yield Result("finished_length", "Finished length", Length(), f"Up and down{of}, made up.")
    for part in article.cut:
        name = part.replace(" ", "_")
        yield Result(f"{name}_width", f"{part.capitalize()}, cut width", Length(), "With what its edges take up.")
        yield Result(f"{name}_length", f"{part.capitalize()}, cut length", Length(), "With what its edges take up.")
    for thing in article.buys:
        yield Result(thing, *WHAT_IS_BOUGHT[thing])
    yield Result("stitching", "Stitching", LongLength(), "All rows of the machine on one, seams and hems together.")
    yield Result("layers", "Layers along an edge", Count(), "Of cloth, where an edge is thickest.")
    yield Result("layers_crossing", "Layers where edges cross", Count(), "Each folded as if the other were not there, "
        "nothing trimmed; a mitre has fewer.")  # fmt: skip
    yield TIME


def _answer(article: Article, made: Made, given: SimpleNamespace) -> Answer:
    results: dict[str, Any] = {"finished_width": made.size[0], "finished_length": made.size[1]}
    pieces = {piece.parts[0].part.name: piece for piece in made.pieces}
    for part in article.cut:
        name, piece = part.replace(" ", "_"), pieces.get(part)
        results |= {f"{name}_width": piece and piece.width, f"{name}_length": piece and piece.length}
    for thing in article.buys:
        bought = [each for each in made.work.to_buy if each.thing == thing]
        lengths = [each.length * each.count for each in bought if each.length is not None]
        results[thing] = sum(lengths, Fraction(0)) if lengths else sum(each.count for each in bought)
    results["stitching"] = made.work.stitching
    layers = made.bulk
    results |= {"layers": layers.along, "layers_crossing": layers.crossing}
    results["time"] = minutes_for(given.count, given.minutes_each, given)
    notes = (
        *made.work.notes, *_notes(article, results, given.count), *_by_hand(made.work, given.count),
        *untimed(given, counted(made.work, made.pieces)), *ways_on(article, made.work, made.pieces, given),
    )  # fmt: skip
    return Answer(results, _spoken(article, made), notes, tuple(_working(made)), drawn_from=made)


def _spoken(article: Article, made: Made) -> Phrase:
    """“Cut 43 by 43 cm”, or the pieces one by one, those of one size together."""
    alike: dict[Size, list[ArticlePiece]] = {}
    for piece in made.pieces:
        alike.setdefault((piece.width, piece.length), []).append(piece)
    sizes: dict[str, Any] = {}
    told = []
    for number, (size, pieces) in enumerate(alike.items()):
        sizes |= {f"width_{number}": size[0], f"length_{number}": size[1]}
        shown = f"**{{width_{number}:length}} by {{length_{number}:length}}**"
        names = [f"{f'{each.count} × ' if each.count > 1 else ''}{each.parts[0].part.name}" for each in pieces]
        told.append(shown if len(made.pieces) == 1 and pieces[0].count == 1 else f"{listed(names)} {shown}")
    about = f" for a {article.about} " if article.about else " for "
    finished = "{finished_width:length} by {finished_length:length}"
    return say(
        f"Cut {'; '.join(told)},{about}{finished} finished.",
        finished_width=made.size[0], finished_length=made.size[1], **sizes,
    )  # fmt: skip


def _notes(article: Article, results: Mapping[str, Any], count: int) -> Iterator[Phrase]:
    for thing in article.buys:
        label, each = WHAT_IS_BOUGHT[thing][0].lower(), results[thing]
        if count == 1:
            yield say(f"Also to buy: {label}, {{{thing}}}.", **{thing: each})
        elif thing == "zip":
            yield say(f"Also to buy: {{count:count}} × {label}, {{{thing}}} each.", count=count, **{thing: each})
        else:
            yield say(f"Also to buy, for all: {label}, {{{thing}}}.", **{thing: count * each})


def _by_hand(work: MakingUp, count: int) -> Iterator[Phrase]:
    if rows := work.sewn_by_hand:
        yield say(
            f"By hand{', for all' if count > 1 else ''}: {{rows:long}} of {{stitches:text}}; thread, {{thread:long}}.",
            rows=count * sum(rows.values()),
            stitches=listed([STITCHES[each].title.lower() for each in rows]),
            thread=count * thread_by_hand(work),
        )


def _working(made: Made) -> Iterator[Phrase]:
    for piece in made.pieces:
        for way, first, last, cut in (("across", 0, 2, piece.width), ("up and down", 1, 3, piece.length)):
            boxes = [each.finished for each in piece.parts]
            finished = max(each[last] for each in boxes) - min(each[first] for each in boxes)
            yield say(
                f"{{name:text}}, {way}: {{finished:length}} finished, and {{takes:length}} that its edges take up, "
                "make {cut:length}.",
                name=piece.name[0].upper() + piece.name[1:], finished=finished, takes=cut - finished, cut=cut,
            )  # fmt: skip
