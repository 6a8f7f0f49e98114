"""The page holds everything it needs and nothing that reaches outside."""

import base64
import json
import re
import zlib

import pytest

from meshes.catalogue.plan import cautions, part_ids_of, steps
from meshes.errors import PeelbackError
from tests.fakes import toy_model
from viewer.share import page as page_module
from viewer.share.bundle import read_note, source_digest
from viewer.share.page import page_html, write_page
from viewer.share.payload import scene_facts
from viewer.state.view_state import Camera, Sides, ViewState
from viewer.talk.scenes import TalkScene


@pytest.fixture(scope="module")
def html() -> str:
    return page_html(toy_model())


@pytest.fixture(scope="module")
def facts(html) -> dict:
    text = re.search(r'<script id="payload" type="text/plain">([^<]*)</script>', html)[1]
    data = zlib.decompress(base64.b64decode(text))
    length = int.from_bytes(data[:4], "little")
    return json.loads(data[4 : 4 + length])


def test_page_names_no_place_outside_itself(html):
    outside = re.findall(r"""(?:src|href)\s*=\s*["'](?!#|data:)[^"']+""", html.split("<script>")[0])
    assert outside == []
    assert "default-src 'none'" in html
    assert "{{" not in html.split("<script")[0]


def test_bundle_is_made_from_the_sources_that_stand_beside_it():
    from importlib.resources import files

    note = read_note()
    assert note["source_sha256"] == source_digest(files("viewer.share") / "source")
    import hashlib

    script = (files("viewer.share") / "web" / "bundle.js").read_bytes()
    assert note["bundle_sha256"] == hashlib.sha256(script).hexdigest()


def test_engine_comes_with_version_integrity_and_licence(html):
    note = read_note()
    assert re.fullmatch(r"\d+\.\d+\.\d+", note["version"])
    assert note["integrity"].startswith("sha512-")
    assert any("MIT" in text and "three" in text for text in page_module.licences())


def test_every_part_has_a_mesh_a_colour_and_a_caption(facts):
    model = toy_model()
    assert [part["id"] for part in facts["parts"]] == list(model.parts)
    for part in facts["parts"]:
        assert 0 <= part["mesh"] < len(facts["meshes"])
        assert len(part["colours"][0]) == 3
        assert facts["captions"][part["caption"]]["lines"] or part["kind"]
    trapezius = next(p for p in facts["parts"] if p["id"] == "trapezius_descending.left")
    caption = facts["captions"][trapezius["caption"]]
    assert caption["latin"] == "pars descendens musculi trapezii"
    assert "accessory nerve" in dict(caption["lines"])["Nerve"]
    assert facts["parts"][trapezius["twin"]]["id"] == "trapezius_descending.right"


def test_steps_take_off_what_the_plan_says_side_by_side(facts):
    ids = [part["id"] for part in facts["parts"]]
    assert [step["id"] for step in facts["steps"]] == [step.id for step in steps()]
    for step, record in zip(facts["steps"], steps()):
        named = {i for name in record.removes for i in part_ids_of(name, toy_model().catalogue)}
        for side, other in (("left", ".right"), ("right", ".left")):
            taken = {ids[n] for n in step["removes"][side]}
            assert not any(i.endswith(other) for i in taken)
            assert named & set(ids) - {i for i in named if i.endswith(other)} <= taken
        assert step["do"] == record.do


def test_cautions_begin_with_what_the_model_is_not_for(facts):
    assert facts["cautions"][0]["text"].startswith("Made for teaching only")
    assert len(facts["cautions"]) == len(cautions())


def test_scene_keeps_what_was_done_and_where_one_looks_from():
    state = ViewState(
        peeled=Sides(2, 3),
        hidden=frozenset({"deltoid.left", "not_here"}),
        selection=("scapula.left",),
        camera=Camera((3000.0, 0.0, 100.0), (0.0, 0.0, 100.0), (0.0, 0.0, 1.0), 250.0),
    )
    number = {part_id: n for n, part_id in enumerate(toy_model().parts)}
    kept = TalkScene(state, "A scene", "my own notes", "a line")
    scene = scene_facts(kept, toy_model())
    assert scene["peeled"] == {"left": 2, "right": 3}
    assert scene["hidden"] == [number["deltoid.left"]]
    assert scene["selected"] == number["scapula.left"]
    assert scene["pose"]["azimuth"] == pytest.approx(90)
    assert scene["pose"]["scale"] == 250


def test_speakers_notes_stay_at_home_unless_asked_for():
    kept = TalkScene(ViewState(), "A scene", "my own notes", "a line")
    assert scene_facts(kept, toy_model())["notes"] == ""
    assert scene_facts(kept, toy_model(), notes=True)["notes"] == "my own notes"


def test_page_over_the_limit_is_not_written(tmp_path, monkeypatch):
    monkeypatch.setattr(page_module, "BYTE_LIMIT", 1000)
    with pytest.raises(PeelbackError, match="MB"):
        write_page(toy_model(), tmp_path / "back.html")
    assert list(tmp_path.iterdir()) == []
