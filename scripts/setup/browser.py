"""The Chromium that the browser tests drive: the machine's own, else one from the system's packages."""

import os
import shutil
import subprocess

from scripts.tools.command_error import CommandError

#: A Chromium without windows, whose drawing is half the work of a test: the program itself, since the command of its
#: name is a script, which a kill would hit in its place.
WITHOUT_WINDOWS = "/usr/lib/chromium/chromium-headless-shell"
NAMES = (WITHOUT_WINDOWS, "chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome")
PACKAGES = ("chromium-headless-shell", "chromium")  # of systems with apt-get; not all have the first
APPLICATIONS = (
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
)
ARGUMENTS = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
)  # fmt: skip
NONE_FOUND = (
    "The tests need a Chromium: none was found and none could be installed here; "
    "install one, or say where it is with CHROMIUM=/path/to/chromium, then run this again."
)


def runs(program: str) -> bool:
    """Whether this is a browser that starts; some systems ship a mere pointer to one under the same name."""
    try:
        return subprocess.run([program, "--version"], capture_output=True, timeout=60).returncode == 0
    except (OSError, subprocess.TimeoutExpired):
        return False


def find() -> str | None:
    """The path of a Chromium: the one named by CHROMIUM, else the first found under the usual names.

    Raises: Trouble when CHROMIUM names something that does not run.
    """
    named = os.environ.get("CHROMIUM")
    if named:
        if not runs(named):
            raise CommandError(
                f"CHROMIUM says {named}, and that does not run as a browser; put it right, then run this again."
            )
        return named
    candidates = [shutil.which(name) for name in NAMES] + [app for app in APPLICATIONS if os.path.exists(app)]
    return next((path for path in candidates if path and runs(path)), None)


def administrator() -> list[str] | None:
    """The words to put before a command that needs rights over the system; None when we have none."""
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        return []
    if shutil.which("sudo") and subprocess.run(["sudo", "-n", "true"], capture_output=True).returncode == 0:
        return ["sudo", "-n"]
    return None


def install() -> None:
    """Install Chromium from the system's packages, where that is permitted; says nothing when it is not."""
    rights = administrator()
    if rights is None or not shutil.which("apt-get"):
        return
    quiet = [*rights, "env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-qq"]
    subprocess.run([*quiet, "update"], stdout=subprocess.DEVNULL)
    for package in PACKAGES:
        print(f"Installing {package} from the system's packages", flush=True)
        if subprocess.run([*quiet, "install", "-y", package], stdout=subprocess.DEVNULL).returncode == 0:
            return


def ensure() -> str:
    """Find a Chromium, or install one.

    Raises: Trouble when there is none and none can be had.
    """
    found = find()
    if found is None:
        install()
        found = find()
    if found is None:
        raise CommandError(NONE_FOUND)
    return found
