"""The sample talk: a recipe in terms of the plan, spelled out for the model at hand.

``back_lab.toml`` names steps, rows and parts; ``lab_talk`` turns them into
scenes with the part ids of a model, so that another body, a finer model or a
new branch of a nerve needs no new file. Its words are those of the language
that is shown when it is opened; from then on it is a talk like any other.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Any

from meshes.catalogue.folds import moved_by, own_parts
from viewer.state.folding import with_fold
from viewer.state.plan import Plan
from viewer.state.tongue import told, told_each
from viewer.state.view_state import ViewState
from viewer.talk.framing import camera_on
from viewer.talk.scenes import Talk, TalkScene

FILE = "back_lab.toml"


@dataclass(frozen=True, slots=True, kw_only=True)
class SceneRecipe:
    """One scene of the sample talk, in names.

    Attributes
    ----------
    title, line, notes : str
    left, right : tuple of str
        Steps of the plan done on each side, with all they need.
    view : str
        Fixed view; ``table`` names a place at the table in its stead.
    look_at, pick, through, shows : tuple of str
        Names of parts, rows or groups, with ".left" or ".right" for one side:
        framed, picked, see-through, and spoken of in the notes.
    folds : tuple of (str, float)
        Flaps laid back and how far, 0-1.
    margin : float
        Room about what is framed.
    labels, surface_marks : bool
    seconds : float
        Stay when the talk plays by itself.
    """

    title: str
    line: str = ""
    notes: str = ""
    left: tuple[str, ...] = ()
    right: tuple[str, ...] = ()
    view: str = "posterior"
    table: str = ""
    look_at: tuple[str, ...] = ()
    folds: tuple[tuple[str, float], ...] = ()
    margin: float = 1.4
    pick: tuple[str, ...] = ()
    through: tuple[str, ...] = ()
    shows: tuple[str, ...] = ()
    labels: bool = False
    surface_marks: bool = False
    seconds: float = 0.0


@lru_cache(maxsize=1)
def recipes() -> tuple[str, tuple[SceneRecipe, ...]]:
    """Return the title of the sample talk and its scenes in names."""
    record = tomllib.loads((files("viewer.talk") / FILE).read_text(encoding="utf-8"))
    scenes = tuple(
        SceneRecipe(**{name: _frozen(value) for name, value in values.items()})
        for values in record["scene"]
    )
    return record["title"], scenes


def talk_texts() -> tuple[str, ...]:
    """Return the words of the sample talk as they are looked up: notes by paragraph."""
    title, scenes = recipes()
    texts = [title]
    for scene in scenes:
        texts += [scene.title, scene.line, *scene.notes.strip().split("\n")]
    return tuple(dict.fromkeys(text for text in texts if text))


def _frozen(value: Any) -> Any:
    if isinstance(value, dict):
        return tuple(value.items())
    return tuple(value) if isinstance(value, list) else value


def ids_of(names: tuple[str, ...], plan: Plan, model: Any) -> frozenset[str]:
    """Return the part ids that names stand for; a side may follow after a dot."""
    found: set[str] = set()
    for name in names:
        stem, _, side = name.partition(".")
        found |= plan.parts_of([stem], model, side or "both")
    return frozenset(found)


def recipe_state(recipe: SceneRecipe, plan: Plan, model: Any) -> ViewState:
    """Return the state of a scene for a model."""
    removed: frozenset[str] = frozenset()
    ticked = {"left": set(), "right": set()}
    for side in ("left", "right"):
        for step_id in getattr(recipe, side):
            for step in (*plan.before(step_id), plan[step_id]):
                removed |= plan.removed_by(step, model, side)
                ticked[side].add(step.id)
    picked = [i for name in recipe.pick for i in sorted(ids_of((name,), plan, model))]
    state = ViewState(
        removed=removed,
        see_through=ids_of(recipe.through, plan, model),
        selection=tuple(dict.fromkeys(picked)),
        labels=recipe.labels,
        label_density=0.15,
        surface_marks=recipe.surface_marks,
        neighbours=True,
        view=recipe.view,
        table=recipe.table,
    )
    state = state.with_(
        ticked=state.ticked._replace(
            left=frozenset(ticked["left"]), right=frozenset(ticked["right"])
        )
    )
    for fold_id, share in recipe.folds:
        if all(i in model.parts for i in own_parts(fold_id)):
            state = with_fold(state, fold_id, share)
            state = state.with_(removed=state.removed - set(moved_by(fold_id)))
    if recipe.look_at:
        camera = camera_on(
            model,
            ids_of(recipe.look_at, plan, model),
            recipe.view,
            margin=recipe.margin,
            table=recipe.table,
        )
        state = state.with_(camera=camera)
    return state


def lab_talk(model: Any, plan: Plan) -> Talk:
    """Return the sample talk for a model and its plan, in the language that is shown."""
    title, scenes = recipes()
    return Talk(
        told(title),
        tuple(
            TalkScene(
                recipe_state(recipe, plan, model),
                told(recipe.title),
                told_each(recipe.notes.strip(), "\n"),
                told(recipe.line),
                recipe.seconds,
            )
            for recipe in scenes
        ),
    )
