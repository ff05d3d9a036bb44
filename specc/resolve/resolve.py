"""Owns the order in which a spec is given its meaning.

Knows nothing of what the single declarations say.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeVar

from specc.diagnostics import Collector, Severity, declare
from specc.model.garment import Garment, Header
from specc.resolve.alterations import resolve_step
from specc.resolve.blocks import resolve_block
from specc.resolve.charts import resolve_chart
from specc.resolve.codes import NAME_TAKEN
from specc.resolve.construction import resolve_finish, resolve_seam
from specc.resolve.declared import Declared
from specc.resolve.demands import (
    resolve_accept,
    resolve_care,
    resolve_expect,
    resolve_label,
    resolve_measure,
    resolve_note,
)
from specc.resolve.echoes import broken_words, without_echoes
from specc.resolve.expressions import Scope
from specc.resolve.header import resolve_header
from specc.resolve.materials import resolve_cloth, resolve_thread, resolve_trim
from specc.resolve.parts import Parts
from specc.resolve.settings import Settings
from specc.source import Span
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Diagnostic
    from specc.model.block import Block
    from specc.model.chart import Chart
    from specc.model.material import Trim

NO_GARMENT = declare("SPC301", "no-garment", Severity.ERROR, "the spec does not declare a garment")
NO_CHART = declare("SPC308", "no-chart", Severity.ERROR, "the garment does not use a size chart")
NO_BLOCK = declare("SPC309", "no-block", Severity.ERROR, "the garment does not use a block")
NO_CLOTH = declare("SPC310", "no-cloth", Severity.ERROR, "the garment does not say what cloth it is made of")

Item = TypeVar("Item")


@dataclass(frozen=True, slots=True)
class Gathered:
    """The trees a garment is made of: the spec, the files it uses, the library files it speaks of."""

    spec: tree.Tree
    used: tuple[tree.Tree, ...]
    library: tuple[tree.Tree, ...]
    library_names: tuple[str, ...] = ()


def resolve(gathered: Gathered) -> tuple[Garment | None, tuple[Diagnostic, ...]]:
    """The checked garment; None when anything was wrong, with every fault that was found."""
    say = Collector()
    own = (*gathered.spec.declarations, *(d for used in gathered.used for d in used.declarations))
    library = tuple(d for file in gathered.library for d in file.declarations)
    declared = Declared(own, library, gathered.library_names, say)
    faulty = broken_words((*own, *library))
    start = Span(gathered.spec.file, 0, 0)

    chart = _chart(own, declared, start, faulty, say)
    parts = Parts()
    blocks = _blocks(own, declared, chart, parts, say)
    if not _uses(own, "block") and faulty is None:
        say.add(NO_BLOCK.at(start).help("name one: `use block sheath`"))
    header = _header(own, chart, start, say)

    cloths = tuple(resolve_cloth(sheet, say) for sheet in _sheets(own, "cloth"))
    if not cloths and faulty is None:
        say.add(NO_CLOTH.at(start).help("declare it: `cloth NAME { … }`"))
    trims = {trim.name: trim for trim in _trims(own, frozenset(cloth.name for cloth in cloths), say)}
    threads = tuple(resolve_thread(sheet, say) for sheet in _sheets(own, "thread"))

    values = {} if chart is None else {m.name: (m.name, m.dimension) for m in chart.measurements}
    before = Scope(values, parts)
    steps = (step for alter in _of(own, tree.Alter) for step in alter.steps if not isinstance(step, tree.Broken))
    alterations = tuple(done for step in steps for done in resolve_step(step, before, parts, say))

    seams = tuple(_kept(resolve_seam(node, declared, trims, parts, say) for node in _of(own, tree.Seam)))
    nodes = tuple(_of(own, tree.Finish))
    finishes = tuple(_kept(resolve_finish(node, declared, trims, parts, say) for node in nodes))

    after = Scope(values, parts, finishes=tuple(node.name.text for node in nodes))
    measures = tuple(_kept(resolve_measure(node, after, say) for node in _of(own, tree.Measure)))
    expects = tuple(_kept(resolve_expect(node, after, say) for node in _of(own, tree.Expect)))
    accepts = tuple(_kept(resolve_accept(node, say) for node in _of(own, tree.Accept)))
    care = tuple(line for sheet in _sheets(own, "care") for line in resolve_care(sheet, say))
    labels = tuple(_kept(resolve_label(node, parts, say) for node in _of(own, tree.Label)))
    notes = tuple(_kept(resolve_note(node, parts, say) for node in _of(own, tree.Note)))

    if say.failed or header is None or chart is None or faulty is not None:
        failed = (*(() if chart else ("chart",)), *(() if len(blocks) == len(_uses(own, "block")) else ("block",)))
        return None, without_echoes(say.diagnostics, faulty or frozenset(), failed)
    files = (gathered.spec, *gathered.used, *gathered.library)
    return Garment(
        header, chart, blocks, cloths, tuple(trims.values()), threads, alterations, seams, finishes,
        measures, expects, accepts, care, labels, notes, tuple(file.file for file in files),
    ), say.diagnostics  # fmt: skip


def _of(own: Iterable[tree.Declaration], kind: type[Item]) -> Iterable[Item]:
    return (declaration for declaration in own if isinstance(declaration, kind))


def _sheets(own: Iterable[tree.Declaration], kind: str) -> tuple[tree.Sheet, ...]:
    return tuple(sheet for sheet in _of(own, tree.Sheet) if sheet.kind.text == kind)


def _kept(items: Iterable[Item | None]) -> Iterable[Item]:
    return (item for item in items if item is not None)


def _uses(own: Iterable[tree.Declaration], kind: str) -> tuple[tree.UseLibrary, ...]:
    return tuple(use for use in _of(own, tree.UseLibrary) if use.kind.text == kind)


def _chart(
    own: tuple[tree.Declaration, ...], declared: Declared, start: Span, faulty: frozenset[str] | None, say: Collector
) -> Chart | None:
    uses = _uses(own, "chart")
    if not uses:
        if faulty is None:
            say.add(NO_CHART.at(start).help("name one: `use chart misses`"))
        return None
    for more in uses[1:]:
        say.add(NAME_TAKEN.at(more.span, kind="the", name="chart").see(uses[0].span, "first here"))
    node = declared.find(tree.Chart, uses[0].name)
    return None if node is None else resolve_chart(node, say)


def _blocks(
    own: tuple[tree.Declaration, ...],
    declared: Declared,
    chart: Chart | None,
    parts: Parts,
    say: Collector,
) -> tuple[Block, ...]:
    blocks = []
    for use in _uses(own, "block"):
        node = declared.find(tree.Block, use.name)
        if node is not None:
            settings = Settings(use.settings, use.name.span, say)
            blocks.append(resolve_block(node, settings, chart, parts, say))
    return tuple(_kept(blocks))


def _header(own: tuple[tree.Declaration, ...], chart: Chart | None, start: Span, say: Collector) -> Header | None:
    sheets = _sheets(own, "garment")
    if not sheets:
        broken = any(isinstance(declaration, tree.Broken) for declaration in own)
        if not broken:
            say.add(NO_GARMENT.at(start).help('begin with `garment NAME "title" { … }`'))
        return None
    for more in sheets[1:]:
        said = NAME_TAKEN.at(more.kind.span, kind="the", name="garment")
        say.add(said.see(sheets[0].kind.span, "first here").help("one spec is one garment"))
    return resolve_header(sheets[0], chart, say)


def _trims(own: tuple[tree.Declaration, ...], cloths: frozenset[str], say: Collector) -> tuple[Trim, ...]:
    return tuple(resolve_trim(sheet, cloths, say) for sheet in _sheets(own, "trim"))
