"""What a file of the runtime is called in the site: by an ending whose type every host knows, or of which none makes
anything."""

from pathlib import PurePosixPath

#: Hosts send modules called `.mjs` as files to save; some send what is called `.gz` as if it were packed on the way.
ENDINGS = {".mjs": ".js", ".gz": ".bin"}


def served_name(name: str) -> str:
    """The name in the site of a file that the bundle has under another."""
    path = PurePosixPath(name)
    return str(path.with_suffix(ENDINGS.get(path.suffix, path.suffix)))
