"""The window as a reader starts it: how long to the window and to the picture, memory, idleness.

Each start is a process of its own with settings of its own; what it tells of itself on the way
(``viewer.milestones``) is put on the clock from the moment it was started.
"""

from __future__ import annotations

import json
import os
import re
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from scripts.benching.table import Row
from viewer.milestones import VARIABLE

ROOT = Path(__file__).resolve().parent.parent.parent
LAST = "full picture"
AFTER_BONES = "the ligaments"
GIVE_UP_S = 120.0
IDLE_FOR_S = 5.0
QUIET_S = 0.05
"""A window that used no more in a second has done what it works out beside itself after a start."""

_PLAIN = """
import sys
from meshes.body import Body
from meshes.cache import load_or_build
from scripts.benching.pictures import Plain
plain = Plain(load_or_build(Body(), sys.argv[1]))
plain.turn()
for line in open("/proc/self/status"):
    if line.startswith("VmRSS"):
        print(int(line.split()[1]) / 1024)
"""


class Started:
    """A window in a process of its own, to be used as a context.

    Parameters
    ----------
    detail : {"preview", "full"}
    last : str
        The milestone that is waited for.
    models : path or None
        Where it looks for finished models; None for the usual place.
    """

    def __init__(self, detail: str, last: str = LAST, models: str | None = None) -> None:
        self._folder = tempfile.TemporaryDirectory()
        settings = Path(self._folder.name) / "settings.json"
        settings.write_text(json.dumps({"cautions_seen": True, "reopen": False}))
        environment = {**os.environ, VARIABLE: "1", "PEELBACK_CONFIG": self._folder.name}
        if models is not None:
            environment["PEELBACK_CACHE"] = models
        environment["PYTHONPATH"] = os.pathsep.join(
            p for p in (str(ROOT), os.environ.get("PYTHONPATH", "")) if p
        )
        began = time.time()
        self.process = subprocess.Popen(
            [sys.executable, "-m", "viewer", "--detail", detail],
            env=environment, stderr=subprocess.PIPE, text=True,
        )  # fmt: skip
        self.seconds: dict[str, float] = {}
        self.cpu: dict[str, float] = {}
        said = []
        for line in self.process.stderr:
            told = re.match(r"milestone (.+) ([\d.]+) ([\d.]+)$", line)
            if told is None:
                said.append(line)
                continue
            self.seconds[told[1]] = float(told[2]) - began
            self.cpu[told[1]] = float(told[3])
            if told[1] == last or time.time() - began > GIVE_UP_S:
                break
        if last not in self.seconds:
            self.close()
            raise RuntimeError("the window ended before its first picture: " + "".join(said))

    def __enter__(self) -> Started:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """End the window."""
        self.process.kill()
        self.process.wait()
        self.process.stderr.close()
        self._folder.cleanup()

    def cpu_now(self) -> float:
        """Return the processor time used so far, s (Linux)."""
        words = Path(f"/proc/{self.process.pid}/stat").read_text().rsplit(")", 1)[1].split()
        return (int(words[11]) + int(words[12])) / os.sysconf("SC_CLK_TCK")

    def wait_until_quiet(self) -> float:
        """Wait until nothing is worked out any more; return how long that took, s."""
        began, before = time.time(), self.cpu_now()
        quiet = 0
        while quiet < 5 and time.time() - began < GIVE_UP_S:
            time.sleep(1.0)
            now = self.cpu_now()
            quiet = quiet + 1 if now - before <= QUIET_S else 0
            before = now
        return time.time() - began

    def memory_mib(self) -> float:
        """Return the resident memory, MiB (Linux)."""
        for line in Path(f"/proc/{self.process.pid}/status").read_text().splitlines():
            if line.startswith("VmRSS"):
                return int(line.split()[1]) / 1024
        raise RuntimeError("no VmRSS")


def starts(detail: str, count: int = 5, plain: bool = True) -> Iterator[Row]:
    """Warm starts, memory and idleness; the first start brings caches in and does not count."""
    found: dict[str, list[float]] = {}
    Started(detail).close()
    for _ in range(count):
        with Started(detail) as window:
            for name in window.seconds:
                found.setdefault(name, []).append(window.seconds[name])
                found.setdefault(f"{name}, processor", []).append(window.cpu[name])
    note = f"median of {count}; least "
    for name, bar in (("window", 1.0), (LAST, 2.0)):
        values, spent = found[name], found[f"{name}, processor"]
        yield Row(
            f"warm start to the {name}", "s", statistics.median(values), None, bar,
            f"{note}{min(values):.2f}; processor {statistics.median(spent):.2f} s",
        )  # fmt: skip
    with Started(detail) as window:
        at_first = window.memory_mib()
        ready_after = window.wait_until_quiet()
        before = window.cpu_now()
        time.sleep(IDLE_FOR_S)
        spent = window.cpu_now() - before
        rested = window.memory_mib()
    other = None
    if plain:
        told = subprocess.run(
            [sys.executable, "-c", _PLAIN, detail], cwd=ROOT, capture_output=True, text=True,
            env={**os.environ, "PYTHONPATH": str(ROOT)}, check=True,
        )  # fmt: skip
        other = float(told.stdout.split()[-1])
    yield Row("memory at the first picture", "MiB", at_first, other, 800)
    yield Row("memory when all is made ready", "MiB", rested, other, 800)
    note = f"after {ready_after:.0f} s"
    yield Row(f"processor time in {IDLE_FOR_S:g} s of rest", "s", spent, None, 0, note)


def cold_starts(detail: str, count: int = 3) -> Iterator[Row]:
    """From the command to the picture of all bones, where no finished model lies in the cache."""
    found = []
    for _ in range(count):
        with (
            tempfile.TemporaryDirectory() as models,
            Started(detail, f"picture of {AFTER_BONES}", models) as window,
        ):
            found.append(window.seconds["picture of bones"])
    note = f"median of {count}; least {min(found):.2f}"
    yield Row(
        "cold start to the picture of the bones", "s", statistics.median(found), None, 3, note
    )


def loads(model_body: Any, detail: str, plain: bool = True) -> Iterator[Row]:
    """From files to something that can be drawn."""
    from meshes.cache import load_cached
    from meshes.export import glb_bytes, read_glb
    from scripts.benching.timing import median
    from viewer.scene.drawn_cache import drawn_model

    drawn_model(load_cached(model_body, detail))

    def mine() -> None:
        drawn_model(load_cached(model_body, detail))

    other = None
    if plain:
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "model.glb"
            path.write_bytes(glb_bytes(load_cached(model_body, detail).parts.values()))
            other = median(lambda: read_glb(path), 1)
    yield Row(
        "load the model, ready to draw", "ms", median(mine, 5), other, None,
        "plain: trimesh reads our GLB",
    )  # fmt: skip
