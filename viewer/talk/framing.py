"""A camera that frames some parts, as plain numbers."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import numpy as np

from viewer.scene.camera import Pose, framed, view_pose
from viewer.scene.table_pose import HEIGHT_DEG, STANDS, table_pose
from viewer.state.view_state import Camera

HALL_ASPECT = 1.5
"""Width over height of the room that a scene is framed for: what 4:3 and 16:9 both have."""


def corners_of(model: Any, ids: Iterable[str]) -> np.ndarray:
    """Return the corners of the boxes of parts, (8 n, 3) mm."""
    boxes = [np.asarray(model.parts[i].mesh.bounds) for i in ids if i in model.parts]
    if not boxes:
        return np.zeros((0, 3))
    return np.concatenate(
        [
            [[b[i][0], b[j][1], b[k][2]] for i in (0, 1) for j in (0, 1) for k in (0, 1)]
            for b in boxes
        ]
    )


def camera_on(
    model: Any,
    ids: Iterable[str],
    view: str = "posterior",
    *,
    margin: float = 1.5,
    table: str = "",
    aspect: float = HALL_ASPECT,
) -> Camera | None:
    """Return the camera that looks at parts from a fixed view or from the table.

    Parameters
    ----------
    margin : float
        Room about the parts, 1 for none.
    table : str
        A place at the table in place of the view, see ``TABLE_PLACES``.

    Returns
    -------
    Camera or None
        None when the model has none of the parts.
    """
    points = corners_of(model, ids)
    if not len(points):
        return None
    pose = table_pose(STANDS[table], HEIGHT_DEG, Pose()) if table else view_pose(view, Pose())
    made = framed(pose, points, aspect, margin).to_dict()
    return Camera(
        tuple(made["position"]),
        tuple(made["focal_point"]),
        tuple(made["view_up"]),
        made["parallel_scale"],
    )
