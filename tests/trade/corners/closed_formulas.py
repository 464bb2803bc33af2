"""A mitre's measures by trigonometry alone, for the folding engine to be checked against."""

from math import cos, hypot, radians, sin
from types import SimpleNamespace


def closed_marks(hem_1, hem_2, angle, turn, seam_allowance, turn_2) -> SimpleNamespace:
    """The measures of a mitre [mm], under the names of MitreMarks; all in floats.

    Source: derived by hand (design/corners.md). The creases run parallel to the edges, hem 1 and hem 2 inside, so the
    foot of
    their crossing on edge 1 lies (hem 2 + hem 1·cos θ) ÷ sin θ from the corner. Folding a flap back keeps the place
    along the
    edge, so a mark lies twice as far out as the foot. The mitre line leaves the edge at a slope of hem : foot, which
    gives
    the raw marks, the corner's distance from the line, and where a parallel to it meets the edge.
    """
    hem_1, hem_2, turn, seam_allowance, turn_2 = map(float, (hem_1, hem_2, turn, seam_allowance, turn_2))
    sine, cosine = (1.0, 0.0) if angle == 90 else (sin(radians(angle)), cos(radians(angle)))
    foot_1, foot_2 = (hem_2 + hem_1 * cosine) / sine, (hem_1 + hem_2 * cosine) / sine
    half = hypot(foot_1, hem_1)
    return SimpleNamespace(
        foot_1=foot_1,
        foot_2=foot_2,
        mark_1=2 * foot_1,
        mark_2=2 * foot_2,
        half_line=half,
        to_line_1=2 * foot_1 * hem_1 / half,
        to_line_2=2 * foot_2 * hem_2 / half,
        raw_mark_1=2 * foot_1 + foot_1 * turn / hem_1 + (turn_2 + turn * cosine) / sine,
        raw_mark_2=2 * foot_2 + foot_2 * turn_2 / hem_2 + (turn + turn_2 * cosine) / sine,
        trim_1=2 * foot_1 - seam_allowance * half / hem_1,
        trim_2=2 * foot_2 - seam_allowance * half / hem_2,
    )
