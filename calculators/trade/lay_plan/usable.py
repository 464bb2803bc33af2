"""What of a cloth can be planned on: after the wash, between the trimmed selvedges and the squared ends."""

from dataclasses import dataclass
from fractions import Fraction

from calculators.trade.cloth import after_the_wash, cloth_to_start_from
from calculators.trade.lay_plan.order import CannotPlan, Cloth, Flaw, Repeat, Rules


@dataclass(frozen=True)
class Usable:
    """The part of a cloth that is planned on; places in it are measured from its straight end and its first long edge.

    width, length: its size [mm]; length None for cloth still to be bought.
    flaws: cut to what lies in it [mm]. repeat: with its start moved to the same corner [mm].
    """

    cloth: Cloth
    width: Fraction
    length: Fraction | None
    flaws: tuple[Flaw, ...]
    repeat: Repeat | None

    @property
    def area(self) -> Fraction:
        """Usable area [mm²]; 0 while the length is open.

        Source: derived, usable width times usable length.
        """
        return self.width * (self.length or 0)


def usable_part(cloth: Cloth, rules: Rules) -> Usable:
    """What of a cloth can be planned on.

    cloth: as it lies, before the wash. rules: its losses.
    Returns the usable part. Squaring costs its loss once at each end, however many strips are cut, and the slant once,
    as in `cloth.UsableCloth`.
    A flaw is as much longer as the ends slant, towards the end it is measured from: which way they slant is not asked.
    Source: derived; the wash as in `cloth.after_the_wash`.
    Raises CannotPlan when nothing is left or a flaw lies beside the cloth.
    """
    width = cloth.edges(rules).between(after_the_wash(cloth.width, rules.change_width))
    length = None if cloth.length is None else after_the_wash(cloth.length, rules.change_length) - _off_the_ends(rules)
    if width <= 0:
        raise CannotPlan(
            "selvedge",
            "Two selvedges of {selvedge:length} leave nothing of a cloth {width:length} wide.",
            selvedge=rules.selvedge,
            width=cloth.width,
        )
    if length is not None and length <= 0 and rules.skew > 2 * rules.end_loss:
        raise CannotPlan(
            "skew",
            "Ends that slant by {skew:length} leave nothing of a cloth {length:length} long. Measure the offset "
            "along the selvedge.",
            skew=rules.skew,
            length=cloth.length,
        )
    if length is not None and length <= 0:
        raise CannotPlan(
            "end_loss",
            "Two ends of {end_loss:length} leave nothing of a cloth {length:length} long.",
            end_loss=rules.end_loss,
            length=cloth.length,
        )
    flaws = (_moved(flaw, cloth, rules) for flaw in cloth.flaws)
    return Usable(
        cloth,
        width,
        length,
        tuple(cut for flaw in flaws if (cut := _within(flaw, width, length))),
        _repeat(cloth, rules),
    )


def length_to_start_from(usable: Fraction, rules: Rules) -> Fraction:
    """The unwashed length that leaves a usable length.

    usable: length to plan on [mm]. rules: the losses.
    Returns the length before the wash, with what is cut off both ends and lost to their slant [mm].
    Source: derived; the wash as in `cloth.cloth_to_start_from`.
    """
    return cloth_to_start_from(usable + _off_the_ends(rules), rules.change_length)


def _off_the_ends(rules: Rules) -> Fraction:
    return 2 * rules.end_loss + rules.skew


def _moved(flaw: Flaw, cloth: Cloth, rules: Rules) -> Flaw:
    beyond_length = cloth.length is not None and flaw.from_end + flaw.length > cloth.length
    if beyond_length or flaw.from_selvedge + flaw.width > cloth.width:
        raise CannotPlan(
            "flaws",
            "A flaw that ends {along:length} from the end and {across:length} from the selvedge lies outside "
            "“{cloth:text}”. Measure both from the same corner.",
            along=flaw.from_end + flaw.length,
            across=flaw.from_selvedge + flaw.width,
            cloth=cloth.name,
        )
    along, across = 1 + rules.change_length / 100, 1 + rules.change_width / 100
    return Flaw(
        flaw.from_end * along - rules.end_loss - rules.skew, flaw.from_selvedge * across - cloth.edges(rules).strip,
        flaw.length * along + rules.skew, flaw.width * across
    )  # fmt: skip


def _within(flaw: Flaw, width: Fraction, length: Fraction | None) -> Flaw | None:
    start, left = max(flaw.from_end, Fraction(0)), max(flaw.from_selvedge, Fraction(0))
    end, right = flaw.from_end + flaw.length, min(flaw.from_selvedge + flaw.width, width)
    if length is not None:
        end = min(end, length)
    return Flaw(start, left, end - start, right - left) if end > start and right > left else None


def _repeat(cloth: Cloth, rules: Rules) -> Repeat | None:
    if (repeat := cloth.repeat) is None:
        return None
    along, across = 1 + rules.change_length / 100, 1 + rules.change_width / 100
    return Repeat(
        repeat.along and repeat.along * along,
        repeat.across and repeat.across * across,
        _first(repeat.first_along * along - rules.end_loss, repeat.along and repeat.along * along),
        _first(repeat.first_across * across - cloth.edges(rules).strip, repeat.across and repeat.across * across),
    )


def _first(place: Fraction, distance: Fraction | None) -> Fraction:
    """The first start of a repeat that is not before the corner."""
    return place % distance if distance else Fraction(0)
