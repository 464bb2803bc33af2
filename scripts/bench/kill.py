"""Kills Chromium while it keeps, again and again, and looks whether anything acknowledged is lost or half-written.

    python scripts/bench/kill.py             500 kills; build the site first
      --kills 60 --sides 2 --seed 7          fewer; browser profiles side by side; other moments and faults
      --typed 0.1                            share of the sessions in which a job is typed into, on its page

Between a kill and the next start the profile is harmed as a kill or a browser may harm it, by chance: stray bytes
behind the log of its database, followed by two sessions left in peace, after which Chromium would throw the database
away; the same behind the browser's list of private files; stray bytes behind the journal, or its last bytes gone; the
database gone; the journal gone.
"""

import argparse
import json
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import threading
import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from urllib.parse import unquote

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from scripts.after_pages.policy import headers_for
from scripts.setup import browser as chromium
from scripts.tools.places import SITE
from scripts.tools.server import HOST, HeadersFor, SiteHandler, SiteServer

KILLS, SIDES, TYPED = 500, 2, 0.1
FILLING = 8_000  # [characters] of each record, so that many kills fall into the middle of one
STRAY = b"\x07torn\xff\x01"  # what a kill may leave of a record at the end of a file
PATIENCE = 120  # [s]
LATEST = 0.15  # [s] after what a session waits for it is killed at the latest
#: How often a kill is followed by what.
FAULTS = {
    "nothing": 0.22,
    "stray bytes in the log": 0.23,
    "stray bytes in log and journal": 0.1,
    "stray bytes in the journal": 0.1,
    "journal cut": 0.1,
    "stray bytes in the names of files": 0.05,
    "database gone": 0.1,
    "journal gone": 0.1,
}
IN_PEACE = 2  # sessions after stray bytes in the log

#: What each session does on its page: tells what is there, then saves and tells of each save once it is kept.
STORED = """const { choice, choose, keep, keepMany, last, remove, versions } = await import("SCRIPTS/store.js");
const there = (await versions("job", "j"))
    .map(({ revision, text }) =>
        [revision, JSON.parse(text).revision, text.length - JSON.stringify({ revision, filling: "" }).length]);
const others = [await choice("count"), (await last("loose", "beside"))?.text ?? "", await last("job", "gone") ? 1 : 0];
await fetch(`SAID/there/${encodeURIComponent(JSON.stringify([there, others]))}`);
let revision = there.at(-1)?.[0] ?? 0;
for (;;) {
  const text = JSON.stringify({ revision: revision + 1, filling: "x".repeat(FILLING) });
  ({ revision } = await keep("job", "j", text, revision));
  fetch(`SAID/kept/${revision}`);
  if (revision % 5) continue;
  await choose("count", String(revision));
  const beside = (await last("loose", "beside"))?.revision ?? 0;
  await keep("loose", "beside", String(revision), beside);
  await keepMany([{ kind: "job", id: "gone", states: [{ text: "gone" }], after: 0 }]);
  await remove("job", "gone");
  fetch(`SAID/beside/${revision}`);
}"""
#: The same by hand on the page of a job: its costs are typed one by one, which is told once the job is kept.
TYPED_IN = """const { keep, newest, onChange } = await import("SCRIPTS/store.js");
const [job] = (await newest("job")).filter(({ id }) => id !== "j" && id !== "gone");
await fetch(`SAID/typed-there/${job ? JSON.parse(job.text).cost || 0 : 0}`);
const wait = (ready) => new Promise((resolve) => {
  const look = () => (ready() ? resolve() : setTimeout(look, 5));
  look();
});
const blank = () => document.querySelector(".jobs [name=cost]");
for (const step of document.querySelectorAll(".walk-step")) step.open = true;
if (job) {
  location.hash = `job=${job.id}`;
} else {
  document.querySelector(".job-in-hand [data-do=keep]").click();
}
await wait(() => blank()?.offsetParent && !blank().closest("[inert]"));
// One more may have been typed before the kill and be put back now: the same typed again would not be kept anew.
let cost = job ? Number(JSON.parse(job.text).cost || 0) + 1 : 0;
for (;;) {
  cost += 1;
  const kept = new Promise((resolve) => {
    const stop = onChange(async ({ kind, id }) => {
      const found = (await newest("job")).find((each) => each.kind === kind && each.id === id && id !== "j");
      if (found && Number(JSON.parse(found.text).cost) === cost) resolve(stop());
    });
  });
  blank().value = String(cost);
  blank().dispatchEvent(new Event("input", { bubbles: true }));
  blank().dispatchEvent(new Event("change", { bubbles: true }));
  await kept;
  fetch(`SAID/typed/${cost}`);
}"""


