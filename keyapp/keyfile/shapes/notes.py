"""The shape of `notes.yaml`: words for reading what a caller says."""

from __future__ import annotations

from keyapp.keyfile.fields import Fields
from keyapp.keyfile.node import Node
from keyapp.keyfile.problem import Problems
from keyapp.keyfile.shapes.common import good_id, read_basis
from keyapp.model.notes import AskInstead, KnownSize, NoteWords, WordsByLanguage

__all__ = ["read_note_words"]

MOST_MM = 1000


def read_note_words(node: Node, problems: Problems) -> NoteWords:
    """Read `notes.yaml`. Stand-ins take the place of faulty fields."""
    fields = Fields(node, problems, "the file of words for notes")
    found = NoteWords(
        ask_instead=tuple(_ask_instead(name, child, problems) for name, child in _entries(fields, "ask-instead")),
        things=tuple(_thing(name, child, problems) for name, child in _entries(fields, "things")),
        spots=_words_by_id(fields, "spots"),
        parts=_words_by_id(fields, "parts"),
        nouns=_words_by_id(fields, "nouns"),
        about=_about(fields),
        animals=_small(fields, "animals"),
        denies=_small(fields, "denies"),
        denies_not=_small(fields, "denies-not"),
        unknown=_small(fields, "unknown"),
        unsure=_small(fields, "unsure"),
        rough=_small(fields, "rough"),
        told=_small(fields, "told"),
    )
    fields.done()
    return found


def _entries(fields: Fields, name: str) -> list[tuple[str, Node]]:
    return [(key, child) for key, child in fields.mapping(name).items() if good_id(key, child, fields.problems)]


def _ask_instead(name: str, node: Node, problems: Problems) -> AskInstead:
    fields = Fields(node, problems, "the word that misleads")
    found = AskInstead(
        id=name,
        words=_small(fields, "words", required=True),
        ask=fields.id("ask"),
        keep=fields.flag("keep"),
        why=fields.text("why"),
        basis=read_basis(fields),
        place=node.place,
    )
    fields.done()
    return found


def _thing(name: str, node: Node, problems: Problems) -> KnownSize:
    fields = Fields(node, problems, "the thing of known size")
    found = KnownSize(
        id=name,
        words=_small(fields, "words", required=True),
        mm=fields.number("mm", least=0, most=MOST_MM, above=True),
        basis=read_basis(fields),
        place=node.place,
    )
    fields.done()
    return found


def _about(fields: Fields) -> dict[str, tuple[str, ...]]:
    """Character: names of parts. Whether they exist is for the links."""
    inner = fields.inner("about", "the list of characters")
    return {name: inner.ids(name) for name in inner.node.fields} if inner and inner.node.kind == "mapping" else {}


def _words_by_id(fields: Fields, name: str) -> dict[str, WordsByLanguage]:
    inner = fields.inner(name, f"the list of {name}")
    if inner is None or inner.node.kind != "mapping":
        return {}
    return {key: _small(inner, key) for key, _ in _entries(fields, name)}


def _small(fields: Fields, name: str, *, required: bool = False) -> WordsByLanguage:
    """Words by language, all in small letters."""
    if required:
        fields.take(name, required=True)
    found = fields.words_by_language(name)
    for words in found.values():
        for word in words:
            if word != word.lower():
                fields.problems.add("K112", fields.place_of(name), f'"{word[:60]}" is not in small letters.',
                                    f'Write "{word.lower()[:60]}".')
    return found
