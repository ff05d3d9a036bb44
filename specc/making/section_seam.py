"""Owns how the plies of a seam lie when it is done: open, to one side, lapped, butted, turned.

Knows nothing of the rows that go through them.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.making.section import ON, CutEdge, Node, Strand, Width
from specc.making.section_plies import path, taken
from specc.making.section_rows import From, Lay, Mark, inset_from, length
from specc.model.construction import TOWARD

if TYPE_CHECKING:
    from specc.making.section_plies import Plies

_SOME = 3.0  # a band is drawn so many allowances wide: how wide it is, is no matter of the seam
_LIP = 1.6  # an inner fold that covers a row lies so far beyond it in the picture, millimetres

Runs = frozenset[tuple[int, int]]


def seam_lay(plies: Plies) -> Lay:
    """The seam as it is laid; as it is sewn, where that is not declared or not drawn for so many plies."""
    laid = plies.making.laid or ""
    if taken(plies.making, "piping") is not None and len(plies.names) == 2:
        return _piped(plies)
    lay = _laid_by_two(plies, laid) if len(plies.names) == 2 else None
    if lay is not None:
        return lay
    if laid in TOWARD:
        return _to_one_side(plies, flipped=False, sided=False)
    if laid == "to the first side":
        return _to_one_side(plies, flipped=True)
    if laid == "to the second side":
        return _into_band(plies) if plies.doubled else _to_one_side(plies, flipped=False)
    return _standing(plies)


def _laid_by_two(plies: Plies, laid: str) -> Lay | None:
    """What is drawn of two plies only."""
    match laid:
        case "open":
            return _open(plies)
        case "first over second" | "second over first":
            return _lapped(plies, upper=0 if laid.startswith("first") else 1)
        case "edge to edge":
            return _butted()
        case "turned":
            return turned(plies)
        case _:
            return None


def _standing(plies: Plies) -> Lay:
    """On each other as they are sewn, raw edges even."""
    up = {"right sides together": (False, True), "wrong sides together": (True, False)}.get(
        plies.making.faces or "", (None, None)
    )
    known = up if len(plies.names) == 2 else (None,) * len(plies.names)
    strands = tuple(
        Strand(name, path((-ON, layer), (wide, layer)), known[layer])
        for layer, (name, wide) in enumerate(zip(plies.names, plies.wide, strict=True))
    )
    most = max(plies.wide)
    marks = {From.RAW: Mark(plies.declared, -1), From.EDGE: Mark(most, -1), From.SEAM: Mark(0.0, 1)}
    raw = (CutEdge(most, -1, 0, len(strands) - 1),)
    return Lay(strands, marks, raw=raw, widths=_allowed(most), laid=False)


def _piped(plies: Plies) -> Lay:
    """As it is sewn, a strip between the plies whose fold stands out of the seam, perhaps round a cord."""
    piping, cord = taken(plies.making, "piping"), taken(plies.making, "filling")
    most = max(plies.wide)
    cut = (length(piping.cut_width) if piping else None) or 2 * most
    out = most - cut / 2
    round_cord = length(cord.cut_width) if cord else None
    fold = -round_cord if round_cord else min(out, 0.0)  # a round cord takes up the rest of the strip
    strands = [
        Strand(plies.names[0], path((-ON, 0), (plies.wide[0], 0)), False),
        Strand(
            piping.material if piping else "", path((most, 1), (fold, 1), (fold, 3), (most, 3)), trim=True
        ),
        Strand(plies.names[1], path((-ON, 4), (plies.wide[1], 4)), True),
    ]
    if cord is not None and round_cord is not None:
        strands.append(Strand(cord.material, path((fold, 2), (fold + 0.9 * round_cord, 2)), trim=True))
    marks = {From.RAW: Mark(plies.declared, -1), From.SEAM: Mark(0.0, 1)}
    raw = (CutEdge(most, -1, 0, 4),)
    return Lay(tuple(strands), marks, raw=raw, widths=_allowed(most), laid=False)


def _allowed(wide: float) -> tuple[Width, ...]:
    return (Width("allowance", 0.0, wide),) if wide else ()


def _open(plies: Plies) -> Lay:
    """Each allowance back on its own ply, perhaps bound by itself."""
    making = plies.making
    binding = taken(making, "raw-binding")
    row = next(
        (length(done.inset) for done in making.passes if binding and binding.material in done.through), None
    )
    wide = length(binding.cut_width) if binding else None
    bound = binding is not None and row is not None and wide is not None
    strands: list[Strand] = []
    level = 2 if bound else 1
    for name, allow, side in zip(plies.names, plies.wide, (-1, 1), strict=True):
        strands.append(
            Strand(name, path((side * ON, 0), (0.0, 0), (0.0, level), (side * allow, level)), True)
        )
    early = frozenset({(0, 1), (1, 1)})
    if binding is not None and row is not None and wide is not None:
        for allow, side in zip(plies.wide, (-1, 1), strict=True):
            inner = side * max(allow - max(wide - 2 * row, 0.0), 0.1 * allow)
            raw, fold = side * allow, side * (allow - row)
            nodes = path((raw, 3), (fold, 3), (fold, 4), (raw, 4), (raw, 1), (inner, 1))
            strands.append(Strand(binding.material, nodes, trim=True))
        early |= {(2, 0), (3, 0)}
    first = plies.wide[0]
    edges = tuple(
        CutEdge(side * allow, -side, level, level) for allow, side in zip(plies.wide, (-1, 1), strict=True)
    )
    lay = Lay(
        tuple(strands),
        {From.RAW: Mark(-plies.declared, 1, early)},
        allowances=frozenset({(0, 1), (1, 1)}),
        raw=() if bound else edges,
        across=True,
        mirrored=True,
        widths=_allowed(-first),
    )
    return outward(lay) if plies.outside else lay


def _to_one_side(plies: Plies, *, flipped: bool, sided: bool = True) -> Lay:
    """All allowances on one side: on the second, or on the first (`flipped`).

    The ply on whose side they lie is folded back, further plies within it; the other goes on straight below.
    """
    two = len(plies.names) == 2
    seen = replace(plies, names=plies.names[::-1], wide=plies.wide[::-1]) if flipped and two else plies
    crease = inset_from(plies.making, From.CREASE)
    outside = plies.outside
    if crease is not None and two and plies.making.raw_edge == "enclosed":
        lay = _creased(seen, crease)
        outside = not outside  # it is turned once more than a plain seam
    elif plies.making.folded is not None and two:
        lay = _felled(seen)
    elif taken(plies.making, "folded-binding") is not None and two:
        lay = _bound(seen)
    else:
        lay = _plain(plies, flipped=flipped)
    lay = replace(lay, sided=sided)
    lay = outward(lay) if outside else lay
    return _mirrored(lay) if flipped else lay


def _plain(plies: Plies, *, flipped: bool) -> Lay:
    """The allowances flat, perhaps with a tape on the seam, or something in the fold of a band."""
    every = list(enumerate(plies.names))
    straight, folded = (every[1:], every[:1]) if flipped else (every[:1], every[1:])
    filling = taken(plies.making, "filling") if flipped and plies.doubled else None
    deep = len(folded)
    band = max(plies.wide) * _SOME
    strands: list[Strand] = []
    for place, (number, name) in enumerate(folded):
        back = 2 * deep - 1 - place
        nodes = path((ON, place), (0.0, place), (0.0, back), (plies.wide[number], back))
        strands.append(Strand(name, nodes, True))
    for place, (number, name) in enumerate(straight):
        level = place * 2 if filling else place
        end = -band if flipped and plies.doubled else -ON
        nodes = path(
            (end, level), (0.0, level), (0.0, 2 * deep + place), (plies.wide[number], 2 * deep + place)
        )
        strands.append(Strand(name, nodes, True))
    if flipped and plies.doubled:
        nodes = (*reversed(strands[-2].nodes), *strands[-1].nodes)  # both end in the band's fold
        strands[-2:] = [Strand(strands[-2].name, nodes, True)]
    bottom = deep + len(every) - 1
    most = max(plies.wide)
    runs: Runs = frozenset(
        (number, run.number)
        for number, strand in enumerate(strands)
        for run in strand.runs(number)
        if run.layer >= deep and min(run.start, run.end) >= 0.0
    )
    tape = taken(plies.making, "tape")
    wide = length(tape.cut_width) if tape else None
    if tape is not None and wide is not None:
        nodes = path((-wide / 2, bottom + 1), (wide / 2, bottom + 1))
        strands.append(Strand(tape.material, nodes, trim=True))
        runs |= {(len(strands) - 1, 0)}
    if filling is not None:
        wide = length(filling.cut_width) or band
        nodes = path((-band + 1.0, 1), (-max(band - wide, 0.15 * band), 1))
        strands.append(Strand(filling.material, nodes, trim=True))
    marks = {From.RAW: Mark(plies.declared, -1, runs), From.SEAM: Mark(0.0, 1), From.FOLD: Mark(0.0, 1)}
    raw = (CutEdge(most, -1, deep, bottom),)
    return Lay(tuple(strands), marks, runs, raw, widths=_allowed(most))


def _creased(plies: Plies, crease: float) -> Lay:
    """Turned on the row before and creased there: the raw edges lie inside."""
    raw = inset_from(plies.making, From.RAW) or 0.0
    inner = crease - raw
    second = path((ON, 0), (0.0, 0), (0.0, 1), (crease, 1), (crease, 2), (inner, 2))
    first = path((-ON, 0), (0.0, 0), (0.0, 4), (crease, 4), (crease, 3), (inner, 3))
    within = frozenset({(0, 2), (1, 2)})
    every = within | {(0, 1), (1, 1)}
    marks = {From.RAW: Mark(inner, 1, within), From.CREASE: Mark(crease, -1, every)}
    strands = (Strand(plies.names[0], first, True), Strand(plies.names[1], second, True))
    return Lay(strands, marks, every, widths=(Width("seam to crease", 0.0, crease),))


def _felled(plies: Plies) -> Lay:
    """The upper allowance folded over the lower: the narrower, or the one that is trimmed, lies below."""
    fold = length(plies.making.folded) or 0.0
    below = 0 if plies.wide[0] < plies.wide[1] else 1
    above = 1 - below
    upper = plies.wide[above]
    lower = min(plies.wide[below], length(plies.making.trimmed) or plies.wide[below])
    end = upper - 2 * fold
    deep = 2 if end + 1e-6 >= lower else 3
    under = path((ON, 0), (0.0, 0), (0.0, 1), (lower, 1))
    over = path(
        (-ON, 0), (0.0, 0), (0.0, deep), (upper - fold, deep), (upper - fold, deep - 1), (end, deep - 1)
    )
    strands = [Strand(plies.names[below], under, True), Strand(plies.names[above], over, True)]
    first = frozenset({(0, 1), (1, 1)})
    marks = {
        From.RAW: Mark(plies.declared, -1, first),
        From.FOLD: Mark(upper - fold, -1),
        From.SEAM: Mark(0.0, 1),
    }
    every = first | {(1, 2)}
    return Lay(tuple(strands), marks, every, widths=(Width("fell", 0.0, upper - fold),))


def _bound(plies: Plies) -> Lay:
    """Both raw edges in a binding folded in half, which is sewn with them and laid with them."""
    binding = taken(plies.making, "folded-binding")
    most = max(plies.wide)
    wide = (length(binding.cut_width) if binding else None) or 2 * most
    lip = most - wide / 2
    if lip < 0:  # its open edge reaches beyond the seam line and is folded back with the ply
        nodes = path((-lip, 1), (0.0, 1), (0.0, 2), (most, 2), (most, 5), (lip, 5))
        deep = 3
    else:
        nodes = path((lip, 1), (most, 1), (most, 4), (lip, 4))
        deep = 2
    strands = (
        Strand(plies.names[0], path((-ON, 0), (0.0, 0), (0.0, deep + 1), (plies.wide[0], deep + 1)), True),
        Strand(plies.names[1], path((ON, 0), (0.0, 0), (0.0, deep), (plies.wide[1], deep)), True),
        Strand(binding.material if binding else "", nodes, trim=True),
    )
    allowances = frozenset({(0, 1), (1, 1)})
    around = allowances | ({(2, 1), (2, 2)} if lip < 0 else {(2, 0), (2, 1)})
    marks = {
        From.OPEN: Mark(lip, 1, around),
        From.RAW: Mark(plies.declared, -1, allowances),
        From.FOLD: Mark(most, -1),
        From.SEAM: Mark(0.0, 1),
    }
    return Lay(strands, marks, allowances, widths=(Width("binding", lip, most),))


def _into_band(plies: Plies) -> Lay:
    """Allowances up into a folded band, whose further edge is turned in and covers the row inside."""
    first, second, third = plies.wide
    trimmed = length(plies.making.trimmed)
    first, second = (min(one, trimmed) if trimmed else one for one in (first, second))
    band = third * _SOME
    nodes = path(
        (second, 1), (0.0, 1), (0.0, 0), (band, 0), (band, 4), (-_LIP, 4), (-_LIP, 3), (third - _LIP, 3)
    )
    garment = path((-ON, 0), (0.0, 0), (0.0, 2), (first, 2))
    strands = (Strand("first", garment, True), Strand("second", nodes, False))
    sewn = frozenset({(0, 1), (1, 0)})
    marks = {From.RAW: Mark(plies.declared, -1, sewn), From.SEAM: Mark(0.0, 1)}
    widths = (Width("allowance, trimmed" if trimmed else "allowance", 0.0, second),)
    return Lay(strands, marks, sewn | {(1, 3)}, widths=widths)


def _lapped(plies: Plies, *, upper: int) -> Lay:
    """The fold of one edge on the other, both right sides up."""
    lower = 1 - upper
    over, under = plies.wide[upper], plies.wide[lower]
    strands = (
        Strand(plies.names[upper], path((-ON, 0), (0.0, 0), (0.0, 1), (-over, 1)), True),
        Strand(plies.names[lower], path((ON, 2), (-under, 2)), True),
    )
    marks = {From.FOLD: Mark(0.0, -1), From.EDGE: Mark(0.0, -1), From.SEAM: Mark(0.0, -1)}
    raw = (CutEdge(-over, 1, 1, 1), CutEdge(-under, 1, 2, 2))
    return Lay(strands, marks, frozenset({(0, 1)}), raw, widths=_allowed(-over))


def _butted() -> Lay:
    """The two edges beside each other, their allowances cut off as they are sewn."""
    strands = (
        Strand("first", path((-ON, 0), (0.0, 0)), True),
        Strand("second", path((ON, 0), (0.0, 0)), True),
    )
    return Lay(strands, {From.SEAM: Mark(0.0, 1)}, cover=0.0)


def turned(plies: Plies) -> Lay:
    """On each other with the allowances between them; two edges of one piece close to a flat tube."""
    first, second = plies.wide
    trimmed = length(plies.making.trimmed)
    left, right = (min(one, trimmed) if trimmed else one for one in (first, second))
    joined = plies.making.faces != "wrong sides together"
    upper = path((-ON, 0), (0.0, 0), (0.0, 1), (-left, 1))
    lower = path((-ON, 3), (0.0, 3), (0.0, 2), (-right, 2))
    wide = max(first, second) * _SOME
    strands: tuple[Strand, ...] = (
        Strand(plies.names[0], upper, True),
        Strand(plies.names[1], lower, False),
    )
    allowances = frozenset({(0, 1), (1, 1)})
    if plies.alone:
        nodes = (Node(-wide, 0), *upper[1:]), (Node(-wide, 3), *lower[1:])
        strands = (Strand(plies.names[0], (*reversed(nodes[0]), *nodes[1]), False),)
        allowances = frozenset({(0, 0), (0, 3)})
    edge = Mark(0.0, -1)
    marks = {From.SEAM: edge, From.EDGE: edge, From.FOLD: edge, From.OPEN: edge}
    if joined:
        marks[From.RAW] = Mark(-plies.declared, 1, allowances)
    if plies.alone:
        marks[From.CLOSED] = Mark(-wide, 1)
    what = "allowance, trimmed" if trimmed and trimmed < first else "turned in" if not joined else "allowance"
    return Lay(strands, marks, allowances, widths=(Width(what, -left, 0.0),))


def outward(lay: Lay) -> Lay:
    """The same with what lies inside on the outside; the plies keep their right sides outward."""
    low = max(node.layer for strand in lay.strands for node in strand.nodes)
    strands = tuple(
        replace(strand, nodes=tuple(Node(node.x, low - node.layer) for node in strand.nodes))
        for strand in lay.strands
    )
    raw = tuple(CutEdge(edge.x, edge.inward, low - edge.bottom, low - edge.top) for edge in lay.raw)
    return replace(lay, strands=strands, raw=raw)


def _mirrored(lay: Lay) -> Lay:
    """The same seen from the other end."""
    strands = tuple(
        replace(strand, nodes=tuple(Node(-node.x, node.layer) for node in strand.nodes))
        for strand in lay.strands
    )
    marks = {start: Mark(-mark.x, -mark.toward, mark.only) for start, mark in lay.marks.items()}
    raw = tuple(CutEdge(-edge.x, -edge.inward, edge.top, edge.bottom) for edge in lay.raw)
    widths = tuple(Width(width.what, -width.start, -width.end) for width in lay.widths)
    return replace(lay, strands=strands, marks=marks, raw=raw, widths=widths)
