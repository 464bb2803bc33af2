"""What a batch takes and costs, as its ticket tells it: worked out by the walk, or the maker's own figure in its
place."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calculators.catalogue.thread_time_cost.messages import of_each, without_said
from calculators.documents.job.format import FIGURES
from calculators.ticket.batch import SUMS, Batch
from calculators.ticket.settings import Setting
from calculators.values.phrase import Phrase, say

LABELS = {"thread": "Thread for the batch", "time": "Time for the batch", "cost": "Cost of the batch"}
OWN = "Your own figure."


@dataclass(frozen=True)
class _Sum:
    """What can be made takes or costs; what all that is wanted does, where the cloth gives fewer; and what of the
    cloth is not in it, where it gives more."""

    made: Phrase
    whole: Phrase | None = None
    left: Phrase | None = None


def sums(batch: Batch, own: Mapping[str, str]) -> tuple[Setting, ...]:
    """Thread, time and cost of a batch; a text is empty where neither the walk nor the maker has a figure.

    own: the maker's own figures by their names in a job.
    """
    worked = _worked_out(batch)
    return tuple(
        Setting(f"sum-{name}", LABELS[name], own[name], OWN)
        if own.get(name)
        else Setting(f"sum-{name}", LABELS[name], *worked.get(name, ("", "")))
        for name in FIGURES
    )


def _worked_out(batch: Batch) -> dict[str, tuple[str, str]]:
    """Name of a figure → what stands for it, and a sentence beside it."""
    if SUMS not in batch.values:
        return {}
    kinds, told = batch.step_results[SUMS].calculator.kinds, _told(batch)
    lead, rest = _of_fewer(batch)
    return {
        name: (
            (f"{lead}{each.made.filled(batch.ruler, kinds)}",
                f"{rest}{each.whole.filled(batch.ruler, kinds)}." if each.whole else "")
            if lead else (each.made.filled(batch.ruler, kinds),
                each.left.filled(batch.ruler, kinds) if each.left else "")
        )
        for name, each in told.items()
    }  # fmt: skip


def _told(batch: Batch) -> dict[str, _Sum]:
    values = batch.values[SUMS]
    known = values["time_whole"] is not None
    waiting = "; plus {waiting} of waiting" if values["waiting"] else ""
    told = {
        "thread": _Sum(
            say("{thread}, {spools:reel|reels}", **values), say("{thread_whole}", **values) if known else None
        ),
        "time": _Sum(
            say(f"{{time}}{of_each(values['made'], 'time_piece')}{waiting}", **values),
            say("{time_whole}", **values) if known else None,
        ),
    }
    if values["total"] is not None:
        told["cost"] = _Sum(
            say(f"{{total}}{without_said(values)}{of_each(values['made'])}", **values),
            say("{total_whole}, {each_whole} a piece", **values) if known else None,
            _left(values),
        )
    return told


def _left(values: Mapping[str, Any]) -> Phrase | None:
    taken, bought = values["cloth_taken"], values["cloth_bought"]
    if taken >= bought:
        return None
    return say("With {taken:length} of the {bought:length} of cloth; the rest is left.", taken=taken, bought=bought)


def _of_fewer(batch: Batch) -> tuple[str, str]:
    """The words before what can be made, and before all that is wanted; both empty where the cloth gives enough."""
    values = batch.values[SUMS]
    if values["made"] >= values["pieces"]:
        return "", ""
    counts = {"wanted": values["pieces"], "made": values["made"]}
    lead = say("{wanted:count} wanted; this cloth gives {made:count}. Those {made:count}: ", **counts)
    more = say(
        "All {wanted:count}, with {cloth:length_up} of cloth: "
        if values["cloth_more"] is not None
        else "All {wanted:count}: ",
        cloth=values["cloth_bought"] + (values["cloth_more"] or 0),
        **counts,
    )
    return lead.filled(batch.ruler), more.filled(batch.ruler)
