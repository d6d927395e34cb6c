"""What every test stands on: no screen needed, no logged warning passes, the shipped key read once."""

from __future__ import annotations

import logging
import os

import pytest

from keyapp.engine import Tables, build_tables
from keyapp.folders import keys_folder
from keyapp.keyfile import require_keyset

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


class Warnings(logging.Handler):
    """Keeps what is logged as a warning or worse."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.said: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.said.append(record.getMessage())


@pytest.fixture(autouse=True)
def no_logged_warning(request):
    """A warning in the log fails the test, unless the test looks at the log itself (`caplog`)."""
    warnings = Warnings()
    logging.getLogger().addHandler(warnings)
    yield
    logging.getLogger().removeHandler(warnings)
    assert "caplog" in request.fixturenames or warnings.said == []


@pytest.fixture(scope="session")
def shipped() -> Tables:
    """The shipped key, ready for the engine; the key itself is `shipped.keyset`."""
    return build_tables(require_keyset(keys_folder()))
