"""The settings of a batch: what is set on the machine and what may be off, as the house method has them."""

from dataclasses import dataclass

from calculators.asking.house_method import on_ruler
from calculators.documents.house_method.sections import CLOTHS, entries
from calculators.ticket.batch import Batch


@dataclass(frozen=True)
class Setting:
    """One thing that is set for a batch. text: empty where the house has not settled it. why: the house's reason, if it
    gave one."""

    name: str
    label: str
    text: str
    why: str = ""


MACHINE = ("stitch_seam", "stitch_hem", "edge_stitch")
TOLERANCES = ("tolerance_cut", "tolerance_finished", "tolerance_square")


def machine_settings(batch: Batch) -> tuple[Setting, ...]:
    """Needle and thread for this cloth, stitch lengths and edge distance."""
    labels = {column.name: column.label for column in CLOTHS.columns}
    of_cloth = (
        Setting(name, labels[name], _of_cloth(batch, name), _of_cloth(batch, "why")) for name in ("needle", "thread")
    )
    return (*of_cloth, *(_settled(batch, name) for name in MACHINE))


def tolerances(batch: Batch) -> tuple[Setting, ...]:
    """How far off a measure may be."""
    return tuple(_settled(batch, name) for name in TOLERANCES)


def _of_cloth(batch: Batch, column: str) -> str:
    return on_ruler(batch.cloth_line.get(column, ""), batch.ruler)


def _settled(batch: Batch, name: str) -> Setting:
    method = batch.method
    return Setting(
        name, entries()[name].label, method.measure(name, batch.ruler), method.why.get(f"measures.{name}", "")
    )