@dataclass
class Said:
    """What the pages of one profile have said so far."""

    there: list[list[int]] | None = None
    others: list[str] = field(default_factory=list)
    kept: int = 0
    beside: int = 0
    typed_there: int | None = None
    typed: int = 0


class Hearing(SiteHandler):
    """Serves the site, two pages of it with a script that saves; hears what that says."""

    said: Said
    STORES, TYPES, HEARD = "kill/stores.js", "kill/types.js", "kill/said/"

    def do_GET(self) -> None:
        place = self.path.removeprefix(self.below)
        if place in (self.STORES, self.TYPES):
            self._send("text/javascript", script(place == self.TYPES, self.below))
        elif place.startswith(self.HEARD):
            self.hear(*place.removeprefix(self.HEARD).split("/", 1))
            self.send_response(204)
            self.end_headers()
        elif place.startswith("kill/page"):
            self._send("text/html; charset=utf-8", with_script("<!doctype html><title>Keeping</title>", self.STORES))
        elif place == "batch/":
            page = (Path(self.directory) / "batch/index.html").read_text("utf-8")
            self._send("text/html; charset=utf-8", with_script(page, f"../{self.TYPES}"))
        elif place == "sw.js":
            self.send_error(404)  # each profile would fetch the whole site
        else:
            super().do_GET()

    def _send(self, kind: str, text: str) -> None:
        body = text.encode()
        self.send_response(200)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def hear(self, what: str, value: str) -> None:
        said = self.said
        if what == "there":
            said.there, said.others = json.loads(unquote(value))
        elif what == "kept":
            said.kept = max(said.kept, int(value))
        elif what == "beside":
            said.beside = max(said.beside, int(value))
        elif what == "typed-there":
            said.typed_there = int(value)
        elif what == "typed":
            said.typed = max(said.typed, int(value))


def with_script(page: str, address: str) -> str:
    """A page with one more script at its end."""
    element = f'<script type="module" src="{"/" if address.startswith("kill") else ""}{address}"></script>'
    return page.replace("</body>", f"{element}</body>") if "</body>" in page else page + element


def script(is_typed: bool, below: str) -> str:
    """The script of a session, for a site that lies below a path."""
    return (
        (TYPED_IN if is_typed else STORED)
        .replace("SCRIPTS", f"{below}assets/javascript")
        .replace("SAID", f"{below}kill/said")
        .replace("FILLING", str(FILLING))
    )


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


def beside(others: list[str], acknowledged: int) -> list[str]:
    """What is wrong with what is kept beside the job: [a choice, a loose document, whether a deleted job is there]."""
    choice, loose, _ = others
    return [
        f"{acknowledged} was acknowledged as {what}, and {found or 'nothing'} is there"
        for what, found in (("a choice", choice), ("a loose document", loose))
        if int(found or 0) < acknowledged
    ]


