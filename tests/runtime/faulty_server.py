"""A server that can be told to misbehave for some files: what the network does to people on a bad day."""

from __future__ import annotations

import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http import HTTPStatus
from pathlib import Path

from scripts.tools.server import HOST, SiteHandler, SiteServer, no_more_headers

#: What can go wrong with a file. `truncated`: half of it comes, said to be all; `cut`: half of it comes, then the line
#: is dead;
#: `slow`: it comes at the pace of a poor mobile connection; `404` and `500`: it is refused.
FAULTS = ("truncated", "cut", "404", "500", "slow")
SLOW = 400_000  # [bytes/s]


class FaultyHandler(SiteHandler):
    def translate_path(self, path: str) -> str:
        self.directory = str(self.server.folder)  # looked up at every request, since a connection outlives several
        return super().translate_path(path)

    def do_GET(self) -> None:
        self.server.asked_for.append(self.path)
        fault = next((fault for part, fault in self.server.faults.items() if part in self.path), None)
        if fault in ("404", "500"):
            # Not through send_error, whose page would hide the fault behind a readable answer.
            body = b"no"
            self.send_response(HTTPStatus(int(fault)))
            self.send_header("Content-Length", str(len(body)))
            self.end_headers()
            self.wfile.write(body)
        elif fault:
            self._send_badly(fault)
        else:
            super().do_GET()

    def _send_badly(self, fault: str) -> None:
        body = Path(self.translate_path(self.path)).read_bytes()
        half = body[: len(body) // 2]
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", self.guess_type(self.path))
        self.send_header("Content-Length", str(len(half if fault == "truncated" else body)))
        self.end_headers()
        if fault == "slow":
            for start in range(0, len(body), SLOW // 10):
                self.wfile.write(body[start : start + SLOW // 10])
                time.sleep(0.1)
        else:
            self.wfile.write(half)
            self.close_connection = True


class FaultyServer(SiteServer):
    """Serves `folder`, which may be changed; `faults` maps a part of a path to what goes wrong with it."""

    def __init__(self, folder: Path):
        self.folder = folder
        self.faults: dict[str, str] = {}
        self.asked_for: list[str] = []
        super().__init__((HOST, 0), partial(FaultyHandler, directory=str(folder), headers_for=no_more_headers))

    def handle_error(self, request, client_address) -> None:
        """A browser that is killed leaves its connections behind; that is no news."""


@contextmanager
def serving(folder: Path) -> Iterator[FaultyServer]:
    """Serve a folder until the block ends; `server.shutdown(); server.server_close()` inside it stops earlier."""
    with FaultyServer(folder) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield server
        server.shutdown()
