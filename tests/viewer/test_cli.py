"""The command answers in facts, refuses in one line, and never shows a traceback."""

import json
import subprocess
import sys
import time

import pytest

from meshes.body import RANGES, Body
from tests.fakes import toy_model
from viewer import cli


@pytest.fixture(autouse=True)
def own_folders(tmp_path, monkeypatch):
    monkeypatch.setenv("PEELBACK_CONFIG", str(tmp_path / "config"))
    monkeypatch.setenv("PEELBACK_CACHE", str(tmp_path / "cache"))


@pytest.fixture
def toy(monkeypatch):
    """Let every verb work on the toy; keeps the bodies that were asked for."""
    asked = []

    def load_or_build(body, detail="full", progress=None):
        asked.append((body, detail))
        return toy_model()

    monkeypatch.setattr("meshes.cache.load_or_build", load_or_build)
    return asked


def _run(capsys, *words):
    code = cli.main([str(word) for word in words])
    out, err = capsys.readouterr()
    return code, out, err


def test_build_writes_model_and_facts(toy, capsys, tmp_path):
    code, out, err = _run(capsys, "build", "--out", tmp_path / "there", "--json")
    assert (code, err) == (0, "")
    assert json.loads(out)["parts"] == len(toy_model().parts)
    assert (tmp_path / "there" / "model.glb").read_bytes()[:4] == b"glTF"
    assert set(json.loads((tmp_path / "there" / "model.json").read_text())["parts"]) == set(
        toy_model().parts
    )


def test_a_refused_build_leaves_the_files_of_an_earlier_one_as_they_were(toy, capsys, tmp_path):
    _run(capsys, "build", "--out", tmp_path)
    before = {p: p.read_bytes() for p in tmp_path.iterdir() if p.is_file()}
    assert {p.name for p in before} == {"model.glb", "model.json"}
    code, out, err = _run(capsys, "build", "--out", tmp_path, "--stl", "part", "--only", "spleen")
    assert (code, out, err.count("\n")) == (2, "", 1)
    assert {p: p.read_bytes() for p in tmp_path.iterdir() if p.is_file()} == before


def test_build_writes_stl_on_request(toy, capsys, tmp_path):
    code, *_ = _run(capsys, "build", "--out", tmp_path, "--stl", "stratum")
    assert code == 0
    assert (tmp_path / "stl" / "stratum_00.stl").exists()


def test_build_writes_only_the_parts_asked_for(toy, capsys, tmp_path):
    code, out, _ = _run(
        capsys, "build", "--out", tmp_path, "--stl", "part", "--glb", "part",
        "--only", "rhomboid_major.left, scapula.right",
    )  # fmt: skip
    assert code == 0
    for form in ("stl", "glb"):
        assert {p.stem for p in (tmp_path / form).iterdir()} == {
            "rhomboid_major.left",
            "scapula.right",
        }
    assert "2 STL files" in out


def test_body_options_reach_the_body(toy, capsys, tmp_path):
    _run(
        capsys, "build", "--out", tmp_path, "--sex", "female", "--stature-mm", "1700",
        "--no-scapular-slip", "--trapezius-to-T10", "--detail", "preview",
    )  # fmt: skip
    body = Body(sex="female", stature_mm=1700, scapular_slip=False, trapezius_to_T10=True)
    assert toy == [(body, "preview")]


def test_body_options_may_stand_before_the_verb(toy, capsys, tmp_path):
    _run(capsys, "--stature-mm", "1700", "build", "--out", tmp_path)
    assert toy[0][0].stature_mm == 1700


@pytest.mark.parametrize("verb", sorted(cli.make_parser()._subparsers._group_actions[0].choices))
def test_every_verb_takes_every_number_of_the_body(verb):
    told = cli.make_parser()._subparsers._group_actions[0].choices[verb].format_help()
    for name in RANGES:
        assert f"--{name.replace('_', '-')}" in told


def test_probe_prints_the_ladder_with_the_caution(toy, capsys):
    code, out, _ = _run(capsys, "probe", "--level", "T7", "--lateral", 40, "--side", "left")
    assert code == 0
    lines = out.splitlines()
    assert "left skin" in lines[1]
    assert lines[-1].startswith("Teaching model")


