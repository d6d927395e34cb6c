"""Simulated calls, from a generator that shares no likelihoods with the engine."""

from keyapp.trial.call import Outcome, Policy, hold_call
from keyapp.trial.caller import Animal, Caller, Habits, draw_caller
from keyapp.trial.summary import Summary, summarise
from keyapp.trial.trial import Plan, run_trial

__all__ = [
    "Animal",
    "Caller",
    "Habits",
    "Outcome",
    "Plan",
    "Policy",
    "Summary",
    "draw_caller",
    "hold_call",
    "run_trial",
    "summarise",
]
