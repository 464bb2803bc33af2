"""Set up what is missing, build the handbook and run every test; words not known here go to pytest.

python3 scripts/test.py                  all tests
python3 scripts/test.py tests/test_x.py -k hem
python3 scripts/test.py --setup          only set up: environment, npm packages, browser
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - an older Python must read this far and get its sentence
    sys.exit("The handbook needs Python 3.11 or newer, and this is Python {}.{}.".format(*sys.version_info))

import argparse
import os
import subprocess

from tools import browser, setup
from tools.places import ADDRESS_FILE, ROOT, SITE
from tools.server import open_server
from tools.trouble import Trouble, run_main

# Every test: a file at a time, on as many processors as there are up to four.
SIDE_BY_SIDE = ["--numprocesses=auto", "--maxprocesses=4", "--dist=loadfile", "--no-loadscope-reorder"]


def free_address() -> str:
    """An address to build and serve the site for: the last one while its port is free, so as not to build again."""
    last = ADDRESS_FILE.read_text() if ADDRESS_FILE.is_file() else ""
    port = last.removeprefix("http://127.0.0.1:").rstrip("/")
    try:
        with open_server(SITE, int(port) if port.isdecimal() else 0) as server:
            return server.address
    except Trouble:
        with open_server(SITE, 0) as server:
            return server.address


def main() -> int:
    parser = argparse.ArgumentParser(
        description="Build the handbook and run every test.", epilog="Other words go to pytest.", allow_abbrev=False
    )
    parser.add_argument("--setup", action="store_true", help="only set up what is missing")
    asked, for_pytest = parser.parse_known_args()
    python = setup.for_tests()
    chromium = browser.ensure()
    if asked.setup:
        return 0
    setup.build(python, {"SITE_URL": free_address(), "SITE_HOUSE": str(ROOT / "tests/house")})
    return subprocess.run(
        [python, "-m", "pytest", *(for_pytest or SIDE_BY_SIDE)], cwd=ROOT, env=os.environ | {"CHROMIUM": chromium}
    ).returncode


if __name__ == "__main__":
    run_main(main)
