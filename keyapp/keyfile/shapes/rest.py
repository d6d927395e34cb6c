"""The shape of the single files: dangers, weights, emergency, and the key set itself."""

from __future__ import annotations

from dataclasses import fields as dataclass_fields
from itertools import pairwise
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

_LIMITS: dict[str, tuple[float, float]] = {
    "outside": (0, 0.9), "floor": (0, 0.5), "unlisted": (0, 0.5), "slip": (0, 0.5), "error_cap": (0, 0.5),
    "neither_floor": (0, 0.5), "size_outlier": (0, 0.5), "ruled_out_ratio": (0, 0.5), "ruled_out_posterior": (0, 0.5),
    "ruled_out_answers": (1, 20), "firm": (0.5, 1), "likely": (0, 0.5), "danger_bits": (0, 20), "asking": (0, 120),
}
"""Range of each engine number; 0 to 1 for those not listed."""
_ABOVE = frozenset([
    "outside", "floor", "error_cap", "neither_floor", "size_outlier", "ruled_out_ratio", "ruled_out_posterior",
])
"""Numbers that may not be 0, since something would then be impossible, above all a danger, or divided by nothing."""


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
        names = [observer.id for observer in observers]
        if len(set(names)) < len(names):
            problems.add("K107", fields.place_of("value"), "Two levels of observer have the same id.",
                         "Give one of them another id.")
        if fields.has("value") and fields.node.fields["value"].kind == "list" and not observers:
            problems.add("K116", fields.place_of("value"), "No level of observer is listed.", "List one at least.")
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
        _check_factors(name, words, found, fields)
        return found or None
    least, most = _LIMITS.get(name, (0, 1))
    node = fields.take("value", required=True)
    value = read_number(node, problems, least=least, most=most, above=name in _ABOVE) if node else None
    if value is None:
        return None
    if name == "ruled_out_answers":
        if value != int(value):
            problems.add("K111", fields.place_of("value"), f"A whole number belongs here, not {value:g}.",
                         "Write it without a point.")
        return int(value)
    return value


def _check_factors(name: str, words: list[str], found: dict[str, float], fields: Fields) -> None:
    """Every word has a factor, and no weaker word a smaller one than a stronger."""
    node = fields.node.fields.get("value")
    if node is None or node.kind != "mapping":
        return
    missing = [word for word in words if word not in node.fields]
    if missing:
        fields.problems.add("K110", fields.place_of("value"), f'"{missing[0]}" has no factor.',
                            f"Add `{missing[0]}: ...`.")
    # Sureness is listed strongest first, evidence weakest first.
    weakest_first = [word for word in (words[::-1] if name == "sureness" else words) if word in found]
    for weaker, stronger in pairwise(weakest_first):
        if found[weaker] < found[stronger]:
            fields.problems.add("K113", fields.place_of("value"),
                                f'"{weaker}" would go wrong less often than "{stronger}".',
                                f'Give "{weaker}" the larger factor.')


def _observer(node: Node, problems: Problems) -> Observer:
    fields = Fields(node, problems, "the observer level")
    observer = Observer(
        id=fields.id("id"),
        share=fields.number("share", least=0, most=1, above=True),
        factor=fields.number("factor", least=0, most=100, above=True),
    )
    fields.done()
    return observer
