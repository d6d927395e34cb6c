"""The thinking: pure functions over the model; no files, no clock, no window."""

from keyapp.engine.feared import Fear, Feared, feared, feared_of, read_fear
from keyapp.engine.ledger import Contradiction, Event
from keyapp.engine.prior import met_there, prior
from keyapp.engine.question import Question
from keyapp.engine.reading import THING, Reading, helpful_questions, read_case, second_look, unseen
from keyapp.engine.safety import NotRuledOut, not_ruled_out
from keyapp.engine.second_look import SecondLook
from keyapp.engine.settle import Settling
from keyapp.engine.short_way import ShortEnd, ShortWay, short_way
from keyapp.engine.standing import Standing, standing
from keyapp.engine.stopping import LEAST_SCORE, Aim, Because, Stop, StopReason, aim_of, stop
from keyapp.engine.tables import OUTSIDE, GroupId, Tables, build_tables
from keyapp.engine.verdict import Action, Candidate, Claim, Verdict
from keyapp.engine.walk import Step, StepKind, Walk, lead_taxa, reachable, walk
from keyapp.engine.weighing import NotClearing, Strength, Weighed, weigh_answers

__all__ = [
    "LEAST_SCORE",
    "OUTSIDE",
    "THING",
    "Action",
    "Aim",
    "Because",
    "Candidate",
    "Claim",
    "Contradiction",
    "Event",
    "Fear",
    "Feared",
    "GroupId",
    "NotClearing",
    "NotRuledOut",
    "Question",
    "Reading",
    "SecondLook",
    "Settling",
    "ShortEnd",
    "ShortWay",
    "Standing",
    "Step",
    "StepKind",
    "Stop",
    "StopReason",
    "Strength",
    "Tables",
    "Verdict",
    "Walk",
    "Weighed",
    "aim_of",
    "build_tables",
    "feared",
    "feared_of",
    "helpful_questions",
    "lead_taxa",
    "met_there",
    "not_ruled_out",
    "prior",
    "reachable",
    "read_case",
    "read_fear",
    "second_look",
    "short_way",
    "standing",
    "stop",
    "unseen",
    "walk",
    "weigh_answers",
]
