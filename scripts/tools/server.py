"""The built site on 127.0.0.1, with the types a browser insists on."""

import errno
import os
import sys
from collections.abc import Callable, Mapping
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

from scripts.tools.command_error import CommandError

HOST = "127.0.0.1"
HeadersFor = Callable[[str], Mapping[str, str]]


#: A rebuilt page must show at the next look, without a forced reload.
ALWAYS_SENT = {"Cache-Control": "no-cache"}
NOWHERE = "nothing lies here"


def no_more_headers(path: str) -> Mapping[str, str]:
    """The headers beside the usual ones: none."""
    return {}


class SiteHandler(SimpleHTTPRequestHandler):
    """Serves files of one folder; a missing one is answered with the site's own 404 page."""

    protocol_version = "HTTP/1.1"
    # Otherwise a file waits some 40 ms behind its own headers, until the browser says that it has those.
    disable_nagle_algorithm = True
    wbufsize = 1 << 16
    extensions_map = SimpleHTTPRequestHandler.extensions_map | {
        ".js": "text/javascript",
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
        ".webmanifest": "application/manifest+json",
        ".svg": "image/svg+xml",
        ".woff2": "font/woff2",
    }

    def __init__(self, *args: Any, headers_for: HeadersFor, below: str = "/", **kwargs: Any) -> None:
        self.headers_for, self.below = headers_for, below
        super().__init__(*args, **kwargs)

    def translate_path(self, path: str) -> str:
        """The file at an address of the site; nothing lies beside the path that the site lies below."""
        if not path.startswith(self.below):
            return str(Path(self.directory) / NOWHERE)
        return super().translate_path("/" + path.removeprefix(self.below))

    def end_headers(self) -> None:
        for name, value in {**ALWAYS_SENT, **self.headers_for(self.path)}.items():
            self.send_header(name, value)
        super().end_headers()

    def list_directory(self, path: str | os.PathLike[str]) -> None:
        self.send_error(HTTPStatus.NOT_FOUND)

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        page = Path(self.directory) / "404.html"
        if code != HTTPStatus.NOT_FOUND or not page.is_file():
            super().send_error(code, message, explain)
            return
        body = page.read_bytes()
        self.send_response(code)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def log_message(self, format: str, *args: Any) -> None:
        """Stay quiet: the address printed at the start should stay in sight."""


class SiteServer(ThreadingHTTPServer):
    below = "/"
    # On Windows this flag would let two servers share one port.
    allow_reuse_address = os.name != "nt"

    def handle_error(self, request: Any, client_address: Any) -> None:
        # A browser that leaves a page breaks off what it was loading: nothing to report.
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)

    @property
    def address(self) -> str:
        """The address of the home page, as SITE_URL wants it."""
        return f"http://{HOST}:{self.server_port}{self.below}"


def open_server(directory: Path, port: int, headers_for: HeadersFor = no_more_headers, below: str = "/") -> SiteServer:
    """Take the port; call `serve_forever` on what is returned.

    Parameters: directory, which need not be there yet; port, 0 for any free one; headers_for, more headers for a path;
    below, the path at which the home page lies, with a slash at both ends.
    Raises: Trouble when the port cannot be had.
    """
    handler = partial(SiteHandler, directory=str(directory), headers_for=headers_for, below=below)
    try:
        server = SiteServer((HOST, port), handler)
    except OSError as error:
        why = "is in use" if error.errno == errno.EADDRINUSE else "cannot be used here"
        raise CommandError(
            f"Port {port} {why}: choose another with --port N, or let --port 0 find a free one."
        ) from None
    server.below = below
    return server
