"""What a PDF is made of: embedded typefaces, vectors, tags, titles."""

from __future__ import annotations

import io
from collections.abc import Iterator

import pypdf
import pytest

from keyapp.sheets import Paper
from tests.sheets.cases import printed


@pytest.fixture(params=list(Paper))
def reader(shipped, request):
    return pypdf.PdfReader(io.BytesIO(printed(shipped, "widow", request.param)))


def fonts(reader) -> Iterator:
    for page in reader.pages:
        for font in page["/Resources"].get("/Font", {}).values():
            yield font.get_object()


def test_every_typeface_is_embedded_and_maps_to_unicode(reader):
    found = list(fonts(reader))
    assert found
    for font in found:
        inner = font["/DescendantFonts"][0].get_object()
        assert "/ToUnicode" in font
        assert inner["/Subtype"] == "/CIDFontType2"
        program = inner["/FontDescriptor"]["/FontFile2"].get_object().get_data()
        assert program[:4] in (b"\0\1\0\0", b"true")  # TrueType outlines, as the type of the font says.


def test_letters_are_at_least_nine_points(reader):
    sizes = []

    def note(text, _cm, _tm, _font, size):
        if text.strip():
            sizes.append(size)

    for page in reader.pages:
        page.extract_text(visitor_text=note)
    assert min(sizes) >= 9.0


def test_figures_are_vectors_with_shaded_colours(reader):
    for page in reader.pages:
        objects = page["/Resources"].get("/XObject", {})
        assert all(one.get_object()["/Subtype"] != "/Image" for one in objects.values())
    assert any(page["/Resources"].get("/Pattern") or page["/Resources"].get("/Shading") for page in reader.pages)


def test_title_author_and_language_are_given(reader):
    assert reader.metadata.title == "Find sheet, to keep: One of these"
    assert reader.metadata.author
    assert reader.trailer["/Root"]["/Lang"] == "en"


def structure(reader) -> list[tuple[str, str]]:
    """Tags in the order they are read, with their alt text."""
    found = []

    def walk(node):
        node = node.get_object()
        if isinstance(node, pypdf.generic.ArrayObject):
            for kid in node:
                walk(kid)
        elif isinstance(node, pypdf.generic.DictionaryObject):
            if "/S" in node:
                found.append((str(node["/S"]), str(node.get("/Alt", ""))))
            if "/K" in node:
                walk(node["/K"])

    walk(reader.trailer["/Root"]["/StructTreeRoot"])
    return found


def test_texts_are_tagged_with_one_title_before_the_heads(reader):
    tags = [tag for tag, _ in structure(reader)]
    assert tags.count("/H1") == 1
    assert tags.index("/H1") < tags.index("/H2")
    assert tags.count("/P") > 20


def test_every_figure_says_what_it_shows(reader, shipped):
    alts = [alt for tag, alt in structure(reader) if tag == "/Figure"]
    known = {figure.alt.say() for figure in shipped.keyset.figures.values()}
    assert alts
    assert set(alts) <= known


def test_heads_are_bookmarks(reader):
    titles = [entry.title for entry in reader.outline]
    assert titles[0] == "If someone is hurt or unwell"
    assert "What to do" in titles
    assert titles[-1] == "Sources"
