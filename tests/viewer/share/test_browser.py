"""The page in a real browser with the network off: it loads, peels, picks and stays silent."""

from __future__ import annotations

import io
import os
import random
import re
import shutil
import time

import numpy as np
import pytest
from PIL import Image

from meshes.catalogue.plan import part_ids_of, steps
from tests.fakes import toy_model
from viewer.share.page import write_page
from viewer.state.commands import peel_to
from viewer.state.languages import spoken_in
from viewer.state.plan import plan_from_records
from viewer.state.view_state import Sides, ViewState
from viewer.state.visibility import taken_off
from viewer.talk.scenes import Talk, TalkScene
from viewer.translations.texts import FOLDER, translations

playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")

SOFTWARE_GL = ("--enable-unsafe-swiftshader", "--use-angle=swiftshader", "--ignore-gpu-blocklist")
NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")


@pytest.fixture(scope="module")
def browser():
    """Return a headless Chromium: playwright's own, or one that is on the machine."""
    with playwright.sync_playwright() as driver:
        own = driver.chromium.executable_path
        path = own if os.path.exists(own) else next(filter(None, map(shutil.which, NAMES)), None)
        if path is None:
            pytest.skip("there is no Chromium on this machine and none could be fetched")
        started = driver.chromium.launch(executable_path=path, args=list(SOFTWARE_GL))
        yield started
        started.close()


@pytest.fixture(scope="module")
def toy_file(tmp_path_factory):
    path = tmp_path_factory.mktemp("share") / "back.html"
    write_page(toy_model(), path)
    return path


def _until(page, condition: str, seconds: float = 30.0) -> None:
    """Wait for a condition; asked from outside, as the page allows no evaluation inside."""
    end = time.monotonic() + seconds
    while not page.evaluate(condition):
        assert time.monotonic() < end, f"never came true: {condition}"
        page.wait_for_timeout(30)


class Visit:
    """One opened page, with all that it asked for and complained of."""

    def __init__(self, browser, path, phone=False, **more):
        size = {"width": 390, "height": 800} if phone else {"width": 1000, "height": 700}
        self.context = browser.new_context(
            viewport=size, offline=True, has_touch=phone, is_mobile=phone, **more
        )
        self.page = self.context.new_page()
        self.asked: list[str] = []
        self.complaints: list[str] = []
        self.page.on("request", lambda request: self.asked.append(request.url))
        self.page.on(
            "console",
            lambda message: (
                self.complaints.append(message.text)
                if message.type in ("error", "warning")
                else None
            ),
        )
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))
        self.page.goto(path.as_uri())
        _until(self.page, "Number(document.body.dataset.frames) > 0")
        self.page.locator("#cautions button").click()

    def ids(self, where: str) -> set[str]:
        """Ids of the parts for which a JavaScript condition on ``p`` and ``s`` holds."""
        return set(
            self.page.evaluate(
                f"() => {{ const s = peelback.state; return peelback.parts"
                f".filter((p) => {where}).map((p) => p.id) }}"
            )
        )

    def visible(self) -> int:
        return int(self.page.evaluate("document.body.dataset.visible"))

    def picture(self) -> np.ndarray:
        self.page.wait_for_timeout(120)
        return np.asarray(
            Image.open(io.BytesIO(self.page.locator("#picture").screenshot())).convert("RGB")
        ).astype(int)

    def middle(self) -> tuple[float, float]:
        box = self.page.locator("#canvas").bounding_box()
        return box["x"] + box["width"] * 0.56, box["y"] + box["height"] * 0.5


@pytest.fixture
def visit(browser, toy_file):
    made = Visit(browser, toy_file)
    yield made
    made.context.close()


def _differs(a: np.ndarray, b: np.ndarray) -> int:
    return int((np.abs(a - b).max(axis=2) > 24).sum())


def test_page_loads_from_disk_without_a_request_or_a_complaint(visit, toy_file):
    visit.page.wait_for_timeout(200)
    assert visit.asked == [toy_file.as_uri()]
    assert visit.complaints == []
    assert visit.visible() == len(toy_model().parts)
    assert np.ptp(visit.picture().reshape(-1, 3), axis=0).max() > 60


