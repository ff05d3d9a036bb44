"""Owns reckoning values that hold constants only, as the settings of a method do.

Knows nothing of what they are for.
"""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING

from specc.model.expression import Applied, Arithmetic, Constant, Function, Operator
from specc.units import UNITS, Quantity

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.model.expression import Expression
    from specc.units import Unit

# A garment needs nothing near it; products of products would otherwise grow without end.
_MOST_BITS = 256
_GRID = 10**9  # to what part of a unit a root or sine is taken
_FUNCTIONS: dict[Function, Callable[[float], float]] = {
    Function.ROOT: math.sqrt,
    Function.SINE: lambda angle: math.sin(math.radians(angle)),
    Function.COSINE: lambda angle: math.cos(math.radians(angle)),
    Function.TANGENT: lambda angle: math.tan(math.radians(angle)),
    Function.ARC_SINE: lambda sine: math.degrees(math.asin(sine)),
    Function.ARC_TANGENT: lambda tangent: math.degrees(math.atan(tangent)),
    Function.RADIUS: lambda girth: girth / math.tau,
    Function.CIRCUMFERENCE: lambda radius: radius * math.tau,
}


def fixed(expression: Expression) -> Constant | None:
    """The expression as a constant, in the unit in which its first part is written.

    None where it asks for more than constants, where there is no such number, or one beyond all measure.
    """
    if isinstance(expression, Constant):
        return expression
    value, written = fixed_value(expression), _unit(expression)
    if value is None or written is None:
        return None
    return Constant(Quantity(value, written), expression.origin)


def fixed_value(expression: Expression) -> Fraction | None:
    """The value in base units; None as for `fixed`."""
    match expression:
        case Constant(value=quantity):
            value: Fraction | None = quantity.value
        case Arithmetic(operator=operator, left=left, right=right):
            value = _joined(operator, fixed_value(left), fixed_value(right))
        case Applied(function=function, arguments=arguments):
            value = _applied(function, tuple(fixed_value(argument) for argument in arguments))
        case _:
            value = None
    if value is None or max(value.numerator.bit_length(), value.denominator.bit_length()) > _MOST_BITS:
        return None
    return value


def _joined(operator: Operator, first: Fraction | None, second: Fraction | None) -> Fraction | None:
    if first is None or second is None:
        return None
    match operator:
        case Operator.PLUS:
            return first + second
        case Operator.MINUS:
            return first - second
        case Operator.TIMES:
            return first * second
        case Operator.OVER:
            return first / second if second else None


def _applied(function: Function, values: tuple[Fraction | None, ...]) -> Fraction | None:
    known = [value for value in values if value is not None]
    if len(known) < len(values):
        return None
    match function:
        case Function.LARGER:
            return max(known)
        case Function.SMALLER:
            return min(known)
        case Function.SIZE_OF:
            return abs(known[0])
    try:
        return Fraction(round(_FUNCTIONS[function](float(known[0])) * _GRID), _GRID)
    except (ValueError, OverflowError):
        return None


def _unit(expression: Expression) -> Unit | None:
    """The unit of the first part that has the dimension of the whole, else any of that dimension."""
    if isinstance(expression, Constant):
        return expression.value.unit
    parts: tuple[Expression, ...] = ()
    match expression:
        case Arithmetic(left=left, right=right):
            parts = (left, right)
        case Applied(arguments=arguments):
            parts = arguments
    of_parts = (_unit(part) for part in parts)
    known = (unit for unit in (*of_parts, *UNITS.values()) if unit is not None)
    return next((unit for unit in known if unit.dimension == expression.dimension), None)
