"""Everything that the handbook tells in words: its pages' text, and the sentences that stand in its Python."""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import yaml

ROOT = Path(__file__).parents[2]
PAGES = sorted((ROOT / "docs").rglob("*.md"))
HOUSE = ROOT / "calculators" / "asking" / "house-method.yaml"
SOURCES = sorted((ROOT / "calculators").rglob("*.py"))


def prose_of_python(source: str) -> Iterator[str]:
    """The texts of a source file that hold more than one word, without its docstrings and the names of its
    placeholders."""
    tree = ast.parse(source)
    silent = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    inside = {
        id(part)
        for node in ast.walk(tree)
        if isinstance(node, ast.JoinedStr)
        for part in ast.walk(node)
        if part is not node
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            yield _unnamed("".join(part.value if isinstance(part, ast.Constant) else "·" for part in node.values))
        elif (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and " " in node.value
            and not {id(node)} & (silent | inside)
        ):
            yield _unnamed(node.value)


def _unnamed(text: str) -> str:
    return re.sub(r"\{\w+", "{", text)


def prose_of_page(markdown: str) -> str:
    """A page's text: without the glossary's list of other people's words, and without where its links lead."""
    return re.sub(r"\]\([^)]*\)|Also: [^\n]*(?:\n    [^\n]*)*|\{#[^}]*\}", " ", markdown)


@cache
def told() -> tuple[tuple[str, str], ...]:
    """(where it stands, text) of everything that is told."""
    pages = ((str(page.relative_to(ROOT)), prose_of_page(page.read_text("utf-8"))) for page in PAGES)
    sources = (
        (str(path.relative_to(ROOT)), text) for path in SOURCES for text in prose_of_python(path.read_text("utf-8"))
    )
    return (
        *pages,
        *sources,
        *(
            ("calculators/asking/house-method.yaml", text)
            for text in _texts_of(yaml.safe_load(HOUSE.read_text("utf-8")))
        ),
    )


def _texts_of(data: object) -> Iterator[str]:
    if isinstance(data, str) and " " in data:
        yield data
    elif isinstance(data, (dict, list)):
        for part in data.values() if isinstance(data, dict) else data:
            yield from _texts_of(part)


def sentences(text: str) -> list[str]:
    """Its sentences, one by one: without front matter, markers and marks of Markdown; a cell, an item, a heading ends
    one."""
    text = re.sub(r"\A---\n.*?\n---\n|```.*?```|<[^>]*>", "", text, flags=re.DOTALL)
    text = re.sub(r"\{\{.*?\}\}", " ", text)
    text = re.sub(r"^(?:!!!|\?\?\?) \w+ (.*)$", r"\1\n", text, flags=re.MULTILINE)
    blocks = re.split(r"\n\s*\n|\n\s*(?:\d+\.|[-:#]+)\s+|\n(?=!!!|\?\?\?)|\|", text)
    plain = (re.sub(r"\s+", " ", re.sub(r"[*_#>\[\]`]", "", block)) for block in blocks)
    return [each.strip(" -") for block in plain for each in re.split(r"(?<=[.!?])\s+", block) if each.strip(" -")]
