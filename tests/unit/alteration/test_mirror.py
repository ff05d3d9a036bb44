"""Mirroring: a piece that was cut as a pair becomes two pieces."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from specc.alteration import mirror
from specc.geometry.point import Point
from specc.model.reshaping import Mirror
from specc.pattern.piece import NamedPoint
from tests.altering import ORIGIN, evaluate, polygon, refused, whole

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

SLEEVE = replace(
    polygon(Point(0, 0), Point(200, 0), Point(180, 300), Point(0, 250), cut=2),
    points=(NamedPoint("elbow", Point(150, 120)),),
)


def mirrored(piece: Piece, name: str = "left-front") -> tuple[Piece, ...]:
    result = mirror.apply((piece, replace(piece, name="back")), Mirror(whole(), name, ORIGIN), evaluate)
    assert isinstance(result, tuple)
    return result


def test_a_pair_becomes_two_pieces() -> None:
    right, left, back = mirrored(SLEEVE)
    assert (right, back) == (replace(SLEEVE, cut=1), replace(SLEEVE, name="back"))
    assert (left.name, left.title, left.cut) == ("left-front", "left front", 1)
    assert [(e.name, e.start, e.end) for e in left.edges] == [(e.name, e.start, e.end) for e in right.edges]
    assert left.points == (NamedPoint("elbow", Point(-150, 120)),)


@pytest.mark.parametrize(("times", "kept", "other"), [(1, 1, 1), (2, 1, 1), (3, 2, 1), (4, 2, 2)])
def test_how_often_each_is_cut(times: int, kept: int, other: int) -> None:
    right, left, _ = mirrored(replace(SLEEVE, cut=times))
    assert (right.cut, left.cut) == (kept, other)


def test_refusals() -> None:
    back = replace(SLEEVE, name="back")
    assert (
        refused(mirror.apply((SLEEVE, back), Mirror(whole(), "back", ORIGIN), evaluate)) == "piece-name-taken"
    )
    assert refused(mirror.apply((back,), Mirror(whole(), "other", ORIGIN), evaluate)) == "piece-gone"
