"""Owns which bias strips the order takes of each cloth, and how they are best cut.

Knows nothing of how strips lie on the cloth.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.laying.bias import bias_cuts
from specc.model.spreading import WHOLE
from specc.quantities.quantities import BiasPlan

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.laying.bias import BiasCut
    from specc.model.garment import Garment
    from specc.model.material import Cloth
    from specc.quantities.quantities import SizeQuantities, StripCut

_MOST = 2_000  # pieces of a strip: more are cut in several goes, and counted by area


def bias_plans(garment: Garment, sizes: tuple[SizeQuantities, ...]) -> tuple[BiasPlan, ...]:
    """A plan for each trim or piece and each of its widths: of the order, else of one garment a size."""
    wanted = dict.fromkeys(_key(cut) for size in sizes for cut in size.strips if cut.bias)
    order = {name: index for index, name in enumerate(each.name for each in garment.trims)}
    by_trim = sorted(wanted, key=lambda key: order.get(key[0], len(order)))
    return tuple(plan for key in by_trim for plan in _plan(garment, key, sizes))


def _key(cut: StripCut) -> tuple[str, bool, str, float]:
    return cut.name, cut.piece, cut.cloth, cut.wide


def _plan(
    garment: Garment, key: tuple[str, bool, str, float], sizes: tuple[SizeQuantities, ...]
) -> Iterator[BiasPlan]:
    name, piece, of_cloth, wide = key
    cloth = next(each for each in garment.cloths if each.name == of_cloth)
    if cloth.usable is None:
        return
    ordered = {each.size: each.count for each in garment.header.order if each.count}
    counts = ordered or {size.size: 1 for size in sizes}
    strips = {size.size: tuple(cut for cut in size.strips if cut.bias and _key(cut) == key) for size in sizes}
    width = float(cloth.usable.value) * (1.0 - float(cloth.shrinks_width))
    number = sum(cut.count * counts.get(size, 0) for size, cuts in strips.items() for cut in cuts)
    if not 0 < number <= _MOST or wide >= width:
        return
    pieces = tuple(_pieces(strips, counts))
    cuts = bias_cuts(tuple(length for _, _, length in pieces), width, wide)
    asked = next((trim.bias_way for trim in garment.trims if trim.name == name and not piece), None)
    yield BiasPlan(
        name,
        piece,
        of_cloth,
        wide,
        pieces,
        cuts,
        _chosen(WHOLE if piece else asked, cuts),
        bool(ordered),
        tuple(sum(cut.length * cut.count for cut in strips[size.size]) for size in sizes),
        1.0 / (1.0 - float(cloth.shrinks_length)),
    )


def _pieces(
    strips: dict[str, tuple[StripCut, ...]], counts: dict[str, int]
) -> Iterator[tuple[str, str, float]]:
    """Size, use and length of every piece, in the order in which they are cut."""
    for size, cuts in strips.items():
        for _ in range(counts.get(size, 0)):
            for cut in cuts:
                yield from ((size, cut.used_on, cut.length) for _ in range(cut.count))


def _chosen(asked: str | None, cuts: tuple[BiasCut, ...]) -> BiasCut:
    """The way that is asked for, where it can be; else the one with the least cloth, joins apart.

    Of a piece, which would show a join, whole strips are asked for (common practice, no source).
    """
    found = [cut for cut in cuts if cut.way == asked]
    return found[0] if found else min(cuts, key=lambda cut: cut.length)


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
