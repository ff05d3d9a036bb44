"""Owns the page of points of measure: what the made garment must measure, and room to write what it does."""

from __future__ import annotations

from string import ascii_uppercase
from typing import TYPE_CHECKING

from specc.document.document import Figure, Page
from specc.document.garment_bands import bands
from specc.document.lengths import Lengths
from specc.document.measure_drawing import Lettered, measure_drawing
from specc.document.origins import of_demand, of_point, of_step
from specc.document.printed import traced
from specc.document.table import Align, Column, Row, Table
from specc.document.view import said
from specc.geometry.point import Point

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.quantities.quantities import ExpectResult, PointOfMeasure
    from specc.units import Dimension


_ROOM = Point(170.0, 95.0)


def build(sheet: Sheet) -> Page | None:
    """The tables of measures; nothing where the garment names no points and makes no demands."""
    blocks: tuple[Block, ...] = (*_drawn(sheet), *_points(sheet), *_steps(sheet), *_expected(sheet))
    return Page("measures", "Points of measure", sheet.lengths.both(_lead), blocks) if blocks else None


def _lead(lengths: Lengths) -> str:
    return (
        f"Lengths in {lengths.word}, to the nearest {lengths.step}, computed from the pieces as"
        " altered and sewn. Measure the garment relaxed, right side out, flat and smooth."
        " Tolerances are for the whole measure."
    )


def _drawn(sheet: Sheet) -> Iterator[Figure]:
    """The garment with a line for every letter."""
    measures = tuple(Lettered(letter(index), each.value) for index, each in enumerate(sheet.garment.measures))
    if not measures:
        return
    drawing, hidden = measure_drawing(sheet.flat, measures, sheet.made, bands(sheet), room=_ROOM)
    if drawing is None:
        return
    scale = f"; scale {said(drawing.scale)}" if drawing.scale else ""
    caption = f"Where it is measured: size {sheet.header.sample}, laid flat{scale}."
    caption += " A line from side to side is half of what is measured round."
    if hidden:
        caption += f" Not shown: {', '.join(hidden)}."
    yield Figure(drawing, caption)


def _points(sheet: Sheet) -> Iterator[Table]:
    points = sheet.quantities.points_of_measure
    if not points:
        return
    columns = (
        Column("", width=7.0),
        Column("Point of measure"),
        Column("less", Align.RIGHT, over="Tolerance", width=12.0),
        Column("more", Align.RIGHT, over="Tolerance", width=12.0),
        *sheet.size_columns("Size", width=13.5),
        Column("measured", over="Sample", width=19.0, blank=True),
        Column("off by", over="Sample", width=16.0, blank=True),
    )
    rows = tuple(_point(sheet, index, point) for index, point in enumerate(points))
    yield Table(
        "points-of-measure",
        "",
        columns,
        rows,
        note=f"Sample: size {sheet.header.sample}, to be filled in by hand.",
    )


def _point(sheet: Sheet, index: int, point: PointOfMeasure) -> Row:
    lengths = sheet.lengths
    less = "" if point.minus is None else printed(point.minus, point.dimension, lengths)
    more = "" if point.plus is None else printed(point.plus, point.dimension, lengths)
    values = (
        traced(printed(value, point.dimension, lengths), of_point(sheet, index, size))
        for size, value in enumerate(point.values)
    )
    return Row((letter(index), point.title, less, more, *values, "", ""))


def _steps(sheet: Sheet) -> Iterator[Table]:
    points = sheet.quantities.points_of_measure
    pairs = tuple(zip(sheet.sizes, sheet.sizes[1:], strict=False))
    if not points or not pairs:
        return
    columns = (
        Column("", width=7.0),
        Column("Point of measure"),
        *(
            Column(f"{low} to {high}", Align.RIGHT, over="From size to size", width=18.0)
            for low, high in pairs
        ),
    )
    rows = tuple(
        Row(
            (
                letter(index),
                point.title,
                *(
                    traced(printed(step, point.dimension, sheet.lengths), of_step(sheet, index, size))
                    for size, step in enumerate(point.steps)
                ),
            )
        )
        for index, point in enumerate(points)
    )
    yield Table("grade-steps", "Grade steps", columns, rows)


def _expected(sheet: Sheet) -> Iterator[Table]:
    if not sheet.quantities.expects:
        return
    columns = (
        Column("What the designer asks for"),
        Column("Why", width=40.0),
        *sheet.size_columns("Found in size"),
        Column("Met", Align.RIGHT, width=12.0),
    )
    rows = tuple(
        row for index, each in enumerate(sheet.quantities.expects) for row in _demand(sheet, index, each)
    )
    yield Table("expected", "Demands", columns, rows)


def _demand(sheet: Sheet, index: int, each: ExpectResult) -> Iterator[Row]:
    """What came out; below it the most that each size may have, where that differs from size to size."""
    lengths, origin = sheet.lengths, of_demand(sheet, index)
    found = (traced(printed(value, each.dimension, lengths), origin) for value in each.left)
    text = each.text.replace(">=", "≥").replace("<=", "≤")
    yield Row((text, each.because or "", *found, "yes" if all(each.met) else "no"))
    if each.limits:
        yield Row(("", "at most", *(printed(value, each.dimension, lengths) for value in each.limits), ""))


def letter(index: int) -> str:
    """A, B, … Z, AA, AB, … for the points of measure in order."""
    before, last = divmod(index, len(ascii_uppercase))
    return (letter(before - 1) if before else "") + ascii_uppercase[last]


def printed(value: float, dimension: Dimension, lengths: Lengths) -> Text:
    """A value of the garment in the way of its dimension; a length without its unit."""
    return lengths.both(Lengths.figure, value, dimension)
