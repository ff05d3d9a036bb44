"""The drawings of the garment: a letter for every measure, a number for every seam, none on another."""

from __future__ import annotations

from functools import cache
from itertools import combinations, product
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.document.document import Figure, Group
from specc.document.drawing import Label, Stroke
from specc.document.line import LineKind
from specc.document.pages import measures
from specc.document.placement import box_of
from specc.gather import read
from specc.geometry.point import Point
from specc.pipeline import check, document
from tests.compiling import Here

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block, Document
    from specc.document.drawing import Drawing
    from specc.model.garment import Garment

ROOT = Path(__file__).parents[3]
EXAMPLES = sorted(path.stem for path in (ROOT / "examples").glob("*/*.garment"))
# Pockets are drawn as one outline, so that their edges carry no line of their own.
HIDDEN = {"galley-apron": {"D"}, "loft-waistcoat": {"E"}}


@cache
def whole(name: str) -> tuple[Document, Garment]:
    path = next((ROOT / "examples").glob(f"*/{name}.garment"))
    source, faults = read(path.name, path.read_bytes())
    assert not faults
    result = check(source, Here(path.parent))
    made = document(result)
    assert made is not None
    assert result.garment is not None
    return made, result.garment


def figure(name: str, kind: str) -> tuple[Drawing, Garment, str]:
    """The first drawing of a page, the garment, and what stands below the drawing."""
    made, garment = whole(name)
    page = next(page for page in made.pages if page.kind == kind)
    found = next(block for block in _flat(page.blocks) if isinstance(block, Figure))
    return found.drawing, garment, str(found.caption)


def _flat(blocks: tuple[Block, ...]) -> Iterator[Block]:
    for block in blocks:
        yield from _flat(block.blocks) if isinstance(block, Group) else (block,)


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_measure_has_its_letter_and_its_line(name: str) -> None:
    shown, garment, caption = figure(name, "measures")
    letters = {item.text for item in shown.items if isinstance(item, Label)} - {"Front", "Back", "As worn"}
    expected = {measures.letter(index) for index in range(len(garment.measures))} - HIDDEN.get(name, set())
    assert letters == expected
    assert all(letter in caption for letter in HIDDEN.get(name, set()))
    lines = [item for item in shown.items if isinstance(item, Stroke) and item.line is LineKind.THIN]
    assert len(lines) >= len(expected)


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_seam_finish_and_hem_has_its_number_on_the_map_or_is_said_not_to_be_seen(name: str) -> None:
    shown, garment, caption = figure(name, "making")
    numbers = {item.text for item in shown.items if isinstance(item, Label)}
    count = len(garment.seams) + len(garment.finishes)
    hidden = set(caption.partition("Not seen from outside: ")[2].rstrip(".").split(", ")) - {""}
    assert numbers - {"Front", "Back", "As worn"} == {str(n + 1) for n in range(count)} - hidden
    assert len(hidden) < count


@pytest.mark.parametrize(("name", "kind"), list(product(EXAMPLES, ("measures", "making"))))
def test_no_letter_and_no_number_lies_on_another(name: str, kind: str) -> None:
    boxes = [box_of(item) for item in figure(name, kind)[0].items if isinstance(item, Label)]
    assert not [pair for pair in combinations(boxes, 2) if pair[0].touches(pair[1])]


def test_what_is_held_in_is_shown_where_it_lies_with_its_share() -> None:
    """Of the neck of the estuary shell its front is held in by 6 % from 40 % on; the back lies flat."""
    shown, _, _ = figure("estuary-shell", "trims")
    strokes = [item for item in shown.items if isinstance(item, Stroke) and item.line is LineKind.HELD]
    held = [trace for stroke in strokes for trace in stroke.traces]
    assert len(held) == 2  # the left and the right half of the front
    assert {item.text for item in shown.items if isinstance(item, Label)} == {"Front", "Back", "6%"}
    ends = [run for trace in held for run in trace.runs[-1:] if isinstance(run, Point)]
    left, right = sorted(end.x for end in ends)
    middle = shown.width / 2
    assert left == pytest.approx(right, abs=0.1)  # both end at the middle of the front, which stands first
    assert right < middle
