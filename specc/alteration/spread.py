"""Owns the verb `spread`: slash a piece from edge to edge and open the slash; knows no other verb."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.alteration.opening import Filling
from specc.alteration.refusal import Refusal, found, missing
from specc.alteration.runs import replaced
from specc.alteration.slash import stitched_place
from specc.alteration.slashing import SlashEnd, Spot, in_the_way, opened, too_far
from specc.geometry.region import crosses_itself
from specc.geometry.tolerance import SAME
from specc.model.alteration import Form
from specc.pattern.lookup import edge_named, edges_at, point_named
from specc.pattern.outline import flat_outline

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.alteration import Place
    from specc.model.expression import Expression, PartRef
    from specc.model.reshaping import Spread
    from specc.pattern.piece import Piece


def apply(  # noqa: PLR0911 - a refusal each
    pieces: tuple[Piece, ...], step: Spread, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with one slashed and spread; both halves keep all their lengths and angles."""
    if step.form is Form.DART:
        as_dart = (("verb", "spread"), ("form", step.form.value))
        cure = "say `as flare`, `as gathers`, `as ease`, `as pleat` or `as tuck`"
        return Refusal("form-not-for-verb", as_dart, step.origin, cure)
    piece = found(pieces, step.start.piece, step.start.origin)
    if isinstance(piece, Refusal):
        return piece
    if step.end.piece != piece.name:
        facts = (
            ("piece", piece.name),
            ("edge", step.start.name),
            ("other", f"{step.end.piece}.{step.end.name}"),
        )
        return Refusal("slash-to-other-piece", facts, step.end.origin, "name an edge of `{piece}`")
    by = evaluate(step.by)
    and_by = by if step.and_by is None else evaluate(step.and_by)
    if min(by, and_by) < 0.0:
        cure = "spread by an amount of nothing or more; take in or shorten to make a piece smaller"
        return Refusal("amount-not-positive", (("by", min(by, and_by)),), step.origin, cure)
    start = _end(piece, step.start, step.start_place, by=by, form=step.form, evaluate=evaluate)
    if isinstance(start, Refusal):
        return start
    end = _end(piece, step.end, step.end_place, by=and_by, form=step.form, evaluate=evaluate)
    if isinstance(end, Refusal):
        return end
    refusal = in_the_way(piece, start.spot, end.spot, origin=step.origin)
    refusal = refusal or too_far(start, end, origin=step.origin)
    if refusal is not None:
        return refusal
    if max(by, and_by) <= SAME:
        return pieces
    spread = opened(piece, start, end)
    if crosses_itself(flat_outline(spread)):
        cure = "spread by less, or place the slash elsewhere"
        return Refusal("would-cross-itself", (("piece", piece.name),), step.origin, cure)
    return replaced(pieces, spread)


def _end(  # noqa: PLR0913 - where it is, how far it opens, and as what
    piece: Piece,
    ref: PartRef,
    place: Place | None,
    *,
    by: float,
    form: Form,
    evaluate: Callable[[Expression], float],
) -> SlashEnd | Refusal:
    if place is None:
        return _at_corner(piece, ref, by=by, form=form)
    edge = edge_named(piece, ref.name)
    if edge is None:
        return missing(piece, ref)
    facts = (("piece", piece.name), ("edge", edge.name))
    if edge.name == piece.fold:
        return Refusal("slash-into-fold", facts, ref.origin, "slash to another edge")
    spot = Spot.on(edge, stitched_place(edge, place, evaluate))
    if not spot.is_clear:
        cure = "place it further from the end of the edge, or slash to the neighbouring edge"
        return Refusal("slash-at-end", facts, place.origin, cure)
    return SlashEnd(spot, by, Filling(form))


def _at_corner(piece: Piece, ref: PartRef, *, by: float, form: Form) -> SlashEnd | Refusal:
    """A corner as the end of a slash: what opened there would belong to neither edge."""
    ending, _ = edges_at(piece, ref.name)
    facts = (("piece", piece.name), ("name", ref.name))
    if ending is None:
        if point_named(piece, ref.name) is None:
            return missing(piece, ref)
        return Refusal("slash-begins-inside", facts, ref.origin, "name a corner of the outline, or an edge")
    if by > SAME:
        cure = "say `and 0 in` (or `by 0 in and …`), or begin on an edge beside the corner"
        return Refusal("corner-would-open", facts, ref.origin, cure)
    return SlashEnd(Spot.at_corner(ending), by, Filling(form))
