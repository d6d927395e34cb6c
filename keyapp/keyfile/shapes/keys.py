"""The shape of the keys themselves: one decision graph in each file."""

from __future__ import annotations

import re

from keyapp.keyfile.fields import NO_TEXT, Fields, read_id
from keyapp.keyfile.node import ID_PATTERN, Node
from keyapp.keyfile.problem import Problems
from keyapp.keyfile.shapes.common import good_id
from keyapp.model.graph import Couplet, Key, Lead, Redirect, Target, TargetKind

__all__ = ["read_key"]

_FULL_ID = re.compile(rf"{ID_PATTERN.pattern}/{ID_PATTERN.pattern}")
_NOWHERE = Target(TargetKind.COUPLET, "")


def read_key(stem: str, node: Node, problems: Problems) -> Key | None:
    """Read one key; `stem` is the name of its file without the ending, which is the id it must have."""
    fields = Fields(node, problems, "the key")
    name = fields.id("key")
    if name and name != stem:
        problems.add("K115", fields.place_of("key"), f'The key is called "{name}" but its file "{stem}.yaml".',
                     f'Write "key: {stem}", or rename the file.')
    start = fields.id("start")
    entries = fields.mapping("couplets", required=True)
    if fields.has("couplets") and not entries:
        problems.add("K116", fields.place_of("couplets"), "The key has no couplets.", "Write at least one.")
    couplets = {}
    for short, child in entries.items():
        if good_id(short, child, problems):
            couplet = _couplet(stem, short, child, problems)
            if couplet is not None:
                couplets[couplet.id] = couplet
            else:
                problems.broken = True
    key = Key(
        id=stem,
        title=fields.text("title"),
        scope=fields.text("scope"),
        redirects=tuple(_redirect(stem, child, problems) for child in fields.list("if-you-came-here-with")),
        start=f"{stem}/{start}" if start else "",
        couplets=couplets,
        place=fields.place_of("start"),
    )
    if not start or not couplets:
        problems.broken = True
    fields.done()
    return key


def _couplet(key: str, short: str, node: Node, problems: Problems) -> Couplet | None:
    fields = Fields(node, problems, "the couplet")
    asks = fields.text("asks")
    nodes = list(fields.list("leads", required=True))
    fields.done()
    if fields.has("leads") and len(nodes) != 2:
        problems.add("K120", fields.place_of("leads"), f"The couplet has {len(nodes)} leads; it needs exactly two.",
                     "Split it into couplets of two leads each.")
    leads = [_lead(key, child, problems) for child in nodes]
    if len(leads) != 2:
        return None
    return Couplet(f"{key}/{short}", asks, (leads[0], leads[1]), node.place)


def _lead(key: str, node: Node, problems: Problems) -> Lead:
    fields = Fields(node, problems, "the lead")
    holds = _holds(fields)
    first = next(((character, min(states)) for character, states in holds.items() if states), ("", ""))
    lead = Lead(
        says=fields.text("says"),
        ask_caller=fields.text("ask-caller"),
        figure=fields.id("figure", required=False, default=f"{first[0]}-{first[1]}" if first[0] else ""),
        holds=holds,
        to=_target(key, fields, "to"),
        place=node.place,
    )
    fields.done()
    return lead


def _holds(fields: Fields) -> dict[str, frozenset[str]]:
    entries = fields.mapping("holds", required=True)
    found = {}
    for character, node in entries.items():
        if node.kind == "bad":
            continue
        if node.kind != "list" or not node.items:
            fields.problems.add("K111", node.place, f"The states of a lead belong in a list, not {node.called}.",
                                "Write them as [first, second].")
            continue
        found[character] = frozenset(state for item in node.items if (state := read_id(item, fields.problems)))
    if fields.has("holds") and not entries:
        fields.problems.add("K116", fields.place_of("holds"), "The lead asserts nothing.",
                            "List at least one character with its states.")
    return found


def _target(key: str, fields: Fields, name: str) -> Target:
    inner = fields.inner(name, "the target", required=True)
    if inner is None:
        fields.problems.broken = True
        return _NOWHERE
    kinds = [kind for kind in TargetKind if inner.take(kind.value) is not None]
    inner.done()
    if len(kinds) != 1:
        if inner.node.kind == "mapping" and (kinds or not inner.node.fields):
            fields.problems.add("K111", inner.place, "A lead goes to exactly one place.",
                                "Write one of {couplet: id}, {taxon: id} or {key: id}.")
        fields.problems.broken = True
        return _NOWHERE
    kind = kinds[0]
    node = inner.node.fields[kind.value]
    if kind is TargetKind.COUPLET and _FULL_ID.fullmatch(node.text):
        return Target(kind, node.text)
    found = read_id(node, fields.problems)
    if not found:
        fields.problems.broken = True
        return _NOWHERE
    return Target(kind, f"{key}/{found}" if kind is TargetKind.COUPLET else found)


def _redirect(key: str, node: Node, problems: Problems) -> Redirect:
    fields = Fields(node, problems, "the redirect")
    redirect = Redirect(fields.text("seen") or NO_TEXT, _target(key, fields, "go"), node.place)
    fields.done()
    return redirect
