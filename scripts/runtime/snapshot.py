"""Runs inside Pyodide just before the snapshot is taken: imports what the worker will need, and drops what must not be
kept."""

import importlib
import pkgutil
import sys
import zipimport

import calculators

OF_THE_TERMINAL = ("calculators.__main__", "calculators.faces.command_line")

for module in pkgutil.walk_packages(calculators.__path__, "calculators."):
    if module.name not in OF_THE_TERMINAL:
        importlib.import_module(module.name)
for name in ("_strptime", "datetime", "traceback", "linecache"):  # imported late by the library itself
    importlib.import_module(name)

# The snapshot starts without the library's archive: nothing may remember where in it a module lay.
vars(zipimport)["_zip_directory_cache"].clear()
sys.path_importer_cache.clear()
