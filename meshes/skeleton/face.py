"""The face and the lower jaw, in the skull's own frame.

Origin midway between the superior facets of the atlas; x left, y back, z up, the head level. The
left half of a man's, mm. Heights and breadths are common values of men's skulls (nasion to gnathion
about 119, upper face 70, orbit 40 by 34, nose 24 wide, across the arches 131, across the angles of
the jaw 101, ramus 60 high): from memory, no source. No part of the back hangs on them; the face is
there so that the head reads as a head from the side and from in front.
"""

from __future__ import annotations

import numpy as np

from meshes.shapes.plate import open_spline
from meshes.shapes.solid import Solid

# Row of teeth from the midline back, at the necks: a parabola wide behind.
_UPPER_ARCH = np.array(
    [(0.0, -97.5), (8.5, -95.8), (16.0, -90.8), (21.5, -82.0), (25.0, -71.0), (27.5, -58.0),
     (28.5, -47.0)]
)  # fmt: skip
_LOWER_ARCH = _UPPER_ARCH * [0.955, 1.0] + [0.0, 2.4]
_BITE_Z, _BITE_RISE = -33.0, 0.13
"""Where the teeth meet in front, and how much that plane rises for each mm back."""

# Width along the row, depth across it and height of the crown.
_UPPER_TEETH = (
    (8.6, 6.2, 10.2), (6.6, 5.6, 9.0), (7.6, 7.4, 10.4), (7.0, 8.6, 8.4), (6.8, 8.6, 8.0),
    (10.2, 10.4, 7.4), (9.6, 10.4, 7.0), (8.4, 9.6, 6.2),
)  # fmt: skip
_LOWER_TEETH = (
    (5.4, 5.4, 9.0), (6.0, 5.6, 9.0), (7.0, 7.0, 10.2), (7.0, 7.6, 8.4), (7.2, 8.0, 7.8),
    (11.0, 9.8, 7.2), (10.4, 9.6, 6.8), (10.0, 9.2, 6.4),
)  # fmt: skip


def _bite(y: float) -> float:
    return _BITE_Z + _BITE_RISE * (y - _UPPER_ARCH[0, 1])


def _teeth(arch: np.ndarray, teeth, down: float) -> Solid:
    """One half row; ``down`` is -1 for crowns that point up."""
    solid = Solid()
    line = open_spline(np.column_stack([arch, np.zeros(len(arch))]), 80)
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(line, axis=0), axis=1))])
    start = 0.0
    for number, (width, depth, height) in enumerate(teeth):
        at = start + width / 2
        start += width
        place = np.array([np.interp(at, along, line[:, i]) for i in range(2)])
        ahead = np.array([np.interp(at + 1.0, along, line[:, i]) for i in range(2)]) - place
        row = np.array([*(ahead / np.linalg.norm(ahead)), 0.0])
        edge = _bite(place[1]) + 0.45 * down
        middle = np.array([*place, edge + down * height / 2])
        if number < 3:
            # Chisels: thick at the neck, thin at the cutting edge.
            neck = middle + [0, 0, down * (height / 2 + 1.0)]
            tip = middle - [0, 0, down * (height / 2 - 1.0)]
            point = 0.62 if number == 2 else 0.92
            solid.blade(neck, tip, row, (width * 0.43, width * 0.49 * point),
                        (depth / 2, 1.5), blend=0.25, power=3.0)  # fmt: skip
        else:
            across = np.array([-row[1], row[0], 0.0])
            solid.box(middle + [0, 0, down * 0.6],
                      (width / 2 - 0.1, depth / 2, height / 2 + 0.6),
                      np.stack([row, across, [0, 0, 1.0]]), rounding=1.6, blend=0.25)  # fmt: skip
    return solid


