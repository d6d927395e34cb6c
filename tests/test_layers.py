"""Imports point inward, and the inner packages run without Qt."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent / "keyapp"

MAY_IMPORT = {
    "errors": set(),
    "folders": set(),
    "model": {"errors"},
    "engine": {"model", "errors"},
    "keyfile": {"model", "errors"},
    "checker": {"keyfile", "engine", "pictures", "model", "errors"},
    "pictures": {"model", "errors"},
    "wording": {"engine", "model", "errors"},
    "work": {"engine", "model", "errors"},
    "sheets": {"wording", "engine", "pictures", "model", "errors"},
    "notes": {"work", "model", "errors"},
    "plots": {"pictures"},
    "trial": {"work", "engine", "plots", "model", "errors"},
    "measure": {"engine", "plots", "model", "errors"},
    "proof": {"wording", "work", "engine", "model", "errors"},
    "learn": {"engine", "model", "errors"},
    "bench": {"keyfile", "engine", "plots", "model", "errors"},
    "browse": {"wording", "engine", "model", "errors"},
    "gui": {
        "browse", "notes", "sheets", "learn", "wording", "work", "keyfile", "engine", "pictures", "model", "errors",
        "folders",
    },
    "cli": {
        "browse", "notes", "sheets", "bench", "trial", "measure", "proof", "learn", "wording",
        "work", "checker", "keyfile", "pictures",
        "engine", "model", "errors", "folders",
    },
}
OUTSIDE = {
    "model": set(),
    "errors": set(),
    "engine": {"numpy", "networkx"},
    "keyfile": {"yaml", "platformdirs"},
    "checker": {"networkx"},
    "pictures": set(),
    "notes": {"rapidfuzz"},
    "plots": set(),
    "wording": {"rapidfuzz"},
    "browse": {"numpy"},
    "work": set(),
    "sheets": {"fpdf", "fontTools"},
    "folders": {"platformdirs"},
    "trial": {"numpy"},
    "measure": {"numpy", "networkx"},
    "proof": {"numpy"},
    "learn": {"numpy"},
    "bench": {"numpy", "pgmpy"},
    "cli": set(),
    "gui": {"PySide6", "platformdirs", "shiboken6"},
}
"""What each package may import of other packages, and of libraries beyond Python's own."""


def package_of(path: Path) -> str:
    return path.relative_to(ROOT).parts[0].removesuffix(".py")


def imported(path: Path) -> set[str]:
    names = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        match node:
            case ast.Import():
                names |= {alias.name for alias in node.names}
            case ast.ImportFrom(module=str(module)):
                names.add(module)
    return names


MODULES = sorted(p for p in ROOT.rglob("*.py") if package_of(p) not in ("__init__", "__main__"))


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(ROOT)))
def test_a_module_imports_only_what_its_package_may(path):
    package = package_of(path)
    ours = {n.split(".")[1] for n in imported(path) if n.startswith("keyapp.")} - {package}
    assert ours <= MAY_IMPORT[package]
    others = {n.split(".")[0] for n in imported(path)} - {"keyapp", "__future__"} - set(sys.stdlib_module_names)
    assert others <= OUTSIDE[package]


def test_only_one_module_knows_yaml():
    users = [str(p.relative_to(ROOT)) for p in MODULES if "yaml" in imported(p)]
    assert users == ["keyfile/source.py"]


def test_the_inner_packages_run_with_qt_blocked():
    inner = [
        "model", "engine", "keyfile", "checker", "pictures", "wording", "browse", "work", "notes", "sheets", "cli.main"
    ]  # fmt: skip
    code = (
        "import sys\n"
        "class NoQt:\n"
        "    def find_spec(self, name, path=None, target=None):\n"
        "        if name.split('.')[0] == 'PySide6': raise ImportError('blocked')\n"
        "sys.meta_path.insert(0, NoQt())\n" + "".join(f"import keyapp.{name}\n" for name in inner)
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.stderr == ""
    assert done.returncode == 0


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(ROOT)))
def test_a_module_says_what_it_is_for(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    assert ast.get_docstring(tree)


def test_modules_stay_short():
    long = {str(p.relative_to(ROOT)): len(p.read_text(encoding="utf-8").splitlines()) for p in MODULES}
    assert {name: lines for name, lines in long.items() if lines > 450} == {}
