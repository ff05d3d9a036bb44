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
from specc.packing.coarse import coarse
from specc.packing.problem import Layout, Placed, outline_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.packing.problem import Strip

WORKERS: Final = 2  # the number is part of the answer
_EASE: Final = 0.05  # mm added to the width: exact fits confuse the library
_COARSE: Final = 0.2  # mm by which the outlines that are searched with may leave the true ones


@dataclass(frozen=True, slots=True)
class Report:
    """What the search says: the number of the report, and the layout it is of if that can be cut."""

    number: int
    layout: Layout | None


class SearchFailedError(Exception):
    """The library is not there, or ended without an answer."""


def search(strip: Strip, *, seed: int, workers: int = WORKERS) -> Iterator[Report]:
    """Reports of the search, one after the other; it ends when its iterator is closed.

    While there is nothing new the last number is said again, several times a second, without a layout.
    The strip must be wide enough for each shape. Raises SearchFailedError when there is no layout, or when
    shapes are pinned, of which the library knows nothing.
    """
    if any(shape.pinned for shape in strip.shapes):
        raise SearchFailedError
    outlines, out = coarse((shape.outline for shape in strip.shapes), _COARSE)
    # Where true outlines stick out, as much is kept free beside them; the sides lie as much further off.
    told = {
        "width": strip.width + 2.0 * out + _EASE,
        "gap": strip.gap + 2.0 * out,
        "shapes": [
            (shape.name, [(p.x, p.y) for p in outline], shape.count, shape.angles)
            for shape, outline in zip(strip.shapes, outlines, strict=True)
        ],
        "seed": seed,
        "workers": workers,
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
            yield from _reports(strip, process, json.dumps(told), out)
        finally:
            process.kill()


def _reports(strip: Strip, process: subprocess.Popen[str], told: str, out: float) -> Iterator[Report]:
    assert process.stdin is not None
    assert process.stdout is not None
    try:
        process.stdin.write(told)
        process.stdin.close()
    except OSError as error:
        raise SearchFailedError from error
    found = False
    for line in process.stdout:
        answer = json.loads(line)
        layout = _layout(strip, answer["placed"], out) if answer["placed"] else None
        found = found or layout is not None
        yield Report(answer["report"], layout)
    if not found:
        raise SearchFailedError


def _layout(strip: Strip, answer: list[tuple[str, float, float, float]], out: float) -> Layout:
    """The answer with its length measured again, in thousandths of a millimetre, in an order of its own."""
    placed = sorted(
        (
            Placed(name, angle % 360.0, Point(round(x - out, 3), round(y - out, 3)))
            for name, angle, x, y in answer
        ),
        key=lambda one: (one.at.x, one.at.y, one.shape, one.angle),
    )
    ends = [bounds(outline_of(strip, one))[1].x for one in placed]
    return Layout(round(max(ends) + strip.gap, 3), tuple(placed))
