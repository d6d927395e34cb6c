"""How the engine grows with the key, beside plain Python and a general-purpose library in the same run."""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from keyapp.bench.exact import ExactKey, has_library
from keyapp.bench.plain import PlainKey, Said
from keyapp.bench.session import EVIDENCE, Timing, fastest
from keyapp.bench.synthetic import Extent, synthetic_keyset
from keyapp.engine import Tables, build_tables, not_ruled_out, prior, standing
from keyapp.engine.ledger import report_event
from keyapp.engine.question import next_questions
from keyapp.errors import ProgramError
from keyapp.keyfile.cache import write_copy
from keyapp.model import Form, KeySet, Report, Settings, Weights

__all__ = ["CHARACTERS", "PEER_TAXA", "SIZES", "TARGETS", "Growth", "Peer", "Scale", "measure_scale"]

SIZES = (100, 400, 1000, 2500, 5000)
CHARACTERS = 500
PEER_TAXA = (100, 400)
ANSWERS = 12
LOADS = 3
"""So many fresh processes a size; the fastest counts."""
AGREE = 1e-9
TARGETS = {"update": 0.005, "question": 0.050, "load": 1.0, "memory": 1e9}
"""What the largest key must stay below: seconds, and bytes."""


@dataclass(frozen=True, slots=True)
class Growth:
    """One size of key, measured in fresh processes. Times in seconds, each the least of several rounds.

    Attributes:
        taxa, rows: results, and hypotheses.
        load: program loaded, compiled key read, tables built.
        whole: the same from the start of the process; `worked`: what the processor worked of it.
        updates, questions: after each answer.
        first_question: the very first, which makes what the later ones use; measured once.
        memory: most bytes held; None where the system does not say.
    """

    taxa: int
    rows: int
    load: float
    whole: float
    worked: float
    updates: tuple[Timing, ...]
    questions: tuple[Timing, ...]
    first_question: float
    memory: float | None

    @property
    def update(self) -> float:
        """Seconds of the slowest update."""
        return max(one.clock for one in self.updates)

    @property
    def question(self) -> float:
        """Seconds of the slowest question."""
        return max(one.clock for one in self.questions)


@dataclass(frozen=True, slots=True)
class Peer:
    """The engine and a peer on the same key after the same answers.

    Attributes:
        name: what the peer is.
        taxa: size of the key.
        what: `update` or `question`.
        ours, theirs: seconds.
        difference: the largest between their results; at most `AGREE`.
    """

    name: str
    taxa: int
    what: str
    ours: float
    theirs: float
    difference: float

    @property
    def ratio(self) -> float:
        """How many times as long the peer takes."""
        return self.theirs / self.ours


@dataclass(frozen=True, slots=True)
class Scale:
    """Everything measured in one run.

    Attributes:
        characters, seed: of the made-up keys.
        growth: by size.
        peers: the comparisons.
        missing: peers that are not installed.
    """

    characters: int
    seed: int
    growth: tuple[Growth, ...]
    peers: tuple[Peer, ...]
    missing: tuple[str, ...]


def measure_scale(
    weights: Weights,
    seed: int,
    rounds: int,
    say: Callable[[str], None],
    sizes: Sequence[int] = SIZES,
    characters: int = CHARACTERS,
    peer_taxa: Sequence[int] = PEER_TAXA,
) -> Scale:
    """Measure keys of these sizes; `say` hears what is being done.

    Raises ProgramError where the engine and a peer differ by more than 1e-9, so that no speed is
    reported for a wrong result.
    """
    growth, peers = [], []
    for taxa in sizes:
        say(f"{taxa} taxa")
        keyset = synthetic_keyset(Extent(taxa, characters), seed, weights)
        growth.append(_grown(keyset, rounds))
    for taxa in peer_taxa:
        say(f"plain Python, {taxa} taxa")
        keyset = synthetic_keyset(Extent(taxa, characters), seed, weights)
        peers += _against_plain(keyset, rounds)
    missing = []
    if has_library():
        for taxa in peer_taxa[:1]:
            say(f"pgmpy, {taxa} taxa")
            peers.append(_against_exact(synthetic_keyset(Extent(taxa, characters), seed, weights), rounds))
    else:
        missing.append("pgmpy")
    return Scale(characters, seed, tuple(growth), tuple(peers), tuple(missing))


def _grown(keyset: KeySet, rounds: int) -> Growth:
    taxon = _some_animal(keyset)
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "made-up.key"
        write_copy(copy, keyset)
        loads = [_fresh(copy, taxon, 0, rounds) for _ in range(LOADS - 1)]
        held = _fresh(copy, taxon, ANSWERS, rounds)
        loads.append(held)
    steps = held["session"]["steps"]
    return Growth(
        taxa=len(keyset.taxa),
        rows=held["rows"],
        load=min(each["load"] for each in loads),
        whole=min(each["whole"] for each in loads),
        worked=min(each["worked"] for each in loads),
        updates=tuple(Timing(**step["update"]) for step in steps),
        questions=tuple(Timing(**step["question"]) for step in steps),
        first_question=held["session"]["first_question"],
        memory=held["memory"],
    )


