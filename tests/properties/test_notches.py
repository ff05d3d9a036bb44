"""Laws of notches: two that meet are equally far from the ends of their seam, outside what is eased."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.making.laid import laid_sides
from specc.making.meeting import meeting
from specc.making.topology import Topology
from specc.pattern.measure import stitched_length
from tests.made import made, sizes
from tests.strategies import lengths

if TYPE_CHECKING:
    from specc.making.assembly import SizeAssembly
    from specc.making.laid import LaidSide

GARMENTS = Path(__file__).parents[1] / "garments"
shares = st.lists(st.floats(0.02, 0.98), max_size=5)


@given(lengths(100, 1500), shares, shares)
def test_without_ease_places_meet_at_equal_lengths(
    whole: float, first: list[float], second: list[float]
) -> None:
    on_first, on_second = [share * whole for share in first], [share * whole for share in second]
    met = meeting((whole, whole), [], (on_first, on_second), 1.0)
    for along in on_first:
        # Notches that differ by less than the tolerance are one; nothing is carried further off than that.
        assert met.onto(along) == pytest.approx(along, abs=1.0)
        assert whole - met.onto(along) == pytest.approx(whole - along, abs=1.0)
    assert not met.eased(1.0)


@given(lengths(200, 900), st.floats(2.0, 80.0), lengths(20, 80), lengths(20, 80), st.floats(0.05, 0.95))
def test_with_ease_places_meet_at_equal_lengths_outside_it(
    whole: float, ease: float, low: float, high: float, share: float
) -> None:
    fuller = whole + ease
    notched = [low, fuller - high], [low, whole - high]
    met = meeting((fuller, whole), [], notched, 0.0)
    assert met.onto(share * low) == pytest.approx(share * low, abs=1e-9)
    assert whole - met.onto(fuller - share * high) == pytest.approx(share * high, abs=1e-9)
    ((start, end),) = met.eased(0.0)
    assert (start, end) == pytest.approx((low, whole - high))
    between = low + share * (fuller - high - low)
    assert met.onto(between) == pytest.approx(low + share * (whole - high - low), abs=1e-9)


@given(lengths(100, 900), lengths(100, 900), shares, shares, st.floats(0.0, 1.0))
def test_what_is_carried_comes_back_and_keeps_its_order(
    one: float, other: float, first: list[float], second: list[float], share: float
) -> None:
    marks = [share * one for share in first], [share * other for share in second]
    met = meeting((one, other), [], marks, 1.0)
    assert met.back(met.onto(share * one)) == pytest.approx(share * one, abs=1e-6)
    carried = [met.onto(along) for along in sorted({*marks[0], 0.0, one})]
    assert all(a < b for a, b in pairwise(carried))


@pytest.mark.parametrize(
    "name", ["bodice", "knit-top", "trousers", "gathered-skirt", "raglan-top", "methods-top"]
)
def test_notches_of_real_seams_are_equally_far_from_their_ends(name: str) -> None:
    """Walked by stitched lengths in every size: where nothing is eased each side has what the other has."""
    result = made((GARMENTS / f"{name}.garment").read_text(encoding="utf-8"))
    assert result.garment is not None
    compared = 0
    for size in sizes(result):
        topology = Topology(size.pieces, result.garment.seams)
        for seam, walk in zip(result.garment.seams, size.walks, strict=True):
            sides = laid_sides(seam, size.pieces, topology)
            if sides is None or walk.ease or abs(walk.difference) > 1.0:
                continue
            marked = [placed_along(side, size) for side in sides]
            pairs = [(at, places) for one in marked for at in one.notches for places in marked]
            for at, places in pairs:
                assert any(abs(at - stop) <= 1.0 for stop in (*places.notches, *places.joints)), seam.name
            compared += len(pairs)
    assert compared


class Marked(NamedTuple):
    """What can be seen along one side of a seam."""

    notches: tuple[float, ...]
    joints: tuple[float, ...]


def placed_along(side: LaidSide, size: SizeAssembly) -> Marked:
    """Where the notches and the seams are along a side, by the stitched lengths of its edges alone."""
    whole = {(p.name, e.name): stitched_length(e) for p in size.pieces for e in p.edges}
    along, notches, joints = 0.0, [], [0.0]
    for edge in side.edges:
        name = edge.stretch.piece, edge.stretch.edge
        places = [notch.at for notch in size.notches if (notch.piece, notch.edge) == name]
        notches += [along + (at if edge.forward else whole[name] - at) for at in places]
        along += whole[name]
        joints.append(along)
    return Marked(tuple(notches), tuple(joints))
