"""Pages ask for less, one thing after another: the theme's style sheets and ours become one, the page names at its head
every script that
will be needed, and the search is made ready when it is first opened.

The one style sheet has its hash in its name, so it may be kept as long as a browser likes.
"""

import hashlib
import re
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from scripts.after_pages import esbuild
from scripts.tools.places import SITE
from scripts.tools.steps import Step

STYLES = "assets/stylesheets"
THEME = "assets/javascripts"
SCRIPTS = "assets/javascript"
_STYLE_LINKS = re.compile(r'(?:<link rel="stylesheet" href="[^"]*?assets/stylesheets/[\w.-]+\.css">\s*)+')
_STYLE_NAME = re.compile(r'href="([^"]*?)assets/stylesheets/([\w.-]+\.css)"')
_SCRIPT = re.compile(r'<script\b[^>]*\bsrc="([^"]*?)assets/javascript/([\w-]+\.js)" type="module"[^>]*></script>')
#: Stands for the theme's search worker until there is something for it to do. Its address is meant from the page that
#: was loaded: by then the reader may have gone on to a page in another folder.
_LATE_WORKER = """new class extends EventTarget {
  address = new URL(ADDRESS, location);
  postMessage(words) { (this.own ??= this.begin()).postMessage(words); }
  begin() {
    const own = new Worker(this.address);
    own.onmessage = ({ data }) => this.dispatchEvent(new MessageEvent("message", { data }));
    return own;
  }
}"""


@dataclass(frozen=True)
class Change:
    """What is changed in the theme's script: its name, where it stands, what stands there instead, and what a build
    goes without where the theme says it otherwise. Each is for speed alone: without it the page works as the theme has
    it."""

    name: str
    place: re.Pattern[str]
    instead: Callable[[re.Match[str]], str]
    lost: str


CHANGES = (
    Change(
        "search made ready",
        re.compile(r'(?<=[(,])([\w$]+)\(location\.protocol!=="file:"\)(?=,)'),
        lambda found: f"{found[1]}(false)",
        "every visit makes the search ready, not only one that searches",
    ),
    Change(
        "search worker",
        re.compile(r"(?<==)new Worker\(([\w$])\)(?=\)\{)"),
        lambda found: _LATE_WORKER.replace("ADDRESS", found[1]),
        "every visit starts a worker for the search, not only one that searches",
    ),
    # It writes every address anew in full: what is loaded by then would be loaded once more.
    Change(
        "addresses in full",
        re.compile(
            r'"\[href\], \[src\]"(?=,[\w$]\)\)for\(let [\w$] of\["href","src"\]\)\{let '
            r"[\w$]=([\w$])\.getAttribute\(([\w$])\);if\([^{]*\{\1\[\2\]=\1\[\2\])"
        ),
        lambda found: '"[href]:not([rel=stylesheet],[rel$=preload]), [src]"',
        "on the way to another page the style sheet is loaded once more, and for a moment there is none",
    ),
    # Another page's head is compared with this one's; these are then the same wherever the page lies.
    Change(
        "heads compared",
        re.compile(r"(?<=\.set\()([\w$])\.outerHTML(?=,\1\))"),
        lambda found: (
            f'(/stylesheet|preload/.test({found[1]}.rel)?{found[1]}.href.split("/").pop():{found[1]}.outerHTML)'
        ),
        "on the way to a page in another folder the style sheet is taken out and put in again",
    ),
)
_IMPORT = re.compile(r'(?:^|;)(?:import|export)\b[^"\';()]*["\']\./([\w-]+\.js)["\']', re.MULTILINE)


def shorten() -> None:
    """Work over every page of the built site."""
    made: dict[tuple[str, ...], str] = {}
    for path in sorted(SITE.rglob("*.html")):
        page = path.read_text()
        links = _STYLE_LINKS.search(page)
        if links:
            named = _STYLE_NAME.findall(links[0])
            names = tuple(name for _, name in named)
            one = made.get(names) or made.setdefault(names, one_style_sheet(SITE / STYLES, names))
            page = page.replace(links[0], f'<link rel="stylesheet" href="{named[0][0]}{STYLES}/{one}">\n', 1)
        path.write_text(with_imports_named(page, SITE / SCRIPTS))
    for name in {name for names in made for name in names}:
        (SITE / STYLES / name).unlink()
    for path in (SITE / THEME).glob("bundle.*.min.js"):
        script, off = with_changes(path.read_text())
        path.write_text(script)
        for change in off:
            print(f"Warning: the theme’s script has changed ({change.name}): {change.lost}.", file=sys.stderr)


def one_style_sheet(folder: Path, names: tuple[str, ...]) -> str:
    """Write style sheets into one, in order, without what only people read. Returns: its name."""
    text = esbuild.run("--loader=css", "--minify", text="\n".join((folder / name).read_text() for name in names))
    one = f"handbook.{hashlib.sha256(text.encode()).hexdigest()[:8]}.css"
    (folder / one).write_text(text)
    return one


def with_changes(script: str) -> tuple[str, list[Change]]:
    """The theme's script without what costs every visit and serves few, and the changes that do not fit it: a theme
    that says something otherwise, or twice, keeps it."""
    off = []
    for change in CHANGES:
        changed, count = change.place.subn(change.instead, script)
        if count == 1:
            script = changed
        else:
            off.append(change)
    return script, off


def with_imports_named(page: str, folder: Path) -> str:
    """A page whose head names its scripts and every script that these import, so that all are asked for at once."""
    found = _SCRIPT.findall(page)
    if not found:
        return page
    entries = [name for _, name in found]
    wanted = dict.fromkeys([*entries, *imports_of(folder, entries)])
    base = found[0][0]
    links = "".join(f'<link rel="modulepreload" href="{base}{PurePosixPath(SCRIPTS, name)}">' for name in wanted)
    return page.replace("</head>", f"{links}</head>", 1)


def imports_of(folder: Path, names: list[str]) -> list[str]:
    """The scripts that scripts import from beside them, and those that these import, and so on."""
    seen: dict[str, None] = {}
    waiting = list(names)
    while waiting:
        path = folder / waiting.pop(0)
        for name in _IMPORT.findall(path.read_text()) if path.is_file() else ():
            if name not in seen:
                seen[name] = None
                waiting.append(name)
    return list(seen)


after_pages = [
    Step(
        "fewer requests",
        shorten,
        reads=[
            "scripts/after_pages/fewer_requests.py",
            "scripts/after_pages/esbuild.py",
            "docs",
            "mkdocs.yml",
            "overrides",
        ],
    )
]
