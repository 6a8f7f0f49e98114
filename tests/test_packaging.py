"""What the program needs is what a plain install brings."""

from __future__ import annotations

import ast
import re
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent

# Where the name that is imported differs from the name of the distribution.
IMPORTED_AS = {
    "pillow": {"PIL"},
    "pyside6-essentials": {"PySide6", "shiboken6"},
    "vtk": {"vtk", "vtkmodules"},
}


def declared() -> set[str]:
    """Top-level names that the main dependencies bring."""
    with (ROOT / "pyproject.toml").open("rb") as file:
        lines = tomllib.load(file)["project"]["dependencies"]
    names = [re.match(r"[A-Za-z0-9_.-]+", line).group().lower() for line in lines]
    return set().union(*(IMPORTED_AS.get(n, {n.replace("-", "_")}) for n in names))


def imported(path: Path) -> set[str]:
    """Top-level names that a module imports, inside functions too."""
    names = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name.split(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.level == 0:
            names.add(node.module.split(".")[0])
    return names - set(sys.stdlib_module_names) - {"meshes", "viewer"}


@pytest.mark.skipif(not (ROOT / "pyproject.toml").exists(), reason="run outside the checkout")
@pytest.mark.parametrize("package", ["meshes", "viewer"])
def test_every_import_is_a_declared_dependency(package):
    wanted = {
        name: path.relative_to(ROOT)
        for path in sorted((ROOT / package).rglob("*.py"))
        for name in imported(path)
    }
    assert {n: str(p) for n, p in wanted.items() if n not in declared()} == {}


def test_the_model_never_imports_the_window():
    for path in (ROOT / "meshes").rglob("*.py"):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        modules = {node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
        assert not {m for m in modules if m.split(".")[0] in {"viewer", "PySide6"}}, path
