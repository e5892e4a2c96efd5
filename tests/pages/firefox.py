"""Firefox driven over WebDriver BiDi, the W3C's protocol, with its strict policy on files as it comes.

Only what the journeys need: open a page, evaluate, press keys, tap, set the window's size.
"""

from __future__ import annotations

import json
import re
import subprocess
from contextlib import ExitStack
from pathlib import Path
from typing import Any, Self

from websockets.sync.client import ClientConnection, connect

from tests.pages.asking import wait_until

_PREFERENCES = """\
user_pref("focusmanager.testmode", true);
user_pref("security.fileuri.strict_origin_policy", true);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("toolkit.telemetry.enabled", false);
user_pref("app.update.enabled", false);
user_pref("network.captive-portal-service.enabled", false);
user_pref("network.connectivity-service.enabled", false);
"""
_FORCED_COLOURS = 'user_pref("browser.display.document_color_use", 2);\n'
KEYS = {"Tab": "\ue004", "Enter": "\ue007", "Escape": "\ue00c", "PageUp": "\ue00e", "PageDown": "\ue00f"}
KEYS |= {"ArrowDown": "\ue015", "ArrowUp": "\ue013", "ArrowLeft": "\ue012", "ArrowRight": "\ue014", "End": "\ue010"}


class Firefox:
    """One window of a Firefox of its own profile. Use it as a context manager."""

    def __init__(
        self, program: str, profile: Path, width: int = 1280, height: int = 960, *, forced_colours: bool = False
    ) -> None:
        chosen = _PREFERENCES + (_FORCED_COLOURS if forced_colours else "")
        (profile / "user.js").write_text(chosen, encoding="utf-8")
        size = ["--width", str(width), "--height", str(height)]
        command = [
            program,
            "--headless",
            "--no-remote",
            "--profile",
            str(profile),
            "--remote-debugging-port",
            "0",
            *size,
        ]
        self._process = subprocess.Popen(command, stderr=subprocess.PIPE, stdout=subprocess.DEVNULL, text=True)
        self._number = 0
        self._opened = ExitStack()
        opening = connect(f"{self._address()}/session", max_size=None)
        self._socket: ClientConnection = self._opened.enter_context(opening)
        self.send("session.new", {"capabilities": {}})
        # A window opened by the protocol has the focus; the first one may not.
        self._context = self.send("browsingContext.create", {"type": "window"})["context"]
        self.send("browsingContext.activate", {"context": self._context})
        self.requests: list[str] = []
        self.send("session.subscribe", {"events": ["network.beforeRequestSent"]})

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *fault: object) -> None:
        self._opened.close()
        self._process.terminate()
        self._process.communicate(timeout=20)

    def _address(self) -> str:
        assert self._process.stderr is not None
        for line in self._process.stderr:
            if found := re.search(r"WebDriver BiDi listening on (ws://\S+)", line):
                return found[1]
        raise RuntimeError("Firefox did not say where it listens")

    def send(self, method: str, params: dict[str, Any]) -> dict[str, Any]:
        """One command and its answer; what happens in between is kept. Raises RuntimeError for an error."""
        self._number += 1
        self._socket.send(json.dumps({"id": self._number, "method": method, "params": params}))
        while True:
            message = json.loads(self._socket.recv(timeout=60))
            if message.get("method") == "network.beforeRequestSent":
                self.requests.append(message["params"]["request"]["url"])
            if message.get("id") == self._number:
                if message["type"] == "error":
                    raise RuntimeError(f"{method}: {message['message']}")
                result: dict[str, Any] = message["result"]
                return result

    def open(self, url: str) -> None:
        """Go to a page and wait until it is loaded."""
        self.send("browsingContext.navigate", {"context": self._context, "url": url, "wait": "complete"})

    def size(self, width: int, height: int) -> None:
        """The size of the page's own window."""
        viewport = {"width": width, "height": height}
        self.send("browsingContext.setViewport", {"context": self._context, "viewport": viewport})

    def evaluate(self, expression: str) -> Any:
        """The value of an expression: a text, a number, or a truth value."""
        params = {"expression": expression, "target": {"context": self._context}, "awaitPromise": True}
        answer = self.send("script.evaluate", params)
        if answer["type"] == "exception":
            raise RuntimeError(answer["exceptionDetails"]["text"])
        return answer["result"].get("value")

    def press(self, *keys: str) -> None:
        """Keys by name or as letters, each pressed and let go."""
        actions = [{"type": kind, "value": KEYS.get(key, key)} for key in keys for kind in ("keyDown", "keyUp")]
        params = {"context": self._context, "actions": [{"type": "key", "id": "keys", "actions": actions}]}
        self.send("input.performActions", params)

    def tap(self, expression: str) -> None:
        """A finger on the middle of an element of a loaded page, which is brought into view first."""
        self.wait("document.readyState === 'complete'")
        box = f"(e => {{ e.scrollIntoView({{block: 'center'}}); return e.getBoundingClientRect(); }})({expression})"
        x, y = (self.evaluate(f"(b => b.{side})({box})") for side in ("x + b.width / 2", "y + b.height / 2"))
        actions: list[dict[str, Any]] = [
            {"type": "pointerMove", "x": round(x), "y": round(y)},
            {"type": "pointerDown", "button": 0},
            {"type": "pointerUp", "button": 0},
        ]
        finger = {"type": "pointer", "id": "finger", "parameters": {"pointerType": "touch"}, "actions": actions}
        self.send("input.performActions", {"context": self._context, "actions": [finger]})

    def wait(self, expression: str) -> None:
        """Until an expression holds. Raises TimeoutError."""
        wait_until(self.evaluate, expression)
