"""Owns measuring: points of measure and demands, as a check looks at them.

Knows nothing of amounts to buy.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.drafting import EvaluationError
from specc.making.inside import pieces_inside
from specc.quantities.points import expectation, openings_of, point_of_measure
from specc.quantities.quantities import Measures

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.shape import Shaped
    from specc.diagnostics import Diagnostic
    from specc.making.assembly import Assembly
    from specc.model.expression import Expression
    from specc.model.garment import Garment


def measure(
    garment: Garment, shaped: tuple[Shaped, ...], assembly: Assembly
) -> tuple[Measures | None, tuple[Diagnostic, ...]]:
    """What the garment measures; None when something is asked of a part that is no longer there."""
    evaluate = evaluators(garment, shaped, assembly)
    try:
        points = tuple(point_of_measure(point, evaluate) for point in garment.measures)
        return Measures(points, tuple(expectation(expect, evaluate) for expect in garment.expects)), ()
    except EvaluationError as error:
        return None, (error.diagnostic,)


def evaluators(
    garment: Garment, shaped: tuple[Shaped, ...], assembly: Assembly
) -> tuple[Callable[[Expression], float], ...]:
    """What evaluates expressions over the finished garment, one for each size."""
    inside = pieces_inside(garment.seams)
    return tuple(
        one.evaluator(openings_of(garment, size), inside).value
        for one, size in zip(shaped, assembly.sizes, strict=True)
    )
