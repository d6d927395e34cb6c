"""`keyapp prove`: that one misread answer leaves no medically important animal unnamed."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path

from keyapp.cli.progress import show_progress
from keyapp.cli.terminal import Terminal
from keyapp.errors import UserError
from keyapp.keyfile import require_keyset
from keyapp.proof import proof_data, proof_text, prove

__all__ = ["run"]


def run(
    out: Terminal,
    folder: Path,
    runs: int,
    seed: int,
    as_json: bool,
    only: Sequence[str] = (),
    workers: int | None = None,
) -> int:
    """Prove the key in `folder`; 1 where the proof fails.

    `only` names results whose runs are counted (all where empty).
    """
    if runs < 1:
        raise UserError(f"{runs} runs are too few.", where="--runs", fix="Give a whole number from 1.")
    keyset = require_keyset(folder)
    unknown = sorted(set(only) - set(keyset.taxa))
    if unknown:
        raise UserError(f"There is no result “{unknown[0]}”.", where="--only", fix="Give ids of results of this key.")
    proof = prove(keyset, runs=runs, seed=seed, workers=workers, only=only, told=show_progress)
    out.say(json.dumps(proof_data(keyset, proof), indent=1) if as_json else proof_text(keyset, proof))
    return 0 if proof.holds else 1
