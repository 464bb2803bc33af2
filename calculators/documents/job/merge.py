"""Two changes of one job that did not know of each other, brought together so that neither is lost in silence."""

from typing import Any

from calculators.documents.house_method.difference import Difference
from calculators.documents.job.difference import label, leaves, shown
from calculators.documents.job.format import normal
from calculators.documents.versions import Document


def merged(base: Document, mine: Document, theirs: Document) -> tuple[Document, list[Difference]]:
    """Their job with my changes on top, and the entries that both changed differently: there mine stands.

    Bundles ticked on both sides are all ticked; lines measured on both sides all stay. base: the job that both started
    from.
    """
    start, here, there = (_single(each) for each in (base, mine, theirs))
    made, both = dict(there), []
    for path in dict.fromkeys([*start, *here]):
        if here.get(path) == start.get(path):
            continue
        if isinstance(there.get(path), list) and isinstance(here.get(path), list):
            made[path] = _bundles(start.get(path), here[path], there[path])
            continue
        if there.get(path) not in (start.get(path), here.get(path)):
            both.append(Difference(path, _label(path), _shown(there.get(path)), _shown(here.get(path))))
        made[path] = here.get(path)
    job = _whole(theirs, made)
    job["measured"] = _rows(base.get("measured", []), mine.get("measured", []), theirs.get("measured", []))
    return normal(job), both


def _single(job: Document) -> dict[str, Any]:
    """Every entry that is brought together by itself."""
    found = {path: each for path, each in leaves(job).items() if not path.startswith("measured.")}
    return found | {name: job[name] for name in ("method", "read_on") if name in job}


def _whole(job: Document, entries: dict[str, Any]) -> Document:
    made: Document = {name: job[name] for name in ("format", "version", "id", "walk") if name in job}
    for path, each in entries.items():
        if each is None:
            continue
        place, *rest = path.split(".")
        at = made
        for step in [place, *rest][:-1]:
            at = at.setdefault(step, {})
        at[[place, *rest][-1]] = each
    return made


def _bundles(base: Any, mine: list[int], theirs: list[int]) -> list[int]:
    was = {*base} if isinstance(base, list) else set()
    return sorted(({*theirs} - (was - {*mine})) | ({*mine} - was))


def _rows(base: list[Document], mine: list[Document], theirs: list[Document]) -> list[Document]:
    """Their lines, with those I took out gone and those I wrote added, each in the place of the one it replaced."""
    made = [*theirs]
    for number, row in enumerate(mine):
        if row in base:
            continue
        replaced = base[number] if number < len(base) and base[number] not in mine else None
        if replaced in made:
            made[made.index(replaced)] = row
        elif row not in theirs:
            made.append(row)
    return [row for row in made if row in mine or row not in base]


def _label(path: str) -> str:
    return {"method": "House method", "read_on": "Ruler"}.get(path) or label(path)


def _shown(entry: Any) -> str:
    return entry["name"] if isinstance(entry, dict) else shown(entry)
