"""Hemmed pieces: from cut size to finished size and back."""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class Hems:
    """The hem depth on each side of a piece and the turn inside every hem [mm]. A side of hem 0 is left as it is."""

    turn: Fraction
    top: Fraction
    bottom: Fraction
    left: Fraction
    right: Fraction

    def taken_up(self, hem: Fraction) -> Fraction:
        """Cloth that one side's hem takes up beyond the finished edge [mm].

        Source: derived, the hem and the turn hidden in it; where there is no hem, nothing.
        """
        return hem + self.turn if hem else Fraction(0)

    @property
    def sides_along(self) -> int:
        """How many of the two sides along the piece have a hem."""
        return bool(self.left) + bool(self.right)

    @property
    def sides_across(self) -> int:
        """How many of the two ends have a hem."""
        return bool(self.top) + bool(self.bottom)

    @property
    def hemmed_corners(self) -> int:
        """At how many of the four corners two hems meet."""
        return self.sides_along * self.sides_across

    @property
    def corners(self) -> set[tuple[Fraction, Fraction]]:
        """The pairs of hems that meet at the four corners [mm]: that of a side along the piece, then that of one
        across.

        Source: derived, each long side meets each end once.
        """
        return {(beside, end) for beside in (self.left, self.right) for end in (self.top, self.bottom)}

    @property
    def across(self) -> Fraction:
        """Cloth taken up across the piece, left and right [mm].

        Source: derived, what the hems of the left and the right take up.
        """
        return self.taken_up(self.left) + self.taken_up(self.right)

    @property
    def along(self) -> Fraction:
        """Cloth taken up along the piece, top and bottom [mm].

        Source: derived, what the hems of the top and the bottom take up.
        """
        return self.taken_up(self.top) + self.taken_up(self.bottom)


@dataclass(frozen=True)
class HemmedPiece:
    """A piece with its hems: cut and finished size, and how far from a hem's inner folded edge its stitches run
    [mm]. Raises HemsMeet when the hems leave no piece between them."""

    hems: Hems
    cut_width: Fraction
    cut_length: Fraction
    finished_width: Fraction
    finished_length: Fraction
    edge_stitch: Fraction = Fraction(2)

    def __post_init__(self) -> None:
        if self.finished_width <= self.hems.left + self.hems.right:
            raise HemsMeet("left", "right")
        if self.finished_length <= self.hems.top + self.hems.bottom:
            raise HemsMeet("top", "bottom")

    @property
    def border_share(self) -> Fraction:
        """The visible border as a share of the finished piece's area [%].

        Source: derived, all of the piece but the rectangle inside its hems.
        """
        inner = (self.finished_width - self.hems.left - self.hems.right) * (
            self.finished_length - self.hems.top - self.hems.bottom
        )
        return 100 * (1 - inner / (self.finished_width * self.finished_length))


class HemsMeet(ValueError):
    """Raised when the hems of two opposite sides leave no piece between them; `sides` names the two."""

    def __init__(self, *sides: str):
        self.sides = sides
        super().__init__(f"the hems at {' and '.join(sides)} meet")
