"""The model comes from another process, part by part, and failures are one sentence."""

from pathlib import Path

import pytest

from meshes.body import Body
from meshes.errors import PeelbackError
from tests.fakes import toy_model
from viewer.build_process import begin, build_and_send, take
from viewer.building import ModelSource


class Sender:
    def __init__(self):
        self.sent = []

    def send(self, message):
        self.sent.append(message)

    def close(self):
        self.sent.append("closed")


def test_parts_are_sent_as_they_are_finished(monkeypatch):
    model = toy_model()
    parts = list(model.parts.values())

    def build(body, detail, progress):
        progress(0.5, "bones", parts[:10])
        progress(1.0, "the rest", parts[10:])
        return model

    monkeypatch.setattr("meshes.cache.load_or_build", build)
    sender = Sender()
    build_and_send(sender, model.body, "preview")
    kinds = [m[0] for m in sender.sent[:-1]]
    assert kinds == ["progress", "progress", "done"]
    assert sender.sent[0][1:3] == (0.5, "bones")
    assert sender.sent[2][1]["order"] == tuple(model.parts)


def test_a_failure_is_sent_as_one_line(monkeypatch):
    def build(body, detail, progress):
        raise PeelbackError("too little memory\nand more")

    monkeypatch.setattr("meshes.cache.load_or_build", build)
    sender = Sender()
    build_and_send(sender, toy_model().body, "preview")
    assert sender.sent[0][:2] == ("failed", "too little memory")


def test_a_cached_model_comes_without_another_process(qtbot, monkeypatch):
    model = toy_model()
    monkeypatch.setattr("meshes.cache.load_cached", lambda body, detail: model)
    source = ModelSource(model.body, "preview")
    with qtbot.waitSignal(source.finished, timeout=10000) as blocker:
        source.start()
    assert blocker.args == [model]
    source.stop()


def test_whatever_goes_wrong_is_told(qtbot, monkeypatch):
    def broken(body, detail):
        raise MemoryError("no room")

    monkeypatch.setattr("meshes.cache.load_cached", broken)
    source = ModelSource(toy_model().body, "preview")
    with qtbot.waitSignal(source.failed, timeout=10000) as blocker:
        source.start()
    assert blocker.args == ["no room"]
    source.stop()


def test_a_build_begun_early_is_handed_over_once_and_others_are_ended(monkeypatch):
    made = []

    class Process:
        def __init__(self, body, detail):
            self.body, self.detail, self.stopped = body, detail, False
            made.append(self)

        def stop(self):
            self.stopped = True

    monkeypatch.setattr("viewer.build_process.BuildProcess", Process)
    monkeypatch.setattr("meshes.cache.model_folder", lambda body, detail: Path("nowhere"))
    small, large = Body(stature_mm=1600.0), Body(stature_mm=1800.0)
    begin(small, "preview")
    begin(large, "preview")
    assert take(large, "preview") is made[1] and not made[1].stopped
    assert made[0].stopped
    assert take(large, "preview") is made[2]


def test_nothing_is_begun_early_where_the_model_lies_in_the_cache(monkeypatch, tmp_path):
    monkeypatch.setattr("viewer.build_process.BuildProcess", pytest.fail)
    monkeypatch.setattr("meshes.cache.model_folder", lambda body, detail: tmp_path)
    (tmp_path / "index.json").write_text("{}")
    begin(Body(), "preview")


@pytest.mark.slow
def test_a_real_body_is_built_in_another_process(qtbot, tmp_path, monkeypatch):
    monkeypatch.setenv("PEELBACK_CACHE", str(tmp_path))
    source = ModelSource(Body(), "preview")
    with qtbot.waitSignal(source.finished, timeout=300_000) as blocker:
        source.start()
    assert len(blocker.args[0].parts) > 300
    source.stop()
