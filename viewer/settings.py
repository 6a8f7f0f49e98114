"""What stays from one session to the next: settings, where they live, and the log file.

Settings are a small JSON file in the platform's configuration folder. A file
that cannot be read is put aside under another name, never deleted.
"""

from __future__ import annotations

import json
import logging
import os
from collections.abc import Callable
from dataclasses import asdict, dataclass, fields, replace
from logging.handlers import RotatingFileHandler
from pathlib import Path
from typing import Any

import platformdirs

from viewer.state.languages import spoken_in
from viewer.state.spelling import SPELLINGS
from viewer.state.tongue import told
from viewer.state.view_state import LOOKS
from viewer.state.working_file import put_aside, write_atomically

FONT_SCALES = (1.0, 2.0)
LOG = logging.getLogger("peelback")


@dataclass(frozen=True, slots=True)
class Settings:
    """Choices that belong to the person, not to a dissection.

    Attributes
    ----------
    theme : {"light", "dark"}
    font_scale : float
        1.0-2.0.
    look : str
        Look of a new session.
    label_density : float
        0-1, of a new session.
    latin_first : bool
        Latin name large, English small.
    spelling : {"uk", "us"}
    language : {"system", "en", "de"}
    reopen : bool
        Begin where the last session left.
    steps_fold : bool
        Steps fold flaps back where the plan says so; off, they take them away.
    share_in_view : float
        Share (0.05–1) of a part that counts as brought into view.
    calm : bool
        No movement: the camera jumps instead of flying.
    cautions_seen : bool
    detail : {"preview", "full"}
    picture_width, picture_height : int
        Size of saved pictures, pixels.
    side_panel : bool
    hall_distance_m, hall_height_m, hall_light : float
        Last row and height of the picture, m, and the room's light as a share of the
        projector's white.
    review_seconds : float
        Length of a rapid review.
    learner : str
        Who studied last, "" for nobody yet.
    window : tuple of int
        x, y, width, height; empty before the first session.
    """

    theme: str = "light"
    font_scale: float = 1.0
    look: str = "by_kind"
    label_density: float = 0.4
    latin_first: bool = False
    spelling: str = "uk"
    language: str = "system"
    reopen: bool = True
    calm: bool = False
    steps_fold: bool = True
    share_in_view: float = 0.8
    cautions_seen: bool = False
    detail: str = "full"
    picture_width: int = 1920
    picture_height: int = 1080
    side_panel: bool = True
    hall_distance_m: float = 12.0
    hall_height_m: float = 2.0
    hall_light: float = 0.01
    review_seconds: float = 60.0
    learner: str = ""
    window: tuple[int, ...] = ()

    def __post_init__(self) -> None:
        _one_of("theme", self.theme, ("light", "dark"))
        _one_of("look", self.look, tuple(LOOKS))
        _one_of("spelling", self.spelling, tuple(SPELLINGS))
        _one_of("language", self.language, ("system", "en", "de"))
        _one_of("detail", self.detail, ("preview", "full"))
        low, high = FONT_SCALES
        if not low <= self.font_scale <= high:
            raise ValueError(_not_in("font_scale", low, high, self.font_scale))
        for name, low, high in (
            ("label_density", 0, 1),
            ("picture_width", 64, 16384),
            ("picture_height", 64, 16384),
            ("hall_distance_m", 1, 100),
            ("hall_height_m", 0.2, 20),
            ("hall_light", 0, 1),
            ("review_seconds", 15, 600),
            ("share_in_view", 0.05, 1),
        ):
            if not low <= getattr(self, name) <= high:
                raise ValueError(_not_in(name, low, high, getattr(self, name)))
        if len(self.window) not in (0, 4):
            raise ValueError(told("window must hold x, y, width, height"))


def _not_in(name: str, low: float, high: float, given: float) -> str:
    return told(
        "{name} must lie in {range}, got {given}",
        name=name,
        range=f"{low:g}–{high:g}",
        given=f"{given:g}",
    )


def _one_of(name: str, value: Any, allowed: tuple[str, ...]) -> None:
    if value not in allowed:
        raise ValueError(
            told(
                "{name} must be one of {allowed}, got {given}",
                name=name,
                allowed=", ".join(allowed),
                given=repr(value),
            )
        )


