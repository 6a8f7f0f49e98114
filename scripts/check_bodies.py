"""Builds the twelve bodies and runs every check on each; see scripts/check_bodies.

Prints one row a body: how many parts, findings and failing findings it has, the failing
checks, the worst overlap and the time taken. The exit status is 1 when anything fails.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections import Counter

from meshes.build import DETAILS
from meshes.cache import load_or_build
from meshes.errors import PeelbackError
from meshes.questions.bodies import BODIES
from meshes.questions.check import Finding, check_model

_ROW = "{:<13}{:>6}{:>10}{:>7}{:>10}{:>9}  {}"


def row(name: str, parts: int, findings: list[Finding], seconds: float) -> str:
    """Return a body's line of the table."""
    failed = [finding for finding in findings if not finding.ok]
    overlaps = [f.value for f in findings if f.check == "overlap" and f.value is not None]
    kinds = Counter(finding.check for finding in failed)
    return _ROW.format(
        name,
        parts,
        len(findings),
        len(failed),
        f"{max(overlaps, default=0.0):.2f}",
        f"{seconds:.0f}",
        ", ".join(f"{count} {kind}" for kind, count in kinds.most_common()) or "none",
    )


def main(words: list[str] | None = None) -> int:
    """Check them all, or those named."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--detail", choices=DETAILS, default="preview")
    parser.add_argument("--only", metavar="NAME", nargs="+", help=f"some of: {', '.join(BODIES)}")
    parser.add_argument(
        "--show", type=int, default=0, metavar="N", help="print the first N failing findings"
    )
    chosen = parser.parse_args(words)
    names = chosen.only or list(BODIES)
    for name in names:
        if name not in BODIES:
            print(f"no body {name!r}; allowed: {', '.join(BODIES)}", file=sys.stderr)
            return 2
    print(
        _ROW.format("body", "parts", "findings", "failed", "worst mm", "seconds", "failing checks")
    )
    wrong = 0
    for name in names:
        started = time.perf_counter()
        try:
            model = load_or_build(BODIES[name], chosen.detail)
        except (PeelbackError, ValueError, KeyError, IndexError) as problem:
            print(f"{name:<13}could not be built: {type(problem).__name__}: {problem}", flush=True)
            wrong += 1
            continue
        findings = check_model(model)
        print(row(name, len(model.parts), findings, time.perf_counter() - started), flush=True)
        failed = sorted((f for f in findings if not f.ok), key=lambda f: -(f.value or 0.0))
        for finding in failed[: chosen.show]:
            print(f"    {finding.line()}")
        wrong += bool(failed)
    print(f"{len(names) - wrong} of {len(names)} bodies pass at {chosen.detail} detail")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
