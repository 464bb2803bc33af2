"""Every test can fail: none returns early, and so passes without having looked at anything.

A random case that is none is rejected (`hypothesis.reject`, `assume`): when every case is, the test fails. A listed
case that is none is not listed.
"""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

TESTS = Path(__file__).parent


def _inside(node: ast.AST) -> Iterator[ast.AST]:
    """What runs when a function does, without the functions defined in it."""
    for child in ast.iter_child_nodes(node):
        if not isinstance(child, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda | ast.ClassDef):
            yield child
            yield from _inside(child)


def _is_refused(node: ast.AST) -> bool:
    """Whether this swallows what was raised and does nothing more: then all that its block asserts is skipped."""
    if isinstance(node, ast.With):
        asserts = any(isinstance(each, ast.Assert) for each in ast.walk(node))
        return asserts and any("suppress(" in ast.unparse(each) for each in node.items)
    return isinstance(node, ast.ExceptHandler) and all(isinstance(each, ast.Pass | ast.Return) for each in node.body)


def ways_out(source: str) -> Iterator[str]:
    """Where a test, or a helper that asserts and gives nothing back, ends early as if all were well."""
    for function in ast.walk(ast.parse(source)):
        if not isinstance(function, ast.FunctionDef):
            continue
        parts = list(_inside(function))
        is_test = function.name.startswith("test_")
        returns = [each for each in parts if isinstance(each, ast.Return)]
        asserts = any(isinstance(each, ast.Assert) for each in parts)
        if is_test or (asserts and not any(each.value is not None for each in returns)):
            swallowed = [each for each in parts if _is_refused(each) and asserts]
            for each in returns + swallowed if not _loops_until(function) else []:
                yield f"line {each.lineno}: {function.name} ends early"


def _loops_until(function: ast.FunctionDef) -> bool:
    """A helper that waits: it returns once what it waits for is so, and raises at its end."""
    return not function.name.startswith("test_") and isinstance(function.body[-1], ast.Raise)


@pytest.mark.parametrize("path", sorted(TESTS.rglob("*.py")), ids=lambda path: str(path.relative_to(TESTS)))
def test_no_test_ends_early(path):
    assert list(ways_out(path.read_text(encoding="utf-8"))) == []


@pytest.mark.parametrize(
    "body",
    [
        "try:\n        made()\n    except ValueError:\n        return\n    assert sound()",
        "if not pieces:\n        return\n    assert sound()",
        "try:\n        assert made() == 1\n    except ValueError:\n        pass",
        "with suppress(ValueError):\n        assert made() == 1",
        "for each in pieces:\n        if each:\n            return\n        assert sound()",
    ],
)
def test_a_way_out_is_found(body):
    assert list(ways_out(f"def test_it():\n    {body}\n"))
    assert list(ways_out(f"def held(pieces):\n    {body}\n"))


def waits_for_nothing(source: str) -> list[int]:
    """Where a wait of the browser's is given an async function: it takes the promise for true, and does not wait."""
    calls = [each for each in ast.walk(ast.parse(source)) if isinstance(each, ast.Call)]
    waits = [each for each in calls if ast.unparse(each.func).endswith(".wait_for_function")]
    texts = {
        target.id: ast.unparse(each.value)
        for each in ast.parse(source).body
        if isinstance(each, ast.Assign)
        for target in each.targets
        if isinstance(target, ast.Name)
    }
    return [
        each.lineno
        for each in waits
        if "async" in ast.unparse(each.args[0]) or "async" in texts.get(ast.unparse(each.args[0]), "")
    ]


@pytest.mark.parametrize("path", sorted(TESTS.rglob("*.py")), ids=lambda path: str(path.relative_to(TESTS)))
def test_no_wait_is_given_a_promise(path):
    assert waits_for_nothing(path.read_text(encoding="utf-8")) == []


def test_a_wait_that_is_given_a_promise_is_found():
    assert waits_for_nothing("THERE = 'async () => 1'\npage.wait_for_function(THERE)\n") == [2]
    assert waits_for_nothing("page.wait_for_function(f'async () => {1}')\n") == [1]
    assert waits_for_nothing("page.wait_for_function('() => 1')\n") == []


def test_what_waits_or_answers_is_no_way_out():
    waits = "def until(holds):\n    while True:\n        if holds():\n            return\n    raise AssertionError\n"
    answers = "def read(text):\n    assert text\n    if text == 'x':\n        return None\n    return 1\n"
    assert [*ways_out(waits), *ways_out(answers)] == []
