"""Owns the pages of seams, finishes and hems: how each is made, and whether both sides of a seam agree."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.attachments import catching, how_often, titled, what, where
from specc.document.closures import closed_edges, closure_facts, closure_table, openings_table
from specc.document.constants import constant
from specc.document.document import Fact, Facts, Figure, Group, Heading, Page, Paragraph
from specc.document.lengths import millimetres, range_of
from specc.document.links import cut_for, made
from specc.document.making_map import map_of
from specc.document.origins import of_rest, of_side
from specc.document.printed import traced
from specc.document.section_key import section_key
from specc.document.sections import section_figure
from specc.document.sheet import chain, part
from specc.document.table import Align, Column, Row, Table
from specc.library.stitches import stitches
from specc.making.attached import Placed
from specc.making.sections import section_of
from specc.model.construction import Finish, Seam
from specc.units import format_number

if TYPE_CHECKING:
    from collections.abc import Iterator
    from fractions import Fraction

    from specc.document.document import Block
    from specc.document.lengths import Lengths
    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.making.assembly import EdgeLength
    from specc.model.construction import EdgeAllowance, Making, Pass
    from specc.model.expression import Expression

_INCH = 25.4  # millimetres
_BESIDE = 98.0  # of paper for what stands beside a cross-section
_KEY = (
    "Cross-sections show the garment cut across, its outside up, when all is sewn and pressed. They are not"
    " to scale: along the plies they are drawn as large as fits, across them thicker than cloth is. A row"
    " bears the number of its operation, then that of its stitch."
)
# Common practice, no source.
_CAUGHT = (
    "Lay each end between its notches, raw edges even, before the seam or finish that catches it is sewn,"
    " so that the same row goes through it; then sew across it once more. Its allowance is that of the edge."
)


def build(sheet: Sheet) -> Page | None:
    """Each seam, finish and hem with its operations, then the seams walked."""
    all_made: tuple[Seam | Finish, ...] = (*sheet.garment.seams, *sheet.garment.finishes)
    attachments = sheet.garment.attachments
    if not all_made and not attachments:
        return None
    blocks: list[Block] = [*map_of(sheet)]
    if any(map(section_of, all_made)):
        blocks.append(Figure(section_key(), _KEY))
    for number, each in enumerate(all_made, start=1):
        blocks += _one(sheet, each, number)
    by_themselves = [index for index, asked in enumerate(attachments) if asked.making is not None]
    for number, index in enumerate(by_themselves, start=len(all_made) + 1):
        blocks += _attached(sheet, index, number)
    blocks += _caught(sheet, len(all_made) + len(by_themselves) + 1)
    blocks += _walks(sheet)
    blocks += openings_table(sheet)
    closures = ", closures" if sheet.sample.closures else ""
    return Page("making", f"Seams, finishes, hems{closures}", sheet.lengths.both(_lead), tuple(blocks))


def _lead(lengths: Lengths) -> str:
    return (
        f"Lengths in {lengths.word} unless another unit stands beside them; stitch lengths in"
        " millimetres and in stitches per inch."
        " Stitch numbers are those of ISO 4915, letters of seam classes those of ASTM D6193."
    )


def _one(sheet: Sheet, each: Seam | Finish, number: int) -> Iterator[Block]:
    making = each.making
    heading = Heading(f"{_named(each)}: {making.title}", str(number), _edges(each), made(each.name))
    said: list[tuple[str, Text]] = [*_facts(sheet, making, each.allowances)]
    closing = isinstance(each, Finish) and each.closing is not None
    if isinstance(each, Finish) and closing:
        said[2:2] = closure_facts(sheet, each)
    taken = {sheet.trim_called(takes.trim): cut_for(takes.trim, each.name) for takes in making.takes}
    facts = Facts(tuple(Fact(label, value, taken.get(str(value), "")) for label, value in said if value))
    figure = section_figure(sheet, each, number)
    told = facts if figure is None else Group("beside", (facts, figure), first=_BESIDE)
    work = (_operations(sheet, making.passes, number),) if making.passes else ()
    places = tuple(closure_table(sheet, each)) if isinstance(each, Finish) and closing else ()
    yield Group("together", (heading, told, *work, *places))


def _attached(sheet: Sheet, index: int, number: int) -> Iterator[Block]:
    """What is sewn on by a way of its own: where it goes, how often, how."""
    asked, found = sheet.garment.attachments[index], sheet.sample.attached[index]
    if asked.making is None:
        return
    title = titled(sheet, asked)
    heading = Heading(f"{title[:1].upper()}{title[1:]}: {asked.making.title}", str(number), what(asked))
    said: list[tuple[str, Text]] = [("Place", where(sheet, index)), ("How often", how_often(sheet, index))]
    if isinstance(found, Placed):
        said.append(("Sewn along", ", ".join(found.edges)))
    said += _facts(sheet, asked.making)
    facts = Facts(tuple(Fact(label, value) for label, value in said if value))
    work = (_operations(sheet, asked.making.passes, number),) if asked.making.passes else ()
    yield Group("together", (heading, facts, *work))


def _caught(sheet: Sheet, number: int) -> Iterator[Block]:
    """The ends that are caught in seams and finishes, in one table."""
    caught = [index for index, asked in enumerate(sheet.garment.attachments) if asked.making is None]
    if not caught:
        return
    columns = (
        Column("", width=10.0),
        Column("What", width=32.0),
        Column("Where"),
        Column("Place", width=44.0),
        Column("How often", width=26.0),
        Column("Caught in", width=28.0),
    )
    rows = []
    for place, index in enumerate(caught, start=1):
        asked = sheet.garment.attachments[index]
        cells = (titled(sheet, asked), what(asked), where(sheet, index), how_often(sheet, index))
        rows.append(Row((f"{number}.{place}", *cells, catching(sheet, asked))))
    yield Group(
        "together",
        (
            Heading("Ends caught in a seam or finish", str(number)),
            Paragraph(_CAUGHT),
            Table(f"caught-{number}", "", columns, tuple(rows)),
        ),
    )


def _named(each: Seam | Finish) -> str:
    title = each.title or each.name
    return title[:1].upper() + title[1:]


def _edges(each: Seam | Finish) -> str:
    return (
        f"{chain(each.first)} to {' with '.join(chain(side) for side in each.sides[1:])}"
        if isinstance(each, Seam)
        else closed_edges(each)
        if each.closing is not None
        else f"along {chain(each.along)}"
    )


def _facts(sheet: Sheet, making: Making, own: tuple[EdgeAllowance, ...] = ()) -> Iterator[tuple[str, Text]]:
    yield "Plies", making.faces or ""
    yield "Allowance", sheet.lengths.both(_allowance, making, own)
    yield (
        "Seam class",
        ", ".join(part for part in (making.astm, making.iso and f"ISO 4916 {making.iso}") if part),
    )
    for takes in making.takes:
        yield takes.material[:1].upper() + takes.material[1:], sheet.trim_called(takes.trim)
    yield "Press", making.press or ""
    yield "Machine", making.machine or ""
    yield "Foot", making.foot or ""
    yield "Needs", making.needs or ""


def _allowance(lengths: Lengths, making: Making, own: tuple[EdgeAllowance, ...]) -> str:
    said = _allowed(lengths, making.allowance)
    if making.second is not None:
        said = f"{said} on the first side, {_allowed(lengths, making.second)} on the second"
    others = (f"{_allowed(lengths, one.width)} on {part(one.edge)}" for one in own)
    return "; ".join((said, *others))


def _allowed(lengths: Lengths, allowance: Expression) -> str:
    value = constant(allowance)
    if value is None:
        return ""
    return "none: the cut edge is the seam line" if value == 0 else lengths.fine(value)


def _operations(sheet: Sheet, passes: tuple[Pass, ...], number: int) -> Table:
    columns = (
        Column("", width=10.0),
        Column("Operation"),
        Column("Stitch", width=26.0),
        Column("mm", Align.RIGHT, over="Stitch length", width=12.0),
        Column("per inch", Align.RIGHT, over="Stitch length", width=14.0),
        Column("Needle runs", width=36.0),
    )
    names = {each.number: each.name for each in stitches()}
    rows = []
    for place, done in enumerate(passes, start=1):
        stitch = f"{done.stitch} {names.get(done.stitch, '')}".strip() if done.stitch else ""
        length, inset = constant(done.stitch_length), constant(done.inset)
        millimetre = millimetres(length) if length else ""
        per_inch = format_number(_INCH / float(length), decimals=1) if length else ""
        runs = "" if inset is None else sheet.lengths.both(_runs, inset, done.inset_from)
        rows.append(Row((f"{number}.{place}", f"{done.text}.", stitch, millimetre, per_inch, runs)))
    return Table(f"operations-{number}", "", columns, tuple(rows))


def _runs(lengths: Lengths, inset: Fraction, inset_from: str | None) -> str:
    start = inset_from or "the edge"
    return f"{lengths.fine(inset)} from {start}" if inset else f"along {start}"


def _walks(sheet: Sheet) -> Iterator[Table]:
    if not sheet.garment.seams:
        return
    columns = (
        Column("Seam"),
        Column("Walked", width=60.0),
        *sheet.size_columns("In size"),
    )
    rows = []
    near = sheet.lengths.near_in_both
    for index, seam in enumerate(sheet.garment.seams):
        walks = tuple(each.walks[index] for each in sheet.assembly.sizes)
        lengths = [(walk.first_length, walk.second_length) for walk in walks]
        plies = [tuple(ply.length for ply in walk.others) for walk in walks]
        sides = zip(*((*two, *more) for two, more in zip(lengths, plies, strict=True)), strict=True)
        name = seam.title or seam.name
        for place, (edges, side) in enumerate(zip(walks[0].sides, sides, strict=True)):
            cells = (
                traced(near(value), of_side(sheet, index, walk.sides[place]))
                for value, walk in zip(side, walks, strict=True)
            )
            rows.append(Row((name, _walked(edges), *cells), with_next=True))
            name = ""
        if any(walk.ease for walk in walks):
            word = "gathers" if seam.gathered else "ease"
            rows.append(Row(("", word, *(near(walk.ease) for walk in walks)), with_next=True))
        allowed = range_of(tuple(f"{millimetres(walk.tolerance)} mm" for walk in walks))
        left = (traced(millimetres(walk.worst), of_rest(sheet, index, walk)) for walk in walks)
        rows.append(Row(("", f"left over, mm; {allowed} allowed", *left)))
    note = (
        "All sides as sewn, darts closed and gathers drawn in; 2 × stands for both halves of an edge that one"
        " whole piece is sewn to. What is left over is in millimetres."
    )
    yield Table("walks", "Seams walked", columns, tuple(rows), note=note)


def _walked(edges: tuple[EdgeLength, ...]) -> str:
    """The edges of a side, each as often as it lies in the seam."""
    return ", ".join(
        f"{f'{edge.times} × ' if edge.times > 1 else ''}{edge.piece}.{edge.edge}" for edge in edges
    )
