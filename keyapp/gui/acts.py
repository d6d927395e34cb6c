"""How an act on the case is done: mistakes are told, the page stays where it should, injury is heeded."""

from __future__ import annotations

from collections.abc import Callable

from keyapp.errors import UserError
from keyapp.gui.screen import Screen
from keyapp.model.injury import injury_words

__all__ = ["Acts"]


class Acts(Screen):
    """What all acts that change the case have in common."""

    def heed(self, text: str) -> None:
        """Heed words of injury in a text that is not kept: they count as someone hurt and open the card."""
        if self._has_fresh_injury(text):
            self._stay(lambda: self.enquiry.set_up(hurt=True))
            self.emergency.emit()

    def has_new_injury_words(self, text: str) -> bool:
        """Whether `text` holds words of injury that have not opened the card yet."""
        return bool(injury_words(text, self.keyset.emergency.words) - self._words_shown)

    # Inside ----------------------------------------------------------------------------------

    def _has_fresh_injury(self, text: str) -> bool:
        """Whether `text` holds words of injury that have not opened the card; from now on they have."""
        fresh = injury_words(text, self.keyset.emergency.words) - self._words_shown
        self._words_shown |= fresh
        return bool(fresh)

    def _act(self, act: Callable[[], object]) -> bool:
        if self._enquiry is None:
            return False
        try:
            act()
        except UserError as error:
            self._reporter.tell(error)
            return False
        return True

    def _stay(self, act: Callable[[], object]) -> bool:
        """Do it, and stay on the page that is shown."""
        self._keeps_stage = True
        try:
            return self._act(act)
        finally:
            self._keeps_stage = False
