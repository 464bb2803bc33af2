"""The house method: the measurements and habits one workroom has settled on, which fill every field left alone.

A method is plain data (docs: reference/house-method). Every measure is a text as the maker wrote it, or one text for a
centimetre ruler and one for an inch ruler; beside it may stand why.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any

from calculators.values.measure import Ruler, quote

FORMAT, VERSION = "house method", 2
RULER_STEPS = {"cm": ("1/10", "1/2"), "mm": ("1", "1/2"), "in": ("1/2", "1/4", "1/8", "1/16", "1/32")}

SETTLED_STEPS = (
    "cm",
    "in",
)  # a house settles these two divisions; a millimetre ruler divides as the centimetre one does

Written = str | Mapping[str, str]


@dataclass(frozen=True)
class HouseMethod:
    """One workroom's settled measures.

    rulers: the ruler used for each unit, "cm", "mm" and "in"; unit: the one the house reads by habit.
    measures: name → text, or → {"cm": text, "in": text} where a round figure differs between rulers.
    why: path of an entry, such as ``measures.turn`` → why the house does it so.
    tables: name → rows, each column name → as a measure.
    texts: name of a section, or ``opening`` → the studio's own words, in Markdown.
    own: paths of what this method says itself; everything else comes from the site's.
    of_kind: name of a measure → the kind of piece it is meant for, where it is not the house's general one.
    follows: path of an entry → the side, "cm" or "in", whose figure only follows the one written for the other ruler.
    clashing: path of an entry whose two figures are two measures → both, the one for the centimetre ruler first.
    because: name of a measure worked out from other entries → how, in words.
    exactly: name of a measure → what is read where its text is rounded to the ruler.
    kind: the kind of piece that all of it is meant for; empty for none.
    is_example: whether this is the made-up workroom's, which no studio settled.
    settled_below: paths that the studio settled whose handbook fills what this method leaves out.
    """

    name: str
    unit: str
    rulers: Mapping[str, Ruler]
    measures: Mapping[str, Written]
    why: Mapping[str, str] = field(default_factory=dict)
    tables: Mapping[str, tuple[Mapping[str, Written], ...]] = field(default_factory=dict)
    texts: Mapping[str, str] = field(default_factory=dict)
    own: frozenset[str] = frozenset()
    of_kind: Mapping[str, str] = field(default_factory=dict)
    follows: Mapping[str, str] = field(default_factory=dict)
    clashing: Mapping[str, tuple[str, str]] = field(default_factory=dict)
    because: Mapping[str, str] = field(default_factory=dict)
    exactly: Mapping[str, Written] = field(default_factory=dict)
    kind: str = ""
    is_example: bool = False
    settled_below: frozenset[str] = frozenset()

    @property
    def settled(self) -> frozenset[str]:
        """Paths of what some studio settled, the reader's or the one whose handbook this is: all but the example's."""
        return frozenset() if self.is_example else self.own | self.settled_below

    def offers(self, wanted: str) -> bool:
        """Whether there is such a ruler; named as for `ruler`."""
        unit, _, step = (wanted or self.unit).partition(" ")
        return unit in self.rulers and step in ("", *RULER_STEPS[unit])

    def ruler(self, wanted: str = "") -> Ruler:
        """The ruler asked for: "" is the one the house reads by habit, "in" the house's inch ruler, "in 1/32" a finer
        one.

        Raises ValueError with a sentence when there is no such ruler.
        """
        if not self.offers(wanted):
            known = ", ".join(f"{name} {step}" for name, steps in RULER_STEPS.items() for step in steps)
            raise ValueError(f"There is no ruler “{quote(wanted)}” here. There are: {known}.")
        unit, _, step = (wanted or self.unit).partition(" ")
        return replace(self.rulers[unit], step=Fraction(step)) if step else self.rulers[unit]

    def measure(self, name: str, ruler: Ruler) -> str:
        """The house's text for a measure, in round figures of the ruler in hand."""
        return on_ruler(self.measures[name], ruler)

    @property
    def kinds_of_piece(self) -> tuple[str, ...]:
        """What the house calls its kinds of piece."""
        return tuple(str(line["piece"]) for line in self.tables.get("pieces", ()) if line.get("piece"))

    @property
    def measures_by_kind(self) -> frozenset[str]:
        """Names of the measures that some kind of piece has for itself."""
        return frozenset(name for line in self.tables.get("pieces", ()) for name in line if name in self.measures)

    @property
    def steps_of_its_kind(self) -> tuple[Mapping[str, Written], ...]:
        """The lines of the table of steps that count for the kind of piece the method is meant for: those for every
        piece, and those that name it."""
        kind = self.kind.casefold()
        return tuple(
            line
            for line in self.tables.get("steps", ())
            if not (named := kinds_named(line)) or kind in {each.casefold() for each in named}
        )

    @property
    def steps_of_other_kinds(self) -> tuple[Mapping[str, Written], ...]:
        """The other lines of the table of steps, which name only other kinds."""
        counted = self.steps_of_its_kind
        return tuple(line for line in self.tables.get("steps", ()) if line not in counted)

    def cloth_line(self, cloth: str) -> Mapping[str, Written]:
        """The line of a cloth in the house's list, empty where it has none of that name."""
        return next(
            (
                line
                for line in self.tables.get("cloths", ())
                if str(line.get("cloth", "")).casefold() == cloth.casefold()
            ),
            {},
        )

    def for_kind(self, kind: str) -> "HouseMethod":
        """The method as it is for one kind of piece: what its line in the table of pieces holds stands before the
        general measure.

        Raises KeyError when the house has no such kind.
        """
        lines = enumerate(self.tables.get("pieces", ()))
        number, line = {str(line.get("piece", "")).lower(): (number, line) for number, line in lines}[
            kind.strip().lower()
        ]
        found = {name: written for name, written in line.items() if name in self.measures}
        clashing = {
            path: figures for path, figures in self.clashing.items() if path.removeprefix("measures.") not in found
        }
        clashing |= {
            f"measures.{name}": self.clashing[path]
            for name in found
            if (path := f"tables.pieces.{number}.{name}") in self.clashing
        }
        return replace(
            self,
            measures={**self.measures, **found},
            of_kind=dict.fromkeys(found, str(line["piece"])),
            clashing=clashing,
            kind=str(line["piece"]),
        )