def test_cautions_stand_before_everything_else(browser, toy_file):
    context = browser.new_context(offline=True)
    page = context.new_page()
    page.goto(toy_file.as_uri())
    _until(page, "Number(document.body.dataset.frames) > 0")
    assert page.locator("#cautions").evaluate("(d) => d.open")
    assert "not for needle or surgical guidance" in page.locator("#cautions-text").inner_text()
    assert "not for needle" in page.locator("footer").inner_text()
    context.close()


def test_peeling_changes_picture_and_parts_and_undo_brings_them_back(visit):
    whole, count = visit.picture(), visit.visible()
    for _ in range(3):
        visit.page.locator("#deeper").click()
    strata = {
        toy_model().parts[i].stratum for i in visit.ids("peelback.plan && p.batch.mesh.visible")
    }
    assert min(strata) == 3
    assert visit.visible() < count
    assert _differs(whole, visit.picture()) > 500
    for _ in range(3):
        visit.page.locator("#undo").click()
    assert visit.visible() == count
    assert _differs(whole, visit.picture()) < 50


def test_one_side_can_be_peeled_alone(visit):
    visit.page.get_by_role("radio", name="Left").click()
    visit.page.locator("#deeper").click()
    assert visit.page.evaluate("peelback.state.peeled") == {"left": 1, "right": 0}
    assert "left off" in visit.page.locator(".band").first.inner_text()


def test_click_names_the_part_that_lies_there(visit):
    for _ in range(2):
        visit.page.locator("#deeper").click()
    visit.page.wait_for_timeout(100)
    visit.page.mouse.click(*visit.middle())
    picked = visit.page.evaluate("peelback.parts[peelback.state.selected]?.id")
    assert picked is not None
    assert toy_model().parts[picked].stratum == 2
    title = visit.page.evaluate("peelback.parts[peelback.state.selected].title")
    assert title in visit.page.locator("#pane-part").inner_text()
    assert title in visit.page.locator("#spoken").inner_text()


def test_hidden_part_is_told_and_brought_back(visit):
    visit.page.mouse.click(*visit.middle())
    first = visit.page.evaluate("peelback.parts[peelback.state.selected].id")
    visit.page.locator("#pane-part").get_by_role("button", name="Hide").click()
    assert visit.ids("s.hidden.has(p.number)") == {first}
    strip = visit.page.locator("#hidden-strip button")
    assert "Hidden" in strip.inner_text()
    strip.click()
    assert visit.ids("s.hidden.has(p.number)") == set()


def test_see_through_part_lets_a_click_go_to_what_is_behind_it(visit):
    visit.page.mouse.click(*visit.middle())
    front = visit.page.evaluate("peelback.state.selected")
    visit.page.locator("#pane-part").get_by_role("button", name="See through").click()
    visit.page.wait_for_timeout(100)
    visit.page.mouse.click(*visit.middle())
    assert visit.page.evaluate("peelback.state.selected") not in (front, -1)


def test_search_finds_latin_names_and_brings_the_part_into_view(visit):
    visit.page.get_by_role("tab", name="Search").click()
    visit.page.locator("#search").fill("Musculus rhomboideus mínor")
    visit.page.locator("#found button").first.click()
    assert visit.page.evaluate("peelback.parts[peelback.state.selected].id").startswith(
        "rhomboid_minor"
    )
    # What covers it is looked through, and nothing was dissected for that.
    assert "Looking through" in visit.page.locator("#hidden-strip").inner_text()
    assert visit.visible() == len(toy_model().parts)
    visit.page.locator("#hidden-strip button").click()
    assert not visit.page.evaluate("peelback.state.peek")


def test_steps_take_off_their_parts_and_refuse_what_is_too_early(visit):
    page = visit.page
    page.get_by_role("button", name="Fold trapezius outward").click()
    assert "Not yet" in page.locator("#pane-steps").inner_text()
    before = visit.visible()
    page.get_by_role("button", name="Do all before it, then this").click()
    gone = visit.ids("s.removed.has(p.number)")
    assert {"skin.left", "trapezius_ascending.right", "trapezius_descending.left"} <= gone
    assert "rhomboid_major.left" not in gone
    assert visit.visible() == before - len(gone)
    page.get_by_role("button", name="Lay it back").click()
    gone = visit.ids("s.removed.has(p.number)")
    assert "skin.left" in gone
    assert "trapezius_ascending.right" not in gone


