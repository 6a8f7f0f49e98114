import numpy as np
import pytest
import trimesh

from viewer.scene.fibre_field import _gradient, is_aligned, surface_millimetres


def belly_and_fibres(subdivisions=4):
    """A spindle along z with straight fibres, whose own v would jump between fascicles."""
    mesh = trimesh.creation.icosphere(subdivisions=subdivisions, radius=1.0)
    points = mesh.vertices * [15.0, 8.0, 60.0]
    along = np.linspace(-60, 60, 12)
    fibres = np.array([[[x, 0.0, z] for z in along] for x in np.linspace(-12, 12, 9)])
    return points, mesh.faces, fibres


@pytest.mark.parametrize("subdivisions", [4, 5])
def test_pattern_runs_along_the_fibres_of_a_belly_a_millimetre_a_millimetre(subdivisions):
    points, faces, fibres = belly_and_fibres(subdivisions)
    field = surface_millimetres(points, faces, fibres)
    gradient, area, normal = _gradient(points, faces)
    slope = (gradient @ field[:, 1]).reshape(-1, 3)
    back = (normal[:, 1] > 0.7) & (np.abs(points[faces].mean(axis=1)[:, 2]) < 40)
    along = np.abs(slope[back, 2])
    across = np.linalg.norm(slope[back][:, :2], axis=1)
    assert np.average(along, weights=area[back]) < 0.12
    assert np.average(across, weights=area[back]) == pytest.approx(1.0, abs=0.2)


def test_along_coordinate_grows_from_origin_to_insertion():
    points, faces, fibres = belly_and_fibres()
    field = surface_millimetres(points, faces, fibres)
    assert np.corrcoef(field[:, 0], points[:, 2])[0, 1] > 0.98


def test_smooth_v_of_a_sheet_is_kept_and_a_jumping_one_is_not():
    points, faces, fibres = belly_and_fibres()
    smooth = points[:, 0] / 30.0 + 0.5
    jumping = (
        np.random.default_rng(0).permutation(64)[
            (np.digitize(points[:, 2], np.linspace(-60, 60, 9)) * 7) % 64
        ]
        / 64.0
    )
    assert is_aligned(points, faces, smooth, fibres)
    assert not is_aligned(points, faces, jumping, fibres)
