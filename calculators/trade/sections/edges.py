"""Hems and seams as a maker does them: steps in order, each with the edge as it then lies, cut through."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from calculators.trade.sections.section import CrossSection

PIECE, LOWER, UPPER = "piece", "lower piece", "upper piece"
HEM_ROW, FIRST_ROW, SECOND_ROW = "hem row", "first row", "second row"


@dataclass(frozen=True)
class EdgeMeasures:
    """What an edge is made with [mm].

    allowance: what a seam takes up at each edge. edge_stitch: from the inner fold to its row.
    """

    turn: Fraction
    hem: Fraction
    edge_stitch: Fraction
    allowance: Fraction


@dataclass(frozen=True)
class EdgeStep:
    """One step. Its texts have ``{name}`` where a length of this job belongs.

    name: what it is called in the workroom. do: one command without its full stop. section: the edge after it.
    lengths: those told [mm]. how: what belongs to doing it. why: the reason, which a page folds away. rules: keys of
    the trade's rules that it needs.
    """

    name: str
    do: str
    section: CrossSection
    lengths: Mapping[str, Fraction] = field(default_factory=dict)
    how: str = ""
    why: str = ""
    rules: tuple[str, ...] = ()


@dataclass(frozen=True)
class Edge:
    """A kind of hem or seam.

    title: its name. steps: of making it. takes: what it takes up at each of its edges, of the finished section [mm].
    layers: at most so many lie over one another. raw: the strips whose raw edges it promises to shut in.
    """

    title: str
    steps: Callable[[EdgeMeasures], list[EdgeStep]]
    takes: Callable[[CrossSection], Fraction]
    layers: int
    raw: tuple[str, ...]


def _hem_takes(section: CrossSection) -> Fraction:
    """Source: derived, the cloth from the raw edge to the finished fold, where the piece begins."""
    return section.runs_of(PIECE)[-1].low


def _single_hem(with_: EdgeMeasures) -> list[EdgeStep]:
    flat = CrossSection().lay(PIECE, Fraction(0), 1, right_up=False)
    folded = flat.fold(with_.hem, "left")
    stitched = folded.stitch(2 * with_.hem - with_.edge_stitch, HEM_ROW)
    lengths = {"hem": with_.hem, "edge_stitch": with_.edge_stitch}
    return [
        EdgeStep("Neatened", "Neaten the raw edge, wrong side up", flat,
            how="A selvedge needs none.", why="It stays in sight on the wrong side."),
        EdgeStep("Folded", "Fold the hem, {hem}, and press", folded, lengths, rules=("gauge",)),
        EdgeStep("Stitched", "Stitch {edge_stitch} from the neatened edge", stitched, lengths),
    ]  # fmt: skip


def _double_hem(with_: EdgeMeasures) -> list[EdgeStep]:
    flat = CrossSection().lay(PIECE, Fraction(0), 1, right_up=False)
    turned = flat.fold(with_.turn, "left")
    folded = turned.fold(with_.turn + with_.hem, "left")
    stitched = folded.stitch(with_.turn + 2 * with_.hem - with_.edge_stitch, HEM_ROW)
    lengths = {"turn": with_.turn, "hem": with_.hem, "edge_stitch": with_.edge_stitch}
    return [
        EdgeStep("First turn", "Fold the raw edge in by {turn}, wrong side up, and press", turned, lengths,
            why="It is hidden: what it is off shifts nothing that is seen."),
        EdgeStep("Second fold", "Fold the hem over, {hem}, and press", folded, lengths,
            rules=("gauge",), why="This fold is the finished edge."),
        EdgeStep("Stitched", "Stitch {edge_stitch} from the inner fold", stitched, lengths,
            why="Nearer to the fold, the needle slips off it."),
    ]  # fmt: skip


def _equal_hem(with_: EdgeMeasures) -> list[EdgeStep]:
    return _double_hem(EdgeMeasures(with_.hem, with_.hem, with_.edge_stitch, with_.allowance))


def _together(right_sides_in: bool) -> CrossSection:
    """Two pieces with their edges even; their bodies lie to the left of the seam, at 0, their edges to its right."""
    return CrossSection().lay(LOWER, Fraction(0), -1, right_up=right_sides_in).lay(
        UPPER, Fraction(0), -1, right_up=not right_sides_in
    )  # fmt: skip


def _plain(with_: EdgeMeasures) -> list[EdgeStep]:
    lengths = {"allowance": with_.allowance}
    seam = -with_.allowance
    stitched = _together(right_sides_in=True).stitch(seam, FIRST_ROW)
    opened = stitched.fold(seam, "right", over=False, strips=(LOWER,)).fold(seam, "left", strips=(UPPER,))
    return [
        EdgeStep("Stitched", "Lay right sides together, edges even, and stitch {allowance} from them", stitched,
            lengths, rules=("pins-placed", "start-seam", "fasten")),
        EdgeStep("Pressed open", "Press it as it lies, then open it and press the allowances apart", opened, lengths,
            how="Let it cool in between. A wooden edge below keeps the allowances from showing through.",
            why="Pressed shut first, the stitches settle into the cloth."),
    ]  # fmt: skip


def _felled(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, the allowance in three equal parts: left of the narrow edge, turned in, and between them."""
    seam = -with_.allowance
    narrow = with_.allowance / 3
    lengths = {"allowance": with_.allowance, "narrow": narrow, "fell": 2 * narrow}
    stitched = _together(right_sides_in=True).stitch(seam, FIRST_ROW)
    trimmed = stitched.trim(UPPER, with_.allowance - narrow)
    turned = trimmed.fold(seam + 2 * narrow, "right", strips=(LOWER,))
    opened = turned.fold(seam, "left", strips=(UPPER,))
    felled = opened.stitch(seam + 2 * narrow - min(with_.edge_stitch, narrow / 2), SECOND_ROW)
    return [
        EdgeStep("Stitched", "Lay right sides together, edges even, and stitch {allowance} from them", stitched,
            lengths, rules=("pins-placed", "start-seam", "fasten")),
        EdgeStep("Trimmed", "Trim the upper allowance to {narrow}", trimmed, lengths),
        EdgeStep("Turned in", "Fold the wider allowance over the narrow one, its fold {fell} from the seam, and press",
            turned, lengths),
        EdgeStep("Laid flat", "Open the pieces and lay the fell flat, all the same way", opened, lengths,
            why="Then the shadow falls on the same side everywhere."),
        EdgeStep("Stitched down", "Edge-stitch along the fold, or hem it by hand", felled, lengths),
    ]  # fmt: skip


