"""All commands of the window as data: menus, keys and the help sheet come from this table."""

from __future__ import annotations

from dataclasses import dataclass

from viewer.state.table_view import TABLE_PLACES
from viewer.state.view_state import LOOKS, VIEWS


@dataclass(frozen=True, slots=True)
class Action:
    """One thing the window can do.

    Attributes
    ----------
    id : str
    title : str
        As it stands in menu and help sheet.
    key : str
        In Qt's portable notation ("Ctrl+Z"), "" for none; "," for several is written " | ".
    menu : str
        Menu it belongs to.
    callback : str
        Method of the window, called with ``argument`` if that is not None
        and, for checkable ones, with the new state.
    argument : object
    checkable : bool
    radio : str
        Name of the set of which only one is on.
    tip : str
        A sentence for the status line and screen readers.
    separator : bool
        A line above it in the menu.
    """

    id: str
    title: str
    key: str
    menu: str
    callback: str
    argument: object = None
    checkable: bool = False
    radio: str = ""
    tip: str = ""
    separator: bool = False

    @property
    def keys(self) -> tuple[str, ...]:
        """All its keys."""
        return tuple(k for k in self.key.split(" | ") if k)


MENUS = ("File", "Edit", "Peel", "Part", "View", "Tools", "Talk", "Study", "Help")

