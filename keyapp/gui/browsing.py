"""Where one is on the page of all families: what was looked for, what is open, what is held side by side."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from PySide6.QtCore import QObject, Signal

__all__ = ["MOST_COMPARED", "Browsing", "Place", "View"]

MOST_COMPARED = 4
_MOST_BACK = 60
"""Places kept to go back to."""


class View(StrEnum):
    """What the page shows."""

    LIST = "list"
    KIND = "kind"
    COMPARE = "compare"
    NAMES = "names"


@dataclass(frozen=True, slots=True)
class Place:
    """A view, and where it shows one kind, its id."""

    view: View = View.LIST
    kind: str = ""


class Browsing(QObject):
    """What the page of all families shows. It knows ids only, so that it is there before the key is open.

    Signals:
        moved: something of it has changed; no arguments.
    """

    moved = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._place = Place()
        self._back: list[Place] = []
        self._said = ""
        self._name = ""
        self._filters: dict[str, object] = {}
        self._picked: tuple[str, ...] = ()
        self._shows_all = False

    @property
    def place(self) -> Place:
        """What is shown."""
        return self._place

    @property
    def said(self) -> str:
        """The name looked for in the list."""
        return self._said

    @property
    def name(self) -> str:
        """The name asked about among what people call things."""
        return self._name

    @property
    def filters(self) -> dict[str, object]:
        """What the list is narrowed to, by name of the filter; only those that are set."""
        return dict(self._filters)

    @property
    def picked(self) -> tuple[str, ...]:
        """Ids of the kinds chosen to be compared, in the order chosen."""
        return self._picked

    @property
    def shows_all(self) -> bool:
        """Whether the list shows all it has found."""
        return self._shows_all

    @property
    def can_go_back(self) -> bool:
        """Whether there is a place to go back to."""
        return bool(self._back)

    def show_list(self) -> None:
        """Turn to the list."""
        self._go(Place())

    def open(self, kind: str) -> None:
        """Open the page of a kind (id of its first result)."""
        self._go(Place(View.KIND, kind))

    def show_compare(self) -> None:
        """Hold what is picked side by side."""
        self._go(Place(View.COMPARE))

    def show_names(self) -> None:
        """Turn to what people call things."""
        self._go(Place(View.NAMES))

    def go_back(self) -> None:
        """Go back to where one was, or to the list."""
        if self._back:
            self._place = self._back.pop()
            self.moved.emit()
        elif self._place != Place():
            self._place = Place()
            self.moved.emit()

    def look_for(self, said: str) -> None:
        """Look for a name in the list."""
        if said != self._said:
            self._said = said
            self._shows_all = False
            self.moved.emit()

    def ask_name(self, name: str) -> None:
        """Ask what people mean by a name."""
        if name != self._name:
            self._name = name
            self.moved.emit()

    def narrow(self, **filters: object) -> None:
        """Set filters by name; None takes one away."""
        fresh = {**self._filters, **filters}
        fresh = {name: value for name, value in fresh.items() if value is not None}
        if fresh != self._filters:
            self._filters = fresh
            self._shows_all = False
            self.moved.emit()

    def narrow_nothing(self) -> None:
        """Take all filters away."""
        self.narrow(**dict.fromkeys(self._filters))

    def show_all(self) -> None:
        """Show all that was found, not the first few."""
        if not self._shows_all:
            self._shows_all = True
            self.moved.emit()

    def pick(self, kind: str, is_picked: bool) -> None:
        """Choose a kind to be compared, or take it out; a fifth is not taken."""
        if is_picked and kind not in self._picked and len(self._picked) < MOST_COMPARED:
            self._picked = (*self._picked, kind)
            self.moved.emit()
        elif not is_picked and kind in self._picked:
            self._picked = tuple(one for one in self._picked if one != kind)
            self.moved.emit()

    def compare(self, *some: str) -> None:
        """Hold these side by side instead of what was picked."""
        self._picked = tuple(dict.fromkeys(some))[:MOST_COMPARED]
        self._go(replace(self._place, view=View.COMPARE, kind=""), always=True)

    def _go(self, place: Place, *, always: bool = False) -> None:
        if place != self._place:
            self._back = [*self._back[-_MOST_BACK:], self._place]
            self._place = place
            self.moved.emit()
        elif always:
            self.moved.emit()
