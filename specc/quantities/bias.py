"""Owns which bias strips the order takes of each cloth, and how they are best cut.

Knows nothing of how strips lie on the cloth.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.laying.bias import bias_cuts
from specc.quantities.quantities import BiasPlan

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.laying.bias import BiasCut
    from specc.model.garment import Garment
    from specc.model.material import Cloth, Trim
    from specc.quantities.quantities import SizeQuantities

BIAS_KINDS: Final = ("bias strip", "piping")
"""Kinds of trim that are cut at 45 degrees where they are cut from a cloth."""

_MOST = 2_000  # pieces of a strip: more are cut in several goes, and counted by area


def bias_plans(garment: Garment, sizes: tuple[SizeQuantities, ...]) -> tuple[BiasPlan, ...]:
    """A plan for each bias trim and each width in which it is cut, of the order; else of one of each size."""
    return tuple(plan for trim in garment.trims for plan in _plans(garment, trim, sizes))


def _plans(garment: Garment, trim: Trim, sizes: tuple[SizeQuantities, ...]) -> Iterator[BiasPlan]:
    cloth = next((each for each in garment.cloths if each.name == trim.cut_from), None)
    if cloth is None or cloth.usable is None or trim.kind not in BIAS_KINDS:
        return
    ordered = {each.size: each.count for each in garment.header.order if each.count}
    counts = ordered or {size.size: 1 for size in sizes}
    widths = dict.fromkeys(
        cut.cut_width for size in sizes for cut in size.trims if cut.trim == trim.name and cut.cut_width
    )
    for wide in widths:
        width = float(cloth.usable.value) * (1.0 - float(cloth.shrinks_width))
        if not 0 < _number(trim, wide, sizes, counts) <= _MOST or wide >= width:
            continue
        pieces = tuple(_pieces(trim, wide, sizes, counts))
        cuts = bias_cuts(tuple(length for _, _, length in pieces), width, wide)
        yield BiasPlan(
            trim.name,
            cloth.name,
            wide,
            pieces,
            cuts,
            _chosen(trim, cuts),
            bool(ordered),
            tuple(_of_garment(trim, wide, size) for size in sizes),
            1.0 / (1.0 - float(cloth.shrinks_length)),
        )


def _pieces(
    trim: Trim, wide: float, sizes: tuple[SizeQuantities, ...], counts: dict[str, int]
) -> Iterator[tuple[str, str, float]]:
    """Size, use and length of every piece, in the order in which they are cut."""
    for size in sizes:
        for _ in range(counts.get(size.size, 0)):
            for cut in size.trims:
                if cut.trim == trim.name and cut.cut_width == wide:
                    yield from ((size.size, cut.used_on, cut.cut_length) for _ in range(cut.count))


def _number(trim: Trim, wide: float, sizes: tuple[SizeQuantities, ...], counts: dict[str, int]) -> int:
    """How many pieces there are, before they are listed."""
    return sum(
        cut.count * counts.get(size.size, 0)
        for size in sizes
        for cut in size.trims
        if cut.trim == trim.name and cut.cut_width == wide
    )


def _of_garment(trim: Trim, wide: float, size: SizeQuantities) -> float:
    return sum(
        cut.cut_length * cut.count for cut in size.trims if cut.trim == trim.name and cut.cut_width == wide
    )


def _chosen(trim: Trim, cuts: tuple[BiasCut, ...]) -> BiasCut:
    """The way that the maker chose, where it can be; else the one with the least cloth, joins apart."""
    asked = [cut for cut in cuts if cut.way == trim.bias_way]
    return asked[0] if asked else min(cuts, key=lambda cut: cut.length)


def cloth_of_plans(cloth: Cloth, plans: tuple[BiasPlan, ...]) -> tuple[float, tuple[float, ...]]:
    """The length of the cloth that its strips take in all, and the share of one garment of each size."""
    own = [plan for plan in plans if plan.cloth == cloth.name]
    total = sum(plan.chosen.length * plan.grown for plan in own)
    shares = [
        tuple(
            plan.chosen.length * plan.grown * one / sum(length for _, _, length in plan.pieces)
            for one in plan.per_garment
        )
        for plan in own
    ]
    return total, tuple(sum(each) for each in zip(*shares, strict=True))
