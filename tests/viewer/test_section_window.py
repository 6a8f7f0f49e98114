"""The section in a real window: plane, dock, grip, areas, files."""

import re
import xml.etree.ElementTree as ET
import zlib

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QPointF, Qt

from meshes.questions.section import Slicer, placed_plane
from viewer.state import commands
from viewer.state.view_state import Sides
from viewer.state.working_file import state_from_json, state_to_json


@pytest.fixture
def cut(qtbot, window):
    window.set_section_on(True)
    qtbot.waitUntil(lambda: window.section_dock.areas.topLevelItemCount() > 0, timeout=5000)
    return window


def picture(window):
    return window.scene_widget.scene.screenshot((400, 400)).astype(int)


def settle(qtbot, window):
    qtbot.waitUntil(lambda: not window._section_rest.isActive(), timeout=5000)


def listed(window):
    areas = window.section_dock.areas
    return {
        areas.topLevelItem(k).data(0, Qt.ItemDataRole.UserRole): float(
            areas.topLevelItem(k).text(1)
        )
        for k in range(areas.topLevelItemCount())
    }


def test_the_section_cuts_the_model_and_undo_makes_it_whole(qtbot, window):
    window.go_to_view("inferior")
    before = picture(window)
    window.set_section_on(True)
    assert window.scene_widget.scene.sectioned
    assert np.abs(picture(window) - before).mean() > 2
    while window.state.section is not None:
        window.undo()
    assert not window.scene_widget.scene.sectioned
    assert window.section_dock.isHidden()
    window.go_to_view("inferior")
    assert np.abs(picture(window) - before).mean() < 0.5


def test_keys_step_from_level_to_level(qtbot, cut):
    start = cut.state.section.position_mm
    cut._actions["section_up"].trigger()
    assert cut.state.section.position_mm > start
    cut._actions["section_down"].trigger()
    assert cut.state.section.position_mm == start


def test_the_list_names_every_part_with_its_area(qtbot, cut):
    found = listed(cut)
    regions = {r.part_id: r.area_cm2 for r in cut._regions}
    assert found.keys() == regions.keys()
    assert all(found[i] == pytest.approx(regions[i], abs=0.006) for i in found)


def test_peeling_takes_parts_out_of_the_section_unless_the_whole_is_cut(qtbot, cut):
    assert any(i.startswith("skin") for i in listed(cut))
    cut.do(commands.peel_to(3, "both", cut.model))
    settle(qtbot, cut)
    assert not any(i.startswith("skin") for i in listed(cut))
    cut.set_section_whole(True)
    settle(qtbot, cut)
    assert any(i.startswith("skin") for i in listed(cut))
    assert cut.state.peeled == Sides(3, 3)


def test_pointing_at_the_cut_face_names_the_part_that_owns_it(qtbot, cut):
    scene = cut.scene_widget.scene
    checked = 0
    for region in cut._regions:
        if region.area_cm2 < 4:
            continue
        place = np.array(region.polygons.representative_point().coords[0])
        plane = cut._outlines.plane
        point = plane.origin + place[0] * plane.right + place[1] * plane.up
        (pixel,), _ = scene.pixels_of(point[None])
        hit = scene.pick(*pixel)
        assert hit is not None and hit.part_id == region.part_id
        checked += 1
    assert checked > 3


def test_the_flat_picture_and_the_model_point_at_one_another(qtbot, cut):
    flat = cut.section_dock.picture
    region = max(cut._regions, key=lambda r: r.area_cm2)
    place = region.polygons.representative_point().coords[0]
    at = flat.pixel_of(place)
    assert flat.part_at(at) == region.part_id
    before = picture(cut)
    qtbot.mouseMove(flat, QPoint(round(at.x()), round(at.y())))
    cut._hover_section(region.part_id)
    assert np.abs(picture(cut) - before).max() > 20
    flat.picked.emit(region.part_id, False)
    assert cut.state.selection == (region.part_id,)
    rows = cut.section_dock.areas.selectedItems()
    assert [r.data(0, Qt.ItemDataRole.UserRole) for r in rows] == [region.part_id]


def test_the_flat_picture_zooms_about_the_pointer_and_fits_again(qtbot, cut):
    flat = cut.section_dock.picture
    at = QPointF(flat.width() * 0.4, flat.height() * 0.45)
    under = flat.place_at(at)
    flat.zoom_by(4.0, at)
    assert flat.place_at(at) == pytest.approx(under, abs=0.01)
    flat.pan(25, -10)
    assert flat.place_at(at + QPointF(25, -10)) == pytest.approx(under, abs=0.01)
    flat.setFocus()
    qtbot.keyClick(flat, Qt.Key.Key_0)
    assert flat.zoom == 1.0


def test_labels_of_the_flat_picture_never_overlap(qtbot, cut):
    labels = cut.section_dock.picture.layout_shown.labels
    for i, a in enumerate(labels):
        for b in labels[i + 1 :]:
            apart = (
                a.left + a.width <= b.left
                or b.left + b.width <= a.left
                or a.top + a.height <= b.top
                or b.top + b.height <= a.top
            )
            assert apart, (a.text, b.text)


def test_labels_on_the_model_name_the_cut_face(qtbot, cut):
    cut.set_labels(True)
    cut.do(commands.set_label_density(1.0))
    scene = cut.scene_widget.scene
    scene.screenshot()
    on_face = 0
    for label in scene.labels():
        hit = scene.pick(*label.anchor)
        plane = cut._outlines.plane
        if hit is not None and abs((hit.point - plane.origin) @ plane.normal) < 1e-6:
            assert hit.part_id == label.id
            on_face += 1
    assert on_face >= 3


