"""Owns drafting a block in a test: from the language or from the library to the pieces of one size."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from specc.drafting import draft
from specc.gather import gather
from specc.resolve import resolve
from specc.source import SourceFile
from specc.world import Folder

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.drafting import Drafted
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece

SIZES = ("6", "8", "10", "12", "14", "16", "18", "20")

AROUND_BLOCK = """garment trial "Trial" {{
  style  "T-1"
  sizes  {sizes}
  sample {sample}
}}
use chart {chart}
use block {block} {{ {settings} }}
cloth sheeting {{ fibre 100% cotton; width 150 cm; weight 150 g/m2 }}
{more}"""


def garment(text: str) -> Garment:
    """The checked garment of a text without faults."""
    world = Folder(Path(__file__).parent / "errors")
    gathered, faults = gather(SourceFile("trial.garment", text), world)
    found, more = resolve(gathered)
    assert found is not None, [fault.message for fault in (*faults, *more)]
    return found


def written(block: str, *, chart: str = "measurement bust = 80, 100 cm") -> Garment:
    """A garment of sizes S and L whose block `drawn` has this body, on a chart with these lines."""
    more = f"chart sizes {{\n  sizes S, L\n{chart}\n}}\nblock drawn {{\n{block}\n}}\n"
    return garment(
        AROUND_BLOCK.format(sizes="S, L", sample="S", chart="sizes", block="drawn", settings="", more=more)
    )


@cache
def from_library(block: str, settings: str = "") -> Garment:
    """A garment of every size of the library's chart that uses a block of the library."""
    sizes = ", ".join(SIZES)
    return garment(
        AROUND_BLOCK.format(sizes=sizes, sample="12", chart="misses", block=block, settings=settings, more="")
    )


@cache
def in_size(block: str, size: str, settings: str = "") -> Drafted:
    """A block of the library in one size."""
    return drafted(from_library(block, settings), size)


def drafted(found: Garment, size: str) -> Drafted:
    """The pieces of a garment's blocks in one size, drafted without a fault."""
    value, faults = draft(found.blocks, found.chart, size)
    assert value is not None, [fault.message for fault in faults]
    return value


def faults_of(found: Garment, size: str = "S") -> tuple[Diagnostic, ...]:
    """What is said about the blocks in one size, which cannot be drafted."""
    value, faults = draft(found.blocks, found.chart, size)
    assert value is None
    return faults


def named(value: Drafted) -> dict[str, Piece]:
    """The pieces by name."""
    return {piece.name: piece for piece in value.pieces}
