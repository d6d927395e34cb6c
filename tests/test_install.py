"""The wheel brings the key and the pictures along, and finds them wherever it is put."""

from __future__ import annotations

import importlib.util
import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
ISOLATION = ["--no-build-isolation"] if importlib.util.find_spec("hatchling") else []


def shipped_files(folder: str) -> set[str]:
    return {str(path.relative_to(ROOT)) for path in (ROOT / folder).rglob("*") if path.is_file()}


def program_files() -> set[str]:
    return {name for name in shipped_files("keyapp") if "__pycache__" not in name and "_cache/" not in name}


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory) -> Path:
    """The wheel, built and unpacked into a folder of its own."""
    made = tmp_path_factory.mktemp("made")
    command = [sys.executable, "-m", "pip", "wheel", "--no-deps", "--quiet", *ISOLATION, "--wheel-dir", made, ROOT]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    (wheel,) = made.glob("keyapp-*.whl")
    folder = tmp_path_factory.mktemp("unpacked")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder)
    return folder


def run_unpacked(unpacked: Path, elsewhere: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "PYTHONPATH": str(unpacked), "PYTHONDONTWRITEBYTECODE": "1"}
    command = [sys.executable, *arguments]
    return subprocess.run(command, cwd=elsewhere, env=environment, capture_output=True, text=True, check=False)


@pytest.mark.parametrize("folder", ["keys", "images"])
def test_the_wheel_holds_every_file_of(unpacked, folder):
    packed = {str(path.relative_to(unpacked / "keyapp/_data")) for path in (unpacked / "keyapp/_data").rglob("*")}
    assert shipped_files(folder)
    assert shipped_files(folder) <= packed


def test_the_wheel_holds_the_whole_program_with_its_fonts_and_icons(unpacked):
    missing = {name for name in program_files() if not (unpacked / name).is_file()}
    assert missing == set()


def test_the_packed_key_and_pictures_are_the_ones_found(unpacked, tmp_path):
    code = "from keyapp.folders import *; print(keys_folder()); print(images_folder())"
    done = run_unpacked(unpacked, tmp_path, "-c", code)
    assert done.stdout.split() == [str(unpacked / "keyapp/_data/keys"), str(unpacked / "keyapp/_data/images")]


def test_the_packed_key_passes_its_check_from_another_folder(unpacked, tmp_path):
    done = run_unpacked(unpacked, tmp_path, "-m", "keyapp", "check")
    assert done.stderr == ""
    assert done.returncode == 0, done.stdout


def test_the_command_is_installed_under_its_name(unpacked):
    (entries,) = unpacked.glob("keyapp-*.dist-info/entry_points.txt")
    assert "keyapp = keyapp.__main__:main" in entries.read_text(encoding="utf-8")