def test_dragging_the_grip_moves_the_plane_in_one_undo(qtbot, cut):
    cut.set_section_kind("sagittal")
    cut.go_to_view("posterior")
    scene, widget = cut.scene_widget.scene, cut.scene_widget
    (pixel,), _ = scene.pixels_of(scene._caps.grip[None])
    ratio = widget.devicePixelRatioF()
    start = QPoint(round(pixel[0] / ratio), round(pixel[1] / ratio))
    assert scene.section_grip_at(*pixel)
    was = cut.state.section.position_mm
    camera = scene.camera()
    qtbot.mousePress(widget, Qt.MouseButton.LeftButton, pos=start)
    for k in range(1, 6):
        qtbot.mouseMove(widget, start - QPoint(8 * k, 0))
    qtbot.mouseRelease(widget, Qt.MouseButton.LeftButton, pos=start - QPoint(40, 0))
    mm = 40 * ratio * 2 * scene.pose.scale_mm / scene.size()[1]
    # From behind the subject's left is on the left: dragging left is +x.
    assert cut.state.section.position_mm - was == pytest.approx(mm, abs=2.6)
    assert scene.camera() == camera
    cut.undo()
    assert cut.state.section.position_mm == was


def test_a_saved_state_holds_the_section(qtbot, cut):
    cut.set_section_kind("free")
    cut.tilt_section(30, 10)
    state = state_from_json(state_to_json(cut.state))
    cut.set_section_on(False)
    cut.session.replace_state(state)
    assert cut.scene_widget.scene.sectioned
    assert cut.section_dock.nod.value() == 30


@pytest.mark.parametrize("ending", ["svg", "pdf", "png"])
def test_a_saved_section_names_its_parts_and_its_caution(qtbot, cut, tmp_path, ending):
    path = tmp_path / f"cut.{ending}"
    assert cut.save_section_to(path)
    data = path.read_bytes()
    if ending == "svg":
        texts = {t.text for t in ET.fromstring(data).iter("{http://www.w3.org/2000/svg}text")}
        assert "Teaching model – not for needle or surgical guidance" in texts
        assert {label.text for label in cut.section_dock.picture.layout_shown.labels} & texts
    elif ending == "pdf":
        assert data.startswith(b"%PDF") and data.rstrip().endswith(b"%%EOF")
        left, bottom, right, top = map(
            float, re.search(rb"/MediaBox \[([^\]]+)\]", data).group(1).split()
        )
        assert (right - left) / (top - bottom) == pytest.approx(297 / 210, rel=0.01)
        page = b"".join(
            zlib.decompress(found.group(1))
            for found in re.finditer(rb"/FlateDecode.*?stream\r?\n(.*?)endstream", data, re.S)
            if found.group(1)[:1] == b"x"
        )
        # Every region is filled by the even-odd rule as a path of its own.
        assert len(re.findall(rb"\b[fB]\*", page)) >= len(cut._regions)
        assert b"Tj" in page or b"TJ" in page
    else:
        from PIL import Image

        assert Image.open(path).size == (1600, 1200)
    assert list(tmp_path.iterdir()) == [path]


def test_a_section_is_not_saved_as_a_spreadsheet(qtbot, cut, tmp_path, monkeypatch):
    told = []
    monkeypatch.setattr("viewer.menus.section.QMessageBox.warning", lambda *a: told.append(a[-1]))
    assert not cut.save_section_to(tmp_path / "cut.xlsx")
    assert told == ["a section is saved as .svg, .pdf or .png, not .xlsx"]
    assert not list(tmp_path.iterdir())


def test_every_control_of_the_dock_has_a_name_and_letters_grow(qtbot, cut):
    from PySide6.QtWidgets import QAbstractButton, QComboBox, QSlider, QTreeWidget

    dock = cut.section_dock
    for kind in (QSlider, QComboBox, QTreeWidget, QAbstractButton):
        for widget in dock.widget().findChildren(kind):
            assert widget.accessibleName() or widget.text()
    small = dock.kind.font().pointSizeF()
    cut.larger_letters()
    assert dock.kind.font().pointSizeF() > small


def test_a_folded_flap_is_cut_where_it_lies():
    from tests.fakes import toy_model

    model = toy_model()
    slicer = Slicer(model)
    plane = placed_plane("transverse", 300.0)
    part_id = next(i for i in slicer.outlines(plane).ids if i.startswith("trapezius"))
    mesh = model.parts[part_id].mesh
    places = {part_id: (np.asarray(mesh.vertices) + (0.0, 500.0, 0.0), mesh.faces)}
    before = {r.part_id: r for r in slicer.cut(plane)}
    after = {r.part_id: r for r in slicer.moved(places).cut(plane)}
    assert after[part_id].polygons.bounds[1] > before[part_id].polygons.bounds[3] + 100
    again = {r.part_id: r for r in slicer.cut(plane)}
    assert again[part_id].area_cm2 == before[part_id].area_cm2


def test_in_a_talk_the_model_is_cut_and_no_panel_is_seen(qtbot, cut):
    from viewer.state.section_plane import set_section
    from viewer.state.session import Session

    desk = cut.session
    hall = Session(desk.state)
    hall.subscribe(cut._on_state)
    cut.session = hall
    cut.step_section(1)
    assert cut.scene_widget.scene.sectioned and cut.section_dock.isHidden()
    cut.do(set_section(None))
    assert not cut.scene_widget.scene.sectioned
    cut.session = desk
    cut._on_state(hall.state, desk.state)
    assert cut.scene_widget.scene.sectioned and not cut.section_dock.isHidden()
