"""Which parts can be seen from outside at all, so that a turning picture may leave out the rest.

A part that lies wholly under solid skin or muscle is drawn for nothing. Parallel rays from
directions all round the body find what is seen first; what none of them meets is hidden from
everywhere. Worked out in small steps between two events of the window, on the coarse shells,
and used only while the picture moves: the resting picture draws everything.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

SPACING_MM = 3.0
RAYS_A_STEP = 6_000
"""About five milliseconds of rays: the window stays quick to answer between two steps."""


def directions() -> np.ndarray:
    """Return the 26 unit directions to the corners, edges and faces of a cube, (26, 3)."""
    grid = np.stack(np.meshgrid(*[[-1.0, 0.0, 1.0]] * 3, indexing="ij"), axis=-1).reshape(-1, 3)
    grid = grid[np.any(grid != 0, axis=1)]
    return grid / np.linalg.norm(grid, axis=1, keepdims=True)


class SeenSearch:
    """A search for the parts that are seen from outside, done step by step.

    Parameters
    ----------
    solids : mapping of str to (points (n, 3), faces (m, 3))
        What blocks the view, mm.
    spacing : float
        Distance between two rays, mm.
    """

    def __init__(self, solids: Mapping[str, tuple[np.ndarray, np.ndarray]], spacing=SPACING_MM):
        self.names = list(solids)
        self.seen: set[str] = set()
        self._rays: list[tuple[np.ndarray, np.ndarray]] = []
        self._scene = None
        if not self.names:
            return
        triangles = [np.asarray(points, np.float32)[faces] for points, faces in solids.values()]
        self._owner = np.repeat(np.arange(len(triangles)), [len(t) for t in triangles])
        self._triangles = np.ascontiguousarray(np.concatenate(triangles), np.float32)
        corners = self._triangles.reshape(-1, 3)
        self._middle = (corners.min(axis=0) + corners.max(axis=0)) / 2
        self._half = (corners.max(axis=0) - corners.min(axis=0)) / 2
        self._spacing = spacing
        self._left = list(directions())

    @property
    def done(self) -> bool:
        """True when every direction has been looked from."""
        return not self.names or (not self._left and not self._rays)

    def step(self) -> bool:
        """Do some more; return True when done."""
        if self.done:
            return True
        if self._scene is None:
            from embreex import rtcore_scene
            from embreex.mesh_construction import TriangleMesh

            self._scene = rtcore_scene.EmbreeScene()
            TriangleMesh(self._scene, self._triangles)
            return False
        if not self._rays:
            self._aim(self._left.pop())
        origins, rays = self._rays.pop()
        met = self._scene.run(origins, rays, query="INTERSECT")
        met = met[met >= 0]
        self.seen.update(self.names[i] for i in np.unique(self._owner[met]))
        return self.done

    def _aim(self, outward: np.ndarray) -> None:
        """Lay a grid of rays over the body as seen from one direction."""
        helper = np.eye(3)[int(np.argmin(np.abs(outward)))]
        right = np.cross(helper, outward)
        right /= np.linalg.norm(right)
        up = np.cross(outward, right)
        wide, high = (float(np.abs(axis) @ self._half) for axis in (right, up))
        far = float(np.linalg.norm(self._half)) + 10.0
        across = np.arange(-wide, wide + self._spacing, self._spacing)
        along = np.arange(-high, high + self._spacing, self._spacing)
        # Every second row is shifted by half a step: thin upright things slip through less.
        shift = np.where(np.arange(len(along)) % 2, self._spacing / 2, 0.0)
        x = (across[None] + shift[:, None]).ravel()
        y = np.repeat(along, len(across))
        origins = self._middle + far * outward + x[:, None] * right + y[:, None] * up
        origins = np.ascontiguousarray(origins, np.float32)
        inward = np.ascontiguousarray(
            np.broadcast_to(-outward.astype(np.float32), origins.shape), np.float32
        )
        self._rays = [
            (origins[k : k + RAYS_A_STEP], inward[k : k + RAYS_A_STEP])
            for k in range(0, len(origins), RAYS_A_STEP)
        ]
