"""esbuild, from npm: joins scripts and shortens style sheets."""

import subprocess

from scripts.setup import node
from scripts.tools.command_error import CommandError
from scripts.tools.places import NODE_MODULES, ROOT, VENV


def run(*words: str, text: str | None = None) -> str:
    """What esbuild makes of a text, or else of the files it is told of. Raises: Trouble when it cannot."""
    command = [
        *node.found(VENV).node,
        str(NODE_MODULES / "esbuild/bin/esbuild"),
        "--charset=utf8",
        "--log-level=warning",
        *words,
    ]
    done = subprocess.run(command, cwd=ROOT, input=text, stdout=subprocess.PIPE, encoding="utf-8")
    if done.returncode:
        raise CommandError("The pages' scripts and style sheets could not be joined; the lines above say why.")
    return done.stdout
