"""The page draws the surfaces that the window draws: one pattern, written in two languages."""

import re
from pathlib import Path

import pytest

from viewer import share
from viewer.scene.shading import _PATTERNS

PAGE = (Path(share.__file__).parent / "source" / "shading.js").read_text(encoding="utf-8")
DRAWN = tuple(name for name in _PATTERNS if name != "context")
# The page measures a pixel once for all patterns, and colours tendon where the window's
# vertices are coloured already: its muscle is compared from here on.
MEASURED = re.compile(r"float mmpp = [^;]*; ?")
FROM = {"muscle": "float wander"}


def statements(text: str) -> str:
    """Return a pattern without comments and line breaks, in one set of names."""
    text = re.sub(r"//.*", "", text)
    for own, one in (("VS", "V"), ("pixelMm", "mmpp"), ("surfaceV.z", "t")):
        text = text.replace(own, one)
    return MEASURED.sub("", re.sub(r"\s+", " ", text)).strip()


@pytest.mark.parametrize("name", DRAWN)
def test_page_and_window_have_the_same_pattern(name):
    found = re.search(rf'\$\{{is\("{name}"\)\}}\) \{{\n(.*?)\n    \}}', PAGE, re.DOTALL)
    assert found, name
    window, page = statements(_PATTERNS[name]), statements(found[1])
    start = FROM.get(name, "")
    assert start in window and start in page
    assert page[page.index(start) :] == window[window.index(start) :]
