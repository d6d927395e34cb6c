"""The short way on the screen: its questions, their answers, and going further."""

from __future__ import annotations

from dataclasses import replace

from keyapp.gui.acts import Acts
from keyapp.gui.desk import Stage
from keyapp.gui.draft import ShortDraft
from keyapp.model import Evidence

__all__ = ["ShortActs"]

_ROUND = 5
"""As many more questions are put when someone wants to look further."""


class ShortActs(Acts):
    """Acts of someone who stands at the animal."""

    def open_short(self) -> None:
        """Turn to the short way, from where one is."""
        if self._stage is not Stage.SHORT:
            self._short_from = self._stage
            self._short_most = 0
        self.show_stage(Stage.SHORT)

    def leave_short(self) -> None:
        """Go back to where one was; the answers stay."""
        back, self._short_from = self._short_from, None
        self.show_stage(self._still(back) if back is not None and self.is_open else back or Stage.HURT)

    def draft_short(self, **parts: object) -> None:
        """Change what is picked at the question."""
        question = self.short.question or ""
        base = self._short_draft if self._short_draft.character == question else ShortDraft(question)
        fresh = replace(base, **parts)  # type: ignore[arg-type]
        if fresh != self._short_draft:
            self._short_draft = fresh
            self.drafted.emit()

    def can_answer_short(self) -> bool:
        """Whether something is picked."""
        draft = self._short_draft
        return draft.character == self.short.question and bool(draft.state or draft.cant_tell)

    def answer_short(self) -> None:
        """Give what is picked as the answer; the next question or what to do follows."""
        if not self.can_answer_short():
            return
        draft, self._short_draft = self._short_draft, ShortDraft()
        settings = self.case.settings
        # Whoever stands at the animal has seen it, unless better evidence was set.
        evidence = Evidence.OWN_EYES if settings.evidence is Evidence.WORDS else settings.evidence
        character = self.keyset.characters[draft.character]
        states = frozenset(character.state_ids) if draft.cant_tell else frozenset({draft.state})
        self._stay(
            lambda: self.enquiry.report(
                character.id,
                states,
                sureness=draft.sureness,
                evidence=evidence,
                view_seen=not draft.cant_tell,
            )
        )

    def back_short(self) -> None:
        """Take back the last answer of the short way; before the first, leave it."""
        asked = self.short.asked
        note = self.case.note(asked[-1]) if asked else None
        if note is not None:
            self._stay(lambda: self.enquiry.take_back(note))
        elif asked:
            self._stay(lambda: self.enquiry.set_up(thing=None))
        else:
            self.leave_short()

    def can_ask_more_short(self) -> bool:
        """Whether more quick questions are left that may change what is to be done."""
        from keyapp.engine import Action, short_way

        way = self.short
        if way.action in (None, Action.MOVE) or self.case.settings.hurt:
            return False
        most = max(self.short_most, len(way.asked)) + _ROUND
        return short_way(self.tables, self.reading, most).question is not None

    def ask_more_short(self) -> None:
        """Put some more quick questions."""
        self._short_most += max(0, len(self.short.asked) - self.short_most) + _ROUND
        self.moved.emit()
