import numpy as np
import pytest

from tests.fakes import toy_model
from viewer.scene import drawn_cache
from viewer.scene.batches import Batch
from viewer.scene.drawn import draw_parts
from viewer.scene.looks import batch_key


@pytest.fixture
def kept(tmp_path):
    parts = list(toy_model().parts.values())
    drawn = drawn_cache.shaded(draw_parts(parts))
    path = tmp_path / "drawn"
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


@pytest.mark.parametrize("name", drawn_cache._ARRAYS)
def test_broken_file_is_not_taken(kept, name):
    path, parts, _ = kept
    victim = path / f"{name}.npy"
    victim.write_bytes(victim.read_bytes()[: victim.stat().st_size // 2])
    assert drawn_cache.load(path, parts) is None
    assert drawn_cache.load(path.with_name("absent"), parts) is None


def test_what_the_window_changes_never_reaches_the_file(kept):
    path, parts, _ = kept
    first = drawn_cache.load(path, parts)
    first[0].still.points[:] = 0.0
    again = drawn_cache.load(path, parts)
    assert again[0].still.points.any()


def test_batches_take_kept_arrays_without_copying_until_a_part_moves(kept):
    path, parts, _ = kept
    drawn = drawn_cache.load(path, parts)
    key = batch_key(drawn[-1].part)
    members = {d.part.id: d for d in drawn if batch_key(d.part) == key}
    assert len(members) > 1
    batch = Batch(members, "still")
    assert np.shares_memory(batch.points, drawn[-1].still.points)
    lying = {name: d.still.points.copy() for name, d in members.items()}
    name = drawn[-1].part.id
    batch.move(name, lying[name] + 5.0, drawn[-1].still.normals)
    assert np.array_equal(batch.points[batch.vertex_range[name]], lying[name] + 5.0)
    for other, d in members.items():
        assert np.array_equal(d.still.points, lying[other]), "the shell at home has moved"


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
    assert not drawn_cache.save(tmp_path / "file" / "drawn", drawn)
