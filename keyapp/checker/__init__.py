"""The key author's checker: proves a key consistent, complete and careful, or says where it is not."""

from keyapp.checker.check import check, run_check
from keyapp.checker.codes import CODES
from keyapp.checker.report import Report
from keyapp.checker.statements import Resting, counted, plain_count

__all__ = ["CODES", "Report", "Resting", "check", "counted", "plain_count", "run_check"]
