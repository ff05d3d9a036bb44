"""Owns the lengths of trim to cut.

Along each zone, less what is held in, with what joins, overlaps and ends take.

Knows nothing of how trims are sold.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.making.attaching import attached_run
from specc.quantities.quantities import Addition, TrimCut

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from specc.making.assembly import Round, SizeAssembly
    from specc.model.construction import Finish, Seam, Takes
    from specc.model.expression import Expression
    from specc.model.garment import Garment

_SAME = 1e-6  # mm


def trim_cuts(
    garment: Garment, size: SizeAssembly, evaluate: Callable[[Expression], float]
) -> tuple[TrimCut, ...]:
    """Every length of trim that one garment takes: of seams, of finishes, of what is attached."""
    widths = {trim.name: trim.width for trim in garment.trims}
    found = []
    for name, takes, laid in trim_runs(garment, size):
        additions = _additions(takes, evaluate, closed=laid.closed)
        zones = laid.zones if takes.hanging is None else tuple(replace(zone, held=0.0) for zone in laid.zones)
        stated = takes.long is not None
        held = (
            laid.length - evaluate(takes.long)
            if takes.long is not None
            else sum((zone.end - zone.start) * zone.held for zone in zones)
        )
        cut_width = evaluate(takes.cut_width)
        bought = widths.get(takes.trim)
        as_bought = bought is not None and abs(cut_width - float(bought.value)) < _SAME
        found.append(
            TrimCut(
                takes.trim,
                name,
                laid.count,
                laid.closed and takes.hanging is None,
                zones,
                laid.length,
                held,
                stated,
                additions,
                laid.length - held + sum(addition.length for addition in additions),
                None if as_bought else cut_width,
            )
        )
    return tuple(found)


def trim_runs(garment: Garment, size: SizeAssembly) -> Iterator[tuple[str, Takes, Round]]:
    """Every run along which a trim is laid: what it belongs to by name, the trim as taken, the run."""
    every: tuple[Seam | Finish, ...] = (*garment.seams, *garment.finishes)
    for made in every:
        for laid in (*size.sewn, *size.rounds):
            if laid.by == made.name:
                for takes in made.making.takes:
                    yield made.name, takes, laid
    for asked, found in zip(garment.attachments, size.attached, strict=True):
        for takes in asked.making.takes if asked.making else ():
            yield asked.name, takes, attached_run(found, size.pieces)


def _additions(
    takes: Takes, evaluate: Callable[[Expression], float], *, closed: bool
) -> tuple[Addition, ...]:
    """A closed round is joined or lapped once; an open run and a drawstring have two ends."""
    wanted: tuple[tuple[str, Expression | None, int], ...] = (
        (("overlap", takes.overlapping, 1), ("join", takes.joining, 1))
        if closed
        else (("turned ends", takes.turning, 2), ("ends beyond the edge", takes.beyond, 2))
    )
    wanted += (("hanging ends", takes.hanging, 2),)
    return tuple(
        Addition(what, times * evaluate(length)) for what, length, times in wanted if length is not None
    )
