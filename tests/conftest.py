"""What every test stands on: no screen needed, no logged warning passes, the shipped key read once."""

from __future__ import annotations

import logging
import os

import pytest

from keyapp.engine import Tables, build_tables
from keyapp.folders import keys_folder
from keyapp.keyfile import require_keyset

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


@pytest.fixture(autouse=True)
def no_logged_warning(caplog):
    """A warning in the log fails the test; one that expects it ends with `caplog.clear()`."""
    yield
    assert [r.getMessage() for r in caplog.get_records("call") if r.levelno >= logging.WARNING] == []


@pytest.fixture(scope="session")
def shipped() -> Tables:
    """The shipped key, ready for the engine; the key itself is `shipped.keyset`."""
    return build_tables(require_keyset(keys_folder()))
