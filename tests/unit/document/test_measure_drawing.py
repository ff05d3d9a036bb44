"""The drawing of the points of measure: a line and a letter for every one of them, none on another."""

from __future__ import annotations

from functools import cache
from itertools import combinations
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.document.document import Figure
from specc.document.drawing import Label, Stroke
from specc.document.line import LineKind
from specc.document.pages import measures
from specc.document.placement import box_of
from specc.gather import read
from specc.pipeline import check, document
from tests.compiling import Here

if TYPE_CHECKING:
    from specc.document.drawing import Drawing

ROOT = Path(__file__).parents[3]
EXAMPLES = sorted(path.stem for path in (ROOT / "examples").glob("*/*.garment"))
# Pockets are drawn as one outline, so that their edges carry no line of their own.
HIDDEN = {"galley-apron": {"D"}, "loft-waistcoat": {"E"}}


@cache
def drawing(name: str) -> tuple[Drawing, int, str]:
    path = next((ROOT / "examples").glob(f"*/{name}.garment"))
    source, faults = read(path.name, path.read_bytes())
    assert not faults
    result = check(source, Here(path.parent))
    made = document(result)
    assert made is not None
    assert result.garment is not None
    page = next(page for page in made.pages if page.kind == "measures")
    figure = next(block for block in page.blocks if isinstance(block, Figure))
    return figure.drawing, len(result.garment.measures), str(figure.caption)


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_measure_has_its_letter_and_its_line(name: str) -> None:
    shown, count, caption = drawing(name)
    letters = {item.text for item in shown.items if isinstance(item, Label)} - {"Front", "Back", "As worn"}
    expected = {measures.letter(index) for index in range(count)} - HIDDEN.get(name, set())
    assert letters == expected
    assert all(letter in caption for letter in HIDDEN.get(name, set()))
    lines = [item for item in shown.items if isinstance(item, Stroke) and item.line is LineKind.THIN]
    assert len(lines) >= len(expected)


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_letter_lies_on_another(name: str) -> None:
    boxes = [box_of(item) for item in drawing(name)[0].items if isinstance(item, Label)]
    assert not [pair for pair in combinations(boxes, 2) if pair[0].touches(pair[1])]
