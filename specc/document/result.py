"""Owns the whole result for programs, as a tree of plain values: what `result.json` holds.

Knows nothing of JSON. Lengths are millimetres under names that end in `_mm`, areas square millimetres.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics.render_json import as_data
from specc.document.bias_data import bias_data
from specc.document.closure_data import closure_data, fastening_data, opening_data
from specc.document.data import Members
from specc.document.drawn_in_data import drawn_in_data
from specc.document.lay_data import lay_data
from specc.document.pages.source import digest
from specc.document.record_data import record_data
from specc.document.thread_data import thread_data
from specc.making.attached import CaughtAt
from specc.pattern.measure import drawn_length, stitched_length
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Diagnostic
    from specc.document.data import Value
    from specc.document.sheet import Sheet
    from specc.geometry.point import Point
    from specc.making.assembly import CutPiece, EdgeLength, NotchMark, SizeAssembly, StepRecords, Walk, Zone
    from specc.making.attached import Attached
    from specc.model.garment import Accept
    from specc.pattern.piece import Edge, Piece
    from specc.quantities.quantities import BillLine, SizeQuantities, TrimCut

VERSION = 1


def result(sheet: Sheet) -> Members:
    """The tree; its schema is specc/backends/result.schema.json."""
    sizes = zip(sheet.assembly.sizes, sheet.quantities.sizes, strict=True)
    return Members(
        (
            ("version", VERSION),
            ("program", f"specc {sheet.version}"),
            ("priced", sheet.quantities.priced),
            ("garment", _garment(sheet)),
            ("sizes", Members(tuple((made.size, _size(sheet, made, taken)) for made, taken in sizes))),
            ("alterations", tuple(_alteration(sheet, step) for step in sheet.assembly.alterations)),
            ("lays", lay_data(sheet)),
            ("bias_strips", tuple(bias_data(plan) for plan in sheet.quantities.bias)),
            ("bill_of_materials", tuple(_line(sheet, line) for line in sheet.quantities.bill)),
            (
                "diagnostics",
                tuple(_frozen(as_data(each, as_called=False)) for each in sheet.judgement.standing),
            ),
            ("accepted", tuple(_accepted(each.diagnostic, each.accept) for each in sheet.judgement.accepted)),
        )
    )


def _garment(sheet: Sheet) -> Members:
    header = sheet.header
    last = header.revisions[-1] if header.revisions else None
    return Members(
        (
            ("style", header.style),
            ("title", header.title),
            ("revision", last.name if last else None),
            ("status", header.status),
            ("sample_size", header.sample),
            ("unit", header.unit),
            ("order", Members(tuple((each.size, each.count) for each in header.order))),
            (
                "sources",
                tuple(Members((("file", f.name), ("sha256", digest(f)))) for f in sheet.files),
            ),
        )
    )


def _size(sheet: Sheet, made: SizeAssembly, taken: SizeQuantities) -> Members:
    pieces = zip(made.pieces, taken.cuts, strict=True)
    dimensions = {point.name: point.dimension for point in sheet.quantities.points_of_measure}
    return Members(
        (
            ("pieces", Members(tuple((piece.name, _piece(piece, cut)) for piece, cut in pieces))),
            ("seams", Members(tuple((walk.seam, _walk(walk)) for walk in made.walks))),
            ("attachments", Members(tuple((one.attachment, _attached(one)) for one in made.attached))),
            ("notches", tuple(_notch(mark) for mark in made.notches)),
            ("closures", Members(tuple((one.closure, closure_data(one)) for one in made.closures))),
            ("openings", tuple(opening_data(one) for one in made.openings)),
            ("openings_worn", tuple(opening_data(one) for one in made.worn)),
            ("trims", tuple(_trim(cut) for cut in taken.trims)),
            ("fastenings", tuple(fastening_data(one) for one in taken.pieces)),
            ("threads", tuple(thread_data(use) for use in taken.threads)),
            ("measures", Members(tuple((_measure(m.name, dimensions), m.value) for m in taken.measures))),
            (
                "cloths",
                Members(tuple((use.cloth, Members((("area_mm2", use.area),))) for use in taken.cloths)),
            ),
        )
    )


def _measure(name: str, dimensions: Mapping[str, Dimension]) -> str:
    return f"{name}_mm" if dimensions.get(name) == Dimension.LENGTH else name


def _piece(piece: Piece, cut: CutPiece) -> Members:
    return Members(
        (
            ("title", piece.title),
            ("cut", piece.cut),
            ("on_fold", piece.fold is not None),
            ("fold", piece.fold),
            ("net_outline", _closed(cut.net)),
            ("cut_outline", _closed(cut.cut)),
            ("area_mm2", cut.net_area),
            ("cut_area_mm2", cut.cut_area),
            ("edges", Members(tuple((edge.name, _edge(edge)) for edge in piece.edges))),
        )
    )


def _closed(points: tuple[Point, ...]) -> Value:
    return tuple((point.x, point.y) for point in (*points, points[0]))


def _edge(edge: Edge) -> Members:
    return Members(
        (
            ("stitched_mm", stitched_length(edge)),
            ("drawn_mm", drawn_length(edge)),
            *drawn_in_data(edge),
        )
    )


def _walk(walk: Walk) -> Members:
    return Members(
        (
            ("first", _side(walk.first)),
            ("second", _side(walk.second)),
            ("first_mm", walk.first_length),
            ("second_mm", walk.second_length),
            ("ease_mm", walk.ease),
            ("difference_mm", walk.difference),
            ("tolerance_mm", walk.tolerance),
            ("count", walk.count),
            (
                "others",
                tuple(
                    Members(
                        (
                            ("edges", _side(ply.edges)),
                            ("length_mm", ply.length),
                            ("difference_mm", ply.difference),
                        )
                    )
                    for ply in walk.others
                ),
            ),
        )
    )


def _attached(one: Attached) -> Members:
    common = (("places", one.places), ("across_fold", one.across_fold))
    if isinstance(one, CaughtAt):
        return Members(
            (
                ("to", f"{one.piece}.{one.edge}"),
                ("ends", one.ends),
                *common,
                ("start_mm", one.start),
                ("end_mm", one.end),
            )
        )
    return Members(
        (
            ("on", one.on),
            ("piece", one.piece),
            *common,
            ("sewn_edges", one.edges),
            ("outline", _closed(one.outline.flattened()[:-1])),
            ("drill_marks", tuple((drill.x, drill.y) for drill in one.drills)),
        )
    )


def _notch(mark: NotchMark) -> Members:
    return Members(
        (
            ("piece", mark.piece),
            ("edge", mark.edge),
            ("at_mm", mark.at),
            ("within_fold_mm", mark.within),
            ("double", mark.double),
            ("reason", mark.reason.value),
        )
    )


def _side(edges: tuple[EdgeLength, ...]) -> Value:
    return tuple(
        Members(
            (
                ("piece", each.piece),
                ("edge", each.edge),
                ("stitched_mm", each.length),
                ("times", each.times),
            )
        )
        for each in edges
    )


def _trim(cut: TrimCut) -> Members:
    return Members(
        (
            ("trim", cut.trim),
            ("used_on", cut.used_on),
            ("count", cut.count),
            ("closed", cut.closed),
            ("zones", tuple(map(_zone, cut.zones))),
            ("seam_mm", cut.seam_length),
            ("held_mm", cut.held),
            ("stated", cut.stated),
            ("additions", tuple(Members((("what", a.what), ("length_mm", a.length))) for a in cut.additions)),
            ("cut_length_mm", cut.cut_length),
            ("cut_width_mm", cut.cut_width),
        )
    )


def _zone(zone: Zone) -> Members:
    return Members(
        (
            ("piece", zone.piece),
            ("edge", zone.edge),
            ("start_mm", zone.start),
            ("length_mm", zone.end - zone.start),
            ("held", zone.held),
        )
    )


def _alteration(sheet: Sheet, step: StepRecords) -> Members:
    records = zip(sheet.sizes, step.records, strict=True)
    return Members(
        (
            ("line", step.line),
            ("sentence", step.sentence),
            ("sizes", Members(tuple((size, record_data(record)) for size, record in records))),
        )
    )


def _accepted(said: Diagnostic, accept: Accept) -> Members:
    return Members(
        (("code", said.code.id), ("message", said.message), ("on", accept.on), ("because", accept.because))
    )


def _line(sheet: Sheet, line: BillLine) -> Members:
    sizes = zip(sheet.sizes, line.per_garment, strict=bool(line.per_garment))
    return Members(
        (
            ("kind", line.kind),
            ("name", line.name),
            ("title", line.title),
            ("used_on", line.used_on),
            ("unit", line.unit),
            ("per_garment", Members(tuple(sizes))),
            ("order", line.order),
            ("waste", line.waste),
            ("gross", line.gross),
            ("buy", line.buy),
            ("buy_unit", line.buy_unit),
            ("price", None if line.price is None else float(line.price)),
            ("currency", line.currency),
            ("cost", None if line.cost is None else float(line.cost)),
            ("basis", line.basis),
            ("colour", line.colour),
            ("colourways", line.colourways),
        )
    )


def _frozen(value: object) -> Value:
    """JSON values of another module as a frozen tree."""
    if isinstance(value, dict):
        return Members(tuple((str(name), _frozen(part)) for name, part in value.items()))
    if isinstance(value, list):
        return tuple(_frozen(part) for part in value)
    assert value is None or isinstance(value, str | int | float | bool)
    return value
