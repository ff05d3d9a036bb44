"""Owns giving seams, finishes and hems their meaning.

Knows nothing of their lengths.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.construction import Finish, Hold, Making, Seam
from specc.model.expression import Constant, Expression
from specc.resolve.codes import OUT_OF_RANGE, unknown_name, wrong_value
from specc.resolve.expressions import Scope, meaning
from specc.resolve.makings import resolve_making
from specc.resolve.properties import as_quantity, span_of
from specc.resolve.settings import Settings
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.model.expression import PartRef
    from specc.model.material import Trim
    from specc.resolve.declared import Declared
    from specc.resolve.parts import Parts

SAME_EDGE = declare("SPC221", "edge-twice-in-chain", Severity.ERROR, "`{edge}` stands twice in one list of edges")
HOLD_ELSEWHERE = declare("SPC222", "hold-on-other-edge", Severity.ERROR, "`{edge}` is not an edge of {kind} `{name}`")

_EASE = (Dimension.LENGTH, Dimension.RATIO)
_PLACE = (Dimension.LENGTH, Dimension.RATIO)
# A millimetre on a walked seam is within what cutting and sewing lose: common practice, no source.
_TOLERANCE = Quantity.of(1, UNITS["mm"])


def resolve_seam(
    node: tree.Seam, declared: Declared, trims: Mapping[str, Trim], parts: Parts, say: Collector
) -> Seam | None:
    """The seam; None when an edge or its method is not to be had."""
    first, second = _chain(node.first, parts, say), _chain(node.second, parts, say)
    settings = Settings(node.settings, node.method.span, say)
    ease, gathered = _ease(settings, say)
    tolerance = _setting(settings, "tolerance", (Dimension.LENGTH,), "a length", say)
    making = _making(node.method, settings, declared, trims, say, wanted="seam")
    if not first or not second or making is None:
        return None
    return Seam(
        node.name.text,
        node.title.text if node.title else f"{node.name.text.replace('-', ' ')} seam",
        first,
        second,
        making,
        ease,
        gathered,
        tolerance or Constant(_TOLERANCE, node.name.span),
        node.name.span,
    )


def resolve_finish(
    node: tree.Finish, declared: Declared, trims: Mapping[str, Trim], parts: Parts, say: Collector
) -> Finish | None:
    """The finish or hem; None when an edge or its method is not to be had."""
    along = _chain(node.along, parts, say)
    settings = Settings(node.settings, node.method.span, say)
    making = _making(node.method, settings, declared, trims, say, wanted=node.kind.text)
    holds = [_hold(item, node, along, parts, say) for item in node.settings if isinstance(item, tree.Hold)]
    if not along or making is None:
        return None
    return Finish(
        node.kind.text,
        node.name.text,
        node.title.text if node.title else node.name.text.replace("-", " "),
        along,
        making,
        tuple(hold for hold in holds if hold is not None),
        node.name.span,
    )


def _chain(refs: tuple[tree.Ref, ...], parts: Parts, say: Collector) -> tuple[PartRef, ...]:
    found: list[PartRef] = []
    complete = True
    for ref in refs:
        edge = parts.find(ref, ("edge",), say)
        complete = complete and edge is not None
        if edge is not None and any((edge.piece, edge.name) == (one.piece, one.name) for one in found):
            say.add(SAME_EDGE.at(ref.span, edge=f"{edge.piece}.{edge.name}"))
        elif edge is not None:
            found.append(edge)
    return tuple(found) if complete else ()


def _making(
    word: tree.Word, settings: Settings, declared: Declared, trims: Mapping[str, Trim], say: Collector, *, wanted: str
) -> Making | None:
    method = declared.find(tree.Method, word)
    return None if method is None else resolve_making(method, settings, trims, say, wanted=wanted)


def _ease(settings: Settings, say: Collector) -> tuple[Expression | None, bool]:
    """`ease 1/2 in`, `ease 4%`, or `gathers 50%`."""
    gathers = _setting(settings, "gathers", _EASE, "a length or a percentage", say)
    ease = _setting(settings, "ease", _EASE, "a length or a percentage", say)
    return (ease, False) if gathers is None else (gathers, True)


def _setting(
    settings: Settings, name: str, wanted: tuple[Dimension, ...], words: str, say: Collector
) -> Expression | None:
    found = settings.take(name)
    if found is None:
        return None
    quantity = as_quantity(found.values[0][0]) if len(found.values) == len(found.values[0]) == 1 else None
    if quantity is None or quantity.dimension not in wanted:
        say.add(wrong_value(span_of(found.values), name, words))
        return None
    return Constant(quantity, found.span)


def _hold(
    node: tree.Hold, finish: tree.Finish, along: tuple[PartRef, ...], parts: Parts, say: Collector
) -> Hold | None:
    edge = parts.find(node.along, ("edge",), say)
    share = meaning(node.share, Scope({}), say, what="how much is held in", wanted=(Dimension.RATIO,))
    if edge is None or share is None:
        return None
    if isinstance(share, Constant) and not 0 < share.value.value < 1:
        found = str(share.value)
        say.add(OUT_OF_RANGE.at(node.share.span, what="what is held in", bounds="above 0% and below 100%", found=found))
        return None
    if along and not any((edge.piece, edge.name) == (one.piece, one.name) for one in along):
        name = f"{edge.piece}.{edge.name}"
        say.add(HOLD_ELSEWHERE.at(node.along.span, edge=name, kind=finish.kind.text, name=finish.name.text))
        return None
    ends = parts.pieces[edge.piece or ""].edges[edge.name]
    start = _limit(node.start, ends, f"{edge.piece}.{edge.name}", say)
    end = _limit(node.end, ends, f"{edge.piece}.{edge.name}", say)
    if (node.start and start is None) or (node.end and end is None):
        return None
    return Hold(share, edge, start, end, node.span)


def _limit(node: tree.Expression | None, ends: tuple[str, str], edge: str, say: Collector) -> Expression | str | None:
    """A corner by name, or a length or ratio from the edge's start."""
    if isinstance(node, tree.Named):
        if node.name.text in ends:
            return node.name.text
        say.add(unknown_name(node.span, "corner", node.name.text, known=ends, where=f" at an end of `{edge}`"))
        return None
    return meaning(node, Scope({}), say, what="a place on an edge", wanted=_PLACE)
