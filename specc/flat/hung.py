"""Owns how a sleeve hangs from an armhole, folded along its middle; knows nothing of seams.

From the end of the armhole at the shoulder its fold runs down, from the other end its seam. It hangs at the
angle at which both are as long as they are on the piece.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, inf, pi, sin
from typing import TYPE_CHECKING, Final

from specc.flat.laid import LaidEdge, LaidPiece, Role
from specc.geometry.point import Point
from specc.pattern.lookup import corner_named, edge_named, edges_at
from specc.pattern.measure import stitched_length

if TYPE_CHECKING:
    from specc.flat.laid import Chain
    from specc.pattern.piece import Piece

_LEAST, _MOST, _STEPS = 5.0, 85.0, 320  # degrees from upright, in quarters of a degree
UPPER: Final = "upper fold"
"""The edge of a hung sleeve along which it is folded."""


@dataclass(frozen=True, slots=True)
class Half:
    """Half a sleeve: the lengths of its fold, its seam, and half its hem, and what they are called."""

    piece: str
    cap: str
    seam: str
    hem: str
    fold: float
    seam_length: float
    half_hem: float


def hung(half: Half, armhole: Chain) -> LaidPiece:
    """The half below an armhole that is laid; `armhole` runs from the shoulder to the underarm."""
    shoulder, underarm = armhole[0], armhole[-1]

    def foot(angle: float) -> tuple[Point, Point]:
        down = Point(sin(angle), -cos(angle))
        outer = shoulder + down * half.fold
        return outer, outer + Point(down.y, -down.x) * half.half_hem

    found, least = 0.0, inf
    for step in range(_STEPS + 1):
        angle = (_LEAST + (_MOST - _LEAST) * step / _STEPS) * pi / 180.0
        off = abs(foot(angle)[1].distance(underarm) - half.seam_length)
        if off < least - 1e-9:
            found, least = angle, off
    outer, inner = foot(found)
    return LaidPiece(
        half.piece,
        (
            LaidEdge(half.cap, armhole, Role.NOTHING),
            LaidEdge(half.seam, (underarm, inner), Role.TURN),
            LaidEdge(half.hem, (inner, outer), Role.OPEN),
            LaidEdge(UPPER, (outer, shoulder), Role.TURN),
        ),
        under=True,
    )


def half_of(piece: Piece, cap: str, other: str) -> Half | None:
    """The half of a sleeve that one edge of its cap belongs to; None where no seam and hem are below it."""
    here, there = edge_named(piece, cap), edge_named(piece, other)
    if here is None or there is None:
        return None
    top = here.start if here.start in (there.start, there.end) else here.end
    underarm = here.end if top == here.start else here.start
    seam = next((edge for edge in edges_at(piece, underarm) if edge is not None and edge is not here), None)
    if seam is None:
        return None
    foot = seam.end if seam.start == underarm else seam.start
    hem = next((edge for edge in edges_at(piece, foot) if edge is not None and edge is not seam), None)
    at = corner_named(piece, top)
    if hem is None or at is None:
        return None
    # The fold runs square to the hem's chord.
    low, high = hem.parts[0].start, hem.parts[-1].end
    fold = abs((high - low).unit().cross(at - low))
    return Half(piece.name, cap, seam.name, hem.name, fold, stitched_length(seam), 0.5 * stitched_length(hem))
