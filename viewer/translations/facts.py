"""The texts of catalogue, plan, folds and mistakes that a reader gets to see."""

from __future__ import annotations

from collections.abc import Iterator

ENTRY_FIELDS = ("english", "part_english", "nerve", "artery", "course", "note")
"""Fields of a row that are shown as they are written; ``actions`` and ``doubts`` are lists."""
STEP_FIELDS = ("title", "do", "cut_end", "fold", "caution", "differs")
MISTAKE_FIELDS = ("title", "looks", "tell", "cause", "avoid", "save")


def name_texts() -> tuple[str, ...]:
    """Return the English names of rows, of the parts of families and of groups."""
    from meshes.catalogue import load_catalogue
    from meshes.catalogue.plan import steps
    from viewer.state.step_words import called

    catalogue = load_catalogue()
    found = [t for row in catalogue.values() for t in (row.english, row.part_english)]
    found += [group.english for group in catalogue.groups.values()]
    # Names of the plan for several rows together go by their own words.
    found += [
        called(name, catalogue)
        for step in steps()
        for name in (*step.keep, *step.reveals)
        if name not in catalogue and name not in catalogue.groups and "." not in name
    ]
    return _once(found)


def fact_texts() -> tuple[str, ...]:
    """Return what the catalogue says of its rows, names left out."""
    return _once(_facts())


def _facts() -> Iterator[str]:
    from meshes.catalogue import load_catalogue

    catalogue = load_catalogue()
    for row in catalogue.values():
        yield from (getattr(row, name) for name in ENTRY_FIELDS[2:])
        yield from (rule.words for rule in row.attachments)
        yield from row.actions
        yield from row.doubts
        yield getattr(row, "tendon", "")
        yield from getattr(row, "border_words", ())
    yield from (group.note for group in catalogue.groups.values())
    yield from (mark.english for mark in catalogue.landmarks.values() if mark.palpable)


def plan_texts() -> tuple[str, ...]:
    """Return what plan, folds and mistakes say."""
    return _once(_plan())


def _plan() -> Iterator[str]:
    from meshes.catalogue.folds import load_folds
    from meshes.catalogue.mistakes import load_mistakes
    from meshes.catalogue.plan import cautions, steps

    for caution in cautions():
        yield from (caution.title, caution.text)
    for step in steps():
        yield from (getattr(step, name) for name in STEP_FIELDS)
        yield from (cut.words for cut in step.cuts)
        yield step.hinge.words if step.hinge else ""
        yield from step.stop
        for other in step.alternatives:
            yield from (other.title, other.words, other.hinge, other.fold)
    for rule in load_folds():
        yield rule.title
        yield from (flap.title for flap in getattr(rule, "flaps", ()))
    for mistake in load_mistakes():
        yield from (getattr(mistake, name) for name in MISTAKE_FIELDS)


def _once(texts) -> tuple[str, ...]:
    return tuple(dict.fromkeys(text for text in texts if text))
