"""Every formula says what goes in, in which unit, what comes out, when it refuses, and where it is from.

A formula is a public function of the rooms under `trade` (see test_floors) that takes or gives an exact measure. Plain
plane geometry,
in points and floats, is not the trade's and needs no source.
"""

import ast
import re
from collections.abc import Iterator

import pytest

from tests.test_floors import our_folders, our_sources, room_of

NUMBERS = {"Fraction", "Measure"}
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
        if not re.search(r"Source: \S", docstring):
            yield f"{function.name}: no source"
        for error in sorted(raised(function, functions)):
            if not re.search(rf"Raises {error}\b", docstring):
                yield f"{function.name}: {error} is not mentioned"
    for kept in (node for node in tree.body if isinstance(node, ast.ClassDef) and not node.name.startswith("_")):
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
    Source: derived.
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
        (("the cloth [mm]", "the cloth"), "returns has no unit"), (("Source: derived.", ""), "no source"),
        (("Source: derived.", "Source: "), "no source"),
        (("Raises ValueError when nothing is left.", ""), "ValueError is not mentioned"), (("", ""), ""),
    ],
)  # fmt: skip
def test_a_planted_gap_is_found(change, lack):
    bad = GOOD.replace(change[0], change[1]) if lack else re.sub(r'""".*?"""', "pass", GOOD, flags=re.DOTALL)
    assert bad != GOOD
    assert any(lack in found for found in lacks(bad))


def test_a_record_of_measures_without_units_is_found():
    assert list(lacks('class Piece:\n    """A piece."""\n    width: Fraction\n')) == ["Piece: no unit in brackets"]
