"""The update and the next question in plain Python, as they are defined: a peer that shares no code with the engine."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence

from keyapp.model import Character, Evidence, Form, KeySet

__all__ = ["PlainKey", "Said"]

Said = tuple[str, str]
"""A sure report: character and state."""
Logs = list[list[float]]
"""For each level of observer, a number for each row."""
Worth = Callable[[list[float], list[Said]], float]
"""What is gained when the rows stand like that after these reports."""

ASKED_WHERE = 0.5
CLOSELY = 12
TINY = 1e-300


class PlainKey:
    """A key without sizes and couplets, answered by sure reports alone.

    `rows` are its hypotheses as (result, maker) and `prior` their probabilities, in the same order; both are
    given, since neither is what is compared here. The last row is what is not in the key.
    """

    def __init__(
        self, keyset: KeySet, rows: Sequence[tuple[str, str]], prior: Sequence[float], evidence: Evidence
    ) -> None:
        self._keyset = keyset
        self._rows = rows
        self._prior = prior
        self._evidence = evidence
        self._levels = keyset.weights.observers
        self._group = [self._group_of(*row) for row in rows]
        self._danger = [self._danger_of(*row) for row in rows]
        self._chance = {name: self._chances(one) for name, one in keyset.characters.items()}
        self._told: dict[Said, Logs] = {}

    def update(self, said: Sequence[Said]) -> list[float]:
        """Probability of each row after these reports."""
        joint = self._joint(self._logs(said))
        return [sum(level[h] for level in joint) for h in range(len(self._rows))]

    def questions(self, said: Sequence[Said]) -> dict[str, tuple[float, float]]:
        """Expected bits and expected fall of openness of every character worth asking.

        The fall is worked out for those that promise most bits for the effort; it is 0 for the others.
        """
        joint = self._joint(self._logs(said))
        posterior = [sum(level[h] for level in joint) for h in range(len(self._rows))]
        inside = sum(posterior[:-1])
        answered = {name for name, _ in said}
        before = self._entropy(posterior)
        found = []
        for name, character in self._keyset.characters.items():
            fits = sum(p for h, p in enumerate(posterior[:-1]) if self._chance[name][h] is not None)
            if name not in answered and fits / inside >= ASKED_WHERE:
                bits = self._expected(joint, said, character, lambda after, _: before - self._entropy(after))
                found.append((-bits * character.tell / self._effort(character), name, bits))
        found.sort()
        open_before = self._openness(posterior, said)
        if not self._named(posterior, said):
            return {name: (bits, 0.0) for _, name, bits in found}
        result = {name: (bits, 0.0) for _, name, bits in found}
        for _, name, bits in found[:CLOSELY]:
            character = self._keyset.characters[name]
            fall = self._expected(joint, said, character, lambda after, then: open_before - self._openness(after, then))
            result[name] = (bits, fall)
        return result

    def _expected(self, joint: Logs, said: Sequence[Said], character: Character, worth: Worth) -> float:
        """The mean of `worth` over the reports of a character, each of which is tried."""
        total = 0.0
        for state in character.state_ids:
            told = self._log_told((character.id, state))
            chance = sum(
                math.exp(logs[h]) * level[h]
                for logs, level in zip(told, joint, strict=True)
                for h in range(len(self._rows))
            )
            then = [*said, (character.id, state)]
            total += chance * worth(self.update(then), then)
        return max(0.0, total)

    def _effort(self, character: Character) -> float:
        return self._keyset.weights.asking + character.seconds

    def _logs(self, said: Sequence[Said]) -> Logs:
        """Log likelihood: independence groups are summed; within one the evidence is that of the strongest answer."""
        logs = [[0.0] * len(self._rows) for _ in self._levels]
        blocks: dict[str, list[Said]] = {}
        for one in said:
            blocks.setdefault(self._keyset.characters[one[0]].group, []).append(one)
        for block in blocks.values():
            each = [self._log_told(one) for one in block]
            spreads = [round(max(max(level) - min(level) for level in told), 12) for told in each]
            best = max(range(len(block)), key=lambda i: (spreads[i], repr((block[i][0],))))
            for o, level in enumerate(logs):
                tops = [max(told[o]) for told in each]
                for h in range(len(level)):
                    level[h] += min(told[o][h] - top for told, top in zip(each, tops, strict=True)) + tops[best]
        return logs

    def _joint(self, logs: Logs) -> Logs:
        joint = [
            [math.log(observer.share) + level[h] + math.log(self._prior[h]) for h in range(len(self._rows))]
            for observer, level in zip(self._levels, logs, strict=True)
        ]
        top = max(max(level) for level in joint)
        joint = [[math.exp(value - top) for value in level] for level in joint]
        total = sum(sum(level) for level in joint)
        return [[value / total for value in level] for level in joint]

    def _log_told(self, one: Said) -> Logs:
        """Log chance of a sure report, by level of observer and row."""
        if one not in self._told:
            weights = self._keyset.weights
            character = self._keyset.characters[one[0]]
            k = character.state_ids.index(one[1])
            found = []
            for observer in self._levels:
                reads = [self._reading(character, s, observer.factor)[k] for s in range(len(character.states))]
                elsewhere = weights.inapplicable / len(character.states)
                chances = [
                    elsewhere if row is None else sum(a * b for a, b in zip(row, reads, strict=True))
                    for row in self._chance[character.id]
                ]
                found.append([math.log(max(TINY, chance)) for chance in chances])
            self._told[one] = found
        return self._told[one]

    def _reading(self, character: Character, true: int, factor: float) -> list[float]:
        """Chance of each report where state `true` is what there is."""
        weights, state = self._keyset.weights, character.states[true]
        right = character.right if state.right is None else state.right
        scale = weights.sureness.get("sure", 1.0) * weights.evidence.get(str(self._evidence), 1.0) * factor
        error = 1.0 - (1.0 - min(1.0, (1.0 - right) * scale)) * (1.0 - min(1.0, weights.slip * scale))
        error = min(weights.error_cap, error)
        named = {character.state_ids.index(s): p for s, p in state.mistaken_for.items()}
        others = [k for k in range(len(character.states)) if k != true and named.get(k, 0.0) == 0.0]
        left = max(0.0, 1.0 - sum(named.values()))
        wrong = [named.get(k, left / len(others) if k in others else 0.0) for k in range(len(character.states))]
        total = sum(wrong)
        return [(1.0 - error if k == true else 0.0) + error * wrong[k] / total for k in range(len(wrong))]

    def _chances(self, character: Character) -> list[list[float] | None]:
        """For each row the chance of each state, or None where the character does not apply."""
        own = {name: self._described(character, shown) for name, shown in self._shown(character).items()}
        count = len(character.states)
        # Every kind counts once; here each result is a kind of its own.
        mean = [sum(row[k] for row in own.values()) / len(own) if own else 1.0 / count for k in range(count)]
        breadth = self._keyset.weights.outside_breadth
        found: list[list[float] | None] = []
        for name, _ in self._rows[:-1]:
            found.append(own.get(name, mean) if self._applies(character, name) else None)
        found.append([(1.0 - breadth) * value + breadth / count for value in mean])
        return found

    def _shown(self, character: Character) -> dict[str, Mapping[str, float]]:
        every = [t for t in self._keyset.taxa.values() if t.shows.get(character.id)]
        return {t.id: t.shows[character.id] for t in every if self._applies(character, t.id)}

    def _described(self, character: Character, shown: Mapping[str, float]) -> list[float]:
        unlisted, count = self._keyset.weights.unlisted, len(character.states)
        row = [shown.get(state, 0.0) for state in character.state_ids]
        left, free = max(0.0, 1.0 - sum(row)), [k for k in range(count) if row[k] == 0]
        if left > 1e-12:
            for k in free or range(count):
                row[k] += left / len(free or row)
        total = sum(row)
        return [(1.0 - unlisted) * value / total + unlisted / count for value in row]

    def _applies(self, character: Character, name: str) -> bool:
        rule, taxon = character.applies_to, self._keyset.taxa[name]
        names = {taxon.class_, taxon.order, taxon.family, taxon.danger_group}
        if rule.forms and str(taxon.form) not in rule.forms:
            return False
        if rule.groups and taxon.form is Form.ANIMAL and not names & set(rule.groups):
            return False
        return not names & set(rule.not_groups)

    def _group_of(self, name: str, maker: str) -> str:
        """What a row is summed under: its danger group or family; a web of several families under itself."""
        if name not in self._keyset.taxa:
            return "outside"
        taxon, model = self._keyset.taxa[name], self._keyset.taxa[maker]
        makers = [self._keyset.taxa[kind] for kind in taxon.made_by]
        families = [m.family for m in makers if not m.danger.is_gated]
        most = max((families.count(f) for f in families), default=0)
        if model.danger.is_gated:
            return f"danger {model.danger_group}"
        if len(set(families)) > 1 and 2 * most < len(families):
            return f"sign {name}"
        return f"family {model.family}"

    def _danger_of(self, name: str, maker: str) -> str:
        model = self._keyset.taxa.get(maker)
        return model.danger_group if model is not None and model.danger.is_gated else ""

    def _entropy(self, posterior: Sequence[float]) -> float:
        sums: dict[str, float] = {}
        for group, p in zip(self._group, posterior, strict=True):
            sums[group] = sums.get(group, 0.0) + p
        return -sum(p * math.log2(p) for p in sums.values() if p > 0)

    def _counts(self, row: int, said: Sequence[Said]) -> int:
        """Independence groups of reports that the description of a row never shows, and that may clear."""
        groups = set()
        for name, state in said:
            character = self._keyset.characters[name]
            shown = self._keyset.taxa[self._rows[row][0]].shows.get(name)
            may_clear = not character.never_clears and not character.state(state).absence
            if may_clear and shown and self._chance[name][row] is not None and shown.get(state, 0.0) == 0:
                groups.add(character.group)
        return len(groups)

    def _fits(self, said: Sequence[Said]) -> list[float]:
        """Likelihood of each row, over all levels of observer, with that of the best row as 1."""
        logs = self._logs(said)
        rows = range(len(self._rows))
        top = max(max(level) for level in logs)
        fits = [
            sum(o.share * math.exp(level[h] - top) for o, level in zip(self._levels, logs, strict=True)) for h in rows
        ]
        best = max(fits)
        return [fit / best for fit in fits]

    def _openness(self, posterior: Sequence[float], said: Sequence[Said]) -> float:
        weights, fits, total = self._keyset.weights, self._fits(said), 0.0
        for danger in sorted(set(self._danger) - {""}):
            rows = [h for h, own in enumerate(self._danger) if own == danger]
            missing = 1.0 - min(1.0, min(self._counts(h, said) for h in rows) / weights.ruled_out_answers)
            mass, fit = sum(posterior[h] for h in rows), max(fits[h] for h in rows)
            above = math.log(max(mass, 1e-12) / weights.ruled_out_posterior) / -math.log(weights.ruled_out_posterior)
            reach = math.log(max(fit, 1e-12) / weights.ruled_out_ratio) / -math.log(weights.ruled_out_ratio)
            total += 0.5 * missing + 0.5 * min(1.0, max(0.0, above, reach))
        return total

    def _named(self, posterior: Sequence[float], said: Sequence[Said]) -> bool:
        """Whether any danger is not ruled out."""
        weights, fits = self._keyset.weights, self._fits(said)
        low = [h for h, danger in enumerate(self._danger) if danger]
        masses: dict[str, float] = {}
        for h in low:
            masses[self._danger[h]] = masses.get(self._danger[h], 0.0) + posterior[h]
        return any(mass >= weights.ruled_out_posterior for mass in masses.values()) or any(
            fits[h] >= weights.ruled_out_ratio or self._counts(h, said) < weights.ruled_out_answers for h in low
        )
