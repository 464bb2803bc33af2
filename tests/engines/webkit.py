"""WebKitGTK's small browser on a screen that nobody sees, driven through WebDriver (W3C)."""

from __future__ import annotations

import json
import os
import shutil
import signal
import socket
import subprocess
import time
from glob import glob
from http.client import HTTPConnection
from pathlib import Path
from typing import Any

DRIVER, SCREEN = shutil.which("WebKitWebDriver"), shutil.which("xvfb-run")
BROWSER = next(
    iter(sorted(glob("/usr/lib/*/webkit2gtk-*/MiniBrowser") + glob("/usr/libexec/webkit2gtk-*/MiniBrowser"))), None
)
MISSING = (
    None
    if DRIVER and SCREEN and BROWSER
    else "No WebKitGTK on this machine (Debian: apt-get install webkit2gtk-driver xvfb)."
)
LONG = 60  # [s]


class WebKit:
    name = "WebKitGTK"

    def __init__(self, profile: Path):
        with socket.socket() as any_port:
            any_port.bind(("127.0.0.1", 0))
            self._port = any_port.getsockname()[1]
        words = [SCREEN, "--auto-servernum", DRIVER, f"--port={self._port}"]
        quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
        self._process = subprocess.Popen(words, start_new_session=True, **quiet)
        self._session = ""
        options = {"binary": BROWSER, "args": ["--automation"]}
        try:
            self._session = self._new_session({"capabilities": {"alwaysMatch": {"webkitgtk:browserOptions": options}}})
            self._tell("POST", "/timeouts", {"script": LONG * 1000, "pageLoad": LONG * 1000})
        except BaseException:
            self.close()
            raise

    def open(self, address: str) -> None:
        self._tell("POST", "/url", {"url": address})

    def run(self, function: str, *given: Any) -> Any:
        """What an async function of the page gives, as plain data."""
        script = (
            f"const done = arguments[1]; ({function})(...JSON.parse(arguments[0])).then((gave) => "
            "done([JSON.stringify(gave)]), (problem) => done(String(problem)));"
        )
        said = self._tell("POST", "/execute/async", {"script": script, "args": [json.dumps(given)]})
        if isinstance(said, str):
            raise RuntimeError(said)
        return json.loads(said[0]) if said[0] else None

    def close(self) -> None:
        if self._session:
            self._tell("DELETE", "", None)
        os.killpg(self._process.pid, signal.SIGTERM)  # the screen too
        self._process.wait(LONG)

    def _new_session(self, wanted: dict) -> str:
        deadline = time.monotonic() + LONG
        while True:
            try:
                return self._tell("POST", "", wanted)["sessionId"]
            except ConnectionError:  # the driver is not up yet
                if time.monotonic() > deadline or self._process.poll() is not None:
                    raise
                time.sleep(0.1)

    def _tell(self, method: str, path: str, body: dict | None) -> Any:
        line = HTTPConnection("127.0.0.1", self._port, timeout=LONG)
        line.request(method, f"/session/{self._session}{path}".rstrip("/"), None if body is None else json.dumps(body))
        said = json.loads(line.getresponse().read())["value"]
        line.close()
        if isinstance(said, dict) and "error" in said:
            raise RuntimeError(f"{said['error']}: {said['message']}")
        return said
