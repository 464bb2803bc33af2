"""The headers of the site in the words of those who may serve it: a `_headers` file, nginx, Caddy.

They say what the local server sends with every file. A page carries its policy itself as well, so that a host that
sends none of this still serves a safe and working handbook: what it then lacks is that no other site may frame a page,
and a policy for what is no page.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from scripts.after_pages.policy import WORKER, headers_for

POLICY = "Content-Security-Policy"
WORKER_AT = f"assets/javascript/{WORKER}"
#: Endings whose type some servers do not know, and without which a browser refuses a file.
TYPES = {
    "wasm": "application/wasm",
    "webmanifest": "application/manifest+json",
    "woff2": "font/woff2",
}
ALWAYS_SENT = {"Cache-Control": "no-cache"}


def write(site: Path, below: str, folder: Path) -> list[str]:
    """Write a file for each kind of host. below: the path of the home page, with a slash at both ends.

    Returns: their names.
    """
    folder.mkdir(parents=True, exist_ok=True)
    made = {"_headers": headers_file, "nginx.conf": nginx, "Caddyfile": caddy}
    for name, text in made.items():
        (folder / name).write_text(text(site, below))
    return list(made)


def headers_file(site: Path, below: str) -> str:
    """A `_headers` file, to lie at the top of what is uploaded.

    Hosts join the values of one header from several rules, which for a policy means that all of them hold. So no two of
    the rules that name a policy meet in one file.
    """
    common, page, worker = _headers(site)
    rules = {f"{below}*": common}
    rules |= {f"{below}{place}": {POLICY: worker if place == WORKER_AT else page} for place in _apart(site)}
    return (
        "\n".join(
            "\n".join([at, *(f"  {name}: {value}" for name, value in sent.items())]) for at, sent in rules.items()
        )
        + "\n"
    )


def _apart(site: Path) -> Iterator[str]:
    """Patterns that together meet every file of the site once, and the worker by itself."""
    yield ""
    yield from _below(site, site)


def _below(site: Path, folder: Path) -> Iterator[str]:
    for path in sorted(folder.iterdir()):
        place = path.relative_to(site).as_posix()
        if path.is_file():
            yield place
        elif WORKER_AT.startswith(f"{place}/"):
            yield from _below(site, path)
        else:
            yield f"{place}/*"


def nginx(site: Path, below: str) -> str:
    """Lines for the `server` block of nginx. A block of its own takes nothing over from the one around it, so the
    worker's says everything again."""
    common, page, worker = _headers(site)
    types = "\n".join(
        f"    location ~ \\.{ending}$ {{ types {{ }} default_type {kind}; }}" for ending, kind in TYPES.items()
    )

    def lines(sent: Mapping[str, str], indent: str) -> str:
        return "\n".join(f'{indent}add_header {name} "{value}" always;' for name, value in sent.items())

    return f"""# Lines for the server block of nginx, beside its root.
location {below} {{
{lines({**common, POLICY: page}, "    ")}
    error_page 404 {below}404.html;

    location = {below}{WORKER_AT} {{
{lines({**common, POLICY: worker}, "        ")}
    }}
{types}
}}
"""


def caddy(site: Path, below: str) -> str:
    """Lines for a site block of Caddy."""
    common, page, worker = _headers(site)
    sent = "\n".join(f'\t{name} "{value}"' for name, value in common.items())
    types = "\n".join(
        f'@{ending} path {below}*.{ending}\nheader @{ending} Content-Type "{kind}"' for ending, kind in TYPES.items()
    )
    return f"""# Lines for a site block of Caddy, beside its root and file_server.
@handbook path {below}*
header @handbook {{
{sent}
}}
@worker path {below}{WORKER_AT}
header @worker {POLICY} "{worker}"
@pages {{
\tpath {below}*
\tnot path {below}{WORKER_AT}
}}
header @pages {POLICY} "{page}"
{types}
"""


def _headers(site: Path) -> tuple[dict[str, str], str, str]:
    """What every file is sent with, the policy of the pages, and the worker's."""
    of = headers_for(site)
    pages, workers = {**ALWAYS_SENT, **of("/")}, {**ALWAYS_SENT, **of(f"/{WORKER_AT}")}
    page, worker = pages.pop(POLICY), workers.pop(POLICY)
    if pages != workers:
        raise ValueError("The worker is sent with other headers than a page, in more than its policy.")
    return pages, page, worker
