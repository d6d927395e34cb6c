"""The shape of the single files: dangers, weights, emergency, and the key set itself."""

from __future__ import annotations

from dataclasses import fields as dataclass_fields
from typing import Any

from keyapp.keyfile.fields import Fields, read_number
from keyapp.keyfile.node import ID_PATTERN, ID_RULE, Node
from keyapp.keyfile.problem import Problems, nearest
from keyapp.keyfile.shapes.common import read_basis, read_cautions
from keyapp.model.case import Evidence, Sureness
from keyapp.model.keyset import Emergency
from keyapp.model.source import Caution
from keyapp.model.taxon import Danger, DangerGroup
from keyapp.model.weights import Observer, Weights

__all__ = ["read_danger_group", "read_emergency", "read_start", "read_weights"]

_LIMITS: dict[str, tuple[float, float]] = {"ruled_out_answers": (1, 20), "danger_bits": (0, 20), "asking": (0, 120)}


def read_danger_group(name: str, node: Node, problems: Problems) -> DangerGroup:
    """Read one danger group."""
    fields = Fields(node, problems, "the danger group")
    worst = fields.word("worst", Danger, Danger.SIGNIFICANT)
    if not worst.is_gated:
        problems.add("K112", fields.place_of("worst"), f'"{worst}" is not a danger that forms a group.',
                     "Write significant or vector.")
    group = DangerGroup(name, fields.text("name"), worst, fields.words("icd10"), node.place)
    fields.done()
    return group


def read_emergency(node: Node, problems: Problems) -> Emergency:
    """Read `emergency.yaml`."""
    fields = Fields(node, problems, "the emergency card")
    first_aid: dict[str, tuple[Caution, ...]] = {}
    inner = fields.inner("first-aid", "first aid", required=True)
    if inner is not None and inner.node.kind == "mapping":
        for kind in inner.node.fields:
            if not ID_PATTERN.fullmatch(kind):
                problems.add("K115", inner.place_of(kind), f'"{kind[:60]}" is not an id.',
                             ID_RULE)
            first_aid[kind] = read_cautions(inner, kind, "the first-aid step")
    emergency = Emergency(
        signs=read_cautions(fields, "signs", "the emergency sign"),
        first_aid=first_aid,
        never=read_cautions(fields, "never", 'the "never" line'),
        words=fields.words("words", required=True),
    )
    fields.done()
    return emergency


def read_start(node: Node, problems: Problems) -> str:
    """Read `keyset.yaml`: the id of the first key."""
    fields = Fields(node, problems, "the key set")
    start = fields.id("start")
    fields.done()
    return start


def read_weights(node: Node, problems: Problems) -> Weights:
    """Read `weights.yaml`: each number, by the name it has in `Weights`, with its reason and basis."""
    kinds = {field.name for field in dataclass_fields(Weights)} - {"reasons"}
    found: dict[str, Any] = {}
    reasons: dict[str, str] = {}
    for name, child in node.fields.items():
        if name not in kinds:
            problems.add("K109", node.place_of(name), f'The engine has no number called "{name[:60]}".',
                         nearest(name, kinds))
            continue
        fields = Fields(child, problems, "the engine number")
        value = _value(name, fields)
        reason = fields.string("reason")
        basis = read_basis(fields)
        fields.done()
        if value is not None:
            found[name] = value
        reasons[name] = f"{reason} ({', '.join(basis)})" if basis else reason
    return Weights(**found, reasons=reasons)


def _value(name: str, fields: Fields) -> object:
    problems = fields.problems
    if name == "observers":
        observers = tuple(_observer(child, problems) for child in fields.list("value", required=True))
        total = sum(observer.share for observer in observers)
        if observers and abs(total - 1) > 1e-6:
            problems.add("K118", fields.place_of("value"), f"The shares of the observers sum to {total:.3g}, not 1.",
                         "Mend them so that they sum to 1.")
        return observers or None
    if name in ("sureness", "evidence"):
        words = [str(word) for word in (Sureness if name == "sureness" else Evidence)]
        found = {}
        for word, child in fields.mapping("value", required=True).items():
            if word not in words:
                problems.add("K112", child.place, f'"{word[:60]}" is not a kind of {name}.', nearest(word, words))
                continue
            factor = read_number(child, problems, least=0, most=100, above=True)
            if factor is not None:
                found[word] = factor
        return found or None
    least, most = _LIMITS.get(name, (0, 1))
    node = fields.take("value", required=True)
    value = read_number(node, problems, least=least, most=most) if node else None
    if value is None:
        return None
    if name == "ruled_out_answers":
        if value != int(value):
            problems.add("K111", fields.place_of("value"), f"A whole number belongs here, not {value:g}.",
                         "Write it without a point.")
        return int(value)
    return value


def _observer(node: Node, problems: Problems) -> Observer:
    fields = Fields(node, problems, "the observer level")
    observer = Observer(
        id=fields.id("id"),
        share=fields.number("share", least=0, most=1),
        factor=fields.number("factor", least=0, most=100, above=True),
    )
    fields.done()
    return observer
