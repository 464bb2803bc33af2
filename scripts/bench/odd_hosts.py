"""Hosts as they are found: each way of serving the site that some ordinary host has, with its own ideas of types,
headers and addresses."""

from __future__ import annotations

import threading
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from http import HTTPStatus
from pathlib import Path
from typing import Any

from scripts.after_pages.policy import headers_for
from scripts.tools.server import HOST, HeadersFor, SiteHandler, SiteServer, no_more_headers

WORKROOM = "workroom.test"  # a name that is not this machine's own: browsers do not take it for secure
RESOLVER = f"--host-resolver-rules=MAP {WORKROOM} {HOST}, MAP * ~NOTFOUND , EXCLUDE {HOST}"
SLOW = 3_000_000  # [bytes/s]
PAGES = (".html", "")
NOSNIFF = "X-Content-Type-Options"


@dataclass(frozen=True)
class Way:
    """A way of serving.

    Parameters: types, an ending → what is said of it instead, "" for nothing; everything, what is said of all that is
    no page, None for what is right; refused, endings that are not given at all; name, of the machine, as asked for;
    redirects, whether an address without its last slash leads to the one with it, or gives the page at once.
    """

    types: Mapping[str, str] = field(default_factory=dict)
    everything: str | None = None
    refused: tuple[str, ...] = ()
    name: str = HOST
    below: str = "/"
    protocol: str = "HTTP/1.1"
    policy: bool = False
    slow: bool = False
    redirects: bool = True


WAYS = {
    "right types": Way(),
    "with the policy": Way(policy=True),
    "machine code as a file to save": Way({".wasm": "application/octet-stream"}),
    "machine code as a text": Way({".wasm": "text/plain"}),
    "scripts as texts": Way({".js": "text/plain"}),
    "styles as texts": Way({".css": "text/plain"}),
    "all as files to save": Way(everything="application/octet-stream"),
    "all as texts": Way(everything="text/plain"),
    "no types": Way(everything=""),
    "unknown endings refused": Way(refused=(".mjs", ".gz", ".bin")),
    "packed files said to be packed": Way({".gz": "gzip"}),
    "by a name in plain http": Way(name=WORKROOM),
    "by a name, no types": Way(name=WORKROOM, everything=""),
    "below a path": Way(below="/linen/handbook/"),
    "below a path, no last slash": Way(below="/linen/handbook/", redirects=False),
    "HTTP/1.0": Way(protocol="HTTP/1.0"),
    "slow": Way(slow=True),
}


class OddHandler(SiteHandler):
    def __init__(self, *args: Any, way: Way, **kwargs: Any) -> None:
        self.way = way
        self.protocol_version = way.protocol
        super().__init__(*args, below=way.below, **kwargs)

    def guess_type(self, path: Any) -> str:
        ending = Path(path).suffix
        if self.way.everything is not None and ending not in PAGES:
            return self.way.everything
        return self.way.types.get(ending, super().guess_type(path))

    def send_header(self, keyword: str, value: str) -> None:
        if keyword.lower() == "content-type" and not value:
            return
        if value == "gzip":
            super().send_header("Content-Encoding", value)
        super().send_header(keyword, value)

    def do_GET(self) -> None:
        path = self.path.partition("?")[0]
        if path.endswith(self.way.refused or "\0"):
            self.send_error(HTTPStatus.NOT_FOUND)
            return
        if not self.way.redirects and Path(self.translate_path(path)).is_dir() and not path.endswith("/"):
            self.path = f"{path}/"
        super().do_GET()

    def copyfile(self, source: Any, outputfile: Any) -> None:
        if not self.way.slow:
            super().copyfile(source, outputfile)
            return
        while part := source.read(SLOW // 20):
            outputfile.write(part)
            time.sleep(1 / 20)


@contextmanager
def hosting(site: Path, way: Way) -> Iterator[str]:
    """Serves a site in such a way until the block ends. Gives the address of its home page."""
    sent: HeadersFor = headers_for(site) if way.policy else no_more_headers
    with SiteServer((HOST, 0), partial(OddHandler, directory=str(site), headers_for=sent, way=way)) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://{way.name}:{server.server_port}{way.below}"
        server.shutdown()
