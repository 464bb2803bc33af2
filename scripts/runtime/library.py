"""Which part of Python's standard library the browser gets."""

from __future__ import annotations

from collections.abc import Mapping

#: What a worker without a terminal, a network of its own or other processes has no use for.
LEFT_OUT = {
    "_pyrepl", "bdb", "cProfile", "cmd", "code", "ctypes", "curses", "doctest", "ensurepip", "ftplib", "idlelib", "imaplib",
    "mailbox", "multiprocessing", "pdb", "pickletools", "poplib", "profile", "pstats", "pydoc", "pydoc_data", "rlcompleter",
    "smtplib", "socketserver", "sqlite3", "test", "timeit", "trace", "tracemalloc", "turtle", "turtledemo", "unittest",
    "venv", "webbrowser", "wsgiref", "xmlrpc",
}  # fmt: skip
#: The text encodings that can occur; the many others are for reading files from elsewhere.
ENCODINGS = {"__init__", "_win_cp_codecs", "aliases", "ascii", "cp437", "cp1252", "idna", "latin_1", "punycode", "raw_unicode_escape",
             "unicode_escape", "utf_16", "utf_16_be", "utf_16_le", "utf_32", "utf_8", "utf_8_sig"}  # fmt: skip


def needed(library: Mapping[str, bytes]) -> dict[str, bytes]:
    """The files of the library that are kept."""
    return {name: content for name, content in library.items() if _is_kept(name)}


def _is_kept(name: str) -> bool:
    first, _, rest = name.partition("/")
    if first == "encodings":
        return rest.removesuffix(".py") in ENCODINGS
    return first.removesuffix(".py") not in LEFT_OUT
