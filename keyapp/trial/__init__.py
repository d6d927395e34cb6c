"""Simulated calls, from a generator that shares no likelihoods with the engine."""

from keyapp.trial.call import Outcome, Policy, hold_call
from keyapp.trial.caller import Animal, Caller, Habits, draw_caller
from keyapp.trial.plot import trial_plot
from keyapp.trial.report import trial_data, trial_text
from keyapp.trial.summary import Summary, Trial, summarise
from keyapp.trial.target import judge
from keyapp.trial.trial import Plan, run_trials

__all__ = [
    "Animal",
    "Caller",
    "Habits",
    "Outcome",
    "Plan",
    "Policy",
    "Summary",
    "Trial",
    "draw_caller",
    "hold_call",
    "judge",
    "run_trials",
    "summarise",
    "trial_data",
    "trial_plot",
    "trial_text",
]
