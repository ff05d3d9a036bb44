"""Owns how edges are joined and finished: seams, finishes, hems, each with its method and settings.

Knows nothing of the lengths that come out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.model.closing import Closing, Places, TakesPieces
    from specc.model.expression import Expression, PartRef
    from specc.source import Span


TOWARD = ("to one side", "to back", "to front", "up", "down")
"""Where allowances lie that are laid to one side, in words that do not say on which of two plies."""

LAID = (
    "open",
    *TOWARD,
    "to the first side",
    "to the second side",
    "first over second",
    "second over first",
    "edge to edge",
    "turned",
)
"""How the plies of a seam lie when it is done, or its allowances on them."""

LYING = ("folded-binding", "binding", "raw-binding", "doubled-binding", "facing", "piping", "tape", "filling")
"""How a trim lies: over the edge, folded in half; sewn on and turned over it, its far edge turned under or
left raw; doubled first; sewn on and turned to one side altogether; between the plies, folded out of
the seam; flat on it; loose in a fold."""


@dataclass(frozen=True, slots=True)
class Pass:
    """One operation, in words, with its stitch (ISO 4915 number) and stitch length.

    `inset` from `inset_from`. `through` is what it goes through, where that is not all that lies at its
    place: `first` and `second` (plies), `allowances`, or trims by what the method calls them.
    """

    text: str
    stitch: str | None
    stitch_length: Expression | None
    inset: Expression | None
    inset_from: str | None
    through: tuple[str, ...]
    origin: Span


@dataclass(frozen=True, slots=True)
class Takes:
    """Trim used along the edges: how wide it is cut, and what is added to its length.

    It is as long as the edges, less what is held in, unless its own length is stated (`long`, relaxed).
    `overlapping` is added where a round closes on itself, `turning` at each end of an open edge, `joining`
    for the seam that closes a joined round, `beyond` at each end of an open edge past which it runs on. A
    trim with ends `hanging` so far is a drawstring: it runs loose, held in nowhere, and lets the edge open to
    its full width. `lies` is how it lies on the edge, one of `LYING` or None; `turned` is `in` or `out`, the
    side to which it is turned over the edge.
    """

    trim: str
    material: str
    cut_width: Expression
    lies: str | None
    turned: str | None
    long: Expression | None
    overlapping: Expression | None
    turning: Expression | None
    joining: Expression | None
    hanging: Expression | None
    beyond: Expression | None
    origin: Span


@dataclass(frozen=True, slots=True)
class EdgeAllowance:
    """An allowance of one edge that differs from what the method wants."""

    edge: PartRef
    width: Expression


@dataclass(frozen=True, slots=True)
class Setting:
    """What the user of a method set, as printed: the parameter and its value in words."""

    name: str
    value: str


@dataclass(frozen=True, slots=True)
class Making:
    """A method with its settings filled in.

    `allowance` is that of every side, but where `second` is that of the second side and of further plies.
    `turned` are the depths by which the allowance is turned back onto the piece, from its edge outward: none,
    one or two. `raw_edge` is what becomes of the cut edges: `covered`, `overlocked`, `enclosed`, `turned` or
    `raw`. `folded` is what the upper allowance of a seam folds over the lower, `trimmed` what allowances are
    trimmed to. `laid` is how the plies lie when the seam is done, one of `LAID` or None. `shows` is whether
    the finish is seen from outside. `faces` is how the plies lie: `right sides
    together`, `wrong sides together`, `both right sides up` or None. `astm` and `iso` are the seam's letters
    and number where known. `foot` is the presser foot that helps, `needs` what the method asks of cloth and
    trims. A closure `laps` so far, one side over the other, takes `pieces` (zip, buttons) and says of those
    at `places` where they lie. `turns` is whether a seam is turned, so that its line becomes an edge of the
    garment that stays open: a neck that is faced, a lining bagged out.
    """

    method: str
    title: str
    allowance: Expression
    second: Expression | None
    turned: tuple[Expression, ...]
    folded: Expression | None
    trimmed: Expression | None
    laid: str | None
    raw_edge: str
    shows: bool
    turns: bool
    faces: str | None
    astm: str | None
    iso: str | None
    press: str | None
    machine: str | None
    foot: str | None
    needs: str | None
    passes: tuple[Pass, ...]
    takes: tuple[Takes, ...]
    pieces: tuple[TakesPieces, ...]
    laps: Expression | None
    places: Places | None
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
class ToFit:
    """All that the first side is longer than the second is eased or gathered in."""

    origin: Span


@dataclass(frozen=True, slots=True)
class Seam:
    """Edges (`first`, a chain) joined to edges (`second`), and to the chains of further plies (`others`).

    `ease` is how much longer the first side may be (a length, a ratio of the second side, or what fits);
    `gathered` says that it is drawn in by gathers rather than eased. `tolerance` is what may remain. Further
    plies are as long as the second side. A chain may stand in it twice: a band folded in half has both its
    long edges, or the same edge of two copies, in one seam.
    """

    name: str
    title: str
    first: tuple[PartRef, ...]
    second: tuple[PartRef, ...]
    others: tuple[tuple[PartRef, ...], ...]
    making: Making
    ease: Expression | ToFit | None
    gathered: bool
    tolerance: Expression
    allowances: tuple[EdgeAllowance, ...]
    origin: Span

    @property
    def sides(self) -> tuple[tuple[PartRef, ...], ...]:
        """The chains of edges of all plies, in the order of the text."""
        return self.first, self.second, *self.others

    @property
    def stays_open(self) -> tuple[PartRef, ...]:
        """The edges of the seam that stay an edge of the garment, or whose piece is folded to one.

        Turned, the plies lie on each other and their seam is the edge: the first side stands for all. Of a
        piece with two edges on further sides, a band folded in half, the last of them stands for its fold.
        """
        if self.making.turns:
            return self.first
        folded = [
            side
            for index, side in enumerate(self.sides)
            if {ref.piece for ref in side} & {ref.piece for other in self.sides[1:index] for ref in other}
        ]
        return folded[-1] if folded else ()


@dataclass(frozen=True, slots=True)
class Finish:
    """Edges (a chain) finished, hemmed or closed. `kind`: `finish`, `hem` or `closure`.

    A closure has `closing`: its sides, all of whose edges stand in `along`, each once.
    """

    kind: str
    name: str
    title: str
    along: tuple[PartRef, ...]
    making: Making
    holds: tuple[Hold, ...]
    allowances: tuple[EdgeAllowance, ...]
    origin: Span
    closing: Closing | None = None
