"""Sizes and counts in words and figures."""

from __future__ import annotations

import pytest

from keyapp.model import Sureness
from keyapp.notes import Kind

BODY, SPAN, ASK = ("body-length",), ("leg-span",), ("body-length", "leg-span")


@pytest.mark.parametrize(
    "text, mm, characters",
    [
        ("the body is 7 mm", 7, BODY),
        ("body 7mm long", 7, BODY),
        ("7.5 millimeters, body only", 7.5, BODY),
        ("1 cm body", 10, BODY),
        ("body is half an inch", 12.7, BODY),
        ("body of a quarter inch", 6.35, BODY),
        ("a quarter of an inch without the legs", 6.35, BODY),
        ("3/4 inch, not counting the legs", 19.05, BODY),
        ("1 1/2 inches body", 38.1, BODY),
        ("½ inch body", 12.7, BODY),
        ("1½ inch body", 38.1, BODY),
        ("an inch and a half, body alone", 38.1, BODY),
        ("three quarters of an inch, body alone", 19.05, BODY),
        ("five eighths of an inch", 15.875, ASK),
        ("a third of an inch", 25.4 / 3, ASK),
        ("two inches with the legs", 50.8, SPAN),
        ('about 2" across with legs', 50.8, SPAN),
        ("leg span of 3 inches", 76.2, SPAN),
        ("a couple of inches with its legs spread", 50.8, SPAN),
        ("2 in. long", 50.8, ASK),
        ("half-inch", 12.7, ASK),
        ("8 or 9 mm body", 72**0.5, BODY),
        ("body 5 to 20 mm", 10, BODY),
        ("an inch to two inches", (25.4 * 50.8) ** 0.5, ASK),
        ("the size of a penny", 19.05, ASK),
        ("the size of a nickel", 21.21, ASK),
        ("as big as a dime", 17.91, ASK),
        ("size of a quarter with the legs", 24.26, SPAN),
        ("quarter-sized, legs and all", 24.26, SPAN),
        ("size of a half dollar", 30.61, ASK),
        ("as big as a dollar coin", 26.49, ASK),
        ("about the size of a pea, the body", 8, BODY),
        ("body is 1/2 inch and with legs 2 inches", 12.7, BODY),
    ],
)
def test_a_size_is_read(reader, text, mm, characters):
    sizes = [find for find in reader.read(text).found if find.kind is Kind.SIZE]
    assert sizes[0].mm == pytest.approx(mm, abs=0.01)
    assert sizes[0].characters == characters
    assert sizes[0].must_ask == (len(characters) > 1)


def test_a_body_and_a_span_in_one_breath(reader):
    sizes = [find for find in reader.read('body is 1/2" and with legs 2"').found if find.kind is Kind.SIZE]
    assert [(find.mm, find.characters) for find in sizes] == [(12.7, BODY), (50.8, SPAN)]


def test_the_width_of_an_egg_sac(reader):
    sizes = [find for find in reader.read("Just an egg sac, half an inch wide.").found if find.kind is Kind.SIZE]
    assert [(find.mm, find.characters) for find in sizes] == [(12.7, ("sac-width",))]


@pytest.mark.parametrize(
    "text",
    [
        "two inches from my face",
        "three inches away",
        "a hole 2 inches wide",
        "the web is 10 inches across",
        "dime-sized holes in the lawn",
        "bigger than a quarter",
        "not even an inch",
        "is it an inch?",
        "I had 5 in the house",
        "a quarter of them",
        "1/0 inch",
        "0 mm",
        "99999999999 mm",
        "5 minutes ago",
    ],
)
def test_what_is_no_size_of_the_animal(reader, text):
    assert not [find for find in reader.read(text).found if find.kind is Kind.SIZE]


@pytest.mark.parametrize(
    "text", ["about half an inch", "maybe half an inch", "half an inch or so", "half an inch I guess"]
)
def test_a_rough_size_is_think_so(reader, text):
    (size,) = [find for find in reader.read(text).found if find.kind is Kind.SIZE]
    assert size.sureness is Sureness.THINK_SO


@pytest.mark.parametrize(
    "text, character, state",
    [
        ("8 legs", "leg-count", "eight"),
        ("eight legs", "leg-count", "eight"),
        ("an eight-legged thing", "leg-count", "eight"),
        ("four pairs of legs", "leg-count", "eight"),
        ("four legs on each side", "leg-count", "eight"),
        ("eight thin legs", "leg-count", "eight"),
        ("bright red legs, eight of them", "leg-count", "eight"),
        ("it had 6 legs", "leg-count", "six"),
        ("12 legs", "leg-count", "ten-to-fourteen"),
        ("forty legs", "leg-count", "thirty-or-more"),
        ("15 pairs of legs", "leg-count", "thirty-or-more"),
        ("six eyes", "eye-count", "six"),
        ("8 little eyes", "eye-count", "eight"),
    ],
)
def test_a_count_falls_in_its_state(states, text, character, state):
    assert states(text)[character] == [(state,)]


@pytest.mark.parametrize("text", ["the first six legs are black", "two big front legs", "7 legs", "lost two legs"])
def test_some_of_the_legs_are_no_count(states, text):
    assert "leg-count" not in states(text)
