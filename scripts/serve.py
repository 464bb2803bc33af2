"""Set up what is missing, build the handbook and serve it on this machine.

python3 scripts/serve.py [--port N]      serve on 127.0.0.1 and print the address
python3 scripts/serve.py --build         only build into site/
python3 scripts/serve.py --portable DIR  write a copy, as a folder and a zip, that opens by double click
python3 scripts/serve.py --headers DIR   write the headers a host should send, in the words of three kinds of host

A handbook of one's own, with any of these: --house FILE is a house method saved on the page of that name, --name what
the handbook is called, --address where it will be, --colour that of its thread.
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - an older Python must read this far and get its sentence
    sys.exit("The handbook needs Python 3.11 or newer, and this is Python {}.{}.".format(*sys.version_info))

import argparse
from pathlib import Path
from urllib.parse import urlsplit

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from scripts.after_pages import hosts, portable_copy
from scripts.after_pages.policy import headers_for
from scripts.setup import set_up
from scripts.setup.copy_of_ones_own import Own
from scripts.tools.command_error import CommandError, run_main, why
from scripts.tools.places import BUILD, SITE
from scripts.tools.server import open_server


def port(text: str) -> int:
    number = int(text) if text.isdecimal() else -1
    if not 0 <= number <= 65535:
        raise argparse.ArgumentTypeError(f"a port is a whole number from 0 (any free one) to 65535, and this is {text}")
    return number


def write_portable(folder: Path) -> None:
    """Write the copy that needs no server. Raises: Trouble when the folder holds something else."""
    try:
        archive = portable_copy.make(SITE, BUILD / "runtime", folder.resolve())
    except FileExistsError:
        raise CommandError(
            f"{folder} holds other things already; name a folder that is empty or not there yet."
        ) from None
    print(f"Open {folder / 'index.html'} in a browser; {archive} holds the same, to carry or send.")


def write_headers(folder: Path, address: str | None) -> None:
    """Write what hosts are told of headers. Raises: Trouble when the folder cannot be written to."""
    try:
        written = hosts.write(SITE, urlsplit(address or "/").path, folder)
    except OSError as problem:
        raise CommandError(f"{folder} cannot be written to ({why(problem)}); name another folder.") from None
    print(f"Written to {folder}: {', '.join(written)}. Take the one that your host reads.")


def main() -> int:
    parser = argparse.ArgumentParser(description="Build the handbook and serve it on this machine.")
    parser.add_argument("--build", action="store_true", help="only build, into site/")
    parser.add_argument(
        "--portable", type=Path, metavar="DIR", help="write a copy that opens by double click, and a zip of it"
    )
    parser.add_argument("--headers", type=Path, metavar="DIR", help="write the headers a host should send")
    parser.add_argument("--house", type=Path, metavar="FILE", help="the house method the handbook is built with")
    parser.add_argument("--name", help="what the handbook is called")
    parser.add_argument("--colour", metavar="#RRGGBB", help="of links, buttons and stitches")
    parser.add_argument("--address", metavar="URL", help="where the handbook will be, if not on this machine")
    parser.add_argument("--port", type=port, default=8000, help="the port on 127.0.0.1; 0 for any free one")
    asked = parser.parse_args()
    own = Own(asked.house, asked.name, asked.address, asked.colour).checked()
    only_built = asked.build or asked.portable or asked.headers
    if only_built:
        python = set_up.for_site()
        set_up.build(python, own.settings(python))
        if asked.portable:
            write_portable(asked.portable)
        if asked.headers:
            write_headers(asked.headers, own.address)
        return 0
    # The pages are built for the address they are served from, so the port is taken first.
    path = urlsplit(own.address or "/").path
    with open_server(SITE, asked.port, headers_for(SITE), path) as server:
        python = set_up.for_site()
        set_up.build(python, {"SITE_URL": server.address, **own.settings(python)})
        print(f"The handbook is at {server.address} (Ctrl+C stops it)", flush=True)
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            print()
    return 0


if __name__ == "__main__":
    run_main(main)
