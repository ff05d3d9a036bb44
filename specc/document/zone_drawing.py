"""Owns the drawing of the zones of a trim: along which edges it lies, where flat and where it is held in.

Knows nothing of how long it is cut.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from specc.document.drawing import Drawing, Stroke, Trace
from specc.document.garment_drawing import garment_strokes, standing, thin
from specc.document.lettering import Lettering
from specc.document.line import LineKind
from specc.document.placement import Place, Placer
from specc.flat.chains import distinct, measured
from specc.geometry.point import Point
from specc.pattern.lookup import part_of
from specc.pattern.measure import stitched_length
from specc.units import format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.garment_drawing import Seen
    from specc.flat.laid import Flat
    from specc.making.assembly import Zone
    from specc.pattern.piece import Piece

_SCALES: Final = tuple(Fraction(1, reduction) for reduction in range(2, 101))  # it is not measured
_ROUND: Final = 6.0  # for shares outside the garment, millimetres of paper
_STEPS: Final = 24  # points along a zone
_AWAY: Final = (3.0, 4.5, 6.5)  # from a zone to the middle of its share


def zone_drawing(
    called: tuple[str, str], flat: Flat, pieces: tuple[Piece, ...], zones: tuple[Zone, ...], *, room: Point
) -> Drawing | None:
    """Where a trim is held in: those zones widest, with the share; None where none of them is seen.

    `called` are the drawing's name and title.
    """
    stands = standing(flat, room=Point(room.x - 2 * _ROUND, room.y - 2 * _ROUND), scales=_SCALES)
    if stands is None or not any(zone.held for zone in zones):
        return None
    aside = Point(_ROUND, _ROUND)
    seen = tuple(each.moved(aside) for each in stands.seen)
    garment = [thin(stroke) for each in seen for stroke in garment_strokes(each, {})]
    placer = Placer(stands.width + 2 * _ROUND, stands.height + 2 * _ROUND)
    placer.put(*(name.moved(aside) for name in stands.names))
    for stroke in garment:
        if stroke.line not in {LineKind.CLOTH, LineKind.SHADE}:
            placer.avoid(stroke.traces, 2.0)
    flat_runs: list[Trace] = []
    held_runs: list[Trace] = []
    said: list[tuple[str, tuple[Point, ...]]] = []
    for zone in dict.fromkeys(zones):
        for each in seen:
            halves = tuple(_halves(each, pieces, zone))
            (held_runs if zone.held else flat_runs).extend(Trace(run[0], run[1:]) for run in halves)
            if zone.held and halves:
                said.append((format_ratio(zone.held), halves[0]))
    if not held_runs:
        return None
    placer.avoid(held_runs, 4.0)
    for share, run in said:
        placer.place(share, Lettering.NAME, tuple(_places(run)))
    items = (
        *garment,
        *((Stroke(LineKind.GARMENT, tuple(flat_runs)),) if flat_runs else ()),
        Stroke(LineKind.HELD, tuple(held_runs)),
        *placer.labels,
    )
    return Drawing(*called, placer.width, placer.height, None, items)


def _halves(each: Seen, pieces: tuple[Piece, ...], zone: Zone) -> Iterator[tuple[Point, ...]]:
    """The zone on paper, on both halves of the garment; nothing where its edge is not seen from this side."""
    laid = each.side.piece(zone.piece)
    edge = laid.edge(zone.edge) if laid is not None and not laid.under else None
    if laid is None or edge is None:
        return
    whole = stitched_length(part_of(pieces, zone.piece, zone.edge)[1])
    run = measured(distinct(edge.points))
    low, high = zone.start / whole * run.length, zone.end / whole * run.length
    points = tuple(run.at(low + (high - low) * step / _STEPS) for step in range(_STEPS + 1))
    for mirrored in (False,) if laid.whole else (False, True):
        yield tuple(each.at(point, mirrored=mirrored) for point in points)


def _places(run: tuple[Point, ...]) -> Iterator[Place]:
    for order, index in enumerate((12, 9, 15, 6, 18)):
        way = run[index + 1] - run[index - 1]
        square = way.unit().left() if way.norm() > 0.0 else Point(0.0, 1.0)
        for far, away in enumerate(_AWAY):
            for side in (1.0, -1.0):
                yield Place(run[index] + square * (away * side), 0.0, 0.3 * order + 0.8 * far)
