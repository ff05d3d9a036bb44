"""Straight pieces and circles: what four numbers say is what is drawn."""

from __future__ import annotations

from math import pi

import pytest

from specc.pattern.lookup import point_named
from specc.pattern.outline import bounds
from tests.unit.library.blocks import IN, INCH, MEN, MISSES, WOMEN, body, girth, pieces
from tests.unit.library.quality import angle, edge, kinks, rising, sewn

EVERY = [(chart, size) for chart in (MISSES, WOMEN, MEN) for size in IN[chart]]
SHARES = {"1": 1.0, "3/4": 0.75, "1/2": 0.5, "1/4": 0.25}
CUTTING = {
    "once": (1, None),
    "twice": (2, None),
    "on-fold": (1, "left-edge"),
    "twice-on-fold": (2, "left-edge"),
    "three times": (3, None),
    "four times": (4, None),
    "five times": (5, None),
    "six times": (6, None),
}


@pytest.mark.parametrize("cutting", CUTTING)
def test_a_rectangle_is_as_wide_and_long_as_said_and_cut_as_said(cutting: str) -> None:
    piece = pieces("rectangle", "12", f"wide 7 cm; long 90 cm; cutting {cutting}")["rectangle"]
    low, high = bounds(piece)

    assert (high.x - low.x, high.y - low.y) == pytest.approx((70.0, 900.0))
    assert (piece.cut, piece.fold) == CUTTING[cutting]
    assert sewn(piece, "top") == pytest.approx(sewn(piece, "bottom")) == pytest.approx(70.0)
    assert sewn(piece, "left-edge") == pytest.approx(sewn(piece, "right-edge")) == pytest.approx(900.0)
    for corner in ("top-left", "top-right", "bottom-left", "bottom-right"):
        assert angle(piece, corner) == pytest.approx(90.0)


def test_a_rectangle_is_the_same_in_every_size() -> None:
    assert len({pieces("rectangle", size)["rectangle"] for size in IN[MISSES]}) == 1


@pytest.mark.parametrize(("chart", "size"), EVERY)
@pytest.mark.parametrize("fullness", ["1 1/2", "3"])
def test_a_gathered_skirt_is_so_often_as_wide_as_the_waist(chart: str, size: str, fullness: str) -> None:
    settings = f"fullness {fullness}; waist-ease 1 in"
    of = pieces("gathered-skirt", size, settings, chart)
    times = {"1 1/2": 1.5, "3": 3.0}[fullness]
    wanted = times * (body(size, "waist", chart) + INCH)

    assert 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist")) == pytest.approx(wanted, abs=1e-6)
    for line in ("waist-line", "hip-line"):
        assert girth("gathered-skirt", size, line, settings, chart) == pytest.approx(wanted, abs=1e-6)
    assert sewn(of["front"], "side") == pytest.approx(sewn(of["back"], "side"), abs=1e-9)


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize(("chart", "size"), EVERY)
def test_a_circle_skirt_is_round(chart: str, size: str, share: str) -> None:
    """Every point of waist and hem is as far from the middle as its radius, to 0.01 mm."""
    of = pieces("circle-skirt", size, f"circle {share}", chart)
    radius = (body(size, "waist", chart) + 0.75 * INCH) / (2.0 * pi * SHARES[share])
    for piece in of.values():
        middle = point_named(piece, "middle")
        assert middle is not None
        for name, wanted in (("waist", radius), ("hem", radius + 24.0 * INCH)):
            (path,) = edge(piece, name).parts
            for run in path.segments:
                for t in (0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0):
                    assert run.point_at(t).distance(middle) == pytest.approx(wanted, abs=0.01)


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize(("chart", "size"), EVERY)
def test_a_circle_skirt_is_smooth_square_and_walks(chart: str, size: str, share: str) -> None:
    of = pieces("circle-skirt", size, f"circle {share}", chart)
    for piece in of.values():
        assert [turn for _, turn in kinks(piece) if abs(turn) > 1e-6] == []
        for corner in ("centre-waist", "waist-side", "hem-centre", "hem-side"):
            assert angle(piece, corner) == pytest.approx(90.0, abs=1e-6)
    assert sewn(of["front"], "side") == pytest.approx(sewn(of["back"], "side")) == pytest.approx(24.0 * INCH)


@pytest.mark.parametrize("block", ["circle-skirt", "gathered-skirt"])
@pytest.mark.parametrize("chart", [MISSES, WOMEN, MEN])
def test_waist_and_hem_grow_with_the_size(block: str, chart: str) -> None:
    for piece in ("back", "front"):
        for name in ("waist", "hem"):
            assert rising([sewn(pieces(block, size, "", chart)[piece], name) for size in IN[chart]])


@pytest.mark.parametrize("block", ["circle-skirt", "gathered-skirt"])
def test_the_centre_back_is_a_seam_or_a_fold(block: str) -> None:
    seam, fold = (pieces(block, "12", f"back-centre {word}")["back"] for word in ("seam", "fold"))

    assert (seam.cut, seam.fold) == (2, None)
    assert (fold.cut, fold.fold) == (1, "centre")
