"""Owns which bias strips the order takes of each cloth, and how they are best cut.

Knows nothing of how strips lie on the cloth.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.laying.bias import bias_cuts, from_offcuts
from specc.laying.offcuts import offcuts
from specc.model.spreading import OFFCUTS, WHOLE
from specc.quantities.quantities import BiasPlan

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.laying import ClothLays
    from specc.laying.bias import BiasCut
    from specc.laying.offcuts import Offcuts
    from specc.model.garment import Garment
    from specc.model.material import Cloth
    from specc.quantities.quantities import SizeQuantities, StripCut

_MOST = 2_000  # pieces of a strip: more are cut in several goes, and counted by area


def bias_plans(
    garment: Garment, sizes: tuple[SizeQuantities, ...], lays: tuple[ClothLays, ...]
) -> tuple[BiasPlan, ...]:
    """A plan for each trim or piece and each of its widths: of the order, else of one garment a size."""
    wanted = dict.fromkeys(_key(cut) for size in sizes for cut in size.strips if cut.bias)
    order = {name: index for index, name in enumerate(each.name for each in garment.trims)}
    by_trim = sorted(wanted, key=lambda key: order.get(key[0], len(order)))
    plans: list[BiasPlan] = []
    for key in by_trim:
        laid = next((each for each in lays if each.cloth == key[2]), None)
        plan = _plan(garment, key, sizes, laid, tuple(plans))
        plans += [plan] if plan is not None else []
    return tuple(plans)


def _key(cut: StripCut) -> tuple[str, bool, str, float]:
    return cut.name, cut.piece, cut.cloth, cut.wide


def _plan(
    garment: Garment,
    key: tuple[str, bool, str, float],
    sizes: tuple[SizeQuantities, ...],
    laid: ClothLays | None,
    before: tuple[BiasPlan, ...],
) -> BiasPlan | None:
    """The plan of one strip; offcuts that plans `before` it take of the lays are taken."""
    name, piece, of_cloth, wide = key
    cloth = next(each for each in garment.cloths if each.name == of_cloth)
    if cloth.usable is None:
        return None
    ordered = {each.size: each.count for each in garment.header.order if each.count}
    counts = ordered or {size.size: 1 for size in sizes}
    strips = {size.size: tuple(cut for cut in size.strips if cut.bias and _key(cut) == key) for size in sizes}
    width = float(cloth.usable.value) * (1.0 - float(cloth.shrinks_width))
    number = sum(cut.count * counts.get(size, 0) for size, cuts in strips.items() for cut in cuts)
    if not 0 < number <= _MOST or wide >= width:
        return None
    pieces = tuple(_pieces(strips, counts))
    lengths = tuple(length for _, _, length in pieces)
    cuts = bias_cuts(lengths, width, wide)
    left = (
        () if laid is None else offcuts(cloth, laid, _taken(before, of_cloth), wide=wide, enough=sum(lengths))
    )
    free = tuple(length for each in left for length in each.lengths for _ in range(each.times))
    found = from_offcuts(lengths, free, (width, wide), whole=piece)
    cuts += () if found is None else (found,)
    asked = next((trim.bias_way for trim in garment.trims if trim.name == name and not piece), None)
    chosen = _chosen(WHOLE if piece else asked, cuts)
    return BiasPlan(
        name,
        piece,
        of_cloth,
        wide,
        pieces,
        cuts,
        chosen,
        bool(ordered),
        tuple(sum(cut.length * cut.count for cut in strips[size.size]) for size in sizes),
        1.0 / (1.0 - float(cloth.shrinks_length)),
        tuple(each.of_at_least(chosen.strips[-1]) for each in left) if chosen.way == OFFCUTS else (),
    )


def _taken(plans: tuple[BiasPlan, ...], cloth: str) -> tuple[tuple[Offcuts, ...], ...]:
    return tuple(plan.offcuts for plan in plans if plan.cloth == cloth and plan.offcuts)


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

    Of a piece, which would show a join, whole strips are asked for (common practice, no source). Offcuts are
    only taken where they are asked for: they are there if the lays are cut as they are drawn.
    """
    found = [cut for cut in cuts if cut.way == asked]
    return found[0] if found else min((cut for cut in cuts if cut.way != OFFCUTS), key=lambda cut: cut.length)


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