def kinds_named(step: Mapping[str, Written]) -> tuple[str, ...]:
    """The kinds of piece that a line of the table of steps names; none where it counts for every piece."""
    return tuple(each.strip() for each in str(step.get("kinds", "")).split(",") if each.strip())


def on_ruler(written: Written, ruler: Ruler) -> str:
    """The text of a measure for the ruler in hand."""
    return written if isinstance(written, str) else written["in" if ruler.unit == "in" else "cm"]


def read_house_method(document: Mapping[str, Any], under: HouseMethod | None = None) -> HouseMethod:
    """The house method that a document of the format describes.

    under: the method that fills what the document leaves out; without one the document must be complete.
    Raises: ValueError with a sentence where there is none and the document says nothing of its name or its rulers.
    """
    ruler = document.get("ruler", {})
    settled = {"unit", *(f"{unit}_step" for unit in SETTLED_STEPS)}
    if not under and (lacking := sorted({"name"} - document.keys()) + sorted(settled - ruler.keys())):
        raise ValueError(incomplete(lacking))
    money = money_of(document) or (under.rulers["cm"].money if under else "")
    rulers = {unit: Ruler(unit, _step(ruler, unit, under), money) for unit in SETTLED_STEPS}
    rulers["mm"] = Ruler("mm", rulers["cm"].step_mm, money)
    own_measures = document.get("measures", {})
    own_tables = {name: tuple(rows) for name, rows in document.get("tables", {}).items()}
    why = {f"measures.{name}": each["why"] for name, each in own_measures.items() if "why" in parts_of(each)}
    measures = {name: value_of(each) for name, each in own_measures.items() if value_of(each)}
    for path, reason in (under.why if under else {}).items():
        if path.removeprefix("measures.") not in own_measures:
            why[path] = reason
    own = {
        "name",
        *(f"ruler.{name}" for name in ruler),
        *(f"measures.{name}" for name in measures),
        *(f"tables.{name}" for name in own_tables),
    }
    return HouseMethod(
        document["name"],
        ruler["unit"] if under is None else ruler.get("unit") or under.unit,
        rulers,
        {**(under.measures if under else {}), **measures},
        why,
        {**(under.tables if under else {}), **own_tables},
        document.get("texts", {}),
        frozenset(own),
        is_example=under is None,
        settled_below=under.settled if under else frozenset(),
    )


def incomplete(lacking: Iterable[str]) -> str:
    """What is told of a method that should fill whatever others leave out, and itself leaves something out."""
    return (
        f"The packaged house method leaves out {', '.join(lacking)}. It fills whatever a studio does not settle, so it "
        "must say everything; a method saved from a browser is laid over it by scripts/serve.py --house FILE."
    )


def money_of(document: Mapping[str, Any]) -> str:
    """The sign or name of money that a document settles itself; empty where it settles none."""
    written = value_of(document.get("measures", {}).get("money", ""))
    return (written if isinstance(written, str) else written.get("cm", "")).strip()


def parts_of(written: Any) -> Mapping[str, Any]:
    """What stands in an entry that is no plain text, by name."""
    return {} if isinstance(written, str) else written


def value_of(written: Any) -> Written:
    """The measure in an entry that may have its reason beside it; empty where there is only the reason."""
    parts = parts_of(written)
    value: Written = parts.get("value", "") if "value" in parts or "why" in parts else written
    return value


def _step(ruler: Mapping[str, str], unit: str, under: HouseMethod | None) -> Fraction:
    """The smallest division of a ruler as a document settles it, or else the method under it."""
    if under and not ruler.get(f"{unit}_step"):
        return under.rulers[unit].step
    return Fraction(ruler[f"{unit}_step"])
