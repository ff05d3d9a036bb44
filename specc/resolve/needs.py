"""Owns which measurements a block is drafted from, and the one answer that lists those a chart lacks.

Knows nothing of what is drafted from them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.library.measurements import body_measurements
from specc.resolve.codes import UNKNOWN_NAME
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from specc.diagnostics import Diagnostic
    from specc.model.chart import Chart

LACKS = declare(
    "SPC313", "chart-lacks-measurement", Severity.ERROR, "chart `{chart}` lacks what block `{block}` needs"
)


def needs(block: tree.Block) -> tuple[str, ...]:
    """The names that the block speaks of and does not declare, in the order of its text."""
    named = (node.name.text for node in _nodes(block) if isinstance(node, tree.Named))
    declared = {
        node.name.text for node in _nodes(block) if isinstance(node, tree.Parameter | tree.Let | tree.Find)
    }
    return tuple(name for name in dict.fromkeys(named) if name not in declared)


def speaks_of(block: tree.Block, told: Diagnostic) -> bool:
    """Whether an unknown name is a measurement that the block needs."""
    return dict(told.facts)["name"] in needs(block)


def told_of_block(
    said: Sequence[Diagnostic], use: tree.UseLibrary, block: tree.Block, chart: Chart, *, own: bool
) -> Iterable[Diagnostic]:
    """What was said of a block; that the chart lacks measurements of a body is said once, with all of them.

    In a block of the library every unknown name is one; in a block of one's own it may as well be a slip, and
    only the names of measurements as the library takes them are sure to be none.
    """
    known = body_measurements()
    there = {measurement.name for measurement in chart.measurements}
    missing = tuple(name for name in needs(block) if name not in there and (name in known or not own))
    lacks = [told for told in said if told.code is UNKNOWN_NAME and dict(told.facts)["name"] in missing]
    if not lacks:
        return said
    answer = LACKS.at(use.name.span, chart=chart.name, block=block.name.text)
    answer = answer.see(chart.origin, "declared here")
    for name in missing:
        row = known.get(name)
        answer = answer.note(f"`{name}`: {row.title}; {row.how}" if row else f"`{name}`")
    example = f"measurement {missing[0]} = {'… cm' if len(chart.sizes) == 1 else '…, … cm'}"
    cure = f"add a line for each to the chart, such as `{example}`, or use a chart that has them"
    answer = answer.help(cure)
    return (*(one for one in said if one not in lacks), answer)


def _nodes(node: object) -> Iterator[object]:
    """The node and all that stands in it: a tree is named tuples within tuples."""
    yield node
    if isinstance(node, tuple):
        for part in node:
            yield from _nodes(part)
