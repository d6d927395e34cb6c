"""The shape of `sources.yaml`, `glossary.yaml` and `figures/*.yaml`: what stands behind the texts and pictures."""

from __future__ import annotations

from keyapp.keyfile.fields import Fields
from keyapp.keyfile.node import NUMBER_PATTERN, Node, converted_kind
from keyapp.keyfile.problem import Problems
from keyapp.model.keyset import Figure, Term
from keyapp.model.source import Source

__all__ = ["plain_value", "read_figure", "read_source", "read_term"]


def read_source(name: str, node: Node, problems: Problems) -> Source:
    """Read one source."""
    fields = Fields(node, problems, "the source")
    source = Source(
        id=name,
        title=fields.string("title"),
        publisher=fields.string("publisher"),
        address=fields.string("address", required=False),
        year=fields.whole("year", least=1600, most=2200, default=0) or None,
        note=fields.string("note", required=False),
        place=node.place,
    )
    fields.done()
    return source


def read_term(name: str, node: Node, problems: Problems) -> Term:
    """Read one glossary entry."""
    fields = Fields(node, problems, "the glossary entry")
    term = Term(name, fields.words("also"), fields.text("means"), node.place)
    fields.done()
    return term


def read_figure(name: str, node: Node, problems: Problems) -> Figure:
    """Read one figure. Its credit and alt text are asked for by the checker, not here."""
    fields = Fields(node, problems, "the figure")
    figure = Figure(
        id=name,
        alt=fields.text("alt", required=False),
        credit=fields.string("credit", required=False),
        draw=fields.string("draw"),
        with_={key: plain_value(child, problems) for key, child in fields.mapping("with").items()},
        place=node.place,
    )
    fields.done()
    return figure


def plain_value(node: Node, problems: Problems) -> object:
    """Return a free-form setting as plain Python: text, number, true/false, list or mapping.

    What common readers would convert in surprising ways (yes, 012, dates, nothing) is refused.
    """
    if node.kind == "list":
        return [plain_value(item, problems) for item in node.items]
    if node.kind == "mapping":
        return {key: plain_value(child, problems) for key, child in node.fields.items()}
    if node.kind == "bad" or not node.plain:
        return node.text
    if node.text in ("true", "false"):
        return node.text == "true"
    if NUMBER_PATTERN.fullmatch(node.text):
        return int(node.text) if node.text.lstrip("-").isdigit() and len(node.text) < 16 else float(node.text)
    kind = converted_kind(node.text)
    if kind:
        problems.add("K108", node.place, f"{node.text or 'Nothing'} would be read as a {kind}.",
                     "Put text in quotes; write numbers as 12 or 0.5; write true or false.")
    return node.text
