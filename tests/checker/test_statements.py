"""What the statements of a key rest on."""

from __future__ import annotations

from pathlib import Path

from keyapp.checker import Resting, counted
from keyapp.checker.statements import HEALTH, LOOKS
from keyapp.cli.main import run
from keyapp.keyfile import require_keyset

BASE = Path(__file__).parent.parent / "cases" / "base"


def test_a_statement_counts_once_at_the_strongest_it_names():
    assert (Resting(3, 1, 0).total, Resting(3, 1, 0).share, Resting().share) == (4, 0.75, 0.0)


def test_every_character_of_every_result_is_counted():
    keyset = require_keyset(BASE)
    shown = sum(len(taxon.shows) + len(taxon.sizes) for taxon in keyset.taxa.values())
    assert counted(keyset)[LOOKS].total == shown > 0


def test_more_than_half_of_what_is_said_about_health_is_published(shipped):
    health = counted(shipped.keyset)[HEALTH]
    assert health.total > 300
    assert health.share > 0.5


def test_the_terminal_counts_them(capsys):
    assert run(["check", str(BASE), "--basis"]) in (0, 1)
    assert "about health" in capsys.readouterr().out
