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
    worked, why = _worked_out(batch), {"cost": _of_less_cloth(batch)}
    return tuple(
        Setting(f"sum-{name}", LABELS[name], own[name], OWN) if own.get(name) else Setting(f"sum-{name}", LABELS[name], worked.get(name, ""), why.get(name, "") if name in worked else "")
        for name in FIGURES
    )


def _worked_out(batch: Batch) -> dict[str, str]:
    if SUMS not in batch.values:
        return {}
    values, kinds = batch.values[SUMS], batch.stops[SUMS].calculator.kinds
    told: dict[str, Phrase] = {"thread": say("{thread}, {spools:reel|reels}", **values), "time": say("{time}, {time_piece} a piece", **values)}
    if values["total"] is not None:
        told["cost"] = say("{total}, {each} a piece", **values)
    return {name: phrase.filled(batch.ruler, kinds) for name, phrase in told.items()}


def _of_less_cloth(batch: Batch) -> str:
    """That the cloth which is paid for gives fewer pieces than the cost is for; empty where it gives enough."""
    if SUMS not in batch.values or not batch(SUMS, "cost_cloth") or batch(SUMS, "pieces") <= batch("pieces-from-cloth", "count"):
        return ""
    return f"For {batch(SUMS, 'pieces'):,} pieces, with the cloth for {batch('pieces-from-cloth', 'count'):,}."
