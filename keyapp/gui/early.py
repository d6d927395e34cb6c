"""A person who is at the first couplet before the key is open."""

from __future__ import annotations

from keyapp.gui.first_page import FirstPage
from keyapp.model import Choice

__all__ = ["Early"]


class Early:
    """What is shown, what is picked, and whether it is meant as the answer already.

    It waits for the key. The session gives the answer once the key is open and says the same as `page`.
    """

    def __init__(self, page: FirstPage) -> None:
        self.page = page
        self.choice: Choice | None = None
        self.is_given = False
