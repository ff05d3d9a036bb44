"""Owns the stage: cut pieces and an order in, lays out.

Knows nothing of files, nor of how layouts are searched: known ones are handed in, others are asked for.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.laying.cloth import ClothLayer
from specc.laying.cutting import size_cuts
from specc.laying.plan import Ratio
from specc.model.spreading import CUTTINGS
from specc.packing import faults

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from specc.diagnostics import Diagnostic
    from specc.laying.cloth import Wanted
    from specc.laying.plan import ClothLays
    from specc.making.assembly import Assembly, CutPiece
    from specc.model.garment import Garment
    from specc.model.material import Cloth
    from specc.packing import Layout, Strip

UNSOUND = declare(
    "SPC602",
    "lay-does-not-hold",
    Severity.WARNING,
    "the lay of {lay} in the lay file cannot be cut: {fault}",
)
STALE = declare(
    "SPC604",
    "lay-file-of-something-else",
    Severity.WARNING,
    "the lay file does not have {count} of the lays of `{cloth}`",
)


def _fault_of(wanted: Wanted, layout: Layout) -> Diagnostic | None:
    """What is wrong with a layout that is known; None when it can be cut."""
    found = faults(wanted.strip, layout)
    if not found:
        return None
    told = UNSOUND.at(None, lay=wanted.called, fault=found[0])
    for fault in found[1:4]:
        told = told.note(fault)
    return told.note("this lay is planned in a hurry instead").help("run `specc lay`, which writes it anew")


def lay(
    garment: Garment,
    assembly: Assembly,
    cuts: tuple[tuple[CutPiece, ...], ...],
    known: Mapping[str, Layout] | None,
    plan: Callable[[Strip], Layout],
) -> tuple[tuple[ClothLays, ...], tuple[Diagnostic, ...]]:
    """The lays of every cloth whose width is known; `cuts` are the cut pieces of each size.

    Layouts of `known`, those of a lay file by their strips' keys, are used where they hold; all others are
    asked of `plan`.
    """
    said: list[Diagnostic] = []
    found: list[ClothLays] = []
    for layer in layers(garment, assembly, cuts):
        narrow = layer.too_narrow()
        said += narrow
        if narrow:
            continue
        layouts, wrong = sound_layouts(layer, known or {})
        said += wrong
        searched = frozenset(layouts)
        missing = [one for _, one in layer.wanted(garment.header.cutting) if one.key not in layouts]
        layouts |= {one.key: plan(one.strip) for one in missing}
        new = [one for one in missing if known is not None and one.key not in known]
        if new:
            said.append(_stale(layer.cloth, new))
        laid = layer.lay(garment.header.cutting, layouts, searched)
        said += layer.beyond_roll(laid)
        found.append(laid)
    return tuple(found), tuple(said)


def _stale(cloth: Cloth, missing: list[Wanted]) -> Diagnostic:
    told = STALE.at(cloth.origin, count=len(missing), cloth=cloth.name)
    told = told.note("pieces, cloth or order have changed since; what is missing is planned in a hurry")
    return told.help("run `specc lay`")


def sound_layouts(
    layer: ClothLayer, known: Mapping[str, Layout]
) -> tuple[dict[str, Layout], tuple[Diagnostic, ...]]:
    """The known layouts of a cloth that can be cut, and what is wrong with the others."""
    wanted = {one.key: one for cutting in CUTTINGS for _, one in layer.wanted(cutting) if one.key in known}
    wrong = {key: _fault_of(one, known[key]) for key, one in wanted.items()}
    return (
        {key: known[key] for key, fault in wrong.items() if fault is None},
        tuple(fault for fault in wrong.values() if fault is not None),
    )


def layers(
    garment: Garment, assembly: Assembly, cuts: tuple[tuple[CutPiece, ...], ...]
) -> Iterator[ClothLayer]:
    """One for each cloth of known width from which anything is cut."""
    order = tuple(Ratio(each.size, each.count) for each in garment.header.order)
    for cloth in garment.cloths:
        sizes = tuple(
            size_cuts(garment, cloth, size, of_size)
            for size, of_size in zip(assembly.sizes, cuts, strict=True)
        )
        if cloth.usable is not None and any(each.cuts for each in sizes):
            yield ClothLayer(cloth, sizes, order)
