"""What the designer demands of the result must hold in every size."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.units import Dimension, format_number

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

NOT_MET = declare("SPC516", "expectation-not-met", Severity.ERROR, "`{text}` does not hold in {sizes}")


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a demand, with what came out in each size."""
    sizes = [size.size for size in subject.assembly.sizes]
    for expect, result in zip(subject.garment.expects, subject.measures.expects, strict=True):
        failed = [size for size, met in zip(sizes, result.met, strict=True) if not met]
        if not failed:
            continue

        told = NOT_MET.at(expect.origin, text=result.text, sizes=subject.sizes(failed))
        for size, left, right, met in zip(sizes, result.left, result.right, result.met, strict=True):
            if not met:
                one, other = _printed(subject, result.dimension, left, right)
                told = told.note(f"size {size}: {one} against {other}")
        yield told.help("change what makes it so, or demand what is really needed")


def _printed(subject: Subject, dimension: Dimension, left: float, right: float) -> tuple[str, ...]:
    """Both sides, told apart."""
    if dimension == Dimension.LENGTH:
        return subject.lengths(left, right)
    return tuple(format_number(value, decimals=2) for value in (left, right))