def _fresh(copy: Path, taxon: str, answers: int, rounds: int) -> dict[str, Any]:
    command = [sys.executable, "-m", "keyapp.bench.fresh", str(copy), taxon]
    begin = time.time()
    done = subprocess.run(
        [*command, "--answers", str(answers), "--rounds", str(rounds)], capture_output=True, text=True, check=False
    )
    if done.returncode != 0:
        raise ProgramError(f"The measuring process failed: {done.stderr.strip() or 'the copy could not be read'}")
    found: dict[str, Any] = json.loads(done.stdout)
    found["whole"] = found["ready"] - begin
    return found


def _some_animal(keyset: KeySet) -> str:
    animals = [taxon.id for taxon in keyset.taxa.values() if taxon.form is Form.ANIMAL]
    return animals[len(animals) // 3]


def _against_plain(keyset: KeySet, rounds: int) -> list[Peer]:
    tables = build_tables(keyset)
    chances = prior(tables, Settings())
    plain = PlainKey(keyset, [(row.taxon, row.kind) for row in tables.rows], chances.tolist(), EVIDENCE)
    said = _reports(tables, _some_animal(keyset), tuple(tables.characters))
    ours, our_time = _updated(tables, said, rounds)
    plain.update(said)  # so that what may be worked out once for all answers has been
    theirs, their_time = fastest(2, lambda: plain.update(said))
    update = Peer(
        "plain Python",
        len(keyset.taxa),
        "update",
        our_time.clock,
        their_time.clock,
        float(np.abs(ours - np.array(theirs)).max()),
    )
    asked, our_time = fastest(rounds, lambda: _asked(tables, said))
    begin = time.perf_counter()
    worth = plain.questions(said)
    seconds = time.perf_counter() - begin
    differences = [abs(bits - asked.get(name, (0.0, 0.0))[0]) for name, (bits, _) in worth.items()]
    differences += [abs(fall - asked.get(name, (0.0, 0.0))[1]) for name, (_, fall) in worth.items()]
    if asked.keys() - worth.keys():
        raise ProgramError(f"The engine asks what plain Python does not: {sorted(asked.keys() - worth.keys())}")
    question = Peer("plain Python", len(keyset.taxa), "question", our_time.clock, seconds, max(differences))
    return [_agreed(update), _agreed(question)]


def _against_exact(keyset: KeySet, rounds: int) -> Peer:
    tables = build_tables(keyset)
    chances = prior(tables, Settings())
    groups: dict[str, str] = {}
    for name, table in tables.characters.items():
        if table.applies.all():
            groups.setdefault(table.character.group, name)
    exact = ExactKey(tables, chances, tuple(groups.values()), EVIDENCE)
    said = _reports(tables, _some_animal(keyset), tuple(groups.values()))
    ours, our_time = _updated(tables, said, rounds)
    theirs, their_time = fastest(2, lambda: exact.update(said))
    return _agreed(
        Peer("pgmpy", len(keyset.taxa), "update", our_time.clock, their_time.clock, float(np.abs(ours - theirs).max()))
    )


def _agreed(peer: Peer) -> Peer:
    if not peer.difference <= AGREE:
        raise ProgramError(f"{peer.name} and the engine differ by {peer.difference:.1e} ({peer.what}): no figures.")
    return peer


def _reports(tables: Tables, taxon: str, names: Sequence[str]) -> list[Said]:
    """What someone might say of `taxon`: eight characters spread over those it describes, one of them misread."""
    shows = tables.keyset.taxa[taxon].shows
    known = [name for name in names if name in shows and tables.characters[name].applies[tables.row(taxon)]]
    chosen = known[:: max(1, len(known) // 8)][:8]
    said = [(name, max(shows[name], key=shows[name].__getitem__)) for name in chosen]
    name, state = said[0]
    others = [s for s in tables.characters[name].character.state_ids if s != state]
    return [(name, others[0]), *said[1:]]


def _updated(tables: Tables, said: Sequence[Said], rounds: int) -> tuple[np.ndarray[Any, Any], Timing]:
    """The standing after the last of the answers, and what it took; those before it were there."""
    log_prior = np.log(prior(tables, Settings()))
    *before, last = [Report(name, frozenset({state}), evidence=EVIDENCE) for name, state in said]
    events = [report_event(tables, report) for report in before]
    stand, seconds = fastest(rounds, lambda: standing(tables, log_prior, [*events, report_event(tables, last)]))
    return stand.posterior, seconds


def _asked(tables: Tables, said: Sequence[Said]) -> dict[str, tuple[float, float]]:
    """Bits and clearing of every question, without the chance that the observer can tell at all."""
    log_prior = np.log(prior(tables, Settings()))
    events = [report_event(tables, Report(name, frozenset({state}), evidence=EVIDENCE)) for name, state in said]
    stand = standing(tables, log_prior, events)
    questions = next_questions(tables, log_prior, events, stand, not_ruled_out(tables, stand, events), EVIDENCE)
    tell = {q.character: tables.characters[q.character].character.tell for q in questions}
    return {q.character: (q.bits / tell[q.character], q.cleared / tell[q.character]) for q in questions}
