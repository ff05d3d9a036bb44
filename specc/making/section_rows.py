"""Owns where the rows of a method lie in a cross-section, and what they go through.

Knows nothing of how plies are folded: that is what `Lay` says.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from enum import StrEnum
from typing import TYPE_CHECKING

from specc.library.stitches import stitches
from specc.making.section import Overlock, Row, Section
from specc.model.expression import Constant

if TYPE_CHECKING:
    from specc.making.section import CutEdge, Run, Strand, Width
    from specc.model.construction import Making, Pass
    from specc.model.expression import Expression

_DITCH = 0.8  # a row in the ditch runs so far beside it in the picture, millimetres
_BLIND = frozenset({"103", "503"})  # blindstitches, ISO 4915: the needle comes out where it went in
_BY_EDGE, _COVERING = "5", {"4": "below", "6": "both"}  # classes of ISO 4915: overedge, and covering stitches


class From(StrEnum):
    """What the place of a row is measured from."""

    RAW = "raw edge"
    OPEN = "open edge"
    CLOSED = "closed fold"
    CREASE = "crease"
    FOLD = "fold"
    ROW = "row"
    SEAM = "seam"
    EDGE = "edge"


# The words behind `from`, as the reference of the language tells them; the first that is found counts.
_WORDS = (
    (From.OPEN, r"\bopen\b"),
    (From.CLOSED, r"\bclosed\b"),
    (From.RAW, r"\b(raw|cut|overlocked) edges?\b"),
    (From.CREASE, r"\bcreases?\b"),
    (From.FOLD, r"\bfold(s|ed)?\b"),
    (From.ROW, r"\brow\b"),
    (From.SEAM, r"\bseam\b"),
    (From.EDGE, r"\bedges?\b"),
)


@dataclass(frozen=True, slots=True)
class Mark:
    """Where distances begin: at `x`, counted toward `toward`.

    `only` are the runs (strand, number) that can be pierced from there; None is all that lie at the place.
    """

    x: float
    toward: int
    only: frozenset[tuple[int, int]] | None = None


@dataclass(frozen=True, slots=True)
class Lay:
    """Plies and trims as they lie, before any row: with the marks that rows are measured from.

    `allowances` are their runs; `raw` the raw edges that an overlock takes together; `cover` is where a row
    lies that covers a raw edge. `across` says that the row at x = 0 goes through two folds side by side,
    `mirrored` that what is sewn beside it is sewn on both sides.
    """

    strands: tuple[Strand, ...]
    marks: dict[From, Mark]
    allowances: frozenset[tuple[int, int]] = frozenset()
    raw: tuple[CutEdge, ...] = ()
    cover: float | None = None
    across: bool = False
    mirrored: bool = False
    widths: tuple[Width, ...] = ()
    sided: bool = True
    laid: bool = True
    runs: tuple[Run, ...] = field(init=False)

    def __post_init__(self) -> None:
        """Find the runs of the strands, which every row asks for."""
        runs = tuple(run for number, strand in enumerate(self.strands) for run in strand.runs(number))
        object.__setattr__(self, "runs", runs)


def length(expression: Expression | None) -> float | None:
    """A length of a making in millimetres: its settings are filled in, so it is a constant, or none."""
    return float(expression.value.value) if isinstance(expression, Constant) else None


def measured_from(done: Pass) -> From | None:
    """What the place of its row is measured from; None where it is not said."""
    if done.inset is None:
        return None
    said = done.inset_from or From.EDGE
    return next((start for start, word in _WORDS if re.search(word, said)), None)


def inset_from(making: Making, start: From) -> float | None:
    """How far the first row that is measured from there lies from it."""
    return next((length(done.inset) for done in making.passes if measured_from(done) is start), None)


def sewn(lay: Lay, making: Making) -> Section:
    """The section: what lies so, with every row at its place."""
    rows: list[Row] = []
    overlocks: list[Overlock] = []
    unplaced: list[int] = []
    for number, done in enumerate(making.passes):
        if done.stitch is None:
            continue
        found = _overlock(lay, number, done) if done.stitch.startswith(_BY_EDGE) else None
        row = None if found else _row(lay, number, done, rows, covered=making.raw_edge == "covered")
        if found:
            overlocks.append(found)
        elif row:
            rows.append(row)
        else:
            unplaced.append(number)
    return Section(
        lay.strands, tuple(rows), tuple(overlocks), lay.widths, tuple(unplaced), lay.sided, lay.laid
    )


def _overlock(lay: Lay, number: int, done: Pass) -> Overlock | None:
    """Loops over all raw edges: over those that lie together, together."""
    if not lay.raw or done.stitch is None:
        return None
    bite = length(done.inset) if measured_from(done) is From.RAW else None
    runs = [
        run
        for edge in lay.raw
        for run in lay.runs
        if run.holds(edge.x) and edge.top <= run.layer <= edge.bottom
    ]
    return Overlock(number, done.stitch, lay.raw, _names(lay, runs), bite)


def _row(lay: Lay, number: int, done: Pass, before: list[Row], *, covered: bool) -> Row | None:
    """A row at its place; None where it is not said, or nothing lies there."""
    stitch = next((each for each in stitches() if each.number == done.stitch), None)
    if stitch is None:
        return None
    covers = _COVERING.get(stitch.number[0], "") if stitch.needles > 1 else ""
    start, mark = _mark(lay, done, before)
    if mark is not None:
        inset = length(done.inset) or 0.0
        x = mark.x + mark.toward * (inset or _beside(start))
    elif done.inset is None and covered and covers and lay.cover is not None:
        x, mark = lay.cover, Mark(lay.cover, 1)
    else:
        return None
    runs = [run for run in _at(lay, x, mark.only, ends=start is None) if _through(lay, run, done.through)]
    if not runs:
        return None
    top, bottom = min(run.layer for run in runs), max(run.layer for run in runs)
    across = lay.across and abs(x) < _DITCH / 2
    places = (x, -x) if lay.mirrored and not across else (x,)
    found = (_at(lay, place, mark.only, ends=start is None) for place in places)
    names = tuple(_names(lay, [run for run in one if _through(lay, run, done.through)]) for one in found)
    blind = stitch.number in _BLIND
    return Row(number, stitch.number, places, top, bottom, names, stitch.needles, across, blind, covers)


def _mark(lay: Lay, done: Pass, before: list[Row]) -> tuple[From | None, Mark | None]:
    start = measured_from(done)
    if start is From.ROW and before:
        return start, Mark(before[-1].places[0], -1 if before[-1].places[0] > 0 else 1)
    return start, None if start is None else lay.marks.get(start)


def _beside(start: From | None) -> float:
    """Where a row lies that is said to run along a seam or a row: in the ditch beside it."""
    return {From.SEAM: -_DITCH, From.ROW: _DITCH}.get(start, 0.0) if start else 0.0


def _at(lay: Lay, x: float, only: frozenset[tuple[int, int]] | None, *, ends: bool) -> list[Run]:
    """What lies at a place; `ends` counts what ends there raw, beside which a row runs otherwise."""
    return [
        run
        for run in lay.runs
        if run.holds(x)
        and (only is None or (run.strand, run.number) in only)
        and (ends or not lay.strands[run.strand].ends_raw(x, run.layer))
    ]


def _through(lay: Lay, run: Run, through: tuple[str, ...]) -> bool:
    """Whether a row goes through a run, as it is said, or through all."""
    if not through:
        return True
    own = lay.strands[run.strand].name in through
    return own or ("allowances" in through and (run.strand, run.number) in lay.allowances)


def _names(lay: Lay, runs: list[Run]) -> tuple[str, ...]:
    """What lies at a place, outermost first, a name as often as it lies there."""
    return tuple(lay.strands[run.strand].name for run in sorted(runs, key=lambda run: run.layer))
