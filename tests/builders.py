"""Tiny keys made in code, small enough to draw on a thumbnail."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from keyapp.model import (
    AppliesTo,
    Character,
    Couplet,
    Danger,
    DangerGroup,
    Emergency,
    Form,
    Key,
    KeySet,
    Lead,
    Means,
    Number,
    Size,
    State,
    Target,
    TargetKind,
    Taxon,
    Text,
    View,
    Weights,
)


def character(
    name: str,
    states: str,
    *,
    right: float = 0.9,
    group: str | None = None,
    never_clears: str = "",
    absent: str = "",
    view: View = View.ANY,
    applies_to: AppliesTo | None = None,
    tell: float = 0.9,
) -> Character:
    """A character whose states are the words of `states`; those in `absent` say "not there"."""
    return Character(
        id=name,
        question=Text.of(f"What of {name}?"),
        ask_caller=Text.of(f"{name}?"),
        look=Text.of("Look."),
        means=Means.BARE_EYE,
        view=view,
        applies_to=applies_to or AppliesTo(),
        tell=tell,
        right=right,
        group=group or name,
        never_clears=Text.of(never_clears),
        seconds=5,
        basis=("from memory",),
        states=tuple(
            State(s, Text.of(s), Text.of(s), f"{name}-{s}", absence=s in absent.split()) for s in states.split()
        ),
    )


def size(name: str, *, spread: float = 0.3, confused_with: str = "", confused: float = 0.0) -> Character:
    """A numeric character in mm."""
    base = character(name, "", group="size", never_clears="fear inflates size")
    number = Number("mm", 0.2, 300, spread, confused_with, confused)
    return Character(**{**{f: getattr(base, f) for f in base.__dataclass_fields__}, "number": number})


def taxon(
    name: str,
    shows: Mapping[str, str | Mapping[str, float]],
    *,
    danger: Danger = Danger.NONE,
    group: str = "",
    family: str | None = None,
    **more: Any,
) -> Taxon:
    """A result that shows one state (a word) or several (word -> frequency) of each character."""
    values: dict[str, Any] = {
        "id": name,
        "name": name.title(),
        "rank": "family",
        "class_": "Arachnida",
        "order": "Araneae",
        "family": family if family is not None else f"{name.title()}idae",
        "title": Text.of(name),
        "common_names": {},
        "popular_names": (),
        "misnames": (),
        "form": Form.ANIMAL,
        "stage": Text.of("adult"),
        "kind": name,
        "share": 1.0,
        "made_by": (),
        "shows": {c: {s: 1.0} if isinstance(s, str) else dict(s) for c, s in shows.items()},
        "sizes": {},
        "places": {},
        "months": (),
        "occurrence": {},
        "danger": danger,
        "danger_group": group or (name if danger.is_gated else ""),
        "cautions": (),
        "advice": (),
        "look_alikes": (),
        "garden": None,
        "diagnosis": Text.of(name),
        "season": Text.of(""),
        "outside": False,
        "figure": name,
        "basis": ("from memory",),
    }
    sizes = more.pop("sizes", {})
    values["sizes"] = {c: Size(*bounds) for c, bounds in sizes.items()}
    return Taxon(**{**values, **more})


def lead(to: str, **holds: str) -> Lead:
    """A lead to `couplet:x`, `taxon:x` or `key:x`, asserting states (words) of characters."""
    kind, _, target = to.partition(":")
    goal = f"k/{target}" if kind == "couplet" else target
    held = {c.replace("_", "-"): frozenset(s.split()) for c, s in holds.items()}
    return Lead(Text.of(f"says {holds}"), Text.of("?"), "figure", held, Target(TargetKind(kind), goal))


def keyset(
    characters: list[Character],
    taxa: list[Taxon],
    couplets: Mapping[str, tuple[Lead, Lead]] | None = None,
    weights: Weights | None = None,
    **more: Any,
) -> KeySet:
    """A key set with one key `k`, whose first couplet is the first named."""
    if couplets is None:
        first, *_ = characters
        one, two = first.state_ids[:2]
        ends = [taxa[0].id, taxa[-1].id]
        couplets = {"only": (lead(f"taxon:{ends[0]}", **{first.id: one}), lead(f"taxon:{ends[1]}", **{first.id: two}))}
    made = {f"k/{n}": Couplet(f"k/{n}", Text.of(f"{n}?"), leads) for n, leads in couplets.items()}
    start = next(iter(made))
    groups = {t.danger_group: DangerGroup(t.danger_group, Text.of(t.danger_group), t.danger) for t in taxa}
    groups.pop("", None)
    values: dict[str, Any] = {
        "characters": {c.id: c for c in characters},
        "taxa": {t.id: t for t in taxa},
        "keys": {"k": Key("k", Text.of("k"), Text.of("k"), (), start, made)},
        "start": "k",
        "regions": {},
        "spots": {},
        "danger_groups": groups,
        "sources": {},
        "glossary": {},
        "figures": {},
        "wording": {},
        "weights": weights or Weights(outside=1e-12),
        "emergency": Emergency((), {}, (), ()),
    }
    return KeySet(**{**values, **more})
