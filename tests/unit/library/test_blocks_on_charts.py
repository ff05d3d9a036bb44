"""Every block of the library on every chart that has what it needs: drafted, growing, without kinks."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from specc.geometry.region import polygon_area
from specc.pattern.outline import flat_outline
from tests.unit.library.blocks import CHILDREN, IN, MEN, MISSES, WOMEN, pieces
from tests.unit.library.quality import kinks, rising
from tests.worlds import resolved

LIBRARY = Path(__file__).parent.parent.parent.parent / "specc/library"
EVERY = (MISSES, WOMEN, MEN, CHILDREN)
FITTED = (MISSES, WOMEN, MEN)
ON = {
    "a-line-skirt": FITTED,
    "bodice": (MISSES, WOMEN),
    "circle-skirt": EVERY,
    "gathered-skirt": EVERY,
    "kimono-top": EVERY,
    "knit-top": EVERY,
    "pocket-bag": EVERY,
    "pull-on-skirt": EVERY,
    "pull-on-trousers": EVERY,
    "raglan-top": EVERY,
    "rectangle": EVERY,
    "sheath": (MISSES, WOMEN),
    "straight-skirt": FITTED,
    "trousers": FITTED,
}
"""The charts that each block is for: a child has no waist for what is fitted to it with darts."""

PAIRS = [(block, chart) for block, charts in ON.items() for chart in charts]
LACKING = [("bodice", MEN), ("bodice", CHILDREN), ("sheath", MEN), ("sheath", CHILDREN)]


def test_every_block_of_the_library_is_tried() -> None:
    blocks = {
        path.stem
        for path in LIBRARY.glob("*.garment")
        if any(
            line.startswith(f"block {path.stem}") for line in path.read_text(encoding="utf-8").splitlines()
        )
    }

    assert set(ON) == blocks


@cache
def areas(block: str, chart: str) -> dict[str, list[float]]:
    """The area of each piece in every size, in square millimetres."""
    found: dict[str, list[float]] = {}
    for size in IN[chart]:
        for name, piece in pieces(block, size, "", chart).items():
            found.setdefault(name, []).append(abs(polygon_area(flat_outline(piece))))
    return found


@pytest.mark.parametrize(("block", "chart"), PAIRS)
def test_every_piece_grows_with_the_size(block: str, chart: str) -> None:
    for name, found in areas(block, chart).items():
        assert rising(found) or len(set(found)) == 1, name


@pytest.mark.parametrize(("block", "chart"), PAIRS)
def test_no_edge_breaks_where_two_runs_meet(block: str, chart: str) -> None:
    for size in IN[chart]:
        for piece in pieces(block, size, "", chart).values():
            assert [(where, turn) for where, turn in kinks(piece) if abs(turn) > 0.5] == [], (
                size,
                piece.name,
            )


@pytest.mark.parametrize(("block", "chart"), LACKING)
def test_a_chart_without_the_measurements_of_a_block_is_answered_once(block: str, chart: str) -> None:
    uses = f"use chart {chart}\nuse block {block}\n"
    found, said = resolved(f'garment g "G" {{ style "G" }}\n{uses}cloth c {{ fibre 100% cotton }}\n')

    assert found is None
    assert [fault.code.id for fault in said] == ["SPC313"]
