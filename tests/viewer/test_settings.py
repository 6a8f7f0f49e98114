"""Settings that stay, and what happens to broken ones."""

import json

import pytest

from viewer.settings import Settings, load_settings, reset_settings, save_settings


def test_settings_come_back_as_they_were_saved(tmp_path):
    path = tmp_path / "sub" / "settings.json"
    wanted = Settings(theme="dark", font_scale=1.5, window=(1, 2, 800, 600), cautions_seen=True)
    assert save_settings(wanted, path) == ""
    assert load_settings(path) == (wanted, "")


def test_without_a_file_the_defaults_hold_and_nothing_is_said(tmp_path):
    assert load_settings(tmp_path / "none.json") == (Settings(), "")


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"theme": "pink"}', '{"font_scale": "big"}', '{"font_scale": 9}']
)
def test_broken_settings_are_put_aside_and_said(tmp_path, text):
    path = tmp_path / "settings.json"
    path.write_text(text)
    settings, message = load_settings(path)
    assert settings == Settings()
    assert "defaults" in message
    assert not path.exists()
    assert (tmp_path / "settings.broken-1.json").read_text() == text


def test_a_second_broken_file_does_not_overwrite_the_first(tmp_path):
    path = tmp_path / "settings.json"
    for text in ("first", "second"):
        path.write_text(text)
        load_settings(path)
    assert (tmp_path / "settings.broken-1.json").read_text() == "first"
    assert (tmp_path / "settings.broken-2.json").read_text() == "second"


def test_a_setting_of_another_version_is_passed_over(tmp_path):
    path = tmp_path / "settings.json"
    path.write_text(json.dumps({"theme": "dark", "sparkle": True}))
    assert load_settings(path) == (Settings(theme="dark"), "")


def test_a_folder_that_cannot_be_written_gives_a_sentence(tmp_path):
    blocker = tmp_path / "file"
    blocker.write_text("")
    message = save_settings(Settings(), blocker / "settings.json")
    assert "could not be saved" in message


def test_reset_keeps_that_the_cautions_were_read():
    old = Settings(theme="dark", cautions_seen=True)
    assert reset_settings(old) == Settings(cautions_seen=True)
