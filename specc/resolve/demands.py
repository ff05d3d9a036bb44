"""Owns giving meaning to what is measured, demanded, accepted, labelled and remarked.

Knows nothing of the results.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from specc.diagnostics import Applicability, Edit, Severity, declare
from specc.model.garment import Accept, CareLine, Expect, Label, Measure, Note
from specc.resolve.buying import resolve_buying
from specc.resolve.codes import out_of_range, wrong_value
from specc.resolve.expressions import WRONG_DIMENSION, alike, dimension_of, meaning, resolve_expression
from specc.resolve.fixed import fixed_value
from specc.resolve.packing import BY_PIECE, packs
from specc.resolve.parts import ALL
from specc.resolve.prices import resolve_price
from specc.resolve.properties import Properties, reason, said, span_of_value, spoken, titled
from specc.units import Dimension

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.expression import Expression
    from specc.resolve.expressions import Scope
    from specc.resolve.parts import Parts
    from specc.syntax import tree

NOT_A_CODE = declare("SPC223", "not-a-code", Severity.ERROR, "`{code}` is not the code of a warning")

# The order of ISO 3758; the words here, since its pictures are protected marks in many countries.
PROCESSES = ("wash", "bleach", "dry", "iron", "clean")
# Warnings come from judgement alone; what the other stages say is an error, or a fault of ours.
_CODE = re.compile(r"SPC5[0-9]{2}")
_MEASURED = (Dimension.LENGTH, Dimension.ANGLE, Dimension.NUMBER, Dimension.RATIO, Dimension.AREA)


def resolve_measure(node: tree.Measure, scope: Scope, say: Collector) -> Measure | None:
    """The point of measure; tolerances have the dimension of what is measured."""
    value = resolve_expression(node.value, scope, say)
    if value is None:
        return None
    dimension = dimension_of(value)
    if dimension not in _MEASURED:
        what = f"what `{node.name.text}` measures"
        told = WRONG_DIMENSION.at(node.value.span, what=what, wanted="a length", found=dimension.with_article)
        say.add(told)
        return None
    plus = _tolerance(node.plus, dimension, scope, say)
    minus = plus if node.minus is node.plus else _tolerance(node.minus, dimension, scope, say)
    title = titled(node.title, node.name.text.replace("-", " "))
    return Measure(node.name.text, title, value, dimension, plus, minus, node.name.span)


def _tolerance(
    node: tree.Expression | None, dimension: Dimension, scope: Scope, say: Collector
) -> Expression | None:
    found = meaning(node, scope, say, what="a tolerance", wanted=alike(dimension))
    if node is None or found is None:
        return None
    value = fixed_value(found)
    if value is not None and value < 0:
        written = " ".join(node.span.text.split())
        told = out_of_range(node.span, "a tolerance", "at least nothing", found=written)
        say.add(told.help("both ways: `tolerance 1/2 in`; one way: `tolerance plus 1/2 in minus 0 in`"))
    return found


def resolve_expect(node: tree.Expect, scope: Scope, say: Collector) -> Expect | None:
    """The demand; both sides have one dimension."""
    left = resolve_expression(node.left, scope, say)
    if left is None:
        return None
    right = meaning(node.right, scope, say, what="the other side", wanted=alike(dimension_of(left)))
    because = (
        reason(node.because, "because", 'a reason, such as `"it slips over a shirt"`', say)
        if node.because
        else None
    )
    if right is None:
        return None
    text = " ".join(node.span.text.split()).removeprefix("expect ")
    if because is not None:
        text = text.partition(" because ")[0]
    return Expect(text, left, node.compare, (right,), dimension_of(left), because, node.span)


def resolve_accept(node: tree.Accept, say: Collector) -> Accept | None:
    """The acceptance of a warning, with its reason."""
    because = reason(node.because, "because", "a reason, which is printed on the sheet", say)
    code = node.code.text
    if not _CODE.fullmatch(code):
        told = NOT_A_CODE.at(node.code.span, code=code)
        if _CODE.fullmatch(code.upper()):
            fix = Edit(node.code.span, code.upper())
            told = told.with_fix(f"write `{code.upper()}`", fix, applicability=Applicability.SAFE)
        else:
            told = told.help("write the code that stands in the warning, such as `SPC502`")
        say.add(told)
        return None
    on = " ".join(node.on.span.text.split()) if node.on else None
    return Accept(code, on, because, node.span)


def resolve_care(node: tree.Sheet, say: Collector) -> tuple[CareLine, ...]:
    """The care instructions in the order of ISO 3758."""
    sheet = Properties("care", None, node.body, known=PROCESSES, say=say, place=node.kind.span)
    found = ((process, sheet.get(process)) for process in PROCESSES)
    return tuple(
        CareLine(process, spoken(line.values), line.span) for process, line in found if line is not None
    )


def resolve_label(node: tree.Label, parts: Parts, say: Collector) -> Label | None:
    """The label and where it is sewn in."""
    at = parts.find(node.at, ("edge",), say)
    sheet = Properties(
        "a label", node.name, node.body, known=("says", *BY_PIECE), say=say, place=node.name.span
    )
    says = sheet.require("says", '"Saltmarsh Works", "size"')
    if at is None or says is None:
        return None
    texts = tuple(" ".join(said(atom) for atom in value) for value in says.values)
    for value, text in zip(says.values, texts, strict=True):
        if not text.strip():
            say.add(wrong_value(span_of_value(value), "says", "texts"))
    return Label(
        node.name.text,
        at,
        texts,
        resolve_price(sheet, ("piece",)),
        packs(sheet),
        resolve_buying(sheet, by_length=False),
        sheet.words("supplier", example="Saltmarsh Works"),
        node.name.span,
    )


def resolve_note(node: tree.Note, parts: Parts, say: Collector) -> Note | None:
    """The remark; what it is about must be there."""
    text = reason(node.text, "note", "a remark", say)
    if node.on is None:
        return Note(text, None, node.span)
    if node.on.second is None:
        return Note(text, node.on.first.text, node.span) if parts.piece(node.on.first, say) else None
    found = parts.find(node.on, ALL, say)
    return None if found is None else Note(text, f"{found.piece}.{found.name}", node.span)
