"""Runs inside Pyodide: turns the Python files of an archive into compiled ones, for exactly this Python.

`source` and `target` are paths in Pyodide's own file system, set by compile.mjs.
"""

import py_compile
import tempfile
import zipfile
from pathlib import Path

with zipfile.ZipFile(source) as given, zipfile.ZipFile(target, "w") as made, tempfile.TemporaryDirectory() as folder:  # noqa: F821
    text, code = Path(folder, "text.py"), Path(folder, "code.pyc")
    for name in sorted(given.namelist()):
        content = given.read(name)
        if name.endswith(".py"):
            text.write_bytes(content)
            py_compile.compile(
                str(text), str(code), dfile=name, doraise=True, invalidation_mode=py_compile.PycInvalidationMode.UNCHECKED_HASH
            )
            name, content = name + "c", code.read_bytes()
        made.writestr(name, content)
