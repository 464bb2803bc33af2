"""Runs inside Pyodide: turns the Python files of an archive into compiled ones, for exactly this Python.

compile.mjs sets `source` and `target`, paths in Pyodide's own file system, and `optimize`, the level that Python knows,
or one more: then what functions say of the types of what they take and give is left out as well. Nothing of ours reads
it there, and it is a good part of what travels. What classes say of their fields stays, since data classes are made of
it.
"""

import ast
import importlib.util
import marshal
import zipfile

# Set by compile.mjs.
source: str
target: str
optimize: str

MOST = 2  # the highest level that Python knows
UNCHECKED_HASH = (0b01).to_bytes(4, "little")  # PEP 552: the file goes by the hash of its source, which nobody checks


def without_types(tree: ast.Module) -> ast.Module:
    """A module whose functions do not say the types of what they take and give."""
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            node.returns = None
        if isinstance(node, ast.arg):
            node.annotation = None
    return tree


def compiled(name: str, content: bytes, level: int) -> bytes:
    """What Python would write for a file of that name."""
    tree = ast.parse(content, name)
    text = without_types(tree) if level > MOST else tree
    code = compile(text, name, "exec", dont_inherit=True, optimize=min(level, MOST))
    return importlib.util.MAGIC_NUMBER + UNCHECKED_HASH + importlib.util.source_hash(content) + marshal.dumps(code)


with (
    zipfile.ZipFile(source) as given,  # noqa: F821 - set by compile.mjs
    zipfile.ZipFile(target, "w") as made,  # noqa: F821 - set by compile.mjs
):
    for name in sorted(given.namelist()):
        content = given.read(name)
        if name.endswith(".py"):
            name, content = name + "c", compiled(name, content, int(optimize))  # noqa: F821 - set by compile.mjs
        made.writestr(name, content)
