"""The model comes from another process, part by part, and failures are one sentence."""

import pytest

from meshes.errors import PeelbackError
from tests.fakes import toy_model
from viewer.building import ModelSource, build_and_send


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


@pytest.mark.slow
def test_a_real_body_is_built_in_another_process(qtbot, tmp_path, monkeypatch):
    from meshes.body import Body

    monkeypatch.setenv("PEELBACK_CACHE", str(tmp_path))
    source = ModelSource(Body(), "preview")
    with qtbot.waitSignal(source.finished, timeout=300_000) as blocker:
        source.start()
    assert len(blocker.args[0].parts) > 300
    source.stop()
