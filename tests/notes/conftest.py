"""The reader of the shipped key, made once."""

from __future__ import annotations

import pytest

from keyapp.notes import NoteReader


@pytest.fixture(scope="session")
def reader(shipped):
    return NoteReader(shipped.keyset)


@pytest.fixture(scope="session")
def states(reader):
    """What a note says of characters: character to the states of each find."""

    def read(text):
        found = {}
        for find in reader.read(text).found:
            if find.states:
                found.setdefault(find.characters[0], []).append(find.states)
        return found

    return read
