"""Shared set-up: nothing of the user's is read or written, and a model is built once."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest
from hypothesis import settings

# One set of cases on every machine, so that a run says something about the change and not
# about luck. To search further: `scripts/test -- --hypothesis-profile=search`.
settings.register_profile("repeatable", derandomize=True, deadline=None)
settings.register_profile("search", derandomize=False, deadline=None)
settings.load_profile("repeatable")

# `tests.fakes` must be importable however pytest was started (installed wheel included).
_HERE = Path(__file__).resolve().parent
if str(_HERE.parent) not in sys.path:
    sys.path.insert(0, str(_HERE.parent))

_SCRATCH = _HERE.parent / ".cache"
os.environ.setdefault("NUMBA_CACHE_DIR", str(_SCRATCH / "numba"))
os.environ.setdefault("PEELBACK_CACHE", str(_SCRATCH / "models"))


@pytest.fixture(scope="session")
def preview_model():
    """Return the default body at preview detail."""
    from meshes.body import Body
    from meshes.cache import load_or_build

    return load_or_build(Body(), "preview")


@pytest.fixture(scope="session")
def full_model():
    """Return the default body at full detail."""
    from meshes.body import Body
    from meshes.cache import load_or_build

    return load_or_build(Body(), "full")
