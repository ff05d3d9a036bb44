"""Owns which lines run along the edges of a garment as it is drawn: hems, bindings, rows of stitches.

Knows nothing of where they lie on paper.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.garment_drawing import Band
from specc.document.line import LineKind

if TYPE_CHECKING:
    from specc.document.garment_drawing import Bands
    from specc.document.sheet import Sheet


def bands(sheet: Sheet) -> Bands:
    """For every edge of a piece that has any, the lines inside it, in the sample size."""
    found: Bands = {}
    for use in sheet.sample.uses:
        making = sheet.made_by(use.by)
        if making is None:
            continue
        stitches = [done.stitch for done in making.making.passes if done.stitch]
        if use.turned and stitches and _is_seen(stitches[-1]):
            found[use.piece, use.edge] = (Band(use.turned[0], LineKind.ROW),)
    return found


def _is_seen(stitch: str) -> bool:
    """Whether a row is seen on the right side: all but those of class 100 of ISO 4915, as blind hems have."""
    return not stitch.startswith("1")
