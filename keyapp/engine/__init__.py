"""The thinking: pure functions over the model; no files, no clock, no window."""

from keyapp.engine.ledger import Contradiction, Event
from keyapp.engine.prior import prior
from keyapp.engine.question import Question
from keyapp.engine.reading import THING, Reading, helpful_questions, read_case, second_look
from keyapp.engine.safety import NotRuledOut, not_ruled_out
from keyapp.engine.second_look import SecondLook
from keyapp.engine.settle import Settling
from keyapp.engine.standing import Standing, standing
from keyapp.engine.tables import OUTSIDE, GroupId, Tables, build_tables
from keyapp.engine.verdict import Action, Candidate, Claim, Verdict
from keyapp.engine.walk import Step, StepKind, Walk, lead_taxa, reachable, walk

__all__ = [
    "OUTSIDE",
    "THING",
    "Action",
    "Candidate",
    "Claim",
    "Contradiction",
    "Event",
    "GroupId",
    "NotRuledOut",
    "Question",
    "Reading",
    "SecondLook",
    "Settling",
    "Standing",
    "Step",
    "StepKind",
    "Tables",
    "Verdict",
    "Walk",
    "build_tables",
    "helpful_questions",
    "lead_taxa",
    "not_ruled_out",
    "prior",
    "reachable",
    "read_case",
    "second_look",
    "standing",
    "walk",
]
