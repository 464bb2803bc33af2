"""The line styles of every drawing and the words for them in its key.

Edges and dimensions follow ISO 128: wide for what is seen, narrow for what is measured. Folds do not: ISO 128 keeps the
dash-dot line for centres and
symmetry, and here it is the convention of paper folding. Stitches are the short dashes of ASME Y14.2.
"""

EDGE = "edge"
RAW_EDGE = "raw-edge"
FOLD = "fold"
STITCH = "stitch"
LANDS = "lands"
CUT = "cut"
MARK, PENCIL = "mark", "pencil"
BREAK = "break"
PATCH, THICKEST = "patch", "thickest"
REMNANT = "remnant"
REPEAT, STRIP = "repeat", "strip-bar"
FLAW = "flaw"
WASTE = "waste"
CLOTH_RIGHT, CLOTH_WRONG = "cloth-right", "cloth-wrong"
OTHER_RIGHT, OTHER_WRONG = "other-right", "other-wrong"
LAYER_WRONG, SEWN_THROUGH = "layer-wrong", "sewn-through"
THREAD_OVER, THREAD_UNDER, THREAD_LOWER = "thread-over", "thread-under", "thread-lower"
AT_WORK = "at-work"

WORDS = {
    EDGE: "edge",
    RAW_EDGE: "raw edge, turned in",
    LANDS: "inner folded edge",
    FOLD: "fold",
    STITCH: "stitch",
    CUT: "✂ cut",
    MARK: "mark",
    PENCIL: "pencil line",
    BREAK: "cloth runs on",
    PATCH: "number of layers changes",
    THICKEST: "thickest place",
    REMNANT: "left over",
    REPEAT: "repeat starts",
    STRIP: "strip and its number",
    FLAW: "flaw",
    WASTE: "waste",
    CLOTH_RIGHT: "right side",
    CLOTH_WRONG: "wrong side",
    OTHER_RIGHT: "other cloth, right side",
    OTHER_WRONG: "other cloth, wrong side",
    LAYER_WRONG: "wrong side of a layer",
    THREAD_OVER: "thread over the cloth",
    THREAD_UNDER: "thread under the cloth",
    THREAD_LOWER: "lower thread",
    SEWN_THROUGH: "row of stitches",
    AT_WORK: "worked at now",
}
HATCHES = {
    REMNANT: "M0 6 L6 0",
    FLAW: "M0 0 L6 6 M6 0 L0 6",
    WASTE: "M1 1.5 H4 M2 4.5 H5",
    CLOTH_WRONG: "M0 3 H6 M3 0 V6",
    OTHER_RIGHT: "M2.4 3 H3.6",
    OTHER_WRONG: "M0 1.5 H6 M0 4.5 H6",
}
KINDS = {
    "kind-1": "",
    "kind-2": "M2 2.5 H3 M7 7.5 H8",
    "kind-3": "M2.5 0 V10 M7.5 0 V10",
    "kind-4": "M2.5 1 V4 M1 2.5 H4 M7.5 6 V9 M6 7.5 H9",
    "kind-5": "M0 5 H10",
    "kind-6": "M5 0 V10 M0 5 H10",
}
"""Kinds of piece in a lay plan, each with a hatch of its own on a field of ten drawing units, told apart without
colour."""
AREAS = {REMNANT, FLAW, WASTE, CLOTH_RIGHT, CLOTH_WRONG, OTHER_RIGHT, OTHER_WRONG, *KINDS}
KEY_ROOM = 146  # drawing units for the words beside a sample in the key


def kind(number: int) -> str:
    """The style of a kind of piece, by its number in the order; beyond the last they begin again, and the letters
    tell."""
    return list(KINDS)[number % len(KINDS)]
