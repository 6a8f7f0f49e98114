"""What an anatomist would look for first, measured on the finished preview model."""

from __future__ import annotations

import numpy as np
import pytest

from meshes.drape.distance import MeshIndex

pytestmark = pytest.mark.usefixtures("preview_model")


def part(model, name, side="left"):
    return model.parts[f"{name}.{side}"]


def slope(fibres: np.ndarray) -> np.ndarray:
    """Mean direction of fibres, origin to insertion, unit vector."""
    way = (fibres[:, -1] - fibres[:, 0]).mean(axis=0)
    return way / np.linalg.norm(way)


def end_heights(model, name, kind):
    return np.concatenate([a.curve[:, 2] for a in part(model, name).attachments if a.kind == kind])


def section_x(mesh, z):
    """Centroid x of a mesh's cut at a height, mm; None where it is not cut."""
    cut = mesh.section(plane_origin=[0, 0, z], plane_normal=[0, 0, 1])
    return None if cut is None else float(cut.vertices[:, 0].mean())


def test_the_left_is_at_positive_x(preview_model):
    for name in ("trapezius_ascending", "latissimus_dorsi", "rhomboid_major"):
        assert part(preview_model, name, "left").mesh.centroid[0] > 0
        assert part(preview_model, name, "right").mesh.centroid[0] < 0


def test_rhomboid_minor_lies_above_major(preview_model):
    minor = end_heights(preview_model, "rhomboid_minor", "insertion")
    major = end_heights(preview_model, "rhomboid_major", "insertion")
    assert minor.min() > major.max()


def test_rhomboids_slope_down_and_out(preview_model):
    for name in ("rhomboid_minor", "rhomboid_major"):
        way = slope(part(preview_model, name).fibres)
        assert way[0] > 0.4 and way[2] < -0.15


def test_splenius_runs_up_and_out_but_semispinalis_up_and_in_or_straight(preview_model):
    splenius = slope(part(preview_model, "splenius_capitis").fibres)
    semispinalis = slope(part(preview_model, "semispinalis_capitis").fibres)
    assert splenius[2] > 0.6 and splenius[0] > 0.25
    assert semispinalis[2] > 0.85 and semispinalis[0] < 0.1


def test_multifidus_runs_up_and_in(preview_model):
    for region in ("thoracis", "lumborum"):
        way = slope(part(preview_model, f"multifidus_{region}").fibres)
        assert way[2] > 0.7 and way[0] < 0


def test_the_serrati_slope_against_each_other(preview_model):
    upper = slope(part(preview_model, "serratus_posterior_superior").fibres)
    lower = slope(part(preview_model, "serratus_posterior_inferior").fibres)
    assert upper[0] > 0 and lower[0] > 0
    assert upper[2] < 0 < lower[2]


def test_the_columns_stand_in_order_from_the_midline(preview_model):
    for level, lateral in (("T7", "thoracis"), ("T10", "lumborum")):
        z = float(preview_model.landmarks[f"{level}.body_centre"][2])
        row = [
            section_x(part(preview_model, name).mesh, z)
            for name in ("spinalis_thoracis", "longissimus_thoracis", f"iliocostalis_{lateral}")
        ]
        assert None not in row
        assert row[0] < row[1] < row[2], level


def test_trapezius_reaches_from_the_protuberance_to_t12(preview_model):
    top = preview_model.landmarks["occipital.external_protuberance"][2]
    bottom = preview_model.landmarks["T12.spinous_process"][2]
    assert part(preview_model, "trapezius_descending").mesh.bounds[1, 2] > top - 8
    assert abs(part(preview_model, "trapezius_ascending").mesh.bounds[0, 2] - bottom) < 10


def test_upper_trapezius_curls_forward_to_the_lateral_third_of_the_clavicle(preview_model):
    muscle = part(preview_model, "trapezius_descending")
    clavicle = preview_model.landmarks["clavicle.left.posterior_border"]
    ends = np.concatenate([a.curve for a in muscle.attachments if a.to == "clavicle.left"])
    length = np.ptp(clavicle[:, 0])
    assert ends[:, 0].min() > clavicle[:, 0].min() + 0.55 * length
    assert ends[:, 1].mean() < muscle.fibres[:, 0, 1].mean() - 20


