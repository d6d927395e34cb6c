"""The shape of `characters/*.yaml`."""

from __future__ import annotations

from keyapp.keyfile.fields import Fields, read_number
from keyapp.keyfile.node import Node
from keyapp.keyfile.problem import Problems, nearest
from keyapp.keyfile.shapes.common import good_id, read_basis
from keyapp.model.character import AppliesTo, Character, Means, Number, State, View
from keyapp.model.taxon import Form

__all__ = ["read_character"]


def read_character(name: str, node: Node, problems: Problems) -> Character:
    """Read one character. Stand-ins take the place of faulty fields."""
    fields = Fields(node, problems, "the character")
    numeric = fields.has("number")
    character = Character(
        id=name,
        question=fields.text("question"),
        ask_caller=fields.text("ask-caller"),
        look=fields.text("look"),
        means=fields.word("means", Means, Means.BARE_EYE),
        view=fields.word("view", View, View.ANY),
        applies_to=_applies_to(fields),
        tell=fields.number("tell", least=0, most=1),
        right=fields.number("right", least=0, most=1),
        group=fields.id("group"),
        never_clears=fields.text("never-clears", required=False),
        seconds=fields.number("seconds", least=0, most=3600, above=True),
        basis=read_basis(fields),
        states=() if numeric else _states(name, fields),
        number=_number(fields) if numeric else None,
        place=node.place,
    )
    if numeric and fields.take("states"):
        problems.add("K109", fields.place_of("states"), "A character has states or a number, not both.",
                     "Remove one of the two.")
    fields.done()
    return character


def _applies_to(fields: Fields) -> AppliesTo:
    inner = fields.inner("applies-to", "applies-to")
    if inner is None:
        return AppliesTo()
    forms = []
    for form in inner.words("forms"):
        if form in list(Form):
            forms.append(form)
        else:
            fields.problems.add("K112", inner.place_of("forms"), f'"{form[:60]}" is not a form of result.',
                                nearest(form, [str(choice) for choice in Form]))
    found = AppliesTo(tuple(forms), inner.words("groups"), inner.words("not-groups"))
    inner.done()
    return found


def _states(character: str, fields: Fields) -> tuple[State, ...]:
    entries = fields.mapping("states", required=True)
    if len(entries) == 1:
        fields.problems.add("K116", fields.place_of("states"), "A character needs at least two states.",
                            "Add the other states it can have.")
    return tuple(_state(character, name, node, fields.problems) for name, node in entries.items()
                 if good_id(name, node, fields.problems))


def _state(character: str, name: str, node: Node, problems: Problems) -> State:
    fields = Fields(node, problems, "the state")
    label = fields.text("label")
    phrases = fields.words_by_language("phrases")
    for words in phrases.values():
        for word in words:
            if word != word.lower():
                problems.add("K112", fields.place_of("phrases"), f'The phrase "{word[:60]}" is not in small letters.',
                             f'Write "{word.lower()[:60]}".')
    state = State(
        id=name,
        label=label,
        means=fields.text("means"),
        figure=fields.id("figure", required=False, default=f"{character}-{name}"),
        phrases=phrases,
        absence=fields.flag("absence"),
        right=fields.number("right", least=0, most=1) if fields.has("right") else None,
        mistaken_for=_mistaken_for(fields),
        place=node.place,
    )
    fields.done()
    return state


def _mistaken_for(fields: Fields) -> dict[str, float]:
    found = {}
    for state, node in fields.mapping("mistaken-for").items():
        chance = read_number(node, fields.problems, least=0, most=1)
        if chance is not None:
            found[state] = chance
    if sum(found.values()) > 1 + 1e-9:
        fields.problems.add("K118", fields.place_of("mistaken-for"), f"The chances sum to {sum(found.values()):.3g}, "
                            "more than 1.", "Lower them so that they sum to at most 1.")
        return {}
    return found


def _number(fields: Fields) -> Number:
    inner = fields.inner("number", "the number")
    if inner is None:
        return Number("mm", 0.1, 1000.0, 0.3)
    unit = inner.string("unit")
    if unit and unit != "mm":
        fields.problems.add("K112", inner.place_of("unit"), f'The unit "{unit[:20]}" is not known.', "Write mm.")
    least = inner.number("least", least=0, most=1e6, above=True)
    most = inner.number("most", least=0, most=1e6, above=True)
    if least >= most:
        fields.problems.add("K113", inner.place_of("most"), f"The greatest value {most:g} is not above the least "
                            f"{least:g}.", "Swap or mend the two numbers.")
    number = Number(
        unit=unit or "mm",
        least=least,
        most=most,
        spread=inner.number("spread", least=0, most=5, above=True),
        confused_with=inner.id("confused-with", required=False),
        confused=inner.number("confused", least=0, most=1, default=0.0),
    )
    inner.done()
    return number
