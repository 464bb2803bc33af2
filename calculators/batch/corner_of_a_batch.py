"""The corner of a batch: asked for as its mitre marks are, then folded step by step on its ticket."""

from collections.abc import Mapping
from dataclasses import replace
from types import SimpleNamespace
from typing import Any

from calculators.asking.answering import Asking, answer, read
from calculators.asking.corner_questions import check_before_folding, measures
from calculators.asking.declaration import InvalidInput
from calculators.catalogue import calculator_named
from calculators.trade.corners.steps import CornerStep
from calculators.values.phrase import Phrase, say

FOLDED = "corner-steps"
_SHARED = ("hem_1", "hem_2", "angle", "turn", "seam_allowance")


def check_foldable(values: Mapping[str, Any], asking: Asking) -> None:
    """Refuse a corner that has its marks and cannot be folded, before anything is folded.

    values: of mitre-marks, the fields that folding takes among them. asking: the circumstances they were asked in.
    Raises InvalidInput with one sentence for a field of mitre-marks.
    """
    given = SimpleNamespace(**read(calculator_named(FOLDED), _as_folded(values, asking)))
    try:
        check_before_folding(given.way, measures(given))
    except InvalidInput as error:
        raise InvalidInput(
            {name: each for name, each in error.sentences.items() if name in _SHARED} or _misses(given)
        ) from None


def _misses(given: SimpleNamespace) -> dict[str, Phrase]:
    """The edge stitch is the house's: what can be mended in the batch is the hem."""
    narrow = min(("hem_1", "hem_2"), key=lambda name: getattr(given, name))
    sentence = (
        "The house’s edge stitch, {edge_stitch:length} from the inner edge, would miss a hem of "
        "{hem:length}. Make "
        "the hem deeper, or the edge stitch of the house method smaller."
    )
    return {narrow: say(sentence, edge_stitch=given.edge_stitch, hem=getattr(given, narrow))}


def folded_steps(values: Mapping[str, Any], asking: Asking) -> list[CornerStep]:
    """The steps of the corner. values, asking: as for check_foldable, which has let them through."""
    steps: list[CornerStep] = answer(calculator_named(FOLDED), _as_folded(values, asking)).drawn_from[0]
    return steps


def _as_folded(values: Mapping[str, Any], asking: Asking) -> Asking:
    return replace(asking, typed={}, taken={name: values[name] for name in _SHARED})
