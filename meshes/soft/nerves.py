"""Nerves and vessels outside the canal, stage by stage from deep to superficial.

A tube is laid after the layer on which it lies and before the sheet that
covers it, so that the sheet is draped over it.
"""

from __future__ import annotations

from meshes.soft.nerves_neck import (
    lay_deep_cervical_artery,
    lay_occipital_nerves,
    lay_suboccipital,
    lay_vertebral_artery,
)
from meshes.soft.nerves_shoulder import (
    lay_dorsal_scapular,
    lay_round_scapula,
    lay_thoracodorsal,
    lay_to_trapezius,
)
from meshes.soft.nerves_skin import (
    lay_cluneal,
    lay_neck_skin,
    lay_occipital_artery,
    lay_posterior_cutaneous,
)
from meshes.soft.nerves_trunk import (
    lay_branches,
    lay_great_vessels,
    lay_intercostal,
    lay_lumbar_arteries,
    lay_posterior_rami,
    lay_sympathetic,
)
from meshes.soft.workbench import Workbench


def lay_deep(bench: Workbench) -> None:
    """Lay what lies on the bones: before any muscle."""
    lay_great_vessels(bench)
    lay_vertebral_artery(bench)
    lay_posterior_rami(bench)
    lay_lumbar_arteries(bench)
    lay_intercostal(bench)
    lay_sympathetic(bench)
    lay_suboccipital(bench)


def lay_in_deep_muscles(bench: Workbench) -> None:
    """Lay what runs in and between the deep muscles: after them, before the fascia."""
    lay_branches(bench)
    lay_deep_cervical_artery(bench)


def lay_under_rhomboids(bench: Workbench) -> None:
    """Lay the dorsal scapular bundle and the tubes round the scapula: before levator,
    rhomboids and the scapular muscles."""
    lay_dorsal_scapular(bench)
    lay_round_scapula(bench)


def lay_under_trapezius(bench: Workbench) -> None:
    """Lay what runs on the deep faces of trapezius and latissimus: before these."""
    lay_to_trapezius(bench)
    lay_thoracodorsal(bench)


def lay_cutaneous(bench: Workbench) -> None:
    """Lay what reaches the skin: after the superficial muscles, before fascia and skin."""
    lay_occipital_nerves(bench)
    lay_posterior_cutaneous(bench)
    lay_cluneal(bench)
    lay_neck_skin(bench)
    lay_occipital_artery(bench)
