"""Bodies other than the default: every check of the geometry passes on them as well."""

import pytest

from meshes.cache import load_or_build
from meshes.questions.bodies import BODIES, QUICK
from meshes.questions.check import check_model


@pytest.mark.parametrize("name", QUICK)
def test_nothing_fails_on_another_body(name):
    findings = check_model(load_or_build(BODIES[name], "preview"))
    assert len(findings) > 8000
    assert [finding.line() for finding in findings if not finding.ok] == []


@pytest.mark.slow
@pytest.mark.parametrize("name", ["large", "small", "lean_strong", "stout_weak"])
def test_no_part_lies_deep_in_another_on_bodies_of_other_sizes(name):
    """Single attachments and hair-thin crossings still fail on these; no overlap beyond a hair."""
    findings = check_model(load_or_build(BODIES[name], "preview"))
    overlaps = {f.id: f.value for f in findings if f.check == "overlap" and not f.ok}
    assert max(overlaps.values(), default=0.0) < 0.6
    assert len([f for f in findings if not f.ok]) <= 6
