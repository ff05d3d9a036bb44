"""Owns the order in which amounts are found.

Knows nothing of the single amounts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.quantities.bill import bill
from specc.quantities.cutting import cloth_uses, cut_pieces
from specc.quantities.points import expectation, point_of_measure
from specc.quantities.quantities import Measured, Quantities, SizeQuantities
from specc.quantities.trims import trim_cuts

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.making.assembly import Assembly, SizeAssembly
    from specc.model.expression import Expression
    from specc.model.garment import Garment


def count(
    garment: Garment, assembly: Assembly, evaluate: tuple[Callable[[Expression], float], ...]
) -> Quantities:
    """What the garment takes and measures; `evaluate` has one evaluator for each size of the assembly."""
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
