"""Runs inside Pyodide: turns the Python files of an archive into compiled ones, for exactly this Python.

compile.mjs sets `source` and `target`, paths in Pyodide's own file system, and `optimize`, the level that Python knows.
"""

import py_compile
import tempfile
import zipfile
from pathlib import Path

# Set by compile.mjs.
source: str
target: str
optimize: str

MODE = py_compile.PycInvalidationMode.UNCHECKED_HASH

with (
    zipfile.ZipFile(source) as given,  # noqa: F821 - set by compile.mjs
    zipfile.ZipFile(target, "w") as made,  # noqa: F821 - set by compile.mjs
    tempfile.TemporaryDirectory() as folder,
):
    text, code = Path(folder, "text.py"), Path(folder, "code.pyc")
    for name in sorted(given.namelist()):
        content = given.read(name)
        if name.endswith(".py"):
            text.write_bytes(content)
            level = int(optimize)  # noqa: F821 - set by compile.mjs
            py_compile.compile(str(text), str(code), name, doraise=True, optimize=level, invalidation_mode=MODE)
            name, content = name + "c", code.read_bytes()
        made.writestr(name, content)
