"""Owns giving meaning to what is asked of pieces: lengths, distances, girths, openings.

Knows nothing of the answers.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.expression import Asked, Geometric, PartRef
from specc.resolve.codes import NOT_HERE, unknown_name
from specc.resolve.parts import DARTS
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.resolve.parts import Parts
    from specc.syntax import tree

TWO_PIECES = declare(
    "SPC215", "points-on-two-pieces", Severity.ERROR, "`{first}` and `{second}` lie on two pieces"
)

_POINT = ("point",)
_ASKED: Mapping[str, tuple[Asked, tuple[str, ...], Dimension]] = {
    "length": (Asked.LENGTH, ("edge", "line"), Dimension.LENGTH),
    "drawn length": (Asked.DRAWN, ("edge",), Dimension.LENGTH),
    "width": (Asked.WIDTH, DARTS, Dimension.LENGTH),
    "depth": (Asked.DEPTH, DARTS, Dimension.LENGTH),
    "distance": (Asked.DISTANCE, _POINT, Dimension.LENGTH),
    "across": (Asked.ACROSS, _POINT, Dimension.LENGTH),
    "height": (Asked.HEIGHT, _POINT, Dimension.LENGTH),
    "direction": (Asked.DIRECTION, _POINT, Dimension.ANGLE),
}


def resolve_question(  # noqa: PLR0911 a refusal each
    node: tree.Asked, parts: Parts | None, say: Collector, *, within: str | None, finishes: tuple[str, ...]
) -> Geometric | None:
    """The question with its parts found; None after a fault, which is reported."""
    first = node.refs[0]
    if parts is None:
        asked = " ".join(node.span.text.split())
        told = NOT_HERE.at(node.span, asked=asked, reason="there are no pieces that could be asked")
        say.add(told.help("write the value itself"))
        return None
    if node.what == "opening":
        name = first.first.text
        if name not in finishes:
            say.add(unknown_name(first.span, "finish or hem", name, known=finishes))
            return None
        opening = PartRef(None, name, first.span)
        return Geometric(Asked.OPENING, (opening,), Dimension.LENGTH, node.span)
    if node.what == "girth":
        line = parts.line(first.first, say)
        return None if line is None else Geometric(Asked.GIRTH, (line,), Dimension.LENGTH, node.span)
    asked_for, kinds, dimension = _ASKED[node.what]
    refs = [parts.find(ref, kinds, say, within=within) for ref in node.refs]
    found = tuple(ref for ref in refs if ref is not None)
    if len(found) < len(refs):
        return None
    owners = {ref.piece for ref in found}
    if len(owners) > 1:
        names = [f"{ref.piece}.{ref.name}" for ref in found]
        told = TWO_PIECES.at(node.span, first=names[0], second=names[1])
        say.add(told.help("a piece can lie anywhere beside another; ask about two points of one piece"))
        return None
    return Geometric(asked_for, found, dimension, node.span)
