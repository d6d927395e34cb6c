"""The two families of error: what the user or the world can mend, and our own bugs."""

__all__ = ["KeyappError", "ProgramError", "UserError"]


class KeyappError(Exception):
    """Base of every error that this program raises on purpose."""


class UserError(KeyappError):
    """Something the user or the world can mend.

    Attributes:
        what: what happened, one plain sentence.
        where: file, field, option or place it concerns; may be empty.
        fix: what to do next, one plain sentence.
    """

    def __init__(self, what: str, *, where: str = "", fix: str = "") -> None:
        self.what = what
        self.where = where
        self.fix = fix
        super().__init__(str(self))

    def __str__(self) -> str:
        head = f"{self.where}: {self.what}" if self.where else self.what
        return f"{head} {self.fix}".rstrip()


class ProgramError(KeyappError):
    """A broken promise inside the program; it is logged whole and shown as our fault."""
