"""Cautions: health statements age; each must have been looked at in time."""

from __future__ import annotations

from collections.abc import Iterator

from keyapp.checker.facts import Facts, problem
from keyapp.checker.texts import every_caution
from keyapp.keyfile.places import within
from keyapp.keyfile.problem import Problem

__all__ = ["caution_dates"]


def caution_dates(facts: Facts) -> Iterator[Problem]:
    """K361, K362: cautions past their review date, or with dates that cannot be."""
    for place, caution, called in every_caution(facts.keyset):
        if caution.checked > facts.today:
            yield problem("K362", within(place, "checked"),
                          f"{called} was checked on a day to come ({caution.checked}).", "Mend the two dates.")
        elif caution.review_by <= caution.checked:
            yield problem("K362", within(place, "review-by"), f"{called} is to be reviewed by {caution.review_by}, "
                          f"not after it was checked ({caution.checked}).", "Mend the two dates.")
        elif caution.review_by < facts.today:
            yield problem("K361", within(place, "review-by"), f"{called} was to be reviewed by {caution.review_by}.",
                          "Look at its sources again, then set `checked` and a new `review-by`.")
