"""Small marks in the text of a page, and the one list at its foot that they lead to: where a value comes from."""

import xml.etree.ElementTree as ET
from dataclasses import dataclass, field
from string import ascii_lowercase

from calculators.faces.page.markup import NOT_SEARCHED, Content, element, fold


@dataclass
class PageNotes:
    """The notes of one page, numbered as they come; what is noted twice has one note."""

    numbers: dict[str, int] = field(default_factory=dict)
    marked: dict[int, int] = field(default_factory=dict)
    told: dict[int, tuple[Content, ...]] = field(default_factory=dict)

    def mark(self, name: str, *note: Content) -> ET.Element:
        """A mark that leads to a note. name: what it says in a few words, which is the mark's own name. note: what
        stands at the foot."""
        number = self.numbers.setdefault(name, len(self.numbers) + 1)
        self.told.setdefault(number, note)
        self.marked[number] = self.marked.get(number, 0) + 1
        link = element(
            "a",
            {
                "href": f"#note-{number}",
                "id": _place(number, self.marked[number]),
                "role": "doc-noteref",
                "aria-label": f"Note {number}: {name}",
                "title": name,
            },
            str(number),
        )
        return element("sup", {"class": "noted", **NOT_SEARCHED}, link)

    def at_foot(self) -> ET.Element | None:
        """The notes, each with the ways back to where it is marked; None where nothing is."""
        if not self.told:
            return None
        listed = (
            element("li", {"id": f"note-{number}"}, *note, " ", *self._ways_back(number))
            for number, note in self.told.items()
        )
        return element(
            "section",
            {"class": "page-notes", "role": "doc-endnotes", "aria-label": "Notes", **NOT_SEARCHED},
            fold("", "Notes and sources", element("ol", None, *listed)),
        )

    def _ways_back(self, number: int) -> list[ET.Element]:
        count = self.marked[number]
        return [
            element(
                "a",
                {
                    "href": f"#{_place(number, at)}",
                    "class": "way-back",
                    "role": "doc-backlink",
                    "aria-label": f"Back to the text, note {number}"
                    + (f", place {at} of {count}" if count > 1 else ""),
                },
                "↑" if count == 1 else _letter(at),
            )
            for at in range(1, count + 1)
        ]


def _place(number: int, at: int) -> str:
    return f"noted-{number}-{at}"


def _letter(at: int) -> str:
    """a, b, … z, then numbers."""
    return ascii_lowercase[at - 1] if at <= len(ascii_lowercase) else str(at)
