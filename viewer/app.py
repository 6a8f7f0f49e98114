"""Starting the window."""

from __future__ import annotations

import sys
from collections.abc import Sequence


def main(argv: Sequence[str] | None = None) -> int:
    """Open the window and stay until it is closed.

    Parameters
    ----------
    argv : sequence of str, optional
        Words after ``peelback``: a file to open, body parameters and ``--detail``.

    Returns
    -------
    int
        0 when the window was closed in the usual way.
    """
    from viewer.build_process import begin
    from viewer.cli import make_parser, split_file
    from viewer.cli_body import body_from
    from viewer.settings import LOG, load_settings, start_log

    rest, file = split_file(list(sys.argv[1:] if argv is None else argv))
    words = make_parser().parse_args(rest)
    body = body_from(words)
    start_log()
    settings, message = load_settings(language=_language_of_computer)
    detail = getattr(words, "detail", settings.detail)
    # A model that must be built is under way while the window's libraries are brought in.
    begin(body, detail)
    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication

    from viewer.milestones import reached
    from viewer.window import MainWindow

    app = QApplication.instance() or QApplication(["peelback"])
    app.setApplicationName("Peelback")
    app.setStyle("Fusion")
    window = MainWindow(body, detail, settings)
    window.tell_later(message)
    sys.excepthook = _make_hook(window)
    window.show()
    LOG.info("window open")
    QTimer.singleShot(0, window, lambda: reached("window"))
    window.begin(reopen=file is None)
    if file is not None:
        QTimer.singleShot(0, window, lambda: window.open_any_file(file))
    QTimer.singleShot(0, window, window.offer_recovered_talk)
    QTimer.singleShot(300, window, window.show_first_cautions)
    code = app.exec()
    window.shut_down()
    return code


def _language_of_computer() -> str:
    from PySide6.QtCore import QLocale

    from viewer.state.languages import language_of

    return language_of("system", QLocale.system().name())


def _make_hook(window: object):
    """Log what went wrong and say so in the window, instead of a traceback on a terminal."""
    from viewer.settings import LOG, log_path
    from viewer.state.tongue import told

    def hook(kind: type, error: BaseException, trace: object) -> None:
        LOG.error("unexpected", exc_info=(kind, error, trace))
        if issubclass(kind, KeyboardInterrupt):
            window.close()
            return
        words = told(
            "Something went wrong: {what}. It is in the log, {path}.", what=error, path=log_path()
        )
        if window.presenting is not None:
            window.presenting.warn(words)
        window.say(words, 0)

    return hook
