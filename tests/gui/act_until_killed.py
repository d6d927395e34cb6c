"""The real program, offscreen, doing a seeded stream of acts until it is killed.

`python act_until_killed.py KEYS STATE LOG SEED` writes one JSON object a line to LOG:

    {"offered": case or null}   what was left open, before it is carried on
    {"trying": case or null}    in the saver's thread, before the case is written (null: it is removed)
    {"kept": case or null}      after that
    {"acted": number}           in the window's thread, after an act, once it is kept
"""

from __future__ import annotations

import json
import os
import random
import sys
from pathlib import Path

import keyapp.work
from keyapp.gui.app import App, make_application
from keyapp.gui.session import Session, Stage
from keyapp.model import Case, Choice
from keyapp.work import Keeper, case_to_json

LOG = os.open(sys.argv[3], os.O_WRONLY | os.O_CREAT | os.O_APPEND)


def log(word: str, value: object) -> None:
    os.write(LOG, (json.dumps({word: value}) + "\n").encode())


class LoggedKeeper(Keeper):
    """Says what it is about to do, and what it has done."""

    def keep(self, case: Case) -> None:
        log("trying", case_to_json(case))
        super().keep(case)
        log("kept", case_to_json(case))

    def forget(self) -> None:
        log("trying", None)
        super().forget()
        log("kept", None)


def act(session: Session, chance: random.Random) -> None:
    """One thing that a person may do."""
    what = chance.random()
    if what < 0.6 and session.stage is Stage.KEY and session.couplet is not None:
        session.draft_lead(choice=chance.choice(list(Choice)))
        session.draft_lead(view_seen=chance.random() < 0.8)
        session.answer()
    elif what < 0.7:
        session.undo()
    elif what < 0.75:
        session.redo()
    elif what < 0.77:
        session.start_again()
    elif what < 0.9:
        session.set_up(month=chance.randint(1, 12), told=chance.choice(["", "“wolf” spider", "brown one\nwith legs"]))
        session.go_on()
    else:
        session.set_hurt(False)
        session.go_on()


def main() -> None:
    keys, state, seed = Path(sys.argv[1]), Path(sys.argv[2]), int(sys.argv[4])
    keyapp.work.Keeper = LoggedKeeper  # type: ignore[misc]
    application = make_application(["keyapp"])
    app = App(keys, Path("nowhere"), lambda: state)
    app.start()
    while not app.session.is_open:
        application.processEvents()
    offer = app.session.offer
    log("offered", case_to_json(offer) if offer is not None else None)
    app.session.carry_on()
    chance = random.Random(seed)
    for number in range(100_000):
        act(app.session, chance)
        application.processEvents()
        app.session.flush()
        log("acted", number)


if __name__ == "__main__":
    main()
