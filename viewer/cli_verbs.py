"""What each verb of the command does. Facts go to stdout, everything else to stderr."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from meshes import cache
from meshes.body import Body
from meshes.errors import PeelbackError
from meshes.model import STRATUM_COUNT, BackModel, Part
from viewer import settings
from viewer.state.working_file import write_atomically

OK = 0
FAILED_CHECK = 1


def load(body: Body, detail: str) -> BackModel:
    """Return the model, telling how far the building is when someone watches."""
    _keep_log()
    watched = sys.stderr.isatty()

    def tell(share: float, what: str, parts: Sequence[Part]) -> None:
        if watched:
            print(f"\r\033[K{share:4.0%} {what}", end="", file=sys.stderr, flush=True)

    model = cache.load_or_build(body, detail, tell)
    if watched:
        print("\r\033[K", end="", file=sys.stderr, flush=True)
    return model


def build(words: argparse.Namespace, body: Body, detail: str) -> int:
    """Write model.glb and model.json, and STL and GLB files in pieces on request."""
    from meshes import export

    wanted = {form: getattr(words, form) for form in export.FORMS if getattr(words, form)}
    for form, pieces in wanted.items():
        if pieces not in export.PIECES:
            raise PeelbackError(f"{form} must be one of {', '.join(export.PIECES)}, got {pieces!r}")
    names = [name.strip() for name in (words.only or "").split(",") if name.strip()]
    if words.only is not None and not names:
        raise PeelbackError("only must name a part, a row, a group or a stratum")
    if names and not wanted:
        raise PeelbackError("only needs stl or glb, as in: --stl part --only rhomboid_major.left")
    # Find out before minutes of building whether there is a place to write to; what lies
    # there from an earlier run stays until the new files are whole.
    export.check_place(words.out / "model.json")
    model = load(body, detail)
    if names:
        export.chosen_parts(model, names)
    paths = export.write_model(model, words.out)
    for form, pieces in wanted.items():
        paths += export.write_pieces(model, words.out / form, form, pieces, names)
    facts = {
        "files": [str(path) for path in paths],
        "parts": len(model.parts),
        "triangles": sum(len(part.mesh.faces) for part in model.parts.values()),
        "detail": detail,
    }
    if _wants_json(words):
        _print_json(facts)
        return OK
    print(f"{facts['parts']} parts, {facts['triangles']:,} triangles")
    for path in paths[:2]:
        print(path)
    for form in wanted:
        count = sum(path.suffix == f".{form}" for path in paths[2:])
        print(f"{count} {form.upper()} {'file' if count == 1 else 'files'} in {words.out / form}")
    return OK


def probe(words: argparse.Namespace, body: Body, detail: str) -> int:
    """Print the ladder of parts under a point of the skin."""
    from meshes.export import part_names
    from meshes.questions.probe import CAUTION, Probe, describe, thickness_note

    model = load(body, detail)
    ladder = Probe(model).at(words.level, words.lateral, words.side)
    if _wants_json(words):
        facts: dict[str, Any] = {
            "level": words.level,
            "lateral_mm": words.lateral,
            "side": words.side,
            **describe(ladder, model),
        }
        _print_json(facts)
        return OK
    print(f"{'enters':>8} {'thick':>7} {'leaves':>8}  part (mm)")
    for rung in ladder.rungs:
        part = model.parts[rung.part_id]
        name = part_names(part, model)["english"]
        note = thickness_note(part, model)
        print(
            f"{rung.enter_mm:8.1f} {rung.thickness_mm:7.1f} {rung.leave_mm:8.1f}  {name}"
            + (f"  ({note})" if note else "")
        )
    print(CAUTION)
    return OK


def cover(words: argparse.Namespace, body: Body, detail: str) -> int:
    """Print what lies over a part, with shares of its area and depths."""
    from viewer.cli_cover import cover_facts, cover_lines, question

    asked = question(load(body, detail), words.part, words.side, words.after)
    if _wants_json(words):
        _print_json(cover_facts(asked, words.all))
    else:
        print("\n".join(cover_lines(asked, words.all)))
    return OK


def expose(words: argparse.Namespace, body: Body, detail: str) -> int:
    """Print the steps that bring a part into view."""
    from viewer.cli_cover import expose_facts, expose_lines, question

    if not 0.0 < words.share <= 1.0:
        raise PeelbackError(f"share must lie above 0 and up to 1, got {words.share:g}")
    asked = question(load(body, detail), words.part, words.side, words.after, words.keep)
    if _wants_json(words):
        _print_json(expose_facts(asked, words.share))
    else:
        print("\n".join(expose_lines(asked, words.share)))
    return OK


def check(words: argparse.Namespace, body: Body, detail: str) -> int:
    """Verify geometry and facts, one line a finding."""
    from meshes.questions.check import check_model, summary
    from meshes.questions.published import compare, compare_other_sex

    model = load(body, detail)
    findings = check_model(model)
    published = [*compare(model), *compare_other_sex(model)]
    failed = [finding for finding in findings if not finding.ok]
    if words.table:
        _write_published_table(Path(words.table), published, body, detail)
    if _wants_json(words):
        _print_json(
            {
                "findings": [finding.as_dict() for finding in findings],
                "published": [row.as_dict() for row in published],
            }
        )
    else:
        for finding in findings:
            if words.all or not finding.ok:
                print(finding.line())
        for row in published:
            print(row.line())
        for line in summary(findings):
            print(line)
        print(f"{len(findings)} findings, {len(failed)} failed")
    return FAILED_CHECK if failed else OK


def _write_published_table(path: Path, published: Sequence, body: Body, detail: str) -> None:
    from meshes.questions.published_table import published_markdown

    other = Body(sex="female" if body.sex == "male" else "male")
    title = (
        f"A {body.sex} body of {body.stature_mm:.0f} mm, {detail} detail; values of the other sex "
        f"against the bones of a {other.sex} body of {other.stature_mm:.0f} mm"
    )
    try:
        write_atomically(path, published_markdown(published, title))
    except OSError as error:
        raise PeelbackError(f"--table {path} cannot be written: {error.strerror}") from error


def plate(words: argparse.Namespace, body: Body, detail: str) -> int:
    """Draw a still picture."""
    from viewer.cli_plate import PlateOrder, draw_plate, fold_measures

    if not 0 <= words.stratum < STRATUM_COUNT:
        raise PeelbackError(f"stratum must lie in 0–{STRATUM_COUNT - 1}, got {words.stratum}")
    order = PlateOrder.checked(
        stratum=words.stratum,
        view=words.view,
        side=words.side,
        size=words.size,
        look=words.look,
        theme=words.theme,
        labels=words.labels,
        out=words.out,
        folds=words.fold,
    )
    model = load(body, detail)
    shown = draw_plate(model, order)
    if _wants_json(words):
        told: dict[str, object] = {"file": str(order.out), "parts": sorted(shown)}
        if order.folds:
            told["folds"] = fold_measures(model, order.folds, shown)
        _print_json(told)
    else:
        print(order.out)
    return OK


def section(words: argparse.Namespace, body: Body, detail: str) -> int:
    """Cut the model at a level: print the regions, and draw them on request."""
    from meshes.export import part_names
    from viewer.cli_section import SectionOrder, cut, draw_section
    from viewer.state.measuring import TEACHING_NOTE
    from viewer.state.section_plane import area_words

    order = SectionOrder.checked(
        level=words.level,
        plane=words.plane,
        offset=words.offset,
        tilt=words.tilt,
        size=words.size,
        look=words.look,
        theme=words.theme,
        labels=words.labels,
        out=words.out,
    )
    model = load(body, detail)
    plane, regions = cut(model, order)
    if order.out is not None:
        draw_section(model, order, plane, regions)
    if _wants_json(words):
        _print_json(
            {
                "level": order.level,
                "plane": order.plane,
                "offset_mm": order.offset_mm,
                "tilt_deg": list(order.tilt_deg),
                "origin_mm": [round(float(v), 2) for v in plane.origin],
                "regions": [
                    {"id": region.part_id, "area_cm2": round(region.area_cm2, 3)}
                    for region in regions
                ],
                "total_cm2": round(sum(region.area_cm2 for region in regions), 3),
                "file": None if order.out is None else str(order.out),
                "caution": TEACHING_NOTE,
            }
        )
        return OK
    for region in regions:
        name = part_names(model.parts[region.part_id], model)["english"]
        print(f"{area_words(region.area_cm2):>8} cm²  {name}")
    print(TEACHING_NOTE)
    if order.out is not None:
        print(order.out)
    return OK


def sheet(words: argparse.Namespace, body: Body, detail: str) -> int:
    """Write the lab sheet."""
    from viewer.print.sheet_order import SheetOrder

    spoken = _spoken(words.language)
    order = SheetOrder.checked(
        out=words.out,
        paper=words.paper,
        blank=words.blank,
        side=words.side,
        wanted=words.steps,
        short=words.short,
    )
    model = load(body, detail)
    from viewer.print.sheet import write_sheet
    from viewer.state.languages import spoken_in

    watched = sys.stderr.isatty()

    def tell(share: float, what: str) -> None:
        if watched:
            print(f"\r\033[K{share:4.0%} {what}", end="", file=sys.stderr, flush=True)

    with spoken_in(*spoken):
        pages = write_sheet(model, order, tell)
    if watched:
        print("\r\033[K", end="", file=sys.stderr, flush=True)
    if _wants_json(words):
        _print_json(
            {
                "file": str(order.out),
                "pages": pages,
                "paper": order.paper,
                "language": spoken[0],
                "steps": [step.id for step in order.steps],
            }
        )
    else:
        print(f"{order.out}, {pages} pages")
    return OK


def share(words: argparse.Namespace, body: Body, detail: str) -> int:
    """Write the take-home page."""
    from viewer.share.order import ShareOrder
    from viewer.share.page import write_page
    from viewer.state.languages import spoken_in

    spoken = _spoken(words.language)
    order = ShareOrder.checked(out=words.out, talk=words.talk, notes=words.notes)
    model = load(body, detail)
    with spoken_in(*spoken):
        size = write_page(model, order.out, order.talk, order.notes)
    if _wants_json(words):
        _print_json({"file": str(order.out), "bytes": size, "language": spoken[0]})
    else:
        print(f"{order.out}, {size / 1e6:.1f} MB")
    return OK


def talk(words: argparse.Namespace, body: Body, detail: str) -> int:
    """Check a talk file, scene by scene."""
    from viewer import cli_talk

    made = cli_talk.opened(words.file, words.scene)
    found = cli_talk.reports(made, load(body, detail), words.scene)
    if _wants_json(words):
        _print_json(cli_talk.as_facts(made, found))
    else:
        print("\n".join(cli_talk.as_words(made, found, notes=words.scene is not None)))
    return FAILED_CHECK if any(report.faults for report in found) else OK


def _spoken(language: str) -> tuple[str, str]:
    """Return language and spelling: as asked for, else as the settings and the computer say."""
    from viewer.state.languages import checked_language, language_of

    chosen, problem = settings.load_settings()
    if problem:
        print(f"peelback: {problem}", file=sys.stderr)
    if language == "system":
        from PySide6.QtCore import QLocale

        return language_of(chosen.language, QLocale.system().name()), chosen.spelling
    return checked_language(language), chosen.spelling


def _wants_json(words: argparse.Namespace) -> bool:
    return getattr(words, "json", False)


def _print_json(facts: dict[str, Any]) -> None:
    print(json.dumps(facts, ensure_ascii=False, indent=1))


def _keep_log() -> None:
    """Send the model's own messages to the log file as well."""
    import logging

    if settings.start_log() is not None:
        logger = logging.getLogger("meshes")
        logger.handlers = list(settings.LOG.handlers)
        logger.setLevel(logging.INFO)
