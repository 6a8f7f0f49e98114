"""The page in Firefox and in WebKit, the engine that Safari has, with the network off.

The walk is the same in both; Chromium has its own, closer tests (`test_browser.py`).
"""

from __future__ import annotations

import os
from pathlib import Path

import numpy as np
import pytest

from tests.fakes import toy_model
from tests.viewer.share.guests import Firefox, WebKit, listening
from viewer.share.page import write_page
from viewer.state.languages import spoken_in
from viewer.state.view_state import Sides, ViewState
from viewer.talk.scenes import Talk, TalkScene

pytestmark = pytest.mark.slow

LOOKS = os.environ.get("PEELBACK_LOOKS", "")
"""A folder: then pictures of the walk are left there, to be looked at."""

SCENES = (
    TalkScene(ViewState(), "Whole back", line="Skin first"),
    TalkScene(
        ViewState(peeled=Sides(2, 3), hidden=frozenset({"deltoid.left"}), view="lateral_left"),
        "One side deeper",
    ),
)


@pytest.fixture(scope="module", params=[Firefox, WebKit], ids=lambda kind: kind.name)
def guest(request, tmp_path_factory):
    if reason := request.param.missing():
        pytest.skip(reason)
    pytest.importorskip("websocket" if request.param is Firefox else "selenium")
    made = request.param(tmp_path_factory.mktemp(request.param.name))
    yield made
    made.close()


