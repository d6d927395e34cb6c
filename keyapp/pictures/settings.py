"""Reads the settings of a recipe: each one asked for by name, the rest refused with the nearest name."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from keyapp.errors import UserError
from keyapp.model.names import closest
from keyapp.pictures.style import COLORS

__all__ = ["Settings", "nearest"]


def nearest(name: str, names: Iterable[str]) -> str:
    """A hint naming the closest of `names`, or listing them all when none is close."""
    names = sorted(names)
    close = closest(name, names)
    return f"Did you mean {close!r}?" if close is not None else f"Known names: {', '.join(names)}."


class Settings:
    """One mapping of settings. Ask for each by name, then call `done`, which refuses what nobody asked for.

    Args:
        values: the mapping as it stands in the file.
        where: what it belongs to, for messages.
    """

    def __init__(self, values: Mapping[str, object], where: str = "settings") -> None:
        self._values = values
        self._where = where
        self._asked: set[str] = set()

    def __contains__(self, name: str) -> bool:
        return name in self._values

    @property
    def values(self) -> Mapping[str, object]:
        """The mapping itself."""
        return self._values

    def _get(self, name: str) -> object:
        self._asked.add(name)
        return self._values.get(name)

    def _refuse(self, name: str, wanted: str, value: object) -> UserError:
        return UserError(f"{name!r} should be {wanted}, not {value!r}.", where=self._where, fix="Mend the setting.")

    def number(self, name: str, default: float, *, least: float = -1e6, most: float = 1e6) -> float:
        """A number between `least` and `most`."""
        value = self._get(name)
        if value is None:
            return default
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self._refuse(name, "a number", value)
        if not least <= value <= most:
            raise self._refuse(name, f"between {least:g} and {most:g}", value)
        return float(value)

    def whole(self, name: str, default: int, *, least: int = 0, most: int = 10**6) -> int:
        """A whole number between `least` and `most`."""
        value = self.number(name, default, least=least, most=most)
        if value != int(value):
            raise self._refuse(name, "a whole number", value)
        return int(value)

    def flag(self, name: str, default: bool = False) -> bool:
        """True or false."""
        value = self._get(name)
        if value is None:
            return default
        if not isinstance(value, bool):
            raise self._refuse(name, "true or false", value)
        return value

    def text(self, name: str, default: str = "") -> str:
        """Any text."""
        value = self._get(name)
        if value is None:
            return default
        if not isinstance(value, str):
            raise self._refuse(name, "text", value)
        return value

    def choice(self, name: str, choices: Iterable[str], default: str) -> str:
        """One of `choices`."""
        value = self.text(name, default)
        choices = tuple(choices)
        if value not in choices:
            raise UserError(f"{name!r} cannot be {value!r}.", where=self._where, fix=nearest(value, choices))
        return value

    def color(self, name: str, default: str) -> str:
        """A colour: a role name of the style, or #rrggbb."""
        value = self.text(name, default)
        plain = value.startswith("#") and len(value) == 7 and all(c in "0123456789abcdefABCDEF" for c in value[1:])
        if not plain and value not in COLORS:
            raise UserError(f"{name!r} is no colour: {value!r}.", where=self._where, fix=nearest(value, COLORS))
        return value

    def numbers(self, name: str, default: Sequence[float], *, count: int | None = None) -> tuple[float, ...]:
        """A list of numbers, `count` of them when given."""
        value = self._get(name)
        if value is None:
            return tuple(default)
        good = isinstance(value, (list, tuple)) and all(
            isinstance(v, (int, float)) and not isinstance(v, bool) for v in value
        )
        if not good or not isinstance(value, (list, tuple)) or (count is not None and len(value) != count):
            raise self._refuse(name, f"a list of {count if count is not None else 'some'} numbers", value)
        return tuple(float(v) for v in value)

    def words(self, name: str, choices: Iterable[str], default: Sequence[str] = ()) -> tuple[str, ...]:
        """A list of words, each one of `choices`; a single word stands for a list of one."""
        value = self._get(name)
        if value is None:
            return tuple(default)
        items = [value] if isinstance(value, str) else value
        if not isinstance(items, (list, tuple)):
            raise self._refuse(name, "a list of words", value)
        choices = tuple(choices)
        for item in items:
            if item not in choices:
                raise UserError(f"{name!r} cannot hold {item!r}.", where=self._where, fix=nearest(str(item), choices))
        return tuple(str(item) for item in items)

    def table(self, name: str) -> Settings:
        """A mapping inside this one (empty when left out); call `done` on it too."""
        value = self._get(name)
        if value is None:
            value = {}
        if not isinstance(value, Mapping):
            raise self._refuse(name, "a group of settings", value)
        return Settings(value, f"{self._where}, {name}")

    def tables(self, name: str) -> list[Settings]:
        """A list of mappings inside this one."""
        value = self._get(name)
        if value is None:
            return []
        if not isinstance(value, (list, tuple)) or not all(isinstance(item, Mapping) for item in value):
            raise self._refuse(name, "a list of groups of settings", value)
        return [Settings(item, f"{self._where}, {name} {index}") for index, item in enumerate(value, 1)]

    def done_except(self, names: Iterable[str]) -> None:
        """As `done`, for settings of which `names` were handed on to another reader."""
        self._asked.update(names)
        self.done()

    def done(self) -> None:
        """Refuse any setting that was never asked for (UserError with the nearest known name)."""
        for name in self._values:
            if name not in self._asked:
                raise UserError(f"unknown setting {name!r}.", where=self._where, fix=nearest(str(name), self._asked))
