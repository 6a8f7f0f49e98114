"""The left hip bone and the upper end of the femur (the sacrum belongs to the spine)."""

from __future__ import annotations

from meshes.skeleton.femur import make_femur
from meshes.skeleton.frame import SkeletonFrame
from meshes.skeleton.hip_bone import make_hip_bone
from meshes.skeleton.piece import BonePiece


def make(frame: SkeletonFrame, detail: str) -> list[BonePiece]:
    """Build the left hip bone and the upper end of the left femur.

    Parameters
    ----------
    frame : SkeletonFrame
    detail : {"preview", "full"}

    Returns
    -------
    list of BonePiece
    """
    return [make_hip_bone(frame, detail), make_femur(frame, detail)]
