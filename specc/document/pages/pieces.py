"""Owns the pages of the cutting list and of every piece: what to cut, and how each piece looks."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from specc.document.attachments import attached_table, goes, onto
from specc.document.closure_lines import FASTENED
from specc.document.closures import places_on
from specc.document.document import Fact, Facts, Figure, Group, Heading, Page, Paragraph
from specc.document.drawing import Drawing
from specc.document.fullness_table import DRAWN_IN, fullness_table, has_fullness, height_of_table
from specc.document.lengths import Lengths
from specc.document.links import drawn, listed, made
from specc.document.marks import scale_bar
from specc.document.origins import of_edge
from specc.document.piece_drawing import Cutting, nest_drawing, piece_drawing
from specc.document.printed import Printed, traced
from specc.document.table import Align, Column, Row, Table
from specc.document.view import said
from specc.geometry.point import Point
from specc.geometry.tolerance import SAME
from specc.making.attached import Placed
from specc.making.cloths import cloth_of, cut_again, times_again
from specc.model.spreading import STRIPS
from specc.pattern.measure import dart_depth, dart_width, stitched_length
from specc.pattern.piece import Dart

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.making.assembly import CutPiece, EdgeUse, NotchMark
    from specc.pattern.piece import Edge, Piece, TwoPointedDart

_WIDE = 180.0  # of a page between its margins, millimetres of paper
_WIDTH = 118.0
_BELOW = 94.0  # heading, table of edges and one of darts, millimetres of paper
_DRAWN_IN = 36.0  # of a table of what is drawn in that stays with the drawing, millimetres of paper
_NEST_ROOM = Point(80.0, 104.0)
_ABREAST = 2
_PAIR = 2
_CHECK = "Measure these bars: if they are not as long as they say, the sheet was not printed at full size."
_SEWN_ON = (
    "Wide dashes: a piece that is sewn on, as sewn; its drill marks lie 1/8 in (3 mm) inside its corners."
)
_SIGNS = (
    "Wide line: cut. Dashed: stitch. Dotted: fold. Chain line with bent arrows: lay on the fold of the cloth,"
    " do not cut. Arrow with two heads: grain, along the warp. Short stroke at the cut edge: notch; two of"
    " them: double. Cross in a circle: drill mark or thread, short of a dart's tip. Figures beside an edge:"
    " its length as sewn, darts closed."
)


def build(sheet: Sheet) -> Page:
    """The cutting list, bars to check the print by, the nests, and a drawing and a table for every piece."""
    lead = sheet.lengths.both(_lead, sheet.sizes)
    blocks: list[Block] = [_list(sheet), Figure(_print_check(), _CHECK), *_nests(sheet)]
    for piece, cut in zip(sheet.sample.pieces, sheet.sample_quantities.cuts, strict=True):
        blocks += _piece(sheet, piece, cut)
    return Page("pieces", "Cutting list and pieces", lead, tuple(blocks))


def _lead(lengths: Lengths, sizes: tuple[str, ...]) -> str:
    return f"Lengths in {lengths.word}, to the nearest {lengths.step}. Sizes {', '.join(sizes)}."


def _print_check() -> Drawing:
    """Bars of 100 millimetres and of 4 inches at full size."""
    full = Fraction(1)
    bars = (
        *scale_bar(Point(1.0, 1.0), full, Lengths("mm")),
        *scale_bar(Point(1.0, 9.0), full, Lengths("in")),
    )
    return Drawing("print-check", "Bars to check the size of the print", 112.0, 16.0, full, bars)


def how_cut(piece: Piece) -> str:
    """How a piece is cut, in words."""
    if piece.fold:
        return f"on the fold along {piece.fold}"
    if piece.cut % 2:
        return "single" if piece.cut == 1 else "alike"
    return "mirrored pair" if piece.cut == _PAIR else f"{piece.cut // _PAIR} mirrored pairs"


def _list(sheet: Sheet) -> Table:
    columns = (
        Column("Piece", width=30.0),
        Column("Cut", Align.RIGHT, width=12.0),
        Column("How", width=44.0),
        Column("From", width=52.0),
        Column("Edges without allowance"),
    )
    rows = tuple(row for piece in sheet.sample.pieces for row in _listed(sheet, piece))
    return Table("cutting-list", "", columns, rows)


def _listed(sheet: Sheet, piece: Piece) -> Iterator[Row]:
    """The piece, and below it what else it is cut from."""
    bare = ", ".join(_bare(sheet, piece))
    again = cut_again(sheet.garment, piece.name)
    cells = (_named(piece), str(piece.cut), how_cut(piece), _cloth(sheet, piece), bare)
    yield Row(cells, with_next=bool(again))
    for index, ply in enumerate(again, start=1):
        once_more = replace(piece, cut=times_again(ply, piece))
        edges = "all" if ply.bare else bare
        cells = ("", str(once_more.cut), how_cut(once_more), sheet.title_of(ply.cloth), edges)
        yield Row(cells, with_next=index < len(again))


def _cloth(sheet: Sheet, piece: Piece) -> str:
    cloth = cloth_of(sheet.garment, piece.name)
    if cloth is None:
        return ""
    return f"{cloth.title}, off strips" if cloth.spreading.way_of(piece.name) == STRIPS else cloth.title


def _bare(sheet: Sheet, piece: Piece) -> Iterator[str]:
    for use in sheet.sample.uses:
        if use.piece == piece.name and use.kind != "fold" and use.allowance == 0.0:
            yield use.edge


def _nests(sheet: Sheet) -> Iterator[Block]:
    """Every piece in all sizes, a few abreast."""
    if len(sheet.sizes) == 1:
        return
    figures = tuple(_nest(sheet, piece) for piece in sheet.sample.pieces)
    rows = tuple(
        Group("beside", figures[at : at + _ABREAST], first=_WIDE / _ABREAST)
        for at in range(0, len(figures), _ABREAST)
    )
    laid = f"As sewn, laid on each other as drafted. The wider line is size {sheet.header.sample}."
    yield Group("together", (Heading("All sizes"), Paragraph(laid, "note"), *rows[:1]))
    yield from rows[1:]


def _nest(sheet: Sheet, piece: Piece) -> Figure:
    sizes = tuple(zip(sheet.sizes, sheet.in_sizes(piece.name), strict=True))
    drawing = nest_drawing(sizes, sheet.header.sample, sheet.lengths, room=_NEST_ROOM)
    return Figure(drawing, f"{_named(piece)}, sizes {sheet.sizes[0]} to {sheet.sizes[-1]}, {_scale(drawing)}")


def _piece(sheet: Sheet, piece: Piece, cut: CutPiece) -> Iterator[Block]:
    drawing = _drawing(sheet, piece, cut)
    caption = f"Size {sheet.header.sample}, {_scale(drawing)}"
    figure = Figure(drawing, Printed(caption, f"{caption}; its lengths in {sheet.lengths.word}"))
    takes = any(isinstance(one, Placed) for _, one in onto(sheet, piece.name))
    signs = f"{_SIGNS} {_SEWN_ON}" if takes else _SIGNS
    if places_on(sheet, piece.name):
        signs = f"{signs} {FASTENED}"
    if has_fullness(piece):
        signs = f"{signs} {DRAWN_IN}"
    said = Group("stack", (Facts(tuple(_facts(sheet, piece))), Paragraph(signs, "note")))
    title = Heading(_named(piece), detail=f"size {sheet.header.sample}", place=drawn(piece.name))
    beside = Group("beside", (figure, said), first=_WIDTH + 6.0)
    tables = (*_edges(sheet, piece), *_darts(sheet, piece), *attached_table(sheet, piece.name))
    drawn_in = tuple(fullness_table(sheet, piece))
    if _drawn_in(piece):
        yield Group("together", (title, beside, *tables, *drawn_in))
    else:
        yield Group("together", (title, beside, *tables))
        yield from drawn_in


def _drawn_in(piece: Piece) -> float:
    """How much of the page the table of what is drawn in takes; nothing where it may go on to the next."""
    height = height_of_table(piece)
    return height if height <= _DRAWN_IN else 0.0


def _facts(sheet: Sheet, piece: Piece) -> Iterator[Fact]:
    yield Fact("Cut", f"{piece.cut}, {how_cut(piece)}")
    yield Fact("From", _cloth(sheet, piece))
    for ply in cut_again(sheet.garment, piece.name):
        bare = ", without allowance" if ply.bare else ""
        yield Fact("Also from", f"{sheet.title_of(ply.cloth)}, {times_again(ply, piece)}{bare}")
    for edge in piece.edges:
        marks = [mark for mark in _notches(sheet, piece) if mark.edge == edge.name]
        if marks:
            yield Fact(f"Notches, {edge.name}", sheet.lengths.both(_where, edge, marks))


def _notches(sheet: Sheet, piece: Piece) -> tuple[NotchMark, ...]:
    return tuple(mark for mark in sheet.sample.notches if mark.piece == piece.name)


def _where(lengths: Lengths, edge: Edge, marks: list[NotchMark]) -> str:
    """How far from the edge's start, and at which of its corners; of a fold, where it begins."""
    whole, said = stitched_length(edge), []
    between = [mark for mark in marks if SAME < mark.at < whole - SAME and not mark.within]
    if between:
        places = (f"{lengths.said(mark.at)}{_double(mark)}" for mark in between)
        said.append(f"{', '.join(places)} from {edge.start}")
    at_ends = [mark for mark in marks if mark not in between and not mark.within]
    said += (f"at {edge.start if mark.at <= SAME else edge.end}{_double(mark)}" for mark in at_ends)
    return "; ".join(said)