def test_probe_json_gives_depths(toy, capsys):
    code, out, _ = _run(capsys, "probe", "--level", "T7", "--lateral", 40, "--json")
    told = json.loads(out)
    assert code == 0
    assert told["ladder"][0]["id"] == "skin.left"
    assert told["ladder"][0]["enter_mm"] == 0
    assert "not for needle" in told["caution"]


def test_probe_says_how_thin_a_sheet_is_published_to_be(monkeypatch, capsys):
    from dataclasses import replace

    toy = toy_model()
    sheet = replace(toy.parts["thoracolumbar_fascia_posterior.left"], drawn_thicker=True)
    model = replace(toy, parts={**toy.parts, sheet.id: sheet})
    monkeypatch.setattr("meshes.cache.load_or_build", lambda *_, **__: model)
    words = ["probe", "--level", "L3", "--lateral", 30]
    _, out, _ = _run(capsys, *words)
    published = model.catalogue[sheet.entry].thickness.for_sex(model.body.sex)
    assert f"(drawn thicker; published {published:g} mm)" in out
    told = json.loads(_run(capsys, *words, "--json")[1])
    row = next(row for row in told["ladder"] if row["id"] == sheet.id)
    assert (row["drawn_thicker"], row["published_mm"]) == (True, published)
    assert all(r["published_mm"] is None for r in told["ladder"] if r["id"] != sheet.id)


def test_cover_lists_what_lies_over_from_outside_inward(toy, capsys):
    code, out, _ = _run(capsys, "cover", "rhomboid major")
    assert code == 0
    lines = out.splitlines()
    assert lines[0].startswith("left rhomboid major:")
    names = [line.rsplit("mm  ", 1)[-1] for line in lines[2:-1]]
    assert names[0] == "left skin of the back"
    assert any("trapezius" in name for name in names)
    assert lines[-1].startswith("Teaching model")


def test_cover_answers_for_a_state_and_a_side_as_json(toy, capsys):
    code, out, _ = _run(
        capsys, "cover", "rhomboid_major", "--side", "right", "--after", "superficial_fascia",
        "--json",
    )  # fmt: skip
    told = json.loads(out)
    assert code == 0
    assert told["target"] == ["rhomboid_major.right"]
    assert {"trapezius_ascending.right"} <= {row["id"] for row in told["covers"]}
    assert not {row["id"] for row in told["covers"]} & {"skin.right", "superficial_fascia.right"}
    row = told["covers"][0]
    assert {"share", "area_cm2", "depth_mm", "thickness_mm", "stratum", "group"} <= set(row)
    assert "not for needle" in told["caution"]


def test_expose_lists_steps_in_order_with_what_to_keep(toy, capsys):
    code, out, _ = _run(capsys, "expose", "rhomboid_major.left", "--json")
    told = json.loads(out)
    assert code == 0
    assert told["reached"]
    assert [step["step"] for step in told["steps"]][-1] == "trapezius"
    assert "accessory_nerve" in told["steps"][-1]["keep"]
    code, out, _ = _run(capsys, "expose", "rhomboid_major.left", "--share", "0.5")
    assert code == 0
    assert "  1. Feel the landmarks (left)" in out
    assert "keep:" in out
    code, out, _ = _run(capsys, "expose", "skin")
    assert "in view already" in out


def test_expose_takes_nothing_away_that_is_kept(toy, capsys):
    words = ["expose", "serratus posterior superior", "--keep", "rhomboids", "--json"]
    told = json.loads(_run(capsys, *words)[1])
    assert not told["reached"]
    assert not any("rhomboid" in i for step in told["steps"] for i in step["removes"])


def test_check_tells_findings_and_published_values_and_fails_for_the_toy(toy, capsys):
    code, out, _ = _run(capsys, "check", "--json")
    told = json.loads(out)
    assert code == 1
    assert set(told) == {"findings", "published"}
    assert {"id", "what", "value", "limit", "ok"} == set(told["findings"][0])
    wanted = {"quantity", "role", "published", "spread", "model", "source", "seen"}
    assert wanted | {"within_1", "within_2"} <= set(told["published"][0])
    by_id = {finding["id"]: finding for finding in told["findings"]}
    assert by_id["closed:skin.left"]["ok"]
    assert not by_id["inventory:teres_major.left"]["ok"]


def test_check_prints_one_line_a_finding(toy, capsys):
    code, out, _ = _run(capsys, "check")
    assert code == 1
    assert any(line.startswith("FAIL inventory:teres_major.left") for line in out.splitlines())
    assert out.splitlines()[-1].endswith("failed")


