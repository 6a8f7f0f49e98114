"""Thin Qt views on state."""
