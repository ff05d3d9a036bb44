"""Owns the darts of traced pieces: whose legs, measured on paper, are never quite equal; knows no sizes.

Legs that differ by no more than paper is measured are trued without a word, as every cutter does. Common
practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.drafting.edges import LEGS
from specc.geometry.tolerance import SAME
from specc.model.block import DartRun
from specc.units import format_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.geometry.point import Point
    from specc.model.block import PieceDraft

TRUED = declare(
    "SPC419",
    "traced-legs-unequal",
    Severity.WARNING,
    "the legs of `{dart}` measure {first} and {second}; both are drawn {mean} long",
)

MEASURED: Final = 1.0  # mm by which the legs of a traced dart may differ without a word
MOST: Final = 5.0  # mm by which they may differ at all


def darts_of(piece: PieceDraft) -> Iterator[tuple[str, DartRun]]:
    """Each dart in the edges of the piece, with the point at which its mouth begins."""
    for edge in piece.edges:
        here = edge.start
        for run in edge.runs:
            if isinstance(run, DartRun):
                yield here, run
            here = run.to


def trued(at: Point, other: Point, pivot: Point) -> Point:
    """The end of a dart's leg, moved along the leg so that it is as long as the mean of both legs.

    It stays where it is when they are equal, or differ by more than a slip of measuring.
    """
    leg, second = at.distance(pivot), other.distance(pivot)
    if not LEGS < abs(leg - second) <= MOST or min(leg, second) <= SAME:
        return at
    return pivot.toward(at, 0.5 * (leg + second) / leg)


def unequal_legs(run: DartRun, legs: tuple[float, float]) -> Diagnostic | None:
    """What is said of legs that were trued by more than nobody sees."""
    if not MEASURED < abs(legs[0] - legs[1]) <= MOST:
        return None
    first, second, mean = (format_length(leg, "mm", decimals=1) for leg in (*legs, 0.5 * (legs[0] + legs[1])))
    said = TRUED.at(run.origin, dart=run.name, first=first, second=second, mean=mean)
    return said.help(f"measure both legs again, or grade the mouth together with `{run.pivot}`")
