"""Where two jobs differ, entry by entry, in words a maker can compare."""

from typing import Any

from calculators.catalogue import catalogue
from calculators.documents.house_method.difference import Difference
from calculators.documents.house_method.difference import differences as method_differences
from calculators.documents.job.format import FIGURES, MEASURED
from calculators.documents.versions import Document

THE_HANDBOOKS = "the handbook’s own"
_LABELS = {
    "name": "Name",
    "archived": "Among the finished jobs",
    "cloth": "Cloth",
    "notes": "Notes",
    **{name: f"{name.capitalize()}, your own figure" for name in FIGURES},
}


def differences(one: Document, other: Document) -> list[Difference]:
    """Every entry in which two jobs differ, in the order of the work."""
    here, there = leaves(one), leaves(other)
    paths = [*here, *(path for path in there if path not in here)]
    return [
        Difference(path, label(path), shown(here.get(path)), shown(there.get(path)))
        for path in paths
        if here.get(path) != there.get(path)
    ] + _of_methods(one, other)


def leaves(job: Document) -> dict[str, Any]:
    """Every single entry of a job by its path; lines that were measured are numbered, the method is left out."""
    found: dict[str, Any] = {name: job[name] for name in ("name", "archived", "cloth") if name in job}
    for calculator, texts in _in_order(job.get("typed", {})):
        found |= {f"typed.{calculator}.{field}": text for field, text in texts.items()}
    found |= {f"ticks.{step}": done for step, done in job.get("ticks", {}).items()}
    found |= {f"measured.{number}": row for number, row in enumerate(job.get("measured", []))}
    return found | {name: job[name] for name in ("notes", *FIGURES) if name in job}


def label(path: str) -> str:
    """What an entry is called."""
    place, *rest = path.split(".")
    if place == "typed":
        calculator = catalogue().get(rest[0])
        field = next((each for each in calculator.fields if each.name == rest[1]), None) if calculator else None
        return f"{calculator.title if calculator else rest[0]}: {field.label if field else rest[1].replace('_', ' ')}"
    if place == "ticks":
        return f"Ticked: {rest[0].replace('-', ' ').replace('_', ' ')}"
    return f"Measured, line {int(rest[0]) + 1}" if place == "measured" else _LABELS[path]


def shown(entry: Any) -> str:
    """An entry in words, empty where there is none."""
    if isinstance(entry, dict):
        return ", ".join(f"{name.replace('_', ' ')} {entry[name]}" for name in MEASURED if name in entry)
    if isinstance(entry, list):
        return "bundles " + ", ".join(map(str, entry))
    return "yes" if entry is True else "" if entry is None else str(entry)


def _of_methods(one: Document, other: Document) -> list[Difference]:
    mine, theirs = one.get("method"), other.get("method")
    if mine == theirs:
        return []
    names = [each["name"] if each else THE_HANDBOOKS for each in (mine, theirs)]
    if mine and theirs and mine.get("id") == theirs.get("id"):
        return [
            Difference("method", f"House method: {each.label}", each.one, each.other)
            for each in method_differences(mine, theirs)
        ]
    return [Difference("method", "House method", *names)]


def _in_order(typed: dict[str, Any]) -> list[tuple[str, Any]]:
    order = list(catalogue())
    return sorted(typed.items(), key=lambda item: order.index(item[0]) if item[0] in order else len(order))
