"""A toy back of boxes and balls: small, instant, and shaped like the real thing.

Its ids, sides, strata and nesting are those of the real model (skin outside,
canal inside, left at +x), so that the window, the probe and the command line
can be tested without building a body.
"""

from __future__ import annotations

from functools import cache

import numpy as np
import trimesh

from meshes.body import Body
from meshes.catalogue import load_catalogue
from meshes.model import Attachment, BackModel, Contact, Part, mirror_part

# id stem, entry, kind, stratum, group, centre (mm), extents (mm), level, region, paired
_ROWS = (
    (
        "spinal_cord",
        "spinal_cord",
        "canal",
        10,
        "",
        (0, 30, 250),
        (10, 8, 380),
        "",
        "thorax",
        False,
    ),
    (
        "spinal_dura_mater",
        "spinal_dura_mater",
        "canal",
        10,
        "",
        (0, 30, 60),
        (14, 12, 100),
        "",
        "loin",
        False,
    ),
    ("vertebra_C7", "vertebra_C7", "bone", 9, "", (0, 10, 430), (60, 60, 14), "C7", "neck", False),
    (
        "vertebra_T4",
        "vertebra_T4",
        "bone",
        9,
        "",
        (0, 10, 350),
        (60, 60, 18),
        "T4",
        "thorax",
        False,
    ),
    (
        "vertebra_T7",
        "vertebra_T7",
        "bone",
        9,
        "",
        (0, 10, 280),
        (60, 60, 20),
        "T7",
        "thorax",
        False,
    ),
    (
        "vertebra_T12",
        "vertebra_T12",
        "bone",
        9,
        "",
        (0, 10, 160),
        (60, 60, 24),
        "T12",
        "thorax",
        False,
    ),
    ("vertebra_L3", "vertebra_L3", "bone", 9, "", (0, 10, 80), (80, 60, 26), "L3", "loin", False),
    ("sacrum", "sacrum", "bone", 9, "", (0, 20, -50), (90, 40, 90), "", "pelvis", False),
    ("rib_7", "rib_7", "bone", 9, "", (90, 20, 275), (110, 12, 12), "T7", "thorax", True),
    ("scapula", "scapula", "bone", 9, "", (120, 62, 320), (90, 8, 140), "", "shoulder", True),
    ("hip_bone", "hip_bone", "bone", 9, "", (95, 10, -40), (80, 60, 110), "", "pelvis", True),
    (
        "rectus_capitis_posterior_major",
        "rectus_capitis_posterior_major",
        "muscle",
        8,
        "suboccipital_muscles",
        (16, 35, 500),
        (14, 8, 40),
        "",
        "neck",
        True,
    ),
    (
        "levator_costarum_brevis_T7",
        "levator_costarum_brevis",
        "muscle",
        8,
        "levatores_costarum",
        (45, 42, 270),
        (20, 8, 24),
        "T7",
        "thorax",
        True,
    ),
    (
        "multifidus_lumborum",
        "multifidus_lumborum",
        "muscle",
        7,
        "transversospinales",
        (18, 52, 40),
        (26, 16, 160),
        "",
        "loin",
        True,
    ),
    (
        "semispinalis_capitis",
        "semispinalis_capitis",
        "muscle",
        7,
        "transversospinales",
        (20, 50, 470),
        (26, 12, 110),
        "",
        "neck",
        True,
    ),
    (
        "longissimus_thoracis",
        "longissimus_thoracis",
        "muscle",
        6,
        "erector_spinae",
        (26, 68, 200),
        (30, 14, 380),
        "",
        "thorax",
        True,
    ),
    (
        "iliocostalis_lumborum",
        "iliocostalis_lumborum",
        "muscle",
        6,
        "erector_spinae",
        (58, 68, 150),
        (28, 14, 300),
        "",
        "loin",
        True,
    ),
    (
        "thoracolumbar_fascia_posterior",
        "thoracolumbar_fascia_posterior",
        "fascia",
        5,
        "",
        (42, 77, 60),
        (78, 2, 260),
        "",
        "loin",
        True,
    ),
    (
        "splenius_capitis",
        "splenius_capitis",
        "muscle",
        5,
        "splenii",
        (28, 61, 440),
        (44, 6, 130),
        "",
        "neck",
        True,
    ),
    (
        "serratus_posterior_superior",
        "serratus_posterior_superior",
        "muscle",
        4,
        "serrati_posteriores",
        (50, 82, 390),
        (80, 3, 60),
        "",
        "thorax",
        True,
    ),
    (
        "serratus_posterior_inferior",
        "serratus_posterior_inferior",
        "muscle",
        4,
        "serrati_posteriores",
        (60, 82, 150),
        (90, 3, 90),
        "",
        "loin",
        True,
    ),
    (
        "dorsal_scapular_nerve",
        "dorsal_scapular_nerve",
        "nerve",
        4,
        "",
        (62, 85, 350),
        (3, 2, 120),
        "",
        "shoulder",
        True,
    ),
    (
        "rhomboid_minor",
        "rhomboid_minor",
        "muscle",
        3,
        "rhomboids",
        (44, 89, 405),
        (78, 5, 20),
        "",
        "thorax",
        True,
    ),
    (
        "rhomboid_major",
        "rhomboid_major",
        "muscle",
        3,
        "rhomboids",
        (44, 89, 340),
        (78, 5, 90),
        "",
        "thorax",
        True,
    ),
    (
        "levator_scapulae",
        "levator_scapulae",
        "muscle",
        3,
        "",
        (60, 72, 455),
        (24, 10, 90),
        "",
        "neck",
        True,
    ),
    (
        "accessory_nerve",
        "accessory_nerve",
        "nerve",
        3,
        "",
        (66, 93, 400),
        (3, 2, 140),
        "",
        "shoulder",
        True,
    ),
    (
        "transverse_cervical_artery",
        "transverse_cervical_artery",
        "artery",
        3,
        "",
        (72, 93, 400),
        (3, 2, 120),
        "",
        "shoulder",
        True,
    ),
    (
        "trapezius_descending",
        "trapezius_descending",
        "muscle",
        2,
        "trapezius",
        (50, 99, 460),
        (94, 6, 90),
        "",
        "neck",
        True,
    ),
    (
        "trapezius_transverse",
        "trapezius_transverse",
        "muscle",
        2,
        "trapezius",
        (60, 99, 385),
        (116, 6, 58),
        "",
        "thorax",
        True,
    ),
    (
        "trapezius_ascending",
        "trapezius_ascending",
        "muscle",
        2,
        "trapezius",
        (45, 99, 260),
        (86, 6, 190),
        "",
        "thorax",
        True,
    ),
    (
        "latissimus_dorsi",
        "latissimus_dorsi",
        "muscle",
        2,
        "",
        (90, 93, 130),
        (110, 5, 180),
        "",
        "loin",
        True,
    ),
    ("deltoid", "deltoid", "muscle", 2, "", (185, 70, 370), (40, 60, 90), "", "shoulder", True),
    (
        "superficial_fascia",
        "superficial_fascia",
        "fascia",
        1,
        "",
        (101, 108, 200),
        (200, 8, 680),
        "",
        "thorax",
        True,
    ),
    (
        "posterior_cutaneous_branch_T5",
        "posterior_cutaneous_branch",
        "nerve",
        1,
        "",
        (30, 103.4, 330),
        (2, 1, 30),
        "T5",
        "thorax",
        True,
    ),
    ("skin", "skin", "skin", 0, "", (101, 114, 200), (200, 2.4, 680), "", "thorax", True),
)


