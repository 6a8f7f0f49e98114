"""Bones without soft parts: bodies of the size or sex that a published series describes."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from meshes.body import Body
from meshes.catalogue import load_catalogue
from meshes.model import BackModel, mirror_part, mirror_points, other_side, side_of
from meshes.skeleton import pelvis, shoulder, skull, spine, thorax
from meshes.skeleton.frame import make_frame


@lru_cache(maxsize=4)
def bones_of(body: Body, detail: str = "full", column_only: bool = False) -> BackModel:
    """Build the bones of a body, or its column alone; a few seconds.

    Parameters
    ----------
    body : Body
    detail : {"preview", "full"}
    column_only : bool
        Vertebrae, discs, sacrum and coccyx.

    Returns
    -------
    BackModel
        Of bones, discs and cartilages of both sides, with their landmarks and no contacts.
    """
    frame = make_frame(body)
    makers = (spine,) if column_only else (spine, thorax, shoulder, pelvis, skull)
    parts, landmarks = {}, {}
    for maker in makers:
        for piece in maker.make(frame, detail):
            parts[piece.part.id] = piece.part
            if side_of(piece.part.id) == "left":
                twin = mirror_part(piece.part)
                parts[twin.id] = twin
            for name, place in piece.landmarks.items():
                landmarks[name] = np.asarray(place, dtype=float)
                if side_of(name) == "left":
                    landmarks[other_side(name)] = mirror_points(landmarks[name])
    return BackModel(body, detail, parts, landmarks, (), load_catalogue(), {})
