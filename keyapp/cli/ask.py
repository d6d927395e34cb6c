"""`keyapp ask`: the key as a conversation in the terminal, plain enough for a screen reader."""

from __future__ import annotations

import calendar
from collections.abc import Callable, Sequence
from pathlib import Path

from keyapp.cli.ask_feared import say_best, say_stop, talk_of_feared
from keyapp.cli.open import open_tables
from keyapp.cli.terminal import Terminal
from keyapp.engine import THING, StepKind
from keyapp.errors import UserError
from keyapp.model import Choice, Evidence, LeadAnswer, Sureness
from keyapp.model.injury import speaks_of_injury
from keyapp.wording import Words
from keyapp.work import Enquiry

__all__ = ["Conversation", "run"]

HELP = """Type one of these, then Enter:
  1 or 2       that statement is true         1? or 2?   you think so, but are not sure
  c            can't tell                     n          neither fits
  b            back one answer                u, r       undo, redo
  say          report something you saw       size       report a size in mm
  best         what would help most to look at
  is NAME      is it this animal? What speaks for it and against it, as: is black widow
  trail        the answers so far             why        what is not ruled out, and what would settle it
  again        ask an earlier couplet again   result     the result so far
  hurt         someone was bitten, stung or feels unwell
  new          start again                    quit       leave"""

MONTHS = list(calendar.month_name)[1:]


