"""Owns the page of bias strips: from which cloth, in which way, how many, and where joins come."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.bias_drawing import bias_drawing
from specc.document.document import Fact, Facts, Figure, Group, Heading, Page, Paragraph
from specc.document.lengths import Lengths
from specc.document.links import billed, listed
from specc.document.sheet import plural
from specc.document.table import Align, Column, Row, Table
from specc.document.tube_drawing import tube_drawing
from specc.geometry.point import Point
from specc.laying.bias import ALLOWANCE, CLEAR, lost_by_join
from specc.model.spreading import JOINED, OFFCUTS, TUBED, WHOLE

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.quantities.quantities import BiasPlan

_ROOM = Point(186.0, 84.0)  # for the drawing, millimetres of paper
_FOLD = "Fold one corner of the cloth over so that the cut end lies along the selvage: the fold is the bias."
_HOW = {
    JOINED: f"{_FOLD} Cut strips along it, full ones first. Join them on the straight grain, right sides"
    " together, the ends crossing so that their points stand out by one allowance; press the joins open. Cut"
    " the pieces off the run in the order below.",
    WHOLE: f"{_FOLD} Cut strips along it and every piece whole from one of them, the longest first: no piece"
    " has a join.",
    TUBED: "Cut the square on a diagonal and sew the two halves together on the straight grain, so that a"
    " parallelogram results. Mark strips along its bias edges, sew the other two edges to a tube, one strip"
    " offset, and cut round and round.",
    OFFCUTS: "Cut the strips that are hatched on the lays from what the pieces leave over, the longest first,"
    " and cut the pieces off them in the order below. It holds for lays that are cut as they are drawn.",
}
_TUBE = (
    "Within the seams. Dashed: the first seam. Equal numbers meet in the second seam, which so lies one strip"
    " off; what is shaded is cut away."
)
_WHOLE = "A piece is cut whole where it can be, since a join would show in it."
# Common practice, no source; the join as in school books of sewing before 1930.
_TRUE = "True bias lies at 45 degrees to the grain. Measure a strip's width square to the cut."


def build(sheet: Sheet) -> Page | None:
    """A part for each width of each bias trim; nothing where none is cut from a cloth."""
    plans = sheet.quantities.bias
    if not plans:
        return None
    blocks = tuple(block for number, plan in enumerate(plans, 1) for block in _plan(sheet, plan, number))
    return Page("bias", "Bias strips", _TRUE, blocks)


def _plan(sheet: Sheet, plan: BiasPlan, number: int) -> Iterator[Block]:
    near, chosen = sheet.lengths, plan.chosen
    title = _title(sheet, plan)
    total = sum(length for _, _, length in plan.pieces)
    what = "for the order" if plan.ordered else "for one garment of each size"
    back = listed(((title, billed(plan.cloth if plan.piece else plan.name)),))[1]
    wide = near.both(_heading, plan.wide, sheet.title_of(plan.cloth))
    yield Heading(title, str(number), wide, links=back)
    facts: tuple[tuple[str, Text], ...] = (
        ("Pieces", near.both(_pieces, len(plan.pieces), total, what)),
        ("Way", chosen.way),
        ("Cloth", near.both(_cloth, chosen.length * plan.grown) if chosen.length else "none beside the lays"),
        *_counts(sheet, plan),
    )
    yield Facts(tuple(Fact(label, value) for label, value in facts if value))
    asked = _asked(sheet, plan)
    if asked not in (None, chosen.way):
        yield Paragraph(f"It cannot be cut as {asked}: a piece is longer than the cloth allows.")
    yield Paragraph(_HOW[chosen.way])
    yield _ways(sheet, plan, number)
    yield from _drawings(sheet, plan, number)
    if any(chosen.joins) and chosen.way in (JOINED, OFFCUTS):
        yield _joins(sheet, plan, number)


def _drawings(sheet: Sheet, plan: BiasPlan, number: int) -> Iterator[Block]:
    """The cloth with its cuts, or the tube; of offcuts what else is cut: they are drawn on the lays."""
    chosen = plan.chosen.rest if plan.chosen.way == OFFCUTS else plan.chosen
    if chosen is None:
        return
    title, near = f"{_title(sheet, plan)}, cut from {sheet.title_of(plan.cloth)}", sheet.lengths
    called = (f"bias-{plan.name}-{number}", title)
    if chosen.way == TUBED:
        inner = chosen.side - 2.0 * ALLOWANCE
        drawing = tube_drawing(called, inner, plan.wide, near, room=_ROOM)
        yield Group("together", (Figure(drawing, drawing.title), Paragraph(_TUBE, "note")))
        return
    cloth = (chosen.length, _width(sheet, plan))
    drawing = bias_drawing(called, cloth, plan.wide, near, room=_ROOM)
    yield Group("together", (Figure(drawing, drawing.title),))


def _title(sheet: Sheet, plan: BiasPlan) -> str:
    pieces = sheet.sample.pieces if plan.piece else ()
    return next((each.title for each in pieces if each.name == plan.name), sheet.trim_called(plan.name))


def _asked(sheet: Sheet, plan: BiasPlan) -> str | None:
    """The way in which the strips are to be cut, where there is one: a piece without joins."""
    if plan.piece:
        return WHOLE
    return next(each.bias_way for each in sheet.garment.trims if each.name == plan.name)


def _heading(lengths: Lengths, wide: float, cloth: str) -> str:
    return f"{lengths.fine(wide)} wide, from {cloth}"


def _pieces(lengths: Lengths, count: int, total: float, what: str) -> str:
    return f"{plural(count, 'piece')}, {lengths.of_cloth(total)} {what}"


def _cloth(lengths: Lengths, mm: float) -> str:
    return f"{lengths.of_cloth(mm)}, whole width"


def _width(sheet: Sheet, plan: BiasPlan) -> float:
    cloth = next(each for each in sheet.garment.cloths if each.name == plan.cloth)
    assert cloth.usable is not None, "a plan is of a cloth whose width is known"
    return float(cloth.usable.value) * (1.0 - float(cloth.shrinks_width))


def _counts(sheet: Sheet, plan: BiasPlan) -> Iterator[tuple[str, Text]]:
    near, chosen = sheet.lengths, plan.chosen
    with_joins = sum(1 for joins in chosen.joins if joins)
    if chosen.way == TUBED:
        yield "Squares", near.both(_squares, chosen.squares, chosen.side)
    else:
        yield "Strips", near.both(_strips, chosen.strips)
    if chosen.rest is not None:
        others = plural(len(chosen.rest.joins), "piece")
        yield "From cloth of its own", near.both(_rest, others, chosen.rest.strips)
    if with_joins:
        where = f"in {with_joins} of {plural(len(plan.pieces), 'piece')}"
        yield "Joins", where if chosen.way == TUBED else near.both(_clear, where)
        yield "A join takes", near.both(_lost)
    else:
        yield "Joins", "in no piece"


def _squares(lengths: Lengths, count: int, side: float) -> str:
    return f"{plural(count, 'square')}, side {lengths.said(side)}"


def _strips(lengths: Lengths, strips: tuple[float, ...]) -> str:
    return f"{plural(len(strips), 'strip')}, the longest {lengths.said(max(strips))}"


def _rest(lengths: Lengths, pieces: str, strips: tuple[float, ...]) -> str:
    return f"the last {pieces}, from {_strips(lengths, strips)}"


def _clear(lengths: Lengths, where: str) -> str:
    return f"{where}, none nearer to an end than {lengths.said(CLEAR)}"


def _lost(lengths: Lengths) -> str:
    return f"{lengths.fine(lost_by_join())} of strip: allowances of {lengths.fine(ALLOWANCE)} on the slant"


def _ways(sheet: Sheet, plan: BiasPlan, number: int) -> Table:
    columns = (
        Column("Way of cutting"),
        Column("Cloth", Align.RIGHT, width=24.0),
        Column("Strips", Align.RIGHT, width=18.0),
        Column("Pieces with a join", Align.RIGHT, width=34.0),
        Column("", width=36.0),
    )
    least = min(cut.length for cut in plan.cuts)
    rows = tuple(
        Row(
            (
                cut.way,
                sheet.lengths.both(Lengths.of_cloth, cut.length * plan.grown),
                "one run" if cut.way == TUBED else str(len(cut.strips)),
                str(sum(1 for joins in cut.joins if joins)),
                ", ".join(
                    word
                    for word, true in (("least cloth", cut.length == least), ("taken", cut is plan.chosen))
                    if true
                ),
            ),
            strong=cut is plan.chosen,
        )
        for cut in plan.cuts
    )
    note = _WHOLE if plan.piece else "Choose another by a line of the trim, such as cut-as whole strips."
    return Table(f"bias-ways-{number}", "", columns, rows, note=note)


def _joins(sheet: Sheet, plan: BiasPlan, number: int) -> Table:
    """The pieces that have a join, in the order of cutting."""
    columns = (
        Column("Piece", Align.RIGHT, width=14.0),
        Column("Size", width=16.0),
        Column("For"),
        Column(sheet.lengths.both(_long), Align.RIGHT, width=26.0),
        Column("Join at, from its beginning", Align.RIGHT, width=50.0),
    )
    rows = tuple(
        Row(
            (
                str(place),
                size,
                sheet.title_of(used_on),
                sheet.lengths.up_in_both(length),
                sheet.lengths.both(_at, joins),
            )
        )
        for place, ((size, used_on, length), joins) in enumerate(
            zip(plan.pieces, plan.chosen.joins, strict=True), start=1
        )
        if joins
    )
    return Table(f"bias-joins-{number}", "Where joins come, in the order of cutting", columns, rows)


def _long(lengths: Lengths) -> str:
    return f"Length, {lengths.unit}"


def _at(lengths: Lengths, joins: tuple[float, ...]) -> str:
    return ", ".join(map(lengths.near, joins))
