"""The work at hand: the enquiry, and keeping it."""

from keyapp.work.casefile import case_from_json, case_to_json
from keyapp.work.enquiry import Enquiry
from keyapp.work.keep import Keeper

__all__ = ["Enquiry", "Keeper", "case_from_json", "case_to_json"]
