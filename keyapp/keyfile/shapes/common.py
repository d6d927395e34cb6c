"""Shapes that many files share: basis, statements, cautions, frequencies."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from keyapp.keyfile.fields import Fields, read_number, read_wording
from keyapp.keyfile.node import ID_PATTERN, ID_RULE, Node, converted_kind
from keyapp.keyfile.problem import Problems, nearest
from keyapp.model.source import COMMON_PRACTICE, FROM_MEMORY, Basis, Caution, Statement

__all__ = [
    "FREQUENCY_WORDS",
    "OCCURRENCE_WORDS",
    "good_id",
    "read_basis",
    "read_basis_map",
    "read_caution",
    "read_cautions",
    "read_state_frequencies",
    "read_statement",
    "read_weight",
]

FREQUENCY_WORDS: Mapping[str, float] = {"always": 1.0, "usually": 0.85, "often": 0.6, "sometimes": 0.3, "rarely": 0.08}
OCCURRENCE_WORDS: Mapping[str, float] = {"common": 1.0, "regular": 0.4, "local": 0.12, "rare": 0.02, "carried": 0.004}
LEAST_FREQUENCY = 0.03


def good_id(name: str, node: Node, problems: Problems) -> bool:
    """Whether the key `name` of a mapping is an id; report it where not."""
    if ID_PATTERN.fullmatch(name):
        return True
    if name and converted_kind(name) is None:
        problems.add("K115", node.place, f'"{name[:60]}" is not an id.', ID_RULE)
    return False


def read_basis(fields: Fields, name: str = "basis") -> Basis:
    """A list of source ids, `common practice` or `from memory`; a single string is a list of one."""
    node = fields.take(name)
    return _basis(node, fields.problems) if node else ()


def _basis(node: Node, problems: Problems) -> Basis:
    nodes = node.items if node.kind == "list" else [node]
    found = []
    for item in nodes:
        word = read_wording(item, problems)
        if not word:
            continue
        if word not in (COMMON_PRACTICE, FROM_MEMORY) and not ID_PATTERN.fullmatch(word):
            problems.add("K115", item.place, f'"{word[:60]}" is neither a source id nor a usual basis.',
                         f"Write a source id, `{COMMON_PRACTICE}`, or `{FROM_MEMORY}`.")
            continue
        found.append(word)
    return tuple(found)


def read_basis_map(fields: Fields, name: str) -> dict[str, Basis]:
    """A mapping from character id to basis."""
    return {key: _basis(node, fields.problems) for key, node in fields.mapping(name).items()}


def read_statement(fields: Fields) -> Statement:
    """`{says, basis}`."""
    statement = Statement(fields.text("says"), read_basis(fields), fields.place)
    fields.done()
    return statement


def read_caution(node: Node, problems: Problems, called: str = "the caution") -> Caution:
    """`{says, basis, checked, review-by}`."""
    fields = Fields(node, problems, called)
    caution = Caution(fields.text("says"), read_basis(fields), fields.date("checked", date.min),
                      fields.date("review-by", date.max), node.place)
    fields.done()
    return caution


def read_cautions(fields: Fields, name: str, called: str = "the caution") -> tuple[Caution, ...]:
    """A list of cautions."""
    return tuple(read_caution(node, fields.problems, called) for node in fields.list(name))


def read_weight(node: Node, problems: Problems, words: Mapping[str, float]) -> float | None:
    """A number 0-1, or one of `words`; None where it is faulty."""
    if node.kind == "scalar" and node.text in words:
        return words[node.text]
    if node.kind == "scalar" and node.text and converted_kind(node.text) != "number":
        problems.add("K112", node.place, f'"{node.text[:60]}" does not say how often.',
                     f"Write a number from 0 to 1, or one of: {', '.join(words)}." if not node.text.isalpha()
                     else nearest(node.text, words))
        return None
    return read_number(node, problems, least=0, most=1)


def read_state_frequencies(node: Node, problems: Problems) -> dict[str, float]:
    """State -> how often, from a single state name or a mapping.

    Numbers are kept as they are and must not sum to more than 1; where any word is used all are
    scaled to sum to 1.
    """
    if node.kind == "bad":
        return {}
    if node.kind == "scalar":
        word = read_wording(node, problems)
        return {word: 1.0} if word else {}
    if node.kind != "mapping":
        problems.add("K111", node.place, f"A state, or states with how often, belong here, not {node.called}.",
                     "Write `state`, or {state: usually, other: sometimes}.")
        return {}
    found: dict[str, float] = {}
    worded = False
    for state, child in node.fields.items():
        weight = read_weight(child, problems, FREQUENCY_WORDS)
        worded = worded or child.text in FREQUENCY_WORDS
        if weight is not None:
            found[state] = weight
    total = sum(found.values())
    if not found:
        if not node.fields:
            problems.add("K116", node.place, "No state is listed.", "List a state, or remove the character.")
        return {}
    if worded and total > 0:
        found = {state: weight / total for state, weight in found.items()}
    elif total > 1 + 1e-9:
        problems.add("K118", node.place, f"The frequencies sum to {total:.3g}, more than 1.",
                     "Lower them so that they sum to at most 1, or use words.")
        return {state: weight / total for state, weight in found.items()}
    for state, weight in found.items():
        if weight < LEAST_FREQUENCY:
            problems.add("K118", node.place_of(state), f'"{state}" is listed with {weight:.3g}, less than '
                         f"{LEAST_FREQUENCY}.", "Leave it out if it is never seen, or give it at least 0.03.")
    return found
