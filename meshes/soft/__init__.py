"""Muscles, fasciae, nerves, vessels and skin, laid on the skeleton."""
