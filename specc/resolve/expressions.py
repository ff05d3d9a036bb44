"""Owns giving expressions their meaning: names looked up, dimensions checked.

Knows nothing of the values that come out.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.expression import (
    Applied,
    Arithmetic,
    Asked,
    Constant,
    Expression,
    Function,
    Geometric,
    Named,
    Operator,
    PartRef,
)
from specc.resolve.codes import unknown_name
from specc.resolve.properties import as_quantity
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.resolve.parts import Parts

CANNOT_JOIN = declare("SPC203", "dimensions-differ", Severity.ERROR, "{left} and {right} cannot be {joined}")
WRONG_DIMENSION = declare("SPC204", "wrong-dimension", Severity.ERROR, "{what} must be {wanted}, not {found}")
UNKNOWN_UNIT = declare("SPC213", "unknown-currency", Severity.ERROR, "`{unit}` is not a currency of ISO 4217")

_SIDES = {"right": 0, "up": 90, "left": 180, "down": 270}
_JOINED = {"+": "added", "-": "subtracted", "*": "multiplied", "/": "divided"}
_FUNCTIONS = {
    "root": Function.ROOT,
    "sine": Function.SINE,
    "cosine": Function.COSINE,
    "tangent": Function.TANGENT,
    "arc-sine": Function.ARC_SINE,
    "arc-tangent": Function.ARC_TANGENT,
    "size": Function.SIZE_OF,
    "larger": Function.LARGER,
    "smaller": Function.SMALLER,
}
_POINT = ("point",)
_ASKED: Mapping[str, tuple[Asked, tuple[str, ...], Dimension]] = {
    "length": (Asked.LENGTH, ("edge", "line"), Dimension.LENGTH),
    "drawn length": (Asked.DRAWN, ("edge",), Dimension.LENGTH),
    "width": (Asked.WIDTH, ("dart", "two-pointed dart"), Dimension.LENGTH),
    "depth": (Asked.DEPTH, ("dart", "two-pointed dart"), Dimension.LENGTH),
    "distance": (Asked.DISTANCE, _POINT, Dimension.LENGTH),
    "across": (Asked.ACROSS, _POINT, Dimension.LENGTH),
    "height": (Asked.HEIGHT, _POINT, Dimension.LENGTH),
    "direction": (Asked.DIRECTION, _POINT, Dimension.ANGLE),
}


@dataclass(frozen=True, slots=True)
class Scope:
    """What an expression may speak of.

    `values`: names with their dimensions, and how each is called in the model. `fixed`: names that stand for an
    expression already known (the settings of a method). `missing`: names whose declaration failed; they stay silent.
    `finishes`: names whose opening may be asked for. `piece`: where lone part names belong.
    """

    values: Mapping[str, tuple[str, Dimension]]
    parts: Parts | None = None
    piece: str | None = None
    fixed: Mapping[str, Expression] = field(default_factory=dict)
    widths: Mapping[str, Expression] = field(default_factory=dict)
    finishes: tuple[str, ...] = ()
    missing: frozenset[str] = frozenset()


def dimension_of(expression: Expression) -> Dimension:
    """The dimension of a checked expression."""
    return expression.value.dimension if isinstance(expression, Constant) else expression.dimension


def meaning(
    node: tree.Expression | None, scope: Scope, say: Collector, *, what: str, wanted: tuple[Dimension, ...]
) -> Expression | None:
    """The expression of one of the `wanted` dimensions; anything else is reported. A bare 0 fits everywhere.

    None stays None, for what need not be written.
    """
    if node is None:
        return None
    found = resolve_expression(node, scope, say)
    if found is None:
        return None
    dimension = dimension_of(found)
    if dimension in wanted:
        return found
    if isinstance(found, Constant) and found.value.value == 0 and dimension == Dimension.NUMBER:
        return found
    wish = " or ".join(wish.with_article for wish in wanted)
    told = WRONG_DIMENSION.at(node.span, what=what, wanted=wish, found=dimension.with_article)
    if isinstance(node, tree.Number) and node.unit is None and Dimension.LENGTH in wanted:
        told = told.help(f"write a unit: `{node.span.text} in`, `{node.span.text} cm` or `{node.span.text} mm`")
    say.add(told)
    return None


def resolve_expression(node: tree.Expression, scope: Scope, say: Collector) -> Expression | None:
    """The expression with names looked up and dimensions checked; None after a fault, which is reported once."""
    match node:
        case tree.Number():
            return _constant(node, say)
        case tree.Compass(side=side):
            return Constant(Quantity.of(_SIDES[side], UNITS["deg"]), node.span)
        case tree.Named():
            return _named(node, scope, say)
        case tree.Signed(sign=sign, value=value):
            inner = resolve_expression(value, scope, say)
            return inner if inner is None or sign == "+" else _negative(inner, node)
        case tree.Arithmetic():
            return _arithmetic(node, scope, say)
        case tree.Applied():
            return _applied(node, scope, say)
        case tree.Asked():
            return _asked(node, scope, say)


def _constant(node: tree.Number, say: Collector) -> Constant | None:
    quantity = as_quantity(node)
    if quantity is None:
        say.add(UNKNOWN_UNIT.at(node.span, unit=node.unit))
        return None
    return Constant(quantity, node.span)


def _named(node: tree.Named, scope: Scope, say: Collector) -> Expression | None:
    name = node.name.text
    if name in scope.fixed:
        return scope.fixed[name]
    if name in scope.values:
        model_name, dimension = scope.values[name]
        return Named(model_name, dimension, node.span)
    if name not in scope.missing:
        say.add(unknown_name(node.span, "measurement or value", name, known=(*scope.values, *scope.fixed)))
    return None


def _negative(inner: Expression, node: tree.Signed) -> Expression:
    if isinstance(inner, Constant):
        return Constant(Quantity(-inner.value.value, inner.value.unit), node.span)
    minus = Constant(Quantity.of(-1, UNITS[""]), node.span)
    return Arithmetic(Operator.TIMES, minus, inner, dimension_of(inner), node.span)


def _arithmetic(node: tree.Arithmetic, scope: Scope, say: Collector) -> Expression | None:
    left = resolve_expression(node.left, scope, say)
    right = resolve_expression(node.right, scope, say)
    if left is None or right is None:
        return None
    first, second = dimension_of(left), dimension_of(right)
    rules = {"+": first.plus, "-": first.plus, "*": first.times, "/": first.over}
    dimension = rules[node.operator](second)
    if dimension is None:
        joined = _JOINED[node.operator]
        told = CANNOT_JOIN.at(node.span, left=first.with_article, right=second.with_article, joined=joined)
        told = told.see(node.left.span, str(first)).see(node.right.span, str(second))
        if Dimension.NUMBER in (first, second) and node.operator in "+-":
            told = told.help("give the bare number a unit, such as `3 in`")
        say.add(told)
        return None
    return Arithmetic(Operator(node.operator), left, right, dimension, node.span)


def _applied(node: tree.Applied, scope: Scope, say: Collector) -> Expression | None:
    values = [resolve_expression(value, scope, say) for value in node.values]
    arguments = tuple(value for value in values if value is not None)
    if len(arguments) < len(values):
        return None
    first = dimension_of(arguments[0])
    if node.function == "half":
        half = Constant(Quantity.of(Fraction(1, 2), UNITS[""]), node.span)
        return Arithmetic(Operator.TIMES, half, arguments[0], first, node.span)
    function = _FUNCTIONS[node.function]
    dimension: Dimension | None
    wanted = "of one kind"
    match function:
        case Function.LARGER | Function.SMALLER:
            dimension = first.plus(dimension_of(arguments[1]))
        case Function.SIZE_OF:
            dimension = first
        case Function.ROOT:
            dimension, wanted = first.root(), "an area or a number"
        case Function.SINE | Function.COSINE | Function.TANGENT:
            dimension = Dimension.NUMBER if first == Dimension.ANGLE else None
            wanted = "an angle"
        case Function.ARC_SINE | Function.ARC_TANGENT:
            dimension = Dimension.ANGLE if first.is_plain else None
            wanted = "a number"
    if dimension is None:
        found = " and ".join(dimension_of(argument).with_article for argument in arguments)
        say.add(WRONG_DIMENSION.at(node.span, what=f"what `{node.function} of` takes", wanted=wanted, found=found))
        return None
    return Applied(function, arguments, dimension, node.span)


def _asked(node: tree.Asked, scope: Scope, say: Collector) -> Expression | None:
    first = node.refs[0]
    if node.what == "width" and first.second is None and first.first.text in scope.widths:
        return scope.widths[first.first.text]
    if node.what == "opening":
        if first.first.text not in scope.finishes:
            say.add(unknown_name(first.span, "finish", first.first.text, known=scope.finishes))
            return None
        return Geometric(Asked.OPENING, (PartRef(None, first.first.text, first.span),), Dimension.LENGTH, node.span)
    if scope.parts is None:
        say.add(WRONG_DIMENSION.at(node.span, what="a value here", wanted="known before the pieces are drawn", found="asked of them"))
        return None
    if node.what == "girth":
        line = scope.parts.line(first.first, say)
        return None if line is None else Geometric(Asked.GIRTH, (line,), Dimension.LENGTH, node.span)
    asked, kinds, dimension = _ASKED[node.what]
    refs = [scope.parts.find(ref, kinds, say, within=scope.piece) for ref in node.refs]
    found = tuple(ref for ref in refs if ref is not None)
    return Geometric(asked, found, dimension, node.span) if len(found) == len(refs) else None
