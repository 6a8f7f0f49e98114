"""The column as a chain of frames: where each vertebra stands and how it is tilted.

The sacral endplate is the origin; bodies and discs are stacked on it with the
wedge angles that add up to the body's lordoses and kyphosis. Everything else
(bones, landmarks, soft parts) hangs on these frames.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meshes.body import Body

CERVICAL = tuple(f"C{i}" for i in range(1, 8))
THORACIC = tuple(f"T{i}" for i in range(1, 13))
LUMBAR = tuple(f"L{i}" for i in range(1, 6))
LEVELS = CERVICAL + THORACIC + LUMBAR
"""C1 to L5, from the head down."""

# Panjabi MM et al., Spine 1991;16:888-901 (T1-T12), Spine 1992;17:299-306
# (L1-L5) and Spine 1991;16:861-869 (C2-C7): endplate width, endplate depth,
# posterior body height, canal width, canal depth, mm. From memory. Canal depths of L2, L3
# (down) and L5 (up) lie about a millimetre or two off theirs: the finished ring narrows, and
# Griffith JF et al., Quant Imaging Med Surg 2016;6:671-679 found them shallower.
_SIZES = {
    "C1": (0.0, 0.0, 0.0, 28.0, 31.0),
    "C2": (17.5, 15.6, 20.0, 24.5, 21.0),
    "C3": (17.2, 15.6, 11.6, 22.9, 16.2),
    "C4": (17.1, 15.9, 11.4, 24.7, 17.7),
    "C5": (17.5, 17.9, 11.4, 24.9, 17.4),
    "C6": (18.5, 18.5, 10.9, 25.8, 17.6),
    "C7": (23.4, 16.8, 12.8, 24.5, 17.2),
    "T1": (24.5, 18.5, 14.1, 21.8, 16.4),
    "T2": (24.9, 19.6, 15.6, 19.5, 15.5),
    "T3": (24.6, 22.7, 15.7, 18.3, 15.7),
    "T4": (24.5, 23.3, 16.2, 17.0, 16.0),
    "T5": (24.9, 24.3, 16.2, 17.3, 16.2),
    "T6": (26.2, 26.0, 17.4, 17.3, 16.2),
    "T7": (27.8, 27.4, 18.2, 17.3, 16.2),
    "T8": (29.5, 27.9, 18.7, 17.7, 16.2),
    "T9": (30.6, 29.3, 19.3, 17.9, 15.7),
    "T10": (31.9, 30.5, 20.2, 18.2, 15.5),
    "T11": (34.9, 31.9, 21.3, 19.4, 16.1),
    "T12": (39.0, 32.8, 22.7, 22.2, 18.1),
    "L1": (41.2, 34.1, 23.8, 23.7, 19.0),
    "L2": (42.6, 34.6, 24.3, 23.8, 17.7),
    "L3": (44.1, 35.2, 23.8, 24.3, 17.35),
    "L4": (46.6, 35.5, 24.1, 25.4, 18.6),
    "L5": (47.3, 34.7, 22.9, 27.1, 21.5),
}

# Those specimens, men and women, were shorter than the median man of today's surveys:
# heights grown by about a tenth bring the height of C7 above the iliac crest to within one
# standard deviation of ANSUR II (456 +- 25 mm) and T2 and T9 to within one of
# Egwu OA et al., J Anat Soc India 2019;68:110-118.
_HEIGHT_GROWTH = 1.10

# From T3 down each on its own: T12 to L5 between the means of men on radiographs and CT
# (Gilad I & Nissan M, J Anat 1985;143:115-120; Busscher I et al., Eur Spine J
# 2010;19:1104-1114); the others so that heights still rise evenly.
_GROWTH = {
    "C2": 1.0,
    "T3": 1.12, "T4": 1.12, "T5": 1.12, "T6": 1.12, "T7": 1.12, "T8": 1.12, "T9": 1.09,
    "T10": 1.12, "T11": 1.12, "T12": 1.14,
    "L1": 1.10, "L2": 1.14, "L3": 1.175, "L4": 1.12, "L5": 1.135,
}  # fmt: skip

# Disc below each level, mid-height in mm at median stature, the sunk endplates (about
# 1.4 mm) not counted. T12 to L5: between the means of men by Yadav U et al., Int J Spine
# Surg 2020;14:175-181, Bach K et al., World Neurosurg 2019;124:e106-e118 (both CT) and
# Twomey L & Taylor J, Acta Orthop Scand 1985;56:496-499;
# thoracic: about the means of Fletcher JGR et al., Eur Spine J 2015 (men), grown
# likewise; cervical: common practice, no source.
_DISCS = {
    "C2": 5.4, "C3": 5.5, "C4": 5.6, "C5": 5.7, "C6": 5.8, "C7": 5.2,
    "T1": 4.4, "T2": 4.0, "T3": 3.8, "T4": 3.8, "T5": 4.2, "T6": 4.6,
    "T7": 5.0, "T8": 5.2, "T9": 5.6, "T10": 5.9, "T11": 6.1, "T12": 5.2,
    "L1": 6.4, "L2": 7.9, "L3": 8.5, "L4": 9.1, "L5": 8.1,
}  # fmt: skip

# How the lumbar lordosis is shared between discs and bodies, from S1 up
# (common practice: about two thirds of it lie between L4 and S1).
_LORDOSIS_SHARE = {
    "L5": (0.26, 0.13), "L4": (0.22, 0.03), "L3": (0.16, 0.0),
    "L2": (0.13, -0.01), "L1": (0.12, -0.04),
}  # fmt: skip

# Kyphosis between T12 and T4, body and disc below together; greatest at T6-T8.
_KYPHOSIS_SHARE = {
    "T12": 0.04, "T11": 0.07, "T10": 0.09, "T9": 0.12, "T8": 0.15, "T7": 0.16,
    "T6": 0.15, "T5": 0.13, "T4": 0.09,
}  # fmt: skip
# Above T4 the column goes on bending forward a little, in proportion.
_UPPER_THORACIC_SHARE = {"T3": 0.06, "T2": 0.03, "T1": 0.0}

# Cervical lordosis C2-C7 shared by the segments.
_CERVICAL_SHARE = {"C6": 0.2, "C5": 0.2, "C4": 0.2, "C3": 0.2, "C2": 0.2}


@dataclass(frozen=True, slots=True)
class VertebraFrame:
    """Place, tilt and size of one vertebra.

    Attributes
    ----------
    level : str
    centre : (3,) float
        Centre of the body (C1: centre of the ring where its body would be), mm.
    axes : (3, 3) float
        Columns: the vertebra's own left, back and up in the model's axes.
    width, depth : float
        Superior endplate, mm.
    height : float
        Body height, mm.
    canal_width, canal_depth : float
    tilt_deg : float
        Forward lean of its up axis from the vertical, degrees.
    """

    level: str
    centre: np.ndarray
    axes: np.ndarray
    width: float
    depth: float
    height: float
    canal_width: float
    canal_depth: float
    tilt_deg: float

    def to_model(self, local: np.ndarray) -> np.ndarray:
        """Take (..., 3) points from the vertebra's own axes to the model's, mm."""
        return np.asarray(local, float) @ self.axes.T + self.centre

    def to_local(self, points: np.ndarray) -> np.ndarray:
        """Take (..., 3) points from the model's axes to the vertebra's own, mm."""
        return (np.asarray(points, float) - self.centre) @ self.axes


@dataclass(frozen=True, slots=True)
class SkeletonFrame:
    """Frames of the whole column and the scale of the body.

    Attributes
    ----------
    body : Body
    scale : float
        Length of this body relative to the median man.
    vertebrae : dict of str to VertebraFrame
        C1 to L5.
    sacral_axes : (3, 3) float
        Columns left, back, up of the sacral endplate; its centre is the origin.
    """

    body: Body
    scale: float
    vertebrae: dict[str, VertebraFrame]
    sacral_axes: np.ndarray

    def __getitem__(self, level: str) -> VertebraFrame:
        return self.vertebrae[level]

    def between(self, upper: str, fraction: float = 0.5) -> np.ndarray:
        """Point in the column between body centres of a level and the next one down, mm."""
        lower = LEVELS[LEVELS.index(upper) + 1]
        a, b = self.vertebrae[upper].centre, self.vertebrae[lower].centre
        return (1 - fraction) * a + fraction * b


def sagittal_axes(tilt_deg: float) -> np.ndarray:
    """Axes (columns left, back, up) whose up leans forward by tilt_deg degrees."""
    t = np.deg2rad(tilt_deg)
    return np.array([[1.0, 0.0, 0.0], [0.0, np.cos(t), -np.sin(t)], [0.0, np.sin(t), np.cos(t)]])


def disc_height(level: str, scale: float) -> float:
    """Mid-height of the disc below a level, mm (0 for C1)."""
    return _DISCS.get(level, 0.0) * scale


def make_frame(body: Body) -> SkeletonFrame:
    """Stack the column of a body.

    Parameters
    ----------
    body : Body

    Returns
    -------
    SkeletonFrame
    """
    # Widths of men and women differ a little more than their stature; 0.95 is
    # common practice for women's breadths at equal stature.
    scale = body.scale
    breadth = scale * (0.95 if body.sex == "female" else 1.0)
    vertebrae: dict[str, VertebraFrame] = {}
    tilt = body.sacral_slope_deg
    axes = sagittal_axes(tilt)
    top = np.zeros(3)
    for level in reversed(LEVELS[1:]):
        wedge_disc, wedge_body = _wedges(level, body)
        thickness = disc_height(level, scale)
        middle = sagittal_axes(tilt + wedge_disc / 2)
        bottom = top + thickness * middle[:, 2]
        tilt += wedge_disc
        width, depth, height, canal_width, canal_depth = _SIZES[level]
        height *= scale * _growth(level)
        axes = sagittal_axes(tilt + wedge_body / 2)
        centre = bottom + 0.5 * height * axes[:, 2]
        top = bottom + height * axes[:, 2]
        vertebrae[level] = VertebraFrame(
            level, centre, axes, width * breadth, depth * breadth, height,
            canal_width * breadth, canal_depth * breadth, tilt + wedge_body / 2,
        )  # fmt: skip
        tilt += wedge_body
    axis_frame = vertebrae["C2"]
    atlas_axes = sagittal_axes(axis_frame.tilt_deg - 2.0)
    # The atlas ring rides round the dens, whose middle stands about 8 mm above the body of C2.
    atlas_centre = top + 9.0 * scale * axis_frame.axes[:, 2]
    _, _, _, canal_width, canal_depth = _SIZES["C1"]
    vertebrae["C1"] = VertebraFrame(
        "C1", atlas_centre, atlas_axes, 0.0, 0.0, 11.0 * scale,
        canal_width * breadth, canal_depth * breadth, axis_frame.tilt_deg - 2.0,
    )  # fmt: skip
    ordered = {level: vertebrae[level] for level in LEVELS}
    return SkeletonFrame(body, scale, ordered, sagittal_axes(body.sacral_slope_deg))


def _growth(level: str) -> float:
    """How much taller a body is than in the table."""
    return _GROWTH.get(level, _HEIGHT_GROWTH)


def body_wedge(level: str, body: Body) -> float:
    """Forward tilt gained from the lower to the upper endplate of a body, degrees."""
    return _wedges(level, body)[1]


def _wedges(level: str, body: Body) -> tuple[float, float]:
    """Forward tilt gained in the disc below a level and in its body, degrees."""
    if level in _LORDOSIS_SHARE:
        disc, bone = _LORDOSIS_SHARE[level]
        return -disc * body.lumbar_lordosis_deg, -bone * body.lumbar_lordosis_deg
    if level in _KYPHOSIS_SHARE:
        total = _KYPHOSIS_SHARE[level] * body.thoracic_kyphosis_deg
        return 0.25 * total, 0.75 * total
    if level in _UPPER_THORACIC_SHARE:
        total = _UPPER_THORACIC_SHARE[level] * body.thoracic_kyphosis_deg
        return 0.3 * total, 0.7 * total
    if level in _CERVICAL_SHARE:
        total = -_CERVICAL_SHARE[level] * body.cervical_lordosis_deg
        return 0.8 * total, 0.2 * total
    return -3.0, 0.0
