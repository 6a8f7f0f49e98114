"""Other browsers, driven by their own remote protocols: Firefox by WebDriver BiDi, WebKit by
WebDriver. Either gives the same few verbs, so that one walk serves both.
"""

from __future__ import annotations

import base64
import contextlib
import glob
import io
import json
import os
import shutil
import subprocess
import threading
import time
from pathlib import Path

import numpy as np
from PIL import Image

DEAD_PROXY = ("127.0.0.1", 9)
"""Nothing listens at the port of "discard": whatever goes out, fails."""

LISTENING = """<script>
window.heard = [];
addEventListener("error", (e) => heard.push("error: " + e.message));
addEventListener("unhandledrejection", (e) => heard.push("rejected: " + e.reason));
addEventListener("securitypolicyviolation", (e) => heard.push("policy: " + e.blockedURI));
for (const kind of ["error", "warn"]) {
  const plain = console[kind].bind(console);
  console[kind] = (...words) => { heard.push(kind + ": " + words.join(" ")); plain(...words); };
}
</script>"""


def listening(path: Path, folder: Path) -> Path:
    """Return a copy of a page that writes down what it complains of, from its first line on."""
    text = path.read_text(encoding="utf-8")
    assert text.count("<title>") == 1
    copy = folder / f"listening_{path.name}"
    copy.write_text(text.replace("<title>", f"{LISTENING}<title>"), encoding="utf-8")
    return copy


class Guest:
    """What a walk through the page asks of a browser."""

    name = ""

    def open(self, path: Path) -> None:
        """Open a page and wait for its first picture."""
        self._go(path.as_uri())
        self.until("Number(document.body.dataset.frames) > 0")

    def value(self, expression: str):
        """Return what a JavaScript expression yields, as plain values."""
        raise NotImplementedError

    def press_at(self, x: float, y: float, touch: bool = False) -> None:
        """Click or tap at a place in the page."""
        raise NotImplementedError

    def drag(self, start: tuple[float, float], end: tuple[float, float]) -> None:
        """Draw the pointer from one place to another."""
        raise NotImplementedError

    def type(self, text: str) -> None:
        """Press keys, one after the other."""
        raise NotImplementedError

    def resize(self, width: int, height: int) -> None:
        """Give the page a size, CSS pixels."""
        raise NotImplementedError

    def picture(self) -> np.ndarray:
        """Return what is seen of the page, (h, w, 3) int."""
        data = base64.b64decode(self._shot())
        return np.asarray(Image.open(io.BytesIO(data)).convert("RGB")).astype(int)

    def until(self, condition: str, seconds: float = 40.0) -> None:
        """Wait for a condition."""
        end = time.monotonic() + seconds
        while not self.value(condition):
            assert time.monotonic() < end, f"{self.name}: never came true: {condition}"
            time.sleep(0.03)

    def settle(self) -> None:
        """Wait until two frames have gone by."""
        frames = self.value("Number(document.body.dataset.frames)")
        with contextlib.suppress(AssertionError):
            self.until(f"Number(document.body.dataset.frames) > {frames}", 0.4)

    def press(self, selector: str, words: str = "", touch: bool = False) -> None:
        """Click or tap the first shown element of a selector whose text holds these words."""
        find = (
            f"[...document.querySelectorAll({json.dumps(selector)})].find((n) => n.offsetParent"
            f" && n.textContent.includes({json.dumps(words)}))"
        )
        place = self.value(
            f"(() => {{ const n = {find}; if (!n) return null;"
            ' n.scrollIntoView({block: "nearest"}); const r = n.getBoundingClientRect();'
            " return [r.x + r.width / 2, r.y + r.height / 2] })()"
        )
        assert place, f"{self.name}: nothing like {selector} {words!r} is shown"
        self.press_at(*place, touch=touch)
        self.settle()

    def middle(self) -> tuple[float, float]:
        """A place on the back, near the middle of the picture."""
        x, y, w, h = self.value(
            '(() => { const r = document.querySelector("#canvas").getBoundingClientRect();'
            " return [r.x, r.y, r.width, r.height] })()"
        )
        return x + w * 0.56, y + h * 0.5


