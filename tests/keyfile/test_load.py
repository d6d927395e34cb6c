"""Loading a folder: everything becomes a key, or every problem is told at once."""

from __future__ import annotations

import dataclasses
import pickle
import shutil
from pathlib import Path

import pytest

from keyapp.errors import UserError
from keyapp.keyfile import KeyFolderError, load_keyset, require_keyset
from keyapp.keyfile.problem import nearest
from keyapp.model import Danger, Form, Target, TargetKind, Text

BASE = Path(__file__).parent.parent / "cases" / "base"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return Path(shutil.copytree(BASE, tmp_path / "keys"))


def test_small_key_loads_whole() -> None:
    keyset = require_keyset(BASE)
    assert set(keyset.characters) == {"thing", "legs", "mark", "coat", "body-length"}
    assert set(keyset.taxa) == {"red-spider", "plain-spider", "insect-not-in-key", "web-red"}
    assert set(keyset.couplets) == {"start/thing", "start/legs", "spiders/mark", "spiders/coat"}
    assert (keyset.start, keyset.keys["start"].start) == ("start", "start/thing")


def test_couplet_ids_are_written_in_full_and_targets_too() -> None:
    keyset = require_keyset(BASE)
    first, second = keyset.couplets["start/thing"].leads
    assert first.to == Target(TargetKind.COUPLET, "start/legs")
    assert second.to == Target(TargetKind.TAXON, "web-red")
    assert keyset.keys["start"].redirects[0].to == Target(TargetKind.COUPLET, "spiders/mark")


def test_frequency_words_are_scaled_and_single_states_are_certain() -> None:
    shows = require_keyset(BASE).taxa["red-spider"].shows
    assert shows["legs"] == {"eight": 1.0}
    assert shows["mark"] == pytest.approx({"red": 0.85 / 1.15, "none": 0.3 / 1.15})


def test_numbers_are_kept_as_they_are(folder: Path) -> None:
    path = folder / "taxa/red-spider.yaml"
    path.write_text(path.read_text().replace("{red: usually, none: sometimes}", "{red: 0.5, none: 0.2}"))
    assert require_keyset(folder).taxa["red-spider"].shows["mark"] == {"red": 0.5, "none": 0.2}


def test_occurrence_words_become_weights() -> None:
    assert require_keyset(BASE).taxa["red-spider"].occurrence == {"default": 0.02, "south": 1.0, "CA": 0.4}


def test_kind_and_figure_default_to_the_id() -> None:
    taxa = require_keyset(BASE).taxa
    assert {taxon.id: (taxon.kind, taxon.figure) for taxon in taxa.values()} == {name: (name, name) for name in taxa}


def test_figures_of_states_and_leads_follow_the_convention() -> None:
    keyset = require_keyset(BASE)
    assert keyset.characters["legs"].state("six").figure == "legs-six"
    assert keyset.couplets["start/legs"].leads[0].figure == "legs-six"


def test_fields_that_are_left_out_have_plain_meanings() -> None:
    taxon = require_keyset(BASE).taxa["plain-spider"]
    assert (taxon.form, taxon.danger, taxon.share) == (Form.ANIMAL, Danger.MINOR, 1.0)
    assert (taxon.months, taxon.outside) == ((), False)
    assert (taxon.stage, taxon.garden, taxon.made_by) == (Text(()), None, ())


def test_texts_hold_their_languages() -> None:
    text = require_keyset(BASE).wording["unknown"]
    assert text.languages == ("en", "es")
    assert text.say("es") == "No lo toque."


def test_entries_know_where_they_were_written() -> None:
    keyset = require_keyset(BASE)
    assert str(keyset.taxa["insect-not-in-key"].place) == "taxa/plain-spider.yaml:13 (insect-not-in-key)"
    assert keyset.taxa["red-spider"].cautions[1].place.path == "red-spider.cautions[1]"


def test_weights_come_with_reason_and_basis() -> None:
    weights = require_keyset(BASE).weights
    assert weights.outside == 0.1
    assert weights.reasons == {"outside": "A tenth is not in the key. (from memory)"}


