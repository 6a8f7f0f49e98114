"""A talk as a value: scenes in their order, each with the whole state of the view.

Scenes hold a complete ``ViewState``, so whatever the state learns to say
(folds, sections) a scene can show without a word here. To read the scenes of a
talk elsewhere (a browser share, a sheet)::

    from viewer.talk.talk_file import open_talk
    for scene in open_talk(path).scenes:
        scene.title, scene.line, scene.notes, scene.seconds, scene.state

``viewer.state.visibility.opacities(model, scene.state)`` then tells which
parts are seen, and ``scene.state.camera`` (None: the fixed view
``scene.state.view``) from where. The sample talk is ``back_lab.lab_talk(model)``.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from viewer.state.tongue import told
from viewer.state.view_state import ViewState

UNTITLED = "Untitled talk"
TITLE_LIMIT = 200
LINE_LIMIT = 240
NOTES_LIMIT = 20_000
SCENES_LIMIT = 500
SECONDS_LIMIT = 3600.0
HISTORY_LIMIT = 200


@dataclass(frozen=True, slots=True)
class TalkScene:
    """One stop of a talk.

    Attributes
    ----------
    state : ViewState
        What is seen and from where.
    title : str
        Shown large; never empty.
    notes : str
        For the speaker only.
    line : str
        One short line for the hall, "" for none.
    seconds : float
        How long it stays when the talk plays by itself; 0 waits for a key.
    """

    state: ViewState
    title: str
    notes: str = ""
    line: str = ""
    seconds: float = 0.0

    def __post_init__(self) -> None:
        if not self.title.strip():
            raise ValueError(told("a scene needs a title"))
        for name, limit in (
            ("title", TITLE_LIMIT),
            ("line", LINE_LIMIT),
            ("notes", NOTES_LIMIT),
        ):
            text = getattr(self, name)
            if len(text) > limit:
                raise ValueError(
                    told(
                        "{name} may hold up to {most} letters, got {count}",
                        name=name,
                        most=limit,
                        count=len(text),
                    )
                )
        for name in ("title", "line"):
            if "\n" in getattr(self, name):
                raise ValueError(told("{name} must be one line", name=name))
        if not 0.0 <= self.seconds <= SECONDS_LIMIT:
            raise ValueError(
                told(
                    "{name} must lie in {range}, got {given}",
                    name="seconds",
                    range=f"0–{SECONDS_LIMIT:g}",
                    given=f"{self.seconds:g}",
                )
            )


@dataclass(frozen=True, slots=True)
class Talk:
    """Scenes in their order.

    Attributes
    ----------
    title : str
    scenes : tuple of TalkScene
    """

    title: str = UNTITLED
    scenes: tuple[TalkScene, ...] = ()

    def __post_init__(self) -> None:
        if len(self.scenes) > SCENES_LIMIT:
            raise ValueError(told("a talk may hold up to {most} scenes", most=SCENES_LIMIT))
        if not self.title.strip() or "\n" in self.title or len(self.title) > TITLE_LIMIT:
            raise ValueError(
                told("a talk needs a title of one line, up to {most} letters", most=TITLE_LIMIT)
            )

    def _place(self, index: int) -> int:
        if not 0 <= index < len(self.scenes):
            raise IndexError(f"scene must lie in 1–{len(self.scenes)}, got {index + 1}")
        return index

    def with_scene(self, scene: TalkScene, at: int | None = None) -> Talk:
        """Return the talk with a scene put in before place ``at`` (None: at the end)."""
        at = len(self.scenes) if at is None else at
        if not 0 <= at <= len(self.scenes):
            raise IndexError(f"place must lie in 0–{len(self.scenes)}, got {at}")
        return replace(self, scenes=(*self.scenes[:at], scene, *self.scenes[at:]))

    def changed(self, index: int, **changes: object) -> Talk:
        """Return the talk with some fields of one scene changed."""
        scene = replace(self.scenes[self._place(index)], **changes)
        return replace(self, scenes=(*self.scenes[:index], scene, *self.scenes[index + 1 :]))

    def duplicated(self, index: int) -> Talk:
        """Return the talk with a scene standing twice, one after the other."""
        return self.with_scene(self.scenes[self._place(index)], index + 1)

    def without(self, index: int) -> Talk:
        """Return the talk without one scene."""
        self._place(index)
        return replace(self, scenes=self.scenes[:index] + self.scenes[index + 1 :])

    def moved(self, index: int, to: int) -> Talk:
        """Return the talk with a scene at another place; ``to`` is held within the talk."""
        scene = self.scenes[self._place(index)]
        rest = self.scenes[:index] + self.scenes[index + 1 :]
        to = min(max(to, 0), len(rest))
        return replace(self, scenes=(*rest[:to], scene, *rest[to:]))


@dataclass(frozen=True, slots=True)
class _Entry:
    name: str
    talk: Talk
    merges_with: str = ""


class TalkDesk:
    """A talk being made: the present talk, its history, the scene that is chosen.

    Attributes
    ----------
    chosen : int
        Index of the chosen scene, -1 in an empty talk.
    """

    def __init__(self, talk: Talk | None = None) -> None:
        self._talk = talk or Talk()
        self._kept = self._talk
        self._done: list[_Entry] = []
        self._undone: list[_Entry] = []
        self.chosen = 0 if self._talk.scenes else -1

    @property
    def talk(self) -> Talk:
        """The present talk."""
        return self._talk

    @property
    def unsaved(self) -> bool:
        """True when the talk differs from what was opened or saved last."""
        return self._talk != self._kept

    def mark_saved(self) -> None:
        """Remember that the present talk is in its file."""
        self._kept = self._talk

    @property
    def undo_name(self) -> str | None:
        """What the next undo takes back, or None."""
        return self._done[-1].name if self._done else None

    @property
    def redo_name(self) -> str | None:
        """What the next redo does again, or None."""
        return self._undone[-1].name if self._undone else None

    def do(self, talk: Talk, name: str, merges_with: str = "") -> bool:
        """Take a changed talk; returns False when nothing changed.

        Changes in a row with the same ``merges_with`` make one entry, as do
        letters typed into one field.
        """
        if talk == self._talk:
            return False
        last = self._done[-1] if self._done else None
        if not (merges_with and last and last.merges_with == merges_with and not self._undone):
            self._done.append(_Entry(name, self._talk, merges_with))
            del self._done[:-HISTORY_LIMIT]
        self._undone.clear()
        self._set(talk)
        return True

    def _set(self, talk: Talk) -> None:
        self._talk = talk
        self.chosen = min(max(self.chosen, 0), len(talk.scenes) - 1)

    def undo(self) -> str | None:
        """Take the last change back; returns its name."""
        if not self._done:
            return None
        entry = self._done.pop()
        self._undone.append(_Entry(entry.name, self._talk))
        self._set(entry.talk)
        return entry.name

    def redo(self) -> str | None:
        """Do again what was taken back last; returns its name."""
        if not self._undone:
            return None
        entry = self._undone.pop()
        self._done.append(_Entry(entry.name, self._talk))
        self._set(entry.talk)
        return entry.name

    def keep(self, state: ViewState, title: str, line: str = "") -> int:
        """Put a scene after the chosen one and choose it; returns its index."""
        at = self.chosen + 1
        self.do(
            self._talk.with_scene(TalkScene(state, title, line=line), at),
            told("keep “{title}”", title=title),
        )
        self.chosen = at
        return at

    def update(self, state: ViewState) -> bool:
        """Give the chosen scene another view."""
        title = self._talk.scenes[self.chosen].title
        return self.do(
            self._talk.changed(self.chosen, state=state),
            told("new view for “{title}”", title=title),
        )

    def write(self, field: str, text: str) -> bool:
        """Change title, notes or line of the chosen scene; typing makes one entry."""
        return self.do(
            self._talk.changed(self.chosen, **{field: text}),
            told(
                {
                    "title": "change title of scene {n}",
                    "line": "change line of scene {n}",
                    "notes": "change notes of scene {n}",
                }[field],
                n=self.chosen + 1,
            ),
            merges_with=f"{field} {self.chosen}",
        )

    def duplicate(self) -> bool:
        """Double the chosen scene and choose the copy."""
        title = self._talk.scenes[self.chosen].title
        done = self.do(self._talk.duplicated(self.chosen), told("duplicate “{title}”", title=title))
        self.chosen += 1
        return done

    def delete(self) -> bool:
        """Take the chosen scene out."""
        title = self._talk.scenes[self.chosen].title
        return self.do(self._talk.without(self.chosen), told("delete “{title}”", title=title))

    def move(self, index: int, to: int) -> bool:
        """Put a scene at another place and choose it."""
        talk = self._talk.moved(index, to)
        title = self._talk.scenes[index].title
        done = self.do(talk, told("move “{title}”", title=title))
        self.chosen = min(max(to, 0), len(talk.scenes) - 1)
        return done
