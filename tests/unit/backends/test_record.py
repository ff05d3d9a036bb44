"""A document and the values before it as readable text."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from specc.backends import record, show
from tests.unit.document.values import document, sheet

if TYPE_CHECKING:
    from tests.golden import Golden

GOLDEN = Path(__file__).parents[2] / "golden" / "skiff"


def test_the_document_as_it_was_read_and_accepted(golden: Golden) -> None:
    skiff = document()
    # Cautions, ways of making and the source are library and text, and change for reasons of their own.
    pages = tuple(page for page in skiff.pages if page.kind not in ("cautions", "making", "source"))

    golden(GOLDEN / "document.txt", record.text(replace(skiff, pages=pages), drawings=False))


def test_the_drawing_of_a_piece_as_it_was_read_and_accepted(golden: Golden) -> None:
    drawing = next(drawing for drawing in document().drawings if drawing.name == "piece-front")

    golden(GOLDEN / "piece-front.txt", "\n".join(record._figure(drawing, "", drawings=True)) + "\n")


def test_pieces_assembly_and_amounts_are_told_in_every_size() -> None:
    of = sheet()
    pieces = show.pieces(tuple((size.size, size.pieces) for size in of.assembly.sizes))
    assembly = show.assembly(of.assembly)
    amounts = show.quantities(of.quantities)

    assert pieces.count("piece front") == 5
    # From (247, 262) to (244.5, 292): the root of 2.5 squared and 30 squared.
    assert "dart bust-dart: 30.10 wide" in pieces
    walk = of.sample.walks[1]
    assert f"seam side: {walk.first_length:.2f} to {walk.second_length:.2f}, ease 0.00" in assembly
    assert "trim edging on neckline: 1 x" in amounts
    assert "bill thread core: - cone, buy -, cost None" in amounts
