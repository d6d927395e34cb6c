"""Writing a small file whole or not at all."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from keyapp.errors import UserError

__all__ = ["write_whole"]


def write_whole(path: Path, text: str) -> None:
    """Write `text` beside `path`, flush it and rename it, so that at any moment the old or the new file is there.

    Raises UserError if the disk refuses.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=f"{path.stem}-", suffix=".part")
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        Path(name).replace(path)
    except OSError as error:
        raise UserError(
            "The enquiry could not be kept on disk.",
            where=str(path.parent),
            fix=f"Check free space and rights ({error.strerror}).",
        ) from error