class Firefox(Guest):
    """A headless Firefox, spoken to by WebDriver BiDi; it needs no driver beside it."""

    name = "Firefox"

    @staticmethod
    def missing() -> str:
        """Return why it cannot run here, "" when it can."""
        if not Firefox._program():
            return "there is no Firefox on this machine"
        return ""

    @staticmethod
    def _program() -> str:
        return next(filter(None, map(shutil.which, ("firefox", "firefox-esr"))), "")

    def __init__(self, folder: Path) -> None:
        import websocket

        profile = folder / "profile"
        profile.mkdir()
        host, port = DEAD_PROXY
        wishes = {
            "webgl.force-enabled": True,
            "network.proxy.type": 1,
            "network.proxy.http": host,
            "network.proxy.http_port": port,
            "network.proxy.ssl": host,
            "network.proxy.ssl_port": port,
            "dom.w3c_touch_events.enabled": 1,
            "datareporting.policy.dataSubmissionEnabled": False,
        }
        lines = [f"user_pref({json.dumps(k)}, {json.dumps(v)});" for k, v in wishes.items()]
        (profile / "user.js").write_text("\n".join(lines))
        self._process = subprocess.Popen(
            [self._program(), "--headless", "--remote-debugging-port=0", "--no-remote"]
            + ["--profile", str(profile)],
            stderr=subprocess.PIPE,
            stdout=subprocess.DEVNULL,
            text=True,
        )
        self._timer = threading.Timer(60, self._process.kill)
        self._timer.start()
        address = ""
        for line in self._process.stderr:
            if "WebDriver BiDi listening on" in line:
                address = line.split()[-1]
                break
        self._timer.cancel()
        assert address, "Firefox ended without saying where it listens"
        # What it says later must not fill the pipe.
        threading.Thread(target=self._process.stderr.read, daemon=True).start()
        self._socket = websocket.create_connection(
            f"{address}/session", suppress_origin=True, timeout=60
        )
        self._count = 0
        self.asked: list[str] = []
        self.complaints: list[str] = []
        self.version = self._send("session.new", capabilities={})["capabilities"]["browserVersion"]
        self._page = self._send("browsingContext.getTree")["contexts"][0]["context"]
        self._send("session.subscribe", events=["log.entryAdded", "network.beforeRequestSent"])
        self.offline = self._try(
            "emulation.setNetworkConditions",
            networkConditions={"type": "offline"},
            contexts=[self._page],
        )
        self.resize(1000, 700)

    def _send(self, method: str, **words):
        self._count += 1
        self._socket.send(json.dumps({"id": self._count, "method": method, "params": words}))
        while True:
            said = json.loads(self._socket.recv())
            if said.get("id") == self._count:
                if said["type"] == "error":
                    raise RuntimeError(f"{method}: {said['message']}")
                return said["result"]
            self._hear(said)

    def _try(self, method: str, **words) -> bool:
        try:
            self._send(method, **words)
        except RuntimeError:
            return False
        return True

    def _hear(self, said: dict) -> None:
        told = said.get("params", {})
        if said.get("method") == "network.beforeRequestSent":
            self.asked.append(told["request"]["url"])
        elif said.get("method") == "log.entryAdded" and told["level"] in ("error", "warn"):
            self.complaints.append(told["text"])

    def _go(self, address: str) -> None:
        self._send("browsingContext.navigate", context=self._page, url=address, wait="complete")

    def value(self, expression: str):
        said = self._send(
            "script.evaluate",
            expression=f"JSON.stringify({expression} ?? null)",
            target={"context": self._page},
            awaitPromise=False,
        )
        assert said["type"] == "success", said["exceptionDetails"]["text"]
        return json.loads(said["result"]["value"])

    def _act(self, kind: str, name: str, actions: list, **more) -> None:
        source = {"type": kind, "id": name, "actions": actions, **more}
        self._send("input.performActions", context=self._page, actions=[source])
        self._send("input.releaseActions", context=self._page)

    def press_at(self, x: float, y: float, touch: bool = False) -> None:
        kind = "touch" if touch else "mouse"
        self._act(
            "pointer",
            kind,
            [
                {"type": "pointerMove", "x": round(x), "y": round(y)},
                {"type": "pointerDown", "button": 0},
                {"type": "pointerUp", "button": 0},
            ],
            parameters={"pointerType": kind},
        )

    def drag(self, start: tuple[float, float], end: tuple[float, float]) -> None:
        (x0, y0), (x1, y1) = start, end
        steps = [
            {
                "type": "pointerMove",
                "x": round(x0 + (x1 - x0) * k / 4),
                "y": round(y0 + (y1 - y0) * k / 4),
            }
            for k in range(1, 5)
        ]
        first = {"type": "pointerMove", "x": round(x0), "y": round(y0)}
        down, up = {"type": "pointerDown", "button": 0}, {"type": "pointerUp", "button": 0}
        self._act("pointer", "mouse", [first, down, *steps, up])

    def type(self, text: str) -> None:
        keys = []
        for letter in text:
            keys += [{"type": "keyDown", "value": letter}, {"type": "keyUp", "value": letter}]
        self._act("key", "keys", keys)

    def resize(self, width: int, height: int) -> None:
        self._send(
            "browsingContext.setViewport",
            context=self._page,
            viewport={"width": width, "height": height},
        )

    def _shot(self) -> str:
        return self._send("browsingContext.captureScreenshot", context=self._page)["data"]

    def close(self) -> None:
        """End it."""
        with contextlib.suppress(Exception):
            self._socket.close()
        self._process.terminate()
        try:
            self._process.wait(10)
        except subprocess.TimeoutExpired:
            self._process.kill()
            self._process.wait()


