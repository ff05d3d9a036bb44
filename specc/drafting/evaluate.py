"""Owns the value of an expression in one size: floats in millimetres and radians, percent as plain ratios.

Knows nothing of where named values and parts come from: it asks for both.
"""

from __future__ import annotations

from math import asin, atan, cos, isfinite, radians, sin, sqrt, tan, tau
from typing import TYPE_CHECKING, Final, Protocol

from specc.diagnostics import Severity, declare
from specc.model.expression import Applied, Arithmetic, Asked, Constant, Function, Geometric, Named, Operator
from specc.pattern.measure import dart_depth, dart_width
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from specc.diagnostics import Diagnostic
    from specc.geometry.point import Point
    from specc.model.expression import Expression, PartRef
    from specc.pattern.piece import Dart, TwoPointedDart
    from specc.units import Quantity

DIVIDED_BY_ZERO = declare("SPC405", "divided-by-zero", Severity.ERROR, "this divides by zero")
NO_NUMBER = declare("SPC406", "no-such-number", Severity.ERROR, "there is no {function} of {value}")
TOO_LARGE = declare("SPC407", "out-of-bounds", Severity.ERROR, "{what} is out of bounds")
NO_DIRECTION = declare(
    "SPC412", "no-direction", Severity.ERROR, "`{start}` and `{end}` lie on each other: no direction"
)

FURTHEST: Final = 10_000.0
"""Millimetres from the origin beyond which no point of a garment lies."""

_FUNCTIONS: Mapping[Function, Callable[..., float]] = {
    Function.LARGER: max,
    Function.SMALLER: min,
    Function.ROOT: sqrt,
    Function.SINE: sin,
    Function.COSINE: cos,
    Function.TANGENT: tan,
    Function.ARC_SINE: asin,
    Function.ARC_TANGENT: atan,
    Function.SIZE_OF: abs,
    Function.RADIUS: lambda round_: round_ / tau,
    Function.CIRCUMFERENCE: lambda radius: radius * tau,
}
_CURES = {
    Function.ROOT: "what a root is taken of must not be less than 0 in any size",
    Function.ARC_SINE: "a sine lies between -1 and 1",
}


class EvaluationError(Exception):
    """A value that cannot be computed; `diagnostic` says why."""

    def __init__(self, diagnostic: Diagnostic) -> None:
        super().__init__(diagnostic.message)
        self.diagnostic = diagnostic


class PartLookup(Protocol):
    """The parts of pieces by name; each method raises EvaluationError for a part that is not there."""

    def point(self, ref: PartRef) -> Point:
        """The point or corner."""

    def length(self, ref: PartRef) -> float:
        """The length of an edge or reference line as sewn, in millimetres."""

    def drawn_length(self, ref: PartRef) -> float:
        """The length of an edge along the paper, in millimetres."""

    def dart(self, ref: PartRef) -> Dart | TwoPointedDart:
        """The dart."""

    def girth(self, ref: PartRef) -> float:
        """The way round the garment at a reference line, in millimetres."""

    def opening(self, ref: PartRef) -> float:
        """The round that a finish closes, as sewn, in millimetres."""


def dimension_of(expression: Expression) -> Dimension:
    """The dimension of an expression."""
    return expression.value.dimension if isinstance(expression, Constant) else expression.dimension


def is_share(expression: Expression) -> bool:
    """Whether a place is given as a share of a length rather than as a length."""
    return dimension_of(expression) == Dimension.RATIO


def in_floats(value: Quantity) -> float:
    """The value in millimetres, radians or a plain number; raises OverflowError beyond what a float holds."""
    plain = value.value.numerator / value.value.denominator
    return radians(plain) if value.dimension == Dimension.ANGLE else plain


class Evaluator:
    """Evaluates expressions over named values and the parts of pieces, as they are at that moment."""

    def __init__(self, values: Callable[[str], float], parts: PartLookup) -> None:
        self._values = values
        self._parts = parts

    def value(self, expression: Expression) -> float:
        """The value in millimetres, radians or a plain number; raises EvaluationError where there is none."""
        found = self._value(expression)
        if not isfinite(found):
            raise EvaluationError(TOO_LARGE.at(expression.origin, what="this value"))
        return found

    def _value(self, expression: Expression) -> float:
        match expression:
            case Constant(value=value, origin=origin):
                try:
                    return in_floats(value)
                except OverflowError:
                    raise EvaluationError(TOO_LARGE.at(origin, what="this value")) from None
            case Named(name=name):
                return self._values(name)
            case Arithmetic():
                return self._arithmetic(expression)
            case Applied():
                return self._applied(expression)
            case Geometric():
                return self._geometric(expression)

    def _arithmetic(self, expression: Arithmetic) -> float:
        left, right = self.value(expression.left), self.value(expression.right)
        match expression.operator:
            case Operator.PLUS:
                return left + right
            case Operator.MINUS:
                return left - right
            case Operator.TIMES:
                return left * right
            case Operator.OVER:
                if right == 0.0:
                    said = DIVIDED_BY_ZERO.at(expression.right.origin, "this is 0")
                    raise EvaluationError(said.help("let it differ from 0 in every size"))
                return left / right

    def _applied(self, expression: Applied) -> float:
        values = [self.value(argument) for argument in expression.arguments]
        try:
            return _FUNCTIONS[expression.function](*values)
        except ValueError:
            function = expression.function
            said = NO_NUMBER.at(expression.origin, function=function.value, value=f"{values[0]:.6g}")
            raise EvaluationError(said.help(_CURES[function])) from None

    def _geometric(self, expression: Geometric) -> float:
        asked: Mapping[Asked, Callable[[PartRef], float]] = {
            Asked.LENGTH: self._parts.length,
            Asked.DRAWN: self._parts.drawn_length,
            Asked.GIRTH: self._parts.girth,
            Asked.OPENING: self._parts.opening,
            Asked.WIDTH: lambda ref: dart_width(self._parts.dart(ref)),
            Asked.DEPTH: lambda ref: dart_depth(self._parts.dart(ref)),
        }
        if expression.asked in asked:
            return asked[expression.asked](expression.of[0])
        return self._between(expression)

    def _between(self, expression: Geometric) -> float:
        first, second = expression.of
        step = self._parts.point(second) - self._parts.point(first)
        match expression.asked:
            case Asked.ACROSS:
                return step.x
            case Asked.HEIGHT:
                return step.y
            case Asked.DIRECTION:
                if step.norm() == 0.0:
                    said = NO_DIRECTION.at(expression.origin, start=first.name, end=second.name)
                    raise EvaluationError(said.help("name two points that lie apart in every size"))
                return step.angle()
            case _:
                return step.norm()
