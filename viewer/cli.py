"""The command ``peelback``: with no words the window, otherwise one answer.

Nothing heavy is imported here: ``peelback --help`` and every refusal of bad
input answer at once.
"""

from __future__ import annotations

import argparse
import importlib
import os
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path
from typing import NoReturn

from meshes.body import Body
from meshes.errors import PeelbackError
from viewer.cli_body import add_body_options, body_from

OK = 0
FAILED_CHECK = 1
BAD_INPUT = 2
UNEXPECTED = 3

DETAILS = ("preview", "full")


class _Parser(argparse.ArgumentParser):
    """A parser whose errors are one line."""

    def error(self, message: str) -> NoReturn:
        raise PeelbackError(f"{message} (see {self.prog} --help)")


def make_parser() -> argparse.ArgumentParser:
    """Return the parser of the whole command."""
    parser = _Parser(
        prog="peelback",
        description="A computed human back, peeled from skin to bone. With no verb: the window.",
        epilog="peelback FILE opens a saved state or talk in the window. Teaching model: never "
        "for needle or surgical guidance.",
    )
    parser.add_argument("--version", action="store_true", help="print the version and stop")
    _add_common(parser)
    verbs = parser.add_subparsers(dest="verb", metavar="VERB", parser_class=_Parser)

    build = verbs.add_parser("build", help="write model.glb and model.json")
    build.add_argument("--out", type=Path, required=True, metavar="DIR", help="folder to write to")
    build.add_argument(
        "--stl",
        metavar="whole|stratum|part",
        help="write STL files as well, closed and in LPS millimetres",
    )
    build.add_argument(
        "--glb",
        metavar="whole|stratum|part",
        help="write GLB files by stratum or part as well, in glTF metres",
    )
    build.add_argument(
        "--only",
        metavar="NAME,NAME",
        help="STL and GLB of these only: part ids, rows, groups, stratum_3",
    )

    check = verbs.add_parser("check", help="verify geometry and facts; exit 1 when any fails")
    check.add_argument("--all", action="store_true", help="print good findings too")
    check.add_argument(
        "--table", metavar="FILE", help="write the comparison with published values (Markdown)"
    )

    probe = verbs.add_parser("probe", help="the parts along the inward ray, with depths in mm")
    probe.add_argument("--level", required=True, metavar="T7", help="vertebral level")
    probe.add_argument(
        "--lateral", required=True, type=_millimetres, metavar="MM", help="from the median plane"
    )
    probe.add_argument("--side", default="left", metavar="left|right", help="default: left")

    cover = verbs.add_parser("cover", help="what lies over a part, with shares and depths")
    _add_question(cover)
    cover.add_argument("--all", action="store_true", help="also what hides less than 1 %% of it")

    expose = verbs.add_parser("expose", help="the steps that bring a part into view")
    _add_question(expose)
    expose.add_argument(
        "--share",
        type=_number,
        default=0.8,
        metavar="0.8",
        help="share of its area wanted in view, above 0 to 1; default: 0.8",
    )
    expose.add_argument(
        "--keep",
        action="append",
        default=[],
        metavar="PART",
        help="a part that no step may take away; may be given again",
    )

    plate = verbs.add_parser("plate", help="a still picture with labels")
    plate.add_argument("--out", type=Path, required=True, metavar="X.png", help="picture to write")
    plate.add_argument(
        "--stratum", type=int, default=0, metavar="N", help="peeled down to stratum N (0–10)"
    )
    plate.add_argument("--view", default="posterior", metavar="NAME", help="default: posterior")
    plate.add_argument(
        "--side", default="both", metavar="both|left|right", help="the side that is peeled"
    )
    plate.add_argument("--size", default="1600x2000", metavar="WxH", help="pixels")
    plate.add_argument(
        "--look", default="by_kind", metavar="NAME", help="by_kind, as_fixed or high_contrast"
    )
    plate.add_argument("--theme", default="light", metavar="light|dark")
    plate.add_argument("--labels", action=argparse.BooleanOptionalAction, default=True)
    plate.add_argument(
        "--fold",
        action="append",
        default=[],
        metavar="FOLD.SIDE[=SHARE]",
        help="lay a flap back (trapezius.left, rhomboids.right=0.5); may be given again, in order",
    )

    section = verbs.add_parser("section", help="closed, named regions of a flat cut")
    section.add_argument("--level", required=True, metavar="T7", help="vertebral level")
    section.add_argument(
        "--plane",
        default="transverse",
        metavar="transverse|sagittal|coronal",
        help="through the body of the level; default: transverse",
    )
    section.add_argument(
        "--offset",
        type=_millimetres,
        default=0.0,
        metavar="MM",
        help="move the plane: up, to the left or back; default: 0",
    )
    section.add_argument(
        "--tilt",
        metavar="NOD,LEAN",
        help="tilt a transverse plane by degrees, back and forth and to the side",
    )
    section.add_argument("--out", type=Path, metavar="X.png|X.svg|X.pdf", help="picture to write")
    section.add_argument("--size", default="1600x1200", metavar="WxH", help="pixels")
    section.add_argument(
        "--look", default="by_kind", metavar="NAME", help="by_kind, as_fixed or high_contrast"
    )
    section.add_argument("--theme", default="light", metavar="light|dark")
    section.add_argument("--labels", action=argparse.BooleanOptionalAction, default=True)

    sheet = verbs.add_parser("sheet", help="a lab sheet as PDF: cautions, plan, steps, muscles")
    sheet.add_argument("--out", type=Path, required=True, metavar="X.pdf", help="sheet to write")
    sheet.add_argument("--paper", default="A4", metavar="A4|Letter", help="default: A4")
    sheet.add_argument(
        "--blank", action="store_true", help="numbers to write beside, answers on the last page"
    )
    sheet.add_argument(
        "--short", action="store_true", help="two to four pages, one row a step, for a sleeve"
    )
    sheet.add_argument(
        "--side", default="both", metavar="both|left|right", help="the side that is worked on"
    )
    sheet.add_argument(
        "--steps", default="", metavar="LIST", help="such as trapezius,7,9-11; default: all"
    )
    _add_language(sheet)

    share = verbs.add_parser("share", help="one file for a browser that needs no network")
    share.add_argument("--out", type=Path, required=True, metavar="X.html", help="page to write")
    share.add_argument(
        "--talk", type=Path, metavar="FILE", help="a talk whose scenes travel with the page"
    )
    share.add_argument("--notes", action="store_true", help="with the speaker's notes")
    _add_language(share)

    talk = verbs.add_parser("talk", help="check a talk file; exit 1 when a scene does not hold")
    talk.add_argument("file", type=Path, metavar="FILE", help="talk saved by the window")
    talk.add_argument("--scene", type=_whole_number, metavar="N", help="one scene, with its notes")

    for verb in verbs.choices.values():
        _add_common(verb)
    return parser


