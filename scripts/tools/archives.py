"""Zip archives that come out byte for byte the same whenever they hold the same files."""

from __future__ import annotations

import base64
import hashlib
import io
import zipfile
from collections.abc import Mapping
from pathlib import Path

_EARLIEST = (1980, 1, 1, 0, 0, 0)


def pack(files: Mapping[str, bytes], method: int = zipfile.ZIP_STORED) -> bytes:
    """Pack files into a zip, sorted and undated; stored as they are unless told otherwise, since servers compress
    anyway and
    Python then reads without inflating."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", method) as archive:
        for name in sorted(files):
            entry = zipfile.ZipInfo(name, _EARLIEST)
            entry.compress_type = method
            entry.external_attr = 0o644 << 16
            entry.create_system = 3
            archive.writestr(entry, files[name])
    return out.getvalue()


def unpack(archive: Path | bytes) -> dict[str, bytes]:
    """Read every file of a zip."""
    source = io.BytesIO(archive) if isinstance(archive, bytes) else archive
    with zipfile.ZipFile(source) as opened:
        return {entry.filename: opened.read(entry) for entry in opened.infolist() if not entry.is_dir()}


def integrity(content: bytes) -> str:
    """The hash of a file as browsers write it (W3C Subresource Integrity)."""
    return "sha256-" + base64.b64encode(hashlib.sha256(content).digest()).decode()
