"""Owns what a pattern piece is: a closed outline of named edges with darts, lines and marks, frozen.

Knows nothing of charts, blocks, seams or paper: a piece may come from a block or from any other source.
Lengths are millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.geometry.path import Path
    from specc.geometry.point import Point


@dataclass(frozen=True, slots=True)
class NamedPoint:
    """A point that has a name, on the outline or inside the piece."""

    name: str
    at: Point


@dataclass(frozen=True, slots=True)
class Dart:
    """A wedge taken out of one edge: its mouth lies on the edge, its legs meet at the pivot.

    `first` and `second` are the ends of the mouth in the direction of the outline. `pivot` is where the legs
    meet (for a bust dart, the bust point) and is what a swing turns about. The stitching stops `short` of it,
    at the tip.
    """

    name: str
    edge: str
    first: Point
    second: Point
    pivot: Point
    short: float = 0.0


@dataclass(frozen=True, slots=True)
class TwoPointedDart:
    """A dart inside the piece: from `top` to `bottom`, widest between `first` and `second`."""

    name: str
    top: Point
    bottom: Point
    first: Point
    second: Point


@dataclass(frozen=True, slots=True)
class Gathers:
    """A stretch of an edge that is drawn in: `start` to `end` along the stitched edge, losing `amount`.

    `eased` says that it is eased in: drawn in without a fold that can be seen.
    """

    start: float
    end: float
    amount: float
    eased: bool = False


class FoldKind(StrEnum):
    """How cloth is folded away at an edge: a pleat hangs free below its seam, a tuck is stitched down."""

    PLEAT = "pleat"
    TUCK = "tuck"


@dataclass(frozen=True, slots=True)
class Fold:
    """Cloth folded away at one place of an edge: `at` along the stitched edge, `amount` along the cloth.

    On the paper the fold begins at that place and ends `amount` further on. `onto_after` says that its
    underlay lies along the run behind it, so that the fold as seen faces the edge's start; else the other way
    round. Folds at one place stand in the order of the cloth.
    """

    at: float
    amount: float
    kind: FoldKind
    onto_after: bool = False


@dataclass(frozen=True, slots=True)
class Edge:
    """A named stretch of the outline between two named corners.

    `parts` are the runs between darts, in outline order; `darts` are the names of the darts that lie between
    them (always one fewer). Part i ends at dart i's `first`; part i+1 begins at its `second`.
    """

    name: str
    start: str
    end: str
    parts: tuple[Path, ...]
    darts: tuple[str, ...] = ()
    gathers: tuple[Gathers, ...] = ()
    folds: tuple[Fold, ...] = ()
    out_of_sight: bool = False


@dataclass(frozen=True, slots=True)
class ReferenceLine:
    """A line that moves with the cloth (bust line, waist line); its parts are separated by open darts."""

    name: str
    parts: tuple[Path, ...]


class NotchKind(StrEnum):
    """How many cuts mark the place: by common practice one at the front, two at the back."""

    SINGLE = "single"
    DOUBLE = "double"


@dataclass(frozen=True, slots=True)
class Notch:
    """A mark on an edge, `at` millimetres along the stitched edge from its start corner."""

    edge: str
    at: float
    kind: NotchKind = NotchKind.SINGLE


@dataclass(frozen=True, slots=True)
class Gone:
    """What became of a name that the piece no longer has: `how` completes "`front.bust-dart` was ..."."""

    name: str
    how: str


@dataclass(frozen=True, slots=True)
class Piece:
    """A pattern piece in one size, without seam allowance.

    `fold` names the edge laid on the fold of the cloth, if any; the piece as cut is then twice the outline.
    `cut` is how many are cut of it (a piece cut twice is cut as a mirrored pair).
    """

    name: str
    title: str
    edges: tuple[Edge, ...]
    darts: tuple[Dart, ...] = ()
    two_pointed: tuple[TwoPointedDart, ...] = ()
    lines: tuple[ReferenceLine, ...] = ()
    points: tuple[NamedPoint, ...] = ()
    notches: tuple[Notch, ...] = ()
    grain: Path | None = None
    fold: str | None = None
    cut: int = 1
    gone: tuple[Gone, ...] = ()
