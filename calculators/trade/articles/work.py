"""An article's making up, put down in order of work. From it follow cut sizes, what to buy, stitching and steps."""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from calculators.trade.articles.finishes import (
    BOUND,
    CASING,
    HEM,
    KEPT,
    RAW,
    SEAM,
    STRAP,
    TURNED_UNDER,
    Finish,
    Glue,
)
from calculators.trade.articles.operation import Operation, Purchase, SeamKind, Strap, merged
from calculators.trade.articles.parts import EdgeStretch, FlatPart, Place
from calculators.values.phrase import Phrase

Joined = tuple[EdgeStretch, EdgeStretch]
CLOSE_GAP = "close gap"


class MakingUp:
    """What is put down of an article: parts, then operations on their edges, in order of work."""

    def __init__(self) -> None:
        self.parts: list[FlatPart] = []
        self.operations: list[Operation] = []
        self.folds: list[Glue] = []
        self.to_buy: list[Purchase] = []
        self.straps: list[FlatPart] = []
        self.hung: list[Strap] = []
        self.notes: list[Phrase] = []
        self.opening: Fraction | None = None  # [mm] what the article is turned out through

    def rectangle(self, name: str, width: Fraction, length: Fraction, like: str = "", cloth: str = "") -> FlatPart:
        """like: the part that it is cut alike to, with edges that take up the same. cloth: another than the
        article's own, such as “lining”."""
        return self._part(FlatPart(name, width, length, like=like, cloth=cloth))

    def slanted(
        self, name: str, width: Fraction, length: Fraction, slants: Mapping[str, Place], cloth: str = ""
    ) -> FlatPart:
        """A rectangle with corners cut off straight: how much of the level and of the upright side each takes [mm]."""
        return self._part(FlatPart(name, width, length, slants=slants, cloth=cloth))

    def sideways(self, name: str, width: Fraction, length: Fraction) -> FlatPart:
        """A rectangle whose width lies along the cloth."""
        return self._part(FlatPart(name, width, length, is_sideways=True))

    def bias_strip(self, name: str, width: Fraction, length: Fraction) -> FlatPart:
        """A strip on the bias, joined from what the cloth gives."""
        return self._part(FlatPart(name, width, length, is_bias=True))

    def round(self, name: str, width: Fraction, length: Fraction, count: int = 1) -> FlatPart:
        """A circle, or an ellipse."""
        return self._part(FlatPart(name, width, length, is_round=True, count=count))

    def _part(self, part: FlatPart) -> FlatPart:
        if any(each.name == part.name for each in self.parts):
            raise ValueError(f"two parts are called {part.name}")
        self.parts.append(part)
        return part

    def fold(self, one: EdgeStretch, other: EdgeStretch, angle: int = 180) -> None:
        """Two parts are cut in one piece, with a fold between them."""
        self.folds.append(Glue(one, other, angle, fold=True))

    def do(self, operation: Operation) -> None:
        """Whatever has no word of its own here."""
        self.operations.append(operation)

    def hem(
        self,
        *edges: EdgeStretch,
        turn: Fraction,
        hem: Fraction,
        do: str = "",
        how: str = "",
        casing: bool = False,
        rows: int = 1,
        lengths: Mapping[str, Fraction] | None = None,
        by_hand: str = "",
    ) -> None:
        """Turn edges in and hem them; a hem of 0 leaves them as they are. lengths: told besides [mm]. by_hand: the
        stitch they are sewn down with, "" for the machine."""
        if not hem:
            self.keep(*edges)
            return
        kind = CASING if casing else HEM
        self.do(
            Operation(
                kind,
                do or f"Hem {_named(edges)}: turn in {{turn}}, then {{hem}}, and stitch",
                {"turn": turn, "hem": hem, **(lengths or {})},
                how,
                rules=("gauge",),
                finishes=tuple(Finish(edge, kind, turn + hem, hem) for edge in edges),
                rows=rows,
                section="double" if turn else "single",
                by_hand=by_hand,
            )
        )

    def keep(self, *edges: EdgeStretch) -> None:
        """A selvedge, or an edge that stays as it is."""
        self.do(Operation("keep", f"Leave {_named(edges)} as it is", finishes=_each(edges, KEPT, Fraction(0)), rows=0))

    def seam(
        self,
        *joined: Joined,
        kind: SeamKind,
        do: str = "",
        angle: int = 180,
        how: str = "",
        lengths: Mapping[str, Fraction] | None = None,
        over: bool = False,
    ) -> None:
        """Join stretches two by two. Where two parts overlap along one side, that side is named with each of them.
        lengths: told besides the allowance [mm]. over: whether the second parts are then turned to the right side."""
        ones, others = [one for one, _ in joined], [other for _, other in joined]
        self.do(
            Operation(
                "seam",
                do or f"Join {_named(ones)} to {_named(others)}: {kind.name}, {{allowance}}",
                {"allowance": kind.allowance, **kind.lengths, **(lengths or {})},
                " ".join(part for part in (kind.how, how) if part),
                rules=("pins-placed", "start-seam", "fasten"),
                finishes=_each((*merged(ones), *merged(others)), SEAM, kind.allowance),
                glues=tuple(Glue(one, other, angle, over=over) for one, other in joined),
                rows=kind.rows,
                section=kind.section,
            )
        )

    def zip(self, *joined: Joined, kind: SeamKind, length: Fraction) -> None:
        """Join two edges by a seam that a zip so long [mm] lies in, while both lie flat."""
        self.do(
            Operation(
                "zip",
                f"Join {_named([one for one, _ in joined])} to {_named([other for _, other in joined])}, {{allowance}}:"
                " stitches of ordinary length at both ends, long ones over the zip, {length}. Press it open, stitch the"
                " zip behind it, and take the long stitches out",
                {"allowance": kind.allowance, "length": length},
                how="Sew both its sides in the same direction.",
                rules=("start-seam", "fasten"),
                finishes=_each((each for pair in joined for each in pair), SEAM, kind.allowance),
                glues=tuple(Glue(one, other, 0) for one, other in joined),
                stitched=2 * length,
                section=kind.section,
            )
        )
        self.buy("zip", length=length)

    def buttons(self, along: EdgeStretch, count: int) -> None:
        """Buttonholes and buttons along an edge that is finished, while it lies flat."""
        self.do(
            Operation(
                "buttons",
                f"Make {count} buttonhole{'s' if count > 1 else ''} along {_named([along])} and sew the buttons on, "
                "a scrap of cloth under each",
                along=(along,),
                rows=0,
            )
        )
        self.buy("buttons", count)

    def close(self, *joined: Joined, do: str, lengths: Mapping[str, Fraction]) -> None:
        """Stitch edges on each other that are finished already."""
        self.do(
            Operation(
                "close",
                do,
                lengths,
                rules=("fasten",),
                glues=tuple(Glue(one, other) for one, other in joined),
                along=tuple(one for one, _ in joined),
                rows=1,
            )
        )

    def tack(self, *several: Sequence[FlatPart], do: str) -> None:
        """Tack layers that lie on each other into one, by hand: no row of the machine's. several: the layers of each
        such heap."""
        glues = (
            Glue(one, other)
            for first, *others in several
            for each in others
            for one, other in zip(first.around, each.around)
        )
        self.do(Operation("tack", do, glues=tuple(glues), rows=0))

    def bind(self, *edges: EdgeStretch, width: Fraction, do: str = "", length: Fraction | None = None) -> None:
        """Bind edges with a strip, so wide when it is on; the edge is left as it was cut. length: of the strip, where
        it holds several layers at once [mm]."""
        section = "" if length else "bound"
        length = length or sum((edge.length * edge.part.count for edge in edges), Fraction(0))
        self.do(
            Operation(
                "bind",
                do or f"Bind {_named(edges)}, {{width}} wide",
                {"width": width},
                finishes=_each(edges, BOUND, Fraction(0)),
                inset=width,
                stitched=2 * length,
                rows=0,
                section=section,
            )
        )
        self.buy("binding", length=length)

    def strap(self, name: str, width: Fraction, length: Fraction, caught: Fraction, count: int = 1) -> FlatPart:
        """Loops or ties, folded in four and stitched: so wide and so long where they are seen, their ends caught [mm]
        under a hem or in a seam."""
        return self._strap(name, (width, length), width * 3 / 2, caught, count,
            f"Fold the long edges of the {name} to its middle, fold it in two, and stitch along the open side",
        )  # fmt: skip

    def tube(self, name: str, width: Fraction, length: Fraction, allowance: Fraction, count: int = 1) -> FlatPart:
        """Loops or ties, stitched to a tube and turned out: so wide and so long where they are seen [mm]; their ends
        are caught by as much as their seam takes up."""
        return self._strap(name, (width, length), width / 2 + allowance, allowance, count,
            f"Fold the {name} lengthwise, right sides together, stitch it, turn it out, and press its seam to the "
            "middle of the back",
        )  # fmt: skip

    def _strap(self, name: str, size: Place, beside: Fraction, caught: Fraction, count: int, do: str) -> FlatPart:
        strap = self._part(FlatPart(name, *size, count=count))
        self.straps.append(strap)
        self.do(
            Operation(
                "strap",
                do,
                finishes=(
                    Finish(strap.left, STRAP, beside), Finish(strap.right, STRAP, beside),
                    Finish(strap.top, RAW, caught), Finish(strap.bottom, RAW, caught),
                ),
                stitched=strap.length * count,
                rows=0,
            )
        )  # fmt: skip
        return strap

    def hang(self, strap: FlatPart, *ends: EdgeStretch) -> None:
        """Where one of these loops or ties comes out of the edges: at one stretch for each end that is caught, twice at
        the same where both ends lie on each other."""
        self.hung.append(Strap(strap, ends))

    def close_gap(self, one: EdgeStretch, other: EdgeStretch, allowance: Fraction) -> None:
        """Shut what was left open to turn an article out by, once it is turned: so much is folded in [mm]."""
        self.do(
            Operation(
                CLOSE_GAP,
                "Fold the edges of the gap in by {allowance} and slip-stitch them together",
                {"allowance": allowance},
                finishes=_each((one, other), TURNED_UNDER, allowance),
                glues=(Glue(one, other),),
                by_hand="slip",
            )
        )

    def lay_on(
        self,
        *laid: Joined,
        inset: Fraction,
        turn: Fraction,
        do: str,
        how: str = "",
        lengths: Mapping[str, Fraction] | None = None,
        over: bool = False,
        by_hand: str = "",
    ) -> None:
        """Turn edges under and stitch them down, each so far inside an edge of another part that it lies on [mm]. over:
        whether on its right side. by_hand: the stitch they are sewn down with, "" for the machine."""
        self.do(
            Operation(
                "lay on",
                do,
                {"turn": turn, **(lengths or {})},
                how,
                rules=("fasten",),
                finishes=_each((other for _, other in laid), TURNED_UNDER, turn),
                glues=tuple(Glue(one, other, inset=inset, over=over) for one, other in laid),
                by_hand=by_hand,
            )
        )  # fmt: skip

    def turn_out(self, opening: Fraction, do: str = "Turn right side out and push the corners square") -> None:
        """Turn it out through an opening so wide [mm]."""
        self.opening = opening
        self.do(Operation("turn out", do, rules=("point-out",), rows=0))

    def buy(self, thing: str, count: int = 1, length: Fraction | None = None) -> None:
        self.to_buy.append(Purchase(thing, count, length))

    @property
    def glues(self) -> tuple[Glue, ...]:
        """All that is joined, folds first."""
        return (*self.folds, *(glue for each in self.operations for glue in each.glues))

    @property
    def finishes(self) -> tuple[Finish, ...]:
        return tuple(finish for each in self.operations for finish in each.finishes)

    @property
    def stitching(self) -> Fraction:
        """All rows of the machine on one article [mm].

        Source: derived, the rows of its operations added up.
        """
        return sum((each.stitching for each in self.operations), Fraction(0))

    @property
    def sewn_by_hand(self) -> Mapping[str, Fraction]:
        """How long its rows by hand are together, by the stitch [mm].

        Source: derived, the rows of its operations added up.
        """
        found: dict[str, Fraction] = {}
        for each in self.operations:
            if each.by_hand:
                found[each.by_hand] = found.get(each.by_hand, Fraction(0)) + each.rows_sewn
        return found


def _each(edges: Iterable[EdgeStretch], how: str, takes: Fraction) -> tuple[Finish, ...]:
    return tuple(Finish(edge, how, takes) for edge in edges)


def _named(edges: Sequence[EdgeStretch]) -> str:
    """The edges in words: “top and bottom of the front”."""
    parts: dict[str, list[str]] = {}
    for edge in edges:
        sides = parts.setdefault(edge.part.name, [])
        if edge.side not in sides:
            sides.append(edge.side)
    all_of = {edge.part.name: len(edge.part.sides) for edge in edges}
    told = []
    for part, sides in parts.items():
        if sides != ["round"] and len(sides) == all_of[part]:
            told.append(f"all sides of the {part}")
        elif sides == ["round"]:
            told.append(f"the edge of the {part}")
        else:
            told.append(f"the {listed(sides)} of the {part}")
    return listed(told)


def listed(words: Sequence[str]) -> str:
    """Words with commas and an “and”."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
