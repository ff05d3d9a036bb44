"""Owns what the sheet says of closures: what they take, where their fastenings lie, what is open.

Knows nothing of pages.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.constants import constant
from specc.document.lengths import Lengths
from specc.document.sheet import chain
from specc.document.table import Column, Row, Table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.printed import Text
    from specc.document.sheet import Sheet
    from specc.making.assembly import Opening
    from specc.making.closed import Closed, FasteningPlace
    from specc.model.construction import Finish
    from specc.quantities.pieces import PieceCount


def closed_edges(finish: Finish) -> str:
    """The sides of a closure, in words."""
    if finish.closing is None or finish.closing.on_itself:
        return f"along {chain(finish.along)}, left and right"
    return f"along {chain(finish.closing.first)}, which lies on {chain(finish.closing.second)}"


def closure_facts(sheet: Sheet, finish: Finish) -> Iterator[tuple[str, Text]]:
    """What a closure takes by the piece in the sample size, and how far it laps."""
    for count in sheet.sample_quantities.pieces:
        if count.used_on == finish.name:
            takes = next(one for one in finish.making.pieces if one.trim == count.trim)
            called = takes.material[:1].upper() + takes.material[1:]
            yield called, f"{sheet.trim_called(count.trim)}, in size {sheet.header.sample}: {counted(count)}"
    laps = constant(finish.making.laps)
    if laps:
        yield "Laps", sheet.lengths.both(Lengths.fine, laps)


def counted(count: PieceCount) -> str:
    """How many, and of which length where it is sold in several: `5`, `1 × 8 in`."""
    return str(count.count) if count.length is None else f"{count.count} × {count.length}"


def places_on(sheet: Sheet, piece: str) -> tuple[FasteningPlace, ...]:
    """The places of all closures on a piece in the sample size."""
    return tuple(place for closed in sheet.sample.closures for place in closed.places if place.piece == piece)


def closure_table(sheet: Sheet, finish: Finish) -> Iterator[Table]:
    """How long the opening is and where each fastening lies, in every size."""
    found = tuple(
        next((one for one in size.closures if one.closure == finish.name), None)
        for size in sheet.assembly.sizes
    )
    if any(one is None for one in found):
        return
    closures = tuple(one for one in found if one is not None)
    near = sheet.lengths.near_in_both
    rows = [Row(("opening", "", *(near(one.first) for one in closures))), *_taken(sheet, finish)]
    most = max((len(_numbers(one)) for one in closures), default=0)
    corner = f"from {closures[0].corner}"
    for number in range(1, most + 1):
        where = [_along(one, number) for one in closures]
        rows.append(Row((f"place {number}", corner, *("" if at is None else near(at) for at in where))))
    columns = (Column("", width=34.0), Column("", width=40.0), *sheet.size_columns("In size"))
    yield Table(f"closure-{finish.name}", "", columns, tuple(rows), note=sheet.lengths.both(_note, finish))


def _taken(sheet: Sheet, finish: Finish) -> Iterator[Row]:
    for takes in finish.making.pieces:
        counts = tuple(
            next((one for one in size.pieces if (one.trim, one.used_on) == (takes.trim, finish.name)), None)
            for size in sheet.quantities.sizes
        )
        cells = ("" if one is None else counted(one) for one in counts)
        yield Row((sheet.trim_called(takes.trim), "pieces", *cells))


def _numbers(closed: Closed) -> set[int]:
    return {place.number for place in closed.places}


def _along(closed: Closed, number: int) -> float | None:
    return next((place.along for place in closed.places if place.number == number), None)


def _note(lengths: Lengths, finish: Finish) -> str:
    places = finish.making.places
    if places is None:
        return ""
    fine = lengths.fine
    inset, other, hole = constant(places.inset), constant(places.other), constant(places.hole)
    words = ["Places are measured along the edge as sewn."]
    if inset:
        below = "" if other in {None, inset} else f", {fine(other or 0)} inside that of the lower side"
        words.append(f"They lie {fine(inset)} inside the edge{below}.")
    if hole:
        way = "across the edge, from 1/8 in (3 mm) beyond the place" if places.across else "along the edge"
        words.append(f"Buttonholes: {fine(hole)} long, {way}.")
    return " ".join(words)


def openings_table(sheet: Sheet) -> Iterator[Table]:
    """What is open, and what is left when all is closed, for a garment that has closures."""
    if not sheet.sample.closures:
        return
    rows = [
        *_rows(sheet, "put on", tuple(size.openings for size in sheet.assembly.sizes)),
        *_rows(sheet, "worn", tuple(size.worn for size in sheet.assembly.sizes)),
    ]
    columns = (Column("", width=14.0), Column("Round"), *sheet.size_columns("Length, in size"))
    note = (
        "Put on: all closures open, down one side and up the other; the folded ends of bands and what laps"
        " are left out. Worn: closed, less what laps."
    )
    yield Table("openings", "Openings", columns, tuple(rows), note=note)


def _rows(sheet: Sheet, when: str, openings: tuple[tuple[Opening, ...], ...]) -> Iterator[Row]:
    for opening in openings[0]:
        lengths = (next((one.sewn for one in size if one.edges == opening.edges), None) for size in openings)
        cells = ("" if length is None else sheet.lengths.near_in_both(length) for length in lengths)
        yield Row((when, ", ".join(opening.edges), *cells))
        when = ""
