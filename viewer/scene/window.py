"""Making a render window that works with a display, without one, and on software GL."""

from __future__ import annotations

import os
import sys

import vtkmodules.vtkRenderingOpenGL2
from vtkmodules.vtkRenderingCore import vtkRenderWindow


class NoGraphicsError(RuntimeError):
    """No usable OpenGL was found."""


def offscreen_window(size: tuple[int, int] = (1280, 800)) -> vtkRenderWindow:
    """Return a window that draws into memory.

    Without a display VTK's factory first tries X and complains; EGL is asked
    for directly there.
    """
    backend = vtkmodules.vtkRenderingOpenGL2
    headless = sys.platform.startswith("linux") and not os.environ.get("DISPLAY")
    if headless and hasattr(backend, "vtkEGLRenderWindow"):
        window = backend.vtkEGLRenderWindow()
    else:
        window = vtkRenderWindow()
    window.SetOffScreenRendering(1)
    window.SetShowWindow(False)
    set_up(window)
    window.SetSize(*size)
    return window


def set_up(window) -> None:
    """Set what depth peeling needs: an alpha channel and no multisampling."""
    window.SetMultiSamples(0)
    window.SetAlphaBitPlanes(1)
    window.SetNumberOfLayers(3)


def check_graphics(window) -> None:
    """Raise NoGraphicsError with one sentence when the window can't draw."""
    if not window.SupportsOpenGL():
        message = window.GetOpenGLSupportMessage() or "no reason given"
        raise NoGraphicsError(
            f"No usable OpenGL 3.2 was found ({message.strip()}); install a graphics driver or "
            "Mesa's software renderer"
        )