def upper_face() -> Solid:
    """Between and below the orbits: nose, cheek bone with its arch, and upper jaw, without the teeth."""
    solid = Solid()
    # Between the orbits, and the body of the upper jaw below them.
    solid.box((0, -78, 28), (13.5, 18, 26), rounding=6, blend=0.0)
    solid.box((15, -71, 0), (16.5, 21.5, 16), rounding=9, blend=6.0)
    solid.blade((14, -74, 12), (34, -70, 9), (0, 0, 1), (9, 8.5), (18, 13), blend=6.0)
    arch = open_spline(np.column_stack([_UPPER_ARCH, np.zeros(len(_UPPER_ARCH))]), 9)
    for i in range(8):
        a, b = arch[i].copy(), arch[i + 1].copy()
        a[2], b[2] = _bite(a[1]) + 18.0, _bite(b[1]) + 17.0
        solid.blade(a, b, (0, 0, 1), (10.0, 9.5), (4.4, 5.6), blend=4.0, power=2.6)
    # Frontal process beside the nose, and the nasal bones: a roof that runs out forwards.
    solid.blade((8.5, -93, 44), (14.5, -92.5, 2), (0.7, 0.7, 0), (5.5, 8.0), (4.5, 5.0), blend=4.0)
    solid.blade((3.5, -96, 44), (8.5, -97, 17), (0.75, 0.66, 0), (4.5, 6.5), (3.6, 3.0), blend=4.0)
    solid.blade((0, -95, 47), (0, -102.5, 26), (1, 0, 0), (6.0, 6.6), (5.0, 3.8), blend=4.0)
    solid.cone((0, -96, -7), (0, -102, -5.5), 3.4, 1.8, blend=3.0)
    # Cheek bone: body, frontal process, and the arch as an upright band.
    solid.blade((27, -83, 7), (51, -69, 9), (0, 0.25, 1), (9.5, 9.0), (6.0, 4.4), blend=6.0,
                power=2.6)  # fmt: skip
    solid.blade((49.0, -71, 12), (46.5, -79, 45), (0.8, 0.7, 0), (6.0, 4.6), (3.4, 4.0), blend=5.0)
    bow = open_spline(
        np.array(
            [(49, -70, 9), (59, -60, 10.5), (64.5, -45, 13), (66, -30, 15.5), (65, -20, 17.5)]
        ),
        9,
    )
    for i in range(8):
        solid.blade(bow[i], bow[i + 1], (0, 0, 1), np.interp([i, i + 1], [0, 2, 8], [7.5, 5.4, 4.6]),
                    2.1, blend=4.0 if i == 0 else 0.8, power=2.6)  # fmt: skip
    # Outer wall of the orbit, and the pterygoid plate behind the jaw.
    solid.blade((46.5, -74, 30), (33, -54, 28), (0, 0, 1), (16, 18), (2.6, 5.0), blend=4.0)
    solid.blade((15, -44, 12), (15.5, -41, -17), (0.35, 1, 0), (9.0, 6.0), (3.0, 2.0), blend=5.0)
    return solid


def brow() -> Solid:
    """Ridge over the orbits, stronger beside the midline; it fades into the forehead."""
    solid = Solid()
    solid.ellipsoid((0, -82, 50), (46, 14.5, 11), blend=0.0)
    solid.ellipsoid((14, -91, 49.5), (16, 7.0, 5.5), blend=8.0)
    return solid


def hollows() -> Solid:
    """What is taken out of the face: orbit, nose, palate, and the fossa for the lower jaw."""
    solid = Solid()
    # The rim faces a little sideways: its outer edge stands back by some 15 mm.
    turn = np.deg2rad(19.0)
    axes = np.array(
        [[np.cos(turn), np.sin(turn), 0], [-np.sin(turn), np.cos(turn), 0], [0, 0, 1.0]]
    )
    solid.prism((31.0, -97, 30.0), (19.2, 16.8, 14.0), axes[[0, 2, 1]] * [[1], [1], [-1]],
                exponent=2.6, rounding=6.0, blend=0.0)  # fmt: skip
    solid.cone((30, -90, 30), (19, -60, 29), 15.6, 5.0, blend=9.0)
    # Pear-shaped opening of the nose with the septum left standing.
    solid.blade((7.0, -98, 0.5), (3.8, -100, 21), (0, 1, 0), (24, 20), (6.2, 3.0), blend=2.0)
    # Palate between the rows of teeth, and the hollow above the canine's root.
    solid.ellipsoid((0, -70, -28), (20.5, 24, 15.5), blend=3.0)
    solid.ellipsoid((0, -48, -27), (19.5, 20, 15.5), blend=6.0)
    solid.ellipsoid((27, -97, 1), (8, 8.5, 9), blend=5.0)
    return solid


