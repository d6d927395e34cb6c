"""How good a key is: its length, its errors, its weakest places, and what no key can beat."""

from keyapp.measure.greedy import Branch, Order, greedy_order
from keyapp.measure.measures import Measures, measure
from keyapp.measure.plot import svg_plot
from keyapp.measure.propagate import as_described
from keyapp.measure.report import json_text, plain_text

__all__ = [
    "Branch",
    "Measures",
    "Order",
    "as_described",
    "greedy_order",
    "json_text",
    "measure",
    "plain_text",
    "svg_plot",
]
