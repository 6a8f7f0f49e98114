"""What is inside the page's script, so that a stale bundle is noticed.

``scripts/bundle`` runs this after it made the script anew.
"""

from __future__ import annotations

import hashlib
import json
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

WEB = "web"
NOTE = "bundle.json"


def source_digest(folder: Traversable) -> str:
    """Return a digest of all that the script is made from (text, line ends as \\n)."""
    digest = hashlib.sha256()
    for file in sorted(folder.iterdir(), key=lambda file: file.name):
        if file.name.endswith((".js", ".json")):
            text = file.read_text(encoding="utf-8").replace("\r\n", "\n")
            digest.update(f"{file.name}\n{text}".encode())
    return digest.hexdigest()


def read_note() -> dict:
    """Return what was bundled: engine, version, integrity, digests of source and script."""
    return json.loads((files("viewer.share") / WEB / NOTE).read_text(encoding="utf-8"))


def write_note(folder: Path) -> dict:
    """Write the note beside the script.

    Parameters
    ----------
    folder : Path
        ``viewer/share`` of a checkout.
    """
    lock = json.loads((folder / "source" / "package-lock.json").read_text(encoding="utf-8"))
    engine = lock["packages"]["node_modules/three"]
    tool = lock["packages"]["node_modules/esbuild"]
    script = (folder / WEB / "bundle.js").read_bytes()
    note = {
        "engine": "three",
        "version": engine["version"],
        "integrity": engine["integrity"],
        "licence": engine["license"],
        "bundled_with": f"esbuild {tool['version']}",
        "source_sha256": source_digest(folder / "source"),
        "bundle_sha256": hashlib.sha256(script).hexdigest(),
    }
    (folder / WEB / NOTE).write_text(json.dumps(note, indent=1) + "\n", encoding="utf-8")
    return note


if __name__ == "__main__":
    print(write_note(Path(__file__).resolve().parent))