ACTIONS: tuple[Action, ...] = (
    # File
    Action("open", "Open state…", "Ctrl+O", "File", "open_state", tip="Open a saved working state"),
    Action("save", "Save state", "Ctrl+S", "File", "save_state", tip="Save view, peel and pins"),
    Action("save_as", "Save state as…", "Ctrl+Shift+S", "File", "save_state_as"),
    Action(
        "copy_picture",
        "Copy picture",
        "Ctrl+C",
        "File",
        "copy_picture",
        separator=True,
        tip="Put the picture, as it is seen, on the clipboard",
    ),
    Action(
        "save_picture",
        "Save picture…",
        "Ctrl+E",
        "File",
        "save_picture",
        tip="Save the picture at a chosen size",
    ),
    Action(
        "lab_sheet",
        "Lab sheet…",
        "Ctrl+Shift+L",
        "File",
        "make_sheet",
        separator=True,
        tip="A PDF for the table: cautions, plan, steps with pictures, muscles",
    ),
    Action(
        "take_home",
        "Take-home page…",
        "Ctrl+Shift+H",
        "File",
        "make_page",
        tip="One file for a browser, which needs no network",
    ),
    Action(
        "export_meshes",
        "Export meshes…",
        "Ctrl+Shift+E",
        "File",
        "export_meshes",
        tip="STL or GLB files by part, stratum or whole",
    ),
    Action("settings", "Settings…", "Ctrl+,", "File", "open_settings", separator=True),
    Action("quit", "Quit", "Ctrl+Q", "File", "close", separator=True),
    # Edit
    Action("undo", "Undo", "Ctrl+Z", "Edit", "undo"),
    Action("redo", "Redo", "Ctrl+Shift+Z | Ctrl+Y", "Edit", "redo"),
    Action(
        "find",
        "Find a part",
        "Ctrl+F | /",
        "Edit",
        "focus_search",
        separator=True,
        tip="Type any name; Enter goes there",
    ),
    Action("deselect", "Let go of the selection", "Esc", "Edit", "let_go"),
    # Peel
    Action("deeper", "One stratum deeper", "]", "Peel", "peel_deeper"),
    Action("shallower", "One stratum back", "[", "Peel", "peel_shallower"),
    Action("whole", "Lay all back", "Shift+Home", "Peel", "peel_none"),
    Action(
        "all_back",
        "Bring all back",
        "A",
        "Peel",
        "bring_all_back",
        tip="Nothing hidden, nothing peeled; one undo returns",
    ),
    Action("step_next", "Do the next step", "N", "Peel", "next_step", separator=True),
    Action("step_back", "Lay the last step back", "B", "Peel", "previous_step"),
    Action(
        "steps_fold",
        "Steps fold muscles back",
        "",
        "Peel",
        "set_steps_fold",
        checkable=True,
        tip="Off: steps take away what they would fold",
    ),
    Action(
        "work_both",
        "Work on both sides",
        "Alt+B",
        "Peel",
        "work_on",
        "both",
        True,
        "work",
        separator=True,
    ),
    Action("work_left", "Work on the left", "Alt+L", "Peel", "work_on", "left", True, "work"),
    Action("work_right", "Work on the right", "Alt+R", "Peel", "work_on", "right", True, "work"),
    # Part
    Action("hide", "Hide", "H", "Part", "hide_selected"),
    Action(
        "show_part",
        "Put back",
        "S",
        "Part",
        "show_selected",
        tip="Lay the selected part back, however it was taken off",
    ),
    Action("alone", "Show alone", "O", "Part", "alone_selected", checkable=True),
    Action("see_through", "See through", "T", "Part", "see_through_selected", checkable=True),
    Action(
        "peek",
        "Peek through what covers",
        "P",
        "Part",
        "set_peek",
        checkable=True,
        tip="Looks through without changing what was done",
    ),
    Action(
        "into_view",
        "Bring into view",
        "D",
        "Part",
        "bring_into_view",
        separator=True,
        tip="Do the fewest steps of the plan that uncover it; one undo takes them back",
    ),
    Action(
        "covers",
        "What lies over it",
        "W",
        "Part",
        "toggle_covers",
        checkable=True,
        tip="Tint and list what lies over it, with shares and depths; Esc ends it",
    ),
    Action(
        "fold",
        "Fold back, or lay in place",
        "J",
        "Part",
        "toggle_fold_selected",
        separator=True,
        tip="Cut the muscle's one end as the plan says and lay it back on its hinge",
    ),
    Action("fold_more", "Fold a quarter further", "Shift+J", "Part", "fold_more", 0.25),
    Action("fold_less", "Fold a quarter less", "Ctrl+J", "Part", "fold_more", -0.25),
    Action("fly", "Go to the part", "F", "Part", "fly_to_selected", separator=True),
    Action("other_side", "Select its twin", "X", "Part", "select_twin"),
    Action("select_group", "Select its group", "G", "Part", "select_group"),
    Action(
        "pin",
        "Pin a note…",
        "Ctrl+P",
        "Part",
        "pin_selected",
        separator=True,
        tip="Stick a note to the selected part",
    ),
    # View
    *(
        Action(f"view_{name}", title, str(n), "View", "go_to_view", name)
        for n, (name, title) in enumerate(VIEWS.items(), start=1)
    ),
    Action(
        "return_view",
        "Return to the fixed view",
        "Home | R",
        "View",
        "return_to_view",
        tip="Back to the last fixed view",
    ),
    Action(
        "orbit_free",
        "Free orbit",
        "Ctrl+Shift+O",
        "View",
        "set_free_orbit",
        checkable=True,
        tip="Off: a gentle orbit about the fixed view",
    ),
    *(
        Action(
            f"stand_{name or 'upright'}",
            f"Donor: {title[:1].lower()}{title[1:]}",
            f"Ctrl+{n}",
            "View",
            "stand_at",
            name,
            True,
            "stand",
            tip="Where I stand: the donor prone on a table, with the upright picture beside",
            separator=n == 1,
        )
        for n, (name, title) in enumerate(TABLE_PLACES.items(), start=1)
    ),
    Action("turn_left", "Turn left", "Left", "View", "turn", (-10, 0), separator=True),
    Action("turn_right", "Turn right", "Right", "View", "turn", (10, 0)),
    Action("turn_up", "Turn up", "Up", "View", "turn", (0, 10)),
    Action("turn_down", "Turn down", "Down", "View", "turn", (0, -10)),
    Action("pan_left", "Move the picture left", "Shift+Left", "View", "pan", (-40, 0)),
    Action("pan_right", "Move the picture right", "Shift+Right", "View", "pan", (40, 0)),
    Action("pan_up", "Move the picture up", "Shift+Up", "View", "pan", (0, -40)),
    Action("pan_down", "Move the picture down", "Shift+Down", "View", "pan", (0, 40)),
    Action("zoom_in", "Closer", "+ | =", "View", "zoom", 1.2),
    Action("zoom_out", "Further", "-", "View", "zoom", 1 / 1.2),
    Action(
        "side_both",
        "Show both sides",
        "Ctrl+B",
        "View",
        "show_side",
        "both",
        True,
        "side",
        separator=True,
    ),
    Action(
        "side_left", "Show the left side only", "Ctrl+L", "View", "show_side", "left", True, "side"
    ),
    Action(
        "side_right",
        "Show the right side only",
        "Ctrl+R",
        "View",
        "show_side",
        "right",
        True,
        "side",
    ),
    Action("compare", "Dissected beside whole", "C", "View", "set_compare", checkable=True),
    Action(
        "neighbours",
        "Neighbours at the edge",
        "E",
        "View",
        "set_neighbours",
        checkable=True,
        tip="Deltoid, gluteal and other muscles that do not belong to the back",
    ),
    *(
        Action(
            f"look_{name}",
            f"Look: {title.lower()}",
            f"Alt+{n}",
            "View",
            "set_look",
            name,
            True,
            "look",
            separator=n == 1,
        )
        for n, (name, title) in enumerate(LOOKS.items(), start=1)
    ),
    Action("look_next", "Next look", "K", "View", "next_look"),
    Action("dark", "Dark window", "Ctrl+D", "View", "set_dark", checkable=True, separator=True),
    Action(
        "latin_first",
        "Latin names first",
        "Ctrl+Shift+N",
        "View",
        "set_latin_first",
        checkable=True,
        tip="Tree, labels, captions and search name parts in Latin",
    ),
    Action("font_larger", "Larger letters", "Ctrl++ | Ctrl+=", "View", "larger_letters"),
    Action("font_smaller", "Smaller letters", "Ctrl+-", "View", "smaller_letters"),
    Action("font_normal", "Letters at 100 %", "Ctrl+0", "View", "normal_letters"),
    Action(
        "tree", "Parts and caption", "F9", "View", "show_side_panel", checkable=True, separator=True
    ),
    Action("full_screen", "Full screen", "F11", "View", "set_full_screen", checkable=True),
    # Tools
    Action("labels", "Labels", "L", "Tools", "set_labels", checkable=True),
    Action(
        "blank_labels",
        "Numbers in place of names",
        "Shift+L",
        "Tools",
        "set_blank_labels",
        checkable=True,
    ),
    Action("labels_more", "More labels", ".", "Tools", "change_density", 0.1),
    Action("labels_fewer", "Fewer labels", ",", "Tools", "change_density", -0.1),
    Action(
        "measure",
        "Measure",
        "M",
        "Tools",
        "set_measuring",
        checkable=True,
        separator=True,
        tip="Click two points; teaching only, not for needle or surgical guidance",
    ),
    Action(
        "measure_surface",
        "Measure along the surface",
        "Shift+M",
        "Tools",
        "set_measure_surface",
        checkable=True,
    ),
    Action("measure_clear", "Clear the measure", "Backspace", "Tools", "clear_measure"),
    Action(
        "probe_at",
        "Probe at…",
        "I",
        "Tools",
        "open_probe",
        tip="The layers under a place given by level, distance and side; teaching only",
    ),
    Action(
        "surface",
        "Landmarks on the skin",
        "U",
        "Tools",
        "set_surface_marks",
        checkable=True,
        separator=True,
        tip="Palpable landmarks and levels",
    ),
    Action("pins", "Pins and notes…", "Ctrl+Shift+P", "Tools", "open_pins"),
    Action(
        "section",
        "Section",
        "V",
        "Tools",
        "set_section_on",
        checkable=True,
        separator=True,
        tip="Cut the model flat, with named areas beside it",
    ),
    Action("section_up", "Section one level up", "Alt+Up", "Tools", "step_section", 1),
    Action("section_down", "Section one level down", "Alt+Down", "Tools", "step_section", -1),
    Action("section_plane", "Section in the next plane", "Shift+V", "Tools", "next_section_plane"),
    Action("section_flip", "Keep the other half", "Alt+V", "Tools", "flip_section"),
    Action(
        "section_whole",
        "Cut the whole, not what is left",
        "Alt+W",
        "Tools",
        "set_section_whole",
        checkable=True,
        tip="Shows in the section what the dissection took off, too",
    ),
    Action("section_save", "Save the section…", "Alt+S", "Tools", "save_section"),
    Action(
        "rehearse",
        "Rehearse a cut",
        "Q",
        "Tools",
        "set_rehearsing",
        checkable=True,
        separator=True,
        tip="Draw a line on skin or muscle: how deep, how near, what it would lose",
    ),
    Action("rehearse_point", "Add the place under the pointer", "Shift+Q", "Tools", "add_cut_here"),
    Action("rehearse_again", "Try the cut again", "Alt+Q", "Tools", "cut_again"),
    Action(
        "mistakes",
        "What goes wrong",
        "Shift+W",
        "Tools",
        "open_mistakes",
        checkable=True,
        tip="The commonest mistakes of the present step, shown on the model",
    ),
    # Talk
    Action("talk_panel", "Scenes of the talk", "F6", "Talk", "show_talk_panel", checkable=True),
    Action(
        "keep_scene",
        "Keep this view as a scene",
        "F7",
        "Talk",
        "keep_scene",
        tip="A scene after the chosen one, with all that is peeled, picked and seen",
    ),
    Action("update_scene", "Give the scene this view", "Shift+F7", "Talk", "update_scene"),
    Action("talk_new", "New talk", "", "Talk", "new_talk", separator=True),
    Action("talk_open", "Open talk…", "Ctrl+Alt+O", "Talk", "open_talk"),
    Action("talk_save", "Save talk", "Ctrl+Alt+S", "Talk", "save_talk"),
    Action("talk_save_as", "Save talk as…", "", "Talk", "save_talk_as"),
    Action("talk_sample", "Open the sample talk", "", "Talk", "open_lab_talk"),
    Action(
        "present",
        "Present…",
        "F5",
        "Talk",
        "present",
        separator=True,
        tip="Cautions and room check first, then full screen",
    ),
    Action("present_here", "Present from this scene…", "Shift+F5", "Talk", "present_from_here"),
    Action(
        "review_both",
        "Rapid review, both sides",
        "F8",
        "Talk",
        "rapid_review",
        "both",
        tip="Skin to cord in about a minute, each part named; Space pauses",
        separator=True,
    ),
    Action("review_left", "Rapid review, left", "Shift+F8", "Talk", "rapid_review", "left"),
    Action("review_right", "Rapid review, right", "Ctrl+F8", "Talk", "rapid_review", "right"),
    # Study
    Action(
        "tag_test",
        "Tag test…",
        "F4",
        "Study",
        "start_tag_test",
        tip="A pin on a structure in a peeled back: name it, its nerve, what lies deep to it",
    ),
    Action(
        "results",
        "Results…",
        "Shift+F4",
        "Study",
        "open_results",
        tip="What is weak, what comes next, who learns; nothing leaves this computer",
    ),
    Action(
        "lab",
        "Take-home lab…",
        "Ctrl+F4",
        "Study",
        "start_lab",
        tip="Every step of the plan by oneself: draw each cut, see what it would lose, fold",
    ),
    Action(
        "my_note",
        "My note on the part…",
        "Y",
        "Study",
        "note_selected",
        separator=True,
        tip="A note of your own, shown in the caption of the part",
    ),
    Action("my_notes", "My notes…", "Shift+Y", "Study", "open_notes"),
    # Help
    Action("help", "Keys and how to begin", "F1 | ?", "Help", "open_help"),
    Action("tour", "Guided tour of the back lab", "", "Help", "guided_tour"),
    Action("cautions", "Cautions", "", "Help", "open_cautions"),
    Action("log", "Where the log file is", "", "Help", "open_log"),
    Action("about", "About Peelback", "", "Help", "open_about", separator=True),
)


def by_menu() -> dict[str, list[Action]]:
    """Return the actions of each menu, in order."""
    return {menu: [a for a in ACTIONS if a.menu == menu] for menu in MENUS}


def key_clashes() -> list[tuple[str, str, str]]:
    """Return (key, action, other action) for every key that is given twice."""
    seen: dict[str, str] = {}
    clashes = []
    for action in ACTIONS:
        for key in action.keys:
            if key in seen:
                clashes.append((key, seen[key], action.id))
            seen[key] = action.id
    return clashes


def help_lines() -> list[tuple[str, list[tuple[str, str]]]]:
    """Return (menu, [(keys, title)]) for the help sheet; actions without a key have "—"."""
    return [
        (menu, [(" or ".join(a.keys) or "—", a.title.rstrip("…")) for a in actions])
        for menu, actions in by_menu().items()
    ]
