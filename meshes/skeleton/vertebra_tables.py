"""Shape of each vertebra C2 to L5 beyond the sizes of its body and canal.

Numbers are mm at the stature of the median man, in the vertebra's own axes
(left, back, up; origin at the centre of the body).

Sources. Spans of the transverse processes: Panjabi MM et al., Spine
1991;16:861-869 and 888-901, Spine 1992;17:299-306 (lumbar seen, the others
from memory). Pedicles: Zindrick MR et al., Spine 1987;12:160-166 (from memory).
Tips of thoracic spines: back and down from the body as in the open full-body
model after Bruno AG et al., J Biomech Eng 2015;137:081003. Facet inclinations:
Panjabi MM et al., Spine 1993;18:1298-1310 (from memory). Heights and
thicknesses of laminae: Xu R et al., Spine 1999;24:107-111 (from memory).
What remains (droop, curvature, thickness of tips) is common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class VertebraShape:
    """Processes of one vertebra, mm.

    Attributes
    ----------
    spine_tip : (2,) float
        Back and up of the tip of the spinous process.
    spine_heights : (3,) float
        Half heights of the spinous process at root, middle and tip.
    spine_thick : (3,) float
        Half thicknesses there.
    transverse_tip : (3,) float
        Left, back, up of the tip of the transverse process.
    transverse_root, transverse_end : (2,) float
        Half height and half thickness at root and near the tip.
    pedicle : (2,) float
        Half width and half height.
    lamina : (2,) float
        Half height and half thickness.
    facets : (4,) float
        The joint below: left and back (behind the rear wall of the body) of its
        centre, inclination of the facet to the transverse plane in degrees, and
        turn in degrees: for cervical and thoracic joints how far the lower
        bone's facet looks sideways, for lumbar joints the angle to the sagittal plane.
    """

    spine_tip: tuple[float, float]
    spine_heights: tuple[float, float, float]
    spine_thick: tuple[float, float, float]
    transverse_tip: tuple[float, float, float]
    transverse_root: tuple[float, float]
    transverse_end: tuple[float, float]
    pedicle: tuple[float, float]
    lamina: tuple[float, float]
    facets: tuple[float, float, float, float]


_S = VertebraShape

SHAPES: dict[str, VertebraShape] = {
    "C2": _S((43, -11), (6.5, 6.5, 5.5), (4.0, 3.6, 4.0), (27, 3, -4), (3.5, 3.5), (2.8, 2.8),
             (4.5, 5.0), (6.5, 2.6), (19.0, 5.0, 45, 0)),
    "C3": _S((37, -10), (4.2, 3.4, 2.8), (3.0, 2.2, 2.6), (25.5, 10, -4), (2.6, 5.0), (2.6, 3.0),
             (2.8, 3.6), (6.2, 2.0), (19.2, 5.0, 45, 0)),
    "C4": _S((37.5, -11), (4.2, 3.4, 2.8), (3.0, 2.2, 2.6), (26, 10.5, -4.5), (2.6, 5.0),
             (2.6, 3.0), (2.8, 3.6), (6.2, 2.0), (19.5, 5.0, 45, 0)),
    "C5": _S((39, -12), (4.2, 3.5, 3.0), (3.0, 2.3, 2.8), (26.7, 11.5, -5), (2.6, 5.0),
             (2.8, 3.0), (2.8, 3.5), (6.2, 2.0), (20.0, 5.2, 46, 0)),
    "C6": _S((46, -14), (4.6, 3.8, 3.4), (3.2, 2.4, 3.0), (28.5, 12.5, -5), (2.6, 5.0),
             (3.0, 3.2), (3.0, 3.5), (6.6, 2.2), (20.2, 5.4, 48, 0)),
    "C7": _S((55, -15), (5.6, 4.4, 5.0), (3.6, 2.8, 4.2), (34, 17, -2), (3.4, 4.8), (3.8, 4.4),
             (3.3, 3.8), (7.8, 2.7), (18.0, 7.5, 54, 4)),
    "T1": _S((52, -17), (6.4, 4.8, 5.2), (3.6, 2.7, 4.0), (37.5, 22, 3), (4.6, 5.0), (5.2, 5.0),
             (4.1, 4.8), (8.4, 2.9), (14.5, 11.5, 62, 8)),
    "T2": _S((51, -22), (6.8, 4.8, 4.8), (3.4, 2.6, 3.6), (34.5, 27, 4), (4.8, 4.8), (5.4, 5.0),
             (3.3, 5.6), (9.2, 3.1), (12.4, 12.5, 66, 12)),
    "T3": _S((50.5, -26), (6.9, 4.7, 4.2), (3.3, 2.5, 3.2), (32, 30, 5), (4.8, 4.8), (5.5, 5.2),
             (2.5, 5.8), (9.6, 3.1), (11.2, 12.8, 69, 14)),
    "T4": _S((49.5, -29), (7.0, 4.6, 4.0), (3.2, 2.4, 3.0), (31.2, 32.5, 6), (5.0, 4.8),
             (5.7, 5.3), (2.3, 6.0), (9.8, 3.2), (10.7, 12.8, 71, 15)),
    "T5": _S((49, -32), (7.0, 4.5, 3.8), (3.2, 2.4, 2.9), (31, 34.5, 7), (5.0, 4.8), (5.8, 5.4),
             (2.4, 6.0), (10.0, 3.2), (10.6, 12.8, 72, 16)),
    "T6": _S((49, -34), (7.0, 4.5, 3.8), (3.2, 2.4, 2.9), (31, 36.5, 7), (5.0, 4.8), (5.9, 5.5),
             (2.6, 6.2), (10.4, 3.2), (10.6, 12.8, 72, 16)),
    "T7": _S((49.5, -34), (7.2, 4.6, 3.9), (3.2, 2.4, 3.0), (30.5, 38, 7), (5.0, 4.8), (5.9, 5.5),
             (2.8, 6.3), (10.8, 3.3), (10.7, 12.8, 72, 16)),
    "T8": _S((50, -31), (7.4, 4.9, 4.2), (3.3, 2.5, 3.1), (30, 38.5, 7), (5.0, 4.8), (5.8, 5.4),
             (3.0, 6.5), (11.0, 3.3), (10.8, 12.6, 72, 16)),
    "T9": _S((50.5, -25), (7.8, 5.6, 5.0), (3.4, 2.6, 3.3), (29, 38, 6), (5.0, 4.8), (5.6, 5.2),
             (3.3, 7.0), (11.2, 3.4), (11.0, 12.4, 73, 14)),
    "T10": _S((51, -20), (8.2, 6.6, 6.0), (3.5, 2.7, 3.5), (27.5, 36.5, 5), (4.8, 4.6), (5.2, 5.0),
              (3.6, 7.8), (11.4, 3.5), (11.4, 12.2, 74, 12)),
    "T11": _S((52, -16), (8.8, 7.8, 7.2), (3.6, 2.8, 3.6), (24, 33, 3), (4.6, 4.6), (4.6, 4.4),
              (4.3, 8.4), (11.6, 3.6), (12.0, 12.0, 76, 8)),
    "T12": _S((54, -14), (9.4, 9.0, 8.4), (3.6, 2.9, 3.8), (22, 30, 1), (4.6, 4.6), (3.4, 3.2),
              (4.4, 8.2), (11.4, 3.6), (12.2, 12.6, 88, 22)),
    "L1": _S((59, -12), (9.8, 9.4, 9.0), (3.8, 2.9, 4.2), (35.6, 27, 2), (4.2, 3.2), (3.0, 1.6),
             (4.2, 7.4), (11.4, 3.5), (13.2, 13.0, 88, 24)),
    "L2": _S((61.5, -12), (10.0, 9.6, 9.4), (3.8, 3.0, 4.4), (38, 28, 2), (4.4, 3.2), (3.2, 1.6),
             (4.4, 7.2), (11.4, 3.5), (14.2, 13.0, 88, 28)),
    "L3": _S((63, -12), (10.0, 9.6, 9.4), (3.9, 3.0, 4.6), (42.8, 28, 2), (4.4, 3.2), (3.2, 1.6),
             (5.2, 7.0), (10.8, 3.6), (15.8, 13.2, 88, 33)),
    "L4": _S((59.5, -11), (8.6, 8.0, 7.6), (3.9, 3.1, 4.5), (39.7, 27, 4), (4.4, 3.4), (2.8, 1.7),
             (6.3, 7.0), (9.8, 3.7), (18.2, 13.4, 88, 40)),
    "L5": _S((52.5, -11), (6.6, 6.0, 5.6), (3.8, 3.2, 4.2), (46.2, 24, 6), (8.4, 6.6), (4.0, 3.2),
             (8.6, 6.6), (7.8, 3.6), (21.5, 13.4, 86, 48)),
}  # fmt: skip
"""C2 to L5. The facets of a level belong to the joint with the next level down (L5: sacrum)."""

# Panjabi 1991 and 1992 as above: width of the lower endplate, mm.
LOWER_WIDTHS: dict[str, float] = {
    "C2": 17.5, "C3": 17.2, "C4": 17.0, "C5": 19.4, "C6": 22.0, "C7": 23.4,
    "T1": 27.8, "T2": 27.4, "T3": 25.9, "T4": 26.0, "T5": 27.0, "T6": 28.2,
    "T7": 29.1, "T8": 30.5, "T9": 33.0, "T10": 35.4, "T11": 39.1, "T12": 42.1,
    "L1": 43.3, "L2": 45.5, "L3": 48.0, "L4": 49.5, "L5": 49.4,
}  # fmt: skip
