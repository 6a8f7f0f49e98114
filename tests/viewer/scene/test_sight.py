"""What a reader can tell at the end of a leader."""

import numpy as np
import trimesh

from viewer.scene import anchors
from viewer.scene.camera import Pose
from viewer.scene.raycast import RayTarget
from viewer.scene.sight import Sight

SIZE = (200, 200)
MIDDLE = (100.0, 100.0)


def _box(extents, centre):
    box = trimesh.creation.box(extents)
    box.apply_translation(centre)
    return np.asarray(box.vertices), np.asarray(box.faces)


def _sight(shells) -> Sight:
    """Look from behind, 1 mm a pixel."""
    pose = Pose(focus=(0.0, 0.0, 0.0), scale_mm=100.0)
    target = RayTarget(shells)
    points = {name: shell[0] for name, shell in shells.items()}
    return Sight(
        pose, SIZE, np.full(SIZE, np.inf), points, dict.fromkeys(shells, 1.0), target.first_hit
    )


DEEP = _box((120, 2, 120), (0, -3, 0))
COVERS = {"left": _box((58, 2, 120), (30.5, 0, 0)), "right": _box((58, 2, 120), (-30.5, 0, 0))}
NERVE = _box((2, 2, 120), (0, 4, 0))


def test_a_sheet_seen_through_a_slit_does_not_stand_out():
    sight = _sight({"deep": DEEP, **COVERS})
    assert sight.shows("deep", *MIDDLE, sight.points)
    assert not sight.stands_out("deep", *MIDDLE, sight.points, 6.0)


def test_the_same_sheet_stands_out_where_it_lies_open():
    assert _sight({"deep": DEEP}).stands_out("deep", *MIDDLE, ("deep",), 6.0)


def test_a_nerve_stands_out_however_narrow_it_is():
    sight = _sight({"deep": DEEP, **COVERS, "nerve": NERVE})
    assert sight.stands_out("nerve", *MIDDLE, sight.points, 6.0)


def test_room_is_asked_only_of_what_is_little_seen():
    seen = np.stack(np.meshgrid(np.linspace(60, 140, 9), np.linspace(60, 140, 9)), -1)
    seen = np.column_stack([seen.reshape(-1, 2), np.zeros(81)])
    depth = np.zeros(SIZE)
    asked = []

    def roomy(name, x, y):
        asked.append(name)
        return False

    def found(points):
        parts = {"part": points}
        return anchors.anchors(
            parts, {"part": "Part"}, lambda p: (p[:, :2], p[:, 2]), depth, 1.0,
            {"part": 5000.0}, roomy=roomy,
        )  # fmt: skip

    assert [a.id for a in found(seen)] == ["part"]
    assert not asked
    # The rest lies a millimetre under the picture: near enough to be seen by the wide measure.
    under = seen + [0, 0, 1.0]
    assert found(np.concatenate([seen[:9], under])) == []
    assert set(asked) == {"part"}
