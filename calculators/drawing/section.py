"""An edge cut through and seen from the side: layers, folds, raw edges and stitches, each named where it stands.

Across, it is to scale; layers are drawn thick and a little apart, so that they can be counted. What runs on beyond the
edge is broken off.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from calculators.drawing import lines
from calculators.drawing.picture import WIDTH, Picture, PictureSeries, Sheet, Told, key_picture
from calculators.drawing.section_labels import ROW, place_of, placed_labels
from calculators.drawing.section_layout import EDGE_WIDE, END, RAMP, SHORTEST, THICK, Frame, SectionLayout, beside
from calculators.trade.sections.edge import BINDING, FACING, LINING, LOWER, PIECE, UPPER, EdgeStep
from calculators.trade.sections.section import CrossSection, CutEnd, Run
from calculators.trade.trade_rules import brief
from calculators.values.measure import Ruler, show_length

_LOOKS = {PIECE: "first", LOWER: "first", UPPER: "other", FACING: "other", BINDING: "other", LINING: "other"}
"""How each strip is drawn; all others as a third cloth."""


def edge_step_by_step(steps: Sequence[EdgeStep], ruler: Ruler) -> PictureSeries:
    """A drawing for every step, all at one scale, and what their lines are."""
    frame = _frame([step.section for step in steps])
    pictures = tuple(
        replace(_picture(step.name, step.section, frame, _filled(step.do, step, ruler)), told=told(step, ruler))
        for step in steps
    )
    return PictureSeries(pictures, key_picture([lines.SEWN_THROUGH, lines.LAYER_WRONG, lines.BREAK]))


def edge_step(steps: Sequence[EdgeStep], number: int, ruler: Ruler) -> Picture:
    """The drawing of one step. number: counted from 1."""
    step = steps[number - 1]
    caption = f"{step.name}. {_filled(step.do, step, ruler)}."
    return _picture(step.name, step.section, _frame([step.section]), caption)


def told(step: EdgeStep, ruler: Ruler) -> Told:
    """What a list of steps says beside its drawing."""
    line = " ".join(part for part in (*map(brief, step.rules), step.how) if part)
    return Told(f"{_filled(step.do, step, ruler, '**')}.", _filled(line, step, ruler), _filled(step.why, step, ruler))


def _filled(template: str, step: EdgeStep, ruler: Ruler, mark: str = "") -> str:
    return template.format(
        **{name: f"{mark}{show_length(length, ruler)}{mark}" for name, length in step.lengths.items()}
    )


def _frame(sections: Sequence[CrossSection]) -> Frame:
    """Where all sections of a series stand: the lowest place [mm], the scale, and where that place is on the sheet."""
    ends = [_ends(section) for section in sections]
    low, high = float(min(map(min, ends))), float(max(map(max, ends)))
    narrowest = min(
        float(right - left) for each in ends for left, right in zip(sorted(each), sorted(each)[1:])
    ) if any(len(each) > 1 for each in ends) else high - low or 1.0  # fmt: skip
    wide = max(high - low, narrowest) or 1.0
    scale = min(max(EDGE_WIDE / wide, SHORTEST / narrowest), (WIDTH - 4 * RAMP) / wide)
    return low, scale, (WIDTH - wide * scale) / 2


def _ends(section: CrossSection) -> set[Fraction]:
    """The places where cloth ends or is folded, but for where it runs on."""
    return {
        end for run in section.layers for end, flat in ((run.at(run.low), run.low), (run.at(run.high), run.high))
        if not run.solid and not (run.runs_on and flat == run.high)
    }  # fmt: skip


def _picture(name: str, section: CrossSection, frame: Frame, caption: str) -> Picture:
    drawn = SectionLayout(section, frame)
    top, foot = drawn.y(drawn.tallest) - THICK / 2, THICK / 2
    labels, rows_above, rows_below = placed_labels(drawn, top, foot)
    box = (0.0, top - 10, float(WIDTH), foot + 10)
    sheet = Sheet(box, margins=(0, 4 + ROW * rows_above, 0, 4 + ROW * rows_below), down=True, tallest=box[3] - box[1])
    for solid in section.solids:
        middle, reach = drawn.ellipse(solid)
        sheet.ellipse("solid", middle, reach)
    for strip in section.strips:
        _ribbon(sheet, drawn, strip)
    for end in section.ends():
        _end(sheet, drawn, end)
    for row in section.rows:
        _thread(sheet, place_of(drawn, row), row.whipped)
    for run in section.layers:
        if run.runs_on:
            _broken_off(sheet, drawn, run)
    for label in labels:
        (x, y), words_at = label.leader.at, label.at
        sheet.line("leader", (x, y), (x, words_at[1] + (4 if words_at[1] < y else -13)))
        sheet.words(label.leader.words, words_at)
    return sheet.finish(name, in_words(section), with_key=False, caption=caption)


def _thread(sheet: Sheet, place: tuple[float, float, float], whipped: bool) -> None:
    """A row of stitches: straight through the layers, or over their edges."""
    x, high, low = place
    left, right = max(x - 5, 0.0), min(x + 5, float(WIDTH))
    if whipped:
        round_edges = [(x, high), (right, high + 2), (right, low - 2), (x, low), (left, low - 2), (left, high + 2)]
        sheet.line(lines.SEWN_THROUGH, *round_edges, (x, high))
    else:
        sheet.line(lines.SEWN_THROUGH, (left, high), (x, high), (x, low), (right, low))


def _broken_off(sheet: Sheet, drawn: SectionLayout, run: Run) -> None:
    """Where a strip runs on beyond the sheet."""
    x = WIDTH - END if run.way > 0 else END
    y = drawn.y(drawn.level_at(run, run.at(run.high)))
    sheet.cut_off((x, y - THICK), (x, y + THICK))


def _ribbon(sheet: Sheet, drawn: SectionLayout, strip: str) -> None:
    path = drawn.path(strip)
    look = _LOOKS.get(strip, "third")
    sheet.line("layer-edge", *path)
    sheet.line(f"layer-cloth {look}", *path)
    if look == "third":
        sheet.line("layer-third", *path)
    run = drawn.section.runs_of(strip)[0]
    up = 1 if run.right_up else -1  # the wrong side is the lower one
    sheet.line(lines.LAYER_WRONG, *beside(path, up * run.way * THICK / 4))


def _end(sheet: Sheet, drawn: SectionLayout, end: CutEnd) -> None:
    """A raw edge frays; one that was neatened has thread round it; that of a tape or a selvedge is plain."""
    (x, y), way = drawn.end(end), end.way
    if not end.neat:
        for part in (-1, 0, 1):
            sheet.line("raw-end", (x, y + part * THICK / 3), (x - way * 4, y + part * THICK / 2.2))
    elif end.words.startswith("neatened"):
        high = THICK / 2 + 1.5
        turns = [(x + way * 9, y + high), (x + way * 6, y - high), (x + way * 3, y + high), (x, y - high)]
        sheet.line("neatening", *turns, (x - way * 2, y), (x, y + high))
    else:
        sheet.line("raw-end", (x, y - THICK / 2), (x, y + THICK / 2))


def in_words(section: CrossSection) -> str:
    """What lies over what, for those who do not see it."""

    def told(run: Run) -> str:
        return run.strip if run.solid else f"{run.strip}, {'right' if run.right_up else 'wrong'} side up"

    cells = section.cells()
    thickest = max(cells, key=lambda cell: len(section.lying(cell)))
    stack = "; ".join(map(told, section.lying(thickest)))
    held = "; ".join(f"{row.name} through {len(row.holds)} layers" for row in section.rows)
    return f"From the lowest layer: {stack}.{f' Stitched: {held}.' if held else ''}"