def _fibre_frame(centre: np.ndarray, extents: np.ndarray, points: np.ndarray) -> tuple:
    """Return uv (n, 2) and tendon (n,) of a box whose fibres run along its longest edge."""
    long_axis = int(np.argmax(extents))
    across = int(np.argsort(extents)[1])
    low = centre - extents / 2
    u = (points[:, long_axis] - low[long_axis]) / extents[long_axis]
    v = (points[:, across] - low[across]) / extents[across]
    tendon = np.clip(np.abs(u - 0.5) * 10 - 4, 0, 1)
    return np.column_stack([u, v]).astype(np.float32), tendon.astype(np.float32), long_axis


def _toy_part(row: tuple) -> Part:
    stem, entry, kind, stratum, group, centre, extents, level, region, paired = row
    centre = np.asarray(centre, float)
    extents = np.asarray(extents, float)
    if kind in ("bone", "canal") and min(extents) > 5 and not paired:
        mesh = trimesh.creation.icosphere(subdivisions=2)
        mesh.apply_scale(extents / 2)
        mesh.apply_translation(centre)
    else:
        mesh = trimesh.creation.box(extents).subdivide().subdivide()
        mesh.apply_translation(centre)
    mesh = trimesh.Trimesh(mesh.vertices, mesh.faces, process=False)
    uv = tendon = fibres = None
    attachments: tuple[Attachment, ...] = ()
    if kind == "muscle":
        points = np.asarray(mesh.vertices)
        uv, tendon, axis = _fibre_frame(centre, extents, points)
        across = int(np.argsort(extents)[1])
        lines = []
        for v in np.linspace(0.1, 0.9, 5):
            line = np.tile(centre, (8, 1))
            line[:, axis] += np.linspace(-0.5, 0.5, 8) * extents[axis]
            line[:, across] += (v - 0.5) * extents[across]
            lines.append(line)
        fibres = np.array(lines)
        side = ".left" if paired else ""
        attachments = (
            Attachment("origin", "vertebra_T4", fibres[:, 0]),
            Attachment("insertion", f"scapula{side}", fibres[:, -1]),
        )
    return Part(
        id=f"{stem}.left" if paired else stem,
        entry=entry,
        kind=kind,
        stratum=stratum,
        group=group,
        mesh=mesh,
        uv=uv,
        tendon=tendon,
        fibres=fibres,
        attachments=attachments,
        level=level,
        region=region,
    )


