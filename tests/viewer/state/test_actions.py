"""The table from which menus, keys and help are made."""

from viewer.state.actions import ACTIONS, MENUS, by_menu, help_lines, key_clashes


def test_no_key_does_two_things():
    assert key_clashes() == []


def test_ids_are_unique_and_every_action_has_a_menu():
    assert len({a.id for a in ACTIONS}) == len(ACTIONS)
    assert all(a.menu in MENUS for a in ACTIONS)
    assert all(by_menu().values())


def test_the_help_sheet_lists_every_action():
    assert sum(len(rows) for _, rows in help_lines()) == len(ACTIONS)
