"""Changes the articles' files one place at a time, and counts which changes no check and no example finds.

    .venv/bin/python scripts/bench/article_mutants.py                every article
    .venv/bin/python scripts/bench/article_mutants.py napkin --measures 6

A change is one of: a number one more or one less; plus for minus, times for divided by; a side for the one across from
it; a line of work left out. It is found by the checks of tests/articles, by the article's own example or by a case from
outside. One that makes the same article whatever is asked is no change. What is left is printed, to be looked at.
"""

import argparse
import ast
import copy
import random
import sys
from collections import Counter
from collections.abc import Iterator
from contextlib import redirect_stdout
from fractions import Fraction
from importlib import import_module
from io import StringIO
from pathlib import Path
from types import ModuleType, SimpleNamespace
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from calculators.articles import articles
from calculators.articles.article import Article
from calculators.articles.calculator import Made, as_calculator, made
from calculators.asking.answering import Asking, answer, read
from calculators.asking.declaration import InvalidInput
from calculators.asking.site_method import example_method
from calculators.catalogue import catalogue
from calculators.values.kinds import Length
from scripts.tools.command_error import run_main
from scripts.tools.places import ROOT
from tests.reference import cases

checks: Any = import_module("tests.articles.checks")  # its judge, shapely, says nothing about types
work_checks: Any = import_module("tests.articles.work_checks")
#: What is counted by hand, refused and told of single articles.
ONE_BY_ONE = [str(ROOT / "tests/articles" / f"test_{name}.py") for name in ("refused_and_told", "counted_by_hand")]
ACROSS = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}
OTHER = {ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult}


def mutants(tree: ast.Module) -> Iterator[tuple[str, ast.Module]]:
    """Every change of the functions of a file, in words, and the file with it."""
    places = [place for function in tree.body if isinstance(function, ast.FunctionDef) for place in ast.walk(function)]
    for number, place in enumerate(places):
        for words, change in changes(place):
            changed = copy.deepcopy(tree)
            there = [
                each
                for function in changed.body
                if isinstance(function, ast.FunctionDef)
                for each in ast.walk(function)
            ][number]
            change(there)
            yield f"line {getattr(place, 'lineno', '?')}: {words}", ast.fix_missing_locations(changed)


def changes(place: ast.AST) -> Iterator[tuple[str, Any]]:
    if isinstance(place, ast.Constant) and type(place.value) is int:
        for value in (place.value - 1, place.value + 1):
            yield f"{place.value} is {value}", lambda it, value=value: setattr(it, "value", value)
    if isinstance(place, ast.BinOp) and type(place.op) in OTHER:
        other = OTHER[type(place.op)]
        yield f"{type(place.op).__name__} is {other.__name__}", lambda it: setattr(it, "op", other())
    if isinstance(place, ast.Attribute) and place.attr in ACROSS:
        yield f"{place.attr} is {ACROSS[place.attr]}", lambda it: setattr(it, "attr", ACROSS[it.attr])
    if isinstance(place, ast.FunctionDef | ast.If | ast.For):
        for at, line in enumerate(place.body):
            if isinstance(line, ast.Expr) and isinstance(line.value, ast.Call):
                yield f"left out: {ast.unparse(line)[:60]}", lambda it, at=at: it.body.__setitem__(at, ast.Pass())


def measures(article: Article, count: int) -> list[SimpleNamespace]:
    """Lopsided measures with which the article can be made."""
    chance, usual = random.Random(article.name), read(catalogue()[article.name], Asking({}))
    found: list[SimpleNamespace] = [SimpleNamespace(**usual)]
    for _ in range(200):
        values = dict(usual)
        for field in article.fields:
            if isinstance(field.kind, Length):
                values[field.name] *= Fraction(chance.randint(25, 300), 97)
            elif field.kind.choices:
                values[field.name] = chance.choice(sorted(field.kind.choices))
        if len(found) <= count and not isinstance(tried(article, SimpleNamespace(**values)), str):
            found.append(SimpleNamespace(**values))
    return found


