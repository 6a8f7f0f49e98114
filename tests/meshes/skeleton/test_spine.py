"""The column as an anatomist judges it: shapes, levels, gaps, open canals."""

from __future__ import annotations

import numpy as np
import pytest

from meshes.body import Body
from meshes.drape.distance import MeshIndex
from meshes.skeleton import spine
from meshes.skeleton.frame import LEVELS, LUMBAR, THORACIC, make_frame
from meshes.skeleton.vertebra_tables import SHAPES


@pytest.fixture(scope="module")
def frame():
    return make_frame(Body())


@pytest.fixture(scope="module")
def pieces(frame):
    return {piece.part.id: piece for piece in spine.make(frame, "full")}


@pytest.fixture(scope="module")
def landmarks(pieces):
    return {name: place for piece in pieces.values() for name, place in piece.landmarks.items()}


def test_the_column_has_every_vertebra_and_disc(pieces):
    assert sum(name.startswith("vertebra_") for name in pieces) == 24
    assert sum(name.startswith("disc_") for name in pieces) == 23
    assert {"sacrum", "coccyx"} <= set(pieces)


@pytest.mark.parametrize("detail", ["preview", "full"])
def test_every_bone_and_disc_is_closed_and_outward(frame, detail):
    for piece in spine.make(frame, detail):
        assert piece.part.mesh.is_watertight, piece.part.id
        assert piece.part.mesh.volume > 0, piece.part.id


@pytest.mark.parametrize("level", ["T5", "T6", "T7", "T8"])
def test_mid_thoracic_spines_reach_down_to_the_body_below(frame, landmarks, level):
    tip = landmarks[f"{level}.spinous_process"]
    below = frame[LEVELS[LEVELS.index(level) + 1]]
    assert tip[2] < below.centre[2] + 0.5 * below.height


def test_mid_thoracic_spines_droop_more_than_lumbar_ones(frame, landmarks):
    def droop(level):
        v = frame[level]
        return -v.to_local(landmarks[f"{level}.spinous_process"])[2]

    assert min(droop(f"T{n}") for n in (5, 6, 7, 8)) > 2 * max(droop(f"L{n}") for n in (2, 3))


def test_the_atlas_has_no_spinous_process_and_the_axis_a_dens(frame, pieces, landmarks):
    def length(level):
        back = frame[level].to_local(pieces[f"vertebra_{level}"].part.mesh.vertices)[:, 1].max()
        return back - frame[level].to_local(landmarks[f"{level}.canal_centre"])[1]

    assert length("C1") < 26.0 < length("C2") + 1.0
    ring = pieces["vertebra_C1"].part.mesh.bounds[:, 2]
    assert ring[0] < landmarks["C2.dens"][2] < ring[1] + 6.0


@pytest.mark.parametrize("level", THORACIC + LUMBAR)
def test_transverse_processes_span_their_published_width(pieces, level):
    x = pieces[f"vertebra_{level}"].part.mesh.vertices[:, 0]
    assert np.ptp(x) == pytest.approx(2 * SHAPES[level].transverse_tip[0], rel=0.09)


def test_landmarks_on_bone_lie_on_the_surface(pieces):
    free = ("body_centre", "canal_centre", "foramen", "dorsal_foramen", "foramen_transversarium")
    for piece in pieces.values():
        index = MeshIndex.of(piece.part.mesh)
        for name, place in piece.landmarks.items():
            if not any(word in name.rsplit(".", 1)[-1] for word in free):
                distance = index.query(np.atleast_2d(place))[0]
                assert np.abs(distance).max() < 0.5, name


def test_neighbours_do_not_overlap(pieces):
    chain = [f"vertebra_{level}" for level in LEVELS] + ["sacrum", "coccyx"]
    pairs = list(zip(chain, chain[1:], strict=False))
    for name in pieces:
        if name.startswith("disc_"):
            upper, lower = name.split("_")[1:]
            below = "sacrum" if lower == "S1" else f"vertebra_{lower}"
            pairs += [(name, f"vertebra_{upper}"), (name, below)]
    for a, b in pairs:
        for one, other in ((a, b), (b, a)):
            mesh = pieces[one].part.mesh
            points = np.concatenate([mesh.vertices, mesh.triangles_center])
            distance = MeshIndex.of(pieces[other].part.mesh).signed_distance(points)
            distance = distance[0] if isinstance(distance, tuple) else distance
            assert np.nanmin(distance) > -0.2, (one, other)


def test_the_vertebral_canal_is_open_from_atlas_to_sacrum(frame, pieces, landmarks):
    column = [f"S{n}" for n in (1, 2, 3)]
    for level in LEVELS + tuple(column):
        bone = "sacrum" if level in column else f"vertebra_{level}"
        distance = MeshIndex.of(pieces[bone].part.mesh).signed_distance(
            landmarks[f"{level}.canal_centre"][None]
        )
        distance = distance[0] if isinstance(distance, tuple) else distance
        assert float(np.ravel(distance)[0]) > 2.5, level


@pytest.mark.parametrize("level", THORACIC)
def test_the_root_of_a_thoracic_spine_leaves_the_canal_open(frame, pieces, level):
    # Depths of 14 to 18 mm: Panjabi MM et al., Spine 1991;16:888-901 (from memory).
    v, mesh = frame[level], pieces[f"vertebra_{level}"].part.mesh
    bone = MeshIndex.of(mesh)
    middle = np.array([0.03, 0.5 * v.depth + 0.5 * v.canal_depth, 0.0])
    along = middle + np.linspace(-6.0, 6.0, 25)[:, None] * [0.0, 1.0, 0.0]
    free = bone.signed_distance(v.to_model(along))[0] > 0
    assert free.all()


@pytest.mark.parametrize("level", LUMBAR[1:4])
def test_neighbouring_lumbar_spines_stand_apart(pieces, level):
    below = LEVELS[LEVELS.index(level) + 1]
    upper = pieces[f"vertebra_{level}"].part.mesh.vertices
    lower = MeshIndex.of(pieces[f"vertebra_{below}"].part.mesh)
    spine_part = upper[np.abs(upper[:, 0]) < 3.0]
    spine_part = spine_part[spine_part[:, 1] > np.quantile(spine_part[:, 1], 0.5)]
    assert lower.signed_distance(spine_part, 30.0)[0].min() > 3.0
