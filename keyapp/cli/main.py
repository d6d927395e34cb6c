"""The terminal commands: arguments in, exit code out."""

from __future__ import annotations

import argparse
import logging
import sys
from collections.abc import Sequence
from pathlib import Path

from keyapp import __version__
from keyapp.cli import ask, ask_json, bench, check, draw, learn, measure, prove, trial, weigh
from keyapp.cli.terminal import Terminal
from keyapp.errors import UserError
from keyapp.folders import images_folder, keys_folder

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
    _common(one)
    one = commands.add_parser("weigh", help="weigh reported states from a YAML file; results as JSON")
    one.add_argument("file", type=Path, help="YAML file with one case or many")
    _common(one)
    one = commands.add_parser("check", help="report every problem in a key folder")
    one.add_argument("folder", type=Path, nargs="?", help="key folder (default: the one that ships)")
    one.add_argument("--json", action="store_true", help="problems as JSON")
    one.add_argument("--images", type=Path, help="folder of pictures (default: the one that ships)")
    one = commands.add_parser("draw", help="draw the figures described in keys/figures")
    one.add_argument("figures", nargs="*", help="ids of figures (default: all)")
    one.add_argument("--out", type=Path, help="folder for the SVG files (default: images/figures)")
    _common(one)
    one = commands.add_parser("bench", help="measure speed against a bound or a general-purpose peer")
    one.add_argument("what", choices=["start", "answer"], help="start of the window, or one answer")
    _common(one)
    one = commands.add_parser("measure", help="measure a key: its length, its errors, its weakest places")
    one.add_argument("--json", action="store_true", help="figures as JSON")
    one.add_argument("--plot", type=Path, help="SVG file for the plot")
    one.add_argument("--region", help="region id or two-letter state code (default: not known)")
    one.add_argument("--month", type=int, help="month, 1 to 12 (default: not known)")
    _common(one)
    one = commands.add_parser("prove", help="prove that one misread answer leaves no dangerous animal unnamed")
    one.add_argument("--runs", type=int, default=100_000, help="runs through the engine (default: 100000)")
    one.add_argument("--seed", type=int, default=1, help="the same seed gives the same runs")
    one.add_argument("--only", nargs="*", default=[], metavar="RESULT", help="ids of results (default: all)")
    one.add_argument("--strict", action="store_true", help="ask it of signs taken for an animal too")
    one.add_argument("--json", action="store_true", help="figures as JSON")
    _common(one)
    one = commands.add_parser("learn", help="say what confirmed calls would change in the key")
    one.add_argument("file", type=Path, help="JSON file of confirmed calls")
    one.add_argument("--approve", metavar="NAME", help="who approves what would make the key less strict")
    one.add_argument("--date", help="date of the approval, YYYY-MM-DD")
    one.add_argument("--out", type=Path, help="file for the counts and the changes in force")
    _common(one)
    one = commands.add_parser("trial", help="hold simulated calls and report how the key does")
    one.add_argument("--calls", type=int, default=1000, help="how many (default: 1000)")
    one.add_argument("--seed", type=int, default=1, help="the same seed gives the same calls")
    one.add_argument("--error", type=float, default=0.1, help="mean chance of a slip per answer (default: 0.1)")
    one.add_argument("--cant-tell", type=float, default=0.1, help="chance of can't tell per answer (default: 0.1)")
    one.add_argument("--even", type=float, default=0.0, help="share of animals drawn evenly over results")
    one.add_argument("--json", action="store_true", help="figures as JSON")
    _common(one)
    return parser


def _common(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--keys", type=Path, default=None, help="key folder (default: the one that ships)")
    parser.add_argument("--language", default="en", help="language of the texts (default: en)")


def _trial(out: Terminal, folder: Path, options: argparse.Namespace) -> int:
    if options.calls < 1:
        raise UserError(f"A trial of {options.calls} calls is no trial.", where="--calls", fix="Give 1 or more.")
    for name in ("error", "cant_tell", "even"):
        value = getattr(options, name)
        if not 0 <= value <= 1:
            raise UserError(f"{value} is no share.", where="--" + name.replace("_", "-"), fix="Give 0 to 1.")
    return trial.run(
        out, folder, options.calls, options.seed, options.error, options.cant_tell, options.even, options.json
    )


def run(arguments: Sequence[str], terminal: Terminal | None = None) -> int:
    """Carry out one command; returns 0, 1 for problems found, 2 for bad input."""
    out = terminal or Terminal()
    options = build_parser().parse_args(arguments)
    try:
        if options.command == "check":
            return check.run(out, options.folder or keys_folder(), options.images or images_folder(), options.json)
        folder = options.keys or keys_folder()
        if options.command == "ask":
            command = ask_json.run if options.json else ask.run
            return command(out, folder, options.language)
        if options.command == "weigh":
            return weigh.run(out, folder, options.file, options.language)
        if options.command == "draw":
            return draw.run(out, folder, options.figures, options.out or images_folder() / "figures")
        if options.command == "measure":
            return measure.run(out, folder, options.json, options.plot, options.region, options.month)
        if options.command == "prove":
            return prove.run(out, folder, options.runs, options.seed, options.json, options.strict, options.only)
        if options.command == "learn":
            return learn.run(out, folder, options.file, options.approve, options.date, options.out)
        if options.command == "trial":
            return _trial(out, folder, options)
        return bench.run(out, folder, options.what)
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
