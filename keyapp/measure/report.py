"""The report on a key: its measures as text and as JSON."""

from __future__ import annotations

import dataclasses
import json
import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from keyapp.measure.errors import CoupletLoss
from keyapp.measure.measures import OWN, Measures
from keyapp.measure.misread_paths import MisreadPath
from keyapp.measure.pairs import Pair

__all__ = ["json_text", "plain_text"]

SHOWN = 12
"""Lines of a list in the text; JSON holds all."""


def json_text(measures: Measures) -> str:
    """Every figure as JSON: chances 0-1, questions and bits unrounded but for the ninth digit."""
    return json.dumps(_plain(measures), indent=2, ensure_ascii=False)


def _plain(value: Any) -> Any:
    if dataclasses.is_dataclass(value):
        return {field.name: _plain(getattr(value, field.name)) for field in dataclasses.fields(value)}
    if isinstance(value, Mapping):
        return {str(name): _plain(item) for name, item in value.items()}
    if isinstance(value, frozenset):
        return sorted(value)
    if isinstance(value, Sequence) and not isinstance(value, str):
        return [_plain(item) for item in value]
    return round(value, 9) if isinstance(value, float) else value


def plain_text(measures: Measures) -> str:
    """The measures in lines of plain text, the weakest places first."""
    parts = (_shape, _order, _errors, _weak_results, _weak_couplets, _pairs, _misreads, _answers)
    return "\n".join(line for part in parts for line in part(measures)).strip()


def _shape(m: Measures) -> Iterator[str]:
    yield (
        f"{m.shape.couplets} couplets, {m.shape.results} results, {m.shape.rejoining} leads that rejoin; "
        f"longest path {m.shape.longest} couplets"
    )


def _order(m: Measures) -> Iterator[str]:
    b, g = m.bounds, m.greedy
    yield ""
    yield "Couplets to the result, without error, results as common as they are:"
    yield f"  as written             {m.expected:6.2f}"
    yield (
        f"  greedy order           {g.mean:6.2f}   from the same characters; {g.couplets} couplets, "
        f"longest {g.longest}, {g.bits_left:.3f} bits left"
    )
    whole = next((e for e in m.below if math.isclose(e.share, 1.0) and e.results > 1), None)
    best = f"{whole.best:6.2f}" if whole and whole.best is not None else "     -"
    note = "" if whole and whole.best is not None else "   too many kinds of specimen to work out; parts below"
    yield f"  best order             {best}{note}"
    yield f"  Huffman bound          {b.huffman:6.2f}   were every split askable (groups: {b.huffman_groups:.2f})"
    yield f"  entropy bound          {b.entropy:6.2f}   (groups: {b.entropy_groups:.2f})"
    yield f"  all equally common     {b.least_even:6.2f}   best tree; worst {b.worst_even:.2f}"
    yield (
        "  questions with 0, 1, 2, 3 wrong answers allowed for: "
        + ", ".join(str(q) for q in b.lies.values())
        + ("; by how common results are, about " + ", ".join(f"{q:.1f}" for q in b.lies_bits.values()))
    )
    over = sorted(
        ((e.share * (e.written - e.best), e) for e in m.below if e.best is not None and e.written > e.best + 1e-9),
        key=lambda item: -item[0],
    )
    if over:
        yield ""
        yield "Parts that take more couplets than the best order of their characters (share asked, as written, best):"
        for _, e in over[:SHOWN]:
            yield f"  {e.couplet:40} {e.share:6.1%} {e.written:6.2f} {e.best:6.2f}   {e.results} results"


def _errors(m: Measures) -> Iterator[str]:
    yield ""
    yield "Strict following, by chance that a couplet is misread:"
    yield "  misread   couplets  other group  danger miss  bits left  least couplets"
    for name, r in m.rates.items():
        yield (
            f"  {name:8} {r.couplets:9.2f} {r.error:12.1%} {r.danger_miss:12.1%} {r.bits_left:10.2f} "
            f"{r.least_couplets:15.2f}"
        )
    yield f"  ({OWN}: the rate of each couplet's least reliable character;"
    yield "  least couplets: bits told / most that one answer can tell)"
    if m.named_outside:
        shares = ", ".join(f"{taxon} {chance:.0%}" for taxon, chance in m.named_outside.items())
        yield f"  not in the key, yet ends under a name without any error: {shares}"
    yield "  danger miss by group: " + ", ".join(
        f"{group} {miss:.0%}" for group, miss in sorted(m.rates[OWN].danger_by_group.items(), key=lambda item: -item[1])
    )


