"""`is NAME` and `best` at the prompt of `keyapp ask`: a feared animal, and the question that would help most."""

from __future__ import annotations

from collections.abc import Callable

from keyapp.cli.terminal import Terminal
from keyapp.engine import Feared, read_fear, stop
from keyapp.wording import EvidenceLine, Words, fear_text, feared_called, feared_name, helps_line, stop_line
from keyapp.work import Enquiry

__all__ = ["say_best", "say_stop", "talk_of_feared"]

Ask = Callable[[str], bool]
"""Puts a direct question about a character; False where the person leaves it."""

Pick = Callable[[str, list[str]], int | None]
"""Lets the person pick one of several; None where they leave it."""


def talk_of_feared(out: Terminal, enquiry: Enquiry, words: Words, said: str, ask: Ask, pick: Pick) -> None:
    """Say how the answers stand to the animal called `said`, and put the best question about it, until it is left.

    All answers are kept in the enquiry. Raises UserError where no animal is called so.
    """
    found = feared_called(enquiry.tables, said)
    place = 0 if len(found) == 1 else pick("Which one?", [feared_name(words, animal) for animal in found])
    if place is None:
        return
    while True:
        best = _say_fear(out, enquiry, words, found[place])
        if not best or not ask(best):
            out.say("Back to the key. Your answers are kept.")
            return


def say_best(out: Terminal, enquiry: Enquiry, words: Words, ask: Ask) -> None:
    """Say which question would help most and why, and put it; or why nothing more is asked."""
    found = stop(enquiry.tables, enquiry.reading)
    if found.question is None:
        out.say(stop_line(words, found))
        return
    out.say(helps_line(words, found))
    ask(found.question.character)


def say_stop(out: Terminal, enquiry: Enquiry, words: Words) -> None:
    """Say in one line whether to go on asking, and why."""
    out.say(stop_line(words, stop(enquiry.tables, enquiry.reading)))


def _say_fear(out: Terminal, enquiry: Enquiry, words: Words, animal: Feared) -> str:
    """Say it whole; returns the character to look at next, empty where there is none."""
    fear = read_fear(enquiry.tables, enquiry.reading, animal)
    text = fear_text(words, fear)
    out.say(text.ask)
    if not (fear.is_open and animal.danger):
        out.say(text.status)
    # Names every danger that is open, this one among them.
    out.say(words.safety_line(enquiry.reading))
    if text.together:
        out.say(text.together)
    if text.check_again:
        out.say(text.check_again)
        for answer in text.again:
            out.say("  " + words.answer(answer))
    for title, lines in (("For it:", text.for_it), ("Against it:", text.against_it), ("Neither:", text.little)):
        _say_lines(out, title, lines)
    for line in text.missing:
        out.say(line)
    if text.best:
        out.say(f"{text.best} {text.best_why}".strip())
    return fear.best.character if fear.best else ""


def _say_lines(out: Terminal, title: str, lines: tuple[EvidenceLine, ...]) -> None:
    if lines:
        out.say(title)
    for line in lines:
        out.say(f"  {line.said}: {line.speaks}. {line.clears}".rstrip())
