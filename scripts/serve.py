"""Set up what is missing, build the handbook and serve it on this machine.

    python3 scripts/serve.py [--port N]      serve on 127.0.0.1 and print the address
    python3 scripts/serve.py --build         only build into site/
"""

import sys

if sys.version_info < (3, 11):
    sys.exit("The handbook needs Python 3.11 or newer, and this is Python %d.%d." % sys.version_info[:2])

import argparse

from runtime.policy import headers_for
from tools import setup
from tools.places import SITE
from tools.server import open_server
from tools.trouble import run_main


def port(text: str) -> int:
    number = int(text) if text.isdecimal() else -1
    if not 0 <= number <= 65535:
        raise argparse.ArgumentTypeError(f"a port is a whole number from 0 (any free one) to 65535, and this is {text}")
    return number


def main() -> int:
    parser = argparse.ArgumentParser(description="Build the handbook and serve it on this machine.")
    parser.add_argument("--build", action="store_true", help="only build, into site/")
    parser.add_argument("--port", type=port, default=8000, help="the port on 127.0.0.1; 0 for any free one")
    asked = parser.parse_args()
    if asked.build:
        setup.build(setup.for_site())
        return 0
    # The pages are built for the address they are served from, so the port is taken first.
    with open_server(SITE, asked.port, headers_for(SITE)) as server:
        setup.build(setup.for_site(), server.address)
        print(f"The handbook is at {server.address} (Ctrl+C stops it)", flush=True)
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            print()
    return 0


if __name__ == "__main__":
    run_main(main)
