"""Owns telling a cross-section as text, and finding that of a method of the library."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.making.section import ON
from specc.making.sections import section_of
from specc.model.construction import Finish, Seam
from tests.methods import used

if TYPE_CHECKING:
    from specc.making.section import Section

_BAND = "front.neck, back.neck to band.bottom with band.top"
_TUBE = "band.left-edge to band.right-edge"
SEAMS = {
    "waistband": _BAND,
    "rib-band": _BAND,
    "elastic-waistband": _BAND,
    "turned-tube": _TUBE,
    "folded-strap": _TUBE,
}
"""The edges that a way of making is for, where they are not two side seams."""


def section(method: str, settings: str = "", *, seam: str = "") -> Section:
    """The cross-section of a method in use, its settings as the library has them."""
    made = used(method, settings, seam=seam)
    assert isinstance(made, Seam | Finish)
    found = section_of(made)
    assert found is not None
    return found


def _x(x: float) -> str:
    return "on" if abs(x) == ON else f"{x:.1f}".replace("-0.0", "0.0")


def told(section: Section) -> str:
    """The section as a person reads it: strands, rows, loops, widths; millimetres, layers from outside."""
    lines = []
    for strand in section.strands:
        up = {True: ", right side out", False: ", right side in", None: ""}[strand.right_up]
        nodes = " > ".join(f"{_x(node.x)} on {node.layer:g}" for node in strand.nodes)
        lines.append(f"  {strand.name}{up}: {nodes}")
    for row in section.rows:
        at = " and ".join(map(_x, row.places))
        how = "".join(
            (
                f", {row.needles} needles" if row.needles > 1 else "",
                ", across the folds" if row.across else "",
                ", blind" if row.blind else "",
                f", covers {row.covers}" if row.covers else "",
            )
        )
        lines.append(
            f"  row {row.operation + 1}: {row.stitch} at {at}, layers {row.top:g} to {row.bottom:g}{how}:"
            f" {' and '.join(', '.join(names) for names in row.pierces)}"
        )
    for loops in section.overlocks:
        edges = "; ".join(f"{_x(edge.x)}, layers {edge.top:g} to {edge.bottom:g}" for edge in loops.edges)
        bite = "" if loops.bite is None else f", needle {_x(loops.bite)} in"
        lines.append(
            f"  loops {loops.operation + 1}: {loops.stitch} over {edges}{bite}: {', '.join(loops.pierces)}"
        )
    lines += [f"  {width.what}: {_x(width.start)} to {_x(width.end)}" for width in section.widths]
    if section.unplaced:
        lines.append(f"  not placed: {', '.join(str(number + 1) for number in section.unplaced)}")
    if not section.sided:
        lines.append("  to which side is not known")
    if not section.laid:
        lines.append("  as it is sewn")
    return "\n".join(lines)
