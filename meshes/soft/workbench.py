"""What the soft parts are laid on: everything finished so far, and its field."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

import numpy as np
import trimesh

from meshes.body import Body
from meshes.catalogue import Catalogue
from meshes.drape.distance import MeshIndex
from meshes.drape.field import Field
from meshes.model import Contact, Part
from meshes.skeleton.frame import SkeletonFrame

if TYPE_CHECKING:
    from meshes.drape.sheet import SheetGrid
    from meshes.soft.gutter import Gutter

FIELD_SPACING_MM = 3.0
FIELD_MARGIN_MM = 18.0


class Workbench:
    """The left half and the median parts of a body under construction.

    Attributes
    ----------
    body : Body
    detail : {"preview", "full"}
    frame : SkeletonFrame
    catalogue : Catalogue
    landmarks : dict of str to ndarray
        Median and left landmarks, mm.
    parts : dict of str to Part
        Finished parts, median and left, in the order in which they were laid.
    contacts : list of Contact
    field : Field
        Signed distance to everything solid laid so far (left half and a margin
        over the midline), about 3 mm apart.
    sheets : dict of str to SheetGrid
        Mid-surfaces of the sheets laid so far, by part id.
    gutter : Gutter or None
        Roof and floor of the deep muscles, once they are laid.
    """

    def __init__(
        self, body: Body, detail: str, frame: SkeletonFrame, catalogue: Catalogue, field: Field
    ) -> None:
        self.body = body
        self.detail = detail
        self.frame = frame
        self.catalogue = catalogue
        self.field = field
        self.landmarks: dict[str, np.ndarray] = {}
        self.parts: dict[str, Part] = {}
        self.contacts: list[Contact] = []
        self.sheets: dict[str, SheetGrid] = {}
        self.gutter: Gutter | None = None
        self._indices: dict[str, MeshIndex] = {}
        # Boxes (n, 2, 3) of the parts, in their order; room for more is kept at the end.
        self._boxes = np.empty((256, 2, 3))

    @property
    def full(self) -> bool:
        """True when every bit of detail is wanted."""
        return self.detail == "full"

    def triangles(self, full: int, preview: int | None = None) -> int:
        """Return the triangle budget for the present detail."""
        if self.full:
            return full
        return preview if preview is not None else max(full // 6, 60)

    def add(self, part: Part, contacts: Iterable[Contact] = (), *, solid: bool = True) -> Part:
        """Finish a part.

        Parameters
        ----------
        part : Part
        contacts : iterable of Contact
        solid : bool
            True enters the mesh into the field as it is. Thin sheets enter
            the field by their builder (``field.add_sheet``) and pass False.
        """
        if part.id in self.parts:
            raise ValueError(f"part {part.id} is laid twice")
        number = len(self.parts)
        if number == len(self._boxes):
            self._boxes = np.concatenate([self._boxes, np.empty_like(self._boxes)])
        self._boxes[number] = part.mesh.bounds
        self.parts[part.id] = part
        self.contacts.extend(contacts)
        if solid:
            self.field.add_mesh(self.index(part.id))
        return part

    def replace(self, part: Part, index: MeshIndex | None = None) -> None:
        """Put a finished part in the place of the one with its id; the field stays as it is.

        ``index`` is that of its mesh, where it is at hand.
        """
        if part.id not in self.parts:
            raise KeyError(f"no part {part.id!r} to replace")
        self.parts[part.id] = part
        if index is None:
            self._indices.pop(part.id, None)
        else:
            self._indices[part.id] = index

    def index(self, part_id: str) -> MeshIndex:
        """Exact distances to one finished part (made on first use)."""
        if part_id not in self._indices:
            mesh = self.parts[part_id].mesh
            self._indices[part_id] = MeshIndex(mesh.vertices, mesh.faces)
        return self._indices[part_id]

    def near(
        self, points: np.ndarray, margin: float = 6.0, without: Sequence[str] = ()
    ) -> list[MeshIndex]:
        """Exact indices of the parts whose box comes within margin mm of the points' box."""
        return [self.index(i) for i in self.near_ids(points, margin, without)]

    def near_ids(
        self, points: np.ndarray, margin: float = 6.0, without: Sequence[str] = ()
    ) -> list[str]:
        """Ids of the parts whose box comes within margin mm of the points' box."""
        points = np.asarray(points, float).reshape(-1, 3)
        low, high = points.min(0) - margin, points.max(0) + margin
        boxes = self._boxes[: len(self.parts)]
        meet = ((boxes[:, 0] <= high) & (boxes[:, 1] >= low)).all(axis=1)
        return [i for i, met in zip(self.parts, meet.tolist()) if met and i not in without]

    def landmark(self, name: str) -> np.ndarray:
        """Return a landmark, (3,) or (k, 3) mm.

        Raises
        ------
        KeyError
            Named with the nearest existing names.
        """
        try:
            return self.landmarks[name]
        except KeyError:
            from difflib import get_close_matches

            close = get_close_matches(name, self.landmarks, 3)
            raise KeyError(f"no landmark {name!r}; close: {', '.join(close) or 'none'}") from None


def trimesh_of(vertices: np.ndarray, faces: np.ndarray) -> trimesh.Trimesh:
    """Wrap arrays as a mesh without merging or reordering anything."""
    return trimesh.Trimesh(np.asarray(vertices), np.asarray(faces), process=False)
