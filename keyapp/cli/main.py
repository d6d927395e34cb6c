"""The terminal commands: arguments in, exit code out."""

from __future__ import annotations

import argparse
import logging
import sys
from collections.abc import Sequence
from pathlib import Path

from keyapp import __version__
from keyapp.cli import ask, ask_json, bench, card, check, draw, learn, measure, note, now, prove, sheet, trial, weigh
from keyapp.cli.terminal import Terminal
from keyapp.errors import UserError
from keyapp.folders import LEARNED_NAME, images_folder, keys_folder, state_folder

__all__ = ["build_parser", "run"]


def build_parser() -> argparse.ArgumentParser:
    """The commands and their options."""
    parser = argparse.ArgumentParser(
        prog="keyapp",
        description="A careful family-level key to spiders and other garden arthropods. "
        "Without a command the window opens.",
        epilog="Someone hurt or unwell? In the US call 911 or Poison Help 1-800-222-1222. "
        "Do not wait for an identification.",
    )
    parser.add_argument("--version", action="version", version=f"keyapp {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="command")

    one = commands.add_parser("ask", help="step through the key in the terminal")
    one.add_argument("--json", action="store_true", help="speak one JSON object a line, both ways")
    _learned_option(one)
    _common(one)
    one = commands.add_parser("weigh", help="weigh reported states from a YAML file; results as JSON")
    one.add_argument("file", type=Path, help="YAML file with one case or many")
    _learned_option(one)
    _common(one)
    one = commands.add_parser("check", help="report every problem in a key folder")
    one.add_argument("folder", type=Path, nargs="?", help="key folder (default: the one that ships)")
    one.add_argument("--json", action="store_true", help="problems as JSON")
    one.add_argument("--images", type=Path, help="folder of pictures (default: the one that ships)")
    one.add_argument("--basis", action="store_true", help="count what the statements rest on: published or not")
    one = commands.add_parser("draw", help="draw the figures described in keys/figures")
    one.add_argument("figures", nargs="*", help="ids of figures (default: all)")
    one.add_argument("--out", type=Path, help="folder for the SVG files (default: images/figures)")
    _common(one)
    one = commands.add_parser("bench", help="measure speed against a bound or a general-purpose peer")
    one.add_argument(
        "what",
        choices=["start", "answer", "scale"],
        help="start of the window, one answer, or growth to a key of 5000 results",
    )
    one.add_argument("--json", action="store_true", help="figures of `scale` as JSON")
    one.add_argument("--plot", type=Path, help="SVG file for the plot of `scale`")
    one.add_argument("--seed", type=int, default=1, help="the same seed gives the same keys")
    _common(one)
    one = commands.add_parser("measure", help="measure a key: its length, its errors, its weakest places")
    one.add_argument("--json", action="store_true", help="figures as JSON")
    one.add_argument("--plot", type=Path, help="SVG file for the plot")
    one.add_argument("--region", help="region id or two-letter state code (default: not known)")
    one.add_argument("--month", type=int, help="month, 1 to 12 (default: not known)")
    _common(one)
    one = commands.add_parser("note", help="find the observations in what someone says in plain words")
    one.add_argument("text", nargs="*", help="what was said (default: read from the input)")
    one.add_argument("--json", action="store_true", help="finds as JSON")
    _common(one)
    one = commands.add_parser("prove", help="prove that one misread answer leaves no dangerous animal unnamed")
    one.add_argument("--runs", type=int, default=100_000, help="runs through the engine (default: 100000)")
    one.add_argument("--seed", type=int, default=1, help="the same seed gives the same runs")
    one.add_argument("--only", nargs="*", default=[], metavar="RESULT", help="ids of results (default: all)")
    one.add_argument("--json", action="store_true", help="figures as JSON")
    _common(one)
    one = commands.add_parser("learn", help="say what confirmed calls would change in the key")
    one.add_argument("file", type=Path, nargs="?", help="JSON file of confirmed calls")
    one.add_argument("--merge", type=Path, nargs="+", default=[], metavar="FILE", help="add what --out files counted")
    one.add_argument("--without", type=Path, metavar="FILE", help="take out the confirmed calls of this file")
    one.add_argument("--approve", metavar="NAME", help="who approves what would make the key less strict")
    one.add_argument("--date", help="date of the approval, YYYY-MM-DD")
    one.add_argument("--runs", type=int, default=20_000, help="runs of the proof that an approval needs")
    one.add_argument("--out", type=Path, help="file for the counts and the changes in force")
    one.add_argument("--keep", action="store_true", help="put it in force whenever the key is opened")
    one.add_argument("--forget", action="store_true", help="move what was kept aside: the key as it ships")
    _common(one)
    one = commands.add_parser("trial", help="hold simulated calls and report how the key does")
    one.add_argument("--calls", type=int, default=1000, help="how many at each rate (default: 1000)")
    one.add_argument("--seed", type=int, default=1, help="the same seed gives the same calls")
    one.add_argument(
        "--error",
        action="append",
        default=[],
        metavar="SHARES",
        help=f"mean chances of a slip per answer; may be repeated (default: {trial.ERRORS})",
    )
    one.add_argument(
        "--cant-tell",
        action="append",
        default=[],
        metavar="SHARES",
        help=f"chances of can't tell per answer; may be repeated (default: {trial.CANT_TELLS})",
    )
    one.add_argument("--even", type=float, default=0.0, help="share of animals drawn evenly over results")
    one.add_argument("--json", action="store_true", help="figures as JSON")
    one.add_argument("--plot", type=Path, help="SVG file for the plot")
    _common(one)
    one = commands.add_parser("sheet", help="write a case as a sheet to keep (PDF)")
    one.add_argument("file", type=Path, metavar="CASE", help="a kept enquiry, or the lines sent to `ask --json`")
    _paper_options(one)
    _learned_option(one)
    _common(one)
    one = commands.add_parser("now", help="list what people are likely to ask about in a region and month")
    one.add_argument("--region", required=True, help="region id or two-letter state code")
    one.add_argument("--month", type=int, required=True, help="month, 1 to 12")
    one.add_argument("--json", action="store_true", help="the whole list as JSON")
    _common(one)
    one = commands.add_parser("card", help="write a card of the dangers of a region and month (PDF)")
    one.add_argument("--region", required=True, help="region id or two-letter state code")
    one.add_argument("--month", type=int, required=True, help="month, 1 to 12")
    _paper_options(one)
    _common(one)
    return parser


def _paper_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--paper", choices=["letter", "a4"], default="letter", help="size of paper (default: letter)")
    parser.add_argument("--out", type=Path, required=True, help="PDF file to write")
    parser.add_argument("--date", help="date on the paper, YYYY-MM-DD (default: today)")


def _common(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--keys", type=Path, default=None, help="key folder (default: the one that ships)")
    parser.add_argument("--language", default="en", help="language of the texts (default: en)")


def _learned_option(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--learned", type=Path, metavar="FILE", help="file of what was learned (default: the kept one)")


def _learned(options: argparse.Namespace) -> Path:
    """The file of what was learned: the one named, or the one that was kept."""
    named: Path | None = options.learned
    if named is not None and not named.is_file():
        raise UserError("There is no such file.", where=f"--learned {named}", fix="Name a file of `keyapp learn`.")
    return named or state_folder() / LEARNED_NAME


def _learn(out: Terminal, folder: Path, options: argparse.Namespace) -> int:
    kept = state_folder() / LEARNED_NAME
    if options.forget:
        if options.file or options.merge or options.without or options.out or options.keep or options.approve:
            raise UserError("--forget goes alone.", where="--forget", fix="Leave the other options out.")
        return learn.forget_learned(out, kept)
    return learn.run(
        out,
        folder,
        options.file,
        options.approve,
        options.date,
        options.out,
        options.runs,
        merge=options.merge,
        without=options.without,
        kept=kept if options.keep else None,
    )


def _trial(out: Terminal, folder: Path, options: argparse.Namespace) -> int:
    return trial.run(
        out,
        folder,
        calls=options.calls,
        seed=options.seed,
        errors=options.error,
        cant_tells=options.cant_tell,
        even=options.even,
        as_json=options.json,
        plot=options.plot,
    )


def run(arguments: Sequence[str], terminal: Terminal | None = None) -> int:
    """Carry out one command; returns 0, 1 for problems found, 2 for bad input."""
    out = terminal or Terminal()
    options = build_parser().parse_args(arguments)
    try:
        if options.command == "check":
            images = options.images or images_folder()
            return check.run(out, options.folder or keys_folder(), images, options.json, options.basis)
        folder = options.keys or keys_folder()
        if options.command == "ask":
            command = ask_json.run if options.json else ask.run
            return command(out, folder, options.language, _learned(options))
        if options.command == "weigh":
            return weigh.run(out, folder, options.file, options.language, _learned(options))
        if options.command == "draw":
            return draw.run(out, folder, options.figures, options.out or images_folder() / "figures")
        if options.command == "measure":
            return measure.run(out, folder, options.json, options.plot, options.region, options.month)
        if options.command == "note":
            return note.run(out, folder, options.text, options.language, options.json)
        if options.command == "prove":
            return prove.run(out, folder, options.runs, options.seed, options.json, options.only)
        if options.command == "learn":
            return _learn(out, folder, options)
        if options.command == "trial":
            return _trial(out, folder, options)
        if options.command == "sheet":
            learned = _learned(options)
            return sheet.run(
                out, folder, options.file, options.out, options.paper, options.language, options.date, learned
            )
        if options.command == "now":
            return now.run(out, folder, options.region, options.month, options.language, options.json)
        if options.command == "card":
            where = (options.region, options.month)
            return card.run(out, folder, *where, options.out, options.paper, options.language, options.date)
        return bench.run(out, folder, options.what, options.json, options.plot, options.seed)
    except UserError as error:
        out.problem(error)
        return 2
    except KeyboardInterrupt:
        out.error("Stopped.")
        return 130
    except BrokenPipeError:
        sys.stderr.close()
        return 1
    except Exception:
        logging.getLogger("keyapp").exception("unexpected fault in “%s”", options.command)
        out.error("Sorry: this is a fault in the program, not in your input. The details are above.")
        return 70
