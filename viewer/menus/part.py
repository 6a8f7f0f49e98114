"""The window's commands for picked parts."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from viewer.state import commands
from viewer.state.captions import title_of_several
from viewer.state.search import Named
from viewer.state.tongue import told
from viewer.state.visibility import taken_off, visible_parts


class PartMenu:
    """What the Part menu, the caption, the tree and the search call."""

    def _selection_words(self) -> str:
        return title_of_several(self.state.selection, self._titles)

    def hide_selected(self) -> None:
        """Hide what is picked."""
        if self.state.selection:
            words = self._selection_words()
            self.do(commands.hide(self.state.selection, words))
            self.say(
                told("Hidden: {names}. The strip above the model brings it back.", names=words)
            )

    def show_selected(self) -> None:
        """Bring what is picked into view."""
        if self.state.selection:
            self.do(commands.show(self.state.selection, self.model, self._selection_words()))

    def _show_or_hide(self, ids: Iterable[str], wanted: bool) -> None:
        ids = list(ids)
        words = title_of_several(ids, self._titles)
        if wanted:
            self.do(commands.show(ids, self.model, words))
        else:
            self.do(commands.hide(ids, words))
        self.tree.show_visible(visible_parts(self.model, self.state, self._neighbours))

    def alone_selected(self, on: bool = True) -> None:
        """Show what is picked alone, or all again."""
        ids = self.state.selection or tuple(self.state.alone)
        if ids:
            self.do(commands.toggle_alone(ids, self._selection_words()))

    def see_through_selected(self, on: bool = True) -> None:
        """Make what is picked see-through, or solid again."""
        if self.state.selection:
            self.do(commands.toggle_see_through(self.state.selection, self._selection_words()))

    def set_peek(self, on: bool) -> None:
        """Look through what covers the selection."""
        self.do(commands.set_peek(on))

    def select_twin(self) -> None:
        """Pick the same parts on the other side."""
        from meshes.model import other_side

        self.do(commands.select([other_side(i) for i in self.state.selection]))

    def select_group(self) -> None:
        """Pick all parts of the picked part's group, on its side."""
        part = self.model.parts.get(self.state.selected or "")
        if part is None:
            return
        if not part.group:
            self.say(told("{title} belongs to no group.", title=self._titles[part.id]))
            return
        ids = [
            p.id for p in self.model.parts.values() if p.group == part.group and p.side == part.side
        ]
        self.do(commands.select(ids))

    def let_go(self) -> None:
        """Stop measuring, else let go of what is picked."""
        if self._measuring:
            self.set_measuring(False)
        elif self.stop_playing():
            pass
        elif self.state.covers_of:
            self.ask_what_covers(False)
        elif self.state.peek:
            self.set_peek(False)
        elif self.state.selection:
            self.do(commands.select(()))
        elif self.state.alone:
            self.do(commands.restore("alone"))

    def focus_search(self) -> None:
        """Go to the search field."""
        if not self.settings.side_panel:
            self.show_side_panel(True)
        self.search.begin()

    def go_to_named(self, named: Named) -> None:
        """Pick what was searched for and fly there; say it when it is not in view."""
        self.do(commands.select(named.ids))
        self.fly_to(named.ids)
        hidden = [
            i
            for i in named.ids
            if i in self.model.parts and taken_off(self.model.parts[i], self.state)
        ]
        state = self.state
        covered = any(
            self.model.parts[i].stratum > min(state.peeled)
            for i in named.ids
            if i in self.model.parts
        )
        if hidden:
            self.say(
                told(
                    "{title} is not in view: S puts it back, P shows it through.", title=named.title
                ),
                0,
            )
        elif covered:
            self.say(
                told(
                    "{title} may be covered: D brings it into view, W says what lies over it.",
                    title=named.title,
                ),
                0,
            )
        self.stage.setFocus()

    def fly_to(self, ids: Iterable[str]) -> None:
        """Let the camera go to parts."""
        ids = [i for i in ids if i in self.model.parts]
        if not ids or self.scene_widget is None:
            return
        self._note_camera()
        scene = self.scene_widget.scene
        animate, scene.animate = scene.animate, False
        start = scene.camera()
        # At the table one stays where one stands.
        scene.fly_to(ids, keep_direction=bool(self.state.table))
        camera, view = self._present_camera(), scene.camera().get("view", self.state.view)
        title = (
            self._titles.get(ids[0], ids[0])
            if len(ids) == 1
            else told("{count} parts", count=len(ids))
        )
        scene.animate = animate
        if animate:
            # Start again from where one was, and let the flight bring the picture there.
            scene.set_camera(start)
            scene.fly_to(ids, keep_direction=bool(self.state.table))
        self._flying = True
        try:
            command = commands.fly(camera, title)
            self.session.do(
                replace(command, change=lambda s: replace(command.change(s), view=view))
            )
        finally:
            self._flying = False
        self._tell_markers()
        self.scene_widget.refresh()

    def fly_to_selected(self) -> None:
        """Let the camera go to what is picked."""
        self.fly_to(self.state.selection)
