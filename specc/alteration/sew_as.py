"""Owns the verb `sew as`: a dart becomes ease, gathers, a pleat or a tuck; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from specc.alteration.opening import Filling, Opening, filled, lines_over
from specc.alteration.refusal import Refusal, found, line_of, missing
from specc.alteration.runs import edges_from, replaced, runs_of
from specc.model.alteration import Form
from specc.pattern.lookup import dart_named
from specc.pattern.measure import stitched_at
from specc.pattern.piece import Dart, Gone

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.expression import Expression, PartRef
    from specc.model.reshaping import SewAs
    from specc.pattern.piece import Piece

LEGS_APART: Final = 0.5  # mm by which the legs of one dart may differ
HOW: Final = {
    Form.EASE: "eased in",
    Form.GATHERS: "gathered",
    Form.PLEAT: "laid in a pleat",
    Form.TUCK: "laid in a tuck",
}


def apply(
    pieces: tuple[Piece, ...], step: SewAs, _evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces without the darts; every edge that had one stays as long as sewn."""
    if step.form not in HOW:
        facts = (("verb", "sew"), ("form", step.form.value))
        cure = "say `as ease`, `as gathers`, `as pleat` or `as tuck`, or release the dart"
        return Refusal("form-not-for-verb", facts, step.origin, cure)
    for ref in step.darts:
        piece = found(pieces, ref.piece, ref.origin)
        if isinstance(piece, Refusal):
            return piece
        sewn = _sewn(piece, ref, step)
        if isinstance(sewn, Refusal):
            return sewn
        pieces = replaced(pieces, sewn)
    return pieces


def _sewn(piece: Piece, ref: PartRef, step: SewAs) -> Piece | Refusal:
    dart = dart_named(piece, ref.name)
    if dart is None:
        return missing(piece, ref)
    facts = (("piece", piece.name), ("dart", dart.name))
    if not isinstance(dart, Dart):
        return Refusal("not-an-edge-dart", facts, ref.origin, "release it, or leave it where it is")
    legs = abs(dart.first.distance(dart.pivot) - dart.second.distance(dart.pivot))
    if legs > LEGS_APART:
        return Refusal("dart-legs-unequal", (*facts, ("distance", legs)), ref.origin, "draw equal legs")
    host = next(edge for edge in piece.edges if dart.name in edge.darts)
    index = host.darts.index(dart.name)
    at = stitched_at(host, index, host.parts[index].length())
    opening = Opening(dart.name, at, dart.pivot, (dart.pivot, dart.pivot))
    sewn, runs = filled(piece, runs_of(piece), opening, Filling(step.form))
    return replace(
        sewn,
        edges=edges_from(sewn, runs),
        darts=tuple(other for other in piece.darts if other.name != dart.name),
        lines=lines_over(piece, dart),
        gone=(*piece.gone, Gone(dart.name, f"{HOW[step.form]} {line_of(step.origin)}")),
    )
