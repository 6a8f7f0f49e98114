"""Makes nerves and vessels legible on paper without colour.

A nerve a millimetre thick is a hair on paper, and its yellow prints as grey as the flesh beside
it. So what is seen of a nerve is widened by a dot, made pale and edged dark; a vessel is
widened, made dark and edged pale. Colours stay, for those who print in colour.
"""

from __future__ import annotations

import numpy as np
from scipy.ndimage import binary_dilation, generate_binary_structure

NERVE = (255, 226, 96)
ARTERY = (118, 8, 14)
VEIN = (20, 34, 104)
EDGE_SHARE = 0.30
"""How much of the tone is left on the dark edge of a nerve."""
PALE_EDGE = (246, 240, 232)
WIDER_PX, EDGE_PX = 1, 1
"""By how many pixels what is seen is widened, and how wide the edge around it is."""

_CROSS = generate_binary_structure(2, 1)


def grey(pixels: np.ndarray) -> np.ndarray:
    """Return what a printer without colour makes of it, (h, w) float 0..255 (ITU-R BT.601)."""
    return np.asarray(pixels, float) @ np.array([0.299, 0.587, 0.114])


def inked(pixels: np.ndarray, nerves: np.ndarray, vessels: np.ndarray) -> np.ndarray:
    """Return a picture with its nerves pale and edged dark, its vessels dark and edged pale.

    Parameters
    ----------
    pixels : (h, w, 3) uint8
        As it goes to paper.
    nerves, vessels : (h, w) bool
        Where the picture shows them.
    """
    answer = pixels.astype(float)
    shade = grey(pixels)[..., None] / 255.0
    for mask, is_nerve in ((vessels, False), (nerves, True)):
        if not mask.any():
            continue
        wide = binary_dilation(mask, _CROSS, WIDER_PX)
        edge = binary_dilation(wide, _CROSS, EDGE_PX) & ~wide
        if is_nerve:
            answer[edge] *= EDGE_SHARE
            ink = np.broadcast_to(NERVE, pixels.shape)
            answer[wide] = (ink * (0.86 + 0.14 * shade))[wide]
        else:
            answer[edge] = PALE_EDGE
            blue = (pixels[..., 2] > pixels[..., 0])[..., None]
            ink = np.where(blue, VEIN, ARTERY)
            answer[wide] = (ink * (0.8 + 0.2 * shade))[wide]
    return np.rint(np.clip(answer, 0, 255)).astype(np.uint8)
