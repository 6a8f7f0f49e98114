"""A display of its own with a desk's and a hall's screen, whatever the tests themselves run on."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import time
from pathlib import Path

import pytest

DESK = "1280/338x800/211+0+0"
HALL = "1600/423x900/238+1280+0"
"""Pixels and millimetres across and down, and the place, as xrandr takes them."""

CASES = Path(__file__).with_name("two_screens_cases.py")


@pytest.fixture
def display(tmp_path):
    """Return the name of a display with two screens of different size."""
    if not (shutil.which("Xvfb") and shutil.which("xrandr")):
        pytest.skip("no Xvfb, or no xrandr to part its screen in two")
    number = tmp_path / "display"
    with open(number, "w") as file:
        # Without -noreset the server forgets its monitors when the first client leaves.
        server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(file.fileno()), "-screen", "0", "2880x900x24",
             "-noreset", "-nolisten", "tcp"],
            pass_fds=[file.fileno()], stderr=subprocess.DEVNULL,
        )  # fmt: skip
    try:
        end = time.monotonic() + 30
        while not number.read_text().strip():
            assert server.poll() is None and time.monotonic() < end, "Xvfb did not start"
            time.sleep(0.05)
        name = f":{number.read_text().strip()}"
        env = {**os.environ, "DISPLAY": name}
        for monitor, place, output in (("desk", DESK, "screen"), ("hall", HALL, "none")):
            subprocess.run(["xrandr", "--setmonitor", monitor, place, output], env=env, check=True)
        yield name
    finally:
        server.terminate()
        server.wait(timeout=10)


def test_presenting_on_two_screens(display):
    env = {**os.environ, "DISPLAY": display, "QT_QPA_PLATFORM": "xcb"}
    env.pop("WAYLAND_DISPLAY", None)
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-p", "no:cacheprovider", str(CASES)],
        env=env, capture_output=True, text=True, timeout=300,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout[-4000:] + done.stderr[-2000:]
    assert int(re.search(r"(\d+) passed", done.stdout)[1]) >= 4
