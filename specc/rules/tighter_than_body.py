"""Closed and worn, a garment must be as wide as the body at bust, waist and hip, or stretch to it.

Where it has to let the body through on its way on, that is told already; a waist that elastic draws in is
measured let out. Geometry; no ease is asked for.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.rules.girths import girths

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

TIGHTER = declare(
    "SPC563",
    "tighter-than-body",
    Severity.WARNING,
    "the girth at `{line}` is up to {lack} less than the {body} in {sizes}",
)

BODIES: Final = MappingProxyType({"bust-line": "bust", "waist-line": "waist", "hip-line": "hip"})
_PASSED: Final = MappingProxyType({"over the head": "bust-line", "stepping in": "hip-line"})
_NEAR: Final = 1.0  # mm


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a line of the body."""
    told_already = _PASSED.get(subject.garment.header.puts_on or "")
    for line, body in BODIES.items():
        if line == told_already:
            continue
        rows = [
            (size.size, girth.passes, needed, girth.pieces[0])
            for size in subject.assembly.sizes
            if (needed := subject.measurement(body, size.size)) is not None
            for girth in girths(subject, size)
            if not girth.edges and girth.name == f"the girth at `{line}`" and girth.passes < needed - _NEAR
        ]
        if rows:
            told = TIGHTER.at(
                subject.place_of_piece(rows[0][3]),
                line=line,
                body=body,
                sizes=subject.sizes(dict.fromkeys(row[0] for row in rows)),
                lack=subject.difference(max(needed - passes for _, passes, needed, _ in rows)),
            )
            for size, passes, needed, _ in rows:
                wide, wanted = subject.lengths(passes, needed)
                told = told.note(f"size {size}: {wide}, stretched where cloth does; the {body} is {wanted}")
            yield told.help("give the block more ease there, or let the sides out")
