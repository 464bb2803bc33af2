"""Set up what is missing, build the handbook and serve it on this machine.

python3 scripts/serve.py [--port N]      serve on 127.0.0.1 and print the address
python3 scripts/serve.py --build         only build into site/
python3 scripts/serve.py --portable DIR  write a copy, as a folder and a zip, that opens by double click
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - an older Python must read this far and get its sentence
    sys.exit("The handbook needs Python 3.11 or newer, and this is Python {}.{}.".format(*sys.version_info))

import argparse
from pathlib import Path

from runtime import portable
from runtime.policy import headers_for
from tools import setup
from tools.places import BUILD, SITE
from tools.server import open_server
from tools.trouble import Trouble, run_main


def port(text: str) -> int:
    number = int(text) if text.isdecimal() else -1
    if not 0 <= number <= 65535:
        raise argparse.ArgumentTypeError(f"a port is a whole number from 0 (any free one) to 65535, and this is {text}")
    return number


def write_portable(folder: Path) -> None:
    """Write the copy that needs no server. Raises: Trouble when the folder holds something else."""
    try:
        archive = portable.make(SITE, BUILD / "runtime", folder.resolve())
    except FileExistsError:
        raise Trouble(f"{folder} holds other things already; name a folder that is empty or not there yet.") from None
    print(f"Open {folder / 'index.html'} in a browser; {archive} holds the same, to carry or send.")


def main() -> int:
    parser = argparse.ArgumentParser(description="Build the handbook and serve it on this machine.")
    parser.add_argument("--build", action="store_true", help="only build, into site/")
    parser.add_argument(
        "--portable", type=Path, metavar="DIR", help="write a copy that opens by double click, and a zip of it"
    )
    parser.add_argument("--port", type=port, default=8000, help="the port on 127.0.0.1; 0 for any free one")
    asked = parser.parse_args()
    if asked.build or asked.portable:
        setup.build(setup.for_site())
        if asked.portable:
            write_portable(asked.portable)
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
