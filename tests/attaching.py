"""Owns attaching things to the square top in a test: pockets, straps and loops of straight pieces."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.making.attached import CaughtAt, Placed
from tests.made import sizes, top

if TYPE_CHECKING:
    from specc.making.assembly import EdgeUse
    from specc.pipeline import Result

POCKET = """use block rectangle as pocket "pocket" {{ wide {wide} mm; long {long} mm; cutting {cutting} }}
hem pocket-top along pocket.top by double-turned {{ deep 2 cm; under 1 cm }}
"""
NECK = "finish neck along front.neck, back.neck by elastic-bound { binding edging }\n"
HEM = "hem bottom along front.hem, back.hem by double-turned { deep 2 cm; under 1 cm }\n"


def pocketed(
    attach: str, *, wide: float = 140, long: float = 150, cutting: str = "twice", more: str = ""
) -> Result:
    """The square top with a pocket of that size and what is attached."""
    return top(NECK + HEM + more + POCKET.format(wide=wide, long=long, cutting=cutting) + attach)


def placed(result: Result, *, number: int = 0) -> tuple[Placed, ...]:
    """What is sewn on, in every size."""
    found = tuple(size.attached[number] for size in sizes(result))
    assert all(isinstance(one, Placed) for one in found)
    return tuple(one for one in found if isinstance(one, Placed))


def caught(result: Result, *, number: int = 0) -> tuple[CaughtAt, ...]:
    """What is caught, in every size."""
    found = tuple(size.attached[number] for size in sizes(result))
    assert all(isinstance(one, CaughtAt) for one in found)
    return tuple(one for one in found if isinstance(one, CaughtAt))


def use(result: Result, edge: str) -> EdgeUse:
    """What an edge `piece.edge` is for, in the first size."""
    piece, name = edge.split(".")
    return next(one for one in sizes(result)[0].uses if (one.piece, one.edge) == (piece, name))
