"""The finished model and the records it is made of.

Everything is in millimetres in DICOM LPS axes (x to the subject's left, y to
the back, z to the head), origin at the centre of the superior endplate of S1.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Literal

import numpy as np

if TYPE_CHECKING:
    import trimesh

    from meshes.body import Body
    from meshes.catalogue import Catalogue

Side = Literal["left", "right"]
ContactKind = Literal["attach", "blend", "abut", "pierce", "contain"]

STRATUM_COUNT = 11
"""Strata run from 0 (skin) to 10 (canal)."""


@dataclass(frozen=True, slots=True)
class Attachment:
    """Where one end of a part is fixed.

    Attributes
    ----------
    kind : {"origin", "insertion", "attach"}
        Origin is the end where fibres start; ligaments use "attach".
    to : str
        Id of the part attached to: any bone, ligament or fascia.
    curve : (k, 3) float
        The attachment line, mm.
    """

    kind: str
    to: str
    curve: np.ndarray


@dataclass(frozen=True, slots=True)
class Contact:
    """A declared touching of two parts and the place where it is allowed.

    Attributes
    ----------
    a, b : str
        Part ids.
    kind : {"attach", "blend", "abut", "pierce", "contain"}
        See ``meshes.questions.check`` for the reach that each kind exempts.
    place : (k, 3) float
        Points (or a polyline) at which the contact is declared, mm. For
        "contain" it may be empty: ``b`` lies wholly inside ``a``.
    """

    a: str
    b: str
    kind: ContactKind
    place: np.ndarray


@dataclass(frozen=True, slots=True, eq=False)
class Part:
    """One closed mesh of the model.

    Attributes
    ----------
    id : str
        ``name`` or ``name.left`` / ``name.right``.
    entry : str
        Key of its row in the catalogue (segmental families share one row).
    kind : {"bone", "cartilage", "disc", "ligament", "muscle", "tendon",
            "fascia", "nerve", "artery", "vein", "canal", "skin", "context"}
    stratum : int
        0 (skin) to 10 (canal): the stratum it goes with when peeling.
    group : str
        The named group it belongs to ("trapezius", "erector_spinae", ...), or "".
    mesh : trimesh.Trimesh
        Closed, consistently outward, mm, LPS.
    uv : (n_vertices, 2) float32 or None
        Fibre coordinates: u runs from origin (0) to insertion (1), v across.
        For bones and other parts without fibres None.
    tendon : (n_vertices,) float32 or None
        0 where fleshy, 1 where tendon or aponeurosis.
    fibres : (n_fibres, n_points, 3) float or None
        Fibre lines, origin end first; None when it has none.
    attachments : tuple of Attachment
    clings_to : str or None
        Id of the sheet on whose face a nerve or vessel runs, so that a fold carries it.
    level : str
        Vertebral level for segmental parts ("T5"), else "".
    region : str
        "head", "neck", "thorax", "loin", "pelvis", "shoulder" or "arm".
    drawn_thicker : bool
        True when the mesh is thicker than the published thickness.
    """

    id: str
    entry: str
    kind: str
    stratum: int
    group: str
    mesh: trimesh.Trimesh
    uv: np.ndarray | None = None
    tendon: np.ndarray | None = None
    fibres: np.ndarray | None = None
    attachments: tuple[Attachment, ...] = ()
    clings_to: str | None = None
    level: str = ""
    region: str = ""
    drawn_thicker: bool = False

    @property
    def vertices(self) -> np.ndarray:
        """The (n, 3) vertices of the mesh, mm; a part read from disk needs no mesh object."""
        return np.asarray(self.mesh.vertices)

    @property
    def faces(self) -> np.ndarray:
        """The (m, 3) faces of the mesh."""
        return np.asarray(self.mesh.faces)

    @property
    def name(self) -> str:
        """The id without its side."""
        return self.id.split(".", 1)[0]

    @property
    def side(self) -> Side | None:
        """The subject's side, or None for a median part."""
        return side_of(self.id)


@dataclass(frozen=True, slots=True, eq=False)
class BackModel:
    """A finished back.

    Attributes
    ----------
    body : Body
        The parameters it was computed from.
    detail : {"preview", "full"}
    parts : mapping of str to Part
        In order from deep to superficial.
    landmarks : mapping of str to ndarray
        ``T7.spinous_process`` -> (3,), or (k, 3) for a curve; mm.
    contacts : tuple of Contact
    catalogue : Catalogue
    """

    body: Body
    detail: str
    parts: Mapping[str, Part]
    landmarks: Mapping[str, np.ndarray]
    contacts: tuple[Contact, ...]
    catalogue: Catalogue
    notes: Mapping[str, object] = field(default_factory=dict)


def side_of(part_id: str) -> Side | None:
    """Return "left", "right" or None for a part or landmark id."""
    if part_id.endswith(".left") or ".left." in part_id:
        return "left"
    if part_id.endswith(".right") or ".right." in part_id:
        return "right"
    return None


def other_side(part_id: str) -> str:
    """Return the id with left and right exchanged (median ids come back as they are)."""
    side = side_of(part_id)
    if side == "left":
        return part_id.replace(".left", ".right")
    if side == "right":
        return part_id.replace(".right", ".left")
    return part_id


def mirror_points(points: np.ndarray) -> np.ndarray:
    """Mirror (..., 3) points in the median plane (x becomes -x)."""
    mirrored = np.array(points, copy=True)
    mirrored[..., 0] *= -1
    return mirrored


def mirror_part(part: Part) -> Part:
    """Return the part's twin on the other side.

    Negates x and turns the winding so that normals stay outward; u, v,
    tendon and the origin-first order of fibres are kept.
    """
    import trimesh

    mesh = trimesh.Trimesh(
        mirror_points(part.mesh.vertices), part.mesh.faces[:, ::-1], process=False
    )
    return replace(
        part,
        id=other_side(part.id),
        mesh=mesh,
        fibres=None if part.fibres is None else mirror_points(part.fibres),
        attachments=tuple(
            Attachment(a.kind, other_side(a.to), mirror_points(a.curve)) for a in part.attachments
        ),
        clings_to=None if part.clings_to is None else other_side(part.clings_to),
    )


def mirror_contact(contact: Contact) -> Contact:
    """Return the contact's twin on the other side."""
    return Contact(
        other_side(contact.a), other_side(contact.b), contact.kind, mirror_points(contact.place)
    )
