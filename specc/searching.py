"""Owns the search for shorter lays of a garment: what is known, what is found, what is kept beside the spec.

Knows nothing of how progress is shown. What is kept depends on time and luck: it is checked where it is used.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.laying import improve, layers, sound_layouts
from specc.laying.lay_file import beside, read, written
from specc.making import cut
from specc.model.spreading import CUTTINGS
from specc.pipeline import lay_file_beside
from specc.writing import write_one

if TYPE_CHECKING:
    from collections.abc import Generator
    from pathlib import Path

    from specc.diagnostics import Diagnostic
    from specc.gather import World
    from specc.laying import Improved, Wanted
    from specc.packing import Layout
    from specc.pipeline import Result


@dataclass(frozen=True, slots=True)
class Known:
    """The lays of a garment for every way of cutting, and the layouts that are known so far, by key."""

    wanted: tuple[Wanted, ...]
    layouts: dict[str, Layout]


def known_lays(result: Result, world: World) -> tuple[Known | None, tuple[Diagnostic, ...]]:
    """The lays, and what the lay file has of them; None for a garment that cannot be laid."""
    if result.gathered is None or result.garment is None or result.assembly is None:
        return None, ()
    file, said = lay_file_beside(result.gathered.spec.file.name, world)
    listed, wrong = read(file) if file else (None, ())
    said += wrong
    wanted: dict[str, Wanted] = {}
    layouts: dict[str, Layout] = {}
    narrow: tuple[Diagnostic, ...] = ()
    for layer in layers(result.garment, result.assembly, cut(result.assembly)):
        narrow += layer.too_narrow()
        if narrow:
            continue
        wanted |= {one.key: one for cutting in CUTTINGS for _, one in layer.wanted(cutting)}
        sound, unsound = sound_layouts(layer, listed or {})
        layouts |= sound
        said += unsound
    if narrow:
        return None, (*said, *narrow)
    return Known(tuple(wanted.values()), layouts), said


def search(known: Known, spec: Path, *, seconds: float, jobs: int) -> Generator[Improved]:
    """What is found, as it is found; the lay file beside the spec has the best of each lay, whenever it ends.

    Raises OutputError when it cannot be written.
    """
    best = dict(known.layouts)
    try:
        for found in improve(known.wanted, known.layouts, seconds=seconds, jobs=jobs):
            best[found.wanted.key] = found.layout
            if found.done:
                _keep(known, best, spec)
            yield found
    finally:
        _keep(known, best, spec)


def _keep(known: Known, best: dict[str, Layout], spec: Path) -> None:
    write_one(
        spec.parent / beside(spec.name),
        written((one, best[one.key]) for one in known.wanted if one.key in best),
    )
