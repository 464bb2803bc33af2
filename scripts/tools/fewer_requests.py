"""Pages ask for less, one thing after another: the theme's style sheets and ours become one, the page names at its head
every script that
will be needed, and the search is made ready when it is first opened.

The one style sheet has its hash in its name, so it may be kept as long as a browser likes.
"""

import hashlib
import re
from pathlib import Path, PurePosixPath

from . import esbuild
from .places import SITE
from .steps import Step
from .trouble import Trouble

STYLES = "assets/stylesheets"
THEME = "assets/javascripts"
SCRIPTS = "assets/javascript"
_STYLE_LINKS = re.compile(r'(?:<link rel="stylesheet" href="[^"]*?assets/stylesheets/[\w.-]+\.css">\s*)+')
_STYLE_NAME = re.compile(r'href="([^"]*?)assets/stylesheets/([\w.-]+\.css)"')
_SCRIPT = re.compile(r'<script\b[^>]*\bsrc="([^"]*?)assets/javascript/([\w-]+\.js)" type="module"[^>]*></script>')
#: Stands for the theme's search worker until there is something for it to do.
_LATE_WORKER = """new class extends EventTarget {
  postMessage(words) { (this.own ??= this.begin()).postMessage(words); }
  begin() {
    const own = new Worker(ADDRESS);
    own.onmessage = ({ data }) => this.dispatchEvent(new MessageEvent("message", { data }));
    return own;
  }
}"""
#: What is changed in the theme's script: where it stands, and what stands there instead.
_CHANGES = {
    # It makes its search ready at once, unless the page lies on a disk, and starts a worker for it.
    "search made ready": (
        re.compile(r'(?<=[(,])([\w$]+)\(location\.protocol!=="file:"\)(?=,)'),
        lambda found: f"{found[1]}(false)",
    ),
    "search worker": (
        re.compile(r"(?<==)new Worker\(([\w$])\)(?=\)\{)"),
        lambda found: _LATE_WORKER.replace("ADDRESS", found[1]),
    ),
    # It writes every address anew in full: what is loaded by then would be loaded once more, and for a moment there is
    # no style sheet.
    "addresses in full": (
        re.compile(
            r'"\[href\], \[src\]"(?=,[\w$]\)\)for\(let [\w$] of\["href","src"\]\)\{let '
            r"[\w$]=([\w$])\.getAttribute\(([\w$])\);if\([^{]*\{\1\[\2\]=\1\[\2\])"
        ),
        lambda found: '"[href]:not([rel=stylesheet],[rel$=preload]), [src]"',
    ),
    # Another page's head is compared with this one's; these are then the same wherever the page lies.
    "heads compared": (
        re.compile(r"(?<=\.set\()([\w$])\.outerHTML(?=,\1\))"),
        lambda found: (
            f'(/stylesheet|preload/.test({found[1]}.rel)?{found[1]}.href.split("/").pop():{found[1]}.outerHTML)'
        ),
    ),
}
_IMPORT = re.compile(r'^(?:import|export)\b[^"\';]*["\']\./([\w-]+\.js)["\']', re.MULTILINE)


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
        path.write_text(with_changes(path.read_text()))


def one_style_sheet(folder: Path, names: tuple[str, ...]) -> str:
    """Write style sheets into one, in order, without what only people read. Returns: its name."""
    text = esbuild.run("--loader=css", "--minify", text="\n".join((folder / name).read_text() for name in names))
    one = f"handbook.{hashlib.sha256(text.encode()).hexdigest()[:8]}.css"
    (folder / one).write_text(text)
    return one


def with_changes(script: str) -> str:
    """The theme's script without what costs every visit and serves few: see `_CHANGES`.

    Raises: Trouble when the theme has changed.
    """
    for name, (place, instead) in _CHANGES.items():
        script, count = place.subn(instead, script)
        if count != 1:
            raise Trouble(f"The theme's script has {count} places instead of 1 that say: {name}. Look at {__file__}")
    return script


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
        reads=["scripts/tools/fewer_requests.py", "scripts/tools/esbuild.py", "docs", "mkdocs.yml", "overrides"],
    )
]
