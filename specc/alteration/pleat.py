"""Owns the verbs `pleat` and `tuck`: cloth laid in equal folds along an edge; knows no other verb."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.alteration.opening import Filling
from specc.alteration.refusal import Refusal, found, missing
from specc.alteration.runs import replaced
from specc.alteration.slash import CLEAR, stitched_place
from specc.alteration.slashes import Slash, opened_all, planned
from specc.alteration.slashing import SlashEnd
from specc.geometry.region import crosses_itself
from specc.geometry.tolerance import SAME
from specc.model.alteration import Form
from specc.model.fullness import Lay
from specc.pattern.lookup import edge_named
from specc.pattern.measure import place_on_edge
from specc.pattern.outline import flat_outline, laid_onto_second

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.expression import Expression
    from specc.model.fullness import Pleat
    from specc.pattern.piece import Edge, Piece


@dataclass(frozen=True, slots=True)
class FoldAt:
    """Folds to be laid at one stitched place, and whether their underlays lie along the run behind them."""

    at: float
    onto_after: tuple[bool, ...]

    def takes_up(self, deep: float) -> float:
        """How much cloth lies in the folds."""
        return 2.0 * deep * len(self.onto_after)


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: Pleat, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with one slashed and spread by twice the depth of every fold; the edge stays as sewn."""
    piece = found(pieces, step.edge.piece, step.edge.origin)
    if isinstance(piece, Refusal):
        return piece
    edge = edge_named(piece, step.edge.name)
    if edge is None:
        return missing(piece, step.edge)
    if edge.name == piece.fold:
        facts = (("piece", piece.name), ("edge", edge.name))
        return Refusal("edge-on-fold", facts, step.edge.origin, "lay pleats along another edge")
    deep = evaluate(step.deep)
    if deep <= SAME:
        return Refusal("amount-not-positive", (("by", deep),), step.origin, "give the depth of a fold")
    folds = _folds(piece, edge, step, evaluate, deep=deep)
    if isinstance(folds, Refusal):
        return folds
    ends = planned(piece, edge, [fold.at for fold in folds], step.slashed, origin=step.origin)
    if isinstance(ends, Refusal):
        return ends
    slashes = [
        Slash(
            SlashEnd(start, fold.takes_up(deep), Filling(step.form, fold.onto_after)),
            SlashEnd(end, 0.0 if step.slashed.hinged else fold.takes_up(deep), _far(step.form, fold)),
        )
        for fold, (start, end) in zip(folds, ends, strict=True)
    ]
    pleated = opened_all(piece, slashes, origin=step.origin)
    if isinstance(pleated, Refusal):
        return pleated
    if crosses_itself(flat_outline(pleated)):
        cure = "lay fewer pleats, or less deep ones"
        return Refusal("would-cross-itself", (("piece", piece.name),), step.origin, cure)
    return replaced(pieces, pleated)


def _far(form: Form, fold: FoldAt) -> Filling:
    """What the far end becomes: a tuck is sewn all along, and a pleat hangs open."""
    return Filling(form, fold.onto_after).backward() if form is Form.TUCK else Filling(Form.FLARE)


def _folds(
    piece: Piece, edge: Edge, step: Pleat, evaluate: Callable[[Expression], float], *, deep: float
) -> tuple[FoldAt, ...] | Refusal:
    """The folds, in the order in which they are opened: the run onto which each is laid is still plain."""
    first = stitched_place(edge, step.start, evaluate)
    last = first if step.end is None else stitched_place(edge, step.end, evaluate)
    low, high = sorted((first, last))
    apart = (high - low) / max(1, step.count - 1)
    need = 2.0 * deep if step.lay is Lay.BOX else CLEAR
    if step.count > 1 and apart < need - SAME:
        facts = (("piece", piece.name), ("edge", edge.name), ("distance", apart), ("least", need))
        cure = "lay fewer, less deep ones, or over a longer stretch"
        return Refusal("pleats-too-close", facts, step.origin, cure)
    folds = [
        fold
        for index in range(step.count)
        for fold in _laid(piece, edge, step, low + apart * index, deep=deep)
    ]
    after = [fold for fold in folds if fold.onto_after[-1]]
    before = [fold for fold in folds if not fold.onto_after[-1]]
    return (*sorted(after, key=lambda fold: fold.at), *sorted(before, key=lambda fold: -fold.at))


def _laid(piece: Piece, edge: Edge, step: Pleat, at: float, *, deep: float) -> tuple[FoldAt, ...]:
    """The folds of one pleat: a fold as seen faces the side away from its underlay."""
    if step.lay is Lay.BOX:
        return FoldAt(at - deep, (True,)), FoldAt(at + deep, (False,))
    if step.lay is Lay.INVERTED:
        return (FoldAt(at, (False, True)),)
    if step.toward is not None:
        return (FoldAt(at, (step.toward == edge.start,)),)
    place = place_on_edge(edge, at)
    return (FoldAt(at, (laid_onto_second(piece, place.at, place.at + place.direction),)),)
