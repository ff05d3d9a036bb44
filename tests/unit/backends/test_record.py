"""A document as readable text: what it says, and every stroke and label of a drawing."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from specc.backends import record
from tests.unit.document.values import document

if TYPE_CHECKING:
    from tests.goldens import Golden

GOLDEN = Path(__file__).parents[2] / "golden" / "skiff"


def test_the_document_as_it_was_read_and_accepted(golden: Golden) -> None:
    skiff = document()
    # Cautions, ways of making, the steps that name them and the source are library and text, and change for
    # reasons of their own.
    pages = tuple(page for page in skiff.pages if page.kind not in ("cautions", "making", "work", "source"))

    golden(GOLDEN / "document.txt", record.text(replace(skiff, pages=pages), drawings=False))


def test_the_drawing_of_a_piece_as_it_was_read_and_accepted(golden: Golden) -> None:
    drawing = next(drawing for drawing in document().drawings if drawing.name == "piece-front")

    golden(GOLDEN / "piece-front.txt", "\n".join(record._figure(drawing, "", drawings=True)) + "\n")
