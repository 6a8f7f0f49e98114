"""The left half of the bony thorax with the median sternum."""

from __future__ import annotations

from meshes.skeleton.cartilage import make_cartilages
from meshes.skeleton.frame import SkeletonFrame
from meshes.skeleton.piece import BonePiece
from meshes.skeleton.rib import make_rib
from meshes.skeleton.sternum import make_sternum
from meshes.skeleton.thorax_shape import RIBS


def make(frame: SkeletonFrame, detail: str) -> list[BonePiece]:
    """Build ribs 1 to 12, costal cartilages 1 to 10 (left) and the sternum.

    Parameters
    ----------
    frame : SkeletonFrame
    detail : {"preview", "full"}

    Returns
    -------
    list of BonePiece
    """
    ribs = {number: make_rib(frame, number, detail) for number in RIBS}
    sternum = make_sternum(frame, detail)
    pieces = [form.piece for form in ribs.values()]
    pieces.append(sternum.piece)
    pieces.extend(make_cartilages(frame, ribs, sternum, detail))
    return pieces
