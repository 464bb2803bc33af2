"""Stamps: a note beside a result of what it was made from, so that unchanged work is not done again."""

import hashlib
from collections.abc import Iterable
from pathlib import Path


def fingerprint(*texts: str) -> str:
    """One hash for several texts; moving a character from one text to the next changes it."""
    whole = hashlib.sha256()
    for text in texts:
        whole.update(hashlib.sha256(text.encode()).digest())
    return whole.hexdigest()


def files_below(root: Path, names: Iterable[str]) -> list[Path]:
    """Every file named, or lying in a folder named, in a steady order; compiled Python left out.

    A name that is not there counts as nothing, so that making it later changes the fingerprint.
    """
    found: set[Path] = set()
    for name in names:
        place = root / name
        candidates = place.rglob("*") if place.is_dir() else [place]
        found.update(f for f in candidates if f.is_file() and "__pycache__" not in f.parts)
    return sorted(found)


def fingerprint_of_files(root: Path, names: Iterable[str]) -> str:
    """One hash for the names and contents of the files that `files_below` finds."""
    parts: list[str] = []
    for file in files_below(root, names):
        parts += [file.relative_to(root).as_posix(), hashlib.sha256(file.read_bytes()).hexdigest()]
    return fingerprint(*parts)


class Stamp:
    """A file that holds the fingerprint of the last whole, uninterrupted run.

    `lift` it before the work starts and `press` it when the work is done: an interrupted run leaves no stamp.
    """

    def __init__(self, file: Path):
        self.file = file

    def matches(self, key: str) -> bool:
        return self.file.is_file() and self.file.read_text() == key

    def lift(self) -> None:
        self.file.unlink(missing_ok=True)

    def press(self, key: str) -> None:
        self.file.parent.mkdir(parents=True, exist_ok=True)
        half_written = self.file.with_name(self.file.name + ".new")
        half_written.write_text(key)
        half_written.replace(self.file)
