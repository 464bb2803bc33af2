"""Cloth before it is planned on: what washing does to it, and what of it can be used."""

from dataclasses import dataclass
from fractions import Fraction

from calculators.values.measure import Ruler, show_length


def dimensional_change(before: Fraction, after: Fraction) -> Fraction:
    """How much a length of cloth changed in the wash.

    before: distance between the marks before washing [mm].
    after: the same distance after washing and drying [mm].
    Returns the change [%], negative when the cloth shrank.
    Source: iso-5077, (after − before) ÷ before, as restated by other publications.
    """
    return 100 * (after - before) / before


def cloth_to_start_from(needed: Fraction, change: Fraction) -> Fraction:
    """Unwashed length that leaves what is needed once it has changed.

    needed: length wanted after the wash [mm].
    change: dimensional change [%], negative for shrinkage, more than −100.
    Returns the length before the wash [mm].
    Source: derived, iso-5077 turned round: needed ÷ (1 + change/100), not needed × (1 − change/100).
    """
    return needed / (1 + change / 100)


def cloth_to_buy_for(needed: Fraction, ends: Fraction, change: Fraction) -> Fraction:
    """Unwashed length of a further cloth of which a length between straight ends is needed.

    needed: between two straight ends, washed [mm]. ends: what both ends and a slant lose [mm].
    change: dimensional change [%], negative for shrinkage, more than −100. Cloth that grows is bought as long as it is
    cut.
    Returns the length before the wash [mm].
    Source: derived, what is cut and lost at the ends, taken back through the wash by `cloth_to_start_from`.
    """
    whole = needed + ends
    return max(whole, cloth_to_start_from(whole, change))


def after_the_wash(unwashed: Fraction, change: Fraction) -> Fraction:
    """What an unwashed length becomes.

    unwashed: length before the wash [mm].
    change: dimensional change [%], negative for shrinkage.
    Returns the length after the wash [mm].
    Source: derived, iso-5077 the other way round: before × (1 + change ÷ 100).
    """
    return unwashed * (1 + change / 100)


@dataclass(frozen=True)
class LongEdges:
    """The two long edges of a cloth: trimmed already, or selvedges of which a strip [mm] is still to be trimmed off
    each."""

    trimmed: bool = False
    selvedge: Fraction = Fraction(0)

    @property
    def strip(self) -> Fraction:
        """What is still to be trimmed off each side [mm].

        Source: derived, an edge trimmed already loses nothing more.
        """
        return Fraction(0) if self.trimmed else self.selvedge

    def between(self, width: Fraction) -> Fraction:
        """What can be used of a width measured from edge to edge [mm].

        Source: derived, the same strip comes off both sides.
        """
        return width - 2 * self.strip

    @property
    def name(self) -> str:
        """What the line is that every mark across is measured from."""
        return "trimming line" if self.strip else "trimmed edge" if self.trimmed else "selvedge"

    def start(self, ruler: Ruler) -> str:
        """The line that every mark across is measured from, in words.

        Selvedges stay on until the cloth is cut across, so that the marks on them are there to cut by.
        """
        return (
            f"the {self.name}, {show_length(self.strip, ruler)} inside one selvedge"
            if self.strip
            else f"one {self.name}"
        )


@dataclass(frozen=True)
class UsableCloth:
    """A cloth and what can be used of it: lengths and widths [mm], skew as an offset [mm].

    With skew, what can be used is a slanted strip, both ends along a thread; pulled square it becomes a rectangle.
    """

    whole_length: Fraction
    full_width: Fraction
    selvedge: Fraction
    end_loss: Fraction
    skew: Fraction

    @property
    def length(self) -> Fraction:
        """Usable length [mm]. Two slanted ends are parallel, so straightening both to a thread costs the skew once.

        Source: derived, the whole length less both ends and the skew.
        """
        return self.whole_length - 2 * self.end_loss - self.skew

    @property
    def width(self) -> Fraction:
        """Usable width [mm].

        Source: astm-d3774 for the full width, less a selvedge at each side.
        """
        return self.full_width - 2 * self.selvedge

    @property
    def upright_length(self) -> Fraction:
        """The longest rectangle, square to the selvedge and as wide as the usable width, in the strip left slanted
        [mm]; 0 or less if none.

        Source: derived, over the usable width a slanted end rises by its share of the skew.
        """
        return self.length - self.skew * self.width / self.full_width

    @property
    def skew_percent(self) -> Fraction:
        """The skew as a share of the width [%] (formula as in GOST 14067-91: 100·d/w).

        Source: gost-14067, 100·d/w.
        """
        return 100 * self.skew / self.full_width


def usable_cloth(
    layers: int,
    folded_length: Fraction,
    extra_length: Fraction,
    full_width: Fraction,
    selvedge: Fraction,
    end_loss: Fraction,
    skew: Fraction,
) -> UsableCloth:
    """What can be used of a cloth measured folded in layers.

    layers: layers lying on one another.
    folded_length: length of one layer [mm]; extra_length: what hangs over beyond the last full layer [mm].
    full_width: selvedge to selvedge, no tension [mm] (ASTM D3774); selvedge: trimmed off at each side [mm].
    end_loss: cut off each end to reach clean cloth [mm].
    skew: how far a weft thread that starts at one corner is off at the other selvedge [mm].
    Returns the cloth with what can be used of it.
    Source: astm-d3774 for the width; the rest derived, as each measure of `UsableCloth` says.
    Raises ValueError when nothing is left.
    """
    cloth = UsableCloth(layers * folded_length + extra_length, full_width, selvedge, end_loss, skew)
    if cloth.length <= 0 or cloth.width <= 0:
        raise ValueError("nothing is left of the cloth")
    return cloth