def config_folder() -> Path:
    """Return where settings are kept; PEELBACK_CONFIG names another place."""
    given = os.environ.get("PEELBACK_CONFIG")
    return Path(given) if given else Path(platformdirs.user_config_dir("peelback", False))


def state_folder() -> Path:
    """Return where the last session and the log are kept."""
    given = os.environ.get("PEELBACK_CONFIG")
    return Path(given) if given else Path(platformdirs.user_state_dir("peelback", False))


def settings_path() -> Path:
    """Return the settings file."""
    return config_folder() / "settings.json"


def log_path() -> Path:
    """Return the log file."""
    return state_folder() / "peelback.log"


def last_session_path() -> Path:
    """Return the file from which the next session begins."""
    return state_folder() / "last.peelback"


def _from_json(values: Any) -> Settings:
    if not isinstance(values, dict):
        raise ValueError(told("settings must be an object"))
    default = Settings()
    made: dict[str, Any] = {}
    # Names from other versions are passed over: losing one choice is better than losing all.
    for field in fields(Settings):
        if field.name not in values:
            continue
        value = values[field.name]
        wanted = getattr(default, field.name)
        if isinstance(wanted, bool):
            good = isinstance(value, bool)
        elif isinstance(wanted, float):
            good = isinstance(value, (int, float)) and not isinstance(value, bool)
            value = float(value) if good else value
        elif isinstance(wanted, tuple):
            good = isinstance(value, list) and all(type(v) is int for v in value)
            value = tuple(value) if good else value
        else:
            good = type(value) is type(wanted)
        if not good:
            raise ValueError(told("{name} cannot be {given}", name=field.name, given=repr(value)))
        made[field.name] = value
    return replace(default, **made)


def load_settings(
    path: Path | None = None, language: Callable[[], str] = lambda: "en"
) -> tuple[Settings, str]:
    """Read the settings.

    Parameters
    ----------
    path : Path, optional
    language : callable
        Returns the language of the message. Settings that cannot be read name none, and it is
        asked only for those.

    Returns
    -------
    settings : Settings
        The defaults where there is no file or none that can be read.
    message : str
        What the user must be told, "" when all is well.
    """
    path = path or settings_path()
    try:
        text = path.read_text(encoding="utf-8")
    except FileNotFoundError:
        return Settings(), ""
    except OSError as error:
        with spoken_in(language()):
            return Settings(), _put_aside(path, str(error.strerror))
    except UnicodeDecodeError:
        with spoken_in(language()):
            return Settings(), _put_aside(path, told("it is no text"))
    try:
        return _from_json(json.loads(text)), ""
    except (ValueError, RecursionError):
        with spoken_in(language()):
            return Settings(), _put_aside(path, _why_not(text))


def _why_not(text: str) -> str:
    """Return what is wrong with the text of a settings file, in the language that is spoken."""
    try:
        _from_json(json.loads(text))
    except json.JSONDecodeError as error:
        return told("broken at line {line}", line=error.lineno)
    except RecursionError:
        return told("nested too deeply")
    except ValueError as error:
        return str(error)
    return ""


def _put_aside(path: Path, why: str) -> str:
    aside = put_aside(path)
    if aside is None:
        return told(
            "The settings in {path} could not be read ({why}). The defaults are used.",
            path=path,
            why=why,
        )
    return told(
        "The settings could not be read ({why}). They were kept as {path}; the defaults are used.",
        path=aside,
        why=why,
    )


def save_settings(settings: Settings, path: Path | None = None) -> str:
    """Write the settings; returns what the user must be told, "" when all is well."""
    path = path or settings_path()
    try:
        write_atomically(path, json.dumps(asdict(settings), indent=1, sort_keys=True) + "\n")
    except OSError as error:
        return told(
            "The settings could not be saved to {path}: {why}.", path=path, why=error.strerror
        )
    return ""


def reset_settings(settings: Settings) -> Settings:
    """Return the defaults; that the cautions were read is not forgotten."""
    return replace(Settings(), cautions_seen=settings.cautions_seen)


def start_log() -> Path | None:
    """Send the program's messages to the log file; returns its path, None without one."""
    path = log_path()
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handler = RotatingFileHandler(path, maxBytes=500_000, backupCount=2, encoding="utf-8")
    except OSError:
        return None
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(message)s"))
    for old in list(LOG.handlers):
        LOG.removeHandler(old)
        old.close()
    LOG.addHandler(handler)
    LOG.setLevel(logging.INFO)
    return path
