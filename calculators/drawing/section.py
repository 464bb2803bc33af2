"""An edge cut through and seen from the side: layers, folds, raw edges and stitches, each named where it stands.

Across, it is to scale; layers are drawn thick and a little apart, so that they can be counted. What runs on beyond the
edge is broken off.
"""

from collections.abc import Collection, Sequence
from dataclasses import replace
from fractions import Fraction

from calculators.drawing import lines
from calculators.drawing.picture import WIDTH, Picture, PictureSeries, Sheet, Told, key_picture
from calculators.drawing.section_labels import ROW, place_of, placed_labels
from calculators.drawing.section_layout import (
    EDGE_WIDE,
    END,
    RAMP,
    SHORTEST,
    THICK,
    Frame,
    Place,
    SectionLayout,
    beside,
)
from calculators.drawing.signs import put
from calculators.trade.sections.edge import BINDING, FACING, LINING, LOWER, PIECE, UPPER, EdgeStep
from calculators.trade.sections.section import CrossSection, CutEnd, Row, Run
from calculators.trade.trade_rules import brief
from calculators.values.measure import Ruler, show_length

_SIGN_WIDE, _SIGN_ROW = 66.0, 30.0  # [drawing units] that the sign for turning over takes
_LOOKS = {PIECE: "first", LOWER: "first", UPPER: "other", FACING: "other", BINDING: "other", LINING: "other"}
"""How each strip is drawn; all others as a third cloth."""


def edge_step_by_step(steps: Sequence[EdgeStep], ruler: Ruler, frame: Frame | None = None) -> PictureSeries:
    """A drawing for every step, all at one scale, and what their lines are. frame: where they stand, their own unless
    told."""
    frame = frame or frame_of([step.section for step in steps])
    pictures = tuple(
        replace(
            _picture(steps, number, frame, _filled(step.do, step, ruler)),
            told=told(step, ruler),
        )
        for number, step in enumerate(steps)
    )
    return PictureSeries(pictures, key_picture([lines.SEWN_THROUGH, lines.LAYER_WRONG, lines.BREAK]))


def edge_step(steps: Sequence[EdgeStep], number: int, ruler: Ruler) -> Picture:
    """The drawing of one step. number: counted from 1."""
    step = steps[number - 1]
    caption = f"{step.name}. {_filled(step.do, step, ruler)}."
    return _picture(steps, number - 1, frame_of([step.section]), caption)


def _stitched_before(steps: Sequence[EdgeStep], number: int) -> tuple[Row, ...]:
    """The rows that were there before a step, counted from 0, so that what is new is strong."""
    return steps[number - 1].section.rows if number else ()


def told(step: EdgeStep, ruler: Ruler) -> Told:
    """What a list of steps says beside its drawing."""
    line = " ".join(part for part in (*map(brief, step.rules), step.how) if part)
    return Told(f"{_filled(step.do, step, ruler, '**')}.", _filled(line, step, ruler), _filled(step.why, step, ruler))


def _filled(template: str, step: EdgeStep, ruler: Ruler, mark: str = "") -> str:
    return template.format(
        **{name: f"{mark}{show_length(length, ruler)}{mark}" for name, length in step.lengths.items()}
    )


def frame_of(sections: Sequence[CrossSection]) -> Frame:
    """Where all sections of a series stand: the lowest place [mm], the scale, and where that place is on the sheet."""
    ends = [_ends(section) for section in sections]
    low, high = float(min(map(min, ends))), float(max(map(max, ends)))
    narrowest = min(
        float(right - left) for each in ends for left, right in zip(sorted(each), sorted(each)[1:])
    ) if any(len(each) > 1 for each in ends) else high - low or 1.0  # fmt: skip
    wide = max(high - low, narrowest) or 1.0
    ways = {run.way for section in sections for run in section.layers if run.runs_on}
    left, right = (RAMP * (2 if way in ways else 1) for way in (-1, 1))
    scale = min(max(EDGE_WIDE / wide, SHORTEST / narrowest), (WIDTH - left - right) / wide)
    free = WIDTH - (high - low) * scale - left - right
    return low, scale, left + free * (0.5 if len(ways) != 1 else 0 if ways == {1} else 1)


def _ends(section: CrossSection) -> set[Fraction]:
    """The places where cloth ends or is folded, but for where it runs on."""
    return {
        end for run in section.layers for end, flat in ((run.at(run.low), run.low), (run.at(run.high), run.high))
        if not run.solid and not (run.runs_on and flat == run.high)
    }  # fmt: skip


def _picture(steps: Sequence[EdgeStep], number: int, frame: Frame, caption: str) -> Picture:
    """The drawing of a step, counted from 0."""
    section = steps[number].section
    drawn = SectionLayout(section, frame)
    top, foot = drawn.y(drawn.tallest) - THICK / 2, THICK / 2
    labels, rows_above, rows_below = placed_labels(drawn, top, foot)
    is_turned = number > 0 and section.turned != steps[number - 1].section.turned
    free = _free_side(drawn) if is_turned else None
    over = 4 + ROW * rows_above + (_SIGN_ROW if is_turned and free is None else 0)
    box = (0.0, top - 10, float(WIDTH), foot + 10)
    sheet = Sheet(box, margins=(0, over, 0, 4 + ROW * rows_below), down=True, tallest=box[3] - box[1])
    if is_turned:
        put(sheet, "turn-over", (_SIGN_WIDE / 2, top - 10 - over + _SIGN_ROW / 2) if free is None else free)
    draw_layers(sheet, drawn, _stitched_before(steps, number))
    sheet.svg.set("data-table", f"{sheet.at((0, 0))[1]:.1f}")
    for label in labels:
        (x, y), words_at = label.leader.at, label.at
        sheet.line("leader", (x, y), (x, words_at[1] + (4 if words_at[1] < y else -13)))
        sheet.words(label.leader.words, words_at)
    in_words_too = "The whole work is turned over. " if is_turned else ""
    return sheet.finish(steps[number].name, f"{in_words_too}{in_words(section)}", with_key=False, caption=caption)


