"""Owns what an alteration changed as data for result.json; knows nothing of how it is printed."""

from __future__ import annotations

from math import degrees
from typing import TYPE_CHECKING

from specc.document.data import Members

if TYPE_CHECKING:
    from specc.alteration.record import (
        AreaChange,
        DartChange,
        DartState,
        EdgeChange,
        Fullness,
        FullnessChange,
        Record,
    )


def record_data(record: Record) -> Members:
    """What one step changed in one size."""
    return Members(
        (
            ("edges", tuple(map(_edge_change, record.edges))),
            ("darts", tuple(map(_dart_change, record.darts))),
            ("fullness", tuple(map(_fullness_change, record.fullness))),
            ("areas", tuple(map(_area_change, record.areas))),
        )
    )


def _edge_change(change: EdgeChange) -> Members:
    return Members(
        (
            ("piece", change.piece),
            ("edge", change.edge),
            ("before_mm", change.before),
            ("after_mm", change.after),
            ("drawn_before_mm", change.drawn_before),
            ("drawn_after_mm", change.drawn_after),
        )
    )


def _dart_change(change: DartChange) -> Members:
    return Members(
        (
            ("piece", change.piece),
            ("dart", change.dart),
            ("before", _dart_state(change.before)),
            ("after", _dart_state(change.after)),
        )
    )


def _dart_state(state: DartState | None) -> Members | None:
    if state is None:
        return None
    angle = None if state.angle is None else degrees(state.angle)
    return Members((("edge", state.edge), ("angle_deg", angle)))


def _fullness_change(change: FullnessChange) -> Members:
    return Members(
        (
            ("piece", change.piece),
            ("edge", change.edge),
            ("way", change.way.value),
            ("before", _fullness(change.before)),
            ("after", _fullness(change.after)),
        )
    )


def _fullness(state: Fullness | None) -> Members | None:
    return None if state is None else Members((("count", state.count), ("takes_up_mm", state.amount)))


def _area_change(change: AreaChange) -> Members:
    return Members((("piece", change.piece), ("before_mm2", change.before), ("after_mm2", change.after)))