def test_trapezius_overlies_the_upper_border_of_latissimus(preview_model):
    z = float(preview_model.landmarks["T10.spinous_process"][2])
    outer = part(preview_model, "trapezius_ascending").mesh
    inner = part(preview_model, "latissimus_dorsi").mesh
    origin = np.array([[9.0, 300.0, z + 4]])
    way = np.array([[0.0, -1.0, 0.0]])
    first = outer.ray.intersects_location(origin, way)[0][:, 1]
    second = inner.ray.intersects_location(origin, way)[0][:, 1]
    assert len(first) and len(second)
    assert first.max() > second.max()


def test_latissimus_passes_round_teres_major_to_the_front_of_the_humerus(preview_model):
    latissimus = part(preview_model, "latissimus_dorsi")
    teres = part(preview_model, "teres_major")
    end = np.concatenate([a.curve for a in latissimus.attachments if a.kind == "insertion"])
    assert {a.to for a in latissimus.attachments if a.kind == "insertion"} == {"humerus.left"}
    assert end[:, 1].mean() <= teres.fibres[:, -1, 1].mean() + 3.0


def test_latissimus_is_white_to_well_beside_the_midline_in_the_loin(preview_model):
    z = float(preview_model.landmarks["L3.body_centre"][2])
    muscle = part(preview_model, "latissimus_dorsi")
    near = np.abs(muscle.mesh.vertices[:, 2] - z) < 10
    x, white = muscle.mesh.vertices[near, 0], muscle.tendon[near]
    # Flesh edge about 55 to 60 mm lateral at L3 (common practice); white from the midline on.
    assert x.min() < 3
    assert white[x < 35].min() > 0.8
    assert white[(x > 75) & (x < 100)].max() < 0.3


def test_latissimus_covers_serratus_posterior_inferior_beside_the_midline(preview_model):
    cover = part(preview_model, "latissimus_dorsi").mesh
    under = part(preview_model, "serratus_posterior_inferior").mesh
    at = under.vertices[(under.vertices[:, 0] > 16) & (under.vertices[:, 0] < 60)]
    hit = cover.ray.intersects_any(at + [0, 0.5, 0], np.tile([0.0, 1.0, 0.0], (len(at), 1)))
    assert hit.mean() > 0.97


def test_levator_ends_between_the_superior_angle_and_the_root(preview_model):
    z = end_heights(preview_model, "levator_scapulae", "insertion")
    marks = preview_model.landmarks
    assert z.max() <= marks["scapula.left.superior_angle"][2] + 3
    assert z.min() >= marks["scapula.left.root_of_spine"][2] - 6


def test_erector_is_hidden_while_the_fascia_is_whole(preview_model):
    cover = MeshIndex.of(part(preview_model, "thoracolumbar_fascia_posterior").mesh)
    for name in ("longissimus_thoracis", "iliocostalis_lumborum"):
        mesh = part(preview_model, name).mesh
        z_low = preview_model.landmarks["L4.spinous_process"][2]
        z_high = preview_model.landmarks["T10.spinous_process"][2]
        rows = (mesh.vertices[:, 2] > z_low) & (mesh.vertices[:, 2] < z_high)
        rows &= mesh.vertices[:, 0] < 55
        distance, closest, _ = cover.signed_distance(mesh.vertices[rows])
        # Nowhere does muscle stand outside the fascia (behind it).
        assert np.all((closest[:, 1] > mesh.vertices[rows, 1] - 0.3) | (distance > 3))


def test_twins_are_mirror_images(preview_model):
    for name in ("trapezius_transverse", "longissimus_thoracis", "rib_7"):
        left, right = part(preview_model, name, "left"), part(preview_model, name, "right")
        assert np.allclose(left.mesh.vertices * [-1, 1, 1], right.mesh.vertices)
        assert right.mesh.volume == pytest.approx(left.mesh.volume)


def test_there_are_at_least_320_parts_and_all_are_closed(preview_model):
    assert len(preview_model.parts) >= 320
    open_parts = [p.id for p in preview_model.parts.values() if not p.mesh.is_watertight]
    assert open_parts == []
