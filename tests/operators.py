"""Owns what is painted on a page of a PDF: its paths in millimetres, by the operators of the page itself.

ISO 32000-1 (from memory): 8.4.4 `q`, `Q` and `cm`, 8.5.2 paths, 8.5.3 what paints them; the unit is 1/72 in.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pypdf.generic import ContentStream

if TYPE_CHECKING:
    from collections.abc import Iterator

    from pypdf import PageObject, PdfReader

POINT = 25.4 / 72
_PAINTED = {b"S", b"s", b"f", b"F", b"f*", b"B", b"B*", b"b", b"b*"}

Matrix = tuple[float, float, float, float, float, float]
Spot = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Painted:
    """A path and what painted it; the corners of its runs, and the handles of its curves, in millimetres."""

    by: str
    points: tuple[Spot, ...]

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top."""
        across, up = zip(*self.points, strict=True)
        return min(across), min(up), max(across), max(up)


def painted(reader: PdfReader, page: PageObject) -> Iterator[Painted]:
    """Every path of a page in the order of painting; a start from which nothing runs is none."""
    matrix: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
    kept: list[Matrix] = []
    runs: list[list[Spot]] = []
    for operands, operator in ContentStream(page["/Contents"].get_object(), reader).operations:
        numbers = [float(one) for one in operands if isinstance(one, int | float)]
        if operator == b"q":
            kept.append(matrix)
        elif operator == b"Q":
            matrix = kept.pop()
        elif operator == b"cm":
            matrix = _then(numbers, matrix)
        elif operator == b"m":
            runs.append([_at(matrix, *numbers)])
        elif operator in {b"l", b"c", b"v", b"y"}:
            runs[-1] += (_at(matrix, x, y) for x, y in zip(numbers[::2], numbers[1::2], strict=True))
        elif operator == b"re":
            x, y, wide, high = numbers
            runs.append([_at(matrix, x, y), _at(matrix, x + wide, y + high)])
        elif operator in _PAINTED or operator == b"n":
            points = tuple(point for run in runs if len(run) > 1 for point in run)
            if points and operator != b"n":
                yield Painted(operator.decode(), points)
            runs = []


def _then(first: list[float], then: Matrix) -> Matrix:
    a, b, c, d, e, f = first
    p, q, r, s, t, u = then
    return (
        a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u,
    )  # fmt: skip


def _at(matrix: Matrix, x: float, y: float) -> Spot:
    a, b, c, d, e, f = matrix
    return (a * x + c * y + e) * POINT, (b * x + d * y + f) * POINT
