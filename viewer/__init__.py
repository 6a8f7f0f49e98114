"""Peelback's desktop program."""