def tried(article: Article, given: SimpleNamespace) -> Made | str:
    try:
        return made(article, given)
    except InvalidInput as refused:
        return f"refused: {refused}"


def same(one: Made | str, other: Made | str) -> bool:
    return _as_seen(one) == _as_seen(other)


def _as_seen(it: Made | str) -> object:
    if isinstance(it, str):
        return it
    return (
        it.size,
        [(piece.name, piece.box, piece.count) for piece in it.pieces],
        [
            (each.do, each.how, dict(each.lengths), each.rows, each.stitched, str(each.finishes), str(each.glues))
            for each in it.work.operations
        ],
        it.work.to_buy,
        it.work.opening,
        [str(note) for note in it.work.notes],
    )


def fault(article: Article, it: Made) -> str:
    """The first check that finds something; empty where none does."""
    work = it.work
    cut = [piece.parts[0].part.name for piece in it.pieces]
    found = {
        "named": cut != [each for each in article.cut if each in cut or each not in article.not_always],
        "finished once": checks.not_finished_once(work),
        "walk": checks.do_not_walk(work),
        "cut alike": checks.cut_unlike(work),
        "cut": [each for piece in it.pieces for each in checks.cut_amiss(piece)],
        "order": list(checks.out_of_order(work)),
        "inside out": checks.left_inside_out(work),
        "turned": checks.too_narrow_to_turn(work),
        "work": work_checks.amiss(work, article.is_bent),
    }
    if not article.is_bent:
        found |= {"meet": checks.do_not_meet(work), "size": checks.finished_size(work) != it.size}
    return next((name for name, each in found.items() if each), "")


def found_by(article: Article, given: list[SimpleNamespace]) -> str:
    for each in given:
        it = tried(article, each)
        if isinstance(it, str):
            return "refused"
        if name := fault(article, it):
            return name
    calculator = as_calculator(article)
    for example in article.examples:
        results = answer(calculator, Asking(example.given, method=example_method())).results
        if any(
            abs(float(results[name]) - value) > example.tolerance + 1e-6 for name, value in example.expected.items()
        ):
            return "example"
    usual, catalogue()[article.name] = catalogue()[article.name], calculator
    try:
        if any(case.off(case.ours) > 0 for case in cases() if case.calculator == article.name):
            return "case from outside"
        with redirect_stdout(StringIO()):
            if pytest.main(["-q", "-x", "-p", "no:cacheprovider", *ONE_BY_ONE]):
                return "test of its own"
    finally:
        catalogue()[article.name] = usual
    return ""


def judged(changed: ast.Module, path: Path, article: Article, given: list[SimpleNamespace]) -> str:
    module = ModuleType(f"calculators.articles.{path.stem}")
    module.__package__ = "calculators.articles"
    try:
        exec(compile(changed, str(path), "exec"), module.__dict__)
        other: Article = module.ARTICLE
        if all(same(tried(article, each), tried(other, each)) for each in given):
            return "no change"
        return found_by(other, given) or "not found"
    except Exception as broken:
        return type(broken).__name__


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("names", nargs="*", metavar="NAME", help="an article, as typed at a terminal")
    parser.add_argument("--measures", type=int, default=8, help="sets of measures each change is tried with")
    asked = parser.parse_args()
    total: Counter[str] = Counter()
    for name in asked.names or articles():
        article = articles()[name]
        path = Path(import_module(article.make.__module__).__file__ or "")
        given = measures(article, asked.measures)
        if first := found_by(article, given):
            raise SystemExit(f"{name} itself is found at fault: {first}")
        outcome: Counter[str] = Counter()
        for words, changed in mutants(ast.parse(path.read_text())):
            judgement = judged(changed, path, article, given)
            outcome[judgement] += 1
            if judgement == "not found":
                print(f"{name}, {words}")
        total += outcome
    made_other = sum(total.values()) - total["no change"]
    print(f"{sum(total.values())} changes, {total['no change']} of them none")
    print(f"{total['not found']} of the other {made_other} not found")
    print(", ".join(f"{name} {count}" for name, count in total.most_common()))
    return 0


if __name__ == "__main__":
    run_main(main)
