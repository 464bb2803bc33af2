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
    [mm]."""

    hems: Hems
    cut_width: Fraction
    cut_length: Fraction
    finished_width: Fraction
    finished_length: Fraction
    edge_stitch: Fraction = Fraction(2)

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


def hemmed_from_cut(width: Fraction, length: Fraction, hems: Hems) -> HemmedPiece:
    """The finished piece that a cut piece gives.

    width, length: cut size [mm]; hems: depth and turn of each side [mm].
    Returns both sizes [mm].
    Source: derived, finished = cut − 2·(hem + turn); 19 in cut with 1/4 in + 1/4 in gives 18 in.
    Raises HemsMeet when the hems leave no piece between them.
    """
    return _whole(HemmedPiece(hems, width, length, width - hems.across, length - hems.along))


def hemmed_from_finished(width: Fraction, length: Fraction, hems: Hems) -> HemmedPiece:
    """The cut piece that a finished piece needs.

    width, length: finished size [mm]; hems: depth and turn of each side [mm].
    Returns both sizes [mm].
    Source: derived, cut = finished + 2·(hem + turn).
    Raises HemsMeet when the hems would cover the piece.
    """
    return _whole(HemmedPiece(hems, width + hems.across, length + hems.along, width, length))


def _whole(piece: HemmedPiece) -> HemmedPiece:
    if piece.finished_width <= piece.hems.left + piece.hems.right:
        raise HemsMeet("left", "right")
    if piece.finished_length <= piece.hems.top + piece.hems.bottom:
        raise HemsMeet("top", "bottom")
    return piece
