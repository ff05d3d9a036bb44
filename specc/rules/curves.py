"""Owns where along an edge a rule finds its tightest curves, and how their place is said. Knows no rule."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor
from typing import TYPE_CHECKING, Final

from specc.geometry.bends import tightest
from specc.geometry.region import signed_area
from specc.geometry.tolerance import SAME
from specc.pattern.lookup import part_of
from specc.pattern.outline import drawn_outline
from specc.units import format_length

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from specc.making.assembly import SizeAssembly
    from specc.rules.subject import Subject

NOTICED: Final = 0.005
"""A share by which a curve must ask for more than there is, before anything is said of it."""

NOTHING_LEFT: Final = 0.1
"""A line whose radius is a smaller share of the width that was taken from it has nothing left."""


@dataclass(frozen=True, slots=True)
class Curve:
    """The tightest place of an edge to one side: its middle in words, its radius in millimetres.

    `inward` says that the edge curves into the piece, as a neck does.
    """

    place: str
    radius: float
    inward: bool


def curves(
    subject: Subject, size: SizeAssembly, edge: tuple[str, str], between: tuple[float, float], *, over: float
) -> Iterator[Curve]:
    """The tightest places of an edge (piece and name) to either side, part by part between its darts.

    Looked for are stretches `over` millimetres long between two places along the stitched edge. Where the
    edge is gathered or folded nobody knows how it lies, and there is none.
    """
    piece, found = part_of(size.pieces, *edge)
    if found.gathers or found.folds:
        return
    turns_left = signed_area(drawn_outline(piece)) > 0.0
    done, whole = 0.0, sum(part.length() for part in found.parts)
    for part in found.parts:
        low, high = max(between[0] - done, 0.0), min(between[1] - done, part.length())
        if high - low > SAME:
            for bend in tightest(part.between(low, high), over):
                at = done + low + bend.start + bend.length / 2.0
                near, corner = (at, found.start) if at <= whole / 2.0 else (whole - at, found.end)
                place = f"{subject.length(near)} from `{corner}`"
                yield Curve(place, bend.radius, (bend.turning > 0.0) != turns_left)
        done += part.length()


def by_sizes(said: Iterable[tuple[str, str]]) -> Iterator[str]:
    """What is said of each size, sizes of which the same is said together."""
    grouped: dict[str, list[str]] = {}
    for size, words in said:
        grouped.setdefault(words, []).append(size)
    for words, sizes in grouped.items():
        yield f"size {', '.join(sizes)}: {words}"


def at_most(mm: float, unit: str) -> str:
    """A length in millimetres as printed, rounded down."""
    step = 25.4 / 16.0 if unit == "in" else 1.0
    return format_length(floor(mm / step + NOTICED) * step, unit, denominator=16)
