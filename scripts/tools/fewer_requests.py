"""Pages ask for less, one thing after another: our style sheets become one, the page names at its head every script that
will be needed, and the search is made ready when it is first opened.

The one style sheet has its hash in its name, so it may be kept as long as a browser likes.
"""

import hashlib
import re
from pathlib import Path, PurePosixPath

from .places import SITE
from .steps import Step
from .trouble import Trouble

STYLES = "assets/stylesheets"
THEME = "assets/javascripts"
SCRIPTS = "assets/javascript"
_STYLE_LINKS = re.compile(r'(?:<link rel="stylesheet" href="[^"]*?assets/stylesheets/(?!main\.|palette\.[0-9a-f]{8})[\w-]+\.css">\s*)+')
_STYLE_NAME = re.compile(r'href="([^"]*?)assets/stylesheets/([\w-]+\.css)"')
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
#: Where the theme makes its search ready (at once unless the page lies on a disk) and starts its worker, and what stands there instead.
_SEARCH_WHEN_OPENED = (
    (re.compile(r'(?<=[(,])([\w$]+)\(location\.protocol!=="file:"\)(?=,)'), lambda found: f"{found[1]}(false)"),
    (re.compile(r"(?<==)new Worker\(([\w$])\)(?=\)\{)"), lambda found: _LATE_WORKER.replace("ADDRESS", found[1])),
)
_IMPORT = re.compile(r'^(?:import|export)\b[^"\';]*["\']\./([\w-]+\.js)["\']', re.MULTILINE)


def shorten() -> None:
    """Work over every page of the built site."""
    sheets: set[str] = set()
    for path in sorted(SITE.rglob("*.html")):
        page = path.read_text()
        links = _STYLE_LINKS.search(page)
        if links:
            named = _STYLE_NAME.findall(links[0])
            one = one_style_sheet(SITE / STYLES, [name for _, name in named])
            sheets.update(name for _, name in named)
            page = page.replace(links[0], f'<link rel="stylesheet" href="{named[0][0]}{STYLES}/{one}">\n', 1)
        path.write_text(with_imports_named(page, SITE / SCRIPTS))
    for name in sheets:
        (SITE / STYLES / name).unlink()
    for path in (SITE / THEME).glob("bundle.*.min.js"):
        path.write_text(with_search_when_opened(path.read_text()))


def one_style_sheet(folder: Path, names: list[str]) -> str:
    """Write style sheets into one, in order. Returns: its name."""
    text = "\n".join((folder / name).read_text() for name in names)
    one = f"handbook.{hashlib.sha256(text.encode()).hexdigest()[:8]}.css"
    (folder / one).write_text(text)
    return one


def with_search_when_opened(script: str) -> str:
    """The theme's script without the reading of every page's words at each visit, for a search that few visits make.

    Raises: Trouble when the theme has changed.
    """
    for place, instead in _SEARCH_WHEN_OPENED:
        script, count = place.subn(instead, script)
        if count != 1:
            raise Trouble(f"The theme's script makes its search ready in {count} places instead of 1: look at {__file__}")
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


after_pages = [Step("fewer requests", shorten, reads=["scripts/tools/fewer_requests.py", "docs", "mkdocs.yml", "overrides"])]
