"""The update by a general-purpose library for exact inference: pgmpy, variable elimination in a Bayesian network.

It is in the extra `outside`, and is loaded only when it is asked for.
"""

from __future__ import annotations

import importlib.util
import warnings
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from keyapp.engine import Tables
from keyapp.engine.likelihood import readings
from keyapp.model import Evidence, Sureness

__all__ = ["ExactKey", "has_library"]

LIBRARY = "pgmpy"


def has_library() -> bool:
    """Whether the library is installed."""
    return importlib.util.find_spec(LIBRARY) is not None


class ExactKey:
    """A network of the row, the level of observer, and for each of some characters what is there and what is said.

    The characters must apply to everything, and none may share an independence group with another.
    """

    def __init__(self, tables: Tables, prior: NDArray[np.float64], names: Sequence[str], evidence: Evidence) -> None:
        with warnings.catch_warnings():
            # The library warns of its own old names while it is imported.
            warnings.simplefilter("ignore")
            from pgmpy.factors.discrete import TabularCPD
            from pgmpy.inference import VariableElimination
            from pgmpy.models import DiscreteBayesianNetwork

        levels = tables.weights.observers
        edges = [edge for n in names for edge in (("row", n), (n, f"said {n}"), ("observer", f"said {n}"))]
        network = DiscreteBayesianNetwork(edges)
        network.add_cpds(TabularCPD("row", len(prior), [[p] for p in prior]))
        network.add_cpds(TabularCPD("observer", len(levels), [[o.share] for o in levels]))
        for name in names:
            table = tables.characters[name]
            count = len(table.right)
            network.add_cpds(TabularCPD(name, count, table.chance.T, ["row"], [len(prior)]))
            said = readings(table, Sureness.SURE, evidence, tables.weights).transpose(2, 1, 0).reshape(count, -1)
            network.add_cpds(TabularCPD(f"said {name}", count, said, [name, "observer"], [count, len(levels)]))
        network.check_model()
        self._states = {name: tables.characters[name].character.state_ids for name in names}
        self._elimination = VariableElimination(network)

    def update(self, said: Sequence[tuple[str, str]]) -> NDArray[np.float64]:
        """Probability of each row after these sure reports of the characters given."""
        evidence = {f"said {name}": self._states[name].index(state) for name, state in said}
        found = self._elimination.query(["row"], evidence=evidence, show_progress=False)
        return np.asarray(found.values, dtype=float)