class WebKit(Guest):
    """WebKitGTK's small browser, the engine that Safari has, by WebDriver."""

    name = "WebKit"

    @staticmethod
    def missing() -> str:
        """Return why it cannot run here, "" when it can."""
        if not shutil.which("WebKitWebDriver") or not WebKit._program():
            return "WebKitGTK's driver and MiniBrowser are not on this machine"
        if not os.environ.get("DISPLAY") and not os.environ.get("WAYLAND_DISPLAY"):
            return "WebKitGTK needs a display"
        return ""

    @staticmethod
    def _program() -> str:
        found = glob.glob("/usr/lib/*/webkit2gtk-4*/MiniBrowser")
        return found[0] if found else ""

    def __init__(self, folder: Path) -> None:
        from selenium import webdriver
        from selenium.webdriver.webkitgtk.options import Options
        from selenium.webdriver.webkitgtk.service import Service

        wishes = Options()
        wishes.binary_location = self._program()
        wishes.add_argument("--automation")
        dead = "http://{}:{}".format(*DEAD_PROXY)
        # Driver and browser speak to each other over a port of this machine, too.
        own = "127.0.0.1,localhost"
        around = {**os.environ, "http_proxy": dead, "https_proxy": dead, "no_proxy": own}
        self._driver = webdriver.WebKitGTK(
            options=wishes,
            service=Service(
                executable_path=shutil.which("WebKitWebDriver"),
                env=around,
                log_output=str(folder / "webkit.log"),
            ),
        )
        self.version = self._driver.capabilities["browserVersion"]
        self.resize(1000, 700)

    @property
    def asked(self) -> list[str]:
        """What the page fetched."""
        return self.value('performance.getEntriesByType("resource").map((e) => e.name)')

    complaints: tuple[str, ...] = ()
    """Its driver passes none on; what the page itself hears is all there is."""

    def _go(self, address: str) -> None:
        self._driver.get(address)

    def value(self, expression: str):
        return json.loads(
            self._driver.execute_script(f"return JSON.stringify({expression} ?? null)")
        )

    def press_at(self, x: float, y: float, touch: bool = False) -> None:
        self.drag((x, y), (x, y), touch)

    def drag(self, start, end, touch: bool = False) -> None:
        from selenium.webdriver.common.actions.action_builder import ActionBuilder
        from selenium.webdriver.common.actions.pointer_input import PointerInput

        kind = "touch" if touch else "mouse"
        builder = ActionBuilder(self._driver, mouse=PointerInput(kind, kind), duration=20)
        hand = builder.pointer_action
        hand.move_to_location(round(start[0]), round(start[1]))
        hand.pointer_down()
        if start != end:
            for k in range(1, 5):
                share = k / 4
                hand.move_to_location(
                    round(start[0] + (end[0] - start[0]) * share),
                    round(start[1] + (end[1] - start[1]) * share),
                )
        hand.pointer_up()
        builder.perform()

    def type(self, text: str) -> None:
        from selenium.webdriver.common.action_chains import ActionChains

        ActionChains(self._driver, duration=20).send_keys(text).perform()

    def resize(self, width: int, height: int) -> None:
        # The window's own frame and bar are not the page's.
        self._driver.set_window_size(width, height)
        inner = self.value("[innerWidth, innerHeight]")
        self._driver.set_window_size(2 * width - inner[0], 2 * height - inner[1])

    def _shot(self) -> str:
        return self._driver.get_screenshot_as_base64()

    def close(self) -> None:
        """End it."""
        self._driver.quit()
