"""Owns giving meaning to what is measured, demanded, accepted, labelled and remarked.

Knows nothing of the results.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.garment import Accept, CareLine, Expect, Label, Measure, Note
from specc.resolve.expressions import Scope, dimension_of, meaning, resolve_expression
from specc.resolve.properties import Properties, said, spoken
from specc.syntax import tree

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.resolve.parts import Parts

NOT_A_CODE = declare("SPC223", "not-a-code", Severity.ERROR, "`{code}` is not a code of a warning")

# The order of ISO 3758; the words here, since its pictures are protected marks in many countries.
PROCESSES = ("wash", "bleach", "dry", "iron", "clean")
_CODE = re.compile(r"SPC[1-69][0-9]{2}")


def resolve_measure(node: tree.Measure, scope: Scope, say: Collector) -> Measure | None:
    """The point of measure; tolerances have the dimension of what is measured."""
    value = resolve_expression(node.value, scope, say)
    if value is None:
        return None
    wanted = (dimension_of(value),)
    plus = meaning(node.plus, scope, say, what="a tolerance", wanted=wanted)
    minus = meaning(node.minus, scope, say, what="a tolerance", wanted=wanted)
    title = node.title.text if node.title else node.name.text.replace("-", " ")
    return Measure(node.name.text, title, value, dimension_of(value), plus, minus, node.name.span)


def resolve_expect(node: tree.Expect, scope: Scope, say: Collector) -> Expect | None:
    """The demand; both sides have one dimension."""
    left = resolve_expression(node.left, scope, say)
    if left is None:
        return None
    right = meaning(node.right, scope, say, what="the other side", wanted=(dimension_of(left),))
    if right is None:
        return None
    because = node.because.text if node.because else None
    return Expect(left, node.compare, right, dimension_of(left), because, node.span)


def resolve_accept(node: tree.Accept, say: Collector) -> Accept | None:
    """The acceptance of a warning, with its reason."""
    if not _CODE.fullmatch(node.code.text):
        told = NOT_A_CODE.at(node.code.span, code=node.code.text)
        say.add(told.help("write the code that stands in the warning, such as `SPC501`"))
        return None
    on = " ".join(node.on.span.text.split()) if node.on else None
    return Accept(node.code.text, on, node.because.text, node.span)


def resolve_care(node: tree.Sheet, say: Collector) -> tuple[CareLine, ...]:
    """The care instructions in the order of ISO 3758."""
    sheet = Properties("care", node.body, known=PROCESSES, say=say, place=node.kind.span)
    found = ((process, sheet.get(process)) for process in PROCESSES)
    return tuple(CareLine(process, spoken(line.values), line.span) for process, line in found if line is not None)


def resolve_label(node: tree.Label, parts: Parts, say: Collector) -> Label | None:
    """The label and where it is sewn in."""
    at = parts.find(node.at, ("edge",), say)
    sheet = Properties("label", node.body, known=("says",), say=say, place=node.name.span)
    says = sheet.require("says")
    if at is None or says is None:
        return None
    texts = tuple(" ".join(said(atom) for atom in value) for value in says.values)
    return Label(node.name.text, at, texts, node.name.span)


def resolve_note(node: tree.Note, parts: Parts, say: Collector) -> Note | None:
    """The remark; what it is about must be there."""
    if node.on is None:
        return Note(node.text.text, None, node.span)
    if node.on.second is None:
        if parts.piece(node.on.first, say):
            return Note(node.text.text, node.on.first.text, node.span)
        return None
    kinds = ("edge", "point", "line", "dart", "two-pointed dart")
    found = parts.find(node.on, kinds, say)
    return None if found is None else Note(node.text.text, f"{found.piece}.{found.name}", node.span)

