"""Owns demands that a garment stays within a chart of limits: each measurement there is the most it may be.

Knows nothing of what the garment measures.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.expression import Applied, Arithmetic, Constant, Named
from specc.model.garment import Expect
from specc.resolve.codes import enumerated, name_taken, unknown_name
from specc.resolve.expressions import alike, meaning
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.model.chart import Chart, Measurement
    from specc.model.expression import Expression
    from specc.resolve.expressions import Scope

NOT_SAID = declare(
    "SPC325", "limit-not-held", Severity.ERROR, "`within {chart}` does not say what {names} limits here"
)
NO_LIMITS = declare(
    "SPC326", "size-without-limits", Severity.ERROR, "chart `{chart}` has no limits for {sizes}"
)


def resolve_within(
    node: tree.ExpectWithin, chart: Chart, sizes: tuple[str, ...], scope: Scope, say: Collector
) -> tuple[Expect, ...]:
    """A demand for each limit of the chart, in every size made; what is faulty is left out and reported."""
    strange = [f"`{size}`" for size in sizes if size not in chart.sizes]
    if strange:
        word = "size" if len(strange) == 1 else "sizes"
        told = NO_LIMITS.at(node.chart.span, chart=chart.name, sizes=f"{word} {enumerated(strange, 'and')}")
        there = enumerated([f"`{size}`" for size in chart.sizes], "and")
        say.add(told.note(f"it has {there}").help("make other sizes, or take a chart that has these"))
        return ()
    held = _held(node, chart, say)
    rows = _by_size(chart)
    found = []
    for measurement in chart.measurements:
        line = held.get(measurement.name)
        if not isinstance(line, tree.Limit):
            continue
        what = f"what `{measurement.name}` limits"
        left = meaning(line.value, scope, say, what=what, wanted=alike(measurement.dimension))
        if left is not None:
            most = tuple(rows[size][measurement.name] for size in sizes)
            found.append(_demand(line, chart, measurement, left, most))
    return tuple(found)


def _held(node: tree.ExpectWithin, chart: Chart, say: Collector) -> Mapping[str, tree.Limit | tree.Without]:
    """The line about each limit by its name; a limit of which nothing is said is reported."""
    names = tuple(measurement.name for measurement in chart.measurements)
    lines: dict[str, tree.Limit | tree.Without] = {}
    first: dict[str, tree.Word] = {}
    whole = True
    for line in node.body:
        if isinstance(line, tree.Broken):
            whole = False
            continue
        for word in line.names if isinstance(line, tree.Without) else (line.name,):
            if word.text not in names:
                where = f" in chart `{chart.name}`"
                say.add(unknown_name(word.span, "limit", word.text, known=names, where=where))
                whole = False
            elif word.text in first:
                say.add(name_taken(word.span, "a line about", word.text, first=first[word.text].span))
            else:
                lines[word.text], first[word.text] = line, word
    left = [f"`{name}`" for name in names if name not in lines]
    if left and whole:
        told = NOT_SAID.at(node.chart.span, chart=chart.name, names=enumerated(left, "and"))
        bare = [name.strip("`") for name in left]
        cure = f"write `{bare[0]} = ` and how it is measured, or `without {', '.join(bare)}`"
        say.add(told.help(f"{cure} if the garment has no such part"))
    return lines


def _by_size(chart: Chart) -> Mapping[str, Mapping[str, Expression]]:
    """Every measurement of the chart in every size; what is derived is put in terms of numbers."""
    rows: dict[str, dict[str, Expression]] = {}
    for place, size in enumerate(chart.sizes):
        row: dict[str, Expression] = {}
        for one in chart.measurements:
            if one.derived is None:
                row[one.name] = Constant(one.values[place], one.origin)
            else:
                row[one.name] = _settled(one.derived, row)
        rows[size] = row
    return rows


def _settled(expression: Expression, row: Mapping[str, Expression]) -> Expression:
    """The expression with the values of a size in the place of their names."""
    match expression:
        case Named(name=name):
            return row[name]
        case Arithmetic(left=left, right=right):
            return replace(expression, left=_settled(left, row), right=_settled(right, row))
        case Applied(arguments=arguments):
            return replace(expression, arguments=tuple(_settled(one, row) for one in arguments))
        case _:
            return expression


def _demand(
    line: tree.Limit, chart: Chart, measurement: Measurement, left: Expression, most: tuple[Expression, ...]
) -> Expect:
    text = f"{' '.join(line.span.text.split())}, within {chart.name}"
    because = "; ".join(said for said in (measurement.title, measurement.source or chart.source) if said)
    return Expect(text, left, "<=", most, measurement.dimension, because, line.span, by_size=True)
