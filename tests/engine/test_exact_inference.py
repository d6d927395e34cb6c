"""The standing equals exact inference by a general-purpose library on random small keys.

Peer: pgmpy (variable elimination in a Bayesian network), which shares no code with the engine.
"""

from __future__ import annotations

import numpy as np
import pytest

from keyapp.engine import build_tables
from keyapp.engine.ledger import events
from keyapp.engine.standing import standing
from keyapp.model import Observer, Report, Weights
from tests.builders import character, keyset, taxon

pytestmark = [
    pytest.mark.outside,
    pytest.mark.filterwarnings("ignore"),
]
pgmpy = pytest.importorskip("pgmpy", reason="install the extra `outside`")

OBSERVERS = (Observer("good", 0.3, 0.5), Observer("ordinary", 0.5, 1.0), Observer("poor", 0.2, 2.5))


def random_key(seed: int):
    """A key of 3-6 taxa and 2-4 characters of 2-4 states, all described, and what was reported."""
    rng = np.random.default_rng(seed)
    taxa_count, characters_count = int(rng.integers(3, 7)), int(rng.integers(2, 5))
    counts = [int(rng.integers(2, 5)) for _ in range(characters_count)]
    characters = [
        character(f"c{i}", " ".join(f"s{k}" for k in range(n)), right=float(rng.uniform(0.7, 0.97)))
        for i, n in enumerate(counts)
    ]
    taxa = []
    for t in range(taxa_count):
        shows = {}
        for i, n in enumerate(counts):
            chances = rng.dirichlet(np.ones(n))
            shows[f"c{i}"] = {f"s{k}": float(p) for k, p in enumerate(chances)}
        taxa.append(taxon(f"t{t}", shows))
    prior = rng.dirichlet(np.ones(taxa_count + 1))
    said = [(f"c{i}", f"s{int(rng.integers(n))}") for i, n in enumerate(counts)]
    return characters, taxa, prior, said


def by_pgmpy(characters, taxa, prior, said):
    """Exact posterior over taxa and "not in this key", from a network built by hand."""
    from pgmpy.factors.discrete import TabularCPD
    from pgmpy.inference import VariableElimination
    from pgmpy.models import DiscreteBayesianNetwork

    ids = [t.id for t in taxa] + ["outside"]
    edges = [
        edge for c in characters for edge in (("taxon", c.id), (c.id, f"said-{c.id}"), ("observer", f"said-{c.id}"))
    ]
    network = DiscreteBayesianNetwork(edges)
    network.add_cpds(TabularCPD("taxon", len(ids), [[p] for p in prior]))
    network.add_cpds(TabularCPD("observer", 3, [[o.share] for o in OBSERVERS]))
    for c in characters:
        n = len(c.states)
        true = np.array([[t.shows[c.id][s] for s in c.state_ids] for t in taxa] + [[1 / n] * n]).T
        network.add_cpds(TabularCPD(c.id, n, true, ["taxon"], [len(ids)]))
        reading = np.zeros((n, n * 3))
        for state in range(n):
            for o, observer in enumerate(OBSERVERS):
                error = min(0.45, (1 - c.right) * observer.factor)
                column = np.full(n, error / (n - 1))
                column[state] = 1 - error
                reading[:, state * 3 + o] = column
        network.add_cpds(TabularCPD(f"said-{c.id}", n, reading, [c.id, "observer"], [n, 3]))
    network.check_model()
    evidence = {f"said-{c}": int(s[1:]) for c, s in said}
    found = VariableElimination(network).query(["taxon"], evidence=evidence, show_progress=False)
    return found.values


@pytest.mark.parametrize("seed", range(25))
def test_standing_equals_exact_inference(seed):
    characters, taxa, prior, said = random_key(seed)
    tables = build_tables(keyset(characters, taxa, weights=Weights(observers=OBSERVERS)))
    found = standing(tables, np.log(prior), events(tables, [Report(c, frozenset({s})) for c, s in said]))
    assert found.posterior == pytest.approx(by_pgmpy(characters, taxa, prior, said), abs=1e-9)
