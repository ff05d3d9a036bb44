"""Owns the words that say where the numbers of a table come from: which were joined, and how.

Knows nothing of pages; every figure in the words was computed by the stages before.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.alteration.record import SAME_LENGTH
from specc.document.lengths import millimetres
from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_length
from specc.units import Dimension, format_ratio

if TYPE_CHECKING:
    from specc.alteration.record import EdgeChange
    from specc.document.lengths import Lengths
    from specc.document.printed import Origin
    from specc.document.sheet import Sheet
    from specc.making.assembly import EdgeLength, Walk, Zone
    from specc.model.expression import Expression
    from specc.quantities.quantities import Term, TrimCut


def written(expression: Expression) -> str:
    """An expression as it stands in the text, on one line."""
    return " ".join(expression.origin.text.split())


def of_point(sheet: Sheet, place: int, size: int) -> Origin:
    """A point of measure: what it asks for, and what each part of that came to."""
    asked, point = sheet.garment.measures[place], sheet.quantities.points_of_measure[place]
    words = sheet.lengths.both(_calculated, written(asked.value), point.terms, size)
    return sheet.origin(words, asked.origin)


def _calculated(lengths: Lengths, text: str, terms: tuple[Term, ...], size: int) -> str:
    parts = (f"{term.text} is {_said(lengths, term.values[size], term.dimension)}" for term in terms)
    return f"{text}, where {', '.join(parts)}" if terms else text


def _said(lengths: Lengths, value: float, dimension: Dimension) -> str:
    return lengths.said(value) if dimension == Dimension.LENGTH else lengths.figure(value, dimension)


def of_step(sheet: Sheet, place: int, size: int) -> Origin:
    """A grade step: what the next size measures less what this one does."""
    point = sheet.quantities.points_of_measure[place]
    before, after = point.values[size], point.values[size + 1]
    words = sheet.lengths.both(_step, (before, after), point.dimension)
    return sheet.origin(words, sheet.garment.measures[place].origin)


def _step(lengths: Lengths, values: tuple[float, float], dimension: Dimension) -> str:
    before, after = (_said(lengths, value, dimension) for value in values)
    return f"{after} less {before}"


def of_demand(sheet: Sheet, place: int) -> Origin:
    """What the designer demands something of."""
    asked = sheet.garment.expects[place]
    return sheet.origin(written(asked.left), asked.origin)


def of_side(sheet: Sheet, seam: int, edges: tuple[EdgeLength, ...]) -> Origin:
    """A side of a seam: the edges it is made of."""
    return sheet.origin(sheet.lengths.both(_side, edges), sheet.garment.seams[seam].origin)


def _side(lengths: Lengths, edges: tuple[EdgeLength, ...]) -> str:
    parts = (
        f"{f'{edge.times} × ' if edge.times > 1 else ''}{edge.piece}.{edge.edge} {lengths.said(edge.length)}"
        for edge in edges
    )
    return f"{' + '.join(parts)}, as sewn"


def of_rest(sheet: Sheet, seam: int, walk: Walk) -> Origin:
    """What is left over of a seam: one side less the other, less the ease."""
    if walk.worst == walk.difference:
        ease = f" less {millimetres(walk.ease)} mm of ease" if walk.ease else ""
        first, second = millimetres(walk.first_length), millimetres(walk.second_length)
        words = f"first side {first} mm less second side {second} mm{ease}"
    else:
        ply = next(ply for ply in walk.others if ply.difference == walk.worst)
        second = millimetres(walk.second_length)
        words = f"further ply {millimetres(ply.length)} mm less second side {second} mm"
    return sheet.origin(words, sheet.garment.seams[seam].origin)


def of_zone(sheet: Sheet, cut: TrimCut, zone: Zone, size: int) -> Origin | None:
    """A stretch along which a trim is laid: where it lies on its edge."""
    pieces = (piece for piece in sheet.assembly.sizes[size].pieces if piece.name == zone.piece)
    edges = (edge_named(piece, zone.edge) for piece in pieces)
    whole = next((stitched_length(edge) for edge in edges if edge is not None), None)
    if whole is None:
        return None
    return sheet.origin(sheet.lengths.both(_stretch, zone, whole), sheet.asked(cut.used_on))


def _stretch(lengths: Lengths, zone: Zone, whole: float) -> str:
    if zone.start == 0.0 and abs(zone.end - whole) <= SAME_LENGTH:
        return f"the whole of {zone.piece}.{zone.edge} as sewn, {lengths.fine(whole)}"
    start, end, all_of_it = (lengths.fine(each) for each in (zone.start, zone.end, whole))
    return f"{zone.piece}.{zone.edge} from {start} to {end} of its {all_of_it} as sewn"


def of_seam_line(sheet: Sheet, cut: TrimCut) -> Origin:
    """The seam line of a trim: its stretches one after the other."""
    lengths = tuple(zone.end - zone.start for zone in cut.zones)
    return sheet.origin(sheet.lengths.both(_sum, lengths), sheet.asked(cut.used_on))


def _sum(lengths: Lengths, parts: tuple[float, ...]) -> str:
    return " + ".join(map(lengths.fine, parts))


def of_held(sheet: Sheet, cut: TrimCut) -> Origin:
    """What is held in of a trim: a share of some stretches."""
    return sheet.origin(sheet.lengths.both(_held, cut.zones), sheet.asked(cut.used_on))


def _held(lengths: Lengths, zones: tuple[Zone, ...]) -> str:
    parts = (
        f"{format_ratio(zone.held)} of {lengths.fine(zone.end - zone.start)}" for zone in zones if zone.held
    )
    return f"held in: {' + '.join(parts)}"


def of_cut_length(sheet: Sheet, cut: TrimCut) -> Origin:
    """The length to which a trim is cut: what is sewn to, less what is held in, with all that is added."""
    return sheet.origin(sheet.lengths.both(_cut_length, cut), sheet.asked(cut.used_on))


def _cut_length(lengths: Lengths, cut: TrimCut) -> str:
    said = lengths.fine
    base = f"length stated {said(cut.seam_length - cut.held)}" if cut.stated else _sewn_to(lengths, cut)
    added = "".join(f" + {said(each.length)} {each.what}" for each in cut.additions)
    return f"{base}{added}, rounded up to the next {lengths.step}"


def _sewn_to(lengths: Lengths, cut: TrimCut) -> str:
    held = f" less {lengths.fine(cut.held)} held in" if cut.held else ""
    return f"seam line {lengths.fine(cut.seam_length)}{held}"


def of_edge(sheet: Sheet, piece: str, edge: str, size: int, until: int | None = None) -> Origin | None:
    """An edge as sewn: as drafted, and what each alteration made of it, the first `until` of them.

    None where it was neither drafted under that name nor made by an alteration.
    """
    changes = tuple(
        (number, change)
        for number, step in enumerate(sheet.assembly.alterations[:until])
        for change in step.records[size].edges
        if (change.piece, change.edge) == (piece, edge) and _is_another(change)
    )
    if changes:
        words = sheet.lengths.both(_history, changes)
        return sheet.origin(words, sheet.garment.alterations[changes[-1][0]].origin)
    drafts = (draft for block in sheet.garment.blocks for draft in block.pieces if draft.name == piece)
    drafted = next((each.origin for draft in drafts for each in draft.edges if each.name == edge), None)
    return None if drafted is None else sheet.origin(f"{piece}.{edge} as drafted", drafted)


def _is_another(change: EdgeChange) -> bool:
    """Whether the edge is longer or shorter as sewn, or was not there, or is no longer."""
    before, after = change.before, change.after
    return before is None or after is None or abs(after - before) > SAME_LENGTH


def _history(lengths: Lengths, changes: tuple[tuple[int, EdgeChange], ...]) -> str:
    first = changes[0][1]
    said = [f"{first.piece}.{first.edge}"]
    if first.before is not None:
        said.append(f"{lengths.said(first.before)} as drafted")
    for number, change in changes:
        made = "left out" if change.after is None else lengths.said(change.after)
        said.append(f"{made} after alteration {number + 1}")
    return ", ".join(said)


def of_change(sheet: Sheet, step: int, before: float, after: float) -> Origin:
    """How an alteration changed a length."""
    words = sheet.lengths.both(_change, before, after)
    return sheet.origin(words, sheet.garment.alterations[step].origin)


def _change(lengths: Lengths, before: float, after: float) -> str:
    return f"{lengths.said(after)} after less {lengths.said(before)} before"