def test_section_names_its_regions_and_draws_them(toy, capsys, tmp_path):
    words = ["section", "--level", "T7", "--json", "--size", "640x480"]
    code, out, _ = _run(capsys, *words, "--out", tmp_path / "cut.png")
    told = json.loads(out)
    assert code == 0
    ids = [region["id"] for region in told["regions"]]
    assert {"skin.left", "skin.right", "longissimus_thoracis.left"} <= set(ids)
    assert len(ids) == len(set(ids))
    assert (tmp_path / "cut.png").read_bytes()[1:4] == b"PNG"
    code, *_ = _run(capsys, *words, "--out", tmp_path / "cut.svg")
    assert code == 0
    assert "skin.left" in (tmp_path / "cut.svg").read_text()


def test_section_can_be_moved_tilted_and_written_as_pdf(toy, qapp, capsys, tmp_path):
    words = ["section", "--level", "T7", "--json", "--size", "640x480"]
    origins = []
    for more in ((), ("--offset", -12.5), ("--tilt", "20,-5", "--out", tmp_path / "cut.pdf")):
        code, out, _ = _run(capsys, *words, *more)
        assert code == 0
        told = json.loads(out)
        origins.append(told["origin_mm"][2])
        total = sum(region["area_cm2"] for region in told["regions"])
        assert told["total_cm2"] == pytest.approx(total, abs=0.05)
        assert "not for needle or surgical guidance" in told["caution"]
    assert origins[1] - origins[0] == pytest.approx(-12.5, abs=0.02)
    assert told["tilt_deg"] == [20.0, -5.0]
    assert (tmp_path / "cut.pdf").read_bytes().startswith(b"%PDF")


def test_plate_is_written(toy, capsys, tmp_path):
    code, out, err = _run(
        capsys, "plate", "--out", tmp_path / "p.png", "--stratum", 3, "--size", "320x400", "--json"
    )
    assert (code, err) == (0, "")
    assert "trapezius_descending.left" not in json.loads(out)["parts"]
    assert "rhomboid_major.left" in json.loads(out)["parts"]
    assert (tmp_path / "p.png").read_bytes()[1:4] == b"PNG"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["fold"], "fold"),
        (["--stature-mm", "17.5"], "1400–2050"),
        (["--stature-mm", "tall"], "tall"),
        (["--stature-mm", "nan"], "nan"),
        (["--sex", "other"], "male, female"),
        (["--detail", "fine", "check"], "preview, full"),
        (["build"], "--out"),
        (["build", "--out", "here", "--stl", "slices"], "whole, stratum, part"),
        (["build", "--out", "here", "--only", "scapula"], "needs stl or glb"),
        (["probe", "--level", "T13", "--lateral", "40"], "T13"),
        (["probe", "--level", "T7", "--lateral", "forty"], "forty"),
        (["probe", "--level", "T7", "--lateral", "40", "--side", "up"], "left or right"),
        (["cover", "romboid"], "nearest: rhomboid"),
        (["cover", "rhomboid_major", "--side", "up"], "left or right"),
        (["cover", "rhomboid_major", "--after", "lunch"], "no step 'lunch'"),
        (["cover"], "PART"),
        (["expose", "skin", "--after", "skin"], "taken away"),
        (["expose", "rhomboid_major", "--share", "80"], "up to 1"),
        (["expose", "rhomboid_major", "--share", "much"], "much"),
        (["expose", "rhomboid_major", "--keep", "xyzzy"], "xyzzy"),
        (["plate", "--out", "x.png", "--stratum", "11"], "0–10"),
        (["plate", "--out", "x.png", "--size", "wide"], "wide"),
        (["plate", "--out", "x.png", "--view", "sideways"], "sideways"),
        (["plate", "--out", "x.bmp"], "x.bmp"),
        (["plate", "--out", "x.png", "--fold", "deltoid.left"], "trapezius"),
        (["plate", "--out", "x.png", "--fold", "trapezius.left=2"], "0–1"),
        (["plate", "--out", "x.png", "--fold", "trapezius.left=half"], "half"),
        (["plate", "--out", "x.png", "--look", "bright"], "bright"),
        (["--json"], "verb"),
        (["section", "--level", "T13"], "T13"),
        (["section", "--level", "T7", "--plane", "oblique"], "oblique"),
        (["section", "--level", "T7", "--out", "cut.xlsx"], "cut.xlsx"),
        (["section", "--level", "T7", "--offset", "far"], "far"),
        (["section", "--level", "T7", "--offset", "5000"], "±1000 mm"),
        (["section", "--level", "T7", "--tilt", "30"], "30,10"),
        (["section", "--level", "T7", "--tilt", "95,0"], "-90–90"),
        (["section", "--level", "T7", "--plane", "coronal", "--tilt", "5,5"], "transverse"),
        (["share"], "--out"),
        (["share", "--out", "back.html", "--notes"], "needs a talk"),
        (["share", "--out", "back.html", "--talk", "none.talk"], "none.talk"),
        (["sheet", "--out", "lab.txt"], ".pdf"),
        (["sheet", "--out", "lab.pdf", "--paper", "A3"], "A4, Letter"),
        (["sheet", "--out", "lab.pdf", "--side", "up"], "both, left, right"),
        (["sheet", "--out", "lab.pdf", "--steps", "trapez"], "trapezius, latissimus"),
        (["sheet", "--out", "lab.pdf", "--steps", "99"], "1–21"),
        (["share", "--out", "back.pdf"], ".html"),
    ],
)
def test_bad_input_is_one_line_and_exit_2(toy, capsys, words, said):
    code, out, err = _run(capsys, *words)
    assert (code, out) == (2, "")
    assert said in err
    assert err.count("\n") == 1
    assert err.startswith("peelback: ")


