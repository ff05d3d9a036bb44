"""Owns the search for ever shorter layouts, in a process that can be stopped at any moment.

Knows nothing of garments, nor of when enough has been searched. For one seed and one number of workers the
layouts come in the same order on every machine tried; only when they come differs. So who wants the same
answer each time bounds the number of reports, never the seconds.
"""

from __future__ import annotations

import json
import subprocess
import sys
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.geometry.point import Point
from specc.geometry.region import bounds
from specc.packing.problem import Layout, Placed, outline_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.packing.problem import Strip

WORKERS: Final = 2  # the number is part of the answer
_EASE: Final = 0.05  # mm added to the width: exact fits confuse the library


@dataclass(frozen=True, slots=True)
class Found:
    """A layout, and how many reports the search had made when it was found."""

    report: int
    layout: Layout


class SearchFailedError(Exception):
    """The library is not there, or ended without an answer."""


def search(
    strip: Strip,
    *,
    seed: int,
    reports: int | None = None,
    patience: int | None = None,
    workers: int = WORKERS,
) -> Iterator[Found]:
    """Layouts one after the other, each shorter than the one before.

    Ends after `reports` reports, or after `patience` reports without a layout. The strip must be wide enough
    for each shape. Closing the iterator ends the search. Raises SearchFailedError when there is no layout, or
    when shapes are pinned, of which the library knows nothing.
    """
    if any(shape.pinned for shape in strip.shapes):
        raise SearchFailedError
    told = {
        "width": strip.width + _EASE,
        "gap": strip.gap,
        "shapes": [
            (shape.name, [(p.x, p.y) for p in shape.outline], shape.count, shape.angles)
            for shape in strip.shapes
        ],
        "seed": seed,
        "workers": workers,
        "reports": reports,
        "patience": patience,
    }
    try:
        process = subprocess.Popen(
            [sys.executable, "-m", "specc.packing.solver"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
        )
    except OSError as error:
        raise SearchFailedError from error
    with process:
        try:
            yield from _layouts(strip, process, json.dumps(told))
        finally:
            process.kill()


def _layouts(strip: Strip, process: subprocess.Popen[str], told: str) -> Iterator[Found]:
    assert process.stdin is not None
    assert process.stdout is not None
    try:
        process.stdin.write(told)
        process.stdin.close()
    except OSError as error:
        raise SearchFailedError from error
    best = float("inf")
    for line in process.stdout:
        answer = json.loads(line)
        layout = _layout(strip, answer["placed"])
        if layout.length < best:
            best = layout.length
            yield Found(answer["report"], layout)
    if best == float("inf"):
        raise SearchFailedError


def _layout(strip: Strip, answer: list[tuple[str, float, float, float]]) -> Layout:
    """The answer with its length measured again, in thousandths of a millimetre, in an order of its own."""
    placed = sorted(
        (Placed(name, angle % 360.0, Point(round(x, 3), round(y, 3))) for name, angle, x, y in answer),
        key=lambda one: (one.at.x, one.at.y, one.shape, one.angle),
    )
    ends = [bounds(outline_of(strip, one))[1].x for one in placed]
    return Layout(round(max(ends) + strip.gap, 3), tuple(placed))
