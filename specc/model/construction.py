"""Owns how edges are joined and finished: seams, finishes, hems, each with its method and settings.

Knows nothing of the lengths that come out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.expression import Expression, PartRef
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class Pass:
    """One operation, in words, with its stitch (ISO 4915 number) and stitch length.

    `inset` from `inset_from`.
    """

    text: str
    stitch: str | None
    stitch_length: Expression | None
    inset: Expression | None
    inset_from: str | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Takes:
    """Trim used along the edges: how wide it is cut, and what is added to its length.

    `overlapping` is added where a round closes on itself, `turning` at each end of an open edge, `joining`
    for the seam that closes a joined round.
    """

    trim: str
    material: str
    cut_width: Expression
    overlapping: Expression | None
    turning: Expression | None
    joining: Expression | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Setting:
    """What the user of a method set, as printed: the parameter and its value in words."""

    name: str
    value: str


@dataclass(frozen=True, slots=True)
class Making:
    """A method with its settings filled in.

    `raw_edge` is what becomes of the cut edges: `covered`, `overlocked`, `enclosed`, `turned` or `raw`.
    `shows` is whether the finish is seen from outside. `faces` is how the plies lie: `right sides together`,
    `wrong sides together`, `both right sides up` or None. `astm` and `iso` are the seam's letters and number
    where known. `foot` is the presser foot that helps, `needs` what the method asks of cloth and trims.
    """

    method: str
    title: str
    allowance: Expression
    raw_edge: str
    shows: bool
    faces: str | None
    astm: str | None
    iso: str | None
    press: str | None
    machine: str | None
    foot: str | None
    needs: str | None
    passes: tuple[Pass, ...]
    takes: tuple[Takes, ...]
    settings: tuple[Setting, ...]
    origin: Span


@dataclass(frozen=True, slots=True)
class Hold:
    """A stretch of an edge where the trim is held in by `share`; None for start and end means the whole edge.

    `start` and `end` are lengths or ratios from the edge's start corner, or corner names.
    """

    share: Expression
    along: PartRef
    start: Expression | str | None
    end: Expression | str | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Seam:
    """Edges (`first`, a chain) joined to edges (`second`).

    `ease` is how much longer the first side may be (a length, or a ratio of the second side); `gathered` says
    that it is drawn in by gathers rather than eased. `tolerance` is what may remain.
    """

    name: str
    title: str
    first: tuple[PartRef, ...]
    second: tuple[PartRef, ...]
    making: Making
    ease: Expression | None
    gathered: bool
    tolerance: Expression
    origin: Span


@dataclass(frozen=True, slots=True)
class Finish:
    """Edges (a chain) finished or hemmed. `kind`: `finish` or `hem`."""

    kind: str
    name: str
    title: str
    along: tuple[PartRef, ...]
    making: Making
    holds: tuple[Hold, ...]
    origin: Span
