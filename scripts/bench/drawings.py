"""How many drawings the built handbook has, page by page, and how many of them an older state did not have.

    python scripts/bench/drawings.py                  of this build
    python scripts/bench/drawings.py --before CLONE   beside those of an older state, built in a clone of its own

A step's drawing counts as one, a key and what is only played do not; of a drawing laid out twice, for phones and for
screens, one counts.
"""

import argparse
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from bs4 import BeautifulSoup, Tag

from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import SITE

_NOT_COUNTED = ("key", "played", "on-screens")


def drawings(page: Path) -> int:
    """The drawings of a page."""
    found = BeautifulSoup(page.read_text("utf-8"), "html.parser").select("article svg[role=img]")
    return sum(not any(_is_one(each, name) for name in _NOT_COUNTED) for each in found)


def _is_one(svg: Tag, name: str) -> bool:
    return any(name in (each.get("class") or []) for each in (svg, *svg.parents))


def counted(site: Path) -> dict[str, int]:
    """How many drawings stand on each page that has any, by its address."""
    pages = {str(each.parent.relative_to(site)): drawings(each) for each in sorted(site.rglob("index.html"))}
    return {name: count for name, count in pages.items() if count}


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--before", type=Path, metavar="CLONE", help="a clone of an older state, with its site built")
    asked = parser.parse_args()
    if not (SITE / "index.html").is_file():
        raise CommandError("Build the site first: python3 scripts/serve.py --build")
    now = counted(SITE)
    then = counted(asked.before / SITE.name) if asked.before else {}
    for name, count in now.items():
        print(f"{count:4}{f'  ({count - then.get(name, 0):+})' if asked.before else ''}  {name}")
    print(f"{sum(now.values()):4} drawings on {len(now)} pages")
    if asked.before:
        print(f"{sum(then.values()):4} before; {sum(now.values()) - sum(then.values()):+}")
    return 0


if __name__ == "__main__":
    run_main(main)
