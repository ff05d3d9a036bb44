"""Owns points of measure over the sizes, and whether the designer's demands are met.

Knows nothing of how they are drawn.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from specc.model.expression import Applied, Arithmetic, Constant, Geometric, Named
from specc.quantities.quantities import ExpectResult, PointOfMeasure, Term

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from specc.making.assembly import SizeAssembly
    from specc.model.expression import Expression
    from specc.model.garment import Expect, Garment, Measure

# An expectation is a demand on the drawn garment, so only the geometry's own tolerance is allowed for.
_SAME = 1e-6


def openings_of(garment: Garment, size: SizeAssembly) -> dict[str, float]:
    """The round of every finish, and of every seam with an edge that stays open, by name, as sewn.

    What is held in is lost. Closures are closed, but the round of a closure is that which is open with it.
    """
    openings = {finish.name: 0.0 for finish in garment.finishes}
    central = {name for opening in size.worn if opening.central for name in opening.by}
    for laid in size.rounds:
        length = laid.length - sum((zone.end - zone.start) * zone.held for zone in laid.zones)
        if laid.closed or laid.by not in central:
            openings[laid.by] = max(openings[laid.by], length)
        else:  # a neck between two shoulders that open: all of its runs go round the one opening
            openings[laid.by] += length * laid.count
    for closure in size.closures:
        name = closure.closure
        openings[name] = max((one.sewn for one in size.openings if name in one.by), default=0.0)
    for seam in garment.seams:
        if seam.stays_open:
            openings[seam.name] = max((one.sewn for one in size.worn if seam.name in one.by), default=0.0)
    return openings


def point_of_measure(measure: Measure, evaluate: tuple[Callable[[Expression], float], ...]) -> PointOfMeasure:
    """The measure in every size, with the step from size to size; tolerances are those of the first size."""
    values = tuple(of_size(measure.value) for of_size in evaluate)
    plus = None if measure.plus is None else evaluate[0](measure.plus)
    minus = None if measure.minus is None else evaluate[0](measure.minus)
    steps = tuple(after - before for before, after in pairwise(values))
    terms = _terms(measure.value, evaluate)
    return PointOfMeasure(measure.name, measure.title, measure.dimension, plus, minus, values, steps, terms)


def _terms(expression: Expression, evaluate: tuple[Callable[[Expression], float], ...]) -> tuple[Term, ...]:
    """What an expression asks of chart and pieces, each once; nothing where that is all it says."""
    asked = {" ".join(part.origin.text.split()): part for part in _asked(expression)}
    if expression in asked.values():
        return ()
    return tuple(
        Term(text, part.dimension, tuple(of_size(part) for of_size in evaluate))
        for text, part in asked.items()
    )


def _asked(expression: Expression) -> Iterator[Named | Geometric]:
    match expression:
        case Named() | Geometric():
            yield expression
        case Arithmetic(left=left, right=right):
            yield from _asked(left)
            yield from _asked(right)
        case Applied(arguments=arguments):
            for argument in arguments:
                yield from _asked(argument)
        case Constant():
            pass


def expectation(expect: Expect, evaluate: tuple[Callable[[Expression], float], ...]) -> ExpectResult:
    """What came out on both sides of the demand, in every size."""
    left = tuple(of_size(expect.left) for of_size in evaluate)
    rights = expect.right if expect.by_size else expect.right * len(evaluate)
    right = tuple(of_size(value) for of_size, value in zip(evaluate, rights, strict=True))
    signed = 1.0 if expect.compare == ">=" else -1.0
    met = tuple(signed * (one - other) >= -_SAME for one, other in zip(left, right, strict=True))
    limits = right if expect.by_size else ()
    return ExpectResult(expect.text, expect.because, expect.dimension, left, right, met, limits)
