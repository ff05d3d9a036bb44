"""Owns sheets to verify: a small project of two files, its sheet, and PDFs made out of that."""

from __future__ import annotations

from functools import cache
from io import BytesIO
from typing import TYPE_CHECKING

import pypdf
from pypdf.generic import ArrayObject, DecodedStreamObject, DictionaryObject, NameObject, TextStringObject

from specc.backends import write
from specc.pipeline import check_bytes, document, lay_out
from specc.world import Enclosed

if TYPE_CHECKING:
    from collections.abc import Mapping

CLOTH = (
    'cloth calico "calico 1/2" { fibre 100% cotton; width 150 cm; weight 150 g/m2; price 3.20 USD per m }\n'
)
SPEC = """\
garment cover "Cover" { style "CV-1"; sizes S, L; units cm; order S: 2, L: 1 }
use chart cover-sizes
use block cover
use "parts/cloths.garment"
chart cover-sizes { sizes S, L; measurement bust = 88, 100 cm }
block cover {
  piece panel {
    cut 1
    point a at 0, 0
    point b at bust / 2, 0
    point c at bust / 2, 40 cm
    point d at 0, 40 cm
    edge hem from a { line to b }
    edge right from b { line to c }
    edge top from c { line to d }
    edge left from d { line to a }
    grain from a to d
  }
}
hem edges along panel.hem, panel.right, panel.top, panel.left by double-turned
"""
PROJECT = {"cover.garment": SPEC.encode(), "parts/cloths.garment": CLOTH.encode()}


def built(files: Mapping[str, bytes] = PROJECT, *, priced: bool = True) -> bytes:
    """The PDF of a project, as `specc build` writes it."""
    world = Enclosed(files)
    result = lay_out(check_bytes("cover.garment", files["cover.garment"], world), world)
    made = document(result, priced=priced)
    assert made is not None
    (file,) = write(made, ("pdf",))
    return file.data


@cache
def sheet(*, priced: bool = True) -> bytes:
    """The PDF of the small project."""
    return built(priced=priced)


def enclosed(data: bytes) -> dict[str, bytes]:
    """What is enclosed in a PDF."""
    found = pypdf.PdfReader(BytesIO(data)).attachment_list
    return {str(each.alternative_name): each.content for each in found}


def saved_anew(data: bytes) -> bytes:
    """The same PDF as another program writes it."""
    return _bytes(pypdf.PdfWriter(clone_from=BytesIO(data)))


def enclosing(*files: tuple[str, bytes], packed: str = "", within: bytes | None = None) -> bytes:
    """A PDF with these files enclosed and no others; the pages are those `within`, or one that is empty."""
    writer = pypdf.PdfWriter(clone_from=BytesIO(within)) if within else pypdf.PdfWriter()
    if not within:
        writer.add_blank_page(100, 100)
    names = ArrayObject()
    for name, data in files:
        stream = DecodedStreamObject()
        stream.set_data(data)
        packing = stream.flate_encode() if packed != "not" else stream
        if packed not in {"", "not"}:
            packing[NameObject("/Filter")] = NameObject(packed)
        spec = DictionaryObject(
            {
                NameObject("/Type"): NameObject("/Filespec"),
                NameObject("/F"): TextStringObject(name),
                NameObject("/UF"): TextStringObject(name),
                NameObject("/EF"): DictionaryObject({NameObject("/F"): writer._add_object(packing)}),
            }
        )
        names += [TextStringObject(name), writer._add_object(spec)]
    tree = DictionaryObject({NameObject("/Names"): names})
    listed = writer.root_object.get("/Names", DictionaryObject()).get_object()
    listed[NameObject("/EmbeddedFiles")] = writer._add_object(tree)
    writer.root_object[NameObject("/Names")] = listed
    return _bytes(writer)


def changed(files: dict[str, bytes], **others: bytes | None) -> tuple[tuple[str, bytes], ...]:
    """Files with some replaced, or left out where they are None; `_` stands for a dot, `__` for a slash."""
    named = {name.replace("__", "/").replace("_", "."): data for name, data in others.items()}
    return tuple((name, data) for name, data in (files | named).items() if data is not None)


def _bytes(writer: pypdf.PdfWriter) -> bytes:
    out = BytesIO()
    writer.write(out)
    return out.getvalue()
