"""Every formula says what goes in, in which unit, what comes out, when it refuses, and where it is from.

A formula is a public function or method of the rooms under `trade` (see test_floors) that takes or gives a measure,
exact or as a float. Its source is a key of the bibliography or a derivation: *derived* and from what, in a few words.
"""

import ast
import re
from collections.abc import Iterator

import pytest

from calculators.asking.bibliography import bibliography
from tests.test_floors import our_folders, our_sources, room_of

NUMBERS = {"Fraction", "Measure", "float"}
FEWEST = 3  # words that say what a formula is derived from
_UNIT = re.compile(r"\[(mm|mm²|degrees|%|g/m²|tex|min|h|[^\]\s]{1,12})\]")
_NAMED = re.compile(r"(?:^|[;.(]\s+|\n\s*)((?:\w+, )*\w+): ")


def measured(annotation: ast.expr | None) -> bool:
    return annotation is not None and any(
        isinstance(node, ast.Name) and node.id in NUMBERS for node in ast.walk(annotation)
    )


def described(docstring: str) -> dict[str, str]:
    """Parameter → what the docstring says of it, up to the next one or the end of the paragraph that names it."""
    ahead = re.split(r"\n\s*(?=Returns|Raises|Source)", docstring)[0]
    starts = list(_NAMED.finditer(ahead))
    said = {}
    for start, following in zip(starts, [*starts[1:], None]):
        text = ahead[start.end() : following.start() if following else len(ahead)]
        said |= dict.fromkeys(start.group(1).split(", "), text)
    return said


def is_a_source(docstring: str) -> bool:
    """Whether its source is a key of the bibliography, or says in a few words from what it is derived."""
    found = re.search(r"Source: (.*?)(?=\n\s*(?:Raises|Returns)|\n\s*\n|$)", docstring, re.DOTALL)
    if not found:
        return False
    said = found.group(1)
    from_what = re.findall(r"\w+", said.removeprefix("derived"))
    return (said.startswith("derived") and len(from_what) >= FEWEST) or any(
        key in bibliography() for key in re.findall(r"[a-z0-9]+(?:-[a-z0-9]+)+", said)
    )


def raised(function: ast.FunctionDef, functions: dict[str, ast.FunctionDef], seen: frozenset = frozenset()) -> set[str]:
    """The errors a function raises, itself or through another function of its file."""
    found = set()
    for node in ast.walk(function):
        if isinstance(node, ast.Raise) and node.exc is not None:
            thing = node.exc.func if isinstance(node.exc, ast.Call) else node.exc
            found |= {thing.id} if isinstance(thing, ast.Name) else set()
        elif (
            isinstance(node, ast.Call)
            and isinstance(node.func, ast.Name)
            and node.func.id in functions
            and node.func.id not in seen
        ):
            found |= raised(functions[node.func.id], functions, seen | {function.name})
    return found


def lacks(source: str) -> Iterator[str]:
    """What the docstrings of one file leave unsaid."""
    tree = ast.parse(source)
    functions = {node.name: node for node in tree.body if isinstance(node, ast.FunctionDef)}
    for function in functions.values():
        parameters = [*function.args.args, *function.args.kwonlyargs]
        if function.name.startswith("_") or not (
            measured(function.returns) or any(measured(each.annotation) for each in parameters)
        ):
            continue
        docstring = ast.get_docstring(function) or ""
        said = described(docstring)
        for parameter in parameters:
            if parameter.arg not in said:
                yield f"{function.name}: {parameter.arg} is not described"
            elif measured(parameter.annotation) and not _UNIT.search(said[parameter.arg]):
                yield f"{function.name}: {parameter.arg} has no unit in brackets"
        returns = re.search(r"Returns .*?(?=\n\s*(?:Source|Raises)|$)", docstring, re.DOTALL)
        if not returns:
            yield f"{function.name}: what it returns is not said"
        elif measured(function.returns) and not _UNIT.search(returns.group()):
            yield f"{function.name}: what it returns has no unit in brackets"
        if not is_a_source(docstring):
            yield f"{function.name}: no source"
        for error in sorted(raised(function, functions)):
            if not re.search(rf"Raises {error}\b", docstring):
                yield f"{function.name}: {error} is not mentioned"
    for kept in (node for node in tree.body if isinstance(node, ast.ClassDef) and not node.name.startswith("_")):
        for method in (each for each in kept.body if isinstance(each, ast.FunctionDef)):
            if not method.name.startswith("_") and measured(method.returns):
                docstring = ast.get_docstring(method) or ""
                if not is_a_source(docstring):
                    yield f"{kept.name}.{method.name}: no source"
                if not _UNIT.search(docstring):
                    yield f"{kept.name}.{method.name}: no unit in brackets"
        if any(
            isinstance(each, ast.AnnAssign) and measured(each.annotation) for each in kept.body
        ) and not _UNIT.search(ast.get_docstring(kept) or ""):
            yield f"{kept.name}: no unit in brackets"


TRADE = {
    module: source
    for module, source in our_sources().items()
    if room_of(module, our_folders()).partition(".")[0] == "trade"
}


@pytest.mark.parametrize("module", TRADE)
def test_every_formula_is_described(module):
    assert list(lacks(TRADE[module])) == []


GOOD = '''
def cover(width: Fraction, layers: int, hem: Fraction) -> Fraction:
    """Cloth to cover.

    width: across [mm]; layers: how many.
    hem: depth [mm].
    Returns the cloth [mm].
    Source: derived, layers and a hem.
    Raises ValueError when nothing is left.
    """
    return _whole(width)

def _whole(width):
    raise ValueError("no")
'''


def test_a_good_docstring_passes():
    assert list(lacks(GOOD)) == []


@pytest.mark.parametrize(
    ("change", "lack"),
    [
        (("width: across [mm]; ", ""), "width is not described"),
        (("layers: how many", "how many"), "layers is not described"),
        (("across [mm]", "across"), "width has no unit"), (("hem: depth [mm]", "hem: depth"), "hem has no unit"),
        (("Returns", "Gives"), "returns is not said"),
        (("the cloth [mm]", "the cloth"), "returns has no unit"),
        (("Source: derived, layers and a hem.", ""), "no source"),
        (("derived, layers and a hem.", ""), "no source"),
        (("derived, layers and a hem.", "derived."), "no source"),
        (("derived, layers and a hem.", "a book, 1911."), "no source"),
        (("Raises ValueError when nothing is left.", ""), "ValueError is not mentioned"), (("", ""), ""),
    ],
)  # fmt: skip
def test_a_planted_gap_is_found(change, lack):
    bad = GOOD.replace(change[0], change[1]) if lack else re.sub(r'""".*?"""', "pass", GOOD, flags=re.DOTALL)
    assert bad != GOOD
    assert any(lack in found for found in lacks(bad))


@pytest.mark.parametrize(
    "source", ["derived, layers and a hem.", "iso-5077, as restated.", "from iso-5077 turned round."]
)
def test_a_key_or_a_derivation_is_a_source(source):
    assert list(lacks(GOOD.replace("derived, layers and a hem.", source))) == []


def test_methods_and_floats_are_no_exception():
    method = 'class Piece:\n    """A piece."""\n    def area(self) -> float:\n        """Its area."""\n'
    assert list(lacks(method)) == ["Piece.area: no source", "Piece.area: no unit in brackets"]
    assert "area: no source" in list(lacks('def area(side: float) -> float:\n    """Its area."""\n'))


def test_a_record_of_measures_without_units_is_found():
    assert list(lacks('class Piece:\n    """A piece."""\n    width: Fraction\n')) == ["Piece: no unit in brackets"]
