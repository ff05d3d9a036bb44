"""Owns how one ply and its trims lie at a finished edge or a hem: turned, bound, faced.

Knows nothing of the rows that go through them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.making.section import ON, CutEdge, Strand, Width
from specc.making.section_plies import Plies, path, taken
from specc.making.section_rows import From, Lay, Mark, inset_from, length
from specc.making.section_seam import outward, turned

if TYPE_CHECKING:
    from specc.model.construction import Making, Takes

_CLOTH = "cloth"
_LIP = 1.6  # a fold that covers a row lies so far beyond it in the picture, millimetres
_ROOM = 0.8  # what lies in a fold is drawn so far from its ends, millimetres


def edge_lay(making: Making) -> Lay | None:
    """The edge as it is done; None where its allowance is not known."""
    allowance = length(making.allowance)
    if allowance is None:
        return None
    trimmed = (_trimmed(making, each, allowance) for each in making.takes)
    found = next((lay for lay in trimmed if lay is not None), None)
    if found is not None:
        return found
    if making.turned:
        return _turned(making)
    if making.laid == "turned":
        return turned(Plies(making, (_CLOTH, _CLOTH), (allowance, allowance), allowance))
    if making.raw_edge == "enclosed" and allowance:
        return _turned_in(allowance)
    return _plain(allowance)


def _trimmed(making: Making, trim: Takes, allowance: float) -> Lay | None:
    """The edge with a trim on it; None where that is not declared, or its width cannot be laid so."""
    wide, row = length(trim.cut_width), inset_from(making, From.RAW)
    match trim.lies:
        case "folded-binding" if wide is not None:
            return _folded_binding(trim, wide)
        case "binding" | "raw-binding" if wide is not None and row is not None and wide > 2 * row:
            return _binding(trim, wide, row)
        case "doubled-binding" if wide is not None and row is not None and wide > 2 * row:
            return _doubled_binding(trim, wide, row)
        case "facing" if wide is not None and wide > 2 * allowance:
            return _facing(trim, wide, allowance)
        case _:
            return None


def _plain(allowance: float) -> Lay:
    """Flat to its raw edge."""
    strand = Strand(_CLOTH, path((-ON, 0), (allowance, 0)), True)
    marks = {From.RAW: Mark(allowance, -1), From.EDGE: Mark(allowance, -1), From.SEAM: Mark(0.0, -1)}
    widths = (Width("allowance", 0.0, allowance),) if allowance else ()
    return Lay((strand,), marks, raw=(CutEdge(allowance, -1, 0, 0),), widths=widths)


def _turned_in(allowance: float) -> Lay:
    """The allowance turned to the wrong side."""
    strand = Strand(_CLOTH, path((-ON, 0), (0.0, 0), (0.0, 1), (-allowance, 1)), True)
    edge = Mark(0.0, -1)
    marks = {From.RAW: Mark(-allowance, 1), From.FOLD: edge, From.EDGE: edge}
    return Lay((strand,), marks, frozenset({(0, 1)}), widths=(Width("turned in", -allowance, 0.0),))


def _turned(making: Making) -> Lay:
    """Turned once or twice, perhaps with something in the fold."""
    raw: tuple[CutEdge, ...] = ()
    widths: tuple[Width, ...]
    deep, *more = (length(each) or 0.0 for each in making.turned)
    under = more[0] if more else None
    filling = taken(making, "filling")
    edge = Mark(0.0, -1)
    strands: list[Strand] = []
    if under is None:
        back = 2 if filling else 1
        nodes = path((-ON, 0), (0.0, 0), (0.0, back), (-deep, back))
        marks = {From.RAW: Mark(-deep, 1), From.FOLD: edge, From.EDGE: edge}
        raw = (CutEdge(-deep, 1, back, back),)
        widths = (Width("depth", -deep, 0.0),)
        inner = -deep
    else:
        nodes = path((-ON, 0), (0.0, 0), (0.0, 2), (-deep, 2), (-deep, 1), (-deep + under, 1))
        marks = {From.FOLD: Mark(-deep, 1), From.EDGE: edge}
        widths = (Width("depth", -deep, 0.0), Width("turned under", -deep, -deep + under))
        inner = -deep + under
    strands.append(Strand(_CLOTH, nodes, True))
    wide = length(filling.cut_width) if filling else None
    if filling is not None and wide is not None:
        room = -inner - 2 * _ROOM
        strands.append(Strand(filling.material, path((-_ROOM - min(wide, room), 1), (-_ROOM, 1)), trim=True))
    return Lay(tuple(strands), marks, raw=raw, cover=None if under else -deep, widths=widths)


def _folded_binding(trim: Takes, wide: float) -> Lay:
    """A trim folded in half over the raw edge."""
    half = wide / 2
    strands = (
        Strand(_CLOTH, path((-ON, 1), (0.0, 1)), True),
        Strand(trim.material, path((-half, 0), (0.0, 0), (0.0, 2), (-half, 2)), trim=True),
    )
    edge = Mark(0.0, -1)
    marks = {From.OPEN: Mark(-half, 1), From.RAW: edge, From.FOLD: edge, From.EDGE: edge}
    return Lay(strands, marks, widths=(Width("binding", -half, 0.0),))


def _binding(trim: Takes, wide: float, row: float) -> Lay:
    """A strip sewn on and turned over the edge, its far edge turned under or left raw.

    It is sewn on one side, goes out over the row and back on the other: what remains is turned under.
    """
    finished = (wide - 2 * row) / 2 if trim.lies == "binding" else row
    edge = finished - row
    far = -row if trim.lies == "binding" else -(wide - 2 * row)
    nodes = [*path((0.0, 3), (-row, 3), (-row, 4), (edge, 4), (edge, 0), (far, 0))]
    if trim.lies == "binding":
        nodes += path((far, 1), (far + row, 1))
    cloth = Strand(_CLOTH, path((-ON, 2), (0.0, 2)), True)
    strip = Strand(trim.material, tuple(nodes), trim=True)
    marks = {
        From.RAW: Mark(0.0, -1, frozenset({(0, 0), (1, 0)})),
        From.FOLD: Mark(far, 1),
        From.SEAM: Mark(-row, 1),
        From.EDGE: Mark(edge, -1),
    }
    lay = Lay((cloth, strip), marks, widths=(Width("binding", -row, edge),))
    return outward(lay) if trim.turned == "in" else lay


def _doubled_binding(trim: Takes, wide: float, row: float) -> Lay:
    """A strip folded in half, sewn on by its raw edges and turned over the edge."""
    finished = (wide / 2 - row) / 2
    edge, far = finished - row, -row - _LIP
    nodes = path(
        (0.0, 3), (-row, 3), (-row, 0), (edge, 0), (edge, 6), (far, 6),
        (far, 5), (edge, 5), (edge, 1), (-row, 1), (-row, 2), (0.0, 2),
    )  # fmt: skip
    cloth = Strand(_CLOTH, path((-ON, 4), (0.0, 4)), True)
    strip = Strand(trim.material, nodes, trim=True)
    marks = {
        From.RAW: Mark(0.0, -1, frozenset({(0, 0), (1, 0), (1, 7)})),
        From.FOLD: Mark(far, 1),
        From.SEAM: Mark(-row, 1),
        From.EDGE: Mark(edge, -1),
    }
    lay = Lay((cloth, strip), marks, widths=(Width("binding", -row, edge),))
    return lay if trim.turned == "in" else outward(lay)


def _facing(trim: Takes, wide: float, allowance: float) -> Lay:
    """A strip sewn on and turned to one side altogether, its far edge turned in as deep as the allowance."""
    seen = wide - 2 * allowance
    apart = seen < 2 * allowance  # both turned edges lie over each other
    back = 4 if apart else 3
    strands = (
        Strand(_CLOTH, path((-ON, 0), (0.0, 0), (0.0, 1), (-allowance, 1)), True),
        Strand(
            trim.material,
            path(
                (-allowance, 2),
                (0.0, 2),
                (0.0, back),
                (-seen, back),
                (-seen, back - 1),
                (allowance - seen, back - 1),
            ),
            trim=True,
        ),
    )
    allowances = frozenset({(0, 1), (1, 0)})
    edge = Mark(0.0, -1)
    marks = {
        From.RAW: Mark(-allowance, 1, allowances),
        From.SEAM: edge,
        From.FOLD: Mark(-seen, 1),
        From.EDGE: edge,
    }
    widths = (Width("allowance", -allowance, 0.0), Width("facing", -seen, 0.0))
    lay = Lay(strands, marks, allowances, widths=widths)
    return outward(lay) if trim.turned == "out" else lay
