"""Which part of Python's standard library the browser gets."""

from __future__ import annotations

from collections.abc import Mapping

#: What a worker has no use for that has no terminal, no network of its own, no other processes and no files to keep;
#: tools
#: for those who write Python; and what C does faster under the same name.
LEFT_OUT = {
    "_pydatetime", "_pyio", "_pyrepl", "_sysconfigdata__emscripten_wasm32-emscripten", "bdb", "cProfile", "cmd", "code",
    "compileall",
    "configparser", "ctypes", "curses", "doctest", "ensurepip", "fileinput", "ftplib", "http", "idlelib", "imaplib",
    "ipaddress", "mailbox", "mimetypes", "modulefinder", "multiprocessing", "netrc", "optparse", "pdb", "pickletools",
    "plistlib",
    "poplib", "profile", "pstats", "pyclbr", "pydoc", "pydoc_data", "rlcompleter", "smtplib", "socketserver", "sqlite3",
    "symtable",
    "test", "timeit", "tomllib", "trace", "tracemalloc", "turtle", "turtledemo", "unittest", "venv", "webbrowser",
    "wsgiref",
    "xmlrpc", "zoneinfo",
    "_markupbase", "colorsys", "difflib", "filecmp", "getopt", "getpass", "graphlib", "html", "json/tool", "nturl2path",
    "platform", "pty",
    "py_compile", "sched", "shelve", "statistics", "sysconfig/__main__", "tabnanny", "tty", "uuid", "wave", "zipapp",
    "asyncio/__main__", "asyncio/proactor_events", "asyncio/tools", "asyncio/windows_events", "asyncio/windows_utils",
    "email/mime", "pyodide/console",
    "email/_header_value_parser", "email/headerregistry", "email/policy", "urllib/robotparser", "_ast_unparse",
    "_compat_pickle", "antigravity", "argparse", "gettext", "pickle", "pprint", "this",
    "concurrent/futures/process", "concurrent/interpreters", "logging/config", "logging/handlers", "urllib/request",
    "xml/dom", "xml/sax",
}  # fmt: skip
#: The text encodings that can occur; the many others are for reading files from elsewhere.
ENCODINGS = {"__init__", "_win_cp_codecs", "aliases", "ascii", "cp437", "cp1252", "idna", "latin_1", "punycode",
    "raw_unicode_escape",
             "unicode_escape", "utf_16", "utf_16_be", "utf_16_le", "utf_32", "utf_8", "utf_8_sig"}  # fmt: skip


def needed(library: Mapping[str, bytes]) -> dict[str, bytes]:
    """The files of the library that are kept."""
    return {name: content for name, content in library.items() if _is_kept(name)}


def is_lean(name: str) -> bool:
    """Whether a file goes without its docstrings; Pyodide's own part reads some of its own at work."""
    return not name.startswith(("_pyodide/", "pyodide/"))


def _is_kept(name: str) -> bool:
    module = name.removesuffix(".py")
    if module.startswith("encodings/"):
        return module.removeprefix("encodings/") in ENCODINGS
    parts = module.split("/")
    return not any("/".join(parts[:length]) in LEFT_OUT for length in range(1, len(parts) + 1))
