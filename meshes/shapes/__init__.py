"""Implicit solids, contouring and remeshing; knows no anatomy."""