def test_missing_folder_is_a_problem_not_a_traceback(tmp_path: Path) -> None:
    loaded = load_keyset(tmp_path / "nowhere")
    assert loaded.keyset is None
    assert [problem.code for problem in loaded.problems] == ["K101"]


def test_file_in_place_of_the_folder_is_a_problem(tmp_path: Path) -> None:
    (tmp_path / "keys").write_text("a: b")
    assert [problem.code for problem in load_keyset(tmp_path / "keys").problems] == ["K101"]


def test_empty_folder_names_all_that_is_missing(tmp_path: Path) -> None:
    missing = {problem.place.file for problem in load_keyset(tmp_path).problems}
    assert {"characters", "taxa", "regions", "figures", "sources.yaml", "emergency.yaml", "keyset.yaml"} <= missing


def test_missing_picture_folder_is_a_problem(tmp_path: Path) -> None:
    problems = load_keyset(BASE, tmp_path / "none").problems
    assert [(problem.code, "picture folder" in problem.what) for problem in problems] == [("K101", True)]


def test_faults_in_several_files_are_told_in_one_go_and_in_order(folder: Path) -> None:
    (folder / "spots.yaml").write_text("shed: {label: [a], indoors: 3}\n")
    (folder / "glossary.yaml").write_bytes(b"\xff\xfe")
    (folder / "taxa/web-red.yaml").write_text("web-red: {name: 3, rank: gnus}\n")
    loaded = load_keyset(folder)
    files = [problem.place.file for problem in loaded.problems]
    assert files == sorted(files)
    assert {"spots.yaml", "glossary.yaml", "taxa/web-red.yaml"} <= set(files)
    assert files.count("spots.yaml") == 2


def test_require_raises_with_every_problem(folder: Path) -> None:
    (folder / "spots.yaml").write_text("shed: {label: A shed, indoor: true}\n")
    with pytest.raises(KeyFolderError, match="1 problem and cannot be used") as caught:
        require_keyset(folder)
    assert isinstance(caught.value, UserError)
    assert [problem.fix for problem in caught.value.problems] == ['Did you mean "indoors"?']


def test_broken_key_is_never_handed_out(folder: Path) -> None:
    (folder / "keyset.yaml").write_text("start: other\n")
    loaded = load_keyset(folder)
    assert loaded.keyset is None
    assert loaded.draft is not None


def test_loop_that_does_not_touch_the_start_is_found(folder: Path) -> None:
    lead = "{says: A., ask-caller: A?, holds: {coat: [%s]}, to: {couplet: %s}}"
    couplets = "".join(
        f"  {name}:\n    asks: Which?\n    leads:\n      - {lead % ('black', to)}\n      - {lead % ('brown', to)}\n"
        for name, to in (("a", "b"), ("b", "a"))
    )
    (folder / "ring.yaml").write_text(f"key: ring\ntitle: Ring\nscope: None.\nstart: a\ncouplets:\n{couplets}")
    whats = [problem.what for problem in load_keyset(folder).problems]
    assert "The key goes round in a loop: ring/a > ring/b > ring/a." in whats


def test_hidden_and_other_files_are_passed_over(folder: Path) -> None:
    (folder / "README.md").write_text("About this key.")
    (folder / ".hidden.yaml").write_text("[")
    (folder / "taxa/old.yaml~").write_text("[")
    assert load_keyset(folder).problems == ()


def test_key_set_can_be_pickled_and_compared() -> None:
    keyset = require_keyset(BASE)
    assert pickle.loads(pickle.dumps(keyset)) == keyset
    assert dataclasses.replace(keyset, start="other") != keyset


def test_nearest_name_is_suggested_or_the_choices_listed() -> None:
    assert nearest("underneath", ["top", "underside"]) == 'Did you mean "underside"?'
    assert nearest("zzz", ["b", "a"]) == "Use one of: a, b."
    assert nearest("zzz", []) == "Nothing of this kind is defined yet: define it first."
