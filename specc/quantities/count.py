"""Owns the order in which amounts are found.

Knows nothing of the single amounts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.quantities.bias import bias_plans
from specc.quantities.bill import bill
from specc.quantities.cloth_uses import cloth_uses
from specc.quantities.cost import cost
from specc.quantities.measure import evaluators
from specc.quantities.pieces import piece_counts
from specc.quantities.quantities import Measured, Quantities, SizeQuantities
from specc.quantities.strips import strip_cuts
from specc.quantities.thread import thread_uses
from specc.quantities.trims import trim_cuts

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.shape import Shaped
    from specc.laying import CutOut
    from specc.making.assembly import Assembly, CutPiece, SizeAssembly
    from specc.model.expression import Expression
    from specc.model.garment import Garment
    from specc.quantities.quantities import Measures


def count(
    garment: Garment,
    shaped: tuple[Shaped, ...],
    assembly: Assembly,
    measures: Measures,
    cut_out: CutOut,
) -> Quantities:
    """What the garment takes, beside what it measures; cloth by its lays where there are any."""
    sizes = []
    for index, (size, of_size, evaluate) in enumerate(
        zip(assembly.sizes, cut_out.pieces, evaluators(garment, shaped, assembly), strict=True)
    ):
        measured = tuple(Measured(point.name, point.values[index]) for point in measures.points_of_measure)
        sizes.append(_size(garment, size, of_size, evaluate, measured))
    of_sizes = tuple(sizes)
    plans = bias_plans(garment, of_sizes, cut_out.lays)
    lines = bill(garment, of_sizes, cut_out.lays, plans)
    return Quantities(
        of_sizes,
        measures.points_of_measure,
        cut_out.lays,
        plans,
        lines,
        cost(garment, of_sizes, lines),
        measures.expects,
    )


def _size(
    garment: Garment,
    size: SizeAssembly,
    cuts: tuple[CutPiece, ...],
    evaluate: Callable[[Expression], float],
    measured: tuple[Measured, ...],
) -> SizeQuantities:
    trims = trim_cuts(garment, size, evaluate)
    return SizeQuantities(
        size.size,
        cuts,
        trims,
        strip_cuts(garment, size, cuts, trims),
        piece_counts(garment, size),
        cloth_uses(garment, size, cuts, trims),
        thread_uses(garment, size, evaluate),
        measured,
    )
