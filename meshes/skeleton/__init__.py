"""Bones and their landmarks."""