@dataclass
class Side:
    """One browser profile, killed and opened again and again."""

    folder: Path
    number: int
    kills: int
    seed: int = 0
    typed: float = TYPED
    site: Path = SITE
    faults_of: Callable[[random.Random], str] = field(
        default=lambda chance: chance.choices(list(FAULTS), list(FAULTS.values()))[0]
    )
    headers: HeadersFor | None = None
    faults: list[str] = field(default_factory=list)
    after: Counter[str] = field(default_factory=Counter)
    said: Said = field(default_factory=Said)
    done: int = 0

    @property
    def profile(self) -> Path:
        """Where the browser has its files."""
        return self.folder / f"profile-{self.number}"

    def run(self) -> None:
        """Kill so often; what went wrong stands in `faults`."""
        chance = random.Random(self.seed * 1000 + self.number)
        hearing = type("Hearing", (Hearing,), {"said": self.said})
        handler = partial(
            hearing, directory=str(self.site), headers_for=self.headers or headers_for(self.site), below="/"
        )
        with SiteServer((HOST, 0), handler) as server:
            server.daemon_threads = True
            threading.Thread(target=server.serve_forever, daemon=True).start()
            try:
                for _ in range(self.kills):
                    self._session(server, chance, chance.random() < self.typed)
                    self.done += 1
                    self._harm(self.faults_of(chance), server, chance)
                self._session(server, chance, False, peaceful=True)
            except Exception as problem:  # a thread's failure is the run's
                self.faults.append(repr(problem))
            finally:
                server.shutdown()

    def _session(self, server: SiteServer, chance: random.Random, is_typed: bool, peaceful: bool = False) -> None:
        said = self.said
        said.there = said.typed_there = None
        known, known_beside, known_typed = said.kept, said.beside, said.typed
        process = subprocess.Popen(
            [
                chromium.ensure(), *chromium.ARGUMENTS, "--headless", f"--user-data-dir={self.profile}",
                f"{server.address}{'batch/' if is_typed else 'kill/page'}",
            ],
            start_new_session=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        try:
            if is_typed:
                self._wait(lambda: said.typed_there is not None, process)
                if (said.typed_there or 0) < known_typed:
                    self.faults.append(f"{known_typed} was acknowledged as typed, and {said.typed_there} is there")
                self._wait(lambda: said.typed > known_typed, process)
            else:
                self._wait(lambda: said.there is not None, process)
                self.faults += whole(said.there or [], known) + beside(said.others, known_beside)
                self._wait(lambda: said.kept > known, process)
                if self.done % 2:  # else a slow machine would never come to the kinds kept less often
                    self._wait(lambda: said.beside > known_beside, process)
            time.sleep(chance.random() * LATEST)
        finally:
            if peaceful:
                process.terminate()
                process.wait(PATIENCE)
            if process.poll() is None:
                os.killpg(process.pid, signal.SIGKILL)
                process.wait()

    def _wait(self, until: Callable[[], bool], process: subprocess.Popen[bytes]) -> None:
        deadline = time.monotonic() + PATIENCE
        while not until():
            if time.monotonic() > deadline or process.poll() is not None:
                raise TimeoutError("the page said nothing")
            time.sleep(0.002)

    def _harm(self, fault: str, server: SiteServer, chance: random.Random) -> None:
        self.after[fault] += 1
        database, files = self.profile / "Default/IndexedDB", self.profile / "Default/File System"
        if "log" in fault:
            log = max(database.glob("*.leveldb/*.log"))  # the newest; there are two while one is being folded in
            log.write_bytes(log.read_bytes() + STRAY)
        if "in the journal" in fault or "and journal" in fault:
            journal = journal_in(files)
            journal.write_bytes(journal.read_bytes() + chance.randbytes(chance.randint(1, 40)))
        if "names" in fault:  # in which the browser keeps which file of the journal is which
            for log in (*files.glob("*/t/Paths/*.log"), *files.glob("Origins/*.log")):
                log.write_bytes(log.read_bytes() + STRAY)
        if fault == "journal cut":
            journal = journal_in(files)
            journal.write_bytes(journal.read_bytes()[: -chance.randint(1, 2 * FILLING)])
        if fault.endswith("gone"):
            shutil.rmtree(database if fault == "database gone" else files)
        for _ in range(IN_PEACE if "log" in fault or "names" in fault else 0):
            self._session(server, chance, False, peaceful=True)


def journal_in(files: Path) -> Path:
    """The file of the journal in use in a profile: of two that take turns, the longer."""
    return max(files.glob("*/t/[0-9]*/*"), key=lambda path: path.stat().st_size)


def main() -> int:
    """Run it. Returns: 1 when something was lost."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--kills", type=int, default=KILLS)
    parser.add_argument("--sides", type=int, default=SIDES)
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--typed", type=float, default=TYPED)
    given = parser.parse_args()
    started = time.monotonic()
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        sides = [
            Side(Path(folder), number, -(-given.kills // given.sides), given.seed, given.typed)
            for number in range(given.sides)
        ]
        threads = [threading.Thread(target=side.run) for side in sides]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
    after = sum((side.after for side in sides), Counter[str]())
    faults = [f"profile {side.number}: {fault}" for side in sides for fault in side.faults]
    print(f"{sum(side.done for side in sides)} kills in {time.monotonic() - started:.0f} s")
    for fault, count in after.most_common():
        print(f"{count:6} followed by {fault}")
    for name in ("kept", "beside", "typed"):
        print(f"{sum(getattr(side.said, name) for side in sides):6} acknowledged: {name}")
    print(*(faults or ["Nothing acknowledged was lost, nothing is half-written."]), sep="\n")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
