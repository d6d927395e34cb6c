"""Every sentence about a reading, in one place and in the reader's language."""

from __future__ import annotations

from collections.abc import Sequence

from keyapp.engine import Action, Claim, GroupId, Reading
from keyapp.model import (
    Answer,
    Caution,
    Choice,
    Contact,
    ContactKind,
    Evidence,
    KeySet,
    LeadAnswer,
    Measurement,
    Report,
    Settings,
    Sureness,
)
from keyapp.model.text import DEFAULT_LANGUAGE

__all__ = ["Words"]

CHANCE_WORDS = ((0.6, "chance.top"), (0.2, "chance.likely"), (0.05, "chance.possible"), (0.01, "chance.little"))


class Words:
    """Turns readings into sentences of the key's own wording, in `language`."""

    def __init__(self, keyset: KeySet, language: str = DEFAULT_LANGUAGE) -> None:
        self.keyset = keyset
        self.language = language

    def fixed(self, entry: str, /, **parts: str) -> str:
        """A fixed sentence with its {parts} filled in; KeyError if the key set lacks it."""
        text = self.keyset.wording[entry].say(self.language)
        for part, value in parts.items():
            text = text.replace("{" + part + "}", value)
        return text

    # Names -----------------------------------------------------------------------------------

    def danger(self, group: str) -> str:
        """Plain name of a danger group."""
        found = self.keyset.danger_groups.get(group)
        return found.name.say(self.language) if found else group

    def group(self, group: GroupId) -> str:
        """Plain name of a group with its scientific name."""
        if group.level == "outside":
            return self.fixed("group.outside")
        if group.level == "danger":
            return self.danger(group.name)
        plain = self.keyset.wording.get(f"{group.level}.{group.name}")
        if plain is None:
            taxon = self.keyset.taxa.get(group.name)
            return taxon.title.say(self.language) if taxon else group.name
        return f"{plain.say(self.language)} ({group.name})"

    def taxon(self, taxon_id: str) -> str:
        """Title of a result."""
        return self.keyset.taxa[taxon_id].title.say(self.language)

    def chance(self, chance: float) -> str:
        """A chance in words; numbers are kept for the key bench and for scripts."""
        for least, name in CHANCE_WORDS:
            if chance >= least:
                return self.fixed(name)
        return self.fixed("chance.hardly")

    def answer(self, answer: Answer) -> str:
        """One answer in a few words."""
        if isinstance(answer, LeadAnswer):
            couplet = self.keyset.couplets[answer.couplet]
            if answer.choice in (Choice.CANT_TELL, Choice.NEITHER):
                said = f"{couplet.asks.say(self.language)} {self.fixed(f'choice.{answer.choice}')}"
            else:
                said = couplet.leads[0 if answer.choice is Choice.FIRST else 1].says.say(self.language)
        else:
            character = self.keyset.characters[answer.character]
            question = character.question.say(self.language)
            if isinstance(answer, Measurement):
                said = f"{question} {answer.mm:g} mm"
            elif self.says_nothing(answer):
                return f"{question} {self.fixed('choice.cant-tell')}"
            else:
                joint = " + " if answer.both else " / "
                labels = [
                    character.state(s).label.say(self.language) for s in character.state_ids if s in answer.states
                ]
                said = f"{question} {joint.join(labels)}"
        return said if answer.sureness is Sureness.SURE else f"{said} ({self.fixed('sureness.think-so')})"

    def says_nothing(self, answer: Answer) -> bool:
        """Whether a report leaves every state open, which is how *can't tell* is kept."""
        return isinstance(answer, Report) and len(answer.states) == len(self.keyset.characters[answer.character].states)

    # Safety ----------------------------------------------------------------------------------

    def safety_line(self, reading: Reading) -> str:
        """What is not ruled out. Never reassuring while anything is open."""
        if reading.not_ruled_out:
            return self.fixed("safety.some", names=self.listing([self.danger(d.group) for d in reading.not_ruled_out]))
        if Action.KEEP_AWAY in reading.verdict.actions:
            return self.fixed("safety.unknown")
        return self.fixed("safety.none")

    def settle_lines(self, reading: Reading) -> tuple[str, ...]:
        """For each danger not ruled out, what would settle it best."""
        lines = []
        for danger in reading.not_ruled_out:
            best = reading.settles.get(danger.group)
            name = self.danger(danger.group)
            if best is None:
                lines.append(self.fixed("settle-none", name=name))
            else:
                question = self.keyset.characters[best.character].question.say(self.language)
                lines.append(self.fixed("settle", name=name, question=question))
        return tuple(lines)

    # Result ----------------------------------------------------------------------------------

    def heading(self, reading: Reading) -> str:
        """The claim, as firmly as the evidence allows."""
        found = reading.verdict
        if not reading.events:
            return self.fixed("nothing-yet")
        if found.claim is Claim.UNKNOWN:
            return self.fixed("unknown")
        if found.claim is Claim.ONE_OF:
            return self.fixed("claim.one-of")
        return self.fixed(f"claim.{found.claim}", name=self.within(self.group(found.candidates[0].group)))

    def reason(self, reading: Reading) -> str:
        """Why the claim is no firmer."""
        found = reading.verdict
        if found.claim is Claim.ONE_OF and reading.case.is_doubted:
            return self.fixed("claim-why.doubt")
        firm = reading.standing.groups[0][1] >= self.keyset.weights.firm
        if found.claim is Claim.ONE_OF and firm and not found.differs and found.basis is Evidence.WORDS:
            return self.fixed("claim-why.words")
        return self.fixed(f"claim-why.{found.claim}")

    def led_line(self, reading: Reading) -> str:
        """Where the key led, and whether the standing agrees; empty where it led nowhere yet."""
        found = reading.verdict
        if not found.led_to:
            return ""
        led = self.within(self.listing([self.taxon(t) for t in found.led_to]))
        if found.differs:
            return self.fixed("differs", led=led, top=self.within(self.group(found.candidates[0].group)))
        return self.fixed("led-to", led=led)

    def action_lines(self, reading: Reading) -> tuple[tuple[Action, str, str], ...]:
        """What may be said to do: the action, its line and its reason."""
        actions = reading.verdict.actions
        lines = []
        for action in actions:
            brood = action is Action.LEAVE and Action.MOVE not in actions
            why = "action.leave-brood-why" if brood else f"action.{action}-why"
            lines.append((action, self.fixed(f"action.{action}"), self.fixed(why)))
        return tuple(lines)

    def cautions(self, reading: Reading) -> tuple[tuple[str, tuple[Caution, ...]], ...]:
        """Cautions under the name of their result: dangers not ruled out first, then the likeliest.

        A statement already shown is not repeated.
        """
        order: list[str] = [d.taxa[0] for d in reading.not_ruled_out]
        order += [c.taxa[0] for c in reading.verdict.candidates if c.taxa]
        shown: set[str] = set()
        blocks = []
        for taxon_id in dict.fromkeys(order):
            taxon = self.keyset.taxa[taxon_id]
            fresh = tuple(c for c in taxon.cautions if c.says.say(self.language) not in shown)
            shown |= {c.says.say(self.language) for c in fresh}
            if fresh:
                blocks.append((taxon.title.say(self.language), fresh))
        return tuple(blocks)

    def would_change(self, reading: Reading) -> str:
        """One line: what would change the answer."""
        for danger in reading.not_ruled_out:
            best = reading.settles.get(danger.group)
            if best is not None:
                character = self.keyset.characters[best.character]
                labels = [character.state(s).label.say(self.language) for s in (*best.points[:1], *best.clears[:1])]
                what = f"{character.question.say(self.language)} ({' / '.join(labels)})"
                return self.fixed("would-change", what=what)
        return self.fixed("would-change", what=self.fixed("would-change-none"))

    # Referral --------------------------------------------------------------------------------

    def contacts(self, settings: Settings) -> tuple[Contact, ...]:
        """Contacts for where the person is, nearest first; each kind once or more."""
        regions = self.keyset.regions
        current = settings.region
        if current and current not in regions:
            current = next((r.id for r in regions.values() if current in r.states and not r.part_of), None)
        found: list[Contact] = []
        while current and current in regions:
            found += [c for c in regions[current].contacts if c not in found]
            current = regions[current].part_of
        if not found:
            national = [ContactKind.EMERGENCY, ContactKind.POISON]
            every = [c for r in regions.values() if not r.demo for c in r.contacts if c.kind in national]
            found = [
                next(c for c in every if c.kind is kind) for kind in national if any(c.kind is kind for c in every)
            ]
        return tuple(found)

    def referral(self, settings: Settings) -> tuple[str, ...]:
        """Who to turn to: a person first, then about the animal."""
        contacts = self.contacts(settings)
        numbers = {c.kind: c for c in reversed(contacts)}
        lines = []
        if ContactKind.EMERGENCY in numbers:
            lines.append(self.fixed("refer.emergency", emergency=numbers[ContactKind.EMERGENCY].telephone))
        if ContactKind.POISON in numbers:
            lines.append(self.fixed("refer.person", poison=numbers[ContactKind.POISON].telephone))
        office = numbers.get(ContactKind.EXTENSION)
        if office is not None and office.telephone:
            name = office.name.say(self.language)
            lines.append(self.fixed("refer.animal", name=name, telephone=office.telephone))
        else:
            lines.append(self.fixed("refer.animal-none"))
        if not settings.region:
            lines.append(self.fixed("refer.elsewhere"))
        return tuple(lines)

    def basis(self, basis: Sequence[str]) -> str:
        """Sources in words: titles with publishers, or common practice, or from memory."""
        names = []
        for one in basis:
            source = self.keyset.sources.get(one)
            names.append(f"{source.title} ({source.publisher})" if source else one)
        return "; ".join(names)

    def told_facts(self, told: str) -> tuple[str, ...]:
        """What is on file about the name a person was told, set straight; each fact once."""
        plain = " ".join(told.casefold().split())
        facts = [
            one.fact.say(self.language)
            for taxon in self.keyset.taxa.values()
            for one in taxon.misnames
            if plain and " ".join(one.said.casefold().split()) in plain
        ]
        return tuple(dict.fromkeys(facts))

    def contradiction_lines(self, reading: Reading) -> tuple[str, ...]:
        """Answers to settle, in words."""
        return tuple(
            self.fixed("contradiction", first=self.answer(one.first), second=self.answer(one.second))
            for one in reading.contradictions
        )

    @staticmethod
    def listing(names: Sequence[str]) -> str:
        """Names in a row."""
        return ", ".join(dict.fromkeys(names))

    @staticmethod
    def within(name: str) -> str:
        """A name as it stands inside a sentence."""
        return name[:1].lower() + name[1:]
