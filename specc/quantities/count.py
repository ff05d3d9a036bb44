"""Owns the order in which amounts are found.

Knows nothing of the single amounts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.drafting import EvaluationError
from specc.making.inside import pieces_inside
from specc.quantities.bias import bias_plans
from specc.quantities.bill import bill
from specc.quantities.cloth_uses import cloth_uses
from specc.quantities.cost import cost
from specc.quantities.pieces import piece_counts
from specc.quantities.points import expectation, openings_of, point_of_measure
from specc.quantities.quantities import Measured, Measures, Quantities, SizeQuantities
from specc.quantities.strips import strip_cuts
from specc.quantities.thread import thread_uses
from specc.quantities.trims import trim_cuts

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.shape import Shaped
    from specc.diagnostics import Diagnostic
    from specc.laying import CutOut
    from specc.making.assembly import Assembly, CutPiece, SizeAssembly
    from specc.model.expression import Expression
    from specc.model.garment import Garment


def measure(
    garment: Garment, shaped: tuple[Shaped, ...], assembly: Assembly
) -> tuple[Measures | None, tuple[Diagnostic, ...]]:
    """What the garment measures; None when something is asked of a part that is no longer there."""
    evaluate = _evaluators(garment, shaped, assembly)
    try:
        points = tuple(point_of_measure(point, evaluate) for point in garment.measures)
        return Measures(points, tuple(expectation(expect, evaluate) for expect in garment.expects)), ()
    except EvaluationError as error:
        return None, (error.diagnostic,)


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
        zip(assembly.sizes, cut_out.pieces, _evaluators(garment, shaped, assembly), strict=True)
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


def _evaluators(
    garment: Garment, shaped: tuple[Shaped, ...], assembly: Assembly
) -> tuple[Callable[[Expression], float], ...]:
    """What evaluates expressions over the finished garment, one for each size."""
    inside = pieces_inside(garment.seams)
    return tuple(
        one.evaluator(openings_of(garment, size), inside).value
        for one, size in zip(shaped, assembly.sizes, strict=True)
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
