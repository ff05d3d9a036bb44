"""Owns grade rules and the sizes they speak of: how far a point moves from each size to the next.

Knows nothing of where points lie.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from specc.diagnostics import Severity, declare
from specc.model.tracing import Shift, Traced
from specc.resolve.codes import enumerated, name_taken, unknown_name, wrong_value
from specc.resolve.expressions import meaning
from specc.resolve.properties import said
from specc.syntax import tree
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from specc.diagnostics import Collector
    from specc.model.tracing import Grading
    from specc.resolve.expressions import Scope
    from specc.source import Span

STEP_LEFT_OUT = declare(
    "SPC321", "grade-step-left-out", Severity.ERROR, "grade rule `{rule}` has no step {steps}"
)
NOT_TRACED = declare(
    "SPC322",
    "traced-size-unknown",
    Severity.ERROR,
    "`{point}` is graded, but piece `{piece}` does not say in which size it was traced",
)
STEP_TWICE = declare(
    "SPC323", "grade-step-twice", Severity.ERROR, "the step from {low} to {high} stands twice in `{rule}`"
)

_LENGTH = (Dimension.LENGTH,)


class Rule(NamedTuple):
    """A grade rule: its shift for each step of the sizes, None where it says nothing of the step."""

    steps: tuple[Shift | None, ...]
    origin: Span


@dataclass(frozen=True, slots=True)
class Sizes:
    """The sizes in their order, those of the chart if there is one, and where they are from in words.

    `made` are those of them that the garment is made in.
    """

    order: tuple[str, ...]
    made: tuple[str, ...]
    where: str

    def index(self, atom: tree.Word | tree.Text | tree.Number, say: Collector) -> int | None:
        """The place of a size in the order; one that is not there is reported."""
        size = said(atom)
        if size in self.order:
            return self.order.index(size)
        say.add(unknown_name(atom.span, "size", size, known=self.order, where=f" {self.where}"))
        return None

    def needed(self, traced: str) -> range:
        """The steps that lie between the traced size and any that is made."""
        places = [self.order.index(size) for size in (traced, *self.made)]
        return range(min(places), max(places))


@dataclass(frozen=True, slots=True)
class Grades:
    """The sizes, unless they cannot be known, and the grade rules by name; None is a rule with a fault."""

    sizes: Sizes | None = None
    rules: Mapping[str, Rule | None] = field(default_factory=dict)


def resolve_grades(nodes: Iterable[tree.Grade], sizes: Sizes | None, scope: Scope, say: Collector) -> Grades:
    """The grade rules of a garment."""
    rules: dict[str, Rule | None] = {}
    first: dict[str, Span] = {}
    for node in nodes:
        name = node.name.text
        if name in first:
            say.add(name_taken(node.name.span, "a grade rule", name, first=first[name]))
            continue
        first[name] = node.name.span
        rules[name] = _rule(node, sizes, scope, say)
    return Grades(sizes, rules)


def _rule(node: tree.Grade, sizes: Sizes | None, scope: Scope, say: Collector) -> Rule | None:
    if node.alike is not None:
        shift = shift_of(node.alike, scope, say)
        if shift is None or sizes is None:
            return None
        return Rule((shift,) * (len(sizes.order) - 1), node.name.span)
    steps: dict[int, Shift] = {}
    places: dict[int, Span] = {}
    whole = True
    for item in node.body:
        shift = None if isinstance(item, tree.Broken) else shift_of(item.shift, scope, say)
        if isinstance(item, tree.Broken) or sizes is None:
            whole = False
            continue
        low, high = sizes.index(item.low, say), sizes.index(item.high, say)
        if low is None or high is None or shift is None:
            whole = False
            continue
        if low >= high:
            place = item.low.span.to(item.high.span)
            say.add(wrong_value(place, "grade", "a smaller size and then a larger one"))
            whole = False
        for step in range(low, high):
            if step in steps:
                told = STEP_TWICE.at(
                    item.low.span.to(item.high.span),
                    low=sizes.order[step],
                    high=sizes.order[step + 1],
                    rule=node.name.text,
                )
                say.add(told.see(places[step], "the first").help("let each stretch begin where one ends"))
                whole = False
                break
            steps[step], places[step] = shift, item.span
    if not whole or sizes is None:
        return None
    return Rule(tuple(steps.get(step) for step in range(len(sizes.order) - 1)), node.name.span)


def shift_of(node: tree.Shift, scope: Scope, say: Collector) -> Shift | None:
    """The shift with its two lengths; None after a fault, which is reported."""
    right = meaning(node.right, scope, say, what="a shift to the right", wanted=_LENGTH)
    up = meaning(node.up, scope, say, what="a shift up", wanted=_LENGTH)
    return None if right is None or up is None else Shift(right, up)


class PieceGrades:
    """The grading of one piece."""

    def __init__(self, node: tree.Piece, grades: Grades, scope: Scope, say: Collector) -> None:
        self._piece = node.name
        self._grades = grades
        self._scope = scope
        self._say = say
        self._statement = next((item for item in node.body if isinstance(item, tree.Traced)), None)
        self.traced = self._traced()

    def _traced(self) -> Traced | None:
        """The size in which the piece was traced, if it says one that is there."""
        sizes = self._grades.sizes
        if self._statement is None or sizes is None:
            return None
        index = sizes.index(self._statement.size, self._say)
        return None if index is None else Traced(sizes.order[index], sizes.order)

    def graded(self, point: tree.PointStatement) -> Grading | None:
        """How the point is graded; None when it is not, or after a fault, which is reported."""
        node = point.graded
        if node is None:
            return None
        if self._statement is None:
            told = NOT_TRACED.at(node.span, point=point.name.text, piece=self._piece.text)
            self._say.add(told.help("write a line `traced in SIZE` in the piece"))
        if isinstance(node.by, tree.Word):
            return self._by_rule(node.by)
        shift = shift_of(node.by, self._scope, self._say)
        if shift is None or self.traced is None:
            return None
        return (shift,) * (len(self.traced.sizes) - 1)

    def _by_rule(self, word: tree.Word) -> Grading | None:
        rules, sizes = self._grades.rules, self._grades.sizes
        if word.text not in rules:
            self._say.add(unknown_name(word.span, "grade rule", word.text, known=rules))
            return None
        rule = rules[word.text]
        if rule is None or sizes is None or self.traced is None:
            return None
        lacking = [step for step in sizes.needed(self.traced.size) if rule.steps[step] is None]
        if lacking:
            steps = enumerated(_runs(lacking, sizes), "or")
            told = STEP_LEFT_OUT.at(rule.origin, rule=word.text, steps=steps)
            told = told.see(word.span, f"asked for here, of a piece traced in {self.traced.size}")
            self._say.add(told.help("say how far the point moves there, even if by `0 mm, 0 mm`"))
            return None
        return rule.steps


def _runs(steps: list[int], sizes: Sizes) -> tuple[str, ...]:
    """Steps in words, those that follow each other together."""
    breaks = [0, *(i + 1 for i, (a, b) in enumerate(pairwise(steps)) if b > a + 1), len(steps)]
    runs = (steps[low:high] for low, high in pairwise(breaks))
    return tuple(f"from {sizes.order[run[0]]} to {sizes.order[run[-1] + 1]}" for run in runs)
