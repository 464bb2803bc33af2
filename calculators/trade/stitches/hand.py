"""The hand stitches, each one declaration.

Which way each is worked, and in what proportion, is common practice for a right-handed maker; the hemming stitches
follow the schoolbooks named on their page.
"""

from collections.abc import Mapping
from fractions import Fraction as F

from calculators.trade.stitches.stitch import Band, Stitch, held, places

_FLAT = (Band("cloth", "right"),)
_HEM = (Band("cloth", "wrong", F(0)), Band("hem", "right"))
_TWO_FOLDS = (Band("lower fold", "right", F(-1, 4)), Band("", "nothing", F(1, 4)), Band("upper fold", "right"))
_EDGE = (Band("", "nothing", F(0)), Band("cloth", "right"))
_DRAWN = (Band("cloth", "wrong", F(-7, 8)), Band("threads", "threads", F(0)), Band("hem", "right"))
_SHORT = {"cm": "3 mm", "in": "1/8 in"}
_LONG = {"cm": "15 mm", "in": "5/8 in"}
_BUNDLE = {"cm": "2.5 mm", "in": "1/10 in"}

#: Hand stitches, by name.
STITCHES: Mapping[str, Stitch] = {
    "running": Stitch(
        "Running stitch", "Take several stitches on the needle, over and under alike", _FLAT,
        places((0, 0), (1, 0)), F(2), ("cloth",), F(1), _SHORT,
    ),
    "tacking": Stitch(
        "Tacking", "Long stitches over, short ones under, and no knot: it comes out again", _FLAT,
        places((0, 0), (1, 0)), F(7, 5), ("cloth",), F(1, 2), _LONG,
    ),
    "back": Stitch(
        "Back stitch", "Go back one stitch on top, on by two below", _FLAT,
        places((1, 0), (0, 0)), F(1), ("cloth",), F(2), _SHORT,
    ),
    "slip": Stitch(
        "Slip stitch", "Take up a thread or two of the cloth; run the needle along inside the fold", _HEM,
        places((0, 0.12), (0, -0.15), (0.15, -0.15), (0.15, 0.12)), F(1), ("cloth", "hem"), F(1),
    ),
    "ladder": Stitch(
        "Ladder stitch", "Run along inside one fold, cross straight over to the other, and draw both together",
        _TWO_FOLDS, places((0, 0.35), (0, -0.35), (1, -0.35), (1, 0.35)), F(2),
        ("lower fold", "upper fold"), F(1),
    ),
    "hemming": Stitch(
        "Hemming", "Take up a thread or two of the cloth, then slant up through the edge of the fold", _HEM,
        places((0, 0.2), (0.5, -0.2)), F(1), ("cloth", "hem"), F(1), _SHORT,
    ),
    "catch": Stitch(
        "Catch stitch", "Each small stitch points back, above and below by turns, so that the threads cross", _HEM,
        places((-0.15, -0.5), (1.15, 0.5), (0.85, 0.5), (2.15, -0.5)), F(2), ("cloth", "hem"),
        F(1, 2), leftwards=False,
    ),
    "hemstitch": Stitch(
        "Hemstitch", "Twice behind the same threads; the second time out through the edge of the fold", _DRAWN,
        places((0, 0.25), (0, -0.3), (1, -0.3), (0, -0.6)), F(1), ("threads", "hem"), F(3, 2),
        _BUNDLE,
    ),
    "over-edge": Stitch(
        "Overcasting by hand", "Over the raw edge and up through the cloth again, each slant alike", _EDGE,
        places((0, 0.5), (0.6, -0.1)), F(1), ("cloth",), F(1),
    ),
    "buttonhole": Stitch(
        "Buttonhole stitch", "Each stitch comes out at the edge through the loop of its own thread", _EDGE,
        (*places((0, -0.08)), held(1, -0.08), *places((1, 0.8))), F(1), ("cloth",), F(1),
        {"cm": "4 mm", "in": "3/16 in"}, leftwards=False,
    ),
    "starting": Stitch(
        "Starting without a knot", "Leave a short end, and go twice over the first stitch", _FLAT,
        places((2, 0), (3, 0)), F(2), ("cloth",), F(9, 4), _SHORT,
        begin=places((1, 0.1), (0, 0.1), (1, -0.1), (0, -0.1)),
    ),
    "fastening": Stitch(
        "Fastening off", "Go twice over the last stitch, then cut the thread", _FLAT,
        places((0, 0), (1, 0)), F(2), ("cloth",), F(5, 4), _SHORT,
        end=places((0, 0.12), (1, 0.12), (0, -0.12), (1, -0.12)),
    ),
}  # fmt: skip
