"""Pins fall out of open cloth and their holes stay: clips hold it, and thread or clips mark it.

Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

PINS = declare("SPC509", "pins-in-open-cloth", Severity.NOTE, "pins fall out of `{cloth}`, an open cloth")


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One note a cloth that is open and that a piece is cut from."""
    seen = {cloth.name for piece in subject.pieces() if (cloth := subject.cloth(piece.name))}
    for cloth in subject.garment.cloths:
        if "open" in cloth.traits and cloth.name in seen:
            told = PINS.at(cloth.origin, cloth=cloth.name)
            yield told.help(
                "hold the plies with clips; mark notches with a thread or a clip, not with pins or cuts"
            )
