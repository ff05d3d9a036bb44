"""Owns the alterations that make new edges or new pieces, as they were written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from specc.syntax.tree.dividing import Divide

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.alterations import Place
    from specc.syntax.tree.atoms import Number, Ref, Word
    from specc.syntax.tree.expressions import Expression


class Spread(NamedTuple):
    """A slash from a place on one edge to a place on another, opened; an end without a place is a corner."""

    start: Ref
    start_place: Place | None
    end: Ref
    end_place: Place | None
    by: Expression
    and_by: Expression | None
    form: Word | None
    span: Span


class Tapering(NamedTuple):
    """From one corner of an edge to the other: the amount at the second, and both corners."""

    at: Word
    and_by: Expression
    and_at: Word
    span: Span


class Taper(NamedTuple):
    """Edges taken in (or let out), alike all along or tapering."""

    let_out: bool
    edges: tuple[Ref, ...]
    by: Expression
    tapering: Tapering | None
    span: Span


class Extend(NamedTuple):
    """An edge moved out, its neighbours going straight on; a step at its end may slant."""

    edge: Ref
    by: Expression
    slanting: Expression | None
    span: Span


class SewAs(NamedTuple):
    """Darts sewn as something else."""

    darts: tuple[Ref, ...]
    form: Word
    span: Span


class RoundCorner(NamedTuple):
    """A corner rounded off."""

    piece: Word
    corner: Word
    by: Expression
    span: Span


class Scallop(NamedTuple):
    """An edge cut in scallops."""

    edge: Ref
    every: Expression
    by: Expression
    span: Span


class Band(NamedTuple):
    """A straight band as long as edges, or as a share of them, and longer by what laps; cut in one or not."""

    share: Number | None
    edges: tuple[Ref, ...]
    by: Expression
    lapping: Expression | None
    in_one: bool
    across: bool
    name: Word
    span: Span


class SplitEnd(NamedTuple):
    """Where a split begins or ends: a place on an edge, or a dart or a corner."""

    part: Word
    place: Place | None
    span: Span


class Split(NamedTuple):
    """A piece cut in two along a line."""

    piece: Word
    line: Word
    start: SplitEnd
    through: tuple[Word, ...]
    end: SplitEnd
    into: tuple[Word, Word]
    span: Span


class Join(NamedTuple):
    """Two pieces made one along an edge of each."""

    first: Ref
    second: Ref
    name: Word
    span: Span


class Unfold(NamedTuple):
    """Pieces on the fold made whole."""

    pieces: tuple[Word, ...]
    span: Span


class Mirror(NamedTuple):
    """A mirrored copy of a piece."""

    piece: Word
    name: Word
    span: Span


class Face(NamedTuple):
    """A facing along edges of one piece."""

    edges: tuple[Ref, ...]
    by: Expression
    name: Word
    span: Span


Reshaping = (
    Spread
    | Taper
    | Extend
    | SewAs
    | RoundCorner
    | Scallop
    | Band
    | Split
    | Join
    | Unfold
    | Mirror
    | Face
    | Divide
)
