"""Small random keys: rejoining paths, characters met again, results that go both ways, couplets that do not apply."""

from __future__ import annotations

import numpy as np

from keyapp.engine import Tables, build_tables
from keyapp.measure.propagate import as_described
from keyapp.model import AppliesTo, Danger, Form
from tests.builders import character, keyset, lead, taxon

__all__ = ["random_key"]


def random_key(seed: int, couplets: int = 6, taxa: int = 5) -> Tables:
    """Tables (as described) of a key whose couplets lead on to later ones and to results, in whatever way."""
    rng = np.random.default_rng(seed)
    states = {f"c{i}": [f"s{k}" for k in range(int(rng.integers(2, 5)))] for i in range(4)}
    characters = [
        character(
            name,
            " ".join(s),
            right=float(rng.uniform(0.75, 0.97)),
            applies_to=AppliesTo(forms=("animal",)) if name == "c3" else None,
        )
        for name, s in states.items()
    ]
    described = []
    for t in range(taxa):
        shows = {}
        for name, s in states.items():
            picked = rng.choice(s, size=int(rng.integers(1, 1 + min(3, len(s)))), replace=False)
            shows[name] = dict(zip(picked.tolist(), rng.dirichlet(np.ones(len(picked))).tolist(), strict=True))
        form = Form.WEB if t == 1 else Form.ANIMAL
        shows = {name: s for name, s in shows.items() if form is Form.ANIMAL or name != "c3"}
        danger = Danger.SIGNIFICANT if t in (2, 3) else Danger.NONE
        described.append(
            taxon(
                f"t{t}",
                shows,
                form=form,
                danger=danger,
                group="bad" if t in (2, 3) else "",
                occurrence={"default": float(rng.uniform(0.1, 1))},
            )
        )
    made = {}
    for i in range(couplets):
        goals = [f"couplet:k{j}" for j in range(i + 1, couplets)] + [f"taxon:t{t}" for t in range(taxa)]
        name = str(rng.choice(list(states)))
        shuffled = rng.permutation(states[name]).tolist()
        cut = int(rng.integers(1, len(shuffled)))
        first, second = {name: " ".join(shuffled[:cut])}, {name: " ".join(shuffled[cut:])}
        other = str(rng.choice(list(states)))
        if other != name and rng.random() < 0.5:
            first[other] = " ".join(states[other][:-1])
        ahead = f"couplet:k{i + 1}" if i + 1 < couplets else str(rng.choice(goals))
        made[f"k{i}"] = (lead(ahead, **first), lead(str(rng.choice(goals)), **second))
    return as_described(build_tables(keyset(characters, described, made)))
