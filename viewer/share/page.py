"""Puts the take-home page together and writes it."""

from __future__ import annotations

from html import escape
from importlib.resources import files
from pathlib import Path

from meshes.errors import PeelbackError
from meshes.export import peelback_version, write_bytes
from meshes.model import BackModel
from viewer.scene.drawn_cache import drawn_model
from viewer.share.bundle import WEB, read_note
from viewer.share.pack import packed_meshes
from viewer.share.payload import CAUTION, TITLE, TOLD_IN_FRAME, page_facts, payload_text
from viewer.state.tongue import speaks, told
from viewer.talk.scenes import Talk

FACE_BUDGET = {"preview": 320_000, "full": 420_000}
"""Triangles of both sides together: what a phone still turns fluidly."""

BYTE_LIMIT = 15_000_000


def page_html(model: BackModel, talk: Talk | None = None, notes: bool = False) -> str:
    """Return the whole page as text.

    Parameters
    ----------
    model : BackModel
    talk : Talk or None
        Scenes that travel with it.
    notes : bool
        With the speaker's notes.
    """
    meshes = packed_meshes(drawn_model(model), FACE_BUDGET[model.detail])
    facts = page_facts(model, meshes, licences(), talk, notes)
    words = {
        "version": escape(peelback_version()),
        "language": speaks()[1],
        "title": escape(told(TITLE)),
        "caution": escape(told(CAUTION)),
        "style": _asset("page.css"),
        "payload": payload_text(facts, meshes),
        # The end of a script must not stand inside one.
        "script": _asset("bundle.js").replace("</script", "<\\/script"),
    }
    page = TOLD_IN_FRAME.sub(lambda text: escape(told(text[1])), _asset("page.html"))
    for name, text in words.items():
        page = page.replace("{{" + name + "}}", text)
    return page


def write_page(model: BackModel, out: Path, talk: Talk | None = None, notes: bool = False) -> int:
    """Write the page; returns its size in bytes.

    Raises
    ------
    PeelbackError
        It would be larger than 15 MB, or the place cannot be written.
    """
    data = page_html(model, talk, notes).encode()
    if len(data) > BYTE_LIMIT:
        raise PeelbackError(
            f"the page would be {len(data) / 1e6:.1f} MB, over {BYTE_LIMIT / 1e6:g} MB; "
            "use a shorter talk"
        )
    write_bytes(out, data)
    return len(data)


def licences() -> list[str]:
    """Return the licences of what is inside the page."""
    note = read_note()
    own = told("Peelback: MIT licence, the Peelback authors.")
    return [own, f"{note['engine']} {note['version']}: {_asset('LICENSE.three.txt')}"]


def _asset(name: str) -> str:
    return (files("viewer.share") / WEB / name).read_text(encoding="utf-8")
