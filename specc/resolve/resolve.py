"""Owns the order in which a spec is given its meaning.

Knows nothing of what the single declarations say.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from itertools import takewhile
from typing import TYPE_CHECKING, TypeVar

from specc.diagnostics import Collector, Severity, declare
from specc.model.garment import Garment
from specc.resolve.alterations import Alterer
from specc.resolve.attachments import Attacher
from specc.resolve.blocks import resolve_block, resolve_pieces
from specc.resolve.broken import broken_words, has_broken
from specc.resolve.charts import Measured, resolve_chart
from specc.resolve.codes import EMPTY, MORE_THAN_ONE, UNKNOWN_NAME, UNKNOWN_PROPERTY, enumerated, there_are
from specc.resolve.colourways import ordered_in_all, resolve_colourway
from specc.resolve.construction import Maker
from specc.resolve.costing import resolve_costing
from specc.resolve.declared import Declared, report_nameless
from specc.resolve.demands import (
    resolve_accept,
    resolve_care,
    resolve_expect,
    resolve_label,
    resolve_measure,
    resolve_note,
)
from specc.resolve.drawings import Paper
from specc.resolve.echoes import without_echoes
from specc.resolve.expressions import Scope
from specc.resolve.grading import Sizes, resolve_grades
from specc.resolve.header import resolve_header
from specc.resolve.limits import resolve_within
from specc.resolve.makings import Terms
from specc.resolve.materials import resolve_cloth, resolve_thread, resolve_trim
from specc.resolve.needs import needs, speaks_of, told_of_block
from specc.resolve.packing import resolve_packing
from specc.resolve.parts import Parts
from specc.resolve.plies import report_cut_twice, report_two_cloths, resolve_also_cut
from specc.resolve.renaming import renamed
from specc.resolve.settings import Settings
from specc.resolve.spreading import report_turned
from specc.source import Span
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from specc.diagnostics import Diagnostic
    from specc.model.alteration import Alteration
    from specc.model.attachment import Attachment
    from specc.model.block import Block
    from specc.model.garment import Expect, Header
    from specc.model.material import Cloth, Trim
    from specc.resolve.grading import Grades

NO_GARMENT = declare("SPC301", "no-garment", Severity.ERROR, "the spec does not declare a garment")
NO_CHART = declare("SPC308", "no-chart", Severity.ERROR, "the garment does not use a size chart")
NO_BLOCK = declare("SPC309", "no-block", Severity.ERROR, "the garment does not use a block")
NO_CLOTH = declare("SPC310", "no-cloth", Severity.ERROR, "nothing says what cloth {what} is made of")

Item = TypeVar("Item")


@dataclass(frozen=True, slots=True)
class Gathered:
    """The trees a garment is made of: the spec, the files it uses, the library files it speaks of.

    `complete`: whether every file that is used could be had. `drawings` are those that pieces are taken from,
    by where their names are written.
    """

    spec: tree.Tree
    used: tuple[tree.Tree, ...]
    library: tuple[tree.Tree, ...]
    complete: bool = True
    drawings: Mapping[tree.Text, tree.Drawing] = field(default_factory=dict)

    @property
    def own(self) -> tuple[tree.Declaration, ...]:
        """The declarations of the files that are used, and then of the spec."""
        return tuple(declaration for file in (*self.used, self.spec) for declaration in file.declarations)


def resolve(gathered: Gathered) -> tuple[Garment | None, tuple[Diagnostic, ...]]:
    """The checked garment; None when anything was wrong, with every fault that was found."""
    return _Resolution(gathered).run()


class _Resolution:
    """One run through the declarations, in an order in which each finds what it speaks of."""

    def __init__(self, gathered: Gathered) -> None:
        self._gathered = gathered
        self._say = Collector()
        self._own = gathered.own
        library = tuple(declaration for file in gathered.library for declaration in file.declarations)
        self._declared = Declared(self._own, library, self._say)
        self._whole = not has_broken((*self._own, *library)) and gathered.complete
        self._silent = broken_words(
            (*self._own, *library)
        )  # names of which it cannot be said that they are not there
        self._missing: dict[str, None] = {} if gathered.complete else {"file": None}
        self._parts = Parts()
        garment = next(iter(self._sheets("garment")), None)
        if garment is None:
            self._head = Span(gathered.spec.file, 0, 0)
        else:
            self._head = garment.kind.span if garment.name is None else garment.name.span

    def run(self) -> tuple[Garment | None, tuple[Diagnostic, ...]]:
        """The garment, or what is wrong."""
        say, parts = self._say, self._parts
        if report_nameless(self._of(tree.Sheet), say):
            self._missing["name"] = None
        measured = self._chart()
        chart = measured.chart
        header = self._header(measured)
        blocks = self._blocks(measured, Paper(self._grades(measured, header), self._gathered.drawings))
        cloths, trims = self._cloths_and_trims()
        threads = tuple(resolve_thread(sheet, say) for sheet in self._sheets("thread"))
        packing = tuple(resolve_packing(sheet, say) for sheet in self._sheets("packing"))
        bought = (*(cloth.name for cloth in cloths), *trims, *(thread.name for thread in threads))
        sizes = None if header is None else header.sizes
        colourways = tuple(
            resolve_colourway(sheet, bought, sizes, say) for sheet in self._sheets("colourway")
        )
        if header is not None:
            header = ordered_in_all(header, colourways, say)

        values, failed = measured.values, measured.failed
        alterer = Alterer(Scope(values, parts, missing=failed), parts, say)
        steps = (
            step
            for alter in self._of(tree.Alter)
            for step in alter.steps
            if not isinstance(step, tree.Broken)
        )
        alterations: tuple[Alteration, ...] = _kept(alterer.step(step) for step in steps)
        self._every_piece_has_cloth(cloths)
        report_two_cloths(cloths, parts, say)
        report_turned(cloths, parts, say)
        nodes_again = self._of(tree.AlsoCut)
        again = tuple(ply for node in nodes_again for ply in resolve_also_cut(node, cloths, parts, say))
        report_cut_twice(again, say)

        terms = Terms(Scope(values, parts, missing=failed), header.unit if header is not None else "cm")
        maker = Maker(self._declared, trims, parts, say, terms=terms)
        seams = _kept(maker.seam(node) for node in self._of(tree.Seam))
        nodes = tuple(one for one in self._own if isinstance(one, tree.Finish | tree.Closure))
        finishes = _kept(
            maker.finish(node) if isinstance(node, tree.Finish) else maker.closure(node) for node in nodes
        )
        attacher = Attacher(alterer, maker, Scope(values, parts, missing=failed), parts, say)
        attachments: tuple[Attachment, ...] = _kept(
            attacher.attachment(node) for node in self._own if isinstance(node, tree.SewOn | tree.Catch)
        )
        for method in self._declared.unused(tree.Method):
            maker.unused_method(method)

        finished = (*(node.name.text for node in nodes), *(seam.name for seam in seams if seam.stays_open))
        after = Scope(values, parts, finishes=finished, missing=failed)
        measures = _kept(resolve_measure(node, after, say) for node in self._of(tree.Measure))
        expects = _kept(resolve_expect(node, after, say) for node in self._of(tree.Expect))
        expects += self._within(header, after)
        accepts = _kept(resolve_accept(node, say) for node in self._of(tree.Accept))
        care = tuple(line for sheet in self._only("care") for line in resolve_care(sheet, say))
        costing = next((resolve_costing(sheet, say) for sheet in self._only("cost")), None)
        labels = _kept(resolve_label(node, parts, say) for node in self._of(tree.Label))
        notes = _kept(resolve_note(node, parts, say) for node in self._of(tree.Note))

        if say.failed or header is None or not self._whole:
            said = without_echoes(say.diagnostics, self._silent, self._missing)
            return None, said if measured.wanted else tuple(_without_chart(one) for one in said)
        gathered = self._gathered
        trees = (gathered.spec, *gathered.used, *gathered.library)
        read = [file.file for file in trees] + [drawing.file for drawing in gathered.drawings.values()]
        files = tuple(dict.fromkeys(read))
        return Garment(
            header, chart, blocks, cloths, again, _kept(trims.values()), threads, alterations, seams,
            finishes, measures, expects, accepts, care, labels, notes, files, costing, attachments,
            packing, colourways, self._declared.used(), self._declared.left_over(),
        ), say.diagnostics  # fmt: skip

    # --- what there is ---

    def _of(self, kind: type[Item]) -> tuple[Item, ...]:
        return tuple(declaration for declaration in self._own if isinstance(declaration, kind))

    def _sheets(self, kind: str) -> tuple[tree.Sheet, ...]:
        return tuple(sheet for sheet in self._of(tree.Sheet) if sheet.kind.text == kind)

    def _uses(self, kind: str) -> tuple[tree.UseLibrary, ...]:
        return tuple(use for use in self._of(tree.UseLibrary) if use.kind.text == kind)

    def _only(self, kind: str) -> tuple[tree.Sheet, ...]:
        """The one sheet of a kind; further ones are reported."""
        sheets = self._sheets(kind)
        for more in sheets[1:]:
            told = MORE_THAN_ONE.at(more.kind.span, owner="a spec", what=f"`{kind}`")
            self._say.add(told.see(sheets[0].kind.span, "the first"))
        return sheets[:1]

    # --- what a garment needs ---

    def _header(self, measured: Measured) -> Header | None:
        sheets = self._only("garment")
        if sheets:
            heard = Collector()
            header = resolve_header(sheets[0], measured, heard)
            self._say.add(*heard.diagnostics)
            if not self._uses("chart") and header is None and not heard.failed:
                told = NO_CHART.at(self._head).help(self._chart_cure())
                self._lacks(told, "or name the sizes in the garment: `sizes S, M, L`")
            return header
        if self._whole:
            self._say.add(NO_GARMENT.at(self._head).help('begin with `garment NAME "title" { … }`'))
        return None

    def _lacks(self, told: Diagnostic, cure: str) -> None:
        """Say what a garment lacks, unless there is none, or a statement that cannot be read may say it."""
        if self._whole and self._sheets("garment"):
            self._say.add(told.help(cure))

    def _chart(self) -> Measured:
        uses = self._uses("chart")
        for more in uses[1:]:
            told = MORE_THAN_ONE.at(more.span, owner="a garment", what="chart")
            self._say.add(told.see(uses[0].span, "the first"))
        node = self._declared.find(tree.Chart, uses[0].name) if uses else None
        for use in uses:
            if use.renaming is not None:
                owner, name = f"chart `{use.name.text}`", "as"
                told = UNKNOWN_PROPERTY.at(use.renaming.span, owner=owner, what="setting", name=name)
                self._say.add(told.help("only a block is used under other names"))
            for item in use.settings[:1]:
                place = item.name.span if isinstance(item, tree.Property) else item.span
                owner, name = f"chart `{use.name.text}`", place.text.split()[0]
                told = UNKNOWN_PROPERTY.at(place, owner=owner, what="setting", name=name)
                self._say.add(told.help("a chart takes no settings; copy it and change the copy"))
        for unused in self._declared.unused(tree.Chart):
            resolve_chart(unused, self._say)
        measured = (
            Measured(None, wanted=bool(uses) or not self._whole)
            if node is None
            else resolve_chart(node, self._say)
        )
        if measured.wanted and (measured.chart is None or not measured.chart.measurements):
            self._missing["chart"] = None
        return measured

    def _within(self, header: Header | None, scope: Scope) -> tuple[Expect, ...]:
        """The demands of charts of limits, for the sizes that are made."""
        found: tuple[Expect, ...] = ()
        for node in self._of(tree.ExpectWithin):
            chart = self._declared.find(tree.Chart, node.chart)
            limits = None if chart is None else resolve_chart(chart, self._say).chart
            if limits is not None and header is not None:
                found += resolve_within(node, limits, header.sizes, scope, self._say)
        return found

    def _grades(self, measured: Measured, header: Header | None) -> Grades:
        """The grade rules, over the sizes of the chart if there is one, else over those of the garment."""
        sizes = None
        if header is not None and measured.chart is not None:
            sizes = Sizes(measured.chart.sizes, header.sizes, f"in chart `{measured.chart.name}`")
        elif header is not None:
            sizes = Sizes(header.sizes, header.sizes, "among the garment's sizes")
        scope = Scope(measured.values, missing=measured.failed)
        return resolve_grades(self._of(tree.Grade), sizes, scope, self._say)

    def _blocks(self, measured: Measured, paper: Paper) -> tuple[Block, ...]:
        uses, own = self._uses("block"), self._of(tree.Piece)
        if not uses and not own:
            cure = there_are(self._declared.names(tree.Block))
            told = NO_BLOCK.at(self._head).help(f"write `use block NAME`; {cure}")
            self._lacks(told, "or write `piece NAME { … }` for each piece of your own")
            self._missing["block"] = None
        blocks = []
        seen: dict[str, Span] = {}
        for use in uses:
            called = use.renaming.name.text if use.renaming else use.name.text
            if called in seen:
                told = MORE_THAN_ONE.at(use.span, owner="a garment", what=f"block `{called}`")
                told = told.see(seen[called], "the first")
                self._say.add(told.help(f"give its pieces other names: `use block {use.name.text} as NAME`"))
                continue
            seen[called] = use.span
            node = self._declared.find(tree.Block, use.name)
            if node is None:
                self._missing["block"] = None
                continue
            heard = Collector()
            settings = Settings(use.settings, use.name.span, heard)
            named = renamed(node, use.renaming)
            block = resolve_block(named, settings, measured, parts=self._parts, paper=paper, say=heard)
            self._say.add(*self._told_of_block(heard.diagnostics, use, node, measured))
            if block is None:
                self._missing["block"] = None
            else:
                blocks.append(replace(block, name=called))
        for unused in self._declared.unused(tree.Block):
            self._check_unused(unused)
        standing = resolve_pieces(own, measured, parts=self._parts, paper=paper, say=self._say)
        if standing is not None:  # in the order of the text, by the first of them
            before = takewhile(lambda declaration: not isinstance(declaration, tree.Piece), self._own)
            blocks.insert(sum(declaration in uses for declaration in before), standing)
        if uses and blocks and "block" not in self._missing and not self._parts.pieces:
            told = EMPTY.at(uses[0].name.span, owner=f"block `{uses[0].name.text}`", parts="pieces")
            self._lacks(told, "write `piece NAME { … }` in it for each")
            self._missing["block"] = None
        return tuple(blocks)

    def _told_of_block(
        self, said: Sequence[Diagnostic], use: tree.UseLibrary, node: tree.Block, measured: Measured
    ) -> Iterable[Diagnostic]:
        """What was said of a block; that measurements are lacking is said once, with all of them."""
        own = self._declared.is_own(node)
        if measured.chart is not None:
            return told_of_block(said, use, node, measured.chart, own=own)
        lacks = [told for told in said if told.code is UNKNOWN_NAME and speaks_of(node, told)]
        if measured.wanted or own or not lacks:
            return said
        self._missing["chart"] = None
        told = NO_CHART.at(use.name.span).help(self._chart_cure())
        told = told.note(f"the block speaks of {enumerated([f'`{name}`' for name in needs(node)], 'and')}")
        return (*(one for one in said if one not in lacks), told)

    def _chart_cure(self) -> str:
        names = there_are(self._declared.names(tree.Chart))
        return f"write `use chart NAME`{f'; {names}' if names else ''}"

    def _check_unused(self, node: tree.Block) -> None:
        """Report what is wrong in an unused block, but for measurements, which another chart may have."""
        heard = Collector()
        settings = Settings((), node.name.span, heard)
        resolve_block(node, settings, Measured(None), parts=Parts(), paper=Paper(), say=heard)
        self._say.add(*without_echoes(heard.diagnostics, frozenset(), ("chart",)))

    def _cloths_and_trims(self) -> tuple[tuple[Cloth, ...], dict[str, Trim | None]]:
        """The cloths, and the trims by name; None is a trim with a fault, of which no more is asked."""
        sheets = self._sheets("cloth")
        cloths = tuple(resolve_cloth(sheet, self._say) for sheet in sheets)
        if not sheets:
            self._lacks(NO_CLOTH.at(self._head, what="the garment"), "declare it: `cloth NAME { … }`")
        names = tuple(cloth.name for cloth in cloths)
        trims: dict[str, Trim | None] = {}
        for sheet in self._sheets("trim"):
            heard = Collector()
            trim = resolve_trim(sheet, names, heard)
            self._say.add(*heard.diagnostics)
            faulty = heard.failed or has_broken(sheet.body)
            trims.setdefault(trim.name, None if faulty else trim)
        return cloths, trims

    def _every_piece_has_cloth(self, cloths: tuple[Cloth, ...]) -> None:
        """Report a piece that no cloth is for: each is for the shell unless it says what it is for."""
        uses = {use for cloth in cloths for use in cloth.use.split(", ")}
        left = [piece for piece in self._parts.pieces if piece not in uses]
        if cloths and "shell" not in uses and left:
            cure = f"let a cloth be for it: `for {left[0]}`; one without a line `for` is for all pieces"
            self._lacks(NO_CLOTH.at(self._head, what=f"piece `{left[0]}`"), cure)


def _without_chart(told: Diagnostic) -> Diagnostic:
    """What is said of an unknown value, which may have been meant for a body measurement."""
    if told.code is UNKNOWN_NAME and dict(told.facts)["kind"] == "measurement or value":
        return told.note("the garment uses no size chart, so it knows no body measurements")
    return told


def _kept(items: Iterable[Item | None]) -> tuple[Item, ...]:
    return tuple(item for item in items if item is not None)
