"""What articles ask alike: hems, seams and sizes, each begun with the house's number."""

from dataclasses import replace
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Field, invalid_input
from calculators.asking.house_measures import ALLOWANCE, HEM, TURN
from calculators.asking.house_method import HouseMethod, Written
from calculators.asking.seams import SEAMS, allowance_of
from calculators.trade.articles.operation import SeamKind
from calculators.trade.sections.edge import EdgeMeasures
from calculators.trade.sections.edges import EDGES
from calculators.values.kinds import Choice, Length
from calculators.values.measure import Ruler

SIZE = Length(least=Fraction(20), most=Fraction(20_000))
PART_OF_SIZE = Length(most=Fraction(3_000))
_ROWS = {"plain": 1, "felled": 2, "french": 2, "zip": 1}

TURN_FIELD = Field("turn", "First turn", TURN, "The first fold of the raw edge; 0 for a single turned hem.", "turn")
HEM_FIELD = Field("hem", "Hem depth", HEM, "The visible border.", "hem")


def turn_and_hem(kind: str) -> tuple[Field, Field]:
    """The two blanks of an article's own hem, begun as the house hems this kind of piece; what is written there goes
    for articles of this kind, and changes no other piece in hand."""
    return (
        _begun_as(kind, TURN_FIELD, {"cm": "1 cm", "in": "3/8 in"}),
        _begun_as(kind, HEM_FIELD, {"cm": "2 cm", "in": "3/4 in"}),
    )


def _begun_as(kind: str, field: Field, usual: Written) -> Field:
    def as_the_house_does(method: HouseMethod, ruler: Ruler) -> str:
        has_it = kind.casefold() in {each.casefold() for each in method.kinds_of_piece}
        return (method.for_kind(kind) if has_it else method).measure(field.name, ruler)

    own = f"{kind.lower().replace(' ', '_')}_{field.name}"
    return replace(field, default=None, fixed=usual, from_method=as_the_house_does, known_as=(own,))


def size(name: str, label: str, help: str, cm: str, inches: str, known_as: tuple[str, ...] | None = ()) -> Field:
    """A blank for an outer measure."""
    return Field(name, label, SIZE, help, fixed={"cm": cm, "in": inches}, known_as=known_as)


def part_of_size(
    name: str, label: str, help: str, cm: str, inches: str, known_as: tuple[str, ...] | None = ()
) -> Field:
    """A blank for a measure that may be 0."""
    return Field(name, label, PART_OF_SIZE, help, fixed={"cm": cm, "in": inches}, known_as=known_as)


def hem_of(name: str, label: str, help: str, cm: str, inches: str) -> Field:
    """A blank for a hem that is not the border of the piece in hand."""
    return Field(name, label, HEM, help, fixed={"cm": cm, "in": inches}, known_as=())


def seam_of(usual: str, *kinds: str) -> tuple[Field, Field]:
    """The two blanks of the article's seams: which kind, and what it takes up at each edge, as the house does it."""
    seam = Field(
        "seam",
        "Seams",
        Choice(options={kind: SEAMS[kind] for kind in kinds}),
        "How the parts are joined; the allowance follows.",
        fixed=usual,
        known_as=(),
    )
    return seam, Field(
        "seam_allowance",
        "Seam allowance",
        ALLOWANCE,
        "Taken up at each edge of a seam; for a French seam both its rows together.",
        fixed={"cm": "1.5 cm", "in": "5/8 in"},
        from_method=_allowance,
        beside=(seam,),
        known_as=(),
    )


def _allowance(method: HouseMethod, ruler: Ruler, seam: str) -> str:
    return allowance_of(method, ruler, seam)


def seam_kind(given: SimpleNamespace) -> SeamKind:
    """The kind of seam that was chosen, with its allowance."""
    name, allowance, rows = SEAMS[given.seam], given.seam_allowance, _ROWS[given.seam]
    if given.seam != "french":
        return SeamKind(name, allowance, rows, given.seam)
    first, *_ = EDGES["french"].steps(EdgeMeasures(allowance, allowance, allowance, allowance))
    return SeamKind(
        name,
        allowance,
        rows,
        given.seam,
        lie="wrong sides together",
        where="{first} from the edges",
        how="Then turn it, right sides together, and stitch again {second} from the fold.",
        lengths=first.lengths,
    )


def refuse_unless(holds: bool, field: str, sentence: str, **values: object) -> None:
    """Raise InvalidInput with a sentence at a field unless something holds."""
    if not holds:
        raise invalid_input(field, sentence, **values)
