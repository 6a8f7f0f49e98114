"""The window's commands, a module for each menu.

The table in ``viewer.state.actions`` names them; the window is made of them.
"""