def test_unwritable_place_is_refused_before_building(toy, capsys, tmp_path):
    (tmp_path / "file").write_text("")
    code, _, err = _run(capsys, "build", "--out", tmp_path / "file" / "model")
    assert code == 2
    assert "cannot write" in err
    assert toy == []


@pytest.mark.parametrize(("verb", "name"), [("share", "back.html"), ("sheet", "lab.pdf")])
def test_paper_and_page_refuse_an_unwritable_place_before_building(
    toy, capsys, tmp_path, verb, name
):
    (tmp_path / "file").write_text("")
    (tmp_path / name).mkdir()
    for place in (tmp_path / "file" / name, tmp_path / name):
        code, _, err = _run(capsys, verb, "--out", place)
        assert code == 2
        assert "cannot write" in err
        assert err.count("\n") == 1
    assert toy == []
    assert {path.name for path in tmp_path.iterdir()} <= {"file", name, "config", "cache"}


def test_no_display_is_told_with_what_to_do(monkeypatch, capsys):
    monkeypatch.setattr(sys, "platform", "linux")
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    code, _, err = _run(capsys)
    assert code == 2
    assert "no display" in err
    assert "peelback plate" in err
    assert err.count("\n") == 1


def test_unexpected_error_goes_to_the_log_and_not_to_the_screen(monkeypatch, capsys, tmp_path):
    def burst(*_):
        raise RuntimeError("a very\nodd thing")

    monkeypatch.setattr("meshes.cache.load_or_build", burst)
    code, out, err = _run(capsys, "check")
    assert (code, out) == (3, "")
    assert "a very odd thing" in err
    assert err.count("\n") == 1
    assert "Traceback" not in err
    assert "Traceback" in (tmp_path / "config" / "peelback.log").read_text()


def test_help_names_only_verbs_that_exist(capsys):
    code, out, _ = _run(capsys, "--help")
    assert code == 0
    from viewer import cli_verbs

    for verb in cli.make_parser()._subparsers._group_actions[0].choices:
        assert callable(getattr(cli_verbs, verb))
        assert verb in out


def test_version_is_printed(capsys):
    code, out, _ = _run(capsys, "--version")
    assert code == 0
    assert out.startswith("peelback ")


def test_refusal_comes_at_once():
    started = time.perf_counter()
    told = subprocess.run(
        [sys.executable, "-m", "viewer", "--stature-mm", "9"], capture_output=True, text=True
    )
    assert told.returncode == 2
    assert "Traceback" not in told.stderr
    assert time.perf_counter() - started < 2.0


def test_starting_the_command_imports_neither_qt_nor_vtk():
    told = subprocess.run(
        [
            sys.executable,
            "-c",
            "import sys, viewer.cli as c; c.make_parser();"
            "print([m for m in ('PySide6', 'vtkmodules', 'numpy', 'numba') if m in sys.modules])",
        ],
        capture_output=True,
        text=True,
        check=True,
    )
    assert told.stdout.strip() == "[]"


