"""What a batch takes and costs, as its ticket tells it: worked out by the walk, or the maker's own figure in its place."""

from collections.abc import Mapping

from calculators.job.format import FIGURES
from calculators.phrase import Phrase, say
from calculators.ticket.batch import SUMS, Batch
from calculators.ticket.settings import Setting

LABELS = {"thread": "Thread for the batch", "time": "Time for the batch", "cost": "Cost of the batch"}
OWN = "Your own figure."


def sums(batch: Batch, own: Mapping[str, str]) -> tuple[Setting, ...]:
    """Thread, time and cost of a batch; a text is empty where neither the walk nor the maker has a figure.

    own: the maker's own figures by their names in a job.
    """
    worked = _worked_out(batch)
    return tuple(Setting(f"sum-{name}", LABELS[name], own[name], OWN) if own.get(name) else Setting(f"sum-{name}", LABELS[name], worked.get(name, "")) for name in FIGURES)


def _worked_out(batch: Batch) -> dict[str, str]:
    if SUMS not in batch.values:
        return {}
    values, kinds = batch.values[SUMS], batch.stops[SUMS].calculator.kinds
    told: dict[str, Phrase] = {"thread": say("{thread}, {spools:spool|spools}", **values), "time": say("{time}, {time_piece} a piece", **values)}
    if values["total"] is not None:
        told["cost"] = say("{total}, {each} a piece", **values)
    return {name: phrase.filled(batch.ruler, kinds) for name, phrase in told.items()}
