"""What a studio says when it builds a handbook of its own: its method, its name, its address, its colour."""

import re
import subprocess
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

from scripts.tools.command_error import CommandError
from scripts.tools.places import BUILD, ROOT
from scripts.tools.thread_colour import checked_colour

LONGEST_NAME = 80
HOUSE = BUILD / "house"


@dataclass(frozen=True)
class Own:
    """house: a file with the studio's method; name: of the handbook; address: where it will be served;
    colour: of its thread.

    Each is None where nothing was said.
    """

    house: Path | None = None
    name: str | None = None
    address: str | None = None
    colour: str | None = None

    def checked(self) -> "Own":
        """The same, the name, the address and the colour as they are used. Raises: Trouble for what cannot be."""
        if self.house is not None and not self.house.is_file():
            raise CommandError(
                f"There is no file {self.house}: --house wants a house method, as the handbook saves it."
            )
        return Own(
            self.house,
            None if self.name is None else checked_name(self.name),
            None if self.address is None else checked_address(self.address),
            None if self.colour is None else checked_colour(self.colour),
        )

    def settings(self, python: Path) -> dict[str, str]:
        """What the build is told, by name; the method is checked and laid ready.

        Raises: Trouble when the method cannot be built with.
        """
        told = {"SITE_NAME": self.name, "SITE_URL": self.address, "SITE_COLOUR": self.colour}
        if self.house is not None:
            lay_ready(python, self.house)
            told["SITE_HOUSE"] = str(HOUSE)
        return {name: value for name, value in told.items() if value is not None}


def checked_name(name: str) -> str:
    """A name without the space around it. Raises: Trouble for one that no title could be made of."""
    name = name.strip()
    if not name:
        raise CommandError(
            'The name is empty: --name wants what the handbook is to be called, such as --name "Our handbook".'
        )
    if len(name) > LONGEST_NAME or not name.isprintable():
        raise CommandError(f"The name must be one line of at most {LONGEST_NAME} letters, figures and signs.")
    return name


def checked_address(address: str) -> str:
    """An address with a slash at its end. Raises: Trouble for one that no site can have."""
    wanted = "--address wants where the handbook will be, such as https://example.org/handbook/"
    try:
        parts = urlsplit(address.strip())
        port_is_fine = parts.port != 0
    except ValueError:
        parts, port_is_fine = None, False
    if not parts or parts.scheme not in ("http", "https") or not parts.hostname or not port_is_fine:
        raise CommandError(f"“{address}” is no address of a site: {wanted}.")
    if parts.query or parts.fragment or not re.fullmatch(r"[\w.~%/-]*", parts.path, re.ASCII):
        raise CommandError(
            f"“{address}” is more than the address of a site: {wanted}, in plain letters and nothing after that."
        )
    return f"{parts.scheme}://{parts.netloc}{parts.path.rstrip('/')}/"


def lay_ready(python: Path, house: Path) -> None:
    """Check a method and write what the build needs of it. Raises: Trouble with the file's name and a sentence."""
    done = subprocess.run(
        [python, ROOT / "scripts/setup/house.py", house, HOUSE],
        stderr=subprocess.PIPE,
        encoding="utf-8",
        cwd=Path.cwd(),
    )
    if done.returncode:
        raise CommandError(f"{house}: {done.stderr.strip()}")