@pytest.fixture(scope="module")
def pages(tmp_path_factory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("pages")
    made = {}
    for language in ("en", "de"):
        with spoken_in(language):
            write_page(toy_model(), folder / f"{language}.html", Talk("A lecture", SCENES))
        made[language] = listening(folder / f"{language}.html", folder)
    return made


def _keep(guest, name: str) -> np.ndarray:
    picture = guest.picture()
    if LOOKS:
        from PIL import Image

        Image.fromarray(picture.astype(np.uint8)).save(Path(LOOKS) / f"{guest.name}_{name}.png")
    return picture


def _changed(a: np.ndarray, b: np.ndarray) -> int:
    return int((np.abs(a - b).max(axis=2) > 24).sum())


def _quiet(guest, page: Path) -> None:
    assert guest.value("heard") == []
    assert list(guest.complaints) == []
    asked = {url for url in guest.asked if not url.startswith("data:")}
    assert asked <= {page.as_uri()}


def test_page_is_peeled_picked_and_dissected(guest, pages):
    guest.resize(1000, 700)
    guest.open(pages["en"])
    assert guest.value("document.querySelector('#cautions').open")
    assert guest.value("document.querySelector('#message').textContent.trim()") == ""
    guest.press("#cautions button")
    count = guest.value("Number(document.body.dataset.visible)")
    assert count == len(toy_model().parts)
    whole = _keep(guest, "whole")
    assert np.ptp(whole.reshape(-1, 3), axis=0).max() > 60

    guest.press("#deeper")
    guest.press("#deeper")
    assert guest.value("peelback.state.peeled") == {"left": 2, "right": 2}
    assert guest.value("Number(document.body.dataset.visible)") < count
    assert _changed(whole, _keep(guest, "peeled")) > 500

    guest.press_at(*guest.middle())
    guest.settle()
    front = guest.value("peelback.parts[peelback.state.selected]?.id")
    assert front and toy_model().parts[front].stratum == 2
    assert guest.value("peelback.parts[peelback.state.selected].title") in guest.value(
        "document.querySelector('#pane-part').textContent"
    )

    guest.press("#pane-part button", "See through")
    _keep(guest, "see_through")
    guest.press_at(*guest.middle())
    guest.settle()
    behind = guest.value("peelback.parts[peelback.state.selected]?.id")
    assert behind not in (None, front)
    guest.press("#pane-part button", "Hide")
    assert guest.value("[...peelback.state.hidden].map((n) => peelback.parts[n].id)") == [behind]

    guest.press("#reset")
    assert guest.value("Number(document.body.dataset.visible)") == count
    guest.press("#tab-steps")
    guest.press("#pane-steps button", "Fold trapezius outward")
    assert "Not yet" in guest.value("document.querySelector('#pane-steps').textContent")
    guest.press("#pane-steps button", "Do all before it, then this")
    gone = set(guest.value("[...peelback.state.removed].map((n) => peelback.parts[n].id)"))
    assert {"skin.left", "trapezius_ascending.right"} <= gone
    assert "rhomboid_major.left" not in gone
    _keep(guest, "steps")
    _quiet(guest, pages["en"])


def test_scenes_of_a_talk_follow_one_another(guest, pages):
    guest.resize(1000, 700)
    guest.open(pages["en"])
    guest.press("#cautions button")
    guest.press("#tab-talk")
    guest.press("#pane-talk button", "1. Whole back")
    assert "Skin first" in guest.value("document.querySelector('#pane-talk').textContent")
    guest.press("#pane-talk button", "Next")
    assert guest.value("peelback.state.peeled") == {"left": 2, "right": 3}
    _keep(guest, "scene")
    _quiet(guest, pages["en"])


def test_drawing_turns_the_back_and_keys_peel_it(guest, pages):
    guest.resize(1000, 700)
    guest.open(pages["en"])
    guest.press("#cautions button")
    x, y = guest.middle()
    guest.drag((x, y), (x + 60, y))
    guest.settle()
    assert guest.value("peelback.picture.pose.azimuth") < -10
    guest.value("document.querySelector('#canvas').focus()")
    guest.type("]")
    guest.settle()
    assert guest.value("peelback.state.peeled.left") == 1
    guest.type("[")
    guest.settle()
    assert guest.value("peelback.state.peeled.left") == 0
    _quiet(guest, pages["en"])


@pytest.mark.parametrize("size", [(390, 844), (820, 1180)], ids=["phone", "tablet"])
def test_page_fits_a_small_screen_and_takes_taps(guest, pages, size):
    guest.resize(*size)
    guest.open(pages["de"])
    assert guest.value("document.documentElement.lang") == "de"
    guest.press("#cautions button", touch=True)
    assert not guest.value("document.querySelector('#cautions').open")
    assert guest.value("document.documentElement.scrollWidth <= innerWidth")
    guest.press("#deeper", touch=True)
    assert guest.value("peelback.state.peeled.left") == 1
    guest.press_at(*guest.middle(), touch=True)
    guest.settle()
    assert guest.value("peelback.parts[peelback.state.selected]?.stratum") == 1
    _keep(guest, f"{size[0]}")
    _quiet(guest, pages["de"])


def test_real_back_shows_its_first_picture_in_3_s_and_is_peeled(guest, full_model, tmp_path):
    assert write_page(full_model, tmp_path / "back.html") < 15_000_000
    page = listening(tmp_path / "back.html", tmp_path)
    guest.resize(1280, 800)
    seconds = []
    for _ in range(3):
        guest.open(page)
        seconds.append(round(guest.value("peelback.picture.firstAt") / 1000, 2))
        assert guest.value("Number(document.body.dataset.visible)") == len(full_model.parts)
    print(f"{guest.name} {guest.version}: first picture after {seconds} s")
    guest.press("#cautions button")
    whole = _keep(guest, "real_whole")
    for depth in (2, 6):
        while guest.value("peelback.state.peeled.left") < depth:
            guest.press("#deeper")
        guest.press_at(*guest.middle())
        guest.settle()
        taken = guest.value("peelback.parts[peelback.state.selected]?.id")
        assert taken, f"nothing was taken at stratum {depth}"
        assert full_model.parts[taken].stratum >= depth
        assert _changed(whole, _keep(guest, f"real_{depth}")) > 20_000
    guest.resize(390, 844)
    guest.settle()
    _keep(guest, "real_phone")
    _quiet(guest, page)
    assert min(seconds) < 3.0, f"{guest.name} {guest.version}: {seconds}"
