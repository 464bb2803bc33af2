"""The format of a job, explained entry by entry from its own schema."""

import json
import xml.etree.ElementTree as ET
from collections.abc import Mapping

from calculators.documents.job.format import (
    FORMAT,
    LONGEST_NAME,
    LONGEST_NOTE,
    LONGEST_NOTES,
    LONGEST_TYPED,
    MEASURED,
    MOST_MEASURED,
    VERSION,
    schema,
)
from calculators.faces.page.markup import element
from calculators.faces.page.table import row_of_name, table

EXAMPLE = {
    "format": FORMAT,
    "version": VERSION,
    "name": "Napkins in sage linen",
    "walk": "batch",
    "typed": {
        "wash-test": {"cloth_width": "142 cm"},
        "pieces-from-cloth": {"piece_width": "46 cm", "piece_length": "46 cm"},
    },
    "ticks": {"press": 12, "hem": [1, 2]},
    "measured": [
        {
            "piece": "first of bundle 1",
            "width": "40.2 cm",
            "length": "40 cm",
            "diagonal_1": "56.7 cm",
            "diagonal_2": "56.5 cm",
        }
    ],
    "time": "about 4 hours with pressing",
}


def job_format() -> ET.Element:
    """What may stand in a job, with an example."""
    written = json.dumps(EXAMPLE, ensure_ascii=False, indent=2)
    lengths = (
        f"A name has at most {LONGEST_NAME} characters, a blank {LONGEST_TYPED:,}, a figure or a note beside a piece "
        f"{LONGEST_NOTE}, the notes {LONGEST_NOTES:,}; "
        f"{MOST_MEASURED} lines may be measured."
    )
    return element(
        "div", {"class": "reference"},
        element("pre", None, element("code", None, written)),
        element("p", None, lengths),
        _table("Entries of a job",
            {name: part.get("description", "always the same") for name, part in schema()["properties"].items()}),
        _table("Entries of each line under measured", MEASURED),
    )  # fmt: skip


def _table(caption: str, meanings: Mapping[str, str]) -> ET.Element:
    rows = (row_of_name(name, [f"{meaning[0].upper()}{meaning[1:]}."]) for name, meaning in meanings.items())
    return table(caption, ("Name", "Meaning"), rows)