def _add_language(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--language",
        default="system",
        metavar="en|de",
        help="default: that of the settings, or of the computer",
    )


def _add_question(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("part", metavar="PART", help="id or name, with left or right if wanted")
    parser.add_argument(
        "--side", default="left", metavar="left|right", help="for a name without one; default: left"
    )
    parser.add_argument(
        "--after", metavar="STEP", help="as it is after a step of the plan and all that it needs"
    )


def _add_common(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--detail", default=argparse.SUPPRESS, metavar="|".join(DETAILS), help="default: full"
    )
    parser.add_argument(
        "--json", action="store_true", default=argparse.SUPPRESS, help="facts as JSON on stdout"
    )
    add_body_options(parser)


def _number(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"must be a number, got {text!r}") from None


def _millimetres(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"must be a number of mm, got {text!r}") from None


def _whole_number(text: str) -> int:
    try:
        return int(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"must be a whole number, got {text!r}") from None


def split_file(argv: Sequence[str]) -> tuple[list[str], Path | None]:
    """Return the words without a file to open, and that file.

    A first word that is no verb and no option names a file when there is one,
    or when it looks like one (an ending, a folder).
    """
    words = list(argv)
    if not words or words[0].startswith("-"):
        return words, None
    verbs = make_parser()._subparsers._group_actions[0].choices
    first = Path(words[0])
    if words[0] in verbs or not (first.exists() or first.suffix or len(first.parts) > 1):
        return words, None
    return words[1:], first


def _check_file(path: Path) -> None:
    """Refuse a file that is neither state nor talk, before a window opens."""
    from viewer.state.working_file import WorkingFileError, open_working_file
    from viewer.talk.talk_file import SUFFIX, TalkFileError, open_talk

    if path.suffix == SUFFIX:
        open_talk(path)
        return
    try:
        open_working_file(path)
    except WorkingFileError as refusal:
        if "is not a working state" not in str(refusal):
            raise
        try:
            open_talk(path)
        except TalkFileError as second:
            if "is not a talk" not in str(second):
                raise
            raise PeelbackError(
                f"{path.name} is neither a working state nor a talk of Peelback"
            ) from None


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command.

    Parameters
    ----------
    argv : sequence of str or None
        Words after ``peelback``; None takes those of the process.

    Returns
    -------
    int
        0 well, 1 a check failed, 2 bad input, 3 an unexpected error (in the log file).
    """
    argv = list(sys.argv[1:] if argv is None else argv)
    _give_kernels_a_place()
    try:
        rest, file = split_file(argv)
        words = make_parser().parse_args(rest)
        if words.version:
            from meshes.export import peelback_version

            print(f"peelback {peelback_version()}")
            return OK
        body = body_from(words)
        detail = getattr(words, "detail", "full")
        if detail not in DETAILS:
            raise PeelbackError(f"detail must be one of {', '.join(DETAILS)}, got {detail!r}")
        if file is not None and words.verb is None:
            _check_file(file)
        if words.verb is None:
            if getattr(words, "json", False):
                raise PeelbackError("--json needs a verb, such as: peelback check --json")
            return _open_window(argv, body)
        verbs = importlib.import_module("viewer.cli_verbs")
        return getattr(verbs, words.verb)(words, body, detail)
    except PeelbackError as refusal:
        print(f"peelback: {refusal}", file=sys.stderr)
        return BAD_INPUT
    except SystemExit as stop:  # argparse after --help
        return int(stop.code or 0)
    except KeyboardInterrupt:
        print("peelback: stopped", file=sys.stderr)
        return 130
    except BrokenPipeError:
        # The reader of our output went away (as with `| head`): nothing to report.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return OK
    except Exception as problem:
        return _report_unexpected(problem)


def has_display() -> bool:
    """Return whether a window can be opened: always so on Windows and macOS."""
    if sys.platform in ("win32", "darwin"):
        return True
    if os.environ.get("QT_QPA_PLATFORM", "").startswith(("offscreen", "minimal", "vnc")):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def _open_window(argv: Sequence[str], body: Body) -> int:
    if not has_display():
        raise PeelbackError(
            "there is no display, so the window cannot be opened; write pictures instead with: "
            "peelback plate --stratum 2 --out back.png"
        )
    app = importlib.import_module("viewer.app")
    return app.main(list(argv))


def _give_kernels_a_place() -> None:
    """Let compiled kernels be kept somewhere writable.

    numba keeps them beside the source where it may and otherwise in the home
    folder, and stops where it may do neither (a read-only installation run by
    an account without a home); then a temporary folder serves.
    """
    if "NUMBA_CACHE_DIR" in os.environ:
        return
    beside = Path(__file__).resolve().parent.parent / "meshes"
    if os.access(beside, os.W_OK):
        return
    import platformdirs

    for folder in (
        platformdirs.user_cache_path("peelback") / "kernels",
        Path(tempfile.gettempdir())
        / f"peelback-kernels-{os.getuid() if os.name == 'posix' else ''}",
    ):
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError:
            continue
        if os.access(folder, os.W_OK):
            os.environ["NUMBA_CACHE_DIR"] = str(folder)
            return


def _report_unexpected(problem: Exception) -> int:
    """Put the traceback into the log file and one line on stderr."""
    from viewer import settings

    place = None
    try:
        place = settings.start_log()
        settings.LOG.error("unexpected error", exc_info=problem)
    except Exception as second:  # the log must never hide the first problem
        print(f"peelback: (no log: {second})", file=sys.stderr)
    what = " ".join(f"{type(problem).__name__}: {problem}".split())
    if isinstance(problem, MemoryError):
        what = "there is too little memory; try --detail preview"
    where = f" (details in {place})" if place else ""
    print(f"peelback: something went wrong: {what}{where}", file=sys.stderr)
    return UNEXPECTED


if __name__ == "__main__":
    sys.exit(main())