def _double(mark: NotchMark) -> str:
    return " (double)" if mark.double else ""


def _drawing(sheet: Sheet, piece: Piece, cut: CutPiece) -> Drawing:
    uses = {use.edge: use for use in sheet.sample.uses if use.piece == piece.name}
    header = sheet.header
    revision = f", revision {header.revisions[-1].name}" if header.revisions else ""
    lines = (
        _named(piece),
        f"{header.style}{revision}, size {header.sample}",
        f"cut {piece.cut}, {how_cut(piece)}",
        *filter(None, (_cloth(sheet, piece),)),
        *(
            f"and {times_again(ply, piece)} from {sheet.title_of(ply.cloth)}"
            for ply in cut_again(sheet.garment, piece.name)
        ),
    )
    room = Point(_WIDTH, sheet.page_height - _BELOW - _drawn_in(piece))
    titles = onto(sheet, piece.name)
    places = places_on(sheet, piece.name)
    cutting = Cutting(piece, cut, _notches(sheet, piece), uses, lines, titles, places)
    return piece_drawing(cutting, sheet.lengths, room=room)


def _edges(sheet: Sheet, piece: Piece) -> Iterator[Table]:
    columns = (
        Column("Edge", width=22.0),
        *sheet.size_columns("As sewn, in size", width=13.0),
        Column("Allowance", Align.RIGHT, width=17.0),
        Column("Goes into"),
    )
    rows = []
    for edge in piece.edges:
        use = sheet.use_of(piece.name, edge.name)
        lengths = tuple(
            traced(
                sheet.lengths.near_in_both(stitched_length(other)),
                of_edge(sheet, piece.name, edge.name, size),
            )
            for size, each in enumerate(sheet.in_sizes(piece.name))
            for other in each.edges
            if other.name == edge.name
        )
        allowance = _allowance(sheet, use)
        cells = (edge.name, *lengths, allowance)
        to = made(use.by) if use is not None and use.by is not None else ""
        into, links = listed((("" if use is None else _goes(sheet, use.kind, use.by), to),), of=len(cells))
        rows.append(Row((*cells, into), links=links))
    yield Table(f"edges-{piece.name}", "", columns, tuple(rows))


