"""Where results are kept, and how to open them whatever has become of the file."""

from __future__ import annotations

import tempfile
from pathlib import Path

from viewer.settings import state_folder
from viewer.state.tongue import told
from viewer.study.results import Results, ResultsError

DEFAULT_LEARNER = "Me"


def results_path() -> Path:
    """Return the results file of this machine's user."""
    return state_folder() / "results.db"


def open_results(path: Path | None = None) -> tuple[Results, str]:
    """Open the results, or a passing file where they cannot be kept.

    Returns
    -------
    results : Results
        With one learner at least.
    message : str
        What the user must be told, "" when all is well.
    """
    path = path or results_path()
    try:
        results = Results(path)
        message = results.message
        if not results.learners():
            results.add_learner(DEFAULT_LEARNER)
    except ResultsError as error:
        passing = Path(tempfile.mkdtemp(prefix="peelback-")) / "results.db"
        results = Results(passing)
        results.add_learner(DEFAULT_LEARNER)
        message = told(
            "Results cannot be kept: {why}. What is answered now is lost at the end.", why=error
        )
    return results, message
