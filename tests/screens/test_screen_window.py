"""The whole flow in a real window of a real window system."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]


@pytest.mark.screen
@pytest.mark.skipif(not os.environ.get("DISPLAY"), reason="no window system: DISPLAY is not set")
def test_an_enquiry_from_start_to_result_and_carried_on(tmp_path: Path) -> None:
    environment = {
        **os.environ,
        "QT_QPA_PLATFORM": "xcb",
        "PYTHONPATH": str(ROOT),
        "XDG_CACHE_HOME": str(tmp_path / "cache"),
    }
    done = subprocess.run(
        [sys.executable, str(HERE / "window_walk.py"), str(tmp_path / "state"), str(tmp_path / "pictures")],
        capture_output=True,
        text=True,
        env=environment,
        cwd=tmp_path,
        timeout=240,
    )
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""
    told = json.loads(done.stdout.splitlines()[-1])
    assert told["platform"] == "xcb"
    assert told["stage"] == "result"
    assert json.loads(told["case"])["answers"]
    assert told["offered"] == told["case"]
    assert len(list((tmp_path / "pictures").glob("*.png"))) > 6
