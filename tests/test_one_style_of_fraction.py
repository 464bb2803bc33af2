"""A fraction is written one way, by one function: 14 1/4, never 14¼ beside it."""

import ast
import re
from pathlib import Path

from calculators.asking.answering import Asking, answer
from calculators.catalogue import calculator_named
from calculators.values.measure import CENTIMETRES

ROOT = Path(__file__).parents[1]
SIGNS = re.compile("[¼-¾⅐-⅞⁄]")
READERS = {"numerals.py", "measure.py"}  # they read such signs where somebody types one


def _words_of_code(tree: ast.Module):
    """Every text in a file of Python but its docstrings."""
    docstrings = {
        id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docstrings:
            yield node.value


def _written_by_hand(tree: ast.Module):
    """Texts put together from a numerator and a denominator."""
    for node in ast.walk(tree):
        if not isinstance(node, ast.JoinedStr) or not any(
            isinstance(each, ast.Constant) and each.value == "/" for each in node.values
        ):
            continue
        if {"numerator", "denominator"} <= {each.attr for each in ast.walk(node) if isinstance(each, ast.Attribute)}:
            yield ast.unparse(node)


def test_no_code_that_shows_something_writes_a_fraction_itself():
    signs, by_hand = {}, {}
    for path in (ROOT / "calculators").rglob("*.py"):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        if path.name not in READERS and (found := [each for each in _words_of_code(tree) if SIGNS.search(each)]):
            signs[path.name] = found
        if found := list(_written_by_hand(tree)):
            by_hand[path.name] = found
    assert signs == {}
    assert by_hand.keys() == {"numerals.py", "csv_lists.py"}, "and a file of exact numbers, which nobody reads aloud"
    assert all(len(each) == 1 for each in by_hand.values())


def test_no_page_and_no_script_writes_such_a_sign():
    shown = [*(ROOT / "docs").rglob("*.md"), *(ROOT / "docs").rglob("*.js"), *(ROOT / "calculators").rglob("*.yaml")]
    assert len(shown) > 60
    assert [path.name for path in shown if SIGNS.search(path.read_text(encoding="utf-8"))] == []


def test_half_a_width_of_a_curtain_is_numbered_as_any_fraction_is():
    calculator = calculator_named("curtains")
    drawing = calculator.drawing(answer(calculator, Asking({})).drawn_from, CENTIMETRES).svg
    numbers = [each.text for each in drawing.iter() if each.tag.endswith("text")]
    assert "1/2" in numbers


def test_a_planted_sign_and_a_planted_fraction_are_found():
    assert any(map(SIGNS.search, _words_of_code(ast.parse('say = "½"'))))
    assert list(_written_by_hand(ast.parse('say = f"{a.numerator}/{a.denominator}"')))


def test_no_style_sheet_writes_a_fraction_another_way():
    """What is written 14 1/4 is shown so, in an answer as in its blank and its drawing."""
    sheets = {path.name: path.read_text(encoding="utf-8") for path in (ROOT / "docs/assets/stylesheets").glob("*.css")}
    stacked = re.compile(r'(?:diagonal|stacked)-fractions|"(?:frac|afrc)"')
    assert len(sheets) > 10 and [name for name, sheet in sheets.items() if stacked.search(sheet)] == []