def _weak_results(m: Measures) -> Iterator[str]:
    yield ""
    yield f"Weakest results (rates: {OWN}):             couplets  other group  danger miss  no danger named"
    for t in m.rates[OWN].taxa[:SHOWN]:
        miss = f"{t.danger_miss:12.1%} {t.unwarned:16.1%}" if t.danger_miss is not None else ""
        yield f"  {t.taxon:40} {t.couplets:9.2f} {t.error:12.1%} {miss}".rstrip()


def _weak_couplets(m: Measures) -> Iterator[str]:
    losses = m.rates[OWN].losses
    rankings: dict[str, Callable[[CoupletLoss], float]] = {
        "error": lambda c: c.error_lost,
        "danger": lambda c: c.danger_lost,
    }
    for title, lost in rankings.items():
        yield ""
        yield f"Couplets that lose most ({title}; rates: {OWN}):  rate    asked   error lost  danger lost"
        for c in sorted(losses, key=lambda c: (-lost(c), c.couplet))[:SHOWN]:
            yield f"  {c.couplet:40} {c.error:6.1%} {c.visits:8.1%} {c.error_lost:11.2%} {c.danger_lost:12.2%}"
    stray = [c for c in m.rates["0 %"].losses if c.neither > 1e-9 or c.inapplicable > 1e-9]
    if stray:
        yield ""
        yield "Asked without error where neither lead fits, or where it does not apply (share of specimens):"
        for c in sorted(stray, key=lambda c: -(c.neither + c.inapplicable))[:SHOWN]:
            yield f"  {c.couplet:40} {c.neither:8.2%} {c.inapplicable:8.2%}"


def _pairs(m: Measures) -> Iterator[str]:
    for title, found in (
        (f"Pairs of results that nothing separates ({len(m.unseparated)} of {m.pair_count}):", m.unseparated),
        (f"Pairs with a danger that too few independence groups separate ({len(m.thin)}):", m.thin),
    ):
        yield ""
        yield title
        for pair in found[:SHOWN]:
            yield f"  {_pair(pair)}"
        if len(found) > SHOWN:
            yield f"  and {len(found) - SHOWN} more; all with --json"


def _pair(pair: Pair) -> str:
    danger = f"   [{', '.join(pair.danger)}]" if pair.danger else ""
    by = f"   by {', '.join(pair.separated_by)}" if pair.separated_by else ""
    return f"{pair.first} / {pair.second}{danger}{by}"


def _misreads(m: Measures) -> Iterator[str]:
    for title, paths in (
        ("Cheapest misread path to each dangerous result:", m.towards),
        ("Cheapest misread path from a dangerous specimen to an end that does not name it:", m.away),
    ):
        yield ""
        yield title
        for path in sorted(paths.values(), key=lambda p: (p.cost, p.specimen, p.end)):
            yield f"  {_path(path)}"


def _path(path: MisreadPath) -> str:
    turns = ", ".join(f"{t.couplet}: lead {t.lead}{'' if t.misread else ' (a rarer state)'}" for t in path.turns)
    odds = f"cost {path.cost:.2f} (1 in {math.exp(path.cost):.0f})"
    return f"{path.specimen} > {path.end}: {odds}; {turns or 'no misreading'}"


def _answers(m: Measures) -> Iterator[str]:
    yield ""
    yield (
        f"Reports of characters instead of couplets: at least {m.least_reports:.2f} to tell as much as the key does "
        f"(rates: {OWN})"
    )
    named = list(m.capacities.items())
    for title, some in (("most", named[:5]), ("least", named[-5:])):
        yield f"  tell {title}: " + ", ".join(f"{name} {bits:.2f} bits" for name, bits in some)
