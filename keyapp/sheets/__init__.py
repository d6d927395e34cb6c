"""Papers to hand over, as PDF: the find sheet and the county card."""

from keyapp.sheets.county_card import card_pdf
from keyapp.sheets.find_sheet import sheet_pdf
from keyapp.sheets.pairs import known_region
from keyapp.sheets.paper import Paper

__all__ = ["Paper", "card_pdf", "known_region", "sheet_pdf"]
