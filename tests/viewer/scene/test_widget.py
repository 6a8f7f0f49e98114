import gc
import os
import sys

import pytest

from tests.fakes import toy_model
from viewer.scene.scene import PartLook

pytestmark = pytest.mark.skipif(
    sys.platform.startswith("linux") and not os.environ.get("DISPLAY"),
    reason="VTK needs an X server to draw into a Qt window",
)


@pytest.fixture
def widget(qtbot):
    from viewer.scene.widget import SceneWidget

    model = toy_model()
    widget = SceneWidget()
    qtbot.addWidget(widget)
    widget.resize(640, 480)
    widget.show()
    qtbot.waitExposed(widget)
    widget.scene.animate = False
    widget.scene.set_model(model)
    widget.scene.apply({i: PartLook() for i, p in model.parts.items() if p.stratum >= 2})
    widget.scene.set_view("posterior")
    widget.refresh()
    qtbot.waitUntil(lambda: widget.last_frame_ms > 0, timeout=5000)
    yield widget
    widget.finalize()


def place_of(widget, part_id):
    from PySide6.QtCore import QPoint

    mesh = widget.scene.drawn_parts()[part_id].part.mesh
    pixels, _ = widget.scene.project(mesh.vertices.mean(axis=0)[None])
    ratio = widget.devicePixelRatioF()
    return QPoint(round(pixels[0][0] / ratio), round(pixels[0][1] / ratio))


def test_click_picks_the_part_under_the_pointer(widget, qtbot):
    from PySide6.QtCore import Qt

    with qtbot.waitSignal(widget.picked, timeout=2000) as caught:
        qtbot.mouseClick(widget, Qt.MouseButton.LeftButton, pos=place_of(widget, "deltoid.right"))
    assert caught.args[0].part_id == "deltoid.right"
    assert caught.args[1] is False


def test_drag_turns_the_body_and_picks_nothing(widget, qtbot):
    from PySide6.QtCore import QPoint, Qt

    picked = []
    widget.picked.connect(lambda *args: picked.append(args))
    with qtbot.waitSignal(widget.view_changed, timeout=2000):
        qtbot.mousePress(widget, Qt.MouseButton.LeftButton, pos=QPoint(300, 200))
        for x in range(310, 380, 10):
            qtbot.mouseMove(widget, QPoint(x, 200))
        qtbot.wait(20)
        qtbot.mouseRelease(widget, Qt.MouseButton.LeftButton, pos=QPoint(380, 200))
    assert not picked
    assert widget.scene.camera()["azimuth_deg"] != 0


def test_full_picture_follows_within_600_ms_of_standing_still(widget, qtbot):
    with qtbot.waitSignal(widget.settled, timeout=600):
        widget.refresh()


def test_flight_ends_where_it_should(widget, qtbot):
    widget.scene.animate = True
    with qtbot.waitSignal(widget.view_changed, timeout=3000):
        widget.scene.set_view("oblique_left")
    assert widget.scene.camera()["azimuth_deg"] == pytest.approx(38)


def test_closing_twice_and_never_showing_do_no_harm(qtbot):
    from viewer.scene.widget import SceneWidget

    widget = SceneWidget()
    widget.finalize()
    widget.finalize()
    widget.close()


def test_closed_widgets_leave_no_render_window(qtbot):
    from vtkmodules.vtkRenderingCore import vtkRenderWindow

    from viewer.scene.widget import SceneWidget

    def living():
        gc.collect()
        return sum(isinstance(thing, vtkRenderWindow) for thing in gc.get_objects())

    before = living()
    for _ in range(2):
        widget = SceneWidget()
        widget.finalize()
        widget.deleteLater()
        del widget
        qtbot.wait(30)
    assert living() <= before