def _talk_file(path, *states):
    from viewer.talk.scenes import Talk, TalkScene
    from viewer.talk.talk_file import save_talk

    scenes = tuple(TalkScene(s, f"scene {k}", notes="n") for k, s in enumerate(states))
    save_talk(path, Talk("My talk", scenes), "0")
    return path


def test_talk_checks_every_scene(toy, capsys, tmp_path):
    from viewer.state.view_state import ViewState

    path = _talk_file(tmp_path / "a.talk", ViewState(), ViewState(selection=("scapula.left",)))
    code, out, _ = _run(capsys, "talk", path)
    assert code == 0
    assert out.splitlines()[-1] == "every scene holds"
    code, out, _ = _run(capsys, "talk", path, "--scene", 2, "--json")
    told = json.loads(out)
    assert (code, told["good"], len(told["scenes"])) == (0, True, 1)
    assert told["scenes"][0]["picked"] == ["scapula.left"]


def test_talk_fails_where_a_scene_does_not_hold(toy, capsys, tmp_path):
    from viewer.state.view_state import Sides, ViewState

    path = _talk_file(
        tmp_path / "a.talk",
        ViewState(peeled=Sides(11, 11)),
        ViewState(selection=("no_such_part",)),
        ViewState(selection=("scapula.left",), hidden=frozenset({"scapula.left"})),
    )
    code, out, _ = _run(capsys, "talk", path)
    assert code == 1
    for words in ("nothing is shown", "no_such_part is not in this model", "picked but not shown"):
        assert f"fault: {words}" in out or words in out
    assert out.splitlines()[-1] == "3 scenes with faults"


def test_talk_refuses_bad_input_in_one_line(toy, capsys, tmp_path):
    from viewer.state.view_state import ViewState

    good = _talk_file(tmp_path / "a.talk", ViewState())
    bad = tmp_path / "b.talk"
    bad.write_text("{")
    for words, reason in (
        ((good, "--scene", 2), "scene must lie in 1–1, got 2"),
        ((good, "--scene", "x"), "whole number"),
        ((bad,), "is broken at line 1"),
        ((tmp_path / "no.talk",), "cannot be read"),
    ):
        code, out, err = _run(capsys, "talk", *words)
        assert (code, out, len(err.splitlines())) == (2, "", 1)
        assert reason in err
    assert toy == []


def test_a_file_as_first_word_is_opened_in_the_window(capsys, tmp_path, monkeypatch):
    from viewer.state.view_state import ViewState

    opened = []
    monkeypatch.setattr(cli, "_open_window", lambda argv, body: opened.append(argv) or 0)
    path = _talk_file(tmp_path / "a.talk", ViewState())
    assert _run(capsys, path, "--stature-mm", 1700)[0] == 0
    assert opened == [[str(path), "--stature-mm", "1700"]]
    foreign = tmp_path / "c.json"
    foreign.write_text("[]")
    for wrong in (foreign, tmp_path / "missing.peelback", tmp_path / "missing.talk"):
        code, _, err = _run(capsys, wrong)
        assert (code, len(err.splitlines())) == (2, 1)
        assert wrong.name in err
    assert len(opened) == 1


def test_a_word_that_is_neither_verb_nor_file_is_still_refused(capsys):
    code, _, err = _run(capsys, "disect")
    assert code == 2
    assert "disect" in err


def test_plate_draws_a_flap_and_tells_how_true_the_fold_is(toy, capsys, tmp_path):
    words = ("plate", "--out", tmp_path / "p.png", "--stratum", 3, "--size", "320x400", "--json")
    code, out, err = _run(capsys, *words, "--fold", "trapezius.left=0.5")
    assert (code, err) == (0, "")
    (fold,) = json.loads(out)["folds"]
    assert fold["fold"] == "trapezius.left" and fold["share"] == 0.5
    assert fold["fibre_change"] <= 0.01 and fold["hinge_moved_mm"] == 0.0
    assert abs(fold["area_change"]) < 0.05
    assert "trapezius_transverse.left" in json.loads(out)["parts"]


@pytest.mark.parametrize("verb", [("sheet", "--out=a.pdf"), ("share", "--out=a.html")])
def test_an_unknown_language_is_refused_with_those_there_are(verb, capsys):
    assert cli.main([*verb, "--language=xx"]) == 2
    assert capsys.readouterr().err == "peelback: language must be one of en, de, got 'xx'\n"
