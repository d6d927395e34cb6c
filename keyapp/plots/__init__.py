"""Plain plots as SVG text, in the paper and ink of the figures."""

from keyapp.plots.axes import Axes, ticks
from keyapp.plots.marks import MARKS, area, bar, document, line, mark, text

__all__ = ["MARKS", "Axes", "area", "bar", "document", "line", "mark", "text", "ticks"]
