"""Names of parts as they are shown: none of them twice."""

from __future__ import annotations

import pytest

from meshes.export import part_names
from viewer.state.captions import part_titles


@pytest.mark.parametrize("latin", [False, True])
def test_no_two_parts_bear_the_same_name(preview_model, latin):
    # Eleven external intercostals a side, and ligaments of one kind, are told apart by level.
    titles = part_titles(preview_model, latin=latin)
    told_twice = {name for name in titles.values() if list(titles.values()).count(name) > 1}
    assert not told_twice
    names = [part_names(part, preview_model)["english"] for part in preview_model.parts.values()]
    assert len(set(names)) == len(names)


def test_what_lies_between_two_levels_is_named_by_both(preview_model):
    titles = part_titles(preview_model)
    assert titles["external_intercostal_5.left"] == "External intercostal of space 5, left"
    assert titles["ligamentum_flavum_T6_T7"] == "Ligamentum flavum between T6 and T7"
