"""The shipped key is as wide as it says: results, signs, misnames, ranges, sources for what makes people ill."""

from __future__ import annotations

import pytest

from keyapp.model import COMMON_PRACTICE, FROM_MEMORY, Form

FAMILIES = [
    "Theraphosidae", "Antrodiaetidae", "Ctenizidae", "Atypidae", "Sicariidae", "Scytodidae", "Pholcidae", "Dysderidae",
    "Theridiidae", "Araneidae", "Nephilidae", "Tetragnathidae", "Uloboridae", "Linyphiidae", "Lycosidae", "Pisauridae",
    "Oxyopidae", "Ctenidae", "Agelenidae", "Amaurobiidae", "Dictynidae", "Filistatidae", "Zoropsidae",
    "Cheiracanthiidae", "Clubionidae", "Anyphaenidae", "Corinnidae", "Trachelidae", "Gnaphosidae", "Selenopidae",
    "Sparassidae", "Philodromidae", "Thomisidae", "Salticidae", "Deinopidae", "Mimetidae", "Oecobiidae",
    "Sclerosomatidae", "Phalangiidae", "Buthidae", "Vaejovidae", "Caraboctonidae", "Diplocentridae",
    "Superstitionidae", "Cheliferidae", "Thelyphonidae", "Phrynidae", "Ixodidae", "Argasidae", "Trombiculidae",
    "Trombidiidae", "Tetranychidae", "Eriophyidae", "Scutigeridae", "Lithobiidae", "Scolopendridae",
    "Paradoxosomatidae", "Glomeridae", "Armadillidiidae", "Porcellionidae",
]  # fmt: skip
"""Families of arachnids, centipedes, millipedes and land crustaceans met in North American homes and gardens."""


@pytest.fixture(scope="module")
def inside(shipped):
    return [taxon for taxon in shipped.keyset.taxa.values() if not taxon.outside]


def published(basis):
    return {one for one in basis if one not in (COMMON_PRACTICE, FROM_MEMORY)}


def test_there_are_at_least_seventy_five_results(inside):
    assert len(inside) >= 75


def test_no_family_is_missing(inside):
    families = {taxon.family for taxon in inside}
    assert [name for name in FAMILIES if name not in families] == []


def test_every_form_of_sign_has_results(inside):
    forms = {taxon.form for taxon in inside}
    assert forms >= {Form.ANIMAL, Form.WEB, Form.EGG_SAC, Form.SHED_SKIN, Form.BURROW, Form.GALL}


def test_at_least_thirty_misnames_and_myths_are_set_straight_with_a_source(inside):
    told = {misname.said: misname for taxon in inside for misname in taxon.misnames}
    assert len([one for one in told.values() if published(one.basis)]) >= 30


def test_every_medically_important_result_rests_on_two_published_sources(inside):
    gated = [taxon for taxon in inside if taxon.danger.is_gated]
    assert len(gated) > 15
    few = {
        taxon.id: cited
        for taxon in gated
        if len(cited := {one for caution in taxon.cautions for one in published(caution.basis)}) < 2
    }
    assert few == {}


def test_every_caution_and_piece_of_advice_will_be_reviewed(inside):
    texts = [one for taxon in inside for one in (*taxon.cautions, *taxon.advice)]
    assert [text.says for text in texts if text.review_by <= text.checked] == []


@pytest.mark.parametrize(("taxon", "much", "little"), [
    # Vetter 2008 and Swanson & Vetter 2006 for recluses; Shelley & Sissom 1995 and the MSD Manual for bark scorpions.
    ("recluse", ["MO", "KS", "AR", "OK", "TN"], ["WA", "OR", "ME", "MN", "ND"]),
    ("bark-scorpion", ["AZ"], ["WA", "ME", "MN", "NY", "OR"]),
])  # fmt: skip
def test_occurrence_by_state_follows_published_ranges(shipped, taxon, much, little):
    keyset = shipped.keyset
    table = keyset.taxa[taxon].occurrence
    home = {state: region.id for region in keyset.regions.values() if not region.part_of for state in region.states}

    def weight(state):
        return table.get(state, table.get(home[state], table["default"]))

    assert min(weight(state) for state in much) >= 10 * max(weight(state) for state in little)
    assert min(weight(state) for state in little) > 0


def test_every_animal_says_when_it_is_about(inside):
    assert [taxon.id for taxon in inside if not taxon.season] == []
