"""A dart that takes in half a right angle or more stands off the body as a cone, or is a slip of the pen.

The same in two darts is flatter. That darts stay under 45 degrees: common practice, no source.
"""

from __future__ import annotations

from math import degrees
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.pattern.measure import dart_angle, dart_width
from specc.units import format_angle

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

WIDE = declare(
    "SPC570",
    "dart-too-wide",
    Severity.WARNING,
    "dart `{dart}` takes in {angle}, {width} at its mouth; it will stand off as a cone",
)

MOST: Final = 45.0  # degrees


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a dart, with the size in which it is widest."""
    worst: dict[str, tuple[float, float, str, str]] = {}
    for size in subject.assembly.sizes:
        for piece in size.pieces:
            for dart in piece.darts:
                name = f"{piece.name}.{dart.name}"
                found = (degrees(dart_angle(dart)), dart_width(dart), size.size, piece.name)
                if found[0] >= MOST and found > worst.get(name, (0.0, 0.0, "", "")):
                    worst[name] = found
    for name, (angle, width, where, owner) in worst.items():
        told = WIDE.at(
            subject.place_of_piece(owner), dart=name, angle=format_angle(angle), width=subject.length(width)
        )
        told = told.note(f"widest in size {where}")
        yield told.help("check the unit of what makes it, swing part of it elsewhere, or make two of it")
