"""Owns how much thread a garment takes: pass by pass, needle threads apart from all others.

Knows nothing of cones. Lengths are millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from specc.library.threads import Stitching, consumption
from specc.making.attaching import attached_run
from specc.making.cloths import cloth_of
from specc.pattern.measure import dart_tip
from specc.quantities.quantities import ThreadUse

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from specc.making.assembly import SizeAssembly
    from specc.model.construction import Making, Pass
    from specc.model.expression import Expression, PartRef
    from specc.model.garment import Garment
    from specc.model.material import Thread
    from specc.pattern.piece import Piece

DARTS: Final = "darts"
NEEDLES, BOBBINS, LOOPERS = "needles", "bobbins", "loopers"
_INCH = 25.4
_KINDS = MappingProxyType({"finish": "finishes", "hem": "hems", "closure": "closures"})
_DART_STITCH = "301"  # common practice, no source: the language has no ways of sewing darts
_LOCKSTITCH = "3"  # ISO 4915, class 300: the lower thread comes from a bobbin


@dataclass(frozen=True, slots=True)
class _Row:
    """What is stitched along a length in one garment; `thick` is the cloth under the foot."""

    name: str
    kind: str
    making: Making | None
    length: float
    thick: float | None


def thread_uses(
    garment: Garment, size: SizeAssembly, evaluate: Callable[[Expression], float]
) -> tuple[ThreadUse, ...]:
    """The thread of every pass that has a stitch, in one garment, in the order of the text; darts last."""
    return tuple(use for row in _rows(garment, size) for use in _uses(garment, row, evaluate))


def _uses(garment: Garment, row: _Row, evaluate: Callable[[Expression], float]) -> Iterator[ThreadUse]:
    if row.making is None:
        yield _use(garment, row, 1, _DART_STITCH, None)
        return
    for number, done in enumerate(row.making.passes, start=1):
        if done.stitch is not None and row.length > 0.0:
            yield _use(garment, row, number, done.stitch, _per_inch(done, evaluate))


def _use(garment: Garment, row: _Row, number: int, stitch: str, per_inch: float | None) -> ThreadUse:
    thick = None if row.thick is None else row.thick / _INCH
    found = consumption(Stitching(stitch, per_inch, thick), garment.header.thread_by)
    under = BOBBINS if stitch.startswith(_LOCKSTITCH) else LOOPERS
    needle, other = (serving(garment.threads, row.name, row.kind, place) for place in (NEEDLES, under))
    if found is None:
        return ThreadUse(row.name, number, stitch, row.length, None, None, needle, None, None, None)
    # Where the share of the needles is not known all is counted for their thread.
    share = 1.0 if found.needle is None else found.needle
    whole = row.length * found.ratio
    rest = whole * (1.0 - share)
    return ThreadUse(
        row.name,
        number,
        stitch,
        row.length,
        found.by,
        found.ratio,
        needle,
        whole - rest,
        other if rest else None,
        rest or None,
    )


def _per_inch(done: Pass, evaluate: Callable[[Expression], float]) -> float | None:
    long = None if done.stitch_length is None else evaluate(done.stitch_length)
    return _INCH / long if long else None


def serving(threads: tuple[Thread, ...], name: str, kind: str, place: str) -> str | None:
    """The thread that serves there: the first that names the row, or its kind, or the place, or all of them.

    The only thread there is serves everywhere; None where none does.
    """
    for wanted in (name, kind, place, "all"):
        for thread in threads:
            if wanted in (thread.use or "all").split(", "):
                return thread.name
    return threads[0].name if len(threads) == 1 else None


def _rows(garment: Garment, size: SizeAssembly) -> Iterator[_Row]:
    runs = (*size.sewn, *size.rounds)
    closed = {each.closure: each for each in size.closures}

    def length(name: str) -> float:
        return sum(run.length * run.count for run in runs if run.by == name)

    for seam in garment.seams:
        plies = (side[0] for side in seam.sides)
        yield _Row(seam.name, "seams", seam.making, length(seam.name), _thick(garment, plies))
    for finish in garment.finishes:
        plies = (finish.along[0] for _ in range(1 + len(finish.making.turned)))
        thick = _thick(garment, plies)
        one = closed.get(finish.name)
        along = length(finish.name) if one is None else (one.first + one.second) * one.count
        yield _Row(finish.name, _KINDS[finish.kind], finish.making, along, thick)
    for asked, found in zip(garment.attachments, size.attached, strict=True):
        if asked.making is not None:
            run = attached_run(found, size.pieces)
            yield _Row(asked.name, "attachments", asked.making, run.length * run.count, None)
    darts = sum(_darts(piece) for piece in size.pieces)
    if darts:
        yield _Row(DARTS, DARTS, None, darts, None)


def _thick(garment: Garment, plies: Iterable[PartRef]) -> float | None:
    """How thick the plies are together; None where a cloth does not say."""
    total = 0.0
    for ref in plies:
        cloth = cloth_of(garment, ref.piece or "")
        if cloth is None or cloth.thickness is None:
            return None
        total += float(cloth.thickness.value)
    return total


def _darts(piece: Piece) -> float:
    """The length of all darts of all copies of a piece, from the edge to the tip or from tip to tip."""
    one = sum(dart.first.distance(dart_tip(dart)) for dart in piece.darts)
    both = sum(dart.top.distance(dart.first) + dart.first.distance(dart.bottom) for dart in piece.two_pointed)
    return (one + both) * piece.cut * (2 if piece.fold else 1)
