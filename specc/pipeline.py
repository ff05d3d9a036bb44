"""Owns the order of the stages, from text to document. Knows nothing of the insides of any stage.

text -> trees -> garment -> pieces, drafted and altered -> assembly -> quantities -> judgement -> document
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc import __version__
from specc.alteration.shape import shape
from specc.diagnostics import Collector, Severity
from specc.gather import gather, read
from specc.making import assemble
from specc.quantities import count
from specc.resolve import resolve
from specc.rules import RULES, Subject, judge

if TYPE_CHECKING:
    from specc.alteration.shape import Shaped
    from specc.diagnostics import Diagnostic
    from specc.document.document import Document
    from specc.gather import World
    from specc.making import Assembly
    from specc.model.garment import Garment
    from specc.quantities import Quantities
    from specc.resolve import Gathered
    from specc.rules import Judgement
    from specc.source import SourceFile


@dataclass(frozen=True, slots=True)
class Result:
    """The value at every border that was reached, and everything that was said on the way."""

    diagnostics: tuple[Diagnostic, ...]
    gathered: Gathered | None = None
    garment: Garment | None = None
    shaped: tuple[Shaped, ...] | None = None
    assembly: Assembly | None = None
    quantities: Quantities | None = None
    judgement: Judgement | None = None


def check(source: SourceFile, world: World) -> Result:
    """Text to judgement. A stage hands on a value, or nothing when a fault would make the next one guess."""
    say = Collector()
    gathered = say.keep(gather(source, world))
    garment = say.keep(resolve(gathered))
    if garment is None:
        return Result(say.diagnostics, gathered)
    shaped = say.keep(shape(garment))
    if shaped is None:
        return Result(say.diagnostics, gathered, garment)
    assembly = say.keep(assemble(garment, shaped))
    if assembly is None:
        return Result(say.diagnostics, gathered, garment, shaped)
    quantities = say.keep(count(garment, shaped, assembly))
    if quantities is None:
        return Result(say.diagnostics, gathered, garment, shaped, assembly)
    judgement = judge(Subject(garment, shaped, assembly, quantities), RULES)
    say.add(*judgement.standing)
    return Result(say.diagnostics, gathered, garment, shaped, assembly, quantities, judgement)


def check_bytes(name: str, data: bytes, world: World) -> Result:
    """The same from bytes: what is not text is reported."""
    source, said = read(name, data, world.called + name)
    return Result(said) if said else check(source, world)


def document(result: Result) -> Document | None:
    """The pages of a checked garment; None while it has errors."""
    from specc.document.build import build  # noqa: PLC0415  only a build pays for paper

    garment, assembly, judgement = result.garment, result.assembly, result.judgement
    failed = any(said.severity is Severity.ERROR for said in result.diagnostics)
    if failed or garment is None or assembly is None or result.quantities is None or judgement is None:
        return None
    return build(garment, assembly, result.quantities, judgement, version=__version__)
