"""Loads a key folder: files to a `KeySet`, or every problem found in them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import TypeVar

from keyapp.errors import UserError
from keyapp.keyfile import shapes
from keyapp.keyfile.fields import read_text
from keyapp.keyfile.links import broken_links
from keyapp.keyfile.node import ID_PATTERN, ID_RULE, Node, converted_kind
from keyapp.keyfile.places import LineIndex
from keyapp.keyfile.problem import Problem, Problems, nearest
from keyapp.keyfile.source import read
from keyapp.model.graph import Key
from keyapp.model.keyset import Emergency, KeySet
from keyapp.model.notes import NoteWords
from keyapp.model.place import Place
from keyapp.model.text import Text
from keyapp.model.weights import Weights

__all__ = ["FOLDERS", "SINGLE_FILES", "KeyFolderError", "Loaded", "key_files", "load_keyset", "require_keyset"]

FOLDERS = ("characters", "taxa", "regions", "figures")
"""Folders of files, each of which holds entries by id."""
SINGLE_FILES = ("spots", "dangers", "sources", "glossary", "wording", "weights", "emergency", "keyset", "notes")
"""Names (without `.yaml`) of the files that are no key."""
OPTIONAL_FILES = ("notes",)
"""Of those, the files that a key may do without."""
MAX_FILES = 1000

_TERM = re.compile(r"\S.*")
_WORDING_ID = re.compile(r"[A-Za-z0-9]+(?:[-.][A-Za-z0-9]+)*")

Entry = TypeVar("Entry")


@dataclass(frozen=True, slots=True)
class Loaded:
    """The outcome of loading a folder.

    Attributes:
        keyset: the key, or None where anything is wrong with it.
        problems: everything that is wrong, sorted by place.
        draft: for the checker alone: the key with stand-ins for faulty fields, so that its rules can
            still look at the rest; None where something is missing altogether. Never to be worked with.
        index: lines of the fields, to place what the rules find.
    """

    keyset: KeySet | None
    problems: tuple[Problem, ...]
    draft: KeySet | None = None
    index: LineIndex = field(default_factory=lambda: LineIndex({}), repr=False, compare=False)


class KeyFolderError(UserError):
    """The key cannot be used. `problems` holds everything that is wrong with it."""

    def __init__(self, folder: Path, problems: tuple[Problem, ...]) -> None:
        self.problems = problems
        count = len(problems)
        first = f" First: {problems[0]}" if problems else ""
        super().__init__(
            f"The key has {count} problem{'' if count == 1 else 's'} and cannot be used.{first}",
            where=str(folder), fix="Mend them and start again; `keyapp check` lists them all.",
        )


def require_keyset(folder: Path) -> KeySet:
    """Return the key in `folder`.

    Raises:
        KeyFolderError: there is anything wrong with it.
    """
    loaded = load_keyset(folder)
    if loaded.keyset is None:
        raise KeyFolderError(folder, loaded.problems)
    return loaded.keyset


def load_keyset(folder: Path, images: Path | None = None) -> Loaded:
    """Load every file of a key folder and report every problem in one go.

    Args:
        folder: the folder that holds `keyset.yaml` and the rest.
        images: the folder of pictures; where given, it must exist.

    Returns:
        The key, or the problems. Nothing that a folder or file can hold makes it raise.
    """
    problems = Problems()
    if images is not None and not images.is_dir():
        problems.add("K101", Place("", 0), f'The picture folder "{images.name}" does not exist.',
                     "Name an existing folder, or draw the pictures first.")
    if not folder.is_dir():
        problems.add("K101", Place("", 0), f'The key folder "{folder.name}" does not exist.',
                     "Name the folder that holds keyset.yaml.")
        return Loaded(None, tuple(problems.kept))
    nodes: dict[str, Node] = {}
    draft = _load(folder, nodes, problems)
    index = LineIndex(nodes)
    if draft is not None:
        problems.kept.extend(map(index.exact, broken_links(draft)))
    found = tuple(sorted(set(problems.kept)))
    return Loaded(draft if not found else None, found, draft, index)


def key_files(folder: Path) -> tuple[Path, ...]:
    """Return every YAML file that is part of the key in `folder`, sorted."""
    places = [folder, *(folder / name for name in FOLDERS)]
    found = [path for place in places if place.is_dir() for path in place.iterdir()
             if path.suffix == ".yaml" and not path.name.startswith(".")]
    return tuple(sorted(found)[:MAX_FILES])


def _load(folder: Path, nodes: dict[str, Node], problems: Problems) -> KeySet | None:
    try:
        _report_strangers(folder, problems)
        paths = key_files(folder)
    except OSError as error:
        problems.add("K101", Place("", 0), f"The key folder cannot be read ({error.strerror}).",
                     "Check its permissions.")
        return None
    files = {path.relative_to(folder).as_posix(): path for path in paths}
    for file, path in files.items():
        node = read(path, file, problems)
        if node is not None:
            nodes[file] = node

    singles = {name: _single(name, files, nodes, problems) for name in SINGLE_FILES}
    keys: dict[str, Key] = {}
    for file, node in nodes.items():
        if "/" in file or file.removesuffix(".yaml") in SINGLE_FILES:
            continue
        key = shapes.read_key(file.removesuffix(".yaml"), node, problems)
        if key is not None:
            keys[key.id] = key
    if not keys:
        problems.add("K101", Place("", 0), "There is no key in the key folder.", "Add a file that holds couplets.")

    keyset = KeySet(
        characters=_folder("characters", nodes, shapes.read_character, problems),
        taxa=_folder("taxa", nodes, shapes.read_taxon, problems),
        keys=keys,
        start=shapes.read_start(singles["keyset"], problems),
        regions=_folder("regions", nodes, shapes.read_region, problems),
        spots=_entries([singles["spots"]], shapes.read_spot, problems),
        danger_groups=_entries([singles["dangers"]], shapes.read_danger_group, problems),
        sources=_entries([singles["sources"]], shapes.read_source, problems),
        glossary=_entries([singles["glossary"]], shapes.read_term, problems, pattern=_TERM),
        figures=_folder("figures", nodes, shapes.read_figure, problems),
        wording=_entries([singles["wording"]], _wording, problems, pattern=_WORDING_ID),
        weights=shapes.read_weights(singles["weights"], problems) if singles["weights"].kind != "bad" else Weights(),
        emergency=shapes.read_emergency(singles["emergency"], problems) if singles["emergency"].kind != "bad"
        else Emergency((), {}, (), ()),
        notes=shapes.read_note_words(singles["notes"], problems) if singles["notes"].kind != "bad" else NoteWords(),
    )
    return None if problems.broken else keyset


def _report_strangers(folder: Path, problems: Problems) -> None:
    """Report what an author may have meant to be part of the key but is not read."""
    for name in FOLDERS:
        if not (folder / name).is_dir():
            problems.add("K101", Place(name, 1), f'The folder "{name}" is missing.', "Make it and put its files there.")
            problems.broken = True
    for path in sorted(folder.iterdir()):
        if path.is_dir() and path.name not in FOLDERS and not path.name.startswith((".", "_")):
            problems.add("K121", Place(path.name, 1), f'The folder "{path.name}" is not part of a key.',
                         nearest(path.name, FOLDERS))
    for place in (folder, *(folder / name for name in FOLDERS)):
        if not place.is_dir():
            continue
        for path in sorted(place.iterdir()):
            if path.suffix.lower() in (".yml", ".yaml") and path.suffix != ".yaml" and not path.name.startswith("."):
                problems.add("K121", Place(path.relative_to(folder).as_posix(), 1),
                             f'The file "{path.name}" is not read: its name must end in .yaml.',
                             f"Rename it to {path.stem}.yaml.")
            elif path.suffix == ".yaml" and not path.name.startswith(".") and not ID_PATTERN.fullmatch(path.stem):
                problems.add("K115", Place(path.relative_to(folder).as_posix(), 1),
                             f'"{path.stem[:60]}" is not a good name for a file.',
                             ID_RULE)
        if sum(1 for _ in place.iterdir()) > MAX_FILES:
            problems.add("K106", Place(place.name, 1), f"There are more than {MAX_FILES} files in this folder.",
                         "Remove what does not belong to the key.")
            problems.broken = True


def _single(name: str, files: dict[str, Path], nodes: dict[str, Node], problems: Problems) -> Node:
    file = f"{name}.yaml"
    node = nodes.get(file)
    if node is not None:
        return node
    if file not in files and name not in OPTIONAL_FILES:
        problems.add("K101", Place(file, 1), f'The file "{file}" is missing.', "Add it to the key folder.")
        problems.broken = True
    return Node("bad", file, 1, "")


def _folder(
    name: str, nodes: dict[str, Node], read_entry: Callable[[str, Node, Problems], Entry], problems: Problems
) -> dict[str, Entry]:
    return _entries([node for file, node in nodes.items() if file.startswith(f"{name}/")], read_entry, problems)


def _entries(
    nodes: Iterable[Node], read_entry: Callable[[str, Node, Problems], Entry], problems: Problems,
    *, pattern: re.Pattern[str] = ID_PATTERN,
) -> dict[str, Entry]:
    """Read entries by id from one or more files; an id may be used once in all of them."""
    found: dict[str, Entry] = {}
    first: dict[str, Place] = {}
    for node in nodes:
        for name, child in node.fields.items():
            place = node.place_of(name)
            if name in first:
                problems.add("K117", place, f'"{name}" is already defined at {first[name].file}:{first[name].line}.',
                             "Give one of them another id.")
                continue
            if not name or (pattern is not _TERM and converted_kind(name) is not None):
                continue
            first[name] = place
            if not pattern.fullmatch(name):
                problems.add("K115", place, f'"{name[:60]}" is not an id.', ID_RULE)
                continue
            found[name] = read_entry(name, child, problems)
    return found


def _wording(name: str, node: Node, problems: Problems) -> Text:
    return read_text(node, problems)
