"""Owns giving expressions their meaning: names looked up, dimensions checked.

Knows nothing of the values that come out.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.expression import Applied, Arithmetic, Constant, Function, Named, Operator
from specc.names import nearest
from specc.resolve.codes import NOT_HERE, unit_missing, unknown_name
from specc.resolve.properties import as_quantity
from specc.resolve.questions import resolve_question
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector, Diagnostic
    from specc.model.expression import Expression
    from specc.resolve.parts import Parts

CANNOT_JOIN = declare("SPC203", "dimensions-differ", Severity.ERROR, "{left} and {right} cannot be {joined}")
WRONG_DIMENSION = declare("SPC204", "wrong-dimension", Severity.ERROR, "{what} must be {wanted}, not {found}")

SIDES = {"right": 0, "up": 90, "left": 180, "down": 270}
_JOINED = {"+": "added", "-": "subtracted", "*": "multiplied", "/": "divided"}
_FUNCTIONS = {
    "root": Function.ROOT,
    "sine": Function.SINE,
    "cosine": Function.COSINE,
    "tangent": Function.TANGENT,
    "arc-sine": Function.ARC_SINE,
    "arc-tangent": Function.ARC_TANGENT,
    "size": Function.SIZE_OF,
    "radius": Function.RADIUS,
    "circumference": Function.CIRCUMFERENCE,
    "larger": Function.LARGER,
    "smaller": Function.SMALLER,
}
_QUESTIONS = ("length", "width", "depth", "opening")
OF_TRIMS = ("width", "diameter", "thickness")
_PLAIN = (Dimension.NUMBER, Dimension.RATIO)


@dataclass(frozen=True, slots=True)
class Scope:
    """What an expression may speak of.

    `values`: names with what they are called in the model and their dimensions. `parts`: the pieces it may
    ask, `piece` the one to which lone part names belong. `fixed`: names that stand for a value already known
    (the settings of a method), `sizes` what is asked of those that stand for a trim (its width, a
    button's diameter), by question and name. `finishes`: names whose opening may be
    asked for. `missing`: names whose declaration failed, on which all is silent. `below`: names that are
    declared only later. `left_out`: names that stand only on a condition, which is told. `kind`: what a name
    may stand for. `figures_only`: whether none may stand at all.
    """

    values: Mapping[str, tuple[str, Dimension]]
    parts: Parts | None = None
    piece: str | None = None
    fixed: Mapping[str, Expression] = field(default_factory=dict)
    sizes: Mapping[tuple[str, str], Expression | None] = field(default_factory=dict)
    finishes: tuple[str, ...] = ()
    missing: frozenset[str] = frozenset()
    below: frozenset[str] = frozenset()
    left_out: Mapping[str, str] = field(default_factory=dict)
    kind: str = "measurement or value"
    figures_only: bool = False


FIGURES = Scope({}, figures_only=True)


def dimension_of(expression: Expression) -> Dimension:
    """The dimension of a checked expression."""
    return expression.value.dimension if isinstance(expression, Constant) else expression.dimension


def alike(dimension: Dimension) -> tuple[Dimension, ...]:
    """The dimensions that may be compared with it: numbers and ratios with each other."""
    return _PLAIN if dimension.is_plain else (dimension,)


def meaning(
    node: tree.Expression | None, scope: Scope, say: Collector, *, what: str, wanted: tuple[Dimension, ...]
) -> Expression | None:
    """The expression of one of the `wanted` dimensions; anything else is reported. A bare 0 fits everywhere.

    None stays None, for what need not be written.
    """
    found = None if node is None else resolve_expression(node, scope, say)
    if node is None or found is None:
        return None
    dimension = dimension_of(found)
    if dimension in wanted:
        return found
    if isinstance(found, Constant) and found.value.value == 0 and dimension == Dimension.NUMBER:
        return found
    wish = " or ".join(wish.with_article for wish in wanted)
    told = WRONG_DIMENSION.at(node.span, what=what, wanted=wish, found=dimension.with_article)
    if isinstance(node, tree.Number) and node.unit is None:
        told = told.help(unit_missing(node.span.text, wanted[0]))
    say.add(told)
    return None


def resolve_expression(  # noqa: PLR0911 a kind each
    node: tree.Expression, scope: Scope, say: Collector
) -> Expression | None:
    """The expression with names looked up and dimensions checked; None after a fault: reported once."""
    match node:
        case tree.Number():
            # The syntax stage has seen to it that there is such a unit.
            quantity = as_quantity(node)
            return None if quantity is None else Constant(quantity, node.span)
        case tree.Compass(side=side):
            return Constant(Quantity.of(SIDES[side], UNITS["deg"]), node.span)
        case tree.Named():
            return _named(node, scope, say)
        case tree.Signed(sign=sign, value=value):
            inner = resolve_expression(value, scope, say)
            return inner if inner is None or sign == "+" else negative(inner, node)
        case tree.Arithmetic():
            return _arithmetic(node, scope, say)
        case tree.Applied():
            return _applied(node, scope, say)
        case tree.Asked(what=what, refs=(tree.Ref(first=word, second=None), *_)) if (
            what,
            word.text,
        ) in scope.sizes:
            return scope.sizes[what, word.text]
        case tree.Asked(what=what, refs=(tree.Ref(first=word, second=None), *_)) if (
            scope.sizes and what in OF_TRIMS
        ):
            known = dict.fromkeys(name for _, name in scope.sizes)
            say.add(unknown_name(word.span, "material", word.text, known=known))
            return None
        case tree.Asked():
            return resolve_question(node, scope.parts, say, within=scope.piece, finishes=scope.finishes)


def negative(inner: Expression, node: tree.Signed | tree.Level) -> Expression:
    """The expression with the other sign."""
    if isinstance(inner, Constant):
        return Constant(Quantity(-inner.value.value, inner.value.unit), node.span)
    minus = Constant(Quantity.of(-1, UNITS[""]), node.span)
    return Arithmetic(Operator.TIMES, minus, inner, dimension_of(inner), node.span)


def _named(node: tree.Named, scope: Scope, say: Collector) -> Expression | None:
    name = node.name.text
    if name in scope.fixed:
        return scope.fixed[name]
    if name in scope.values:
        model_name, dimension = scope.values[name]
        return Named(model_name, dimension, node.span)
    if name in scope.missing:
        return None
    known = (*scope.values, *scope.fixed)
    if scope.figures_only:
        told = NOT_HERE.at(node.span, asked=name, reason="only figures can stand here")
        say.add(told.help("write the value itself"))
        return None
    told = unknown_name(node.span, scope.kind, name, known=known)
    if nearest(name, _QUESTIONS) and not nearest(name, known):
        told = unknown_name(node.span, scope.kind, name, known=())
        told = told.help(f"did you mean `{nearest(name, _QUESTIONS)[0]} of …`?")
    for first, hyphen, second in _parted(name):
        if first in known and second in known and hyphen:
            told = unknown_name(node.span, scope.kind, name, known=())
            told = told.help(f"an operator stands between spaces: `{first} - {second}`")
    if name in scope.below:
        told = unknown_name(node.span, scope.kind, name, known=())
        told = told.help(f"`{name}` is not declared above this line; move it there, or take another")
    elif name in scope.left_out:
        told = unknown_name(node.span, scope.kind, name, known=())
        told = told.help(f"`{name}` is there only {scope.left_out[name]}; give it a value for every option")
    say.add(told)
    return None


def _parted(name: str) -> tuple[tuple[str, str, str], ...]:
    """The name parted at each of its hyphens."""
    words = name.split("-")
    return tuple(("-".join(words[:count]), "-", "-".join(words[count:])) for count in range(1, len(words)))


def _arithmetic(node: tree.Arithmetic, scope: Scope, say: Collector) -> Expression | None:
    left = resolve_expression(node.left, scope, say)
    right = resolve_expression(node.right, scope, say)
    if left is None or right is None:
        return None
    first, second = dimension_of(left), dimension_of(right)
    rules = {"+": first.plus, "-": first.plus, "*": first.times, "/": first.over}
    dimension = rules[node.operator](second)
    if dimension is None:
        say.add(_cannot_join(node.left, node.right, first, second, joined=_JOINED[node.operator]))
        return None
    return Arithmetic(Operator(node.operator), left, right, dimension, node.span)


def _cannot_join(
    left: tree.Expression, right: tree.Expression, first: Dimension, second: Dimension, *, joined: str
) -> Diagnostic:
    """The place to blame is a bare number if one side is one, else the second side."""
    blamed, other, of_other = right, left, first
    if isinstance(left, tree.Number) and left.unit is None:
        blamed, other, of_other = left, right, second
    label = second if blamed is right else first
    told = CANNOT_JOIN.at(
        blamed.span, str(label), left=first.with_article, right=second.with_article, joined=joined
    ).see(other.span, str(of_other))
    if joined in ("multiplied", "divided"):
        return told
    if isinstance(blamed, tree.Number) and blamed.unit is None:
        return told.help(unit_missing(blamed.span.text, of_other))
    if second == Dimension.RATIO and joined != "compared":
        return told.help("a share of a value is written with `*`: `3% * bust`")
    return told


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
    if function in (Function.LARGER, Function.SMALLER):
        second = dimension_of(arguments[1])
        dimension, wanted = first.plus(second), ""
        if dimension is None:
            say.add(_cannot_join(node.values[0], node.values[1], first, second, joined="compared"))
            return None
    else:
        dimension, wanted = _outcome(function, first)
    if dimension is None:
        what = f"what `{node.function} of` takes"
        argument = node.values[0]
        told = WRONG_DIMENSION.at(argument.span, what=what, wanted=wanted, found=first.with_article)
        say.add(told)
        return None
    return Applied(function, arguments, dimension, node.span)


def _outcome(function: Function, of: Dimension) -> tuple[Dimension | None, str]:
    """The dimension of a function of one value, None if it takes no such; and what it takes, in words."""
    match function:
        case Function.ROOT:
            return of.root(), "an area or a number"
        case Function.SINE | Function.COSINE | Function.TANGENT:
            return (Dimension.NUMBER if of == Dimension.ANGLE else None), "an angle"
        case Function.ARC_SINE | Function.ARC_TANGENT:
            return (Dimension.ANGLE if of.is_plain else None), "a number"
        case Function.RADIUS | Function.CIRCUMFERENCE:
            return (of if of == Dimension.LENGTH else None), "a length"
        case _:
            return of, ""
