"""Set up what is missing, build the handbook and run every test; words not known here go to pytest.

python3 scripts/test.py                  all tests
python3 scripts/test.py tests/test_x.py -k hem
python3 scripts/test.py --setup          only set up: environment, npm packages, browser
python3 scripts/test.py --below /linen/  all tests, of the handbook below a path as on a host that it shares
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - an older Python must read this far and get its sentence
    sys.exit("The handbook needs Python 3.11 or newer, and this is Python {}.{}.".format(*sys.version_info))

import argparse
import os
import subprocess
from pathlib import Path
from urllib.parse import urlsplit

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from scripts.setup import browser, set_up
from scripts.setup.copy_of_ones_own import checked_address
from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import ADDRESS_FILE, ROOT, SITE
from scripts.tools.server import open_server

# Every test: a file at a time, one more at once than there are processors, up to four, since half of the time a test
# waits for a browser.
AT_ONCE = min((os.cpu_count() or 1) + 1, 4)
SIDE_BY_SIDE = [f"--numprocesses={AT_ONCE}", "--dist=loadfile", "--no-loadscope-reorder"]


def free_address(below: str) -> str:
    """An address to build and serve the site for: the last one while its port is free, so as not to build again."""
    last = urlsplit(ADDRESS_FILE.read_text() if ADDRESS_FILE.is_file() else "")
    try:
        with open_server(SITE, last.port or 0, below=below) as server:
            return server.address
    except CommandError:
        with open_server(SITE, 0, below=below) as server:
            return server.address


def main() -> int:
    parser = argparse.ArgumentParser(
        description="Build the handbook and run every test.", epilog="Other words go to pytest.", allow_abbrev=False
    )
    parser.add_argument("--setup", action="store_true", help="only set up what is missing")
    parser.add_argument("--below", metavar="PATH", default="/", help="the path that the handbook is served below")
    asked, for_pytest = parser.parse_known_args()
    below = urlsplit(checked_address(f"http://127.0.0.1/{asked.below.strip('/')}")).path
    python = set_up.for_tests()
    chromium = browser.ensure()
    if asked.setup:
        return 0
    set_up.build(python, {"SITE_URL": free_address(below), "SITE_HOUSE": str(ROOT / "tests/house")})
    return subprocess.run(
        [python, "-m", "pytest", *(for_pytest or SIDE_BY_SIDE)], cwd=ROOT, env=os.environ | {"CHROMIUM": chromium}
    ).returncode


if __name__ == "__main__":
    run_main(main)
