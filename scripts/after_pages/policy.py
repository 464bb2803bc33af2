"""The site's Content-Security-Policy: everything from the site's own origin, and of inline scripts only those the build
made.

Written into every page as a meta element, so that it holds wherever the site is copied to, and given to the server as
headers. Both hold where both are there. The page's own lets scripts and workers be made from texts, and run
WebAssembly, since a host that sends no headers may also call scripts by a type that browsers refuse; the headers do
not.
"""

from __future__ import annotations

import html
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from html.parser import HTMLParser
from pathlib import Path

from scripts.tools.archives import integrity

WORKER = "python-worker.js"
_CHARSET = '<meta charset="utf-8">'
#: Kinds of script elements that browsers run; any other type is data.
_RUN = {"", "module", "text/javascript", "application/javascript"}


class _InlineScripts(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=False)
        self.found: list[str] = []
        self._inside = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        self._inside = tag == "script" and "src" not in given and (given.get("type") or "").lower() in _RUN
        if self._inside:
            self.found.append("")

    def handle_endtag(self, tag: str) -> None:
        self._inside = False

    def handle_data(self, data: str) -> None:
        if self._inside:
            self.found[-1] += data


def inline_scripts(page: str) -> list[str]:
    """The inline scripts of a page that a browser would run."""
    parser = _InlineScripts()
    parser.feed(page)
    parser.close()
    return parser.found


def policy_for(pages: Iterable[str], scripts: Sequence[str] = (), workers: Sequence[str] = ()) -> str:
    """The policy that fits all these pages: moving between pages without a page load keeps the first page's policy.

    Parameters: pages, as HTML; scripts and workers, sources allowed beside the site itself.
    """
    hashes = sorted({integrity(script.encode()) for page in pages for script in inline_scripts(page)})
    return "; ".join(
        [
            "default-src 'self'",
            " ".join(["script-src 'self'", *scripts, *(f"'{each}'" for each in hashes)]),
            " ".join(["worker-src 'self'", *workers]),
            "style-src 'self'",
            "img-src 'self' data:",  # the theme's icons are masks written into its style sheet
            "object-src 'none'",
            "frame-src 'none'",
            "media-src 'none'",
            "base-uri 'none'",
            "form-action 'none'",
        ]
    )


def put_into(site: Path) -> None:
    """Write the policy into every page of the built site."""
    pages = {path: path.read_text() for path in sorted(site.rglob("*.html"))}
    policy = policy_for(pages.values(), *FROM_TEXTS)
    for path, page in pages.items():
        if _CHARSET not in page:
            raise ValueError(f"{path} does not say its character set, so the policy has no place to go")
        path.write_text(page.replace(_CHARSET, f"{_CHARSET}{_metas(policy)}", 1))


def _metas(policy: str) -> str:
    return (
        f'<meta http-equiv="Content-Security-Policy" content="{html.escape(policy)}">'
        '<meta name="referrer" content="no-referrer">'
    )


def headers_for(site: Path) -> Callable[[str], Mapping[str, str]]:
    """What a server should send along with each file of the site: the policy, and what only a header can say."""

    def headers(path: str) -> Mapping[str, str]:
        name = path.partition("?")[0].rpartition("/")[2]
        return _COMMON | {
            "Content-Security-Policy": _WORKER_POLICY if name == WORKER else _page_policy(site / "index.html")
        }

    return headers


#: What scripts and workers may come from beside the site, where a page has no policy but its own.
FROM_TEXTS = (["blob:", "'wasm-unsafe-eval'"], ["blob:"])
_COMMON = {
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=()",
}
#: The only script that may run WebAssembly; a worker takes its policy from its own headers, not from its page.
_WORKER_POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'"


def _page_policy(page: Path) -> str:
    """The policy a built page carries, without what only a host that sends no headers needs, and with the part that is
    heeded in headers alone."""
    written = _META.search(page.read_text()) if page.is_file() else None
    if not written:
        return "default-src 'self'"
    strict = html.unescape(written[1])
    for sources in FROM_TEXTS:
        strict = strict.replace(f"'self' {' '.join(sources)}", "'self'")
    return f"{strict}; frame-ancestors 'none'"


_META = re.compile(r'<meta http-equiv="Content-Security-Policy" content="([^"]*)">')
