"""Text a user reads, held in one or more languages."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["DEFAULT_LANGUAGE", "Text"]

DEFAULT_LANGUAGE = "en"


@dataclass(frozen=True, slots=True)
class Text:
    """One text in one or more languages.

    Attributes:
        entries: pairs of a language code (ISO 639-1) and the wording in it.

    >>> Text.of("web", es="tela").say("es")
    'tela'
    >>> Text.of("web").say("es")
    'web'
    """

    entries: tuple[tuple[str, str], ...]

    @classmethod
    def of(cls, english: str, **others: str) -> Text:
        """Make a text from its English wording, and from others by language code."""
        return cls(((DEFAULT_LANGUAGE, english), *sorted(others.items())))

    def say(self, language: str = DEFAULT_LANGUAGE) -> str:
        """Return the wording in `language`, or in English, or in the first language there is."""
        table = dict(self.entries)
        found = table.get(language) or table.get(DEFAULT_LANGUAGE)
        return found if found is not None else (self.entries[0][1] if self.entries else "")

    @property
    def languages(self) -> tuple[str, ...]:
        """The language codes this text has."""
        return tuple(code for code, _ in self.entries)

    def __str__(self) -> str:
        return self.say()

    def __bool__(self) -> bool:
        return any(wording for _, wording in self.entries)
