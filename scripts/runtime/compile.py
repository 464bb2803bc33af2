"""Runs inside Pyodide: turns the Python files of an archive into compiled ones, for exactly this Python.

compile.mjs sets `source` and `target`, paths in Pyodide's own file system, and `optimize`, the level that Python knows,
or one more: then what functions say of the types of what they take and give is left out as well. Nothing of ours reads
it there, and it is a good part of what travels. What classes say of their fields stays, since data classes are made of
it. Of every instruction Python would also keep its line; a traceback is told the first line of the function instead.
"""

import ast
import importlib.util
import marshal
import types
import zipfile

# Set by compile.mjs.
source: str
target: str
optimize: str

MOST = 2  # the highest level that Python knows
LINE_OF_EIGHT = 0x80 | 13 << 3  # an entry of the table of lines: the line moved by the next byte, for this many more
UNCHECKED_HASH = (0b01).to_bytes(4, "little")  # PEP 552: the file goes by the hash of its source, which nobody checks


def without_types(tree: ast.Module) -> ast.Module:
    """A module whose functions do not say the types of what they take and give."""
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            node.returns = None
        if isinstance(node, ast.arg):
            node.annotation = None
    return tree


def on_one_line(code: types.CodeType) -> types.CodeType:
    """A piece of compiled Python, and those in it, all of whose instructions stand on its first line."""
    eights, rest = divmod(len(code.co_code) // 2, 8)
    table = bytes((LINE_OF_EIGHT | 7, 0)) * eights + (bytes((LINE_OF_EIGHT | rest - 1, 0)) if rest else b"")
    inner = (on_one_line(each) if isinstance(each, types.CodeType) else each for each in code.co_consts)
    return code.replace(co_linetable=table, co_consts=tuple(inner))


def compiled(name: str, content: bytes, level: int) -> bytes:
    """What Python would write for a file of that name."""
    tree = ast.parse(content, name)
    text = without_types(tree) if level > MOST else tree
    code = on_one_line(compile(text, name, "exec", dont_inherit=True, optimize=min(level, MOST)))
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
