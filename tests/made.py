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
PANELS = """garment curtain "Curtain" {{ style "C"; sizes S; units cm }}
chart one-size {{ sizes S, L; measurement bust = 88, 100 cm }}
block panels {{
  piece front "front" {{
    cut 2
    point a at 0 cm, 0 cm
    point b at 20 cm, 0 cm
    point c at 20 cm, {front}
    point d at 0 cm, {front}
    edge low from a {{ line to b }}
    edge side from b {{ line to c }}
    edge top from c {{ line to d }}
    edge centre from d {{ line to a }}
    {on_front}
  }}
  piece back "back" {{
    cut 2
    point b at 20 cm, 0 cm
    point e at 40 cm, 0 cm
    point f at 40 cm, {back}
    point c at 20 cm, {back}
    edge low from b {{ line to e }}
    edge centre from e {{ line to f }}
    edge top from f {{ line to c }}
    edge side from c {{ line to b }}
    {on_back}
  }}
}}
use chart one-size
use block panels
cloth calico "cotton calico" {{ width 150 cm; is stable }}
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


def panels(
    rest: str = "seam side joins front.side to back.side by french",
    *,
    front: str = "40 cm",
    back: str = "40 cm",
    on_front: str = "",
    on_back: str = "",
) -> Result:
    """Two rectangles whose sides, `b` to `c`, are sewn together."""
    text = PANELS.format(front=front, back=back, on_front=on_front, on_back=on_back)
    return made(f"{text}{rest}\n")


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
