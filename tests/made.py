"""Owns making garments in tests of the later stages.

The square top and the sheath, dressed in what a test adds.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from specc.gather import read
from specc.pipeline import check
from tests.compiling import Here

if TYPE_CHECKING:
    from specc.making.assembly import Round, SizeAssembly
    from specc.pipeline import Result

SHARED = Path(__file__).parent / "errors"

TOP = """garment top "Top" {{ style "TOP"; {head}sizes S, L; units cm }}
use "shared/top.garment"
use chart two-sizes
use block top
"""
SHEATH = """garment dress "Dress" {{ style "D"; {head}sizes 8, 12; units cm }}
use chart misses
use block sheath {{ {block} }}
trim edging "fold-over elastic" {{ kind fold-over elastic; width 20 mm; stretch 60% }}
"""
CLOTH = 'cloth calico "cotton calico" { width 150 cm; is stable }\n'
SIDES = """seam side joins front.side to back.side by french
seam flank joins front.flank to back.flank by french
"""
SHOULDERS = "seam shoulder joins front.shoulder to back.shoulder by french\n"


def made(text: str) -> Result:
    """Everything that checking the text gives."""
    source, faults = read("test.garment", text.encode())
    assert not faults
    return check(source, Here(SHARED))


def top(rest: str, *, head: str = "", cloth: str = CLOTH, seams: str = SHOULDERS + SIDES) -> Result:
    """The square top with shoulders and sides sewn, and the rest."""
    return made(TOP.format(head=head) + cloth + seams + rest)


def sheath(rest: str, *, head: str = "", block: str = "", cloth: str = CLOTH) -> Result:
    """The sheath, nothing sewn, and the rest."""
    return made(SHEATH.format(head=head, block=block) + cloth + rest)


def sizes(result: Result) -> tuple[SizeAssembly, ...]:
    """The assembled sizes; what was said instead, if there are none."""
    assert result.assembly is not None, [each.message for each in result.diagnostics]
    return result.assembly.sizes


def rounds(result: Result, finish: str, *, size: int = 0) -> tuple[Round, ...]:
    """The rounds of a finish in one size."""
    return tuple(laid for laid in sizes(result)[size].rounds if laid.by == finish)


def length(result: Result, edge: str, *, size: int = 0) -> float:
    """The stitched length of an edge `piece.edge` in one size."""
    from specc.pattern.lookup import edge_named, piece_named
    from specc.pattern.measure import stitched_length

    piece, name = edge.split(".")
    owner = piece_named(sizes(result)[size].pieces, piece)
    assert owner is not None
    found = edge_named(owner, name)
    assert found is not None
    return stitched_length(found)


def codes(result: Result) -> list[str]:
    """The codes of what was said."""
    return [each.code.id for each in result.diagnostics]
