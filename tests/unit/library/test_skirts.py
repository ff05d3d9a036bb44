"""The skirt blocks: square corners, smooth waists and hems, sides that walk, girths that are exact."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from specc.pattern.lookup import line_named
from specc.pattern.measure import line_length
from tests.drafting import SIZES, in_size, named
from tests.unit.library.quality import angle, kinks, rising, sewn

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

INCH = 25.4
BLOCKS = ("a-line-skirt", "pull-on-skirt")
FLARED = {"a-line-skirt": "flare 4 in; skirt-length 30 in", "pull-on-skirt": "flare 6 in; skirt-length 18 in"}
EVERY = [
    pytest.param(block, size, settings, id=f"{block}, {size}, {settings or 'as it is'}")
    for block in BLOCKS
    for settings in ("", FLARED[block])
    for size in SIZES
]


def pieces(block: str, size: str, settings: str = "") -> dict[str, Piece]:
    return named(in_size(block, size, settings))


def measurement(size: str, name: str) -> float:
    return in_size("a-line-skirt", size).measurements[name]


@pytest.mark.parametrize(("block", "size", "settings"), EVERY)
def test_every_corner_is_square(block: str, size: str, settings: str) -> None:
    for piece in pieces(block, size, settings).values():
        for corner in ("waist-side", "centre-waist", "hem-centre", "hem-side"):
            assert angle(piece, corner) == pytest.approx(90.0, abs=0.1), f"{piece.name}.{corner}"


@pytest.mark.parametrize(("block", "size", "settings"), EVERY)
def test_no_edge_has_a_kink_open_or_with_its_darts_closed(block: str, size: str, settings: str) -> None:
    for piece in pieces(block, size, settings).values():
        assert [(where, turn) for where, turn in kinks(piece) if abs(turn) > 0.5] == []


@pytest.mark.parametrize(("block", "size", "settings"), EVERY)
def test_side_seams_walk(block: str, size: str, settings: str) -> None:
    of = pieces(block, size, settings)

    assert sewn(of["front"], "side") == pytest.approx(sewn(of["back"], "side"), abs=0.1)


@pytest.mark.parametrize("size", SIZES)
def test_the_waist_of_the_a_line_skirt_fits_with_its_ease(size: str) -> None:
    for settings, ease in (("", 0.75), ("waist-ease 0 in; back-dart-width 3/4 in", 0.0)):
        of = pieces("a-line-skirt", size, settings)
        waist = 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist"))
        assert waist == pytest.approx(measurement(size, "waist") + ease * INCH, abs=0.01)


@pytest.mark.parametrize("size", SIZES)
def test_hip_and_hem_are_as_wide_as_planned(size: str) -> None:
    """The hem is a curve: longer than its width across by less than 2 %."""
    of = pieces("a-line-skirt", size)
    hip = 0.0
    for piece in of.values():
        line = line_named(piece, "hip-line")
        assert line is not None
        hip += 2.0 * line_length(piece, line)
    hem = 2.0 * (sewn(of["front"], "hem") + sewn(of["back"], "hem"))

    assert hip == pytest.approx(measurement(size, "hip") + 2 * INCH, abs=0.01)
    assert 1.0 < hem / (hip + 4 * 2.5 * INCH) < 1.02


@pytest.mark.parametrize("size", SIZES)
def test_the_waist_of_the_pull_on_skirt_passes_the_hip(size: str) -> None:
    of = pieces("pull-on-skirt", size)
    waist = 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist"))

    assert waist >= measurement(size, "hip") + 4 * INCH
    assert waist < (measurement(size, "hip") + 4 * INCH) * 1.02


@pytest.mark.parametrize("size", SIZES)
def test_the_side_hangs_no_lower_than_the_centre(size: str) -> None:
    """Raised at the side as far as square corners take: less than an inch (common practice, no source)."""
    for block in BLOCKS:
        for piece in pieces(block, size).values():
            hem = next(edge for edge in piece.edges if edge.name == "hem").parts[0]
            assert 0.0 < hem.end.y - hem.start.y < INCH


@pytest.mark.parametrize("block", BLOCKS)
@pytest.mark.parametrize("name", ["waist", "hem"])
def test_edges_grow_with_the_size(block: str, name: str) -> None:
    for piece in ("back", "front"):
        assert rising([sewn(pieces(block, size)[piece], name) for size in SIZES])