def _free_side(drawn: SectionLayout) -> Place | None:
    """The middle of the room beside the edge, on the side where no cloth runs on; None where a sign has none there."""
    runs = drawn.section.layers
    left, right = min(drawn.x(run.left) for run in runs), max(drawn.x(run.right) for run in runs)
    room, middle = max((left, left / 2), (WIDTH - right, (WIDTH + right) / 2))
    return (middle, drawn.y(drawn.tallest) / 2) if room > _SIGN_WIDE else None


def draw_layers(sheet: Sheet, drawn: SectionLayout, before: Collection[Row] = ()) -> None:
    """Draw an edge without its words. before: rows that were stitched in an earlier step."""
    section = drawn.section
    for solid in section.solids:
        middle, reach = drawn.ellipse(solid)
        sheet.ellipse("solid", middle, reach)
    for strip in section.strips:
        _ribbon(sheet, drawn, strip)
    for end in section.ends():
        _end(sheet, drawn, end)
    for row in section.rows:
        _thread(sheet, place_of(drawn, row), row.whipped, row in before)
    for run in section.layers:
        if run.runs_on:
            _broken_off(sheet, drawn, run)


def _thread(sheet: Sheet, place: tuple[float, float, float], whipped: bool, fine: bool) -> None:
    """A row of stitches: straight through the layers, or over their edges."""
    x, high, low = place
    left, right = max(x - 5, 0.0), min(x + 5, float(WIDTH))
    if whipped:
        round_edges = [(x, high), (right, high + 2), (right, low - 2), (x, low), (left, low - 2), (left, high + 2)]
        sheet.line(lines.SEWN_THROUGH, *round_edges, (x, high), fine=fine)
    else:
        sheet.line(lines.SEWN_THROUGH, (left, high), (x, high), (x, low), (right, low), fine=fine)


def _broken_off(sheet: Sheet, drawn: SectionLayout, run: Run) -> None:
    """Where a strip runs on beyond the sheet."""
    x = WIDTH - END if run.way > 0 else END
    y = drawn.y(drawn.level_at(run, run.at(run.high)))
    sheet.cut_off((x, y - THICK), (x, y + THICK))


def _ribbon(sheet: Sheet, drawn: SectionLayout, strip: str) -> None:
    path = drawn.path(strip)
    for style, off in ribbon(drawn.section, strip):
        sheet.line(style, *(beside(path, off) if off else path))


def ribbon(section: CrossSection, strip: str) -> list[tuple[str, float]]:
    """The lines that a strip is drawn with, the lowest first, and how far each lies beside its middle, to the right as
    one goes along it from its raw edge [drawing units]."""
    look = _LOOKS.get(strip, "third")
    run = section.runs_of(strip)[0]
    up = 1 if run.right_up else -1  # the wrong side is the lower one
    return [
        ("layer-edge", 0.0),
        (f"layer-cloth {look}", 0.0),
        *([("layer-third", 0.0)] if look == "third" else []),
        (lines.LAYER_WRONG, up * run.way * THICK / 4),
    ]


def _end(sheet: Sheet, drawn: SectionLayout, end: CutEnd) -> None:
    x, y = drawn.end(end)
    for style, *strokes in end_strokes(end):
        sheet.line(style, *((x + end.way * along, y + across) for along, across in strokes))


def end_strokes(end: CutEnd) -> list[tuple[str, *tuple[Place, ...]]]:
    """How the end of a strip is drawn: a style with its places, along the strip and across it from its end. A raw edge
    frays; one that was neatened has thread round it; that of a tape or a selvedge is plain."""
    if not end.neat:
        return [("raw-end", (0, part * THICK / 3), (-4, part * THICK / 2.2)) for part in (-1, 0, 1)]
    if end.words.startswith("neatened"):
        high = THICK / 2 + 1.5
        return [("neatening", (9, high), (6, -high), (3, high), (0, -high), (-2, 0), (0, high))]
    return [("raw-end", (0, -THICK / 2), (0, THICK / 2))]


def in_words(section: CrossSection) -> str:
    """What lies over what, for those who do not see it."""

    def told(run: Run) -> str:
        return run.strip if run.solid else f"{run.strip}, {'right' if run.right_up else 'wrong'} side up"

    cells = section.cells()
    thickest = max(cells, key=lambda cell: len(section.lying(cell)))
    stack = "; ".join(map(told, section.lying(thickest)))
    held = "; ".join(f"{row.name} through {len(row.holds)} layers" for row in section.rows)
    return f"From the lowest layer: {stack}.{f' Stitched: {held}.' if held else ''}"
