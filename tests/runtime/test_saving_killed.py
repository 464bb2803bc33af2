"""The browser is killed at fifty moments while it saves as fast as it can: every save that was acknowledged is there,
none is half-written."""

import json
import os
import random
import signal
import subprocess
import threading
import time
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import unquote

import pytest

from scripts.after_pages import join_scripts
from scripts.setup import browser as chromium

SIDES, KILLS_A_SIDE = 2, 25
TORN, KILLS_TORN = b"\x07torn\xff\x01", 4  # what a kill may leave of a record at the end of the database's log
FILLING = 8_000  # [characters] of each record, so that many kills fall into the middle of one
PATIENCE = 60  # [s]
PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Saving</title></head>
<body><script type="module">
import { keep, last, versions } from "/assets/javascript/store.js";
const there = (await versions("job", "j"))
    .map(({ revision, text }) =>
        [revision, JSON.parse(text).revision, text.length - JSON.stringify({ revision, filling: "" }).length]);
await fetch(`/there/${encodeURIComponent(JSON.stringify(there))}`);
let revision = (await last("job", "j"))?.revision ?? 0;
for (;;) {
  const text = JSON.stringify({ revision: revision + 1, filling: "x".repeat(FILLING) });
  ({ revision } = await keep("job", "j", text, revision));
  fetch(`/kept/${revision}`);
}
</script></body></html>"""


class Saving(SimpleHTTPRequestHandler):
    """Serves the page that saves; hears from it what it found on opening, and each save as it is acknowledged."""

    def do_GET(self):
        what, _, rest = self.path.lstrip("/").partition("/")
        if what == "there":
            self.server.there = json.loads(unquote(rest))
        elif what == "kept":
            self.server.kept = max(self.server.kept, int(rest))
        else:
            super().do_GET()
            return
        self.send_response(204)
        self.end_headers()

    def log_message(self, *_):
        pass


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    join_scripts.join(tmp_path / "site/assets/javascript")
    (tmp_path / "site/index.html").write_text(PAGE.replace("FILLING", str(FILLING)))
    return tmp_path


def one_side(
    folder: Path, number: int, faults: list[str], counted: list[int], kills: int = KILLS_A_SIDE, torn: bytes = b""
) -> None:
    """One browser profile, killed and opened again and again. torn: written behind its log after each kill."""
    chance = random.Random(number)
    server = ThreadingHTTPServer(("127.0.0.1", 0), lambda *whom: Saving(*whom, directory=folder / "site"))
    server.daemon_threads, server.kept, server.there = True, 0, None
    threading.Thread(target=server.serve_forever, daemon=True).start()
    profile = folder / f"profile-{number}"
    command = [
        chromium.ensure(),
        *chromium.ARGUMENTS,
        "--headless",
        f"--user-data-dir={profile}",
        f"http://127.0.0.1:{server.server_port}/",
    ]
    try:
        for _ in range(kills + 1):  # the last opening only looks
            server.there, acknowledged = None, server.kept
            process = subprocess.Popen(
                command, start_new_session=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
            )
            try:
                wait(lambda: server.there is not None, process)
                faults += whole(server.there, acknowledged)
                counted[number] = acknowledged
                wait(lambda known=acknowledged: server.kept > known, process)
                time.sleep(chance.random() * 0.15)
            finally:
                os.killpg(process.pid, signal.SIGKILL)
                process.wait()
            if torn:
                (log,) = profile.glob("Default/IndexedDB/*.leveldb/*.log")
                log.write_bytes(log.read_bytes() + torn)
    except Exception as problem:  # a thread's failure is the test's
        faults.append(repr(problem))
    finally:
        server.shutdown()
        server.server_close()


def wait(until, process: subprocess.Popen) -> None:
    deadline = time.monotonic() + PATIENCE
    while not until():
        assert time.monotonic() < deadline and process.poll() is None, "the page said nothing"
        time.sleep(0.002)


def whole(there: list[list[int]], acknowledged: int) -> list[str]:
    """What is wrong with the records found: [revision, revision in the text, length of its filling], oldest first."""
    revisions = [revision for revision, _, _ in there]
    faults = [
        f"record {revision} is half-written"
        for revision, inside, length in there
        if (inside, length) != (revision, FILLING)
    ]
    unbroken = list(range(revisions[0], revisions[-1] + 1)) if revisions else []
    if revisions != unbroken:
        faults.append(f"records are missing: {revisions}")
    if acknowledged > max(revisions, default=0):
        faults.append(f"{acknowledged} was acknowledged, and {max(revisions, default=0)} is the last there")
    return faults


def test_killed_at_fifty_moments_every_acknowledged_save_is_there(folder):
    faults, counted = [], [0] * SIDES
    sides = [threading.Thread(target=one_side, args=(folder, number, faults, counted)) for number in range(SIDES)]
    for side in sides:
        side.start()
    for side in sides:
        side.join()
    assert faults == []
    assert all(number > KILLS_A_SIDE for number in counted), "each kill came after at least one save"


def test_a_log_that_a_kill_left_torn_costs_nothing(folder):
    """Chromium writes on behind what is torn, and throws the whole database away the time after."""
    faults, counted = [], [0]
    one_side(folder, 0, faults, counted, KILLS_TORN, TORN)
    assert faults == [] and counted[0] > KILLS_TORN


@pytest.mark.parametrize(
    ("there", "acknowledged", "words"),
    [
        ([[1, 1, FILLING], [2, 2, FILLING]], 3, "3 was acknowledged"),
        ([[1, 1, FILLING], [3, 3, FILLING]], 3, "missing"), ([], 1, "1 was acknowledged"),
        ([[1, 1, FILLING - 1]], 1, "half-written"), ([[1, 2, FILLING]], 1, "half-written"),
    ],
)  # fmt: skip
def test_a_lost_or_half_written_save_would_be_found(there, acknowledged, words):
    assert any(words in fault for fault in whole(there, acknowledged))
    assert whole([[3, 3, FILLING], [4, 4, FILLING]], 4) == []