def test_plan_of_the_page_agrees_with_that_of_the_program(visit):
    """The rules stand twice, in Python and in JavaScript: random work must give the same standing."""
    model = toy_model()
    plan = plan_from_records(steps(), lambda name: part_ids_of(name, model.catalogue))
    dice = random.Random(7)
    page = visit.page
    for _ in range(12):
        page.evaluate("peelback.reset()")
        state = ViewState()
        for _ in range(dice.randint(1, 6)):
            side = dice.choice(["left", "right", "both"])
            if dice.random() < 0.3:
                depth = dice.randint(0, 9)
                state = peel_to(depth, side, model).change(state)
                page.evaluate("([d, s]) => peelback.peelTo(d, s)", [depth, side])
                continue
            step = dice.choice(plan.steps)
            if plan.refusal(step.id, model, state, "both" if step.side == "both" else side):
                continue
            state = plan.do_step(step.id, model, side).change(state)
            page.evaluate(
                "([id, side]) => peelback.change(id, (s) =>"
                " peelback.plan.doStep(peelback.plan.byId.get(id), s, side))",
                [step.id, side],
            )
        for side in ("left", "right"):
            theirs = set(
                page.evaluate("(side) => [...peelback.plan.done(peelback.state, side)]", side)
            )
            assert theirs == plan.done(model, state, side)
            shown = {p.id for p in model.parts.values() if not taken_off(p, state)}
            assert visit.ids("p.batch && peelback.isVisible(p)") == shown


def test_whole_page_works_from_the_keyboard(visit):
    page = visit.page
    page.locator("#canvas").focus()
    page.keyboard.press("]")
    assert page.evaluate("peelback.state.peeled.left") == 1
    before = page.evaluate("peelback.picture.pose.azimuth")
    page.keyboard.press("ArrowRight")
    assert page.evaluate("peelback.picture.pose.azimuth") == before + 8
    page.keyboard.press("/")
    page.keyboard.type("scapula")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("peelback.parts[peelback.state.selected].id").startswith("scapula")
    page.keyboard.press("Control+z")
    page.keyboard.press("a")
    assert page.evaluate("peelback.state.peeled.left") == 0


def test_every_control_has_a_name_for_screen_readers(visit):
    nameless = visit.page.evaluate(
        "() => [...document.querySelectorAll('button, input, canvas, [role]:not([role=status])')].filter((n) =>"
        " !(n.ariaLabel || n.textContent.trim() || n.labels?.length ||"
        " n.getAttribute('aria-labelledby'))).map((n) => n.outerHTML)"
    )
    assert nameless == []


def test_drag_turns_and_wheel_comes_closer(visit):
    page = visit.page
    x, y = visit.middle()
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + 60, y, steps=4)
    page.mouse.up()
    assert page.evaluate("peelback.picture.pose.azimuth") < -10
    before = page.evaluate("peelback.picture.pose.scale")
    page.mouse.wheel(0, -300)
    page.wait_for_timeout(100)
    assert page.evaluate("peelback.picture.pose.scale") < before


def test_phone_taps_and_everything_fits(browser, toy_file):
    visit = Visit(browser, toy_file, phone=True, device_scale_factor=2)
    page = visit.page
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.locator("#deeper").tap()
    page.wait_for_timeout(100)
    page.touchscreen.tap(*visit.middle())
    assert page.evaluate("peelback.parts[peelback.state.selected].stratum") == 1
    small = page.evaluate(
        "() => [...document.querySelectorAll('button')].map((b) => [b.textContent,"
        " b.getBoundingClientRect()]).filter(([, r]) => r.width && (r.width < 24 || r.height < 24))"
        ".map(([t]) => t)"
    )
    assert small == []
    assert visit.complaints == []
    visit.context.close()


