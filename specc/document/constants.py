"""Owns the values of expressions that hold constants only, as the settings of a method do.

Knows no geometry.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.model.expression import Arithmetic, Constant, Operator

if TYPE_CHECKING:
    from fractions import Fraction

    from specc.model.expression import Expression


def constant(expression: Expression | None) -> Fraction | None:
    """The value in base units.

    None where there is no expression, or one that asks for more than constants.
    """
    match expression:
        case Constant(value=quantity):
            return quantity.value
        case Arithmetic(operator=operator, left=left, right=right):
            first, second = constant(left), constant(right)
            return None if first is None or second is None else _joined(operator, first, second)
        case _:
            return None


def _joined(operator: Operator, first: Fraction, second: Fraction) -> Fraction | None:
    match operator:
        case Operator.PLUS:
            return first + second
        case Operator.MINUS:
            return first - second
        case Operator.TIMES:
            return first * second
        case Operator.OVER:
            return first / second if second else None
