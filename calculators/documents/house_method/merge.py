"""Two changes of one method that did not know of each other, brought together so that neither is lost in silence."""

from calculators.documents.house_method.difference import Difference, differences
from calculators.documents.house_method.format import normal
from calculators.documents.versions import Document


def merged(base: Document, mine: Document, theirs: Document) -> tuple[Document, list[Difference]]:
    """Their document with my changes on top, and the entries that both changed differently: there mine stands.

    base: the document that both started from.
    """
    changed_here = {each.path for each in differences(base, mine)}
    both = [
        each
        for each in differences(theirs, mine)
        if each.path in changed_here & {other.path for other in differences(base, theirs)}
    ]
    made = theirs
    for path in sorted(changed_here):
        made = _with(made, path, mine)
    return normal(made), both


def _with(document: Document, path: str, source: Document) -> Document:
    """The document with the entry at a path as the source has it."""
    place, *rest = path.split(".")
    if place == "why":
        place, rest = rest[0], rest[1:]
    if not rest:
        return {**document, place: source[place]}
    held = {**document.get(place, {})}
    held.pop(rest[0], None)
    if rest[0] in source.get(place, {}):
        held[rest[0]] = source[place][rest[0]]
    return {**document, place: held}
