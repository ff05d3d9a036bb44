"""Every cut edge must go somewhere: into a seam, a finish, a hem, or onto a fold.

An edge that nothing speaks of is left to the maker's guess, and makers who cannot ask back guess wrong.
Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject

UNFINISHED = declare("SPC515", "edge-unfinished", Severity.WARNING, "nothing joins or finishes `{edge}`")


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic an edge that has no use."""
    for use in subject.assembly.sizes[0].uses:
        if use.kind == "none":
            edge = f"{use.piece}.{use.edge}"
            told = UNFINISHED.at(subject.place_of_piece(use.piece), edge=edge)
            yield told.help(
                f"sew it in a `seam`, or write `hem {use.piece}-{use.edge} along {edge} by double-turned`, "
                "or `by raw` if it stays as it is cut"
            )
