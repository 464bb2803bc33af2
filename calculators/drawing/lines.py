"""The line styles of every drawing and the words for them in its key (after ISO 128: edge solid, fold dash-dot)."""

EDGE = "edge"
RAW_EDGE = "raw-edge"
FOLD = "fold"
STITCH = "stitch"
CUT = "cut"
MARK = "mark"
REMNANT = "remnant"

WORDS = {
    EDGE: "edge",
    RAW_EDGE: "raw edge, turned in",
    FOLD: "fold",
    STITCH: "stitch",
    CUT: "✂ cut",
    MARK: "mark",
    REMNANT: "left over",
}
AREAS = {REMNANT}
