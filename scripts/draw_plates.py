"""Draws the fourteen plates that show the whole model; see scripts/plates."""

from __future__ import annotations

import argparse
import sys
import time
from pathlib import Path

from meshes.cache import load_or_build
from meshes.errors import PeelbackError
from meshes.model import STRATUM_COUNT
from viewer.cli_body import add_body_options, body_from
from viewer.cli_plate import PlateOrder, draw_plates
from viewer.cli_section import SectionOrder, cut, draw_section

SIZE = "1400x1800"


def orders(folder: Path) -> list[PlateOrder]:
    """Return the plates: every stratum from behind, one oblique, one lateral."""
    common = {"size": SIZE, "look": "by_kind", "theme": "light", "labels": True}
    plates = [
        PlateOrder.checked(
            stratum=n, view="posterior", side="both",
            out=folder / f"stratum_{n:02d}_posterior.png", **common,
        )
        for n in range(STRATUM_COUNT)
    ]  # fmt: skip
    plates.append(
        PlateOrder.checked(
            stratum=2, view="oblique_left", side="left", out=folder / "oblique.png", **common
        )
    )
    plates.append(
        PlateOrder.checked(
            stratum=3, view="lateral_left", side="both", out=folder / "lateral.png", **common
        )
    )
    return plates


def main() -> int:
    """Draw them all."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path, nargs="?", default=Path("plates"))
    parser.add_argument("--detail", choices=("preview", "full"), default="full")
    add_body_options(parser)
    words = parser.parse_args()
    try:
        body = body_from(words)
        print("Computing or loading the model …", file=sys.stderr)
        model = load_or_build(body, words.detail)
        started = time.perf_counter()
        plates = orders(words.folder)
        draw_plates(model, plates)
        order = SectionOrder.checked(
            level="L3", plane="transverse", size="1600x1200", look="by_kind", theme="light",
            labels=True, out=words.folder / "section_L3.png",
        )  # fmt: skip
        draw_section(model, order, *cut(model, order))
    except PeelbackError as refusal:
        print(f"plates: {refusal}", file=sys.stderr)
        return 2
    print(f"{len(plates) + 1} plates in {words.folder} ({time.perf_counter() - started:.1f} s)")
    return 0


if __name__ == "__main__":
    sys.exit(main())
