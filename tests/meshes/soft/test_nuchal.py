"""The nuchal fascia lies where the second fascia of the nape lies."""

import numpy as np

from meshes.drape.distance import MeshIndex


def test_nuchal_fascia_lies_on_splenius_and_under_trapezius(preview_model):
    parts = preview_model.parts
    fascia = parts["nuchal_fascia.left"].mesh
    splenius = parts["splenius_capitis.left"].mesh
    trapezius = MeshIndex.of(parts["trapezius_descending.left"].mesh)
    back = np.array([0.0, 1.0, 0.0])
    places = fascia.vertices[fascia.vertex_normals @ back > 0.7]
    _, nearest, _ = trapezius.signed_distance(places, 15.0)
    found = np.isfinite(nearest).all(1)
    assert found.sum() > 20
    assert np.median((nearest[found] - places[found]) @ back) > 0
    _, below, _ = MeshIndex.of(splenius).signed_distance(places, 15.0)
    found = np.isfinite(below).all(1)
    assert np.median((below[found] - places[found]) @ back) < 0


def test_nuchal_fascia_is_a_film_of_stratum_five_drawn_thicker(preview_model):
    part = preview_model.parts["nuchal_fascia.left"]
    assert part.stratum == 5
    assert part.drawn_thicker
