"""Owns the pages of the cutting list and of every piece: what to cut, and how each piece looks."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.document.document import Figure, Group, Heading, Page, Paragraph
from specc.document.drawing import Drawing
from specc.document.marks import scale_bar
from specc.document.piece_drawing import nest_drawing, piece_drawing
from specc.document.table import Align, Column, Row, Table
from specc.document.view import said
from specc.geometry.point import Point
from specc.making.cloths import cloth_of
from specc.pattern.measure import dart_depth, dart_width, stitched_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.sheet import Sheet
    from specc.making.assembly import CutPiece
    from specc.pattern.piece import Piece

_ROOM = Point(118.0, 152.0)
_NEST_ROOM = Point(56.0, 110.0)
_SIGNS = (
    "Wide line: cut. Dashed: stitch. Chain line with bent arrows: lay on the fold of the cloth, do not cut."
    " Arrow with two heads: grain, along the warp. Short stroke across an edge: notch. Cross in a circle: drill mark"
    " or its thread. Figures beside an edge: its length as sewn, darts closed."
)


def build(sheet: Sheet) -> Page:
    """The cutting list, a bar to check the print by, and a drawing and a table for every piece."""
    lead = f"Lengths in {sheet.lengths.word}, to the nearest {sheet.lengths.step}. Sizes {', '.join(sheet.sizes)}."
    blocks: list[Block] = [_list(sheet), Figure(print_check(sheet), "Printed at full size, this bar is as long as it says.")]
    blocks.append(Paragraph(_SIGNS, "note"))
    for piece, cut in zip(sheet.sample.pieces, sheet.sample_quantities.cuts, strict=True):
        blocks += _piece(sheet, piece, cut)
    return Page("pieces", "Cutting list and pieces", lead, tuple(blocks))


def drawings(sheet: Sheet) -> tuple[Drawing, ...]:
    """The drawings of the pieces in the sample size, to be handed out as files too."""
    pairs = zip(sheet.sample.pieces, sheet.sample_quantities.cuts, strict=True)
    return tuple(_drawing(sheet, piece, cut) for piece, cut in pairs)


def print_check(sheet: Sheet) -> Drawing:
    """A bar of 4 inches or 100 millimetres at full size."""
    bar = scale_bar(Point(1.0, 1.0), Fraction(1), sheet.lengths)
    return Drawing("print-check", "A bar to check the size of the print", 112.0, 8.0, Fraction(1), bar)


def how_cut(piece: Piece) -> str:
    """How a piece is cut, in words."""
    if piece.fold:
        return f"{piece.fold} on the fold"
    return "pairs, right and left" if piece.cut % 2 == 0 else "single"


def _list(sheet: Sheet) -> Table:
    columns = (
        Column("Piece"),
        Column("Cut", Align.RIGHT),
        Column("How"),
        Column("From"),
        Column("Edges without allowance"),
    )
    rows = tuple(
        Row((_named(piece), str(piece.cut), how_cut(piece), _cloth(sheet, piece), ", ".join(_bare(sheet, piece))))
        for piece in sheet.sample.pieces
    )
    return Table("cutting-list", "", columns, rows)


def _cloth(sheet: Sheet, piece: Piece) -> str:
    cloth = cloth_of(sheet.garment, piece.name)
    return cloth.title if cloth else ""


def _bare(sheet: Sheet, piece: Piece) -> Iterator[str]:
    for use in sheet.sample.uses:
        if use.piece == piece.name and use.kind != "fold" and use.allowance == 0.0:
            yield use.edge


def _piece(sheet: Sheet, piece: Piece, cut: CutPiece) -> Iterator[Block]:
    drawing = _drawing(sheet, piece, cut)
    nest = nest_drawing(_sizes(sheet, piece), sheet.header.sample, sheet.lengths, room=_NEST_ROOM)
    figures = [Figure(drawing, f"Size {sheet.header.sample}, {_scale(drawing)}")]
    if len(sheet.sizes) > 1:
        figures.append(Figure(nest, f"Sizes {sheet.sizes[0]} to {sheet.sizes[-1]} as sewn, {_scale(nest)}"))
    title = Heading(_named(piece), detail=f"cut {piece.cut}, {how_cut(piece)}")
    yield Group("together", (title, Group("beside", tuple(figures)), *_edges(sheet, piece), *_darts(sheet, piece)))


def _drawing(sheet: Sheet, piece: Piece, cut: CutPiece) -> Drawing:
    allowances = {use.edge: use.allowance for use in sheet.sample.uses if use.piece == piece.name}
    header = sheet.header
    revision = f", revision {header.revisions[-1].name}" if header.revisions else ""
    lines = (
        _named(piece),
        f"cut {piece.cut}, {how_cut(piece)}",
        f"size {header.sample}",
        f"{header.style}{revision}",
    )
    return piece_drawing(piece, cut, allowances, sheet.lengths, room=_ROOM, lines=lines)


def _edges(sheet: Sheet, piece: Piece) -> Iterator[Table]:
    columns = (
        Column("Edge"),
        *(Column(size, Align.RIGHT, over="As sewn, in size", strong=sheet.is_sample(size)) for size in sheet.sizes),
        Column("Allowance", Align.RIGHT),
        Column("Goes into"),
    )
    rows = []
    for edge in piece.edges:
        use = sheet.use_of(piece.name, edge.name)
        lengths = tuple(
            sheet.lengths.near(stitched_length(other))
            for each in sheet.in_sizes(piece.name)
            for other in each.edges
            if other.name == edge.name
        )
        allowance = "" if use is None or use.kind == "fold" else sheet.lengths.fine(use.allowance)
        goes = "" if use is None else _goes(sheet, use.kind, use.by)
        rows.append(Row((edge.name, *lengths, allowance, goes)))
    yield Table(f"edges-{piece.name}", "", columns, tuple(rows))


def _goes(sheet: Sheet, kind: str, by: str | None) -> str:
    if kind == "fold":
        return "fold of the cloth"
    return "nothing" if kind == "none" else f"{kind} {by}: {making}" if (making := _making(sheet, by)) else f"{kind} {by}"


def _making(sheet: Sheet, by: str | None) -> str:
    each = next((each for each in (*sheet.garment.seams, *sheet.garment.finishes) if each.name == by), None)
    return each.making.title if each else ""


def _darts(sheet: Sheet, piece: Piece) -> Iterator[Table]:
    darts = (*piece.darts, *piece.two_pointed)
    if not darts:
        return
    columns = (
        Column("Dart"),
        Column("On"),
        *(Column(size, Align.RIGHT, over="Takes in, in size", strong=sheet.is_sample(size)) for size in sheet.sizes),
        Column(f"Deep, size {sheet.header.sample}", Align.RIGHT),
    )
    rows = []
    for dart in darts:
        widths = tuple(
            sheet.lengths.near(dart_width(other))
            for each in sheet.in_sizes(piece.name)
            for other in (*each.darts, *each.two_pointed)
            if other.name == dart.name
        )
        rows.append(Row((dart.name, getattr(dart, "edge", "inside"), *widths, sheet.lengths.near(dart_depth(dart)))))
    yield Table(f"darts-{piece.name}", "", columns, tuple(rows))


def _sizes(sheet: Sheet, piece: Piece) -> tuple[tuple[str, Piece], ...]:
    return tuple(zip(sheet.sizes, sheet.in_sizes(piece.name), strict=True))


def _named(piece: Piece) -> str:
    return piece.title[:1].upper() + piece.title[1:]


def _scale(drawing: Drawing) -> str:
    return f"scale {said(drawing.scale)}" if drawing.scale else "not to one scale"