@cache
def toy_model() -> BackModel:
    """Return the toy back: about 60 closed parts over all strata, both sides."""
    parts: dict[str, Part] = {}
    for row in _ROWS:
        part = _toy_part(row)
        parts[part.id] = part
        if part.side == "left":
            twin = mirror_part(part)
            parts[twin.id] = twin
    landmarks: dict[str, np.ndarray] = {
        "C7.spinous_process": np.array([0.0, 40.0, 430.0]),
        "T4.spinous_process": np.array([0.0, 40.0, 350.0]),
        "T7.spinous_process": np.array([0.0, 40.0, 280.0]),
        "T12.spinous_process": np.array([0.0, 40.0, 160.0]),
        "L3.spinous_process": np.array([0.0, 40.0, 80.0]),
        "scapula.left.superior_angle": np.array([80.0, 66.0, 388.0]),
        "scapula.left.inferior_angle": np.array([90.0, 66.0, 250.0]),
        "ilium.left.crest": np.array([[60.0, 40.0, 0.0], [95.0, 30.0, 15.0], [134.0, 10.0, 5.0]]),
    }
    for name in [n for n in landmarks if ".left." in n]:
        landmarks[name.replace(".left.", ".right.")] = landmarks[name] * [-1, 1, 1]
    contacts = (
        Contact("rhomboid_major.left", "scapula.left", "attach", np.array([[83.0, 87.0, 340.0]])),
        Contact(
            "rhomboid_major.right", "scapula.right", "attach", np.array([[-83.0, 87.0, 340.0]])
        ),
    )
    return BackModel(
        body=Body(),
        detail="preview",
        parts=parts,
        landmarks=landmarks,
        contacts=contacts,
        catalogue=load_catalogue(),
    )
