"""Tables of facts about the back, each with its source, as typed records.

The tables are TOML files beside this module; ``load_catalogue`` reads and
checks them once. Nothing here knows geometry: attachments are named by part
ids and landmark ids, never by coordinates.
"""

from meshes.catalogue.loader import load_catalogue
from meshes.catalogue.records import (
    BEYOND,
    AttachmentRule,
    Bone,
    CanalPart,
    Catalogue,
    Citation,
    Entry,
    Fascia,
    FascicleRule,
    Group,
    Landmark,
    Ligament,
    Muscle,
    Nerve,
    Skin,
    Space,
    Thickness,
    Vessel,
)

__all__ = [
    "BEYOND",
    "AttachmentRule",
    "Bone",
    "CanalPart",
    "Catalogue",
    "Citation",
    "Entry",
    "Fascia",
    "FascicleRule",
    "Group",
    "Landmark",
    "Ligament",
    "Muscle",
    "Nerve",
    "Skin",
    "Space",
    "Thickness",
    "Vessel",
    "load_catalogue",
]