def _french(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, the first row at two fifths of the allowance, as the house has it, the second at the rest."""
    first = with_.allowance * 2 / 5
    second = with_.allowance - first
    lengths = {"first": first, "second": second}
    stitched = _together(right_sides_in=False).stitch(-first, FIRST_ROW)
    turned = stitched.fold(-first, "left", strips=(UPPER,)).fold(-first, "left", over=False, strips=(LOWER,))
    closed = turned.stitch(-first + second, SECOND_ROW)
    opened = closed.fold(-first + second, "right", strips=(UPPER,))
    return [
        EdgeStep("First row", "Lay wrong sides together, edges even, and stitch {first} from them", stitched,
            lengths, how="Cut off every loose thread.", why="One that is caught shows on the right side for ever."),
        EdgeStep("Turned", "Turn the right sides together, crease exactly at the stitching, and press", turned,
            lengths),
        EdgeStep("Second row", "Stitch {second} from the fold, so that the raw edges are shut in", closed, lengths,
            rules=("start-seam", "fasten")),
        EdgeStep("Opened", "Open the pieces and press the ridge to one side", opened, lengths),
    ]  # fmt: skip


#: The kinds of hem and seam, by name.
EDGES: Mapping[str, Edge] = {
    "single": Edge("Single turned hem", _single_hem, _hem_takes, layers=2, raw=()),
    "double": Edge("Double hem", _double_hem, _hem_takes, layers=3, raw=(PIECE,)),
    "equal": Edge("Hem in equal folds", _equal_hem, _hem_takes, layers=3, raw=(PIECE,)),
    "plain": Edge("Plain seam, pressed open", _plain, lambda done: done.held(FIRST_ROW, LOWER), layers=2, raw=()),
    "felled": Edge("Felled seam", _felled, lambda done: done.held(FIRST_ROW, LOWER), layers=3, raw=(LOWER, UPPER)),
    "french": Edge("French seam", _french, lambda done: done.held(SECOND_ROW, LOWER), layers=5, raw=(LOWER, UPPER)),
}
