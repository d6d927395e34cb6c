"""Our own SVG figures made ready for print: no ground, and every gradient with its own colours."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from xml.etree import ElementTree

from keyapp.errors import UserError
from keyapp.sheets.items import Drawing, Page

__all__ = ["figure_for_print", "figures_of"]

_SVG = "{http://www.w3.org/2000/svg}"
_LINK = "{http://www.w3.org/1999/xlink}href"
_GRADIENTS = (f"{_SVG}linearGradient", f"{_SVG}radialGradient")


def figures_of(images: Path, pages: Sequence[Page]) -> dict[str, bytes]:
    """Every figure on the pages, by id, ready for print; see `figure_for_print`."""
    names = {item.figure for page in pages for item in page if isinstance(item, Drawing)}
    return {name: figure_for_print(images, name) for name in sorted(names)}


def figure_for_print(images: Path, figure: str) -> bytes:
    """The figure `figure` of the folder `images` as SVG.

    The tinted ground is left out, so that the paper is the ground, and so is the title, which the page
    gives as alt text. Runs of colour that gradients share by a link are copied into each of them, since
    the printer of PDF follows no links. Raises UserError where the figure is not there or no SVG.
    """
    path = images / "figures" / f"{figure}.svg"
    try:
        root = ElementTree.fromstring(path.read_bytes())
    except (OSError, ElementTree.ParseError) as error:
        raise UserError("A figure could not be read.", where=str(path), fix="Draw it with `keyapp draw`.") from error
    ElementTree.register_namespace("", _SVG[1:-1])
    ramps = {f"#{one.get('id')}": one for kind in _GRADIENTS for one in root.iter(kind)}
    links = set()
    for gradient in ramps.values():
        link = gradient.attrib.pop(_LINK, "")
        if link in ramps:
            links.add(link)
            gradient.extend(list(ramps[link]))
    for parent in root.iter(f"{_SVG}defs"):
        for one in [child for child in parent if f"#{child.get('id')}" in links]:
            parent.remove(one)
    for title in root.findall(f"{_SVG}title"):
        root.remove(title)
    _without_ground(root)
    return ElementTree.tostring(root)


def _without_ground(root: ElementTree.Element) -> None:
    """Take out the rectangle that covers the whole canvas."""
    _, _, width, height = (root.get("viewBox") or "0 0 0 0").split()
    for parent in root.iter():
        for child in parent.findall(f"{_SVG}rect"):
            if child.get("width") == width and child.get("height") == height:
                parent.remove(child)
