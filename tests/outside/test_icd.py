"""Groups of venom codes in ICD-10-CM that a clinic's report may carry, against the results they would send one to.

Peer: the code list in the package simple_icd_10_cm. The codes serve to read a report, never to make a diagnosis.
"""

from __future__ import annotations

import re

import pytest

pytestmark = [pytest.mark.outside, pytest.mark.filterwarnings("ignore::DeprecationWarning")]

CODES = {
    "T63.2X": ("scorpion", "bark-scorpions", ["bark-scorpion", "other-scorpion"]),
    "T63.30": ("unspecified spider", "", ["spider-not-in-key"]),
    "T63.31": (
        "black widow spider",
        "widows",
        ["widow-black-female", "widow-brown-female", "widow-male", "widow-young"],
    ),
    "T63.32": ("tarantula", "", ["tarantula", "tarantula-male"]),
    "T63.33": ("brown recluse spider", "recluses", ["recluse", "recluse-young"]),
    "T63.39": ("other spider", "", ["false-widow", "long-legged-sac", "woodlouse-hunter", "wolf-spider"]),
}
"""Code -> what it stands for, danger group of the key, results of the key that it may mean."""

RESULTS = [(code, taxon) for code, (_, _, taxa) in CODES.items() for taxon in taxa]
DIAGNOSIS = re.compile(
    r"\b(bite|sting|sore|wound) is (from|by|of|that of) an?\b|\byou (have been|were) (bitten|stung)\b"
)


@pytest.fixture(scope="module")
def icd():
    # The list is read when the package is imported, which takes seconds: not while tests are collected.
    return pytest.importorskip("simple_icd_10_cm", reason="install the extra `outside`")


@pytest.mark.parametrize(("code", "meaning"), [(code, meaning) for code, (meaning, _, _) in CODES.items()])
def test_the_code_exists_with_that_meaning(icd, code, meaning):
    assert icd.is_category_or_subcategory(code)
    assert set(meaning.split()) <= set(icd.get_description(code).split())


@pytest.mark.parametrize(("code", "group"), [(c, group) for c, (_, group, _) in CODES.items() if group])
def test_danger_groups_carry_their_code(shipped, code, group):
    assert code in shipped.keyset.danger_groups[group].icd10


def test_every_venom_code_of_a_danger_group_is_looked_at_here(shipped):
    carried = {code for group in shipped.keyset.danger_groups.values() for code in group.icd10}
    assert {code for code in carried if code.startswith("T63")} == {c for c, (_, group, _) in CODES.items() if group}


def test_every_code_of_a_danger_group_exists(shipped, icd):
    """As it stands, or with the last character for a first visit."""
    carried = [code for group in shipped.keyset.danger_groups.values() for code in group.icd10]
    unknown = [code for code in carried if not (icd.is_valid_item(code) or icd.is_valid_item(f"{code}A"))]
    assert unknown == []


@pytest.mark.parametrize(
    ("code", "taxon"), [(c, t) for c, (_, group, taxa) in CODES.items() if group for t in taxa[:1]]
)
def test_the_first_result_of_a_dangerous_code_is_in_its_group(shipped, code, taxon):
    assert shipped.keyset.taxa[taxon].danger_group == CODES[code][1]


@pytest.mark.parametrize(("code", "taxon"), RESULTS)
def test_its_cautions_lead_to_poison_help_or_a_clinician(shipped, code, taxon):
    said = " ".join(str(caution.says) for caution in shipped.keyset.taxa[taxon].cautions)
    assert re.search(r"Poison Help|clinician|doctor|medical (professional|care)", said)


@pytest.mark.parametrize(("code", "taxon"), RESULTS)
def test_its_cautions_never_say_what_a_bite_or_sting_is(shipped, code, taxon):
    said = [str(caution.says).lower() for caution in shipped.keyset.taxa[taxon].cautions]
    assert [text for text in said if DIAGNOSIS.search(text)] == []
