"""Pictures: the window's own scene against a plotter with one ``add_mesh`` a part.

The plotter is left as the library sets it up: light kit, multisampling. Both draw the same
model off screen at 1280 by 800 with whatever OpenGL there is.
"""

from __future__ import annotations

import statistics
from collections.abc import Iterator
from typing import Any

from scripts.benching.table import Row
from scripts.benching.timing import median, times

SIZE = (1280, 800)
SEEN_THROUGH = "trapezius"


def polydata(part: Any) -> Any:
    """Return a part's mesh for VTK."""
    import pyvista

    return pyvista.make_tri_mesh(part.vertices, part.faces)


class Ours:
    """The window's scene with the search for hidden parts done, as it is after a rest."""

    def __init__(self, model: Any) -> None:
        from viewer.scene.scene import Scene

        self.model = model
        self.scene = Scene(size=SIZE)
        self.scene.set_model(model)

    def show(self, stratum: int, search: bool = True, without: frozenset = frozenset(), **fields):
        """Show a state of the dissection; ``without`` hides parts."""
        from viewer.scene.scene import PartLook
        from viewer.state.view_state import Sides, ViewState
        from viewer.state.visibility import opacities

        state = ViewState(peeled=Sides(stratum, stratum), hidden=without, **fields)
        self.scene.apply({i: PartLook(o) for i, o in opacities(self.model, state).items()})
        if search and self.scene.to_search() is not None:
            found = self.scene.seen_search()
            while not found.step():
                pass
            self.scene.take_seen(found)

    def turn(self, moving: bool = True) -> None:
        """Turn by a degree and draw."""
        self.scene.orbit(1.0, 0.0)
        self.scene.render(moving)


class Plain:
    """A plotter with one actor a part."""

    def __init__(self, model: Any) -> None:
        import pyvista

        self.model = model
        self.plotter = pyvista.Plotter(off_screen=True, window_size=list(SIZE))
        self.actors = {i: self.plotter.add_mesh(polydata(p)) for i, p in model.parts.items()}
        self.plotter.view_xz(negative=True)
        self.plotter.show(auto_close=False)

    def turn(self) -> None:
        """Turn by a degree and draw."""
        self.plotter.camera.Azimuth(1.0)
        self.plotter.render()

    def peel(self, stratum: int) -> None:
        """Show what lies at a stratum or deeper."""
        for part_id, actor in self.actors.items():
            actor.SetVisibility(self.model.parts[part_id].stratum >= stratum)


def moving(model: Any, plain: bool = True) -> Iterator[Row]:
    """Orbit, peel, hide, see-through and the resting picture."""
    ours = Ours(model)
    theirs = Plain(model) if plain else None
    through = frozenset(i for i, p in model.parts.items() if p.group == SEEN_THROUGH)
    try:
        for stratum, words, bar in (
            (0, "whole body", 1000 / 30),
            (2, "skin and fat off", 1000 / 30),
            (6, "to the deep muscles", 1000 / 30),
        ):
            ours.show(stratum)
            ours.scene.set_view("posterior")
            mine = median(ours.turn, 20)
            other = None
            if theirs is not None:
                theirs.peel(stratum)
                other = median(theirs.turn, 2)
            yield Row(f"orbit, {words}, a frame", "ms", mine, other, round(bar, 1))
            still = statistics.median(times(lambda: ours.turn(False), 3))
            yield Row(f"resting picture, {words}", "ms", still, other, 600)

        ours.show(2)
        solid = median(ours.turn, 15)
        ours.show(2, see_through=through)
        mine = median(ours.turn, 15)
        still = statistics.median(times(lambda: ours.turn(False), 3))
        other = None
        if theirs is not None:
            theirs.peel(2)
            theirs.plotter.enable_depth_peeling(4)
            for part_id in through:
                theirs.actors[part_id].GetProperty().SetOpacity(0.25)
            other = median(theirs.turn, 2)
            theirs.plotter.disable_depth_peeling()
            for part_id in through:
                theirs.actors[part_id].GetProperty().SetOpacity(1.0)
        note = f"{mine / solid:.2f} times a frame without"
        yield Row("orbit, trapezius seen through", "ms", mine, other, round(2 * solid, 1), note)
        yield Row("resting picture, trapezius seen through", "ms", still, other, 600, "4 peels")

        at = [2]

        def peel() -> None:
            at[0] = 5 - at[0]
            ours.show(at[0], search=False)
            ours.scene.render(True)

        def peel_plain() -> None:
            at[0] = 5 - at[0]
            theirs.peel(at[0])
            theirs.plotter.render()

        other = median(peel_plain, 2) if theirs is not None else None
        yield Row("peel a stratum and repaint", "ms", median(peel, 10), other, 50)

        one = [frozenset(), frozenset(["latissimus_dorsi.left"])]

        def hide() -> None:
            one.reverse()
            ours.show(2, search=False, without=one[0])
            ours.scene.render(True)

        def hide_plain() -> None:
            one.reverse()
            theirs.actors["latissimus_dorsi.left"].SetVisibility(not one[0])
            theirs.plotter.render()

        if theirs is not None:
            theirs.peel(2)
        other = median(hide_plain, 2) if theirs is not None else None
        yield Row("hide a part and repaint", "ms", median(hide, 10), other, 50)
    finally:
        ours.scene.finalize()
        if theirs is not None:
            theirs.plotter.close()