def _smooth_row(arch: np.ndarray, teeth, down: float) -> Solid:
    """The row as one band, where a mesh has no triangles to spare for each crown."""
    line = open_spline(np.column_stack([arch, np.zeros(len(arch))]), 7)
    height = np.interp(np.linspace(0, 7, 7), range(8), [crown[2] for crown in teeth])
    depth = np.interp(np.linspace(0, 7, 7), range(8), [crown[1] for crown in teeth])
    line[:, 2] = [_bite(y) for y in line[:, 1]] + down * (height / 2 + 0.9)
    return Solid().sweep(line, (0, 0, 1), height / 2 + 0.4, 0.42 * depth, blend=0.0)


def upper_teeth(detail: str) -> Solid:
    """Left half of the upper row."""
    row = _teeth if detail == "full" else _smooth_row
    return row(_UPPER_ARCH, _UPPER_TEETH, 1.0)


def jaw_joint() -> tuple[Solid, Solid]:
    """Articular tubercle before the joint of the jaw, and the fossa that is cut out behind it."""
    tubercle = Solid().blade((46, -29, 14), (64, -28, 15.0), (0, 1, 0), 5.0, 3.6, blend=0.0)
    fossa = Solid().ellipsoid((53.0, -17.5, 9.0), (11.6, 6.6, 6.6), blend=0.0)
    return tubercle, fossa


def lower_jaw(detail: str) -> Solid:
    """Body, chin, angle, ramus with its two processes and the teeth: left half."""
    solid = Solid()
    below = open_spline(
        np.array([(0, -93.5, -73), (11, -92.5, -73.5), (22, -84.5, -70.5), (31.5, -69, -63.5),
                  (39.5, -52, -56.5), (45.5, -38, -51)]), 13,
    )  # fmt: skip
    crest = open_spline(np.column_stack([_LOWER_ARCH, np.zeros(7)]), 13)
    crest[:, 2] = [_bite(y) - 8.5 for y in crest[:, 1]]
    # Towards the angle the body stands out of the row of teeth, to the ramus.
    out = np.clip((np.arange(13) - 8) / 4, 0, 1)[:, None]
    crest = crest + out * (np.array([41.0, -46.0, -33.0]) - crest[-1])
    middle, side = (below + crest) / 2, crest - below
    half = np.linalg.norm(side, axis=1) / 2
    for i in range(12):
        solid.blade(middle[i], middle[i + 1], side[i], half[i : i + 2], (5.6, 5.6),
                    blend=0.0 if i == 0 else 0.8, power=3.0)  # fmt: skip
    solid.sweep(below + [0, 0, 3.0], (0, 0, 1), 4.2, 5.8, blend=3.0)
    row = open_spline(np.column_stack([_LOWER_ARCH, np.zeros(7)]), 9)
    row[:, 2] = [_bite(y) - 13.0 for y in row[:, 1]]
    solid.sweep(row, (0, 0, 1), 5.0, 5.0, blend=3.0)
    # Chin.
    solid.ellipsoid((0, -97.0, -67), (10, 5.5, 7.5), blend=6.0)
    solid.ellipsoid((11, -95.0, -69.5), (6, 4.5, 4.5), blend=5.0)
    # Ramus: a plate that leans back a little, rounded at the angle.
    solid.blade((46.5, -37.5, -38), (49.8, -33.0, -12), (0, 1, 0.12), (16.0, 15.4), (4.4, 3.4),
                blend=9.0, power=2.5)  # fmt: skip
    solid.blade((45.0, -42, -44), (49.0, -29, -43), (0, 0, 1), (9.0, 9.0), (4.6, 3.8), blend=7.0)
    solid.blade((50.2, -24.5, -16), (52.0, -18.5, 4.0), (0.25, 1, 0), (7.8, 4.6), (3.4, 3.2),
                blend=4.0)  # fmt: skip
    solid.ellipsoid((52.5, -17.8, 8.2), (9.2, 4.7, 4.6), [[0.97, 0.2, 0], [-0.2, 0.97, 0], [0, 0, 1]],
                    blend=3.0)  # fmt: skip
    solid.blade(
        (49.6, -43.0, -18), (50.0, -45.0, 6.5), (0, 1, 0), (9.5, 3.4), (3.0, 1.8), blend=4.0
    )
    row = _teeth if detail == "full" else _smooth_row
    return solid.extend(row(_LOWER_ARCH, _LOWER_TEETH, -1.0))
