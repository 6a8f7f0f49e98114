"""Windows for tests: settings in a folder of their own, closed and checked afterwards."""

from __future__ import annotations

import pytest

from tests.fakes import toy_model


@pytest.fixture(autouse=True)
def own_config(tmp_path, monkeypatch):
    """Keep settings, last session and log of tests away from the user's."""
    monkeypatch.setenv("PEELBACK_CONFIG", str(tmp_path / "config"))


@pytest.fixture
def window(qtbot):
    """Return a shown window with the toy back in a real picture."""
    yield from shown_window(qtbot)


@pytest.fixture
def german_window(qtbot):
    """Return the same window as it opens for a reader of German."""
    from viewer.wording import choose

    yield from shown_window(qtbot, language="de")
    choose("en", "uk")


def shown_window(qtbot, **settings):
    """Yield a shown window with the toy back, and close it."""
    from viewer.scene.widget import SceneWidget
    from viewer.settings import Settings
    from viewer.window import MainWindow

    model = toy_model()
    made = MainWindow(model.body, "preview", Settings(cautions_seen=True, calm=True, **settings))
    qtbot.addWidget(made)
    made.resize(1280, 800)
    made.show()
    qtbot.waitExposed(made)
    made.take_scene(SceneWidget(made.stage))
    made.take_model(model)
    made.scene_widget.scene.animate = False
    qtbot.wait(50)
    yield made
    made.close()
