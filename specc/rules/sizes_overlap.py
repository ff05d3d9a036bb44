"""Where tolerances of neighbouring sizes overlap, a girth can be right for both and tell neither.

A garment at the upper end of one size is then wider than one at the lower end of the next (geometry). That it
matters for girths of the body is common practice, no source.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.model.expression import Asked, Geometric

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

OVERLAP = declare(
    "SPC572",
    "sizes-overlap",
    Severity.NOTE,
    "the tolerance of `{measure}` is wider than the step from size to size: sizes overlap by {overlap}",
)

_NEAR: Final = 0.05  # mm


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a girth that is measured, with the pair of sizes that overlaps most."""
    sizes = [size.size for size in subject.assembly.sizes]
    for measure, point in zip(subject.garment.measures, subject.measures.points_of_measure, strict=True):
        girth = isinstance(measure.value, Geometric) and measure.value.asked is Asked.GIRTH
        if not girth or point.plus is None or point.minus is None:
            continue
        steps = [
            (point.plus + point.minus - step, low, high)
            for (low, high), step in zip(pairwise(sizes), point.steps, strict=True)
            if step > 0.0
        ]
        overlap, low, high = max(steps, default=(0.0, "", ""))
        if overlap > _NEAR:
            told = OVERLAP.at(measure.origin, measure=measure.name, overlap=subject.difference(overlap))
            told = told.note(f"most between sizes {low} and {high}")
            yield told.help("narrow the tolerance to half a step, or make the step greater")
