"""A cached model is the built one; whatever breaks the cache, the model is built again."""

import json
import logging
import os
import sys
from dataclasses import fields
from types import SimpleNamespace

import numpy as np
import pytest

from meshes import cache
from meshes.body import Body
from tests.fakes import toy_model


@pytest.fixture(autouse=True)
def place(tmp_path, monkeypatch):
    folder = tmp_path / "models"
    monkeypatch.setenv("PEELBACK_CACHE", str(folder))
    # The toy's rows are not in the real catalogue; which catalogue is loaded is not at stake here.
    monkeypatch.setattr("meshes.catalogue.load_catalogue", lambda: toy_model().catalogue)
    return folder


@pytest.fixture
def builds(monkeypatch):
    """Count builds, each of which yields the toy."""
    calls = []

    def build(body, detail, progress=None):
        calls.append((body, detail))
        return toy_model()

    monkeypatch.setitem(sys.modules, "meshes.build", SimpleNamespace(build=build))
    return calls


def _same(a, b) -> bool:
    if isinstance(a, np.ndarray) or isinstance(b, np.ndarray):
        return a is not None and b is not None and np.array_equal(a, b)
    return a == b


def test_second_load_does_not_build(builds):
    cache.load_or_build(Body(), "preview")
    cache.load_or_build(Body(), "preview")
    assert len(builds) == 1


def test_cached_model_is_the_built_one_bit_for_bit(builds):
    built = cache.load_or_build(Body(), "preview")
    loaded = cache.load_or_build(Body(), "preview")
    assert list(loaded.parts) == list(built.parts)
    for part_id, part in built.parts.items():
        twin = loaded.parts[part_id]
        assert np.array_equal(twin.mesh.vertices, part.mesh.vertices)
        assert np.array_equal(twin.mesh.faces, part.mesh.faces)
        for field in fields(part):
            if field.name in ("mesh", "attachments"):
                continue
            assert _same(getattr(twin, field.name), getattr(part, field.name)), field.name
        assert [(a.kind, a.to) for a in twin.attachments] == [
            (a.kind, a.to) for a in part.attachments
        ]
        for a, b in zip(twin.attachments, part.attachments):
            assert np.array_equal(a.curve, b.curve)
    assert set(loaded.landmarks) == set(built.landmarks)
    for name, point in built.landmarks.items():
        assert np.array_equal(loaded.landmarks[name], point)
        assert np.shape(loaded.landmarks[name]) == np.shape(point)
    assert [(c.a, c.b, c.kind) for c in loaded.contacts] == [
        (c.a, c.b, c.kind) for c in built.contacts
    ]


def test_other_body_and_other_detail_have_folders_of_their_own():
    folders = {
        cache.model_folder(Body(), "full"),
        cache.model_folder(Body(), "preview"),
        cache.model_folder(Body(stature_mm=1800), "full"),
        cache.model_folder(Body(trapezius_to_T10=True), "full"),
    }
    assert len(folders) == 4


@pytest.mark.parametrize("victim", ["index.json", "vertices.npy", "curves.npy"])
@pytest.mark.parametrize("harm", ["truncate", "scribble", "remove"])
def test_broken_cache_is_rebuilt_with_a_log_line(builds, caplog, victim, harm):
    cache.load_or_build(Body(), "preview")
    path = cache.model_folder(Body(), "preview") / victim
    if harm == "truncate":
        path.write_bytes(path.read_bytes()[: path.stat().st_size // 2])
    elif harm == "scribble":
        path.write_bytes(b"no such thing")
    else:
        path.unlink()
    with caplog.at_level(logging.WARNING):
        model = cache.load_or_build(Body(), "preview")
    assert len(builds) == 2
    assert set(model.parts) == set(toy_model().parts)
    # Without its index a folder is simply no model: there is nothing to report.
    if (victim, harm) != ("index.json", "remove"):
        assert "broken" in caplog.text
    cache.load_or_build(Body(), "preview")
    assert len(builds) == 2


def test_unwritable_cache_still_gives_a_model(builds, tmp_path, monkeypatch, caplog):
    # A file where the folder should be stops even an administrator.
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("PEELBACK_CACHE", str(tmp_path / "file" / "models"))
    with caplog.at_level(logging.WARNING):
        model = cache.load_or_build(Body(), "preview")
    assert model.parts
    assert "could not be cached" in caplog.text


def test_nothing_half_written_is_left_behind(builds, place):
    cache.load_or_build(Body(), "preview")
    assert [p for p in place.iterdir() if p.name.startswith(".")] == []


def test_models_used_longest_ago_go_first(builds, place):
    cache.load_or_build(Body(), "preview")
    first = cache.model_folder(Body(), "preview")
    index = json.loads((first / "index.json").read_text())
    assert index["parts"]
    second = place / "preview-another"
    second.mkdir()
    for path in first.iterdir():
        (second / path.name).write_bytes(path.read_bytes())
    os.utime(first / "index.json", (1, 1))
    size = sum(f.stat().st_size for f in second.iterdir())
    assert cache.evict(limit_bytes=size + 10) == [first]
    assert second.exists()
    assert cache.clear() == 1


def test_progress_hears_of_a_loaded_model(builds):
    cache.load_or_build(Body(), "preview")
    heard = []
    cache.load_or_build(Body(), "preview", lambda *words: heard.append(words))
    assert heard[0][0] == 1.0
    assert len(heard[0][2]) == len(toy_model().parts)
