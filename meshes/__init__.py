"""Peelback's model of the back: parameters in, closed named meshes out.

Names are loaded on first use, so that asking for one of them does not pay
for the whole geometry stack.
"""

from importlib import import_module
from typing import Any

_HOME = {
    "Body": "meshes.body",
    "build": "meshes.build",
    "Attachment": "meshes.model",
    "BackModel": "meshes.model",
    "Contact": "meshes.model",
    "Part": "meshes.model",
}

__all__ = ["Attachment", "BackModel", "Body", "Contact", "Part", "build"]


def __getattr__(name: str) -> Any:
    if name in _HOME:
        return getattr(import_module(_HOME[name]), name)
    raise AttributeError(f"module 'meshes' has no attribute {name!r}")
