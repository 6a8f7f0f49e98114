"""Where a talk stands while it is given. No window, no clock of its own.

The presenter knows which scene is on, whether the picture still is that scene
or was moved for a question, and what lies over it (blank, pen, spotlight). The
window asks it what to do for a key and draws.
"""

from __future__ import annotations

from dataclasses import dataclass

from viewer.talk.scenes import Talk, TalkScene

PACES = (0.25, 4.0)
PACE_STEP = 1.25


@dataclass(frozen=True, slots=True)
class PresenterKey:
    """One key while presenting.

    Attributes
    ----------
    keys : tuple of str
        Names in Qt's portable notation.
    does : str
        Method of the presenting window.
    words : str
        For the help sheet.
    """

    keys: tuple[str, ...]
    does: str
    words: str


PRESENTER_KEYS: tuple[PresenterKey, ...] = (
    PresenterKey(
        ("Right", "PgDown", "Space"), "next", "Next scene; Space pauses and plays a review"
    ),
    PresenterKey(("Left", "PgUp"), "back", "Scene before"),
    PresenterKey(("Home",), "first", "First scene"),
    PresenterKey(("End",), "last", "Last scene"),
    PresenterKey(("Return", "Enter"), "enter", "Go to the number typed; else back to the scene"),
    PresenterKey(("R", "Backspace"), "return_to_scene", "Back to the scene after a question"),
    PresenterKey(("B", ".", "F5"), "blank", "Blank screen, and back"),
    PresenterKey(("W",), "blank_white", "White screen, and back"),
    PresenterKey(("D",), "pen", "Drawing pen on or off"),
    PresenterKey(("C", "Del"), "clear_pen", "Clear what was drawn"),
    PresenterKey(("S",), "spotlight", "Spotlight on the pointer"),
    PresenterKey(("Up",), "view_before", "Fixed view before"),
    PresenterKey(("Down",), "view_after", "Next fixed view"),
    PresenterKey(("[",), "shallower", "One stratum back"),
    PresenterKey(("]",), "deeper", "One stratum deeper"),
    PresenterKey(("T",), "see_through", "See through the part that is picked"),
    PresenterKey(("H",), "hide", "Hide the part that is picked"),
    PresenterKey(("P",), "peek", "Peek through what covers"),
    PresenterKey(("L",), "labels", "Labels, seven at most"),
    PresenterKey(("K",), "look", "Next look"),
    PresenterKey(("+", "="), "faster", "Review faster"),
    PresenterKey(("-",), "slower", "Review slower"),
    PresenterKey(("Esc",), "stop", "End: first what lies over the picture, then presenting"),
)
"""Digits type the number of a scene: it is gone to when no further digit can follow, or with
Enter. Clickers send Page Up, Page Down, B or the full stop, F5 and Escape."""

NUMBER_WORDS = "Go to the scene of that number"


def clashes() -> list[str]:
    """Return keys that are given twice."""
    seen: set[str] = set()
    twice = []
    for row in PRESENTER_KEYS:
        for key in row.keys:
            if key in seen or key.isdigit():
                twice.append(key)
            seen.add(key)
    return twice


class Presenter:
    """A talk being given.

    Attributes
    ----------
    index : int
        The scene that is on.
    blank : {"", "black", "white"}
    pen, spotlight, playing : bool
    strayed : bool
        The picture was moved or peeled since the scene came on (a question from the hall).
    pace : float
        1 is the talk's own; 2 is twice as fast.
    typed : str
        Digits typed so far.
    warnings : list of str
        What would have been a dialog, for the notes window.
    """

    def __init__(self, talk: Talk, start: int = 0, *, playing: bool = False) -> None:
        if not talk.scenes:
            raise ValueError("a talk without scenes cannot be presented")
        if not 0 <= start < len(talk.scenes):
            raise IndexError(f"scene must lie in 1–{len(talk.scenes)}, got {start + 1}")
        self.talk = talk
        self.index = start
        self.blank = ""
        self.pen = False
        self.spotlight = False
        self.playing = playing
        self.strayed = False
        self.pace = 1.0
        self.typed = ""
        self.warnings: list[str] = []

    @property
    def scene(self) -> TalkScene:
        """The scene that is on."""
        return self.talk.scenes[self.index]

    @property
    def following(self) -> TalkScene | None:
        """The next scene, or None at the end."""
        at = self.index + 1
        return self.talk.scenes[at] if at < len(self.talk.scenes) else None

    def go(self, index: int) -> bool:
        """Go to a scene, held within the talk; uncovers the picture. False: it was on already."""
        index = min(max(index, 0), len(self.talk.scenes) - 1)
        moved = index != self.index
        self.index, self.typed, self.blank = index, "", ""
        self.pen = self.strayed = False
        return moved

    def next(self) -> bool:
        """Go on; stays on the last scene."""
        return self.go(self.index + 1)

    def back(self) -> bool:
        """Go back; stays on the first scene."""
        return self.go(self.index - 1)

    def type_digit(self, digit: str) -> int | None:
        """Take a digit; returns the index to go to once the number is complete.

        A number is complete when no longer number of the talk begins with it.
        """
        if len(digit) != 1 or digit not in "0123456789":
            raise ValueError(f"one digit is wanted, got {digit!r}")
        typed = (self.typed + digit).lstrip("0")
        count = len(self.talk.scenes)
        if not typed or int(typed) > count:
            # No such scene: the last digit alone may still be meant.
            typed = digit if digit != "0" and int(digit) <= count else ""
        self.typed = typed
        if typed and int(typed) * 10 > count:
            return self.take_typed()
        return None

    def take_typed(self) -> int | None:
        """Return the index that was typed, and forget it."""
        typed, self.typed = self.typed, ""
        return int(typed) - 1 if typed else None

    def set_pace(self, factor: float) -> float:
        """Make a talk that plays by itself faster or slower; returns the pace."""
        low, high = PACES
        self.pace = min(max(self.pace * factor, low), high)
        return self.pace

    def seconds_here(self) -> float:
        """Return how long the present scene stays when the talk plays; 0 waits."""
        return self.scene.seconds / self.pace

    def seconds_left(self) -> float:
        """Return how long the rest of a playing talk takes from this scene on."""
        return sum(s.seconds for s in self.talk.scenes[self.index :]) / self.pace

    def uncover(self) -> bool:
        """Take away the topmost thing over the picture; False when there was none."""
        if self.typed:
            self.typed = ""
        elif self.blank:
            self.blank = ""
        elif self.pen:
            self.pen = False
        elif self.spotlight:
            self.spotlight = False
        else:
            return False
        return True
