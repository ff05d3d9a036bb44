"""Owns the order of the stages, from text to document. Knows nothing of the insides of any stage.

text -> trees -> garment -> pieces, drafted and altered -> assembly -> measures -> judgement -> cut pieces ->
lays -> quantities -> document
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from specc import __version__
from specc.alteration.shape import shape
from specc.diagnostics import Collector, Severity
from specc.gather import Refused, gather, read
from specc.making import assemble, cut
from specc.quantities.measure import measure
from specc.resolve import resolve
from specc.rules import RULES, Subject, judge

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.shape import Shaped
    from specc.diagnostics import Diagnostic
    from specc.document.document import Document
    from specc.gather import World
    from specc.laying import CutOut
    from specc.making import Assembly
    from specc.model.garment import Garment
    from specc.packing import Layout, Strip
    from specc.quantities.quantities import Measures, Quantities
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
    measures: Measures | None = None
    judgement: Judgement | None = None
    cut_out: CutOut | None = None
    lay_file: SourceFile | None = None


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
    measures = say.keep(measure(garment, shaped, assembly))
    if measures is None:
        return Result(say.diagnostics, gathered, garment, shaped, assembly)
    judgement = judge(Subject(garment, shaped, assembly, measures), RULES)
    say.add(*judgement.standing)
    return Result(say.diagnostics, gathered, garment, shaped, assembly, measures, judgement)


def check_bytes(name: str, data: bytes, world: World) -> Result:
    """The same from bytes: what is not text is reported."""
    source, said = read(name, data, world.called + name)
    return Result(said) if said else check(source, world)


def lay_out(result: Result, world: World, plan: Callable[[Strip], Layout] | None = None) -> Result:
    """A judged garment with its pieces cut and laid: as the lay file beside it says, else as `plan` does.

    Without a plan of the caller's own it is the quick one, bounded in work.
    """
    from specc.laying import CutOut, lay, lay_file  # noqa: PLC0415  only a build pays for lays
    from specc.packing import quick  # noqa: PLC0415

    if result.gathered is None or result.garment is None or result.assembly is None:
        return result
    say = Collector()
    say.add(*result.diagnostics)
    file = say.keep(lay_file_beside(result.gathered.spec.file.name, world))
    known = say.keep(lay_file.read(file)) if file else None
    pieces = cut(result.assembly)
    lays = say.keep(lay(result.garment, result.assembly, pieces, known, plan or quick))
    cut_out = CutOut(pieces, lays)
    return replace(result, diagnostics=say.diagnostics, cut_out=cut_out, lay_file=file if known else None)


def lay_file_beside(name: str, world: World) -> tuple[SourceFile | None, tuple[Diagnostic, ...]]:
    """The lay file beside the spec of that name; None where there is none, or none that is text."""
    from specc.laying import lay_file  # noqa: PLC0415

    beside = lay_file.beside(name)
    data = world.project(beside)
    if data is Refused.MISSING:
        return None, ()
    if isinstance(data, Refused):
        return None, (lay_file.unreadable(beside, str(data)),)
    file, said = read(beside, data)
    return (None, (lay_file.unreadable(beside, "it is not UTF-8 text"),)) if said else (file, ())


def quantities(result: Result) -> Quantities | None:
    """What a checked garment takes; None when checking ended before it could be known.

    Where it was not laid out, cloth is counted by area.
    """
    if result.garment is None or result.shaped is None or result.assembly is None or result.measures is None:
        return None
    from specc.laying import CutOut  # noqa: PLC0415  nor does a check count what is bought
    from specc.quantities.count import count  # noqa: PLC0415

    cut_out = result.cut_out or CutOut(cut(result.assembly))
    return count(result.garment, result.shaped, result.assembly, result.measures, cut_out)


def document(result: Result, *, priced: bool = True) -> Document | None:
    """The pages of a checked garment, with or without prices; None while it has errors."""
    from specc.document.build import build  # noqa: PLC0415  only a build pays for paper
    from specc.document.sheet import Sheet  # noqa: PLC0415
    from specc.flat import lay_flat  # noqa: PLC0415
    from specc.quantities.unpriced import unpriced  # noqa: PLC0415

    failed = any(said.severity is Severity.ERROR for said in result.diagnostics)
    amounts = None if failed else quantities(result)
    if amounts is None or result.garment is None or result.assembly is None or result.judgement is None:
        return None
    shown = amounts if priced else unpriced(amounts)
    project = _project(result)
    sizes = {size.size: size for size in result.assembly.sizes}
    flat = lay_flat(result.garment, sizes[result.garment.header.sample])
    return build(Sheet(result.garment, result.assembly, shown, result.judgement, flat, __version__, project))


def _project(result: Result) -> tuple[SourceFile, ...]:
    """The files of the project that a garment was made of, each once: the spec first, the lay file last."""
    if result.gathered is None:
        return ()
    trees = (result.gathered.spec, *result.gathered.used)
    drawings = (drawing.file for drawing in result.gathered.drawings.values())
    files = (*(tree.file for tree in trees), *drawings, result.lay_file)
    return tuple(file for file in dict.fromkeys(files) if file is not None)
