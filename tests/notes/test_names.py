"""Names, places, months, find spots and misspelt words."""

from __future__ import annotations

import pytest

from keyapp.notes import Kind, NoteReader


def values(reader, kind, text):
    return [find.value for find in reader.read(text).found if find.kind is kind]


@pytest.mark.parametrize(
    "text, told",
    [
        ("I think it's a black widow", ["black widow"]),
        ("is it a brown recluse?", ["brown recluse"]),
        ("my wife thinks its a hobo spider but I say giant house spider", ["hobo spider", "giant house spider"]),
        ("the news says murder hornets", ["murder hornets"]),
        ("Scorpion or hornet?", ["scorpion", "hornet"]),
        ("I looked it up, a kissing bug?", ["kissing bug"]),
        ("Aren't they ticks, or bed bugs?", ["ticks", "bed bugs"]),
        ("Green wasps I guess.", ["green wasps"]),
        ("she calls it daddy longlegs", ["daddy longlegs"]),
        ("daddy-longlegs", ["daddy longlegs"]),
        ("could be a false widow", ["false widow"]),
        ("a brown widdow, he said", ["brown widow"]),
        ("they told me brown recluce", ["brown recluse"]),
        ("it looks like a tarantula", ["tarantula"]),
        ("it's not a wolf spider", []),
        ("I figure it isn't a recluse", []),
        ("a small brown spider", []),
        ("a big black bug", []),
        ("some kind of spider", []),
        ("it has a round web", []),
        ("the most poisonous spider there is", []),
    ],
)
def test_what_they_were_told(reader, text, told):
    assert values(reader, Kind.TOLD, text) == told


@pytest.mark.parametrize(
    "text, place",
    [
        ("We live in Missouri.", ["MO"]),
        ("north Georgia", ["GA"]),
        ("in West Virginia", ["WV"]),
        ("New Mexico", ["NM"]),
        ("Tucson, AZ", ["AZ"]),
        ("in the Pacific Northwest", ["northwest"]),
        ("it hid in the corner, or me", []),
        ("the northwest wall", []),
        ("is it found in Texas?", []),
        ("Arizona bark scorpion", []),
    ],
)
def test_a_place_is_read(reader, text, place):
    assert values(reader, Kind.REGION, text) == place


@pytest.mark.parametrize(
    "text, month",
    [
        ("in October", ["10"]),
        ("October 12th", ["10"]),
        ("early in June", ["6"]),
        ("last May", ["5"]),
        ("in March", ["3"]),
        ("it may be a spider", []),
        ("May I ask?", []),
        ("a march of ants", []),
        ("mar the wood", []),
    ],
)
def test_a_month_is_read(reader, text, month):
    assert values(reader, Kind.MONTH, text) == month


@pytest.mark.parametrize(
    "text, spot",
    [
        ("in the garage", "garage-shed"),
        ("in our basement", "basement-crawlspace"),
        ("in the bathtub", "bath-or-sink"),
        ("on the bathroom wall", "room"),
        ("under a rock", "under-stone-or-log"),
        ("in a pile of old fence rails", "woodpile-rubble"),
        ("on my tomato plants", "plants-or-flowers"),
        ("by the pond", "near-water"),
        ("on my dog", "on-person-or-pet"),
        ("in a box in the attic", "stored-things"),
        ("walking on the driveway", "road-or-open"),
    ],
)
def test_a_find_spot_is_read(reader, text, spot):
    assert spot in values(reader, Kind.SPOT, text)


def test_two_spots_are_both_offered_and_marked(reader):
    spots = [find for find in reader.read("on the porch, or was it in the garage").found if find.kind is Kind.SPOT]
    assert [find.against for find in spots] == [(spots[1].id,), (spots[0].id,)]


@pytest.mark.parametrize(
    "text, character, state",
    [
        ("a mesy tangeld web", "web-shape", "tangle"),
        ("hairless, with bandded legs", "leg-pattern", "banded"),
        ("red hourglas on the belly", "underside-mark", "red-hourglass"),
        ("long slendr legs", "leg-build", "long-slender"),
        ("long antenae", "feelers", "long-feelers"),
    ],
)
def test_a_slip_of_spelling_is_forgiven_and_marked(reader, text, character, state):
    finds = [find for find in reader.read(text).found if find.characters == (character,)]
    assert [find.states for find in finds] == [(state,)]
    assert finds[0].misspelt


@pytest.mark.parametrize(
    "word", ["while", "horse", "shine", "spine", "blank", "hands", "shots", "winds", "legal", "wed"]
)
def test_an_everyday_word_is_left_as_it_is(reader, word):
    assert reader._index.speller.right_word(word) == word


def test_another_language_has_its_own_words(shipped):
    note = NoteReader(shipped.keyset, "es").read("Es una araña negra, sin tela, en el garaje, creo que en julio.")
    said = {(find.characters or (str(find.kind),))[0]: find.states or find.value for find in note.found}
    assert said["web-shape"] == ("none",)
    assert said["spot"] == "garage-shed"
    assert said["month"] == "7"


def test_a_language_without_words_finds_next_to_nothing(shipped):
    note = NoteReader(shipped.keyset, "fr").read("une araignée noire, sans toile")
    assert [find for find in note.found if find.states] == []
