"""A compiled copy of the key, so that the program opens fast; always safe to delete.

A copy is named by a digest of everything it came from: each file of the key, the modules that read
them, and the versions of program and Python. It holds a checksum, and it is unpickled by a reader
that makes nothing but the data classes of the model. Anything odd about it and it is ignored, and
the key read from its files again. Only keys without a problem are kept. What the results show is
most of a large key: it is kept as columns of numbers (`keyapp.model.packed`), which the engine takes
as they are.
"""

from __future__ import annotations

import contextlib
import dataclasses
import datetime
import gc
import hashlib
import io
import os
import pickle
import sys
import tempfile
from enum import Enum
from pathlib import Path
from typing import Any

import platformdirs

import keyapp
import keyapp.model as model
from keyapp.keyfile.load import FOLDERS, key_files, require_keyset
from keyapp.model.keyset import KeySet
from keyapp.model.packed import pack_shows

__all__ = ["cached_keyset", "content_digest", "default_cache_folder", "read_copy", "write_copy"]

_MAGIC = b"keyapp compiled key\n"
_SUM_BYTES = hashlib.sha256().digest_size
_MOST_BYTES = 50_000_000
_KEPT_COPIES = 4
_SAFE_BUILTINS = frozenset(["frozenset", "set"])


def default_cache_folder() -> Path:
    """Folder of the compiled copies."""
    return Path(platformdirs.user_cache_dir("keyapp", appauthor=False)) / "keys"


def cached_keyset(folder: Path, cache: Path | None = None) -> KeySet:
    """Return the key in `folder`, from its compiled copy where that is sound, else from its files.

    Args:
        folder: the folder that holds `keyset.yaml` and the rest.
        cache: folder of the compiled copies; the user's own by default. It need not exist, and
            trouble with it is never an error.

    Raises:
        KeyFolderError: there is anything wrong with the key.
    """
    cache = default_cache_folder() if cache is None else cache
    try:
        copy = cache / f"{content_digest(folder)}.key"
    except OSError:
        return require_keyset(folder)
    keyset = read_copy(copy)
    if keyset is None:
        keyset = require_keyset(folder)
        write_copy(copy, keyset)
    return keyset


def content_digest(folder: Path) -> str:
    """Return a digest of all that a key in `folder` is made from. Raises OSError."""
    total = hashlib.sha256(f"{keyapp.__version__} {sys.version} {sys.byteorder}".encode())
    for place in (folder, *(folder / name for name in FOLDERS)):
        for name in sorted(path.name for path in place.iterdir()) if place.is_dir() else ():
            total.update(f"\0{place.name}/{name}".encode(errors="surrogateescape"))
    here = Path(__file__).resolve().parent
    code = sorted([*here.rglob("*.py"), *(here.parent / "model").glob("*.py")])
    for path in (*key_files(folder), *code):
        if path.is_file() and path.stat().st_size <= _MOST_BYTES:
            content = path.read_bytes()
            total.update(f"\0{path.name} {len(content)}\0".encode(errors="surrogateescape"))
            total.update(content)
    return total.hexdigest()


class _ModelReader(pickle.Unpickler):
    """Unpickles the data classes of the model, dates and plain sets, and nothing else."""

    def find_class(self, module: str, name: str, /) -> Any:
        if module == "builtins" and name in _SAFE_BUILTINS:
            return {"frozenset": frozenset, "set": set}[name]
        if module == "builtins" and name == "getattr":
            # Before Python 3.11.4 members of an Enum are written as getattr(kind, name).
            return _member
        if module == "datetime" and name == "date":
            return datetime.date
        found = getattr(model, name, None) if module.startswith("keyapp.model.") else None
        if isinstance(found, type) and found.__module__ == module:
            return found
        raise pickle.UnpicklingError(f"{module}.{name} is not part of a key")


def _member(kind: object, name: str) -> Enum:
    """The member of one of the model's enums; nothing else can be had by attribute."""
    if isinstance(kind, type) and issubclass(kind, Enum) and kind.__module__.startswith("keyapp.model."):
        for member in kind:
            if member.name == name:
                return member
    raise pickle.UnpicklingError(f"{kind!r}.{name} is not part of a key")


def read_copy(copy: Path) -> KeySet | None:
    """Return the key in a compiled copy, or None where anything about it is odd."""
    try:
        if copy.stat().st_size > _MOST_BYTES:
            return None
        content = copy.read_bytes()
    except OSError:
        return None
    start = len(_MAGIC) + _SUM_BYTES
    if not content.startswith(_MAGIC) or hashlib.sha256(content[start:]).digest() != content[len(_MAGIC):start]:
        return None
    # Nothing that is read here is garbage; to look for it over and over would take as long as to read.
    collects = gc.isenabled()
    gc.disable()
    try:
        found = _ModelReader(io.BytesIO(content[start:])).load()
    except (pickle.UnpicklingError, AttributeError, EOFError, ImportError, IndexError, KeyError, TypeError, ValueError,
            MemoryError, RecursionError):
        return None
    finally:
        if collects:
            gc.enable()
    return found if isinstance(found, KeySet) else None


def write_copy(copy: Path, keyset: KeySet) -> None:
    """Keep a compiled copy, whole or not at all; older copies beyond a few are removed."""
    content = pickle.dumps(_packed(keyset), protocol=5)
    with contextlib.suppress(OSError):
        copy.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=copy.parent, suffix=".part")
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(_MAGIC + hashlib.sha256(content).digest() + content)
            Path(name).replace(copy)
        except OSError:
            Path(name).unlink(missing_ok=True)
            raise
        copies = sorted(copy.parent.glob("*.key"), key=lambda path: path.stat().st_mtime, reverse=True)
        for old in copies[_KEPT_COPIES:]:
            old.unlink(missing_ok=True)


def _packed(keyset: KeySet) -> KeySet:
    """The same key, with what its results show as columns."""
    characters, taxa = keyset.characters.values(), keyset.taxa.values()
    states = [c.state_ids for c in characters]
    shows = pack_shows(list(keyset.characters), states, [taxon.shows for taxon in taxa])
    packed = {t.id: dataclasses.replace(t, shows=own) for t, own in zip(taxa, shows, strict=True)}
    return dataclasses.replace(keyset, taxa=packed)