def _allowance(sheet: Sheet, use: EdgeUse | None) -> Text:
    if use is None or use.kind == "fold":
        return ""
    return sheet.lengths.both(Lengths.fine, use.allowance) if use.allowance else "none"


def _goes(sheet: Sheet, kind: str, by: str | None) -> str:
    if kind in ("fold", "none"):
        return "fold of the cloth" if kind == "fold" else "nothing"
    if kind == "attachment":
        return goes(sheet, by)
    made = sheet.made_by(by)
    return f"{kind} {by}: {made.making.title}" if made else f"{kind} {by}"


def _darts(sheet: Sheet, piece: Piece) -> Iterator[Table]:
    darts = _of(piece)
    if not darts:
        return
    columns = (
        Column("Dart"),
        Column("On", width=30.0),
        *sheet.size_columns("Takes in, in size"),
        Column(f"Deep, size {sheet.header.sample}", Align.RIGHT, width=30.0),
    )
    rows = []
    for dart in darts:
        widths = tuple(
            sheet.lengths.near_in_both(dart_width(other))
            for each in sheet.in_sizes(piece.name)
            for other in _of(each)
            if other.name == dart.name
        )
        edge = dart.edge if isinstance(dart, Dart) else "inside"
        rows.append(Row((dart.name, edge, *widths, sheet.lengths.near_in_both(dart_depth(dart)))))
    yield Table(f"darts-{piece.name}", "", columns, tuple(rows))


def _of(piece: Piece) -> tuple[Dart | TwoPointedDart, ...]:
    return (*piece.darts, *piece.two_pointed)


def _named(piece: Piece) -> str:
    return piece.title[:1].upper() + piece.title[1:]


def _scale(drawing: Drawing) -> str:
    return f"scale {said(drawing.scale)}" if drawing.scale else "not to one scale"
