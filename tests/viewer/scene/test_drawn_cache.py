import numpy as np
import pytest

from tests.fakes import toy_model
from viewer.scene import drawn_cache
from viewer.scene.drawn import draw_parts


@pytest.fixture
def kept(tmp_path):
    parts = list(toy_model().parts.values())
    drawn = drawn_cache.shaded(draw_parts(parts))
    path = tmp_path / "drawn.npz"
    assert drawn_cache.save(path, drawn)
    return path, parts, drawn


def test_what_is_kept_comes_back_the_same(kept):
    path, parts, drawn = kept
    again = {d.part.id: d for d in drawn_cache.load(path, parts[::-1])}
    assert again.keys() == {p.id for p in parts}
    for mine in drawn:
        theirs = again[mine.part.id]
        assert theirs.shaded
        for shell in ("still", "moving"):
            for name in ("points", "normals", "faces", "surface"):
                a, b = (getattr(getattr(d, shell), name) for d in (mine, theirs))
                assert np.array_equal(a, b), (mine.part.id, shell, name)


def test_file_of_another_model_is_not_taken(kept):
    path, parts, _ = kept
    assert drawn_cache.load(path, parts[1:]) is None


def test_broken_file_is_not_taken(kept):
    path, parts, _ = kept
    path.write_bytes(path.read_bytes()[:2000])
    assert drawn_cache.load(path, parts) is None
    assert drawn_cache.load(path.with_name("absent.npz"), parts) is None


def test_moved_vertex_means_another_file():
    parts = list(toy_model().parts.values())
    before = drawn_cache.drawn_path(parts)
    assert drawn_cache.drawn_path(parts[::-1]) == before
    mesh = parts[3].mesh.copy()
    mesh.vertices[0] += 0.01
    from dataclasses import replace

    parts[3] = replace(parts[3], mesh=mesh)
    assert drawn_cache.drawn_path(parts) != before


def test_folder_that_cannot_be_written_costs_only_time(kept, tmp_path):
    _, _, drawn = kept
    (tmp_path / "file").write_text("in the way")
    assert not drawn_cache.save(tmp_path / "file" / "drawn.npz", drawn)
