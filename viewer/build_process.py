"""The other process in which a model is built; it knows nothing of windows.

The window's first second is spent on its own libraries. So the process is begun before
those are brought in, and handed over when the window asks for its model.
"""

from __future__ import annotations

import multiprocessing
import traceback
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from meshes.body import Body
    from meshes.model import Part


class BuildProcess:
    """A process that builds one body and tells how far it is.

    Parameters
    ----------
    body : Body
    detail : {"preview", "full"}
    """

    def __init__(self, body: Body, detail: str) -> None:
        self.body, self.detail = body, detail
        context = multiprocessing.get_context("spawn")
        self._receiver, sender = context.Pipe(duplex=False)
        self._child = context.Process(
            target=build_and_send, args=(sender, body, detail), daemon=True
        )
        self._child.start()
        sender.close()

    def receive(self) -> tuple:
        """Wait for the next message of :func:`build_and_send`.

        Raises
        ------
        EOFError
            The process ended.
        """
        return self._receiver.recv()

    def close(self, wait_s: float = 5.0) -> None:
        """Wait for its end after the last message."""
        self._receiver.close()
        self._child.join(wait_s)

    def stop(self) -> None:
        """End it, finished or not."""
        if self._child.is_alive():
            self._child.terminate()


_begun: list[BuildProcess] = []


def begin(body: Body, detail: str) -> None:
    """Begin building before anyone can take it, unless the model lies in the cache."""
    from meshes.cache import model_folder

    if not (model_folder(body, detail) / "index.json").exists():
        _begun.append(BuildProcess(body, detail))


def take(body: Body, detail: str) -> BuildProcess:
    """Return the process begun for this body, or a new one; others that were begun are ended."""
    found = None
    while _begun:
        process = _begun.pop()
        if found is None and (process.body, process.detail) == (body, detail):
            found = process
        else:
            process.stop()
    return found or BuildProcess(body, detail)


def one_line(error: BaseException) -> str:
    """Return the first line of what an error says, or its name."""
    words = str(error).strip().splitlines()
    return words[0] if words else type(error).__name__


def build_and_send(sender: Any, body: Body, detail: str) -> None:
    """Build a model and send its parts as they are finished (runs in the other process)."""
    try:
        from meshes.cache import load_or_build

        def report(share: float, what: str, parts: Sequence[Part]) -> None:
            sender.send(("progress", share, what, list(parts)))

        model = load_or_build(body, detail, report)
        rest = {
            "order": tuple(model.parts),
            "landmarks": dict(model.landmarks),
            "contacts": model.contacts,
            "notes": dict(model.notes),
        }
        sender.send(("done", rest))
    except BrokenPipeError:
        return
    except BaseException as error:
        sender.send(("failed", one_line(error), traceback.format_exc()))
    finally:
        sender.close()
