"""The work at hand: the enquiry, and keeping it."""

from keyapp.work.casefile import case_from_json, case_to_json
from keyapp.work.enquiry import Enquiry
from keyapp.work.keep import Keeper
from keyapp.work.parked import Parked, Place, Shelf, check_label

__all__ = ["Enquiry", "Keeper", "Parked", "Place", "Shelf", "case_from_json", "case_to_json", "check_label"]
