"""A Firefox without a window, driven through WebDriver BiDi (W3C)."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import time
from pathlib import Path
from typing import Any

from tests.engines.websocket import WebSocket

PROGRAM = shutil.which("firefox-esr") or shutil.which("firefox")
MISSING = None if PROGRAM else "No Firefox on this machine (Debian: apt-get install firefox-esr)."
LONG = 60  # [s]
#: It asks its makers for nothing.
SETTINGS = {
    "services.settings.server": "data:,#remote-settings-dummy/v1",
    "app.normandy.enabled": False,
    "app.update.disabledForTesting": True,
    "browser.newtabpage.enabled": False,
    "browser.startup.page": 0,
    "datareporting.policy.dataSubmissionEnabled": False,
    "extensions.update.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
}


class Firefox:
    name = "Firefox"

    def __init__(self, profile: Path):
        profile.mkdir()
        (profile / "user.js").write_text(
            "".join(f"user_pref({json.dumps(name)}, {json.dumps(value)});\n" for name, value in SETTINGS.items())
        )
        words = [PROGRAM, "--headless", "--no-remote", "--profile", str(profile), "--remote-debugging-port", "0"]
        log = profile / "log.txt"
        with log.open("w") as written:
            self._process = subprocess.Popen(words, stderr=written, stdout=subprocess.DEVNULL)
        try:
            self._line = WebSocket(f"{self._address_in(log)}/session", LONG)
            self._last = 0
            self._tell("session.new", {"capabilities": {}})
            self._tell("session.subscribe", {"events": ["log.entryAdded"]})
            self._page = self._tell("browsingContext.getTree", {})["contexts"][0]["context"]
        except BaseException:
            self.close()
            raise

    def open(self, address: str) -> None:
        self._tell("browsingContext.navigate", {"context": self._page, "url": address, "wait": "complete"})

    def run(self, function: str, *given: Any) -> Any:
        """What an async function of the page gives, as plain data."""
        said = self._tell(
            "script.callFunction",
            {
                "functionDeclaration": f"async (given) => JSON.stringify(await ({function})(...JSON.parse(given)))",
                "arguments": [{"type": "string", "value": json.dumps(given)}],
                "target": {"context": self._page},
                "awaitPromise": True,
            },
        )
        if said["type"] != "success":
            raise RuntimeError(said["exceptionDetails"]["text"])
        return json.loads(said["result"].get("value", "null"))

    def close(self) -> None:
        self._process.terminate()
        self._process.wait(LONG)

    def _address_in(self, log: Path) -> str:
        deadline = time.monotonic() + LONG
        while not (found := re.search(r"WebDriver BiDi listening on (ws://\S+)", log.read_text())):
            assert time.monotonic() < deadline and self._process.poll() is None, log.read_text()
            time.sleep(0.1)
        return found[1]

    def _tell(self, method: str, params: dict) -> dict:
        self._last += 1
        self._line.send(json.dumps({"id": self._last, "method": method, "params": params}))
        while True:
            said = json.loads(self._line.receive())
            if said.get("id") != self._last:
                continue  # an event
            if said["type"] == "error":
                raise RuntimeError(f"{method}: {said['message']}")
            return said["result"]