def test_a_german_page_shows_no_english_text_whatever_is_opened(browser, tmp_path):
    path = tmp_path / "ruecken.html"
    with spoken_in("de"):
        write_page(toy_model(), path, Talk("Vorlesung", (TalkScene(ViewState(), "Ganzer"),)))
    visit = Visit(browser, path)
    page = visit.page
    assert page.locator("html").get_attribute("lang") == "de"
    said = [page.locator("body").inner_text()]
    page.mouse.click(*visit.middle())
    for tab in ("part", "steps", "find", "talk", "about"):
        page.locator(f"#tab-{tab}").click()
        said.append(page.locator("body").inner_text())
        said += page.evaluate(
            "() => [...document.querySelectorAll('[aria-label], [title]')]"
            ".flatMap((n) => [n.ariaLabel, n.title])"
        )
    # Its words are longer: no tab may run into the next one.
    room = page.evaluate(
        "() => [...document.querySelectorAll('[role=tab]')].map((t) => t.clientWidth - t.scrollWidth)"
    )
    assert min(room) >= 0
    page.locator("#tab-steps").click()
    for act in ("Trapezius nach außen klappen", "Alles davor tun, dann dies", "Beidseits zurück"):
        page.get_by_role("button", name=act).click()
        said += [page.locator("body").inner_text(), page.locator("#spoken").inner_text()]
    for number in range(len(steps())):
        page.evaluate(f"document.querySelectorAll('#pane-steps ol button')[{number}].click()")
        said.append(page.locator("#pane-steps").inner_text())
    text = " ".join(" ".join(filter(None, said)).split())
    table = translations(FOLDER / "peelback_de.ts")
    german = " ".join(table.values())
    english = [t for t, w in table.items() if t != w and len(t) > 6 and t not in german]
    assert [t for t in english if re.search(rf"(?<!\w){re.escape(t)}(?!\w)", text)] == []
    assert "N. accessorius" in text
    assert visit.complaints == []
    visit.context.close()


def test_without_webgl_the_text_still_works(browser, toy_file):
    context = browser.new_context(offline=True)
    context.add_init_script(
        "HTMLCanvasElement.prototype.getContext = function () { return null; };"
    )
    page = context.new_page()
    page.goto(toy_file.as_uri())
    page.get_by_role("button", name="I have read this").click()
    assert "no 3D pictures" in page.locator("#message").inner_text()
    page.get_by_role("tab", name="Search").click()
    page.locator("#search").fill("trapezius")
    page.locator("#found button").first.click()
    assert "accessory nerve" in page.locator("#pane-part").inner_text()
    context.close()


def test_scenes_of_a_talk_are_shown_one_after_another(browser, tmp_path):
    scenes = (
        TalkScene(ViewState(), "Whole back", line="Skin first"),
        TalkScene(
            ViewState(peeled=Sides(2, 3), hidden=frozenset({"deltoid.left"}), view="lateral_left"),
            "One side deeper",
        ),
    )
    path = tmp_path / "talk.html"
    write_page(toy_model(), path, Talk("A lecture", scenes))
    visit = Visit(browser, path)
    page = visit.page
    page.get_by_role("tab", name="Talk").click()
    assert "A lecture" in page.locator("#pane-talk").inner_text()
    page.get_by_role("button", name="1. Whole back").click()
    assert "Skin first" in page.locator("#pane-talk").inner_text()
    page.evaluate("document.getElementById('panel').style.maxHeight = '180px'")
    page.get_by_role("button", name="2. One side deeper").click()
    assert page.evaluate("document.getElementById('pane-talk').scrollTop") == 0
    page.get_by_role("button", name="1. Whole back").click()
    page.locator("#pane-talk").get_by_role("button", name="Next").click()
    assert page.evaluate("peelback.state.peeled") == {"left": 2, "right": 3}
    assert visit.ids("s.hidden.has(p.number)") == {"deltoid.left"}
    _until(page, "Math.abs(peelback.picture.pose.azimuth - 90) < 0.1")
    assert visit.complaints == []
    visit.context.close()


def test_dark_page_is_dark(browser, toy_file):
    visit = Visit(browser, toy_file, color_scheme="dark")
    assert visit.picture()[5, 5].max() < 60
    visit.context.close()


@pytest.mark.slow
def test_real_back_stays_under_15_mb_and_shows_its_first_picture_in_3_s(
    browser, preview_model, tmp_path
):
    path = tmp_path / "back.html"
    assert write_page(preview_model, path) < 15_000_000
    seconds = []
    for _ in range(3):
        visit = Visit(browser, path)
        seconds.append(visit.page.evaluate("peelback.picture.firstAt") / 1000)
        assert visit.complaints == []
        assert visit.visible() == len(preview_model.parts)
        # Nothing of what lies beneath comes through the closed skin, seen from behind.
        skin = visit.picture()
        for stratum in range(1, 9):
            visit.page.evaluate(f"peelback.toggleStratum({stratum})")
        height, width = skin.shape[:2]
        back = (slice(height // 4, 3 * height // 4), slice(int(0.4 * width), int(0.6 * width)))
        assert (np.abs(visit.picture() - skin).max(axis=2) > 6)[back].sum() == 0
        visit.context.close()
    assert min(seconds) < 3.0
