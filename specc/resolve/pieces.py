"""Owns giving the statements of a piece their meaning: how it is cut, darts, lines, notches.

Knows nothing of how a point is found.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.block import (
    LevelDraft,
    LineDraft,
    NotchDraft,
    PieceDraft,
    PointDraft,
    TwoPointedDraft,
)
from specc.resolve.broken import has_broken
from specc.resolve.choices import holds
from specc.resolve.codes import EMPTY, MISSING, MORE_THAN_ONE, enumerated, name_taken, out_of_range
from specc.resolve.drawings import PieceDrawing
from specc.resolve.grading import PieceGrades
from specc.resolve.parts import PieceParts
from specc.resolve.positions import resolve_position
from specc.resolve.properties import titled
from specc.resolve.runs import resolve_edge
from specc.resolve.within import Within
from specc.syntax import tree
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.model.tracing import Traced
    from specc.resolve.drawings import Paper
    from specc.resolve.expressions import Scope
    from specc.resolve.parts import Parts
    from specc.source import Span

_LENGTH = (Dimension.LENGTH,)
_PLACE = (Dimension.LENGTH, Dimension.RATIO)
_MOST_CUT = 20
NOT_ON_EDGE = declare(
    "SPC234",
    "notch-not-on-edge",
    Severity.ERROR,
    "point `{point}` does not lie on one edge of `{piece}`, so that a notch cannot stand there",
)


def edges_at(piece: tree.Piece, point: str) -> tuple[str, ...]:
    """The edges of the piece that run through the point, or on which it was placed."""
    edges = [item for item in piece.body if isinstance(item, tree.Edge)]
    found = [
        edge.name.text
        for edge in edges
        if point in (edge.start.text, *(run.to.text for run in edge.runs if not isinstance(run, tree.Broken)))
    ]
    for item in piece.body:
        if isinstance(item, tree.PointStatement) and item.name.text == point:
            on = item.position
            if isinstance(on, tree.On) and on.edge.second is None:
                found += [edge.name.text for edge in edges if edge.name.text == on.edge.first.text]
    return tuple(dict.fromkeys(found))


def parts_of(piece: tree.Piece, say: Collector) -> PieceParts:  # noqa: C901 a case a statement
    """The parts that a piece declares; each bears a name of its own, whatever its kind."""
    parts = PieceParts(whole=not has_broken(piece.body))
    first: dict[str, Span] = {}

    def add(word: tree.Word, kind: str) -> bool:
        if word.text in first:
            kinds = {"point": "a point", "edge": "an edge", "line": "a reference line"}
            there = kinds.get(parts.kinds[word.text], "a dart")
            say.add(name_taken(word.span, there, word.text, first=first[word.text]))
            return False
        parts.kinds[word.text], first[word.text] = kind, word.span
        return True

    for item in piece.body:
        match item:
            case tree.PointStatement():
                add(item.name, "point")
            case tree.Line():
                if add(item.name, "line"):
                    parts.ends[item.name.text] = (item.start.text, item.end.text)
            case tree.LevelLine():
                add(item.name, "line")
            case tree.TwoPointed():
                add(item.name, "two-pointed dart")
            case tree.Edge():
                runs = [run for run in item.runs if not isinstance(run, tree.Broken)]
                if add(item.name, "edge") and runs and len(runs) == len(item.runs):
                    parts.ends[item.name.text] = (item.start.text, runs[-1].to.text)
                for run in runs:
                    if isinstance(run, tree.DartRun):
                        add(run.name, "dart")
    return parts


class Pieces:
    """Resolves the statements of one piece; one with a fault is left out, and the fault has been reported."""

    def __init__(  # noqa: PLR0913 what a piece may speak of
        self,
        node: tree.Piece,
        scope: Scope,
        choices: Mapping[str, tuple[tree.Choice, str]],
        *,
        parts: Parts,
        paper: Paper,
        say: Collector,
    ) -> None:
        self._node = node
        self._name = node.name.text
        self._choices = choices
        self._parts = parts
        self._drawing = PieceDrawing(node, paper, say)
        self._within = Within(node.name.text, scope, parts, self._drawing, say)
        self._grades = PieceGrades(node, paper.grades, scope, say)
        self._say = say

    def piece(self) -> PieceDraft:
        """The piece."""
        body = self._node.body
        edges = tuple(resolve_edge(item, self._within) for item in body if isinstance(item, tree.Edge))
        if not edges and not has_broken(body):
            told = EMPTY.at(self._node.name.span, owner=f"piece `{self._name}`", parts="edges")
            self._say.add(told.help("give it edges that close its outline"))
        points = [self._point(item) for item in body if isinstance(item, tree.PointStatement)]
        darts = [self._two_pointed(item) for item in body if isinstance(item, tree.TwoPointed)]
        lines = [self._line(item) for item in body if isinstance(item, tree.Line | tree.LevelLine)]
        notches = [self._notch(item) for item in body if isinstance(item, tree.Notch)]
        notches += [self._notch_at(item) for item in body if isinstance(item, tree.NotchAtPoint)]
        cut, fold = self._cut()
        return PieceDraft(
            self._name,
            titled(self._node.title, self._name),
            cut,
            fold,
            tuple(point for point in points if point is not None),
            edges,
            tuple(dart for dart in darts if dart is not None),
            tuple(line for line in lines if line is not None),
            tuple(notch for notch in notches if notch is not None),
            self._grain(),
            self._node.name.span,
            self._traced(),
            self._drawing.drawing(),
        )

    # --- how often, and which way ---

    def _cut(self) -> tuple[int, str | None]:
        """How often the piece is cut, and on which fold, by the one statement that holds; once by none."""
        statements = [item for item in self._node.body if isinstance(item, tree.Cut)]
        conditions = [self._holds(item.when) for item in statements]
        for item in statements:
            if item.fold is not None:
                self._within.edge(item.fold)
            if item.times.value.denominator != 1 or not 1 <= item.times.value <= _MOST_CUT:
                bounds = f"a whole number from 1 to {_MOST_CUT}"
                what = f"how often `{self._name}` is cut"
                self._say.add(out_of_range(item.times.span, what, bounds, found=item.times.span.text))
        holding = [item for item, holds in zip(statements, conditions, strict=True) if holds]
        if len(holding) > 1:
            self._tell_second("`cut` at a time", holding[1].span, holding[0].span)
        if not holding and statements and None not in conditions:
            told = MISSING.at(self._node.name.span, owner=f"piece `{self._name}`", name="cut")
            self._say.add(told.help("write a line `cut …` for every option of the choice"))
        if not holding:
            return 1, None
        fold = holding[0].fold
        return int(holding[0].times.value), fold.text if fold is not None else None

    def _holds(self, when: tree.When | None) -> bool | None:
        """Whether the condition holds; None when it cannot be known, which is reported."""
        return True if when is None else holds(when, self._choices, self._say)

    def _traced(self) -> Traced | None:
        """The size in which the piece was traced."""
        found = [item for item in self._node.body if isinstance(item, tree.Traced)]
        if len(found) > 1:
            self._tell_second("`traced`", found[1].span, found[0].span)
        return self._grades.traced

    def _grain(self) -> tuple[str, str] | None:
        found = [item for item in self._node.body if isinstance(item, tree.Grain)]
        if len(found) > 1:
            self._tell_second("`grain`", found[1].span, found[0].span)
        for item in found:
            self._within.points(item.start, item.end)
        return (found[0].start.text, found[0].end.text) if found else None

    def _tell_second(self, what: str, second: Span, first: Span) -> None:
        told = MORE_THAN_ONE.at(second, owner=f"piece `{self._name}`", what=what)
        self._say.add(told.see(first, "the first"))

    # --- parts ---

    def _point(self, node: tree.PointStatement) -> PointDraft | None:
        position = resolve_position(node.position, self._within)
        graded = self._grades.graded(node)
        return None if position is None else PointDraft(node.name.text, position, node.name.span, graded)

    def _two_pointed(self, item: tree.TwoPointed) -> TwoPointedDraft | None:
        known = self._within.points(item.top, item.bottom, item.middle)
        width = self._within.value(item.width, "the width of a dart", _LENGTH)
        if width is None or not known:
            return None
        ends = item.top.text, item.bottom.text, item.middle.text
        return TwoPointedDraft(item.name.text, *ends, width, item.name.span)

    def _line(self, item: tree.Line | tree.LevelLine) -> LineDraft | LevelDraft | None:
        if isinstance(item, tree.LevelLine):
            known = self._within.points(item.point)
            return LevelDraft(item.name.text, item.point.text, item.name.span) if known else None
        if not self._within.points(item.start, *item.through, item.end):
            return None
        through = tuple(point.text for point in item.through)
        return LineDraft(item.name.text, item.start.text, item.end.text, through, item.name.span)

    def _notch_at(self, item: tree.NotchAtPoint) -> NotchDraft | None:
        if not self._within.points(item.point):
            return None
        edges = edges_at(self._node, item.point.text)
        if len(edges) == 1:
            return NotchDraft(edges[0], item.point.text, None, item.double, item.span)
        told = NOT_ON_EDGE.at(item.point.span, point=item.point.text, piece=self._name)
        if edges:
            between = enumerated([f"`{edge}`" for edge in edges], "and")
            told = told.note(f"it is the corner between {between}").help("a corner shows by itself")
        else:
            told = told.help("say where the point lies: `point NAME on EDGE at …`, or let an edge run to it")
        self._say.add(told)
        return None

    def _notch(self, item: tree.Notch) -> NotchDraft | None:
        at = self._within.value(item.at, "the place of a notch", _PLACE)
        edge = self._within.edge(item.edge)
        if at is None or edge is None:
            return None
        corner = None if item.corner is None else self._parts.corner(item.corner, edge, self._say)
        return NotchDraft(item.edge.text, at, corner, item.double, item.span)
