"""Owns the cross-section of what is made: a seam, a finish, a hem.

Knows nothing of paper.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.making.section_edge import edge_lay
from specc.making.section_plies import plies_of
from specc.making.section_rows import sewn
from specc.making.section_seam import seam_lay
from specc.model.construction import Seam

if TYPE_CHECKING:
    from specc.making.section import Section
    from specc.model.construction import Finish


def section_of(made: Seam | Finish) -> Section | None:
    """What is declared of it, cut across; None for a closure, and where not even its plies are known."""
    if isinstance(made, Seam):
        plies = plies_of(made)
        return None if plies is None else sewn(seam_lay(plies), made.making)
    if made.closing is not None:
        return None
    lay = edge_lay(made.making)
    return None if lay is None else sewn(lay, made.making)