class Conversation:
    """Asks and answers about one enquiry."""

    def __init__(self, out: Terminal, enquiry: Enquiry, words: Words) -> None:
        self.out = out
        self.enquiry = enquiry
        self.words = words
        self.done = False
        self._safety = ""

    # The talk ----------------------------------------------------------------------------------

    def hold(self) -> None:
        """Talk until the person leaves or the input ends."""
        self.out.say("Garden arthropod key. Type ? for help. Do not handle an animal you do not know.")
        self._begin()
        while not self.done:
            self._show()
            line = self.out.read()
            if line is None:
                break
            self._take(line.strip())

    def _begin(self) -> None:
        hurt = self._pick("Has anyone been bitten, stung or become unwell?", ["yes", "no"], skip=True)
        if hurt is not None:
            self.enquiry.set_up(hurt=hurt == 0)
        if hurt == 0:
            self._emergency()
        keyset = self.enquiry.tables.keyset
        language = self.words.language
        things = [(state.id, state.label.say(language)) for state in keyset.characters[THING].states]
        self._pick_setting("What do you have?", "thing", things)
        self._pick_setting("Where was it?", "spot", [(s.id, s.label.say(language)) for s in keyset.spots.values()])
        state = self._line("Which state is it in? Two letters, as MO. Enter to skip.")
        while state:
            try:
                self.enquiry.set_up(region=state.upper())
                break
            except UserError as error:
                self.out.problem(error)
                state = self._line("Two letters, or Enter to skip.")
        self._pick_setting("Which month?", "month", [(i + 1, name) for i, name in enumerate(MONTHS)])
        evidence = [(e, self.words.fixed(f"evidence.{e}")) for e in Evidence]
        self._pick_setting("What do your answers rest on?", "evidence", evidence)
        told = self._line("What were you told it is? Kept, and shown at the end. Enter to skip.")
        if told:
            self.enquiry.set_up(told=told)
            if speaks_of_injury(told, keyset.emergency.words):
                self._emergency()

    def _show(self) -> None:
        reading = self.enquiry.reading
        safety = self.words.safety_line(reading)
        self.out.say("")
        if safety != self._safety:
            self.out.say(safety)
            self._safety = safety
        for line in self.words.contradiction_lines(reading):
            self.out.say(line)
        if reading.go_back:
            couplet = self.enquiry.tables.keyset.couplets[reading.go_back]
            self.out.say(self.words.fixed("neither-twice", couplet=couplet.asks.say(self.words.language)))
        if reading.current is None:
            self.result()
            self.out.say("The key has no more to ask. Type best, is, trail, say, again, why, new or quit.")
            return
        couplet = self.enquiry.tables.keyset.couplets[reading.current]
        self.out.say(couplet.asks.say(self.words.language))
        for number, lead in enumerate(couplet.leads, start=1):
            self.out.say(f"  {number}. {lead.says.say(self.words.language)}")
        self.out.say("  c. can't tell   n. neither fits   ?. help")

    def _take(self, line: str) -> None:
        word, _, rest = line.partition(" ")
        acts: dict[str, Callable[[], object]] = {
            "": lambda: None,
            "?": lambda: self.out.say(HELP),
            "help": lambda: self.out.say(HELP),
            "1": lambda: self._answer(Choice.FIRST),
            "2": lambda: self._answer(Choice.SECOND),
            "1?": lambda: self._answer(Choice.FIRST, Sureness.THINK_SO),
            "2?": lambda: self._answer(Choice.SECOND, Sureness.THINK_SO),
            "c": lambda: self._answer(Choice.CANT_TELL),
            "n": lambda: self._answer(Choice.NEITHER),
            "b": self._back,
            "u": lambda: self.out.say("Undone." if self.enquiry.undo() else "There is nothing to undo."),
            "r": lambda: self.out.say("Done again." if self.enquiry.redo() else "There is nothing to do again."),
            "say": lambda: self._say(rest),
            "size": self._size,
            "best": lambda: say_best(self.out, self.enquiry, self.words, self._ask),
            "is": lambda: self._is(rest),
            "trail": self._trail,
            "why": self._why,
            "again": self._again,
            "result": self.result,
            "hurt": self._emergency,
            "new": self._new,
            "quit": self._quit,
        }
        if word.lower() in acts:
            try:
                acts[word.lower()]()
            except UserError as error:
                self.out.problem(error)
        elif speaks_of_injury(line, self.enquiry.tables.keyset.emergency.words):
            self._emergency()
        else:
            self.out.say(f"“{word}” is not known here. Type ? for help.")

    # Acts --------------------------------------------------------------------------------------

    def _answer(self, choice: Choice, sureness: Sureness = Sureness.SURE) -> None:
        couplet = self.enquiry.reading.current
        if couplet is None:
            raise UserError("The key has no couplet left.", fix="Type again to change an answer.")
        view = self.enquiry.lead_needs_view(couplet, choice)
        seen = None if view is None else self._yes(f"Was that side ({view}) in view?")
        self.enquiry.choose(couplet, choice, sureness, view_seen=seen)

    def _back(self) -> None:
        if self.enquiry.back() is None:
            self.out.say("There is no answer to take back.")

    def _say(self, wanted: str) -> None:
        characters = [c for c in self.enquiry.tables.keyset.characters.values() if c.states]
        found = next((c for c in characters if c.id == wanted), None)
        if found is None:
            index = self._pick(
                "What did you see?", [c.question.say(self.words.language) for c in characters], skip=True
            )
            if index is None:
                return
            found = characters[index]
        self._ask(found.id)

    def _ask(self, character_id: str) -> bool:
        """Put a direct question; False where the person leaves it."""
        found = self.enquiry.tables.keyset.characters[character_id]
        self.out.say(found.look.say(self.words.language))
        labels = [s.label.say(self.words.language) for s in found.states]
        question = found.question.say(self.words.language)
        index = self._pick(question, [*labels, self.words.fixed("choice.cant-tell")], skip=True)
        if index is None:
            return False
        if index == len(labels):
            # Every state left open is how can't tell is kept: it says nothing, and is not asked again.
            self.enquiry.report(found.id, frozenset(found.state_ids), view_seen=False)
            return True
        state = found.states[index]
        seen = self._yes(f"Was that side ({found.view}) in view?") if state.absence else None
        sure = Sureness.SURE if self._yes("Are you sure?") else Sureness.THINK_SO
        self.enquiry.report(found.id, frozenset({state.id}), sureness=sure, view_seen=seen)
        return True

    def _is(self, name: str) -> None:
        name = name.strip() or self._line("Which animal are you afraid it is? Enter to skip.")
        if speaks_of_injury(name, self.enquiry.tables.keyset.emergency.words):
            self._emergency()
        elif name:
            talk_of_feared(self.out, self.enquiry, self.words, name, self._ask, self._pick_one)

    def _size(self) -> None:
        numeric = [c for c in self.enquiry.tables.keyset.characters.values() if c.number]
        index = self._pick("Which size?", [c.question.say(self.words.language) for c in numeric], skip=True)
        if index is None:
            return
        text = self._line("How many millimetres? Enter to skip.")
        if text:
            try:
                value = float(text.replace(",", "."))
            except ValueError:
                raise UserError(f"“{text}” is not a number.", fix="Give mm as a number, as 12 or 7.5.") from None
            self.enquiry.measure(numeric[index].id, value)

    def _trail(self) -> None:
        reading = self.enquiry.reading
        for number, step in enumerate(reading.walk.steps, start=1):
            answer = step.answer or LeadAnswer(step.couplet, step.choice)
            mark = " (passed: your other answers settle it)" if step.kind is StepKind.PASSED else ""
            self.out.say(f"  {number}. {self.words.answer(answer)}{mark}")
        for note in self.enquiry.case.answers:
            if not isinstance(note, LeadAnswer):
                self.out.say(f"  reported: {self.words.answer(note)}")
        for answer in reading.walk.set_aside:
            self.out.say(f"  set aside for now: {self.words.answer(answer)}")

    def _again(self) -> None:
        steps = self.enquiry.reading.walk.steps
        couplets = self.enquiry.tables.keyset.couplets
        index = self._pick("Which one?", [couplets[s.couplet].asks.say(self.words.language) for s in steps], skip=True)
        if index is not None:
            self.enquiry.reopen(steps[index].couplet)

    def _why(self) -> None:
        reading = self.enquiry.reading
        self.out.say(self.words.safety_line(reading))
        for line in self.words.settle_lines(reading):
            self.out.say("  " + line)
        for group, chance in reading.standing.groups[:6]:
            self.out.say(f"  {self.words.group(group)}: {self.words.chance(chance)}")

    def result(self) -> None:
        """The result so far, whole."""
        reading = self.enquiry.reading
        words, say = self.words, self.out.say
        say(words.heading(reading))
        say(words.reason(reading))
        say(words.safety_line(reading))
        for line in words.settle_lines(reading):
            say("  " + line)
        if reading.events:
            for candidate in reading.verdict.candidates:
                say(f"  {words.group(candidate.group)}: {words.chance(candidate.chance)}")
                if candidate.taxa:
                    diagnosis = self.enquiry.tables.keyset.taxa[candidate.taxa[0]].diagnosis
                    say(f"    Does this fit? {diagnosis.say(words.language)}")
        for look in self.enquiry.second_look:
            say(words.fixed("second-look", name=words.danger(look.group)))
            for answer in look.answers:
                say("  " + words.answer(answer))
        say("What to do:")
        for _, line, why in words.action_lines(reading):
            say(f"  {line} {why}")
        for title, cautions in words.cautions(reading):
            say(f"Cautions, {title}:")
            for caution in cautions:
                say(f"  {caution.says.say(words.language)} [{words.basis(caution.basis)}; checked {caution.checked}]")
        say("Whom to ask:")
        for line in words.referral(self.enquiry.case.settings):
            say("  " + line)
        say(words.would_change(reading))
        say_stop(self.out, self.enquiry, words)
        if words.led_line(reading):
            say(words.led_line(reading))
        if self.enquiry.case.settings.told:
            say(words.fixed("told", told=self.enquiry.case.settings.told))
            for fact in words.told_facts(self.enquiry.case.settings.told):
                say("  " + fact)

    def _emergency(self) -> None:
        emergency = self.enquiry.tables.keyset.emergency
        say = self.out.say
        say("PERSON FIRST")
        for line in self.words.referral(self.enquiry.case.settings):
            say("  " + line)
        say("Signs for the emergency number:")
        for sign in emergency.signs:
            say("  " + sign.says.say(self.words.language))
        for step in emergency.first_aid.get("unknown", ()):
            say("  " + step.says.say(self.words.language))
        for step in emergency.never:
            say("  " + step.says.say(self.words.language))

    def _new(self) -> None:
        self.enquiry.start_again()
        self._begin()

    def _quit(self) -> None:
        self.done = True

    # Small questions -----------------------------------------------------------------------------

    def _line(self, question: str) -> str:
        self.out.say(question)
        line = self.out.read()
        if line is None:
            self.done = True
            return ""
        return line.strip()

    def _yes(self, question: str) -> bool:
        return self._pick(question, ["yes", "no"], skip=True) == 0

    def _pick(self, question: str, labels: list[str], *, skip: bool) -> int | None:
        """Let the person pick by number or first letters; None where skipped."""
        self.out.say(question)
        for number, label in enumerate(labels, start=1):
            self.out.say(f"  {number}. {label}")
        while not self.done:
            line = self._line("Type a number" + (", or Enter to skip." if skip else "."))
            if not line:
                return None
            if line.isdigit() and 1 <= int(line) <= len(labels):
                return int(line) - 1
            begun = [i for i, label in enumerate(labels) if label.lower().startswith(line.lower())]
            if len(begun) == 1:
                return begun[0]
            if speaks_of_injury(line, self.enquiry.tables.keyset.emergency.words):
                self._emergency()
            self.out.say(f"“{line}” is not one of them.")
        return None

    def _pick_one(self, question: str, labels: list[str]) -> int | None:
        return self._pick(question, labels, skip=True)

    def _pick_setting(self, question: str, name: str, choices: Sequence[tuple[object, str]]) -> None:
        index = self._pick(question, [label for _, label in choices], skip=True)
        if index is not None:
            self.enquiry.set_up(**{name: choices[index][0]})


def run(out: Terminal, folder: Path, language: str, learned: Path | None = None) -> int:
    """Hold a conversation about one enquiry; returns 0."""
    tables = open_tables(folder, learned, out)
    Conversation(out, Enquiry(tables), Words(tables.keyset, language)).hold()
    return 0
