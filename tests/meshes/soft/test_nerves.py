"""Nerves, vessels, canal and ligaments lie where the published figures put them."""

from __future__ import annotations

import numpy as np
import pytest

from meshes.body import Body
from meshes.build import _start_bench
from meshes.soft import canal, ligaments, nerves
from meshes.soft.tubes import smooth_course, tube, unite


@pytest.fixture(scope="module")
def bench():
    """Bones, ligaments, canal and the tubes on the bones, in preview."""
    made = _start_bench(Body(), "preview")
    ligaments.lay(made)
    canal.lay(made)
    nerves.lay_deep(made)
    return made


def _z(bench, landmark: str) -> float:
    return float(bench.landmark(landmark)[2])


def test_conus_ends_in_the_lower_third_of_the_first_lumbar_body(bench):
    tip = bench.parts["conus_medullaris"].mesh.vertices[:, 2].min()
    half = 0.5 * bench.frame["L1"].height
    middle = bench.frame["L1"].centre[2]
    assert middle - half - 8.0 < tip < middle + half


def test_sac_ends_at_the_second_sacral_vertebra(bench):
    low = bench.parts["spinal_dura_mater"].mesh.vertices[:, 2].min()
    assert _z(bench, "S3.canal_centre") < low < _z(bench, "S1.canal_centre")


def test_cord_is_wider_in_the_neck_than_in_mid_chest(bench):
    v = bench.parts["spinal_cord"].mesh.vertices

    def width(level):
        near = v[np.abs(v[:, 2] - _z(bench, f"{level}.canal_centre")) < 14.0]
        return np.ptp(near[:, 0])

    assert width("C5") > width("T7") + 2.0


def test_ganglia_lie_in_their_foramina(bench):
    for nerve in ("C5", "C8", "T6", "L3"):
        middle = bench.parts[f"spinal_ganglion_{nerve}.left"].mesh.vertices.mean(0)
        foramen = bench.landmark(f"{canal.foramen_of(nerve)}.left.foramen")
        assert np.linalg.norm(middle - foramen) < 5.0


def test_roots_run_steeper_the_lower_they_lie(bench):
    def fall(nerve):
        v = bench.parts[f"spinal_root_{nerve}.left"].mesh.vertices
        return np.ptp(v[:, 2])

    assert fall("C4") < fall("T6") < fall("T12")


def test_intercostal_nerve_lies_below_its_artery(bench):
    for number in (5, 7, 9):
        nerve = bench.parts[f"intercostal_nerve_T{number}.left"].fibres[0][-1]
        artery = bench.parts[f"posterior_intercostal_artery_{number}.left"].fibres[0]
        beside = artery[np.argmin(np.linalg.norm(artery[:, :2] - nerve[:2], axis=1))]
        assert nerve[2] < beside[2]


def test_vertebral_artery_passes_the_foramen_of_the_sixth_vertebra_and_the_atlas(bench):
    line = bench.parts["vertebral_artery.left"].fibres[0]
    for level in ("C6", "C1"):
        hole = bench.landmark(f"{level}.left.foramen_transversarium")
        assert np.linalg.norm(line - hole, axis=1).min() < 9.0


def test_free_edge_of_the_nuchal_ligament_sags_in_front_of_the_chord(bench):
    tip = bench.landmark("C7.spinous_process") * [0, 1, 1]
    top = bench.landmark("occipital.external_protuberance") * [0, 1, 1]
    chord = (top - tip) / np.linalg.norm(top - tip)
    forward = np.array([0.0, -chord[2], chord[1]])
    v = bench.parts["nuchal_ligament"].mesh.vertices
    along = (v - tip) @ chord / np.linalg.norm(top - tip)
    near = v[np.abs(along - 0.5) < 0.08]
    sag = ((near - tip) @ forward).min()
    assert 4.0 < sag < 9.0
    assert 1.6 <= np.ptp(near[:, 0]) <= 2.0


def test_ligaments_and_tubes_are_closed_and_outward(bench):
    kinds = ("ligament", "nerve", "artery", "vein", "canal")
    for part in bench.parts.values():
        if part.kind in kinds:
            assert part.mesh.is_watertight, part.id
            assert part.mesh.volume > 0, part.id


def test_smooth_course_passes_its_waypoints():
    points = np.array([[0, 0, 0], [10, 2, 0], [20, -3, 5.0]])
    line = smooth_course(points, 0.5)
    for point in points:
        assert np.linalg.norm(line - point, axis=1).min() < 0.5


def test_united_tubes_are_one_closed_mesh():
    one = tube(np.array([[0, 0, 0], [5, 0, 0], [10, 0, 0.0]]), 1.0, 8)
    two = tube(np.array([[5, 0, 0], [5, 5, 0], [5, 10, 0.0]]), 0.8, 8)
    vertices, faces = unite([one[:2], two[:2]])
    edges = np.sort(faces[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2), axis=1)
    counts = np.unique(edges, axis=0, return_counts=True)[1]
    assert len(vertices) and (counts == 2).all()
