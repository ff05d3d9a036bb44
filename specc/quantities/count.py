"""Owns the order in which amounts are found.

Knows nothing of the single amounts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.drafting import EvaluationError
from specc.quantities.bill import bill
from specc.quantities.cutting import cloth_uses, cut_pieces
from specc.quantities.points import expectation, openings_of, point_of_measure
from specc.quantities.quantities import Measured, Quantities, SizeQuantities
from specc.quantities.trims import trim_cuts

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.shape import Shaped
    from specc.diagnostics import Diagnostic
    from specc.making.assembly import Assembly, SizeAssembly
    from specc.model.expression import Expression
    from specc.model.garment import Garment


def count(
    garment: Garment, shaped: tuple[Shaped, ...], assembly: Assembly
) -> tuple[Quantities | None, tuple[Diagnostic, ...]]:
    """What the garment takes and measures; None when something is asked of a part that is no longer there."""
    try:
        return _count(garment, shaped, assembly), ()
    except EvaluationError as error:
        return None, (error.diagnostic,)


def _count(garment: Garment, shaped: tuple[Shaped, ...], assembly: Assembly) -> Quantities:
    evaluate = tuple(
        one.evaluator(openings_of(garment, size)).value
        for one, size in zip(shaped, assembly.sizes, strict=True)
    )
    points = tuple(point_of_measure(measure, evaluate) for measure in garment.measures)
    sizes = []
    for index, (size, of_size) in enumerate(zip(assembly.sizes, evaluate, strict=True)):
        measured = tuple(Measured(point.name, point.values[index]) for point in points)
        sizes.append(_size(garment, size, of_size, measured))
    expects = tuple(expectation(expect, evaluate) for expect in garment.expects)
    return Quantities(tuple(sizes), points, bill(garment, tuple(sizes)), expects)


def _size(
    garment: Garment,
    size: SizeAssembly,
    evaluate: Callable[[Expression], float],
    measured: tuple[Measured, ...],
) -> SizeQuantities:
    trims = trim_cuts(garment, size, evaluate)
    cuts = cut_pieces(size)
    return SizeQuantities(size.size, cuts, trims, cloth_uses(garment, size, cuts, trims), measured)
