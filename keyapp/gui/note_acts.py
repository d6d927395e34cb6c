"""What is said in plain words, on the screen: read, offered, confirmed one by one."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QThreadPool

from keyapp.gui.draft import NoteDraft
from keyapp.gui.short_acts import ShortActs
from keyapp.model import Evidence

if TYPE_CHECKING:
    from keyapp.notes import Found

__all__ = ["NoteActs"]

LINE = "note-line"
"""Name of the line that is typed in."""


class NoteActs(ShortActs):
    """Acts on a note. Nothing of it enters the case until it is confirmed."""

    _is_note_warm = False

    @property
    def finds(self) -> tuple[Found, ...]:
        """What was found and is neither confirmed nor dropped, in the order of the words; injury is no offer."""
        from keyapp.notes import Kind

        note = self._note.note
        if note is None:
            return ()
        return tuple(one for one in note.found if one.kind is not Kind.INJURY and one.id not in self._note.gone)

    def type_note(self, text: str) -> None:
        """Take what is typed; words of injury open the emergency card at once."""
        if text == self._note.text:
            return
        was_read = self._note.note is not None
        self._note = NoteDraft(text, evidence=self._note.evidence)
        if was_read:
            self.noted.emit()
        if self.is_open:
            self._warm()
            self.heed(text)

    def read_note(self) -> None:
        """Find what is in the words that were typed."""
        if not self.is_open or not self._note.text.strip():
            return
        from keyapp.notes import read_note

        note = read_note(self.keyset, self._note.text, self.language)
        self._note = replace(self._note, note=note, gone=frozenset())
        if note.injury:
            self.heed(note.text)
        self._wish = self._first_find()
        self.noted.emit()

    def rest_note_on(self, evidence: object) -> None:
        """Say what the words rest on."""
        self._note = replace(self._note, evidence=Evidence(str(evidence)))

    def confirm_find(self, number: int, *, seen: bool = False, measured: str = "") -> None:
        """Take a find into the case. `seen`: the side it speaks of was in view; `measured`: what a size is of."""
        find = next((one for one in self.finds if one.id == number), None)
        if find is None or (find.view is not None and not seen) or (find.must_ask and not measured):
            return
        from keyapp.notes import take_finds

        asked = self._asked
        done = self._stay(
            lambda: take_finds(
                self.enquiry,
                [find],
                seen=[number] if seen else (),
                measured={number: measured} if measured else None,
                evidence=self._note.evidence,
            )
        )
        self._asked = asked
        if done:
            self._gone(number)

    def drop_find(self, number: int) -> None:
        """Let a find go."""
        self._gone(number)

    def clear_note(self) -> None:
        """Empty the line."""
        self._note = NoteDraft(evidence=self._note.evidence)
        self._wish = LINE
        self.noted.emit()

    def take_wish(self) -> str:
        """Name of the widget that wants the focus after the last act; asked once."""
        wish, self._wish = self._wish, ""
        return wish

    # Inside ----------------------------------------------------------------------------------

    def _warm(self) -> None:
        """Make the reader ready beside the window with the first letter, so that Return does not wait for it."""
        if self._is_note_warm:
            return
        self._is_note_warm = True
        keyset, language = self.keyset, self.language

        def warm() -> None:
            from keyapp.notes import read_note

            read_note(keyset, "", language)

        QThreadPool.globalInstance().start(warm)

    def _gone(self, number: int) -> None:
        self._note = replace(self._note, gone=self._note.gone | {number})
        self._wish = self._first_find()
        self.noted.emit()

    def _first_find(self) -> str:
        finds = self.finds
        return f"find-{finds[0].id}" if finds else LINE
