"""Owns giving alterations their meaning, one after the other, with what each leaves behind.

Knows nothing of how an alteration is carried out.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.alteration import (
    Alteration,
    Crop,
    Form,
    LeaveOut,
    Lengthen,
    Level,
    MoveCorner,
    PieceRef,
    Place,
    Release,
    Swing,
)
from specc.model.expression import Arithmetic, Constant, Expression, Operator, PartRef
from specc.resolve.codes import OUT_OF_RANGE, unknown_name
from specc.resolve.expressions import Scope, meaning
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.resolve.parts import Parts

INSIDE_DART = declare(
    "SPC218", "dart-inside-piece", Severity.ERROR, "`{dart}` lies inside its piece and cannot be swung"
)
TWO_PIECES = declare("SPC219", "target-on-other-piece", Severity.ERROR, "`{dart}` cannot be swung into another piece, `{target}`")

_LENGTH = (Dimension.LENGTH,)
_PLACE = (Dimension.LENGTH, Dimension.RATIO)


def resolve_step(node: tree.AlterStep, scope: Scope, parts: Parts, say: Collector) -> tuple[Alteration, ...]:
    """What the statement asks for (one alteration, or one for each edge named); none after a fault."""
    match node:
        case tree.LeaveOut():
            found = _pieces(node.pieces, parts, say)
            for piece in found:
                _leave(parts, piece, node.span.line)
            return (LeaveOut(found, node.span),) if found else ()
        case tree.Release():
            refs = [parts.find(ref, ("dart", "two-pointed dart"), say) for ref in node.darts]
            darts = tuple(ref for ref in refs if ref is not None)
            for dart in darts:
                _lose(parts, dart, f"released on line {node.span.line}")
            return (Release(darts, node.span),) if darts else ()
        case tree.Swing():
            return _swing(node, scope, parts, say)
        case tree.Crop():
            level = _level(node.at, node.pieces, scope, parts, say, edges=False)
            found = _pieces(node.pieces, parts, say)
            return (Crop(found, level, node.span),) if found and isinstance(level, Level) else ()
        case tree.Lengthen():
            by = meaning(node.by, scope, say, what="how much", wanted=_LENGTH)
            at = _level(node.at, node.pieces, scope, parts, say, edges=True)
            found = _pieces(node.pieces, parts, say)
            shorten = node.verb.text == "shorten"
            return (Lengthen(found, by, at, node.span, shorten),) if by and at and found else ()
        case tree.MoveCorner():
            by = meaning(node.by, scope, say, what="how much", wanted=_LENGTH)
            moved = [_cornered(node, ref, parts, say) for ref in node.edges]
            edges = tuple(edge for edge in moved if edge is not None)
            complete = by is not None and len(edges) == len(moved)
            return (MoveCorner(node.verb.text, edges, node.corner.text, by, node.span),) if by and complete else ()


def _pieces(words: tuple[tree.Word, ...], parts: Parts, say: Collector) -> tuple[PieceRef, ...]:
    return tuple(PieceRef(word.text, word.span) for word in words if parts.piece(word, say))


def _leave(parts: Parts, piece: PieceRef, line: int) -> None:
    how = f"left out on line {line}"
    left = parts.pieces.pop(piece.piece)
    parts.gone[piece.piece] = how
    names = {name for kind in ("edge", "point", "line", "dart", "two-pointed dart") for name in left.of(kind)}
    parts.gone |= {f"{piece.piece}.{name}": how for name in names}


def _lose(parts: Parts, dart: PartRef, how: str) -> None:
    piece = parts.pieces[dart.piece or ""]
    piece.darts.discard(dart.name)
    piece.two_pointed.discard(dart.name)
    parts.gone[f"{dart.piece}.{dart.name}"] = how


def _swing(node: tree.Swing, scope: Scope, parts: Parts, say: Collector) -> tuple[Alteration, ...]:
    dart = parts.find(node.dart, ("dart", "two-pointed dart"), say)
    target = parts.find(node.target, ("edge", "dart"), say)
    share = _share(node, say)
    if dart is None or target is None or share is None:
        return ()
    name = f"{dart.piece}.{dart.name}"
    if dart.name in parts.pieces[dart.piece or ""].two_pointed:
        told = INSIDE_DART.at(node.dart.span, dart=name)
        say.add(told.help("release it, or crop the piece at its widest so that it opens on the edge"))
        return ()
    if target.piece != dart.piece:
        say.add(TWO_PIECES.at(node.target.span, dart=name, target=f"{target.piece}.{target.name}"))
        return ()
    place = None if node.place is None else _place(node.place, target, scope, parts, say)
    form = Form(node.form.text) if node.form else Form.DART
    whole = isinstance(share, Constant) and share.value.value == 1
    into_dart = target.name in parts.pieces[target.piece or ""].darts
    if whole and (form is not Form.DART or into_dart):
        _lose(parts, dart, f"swung into `{target.piece}.{target.name}` on line {node.span.line}")
    return (Swing(dart, target, place, form, share, node.span),)


def _share(node: tree.Swing, say: Collector) -> Expression | None:
    if node.share is None:
        return Constant(Quantity.of(1, UNITS[""]), node.span)
    share = meaning(node.share, Scope({}), say, what="the share of a dart", wanted=(Dimension.RATIO, Dimension.NUMBER))
    if isinstance(share, Constant) and not Fraction(0) < share.value.value <= 1:
        found = str(share.value)
        say.add(OUT_OF_RANGE.at(node.share.span, what="the share of a dart", bounds="above 0% and up to 100%", found=found))
        return None
    return share


def _place(node: tree.Place, target: PartRef, scope: Scope, parts: Parts, say: Collector) -> Place | None:
    at = meaning(node.at, scope, say, what="a place on an edge", wanted=_PLACE)
    corner = None
    ends = parts.pieces[target.piece or ""].edges.get(target.name, ())
    if node.corner is not None:
        if node.corner.text not in ends:
            where = f" at an end of `{target.piece}.{target.name}`"
            say.add(unknown_name(node.corner.span, "corner", node.corner.text, known=ends, where=where))
            return None
        corner = node.corner.text
    return None if at is None else Place(at, node.span, corner)


def _level(
    node: tree.Level, pieces: tuple[tree.Word, ...], scope: Scope, parts: Parts, say: Collector, *, edges: bool
) -> Level | str | None:
    """The level, or the name of an edge where one may stand; every piece must have it."""
    above = None
    if node.offset is not None:
        above = meaning(node.offset, scope, say, what="a distance", wanted=_LENGTH)
        if above is None:
            return None
        if node.side == "below":
            minus = Constant(Quantity.of(-1, UNITS[""]), node.span)
            above = _times(minus, above)
    found: Level | str | None = Level(node.line.text, above, node.span)
    for word in pieces:
        if word.text not in parts.pieces:
            continue
        piece = parts.pieces[word.text]
        if node.line.text in piece.lines:
            continue
        if edges and node.offset is None and node.line.text in piece.edges:
            found = node.line.text
            continue
        known = piece.lines | (set(piece.edges) if edges else set())
        kind = "line or edge" if edges else "line"
        say.add(unknown_name(node.line.span, kind, node.line.text, known=known, where=f" on `{word.text}`"))
        return None
    return found


def _times(minus: Constant, above: Expression) -> Expression:
    return Arithmetic(Operator.TIMES, minus, above, Dimension.LENGTH, above.origin)


def _cornered(node: tree.MoveCorner, ref: tree.Ref, parts: Parts, say: Collector) -> PartRef | None:
    """The edge, if the corner that is to be moved is one of its ends."""
    edge = parts.find(ref, ("edge",), say)
    if edge is None:
        return None
    ends = parts.pieces[edge.piece or ""].edges[edge.name]
    if node.corner.text in ends:
        return edge
    where = f" at an end of `{edge.piece}.{edge.name}`"
    say.add(unknown_name(node.corner.span, "corner", node.corner.text, known=ends, where=where))
    return None
