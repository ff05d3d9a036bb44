"""Owns giving size charts their meaning.

Knows nothing of blocks.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.chart import Chart, Measurement
from specc.resolve.codes import NAME_TAKEN
from specc.resolve.expressions import Scope, dimension_of, resolve_expression
from specc.resolve.properties import Properties, said
from specc.syntax import tree
from specc.units import Dimension, Quantity, unit

if TYPE_CHECKING:
    from specc.diagnostics import Collector

COLUMN_LENGTH = declare(
    "SPC303", "column-length", Severity.ERROR, "`{name}` has {count} values for {sizes} sizes"
)
COLUMN_UNIT = declare("SPC214", "column-unit", Severity.ERROR, "`{unit}` is not a unit of a measurement")


def resolve_chart(node: tree.Chart, say: Collector) -> Chart:
    """The chart; a measurement may be derived from those above it."""
    properties = Properties("chart", node.body, known=("source", "sizes"), say=say, place=node.name.span)
    listed = properties.require("sizes")
    sizes = () if listed is None else tuple(said(value[0]) for value in listed.values)
    measurements: dict[str, Measurement] = {}
    for item in node.body:
        if not isinstance(item, tree.Measurement):
            continue
        if item.name.text in measurements:
            told = NAME_TAKEN.at(item.name.span, kind="measurement", name=item.name.text)
            say.add(told.see(measurements[item.name.text].origin, "first here"))
            continue
        known = {name: (name, measurement.dimension) for name, measurement in measurements.items()}
        measurement = _measurement(item, sizes, Scope(known), say)
        if measurement is not None:
            measurements[item.name.text] = measurement
    return Chart(
        node.name.text,
        node.title.text if node.title else node.name.text,
        properties.words("source"),
        sizes,
        tuple(measurements.values()),
        node.name.span,
    )


def _measurement(
    node: tree.Measurement, sizes: tuple[str, ...], scope: Scope, say: Collector
) -> Measurement | None:
    title = node.title.text if node.title else node.name.text.replace("-", " ")
    source = node.source.text if node.source else None
    if node.derived is not None:
        derived = resolve_expression(node.derived, scope, say)
        if derived is None:
            return None
        return Measurement(
            node.name.text, title, source, dimension_of(derived), (), derived, node.name.span
        )
    symbol = node.column[-1].unit or ""
    written = unit(symbol)
    if written is None or written.dimension not in (Dimension.LENGTH, Dimension.ANGLE, Dimension.NUMBER):
        say.add(COLUMN_UNIT.at(node.column[-1].span, unit=symbol))
        return None
    if len(node.column) != len(sizes):
        told = COLUMN_LENGTH.at(node.name.span, name=node.name.text, count=len(node.column), sizes=len(sizes))
        say.add(told.help("give one value for each size, in the order of the sizes"))
        return None
    values = tuple(Quantity.of(number.value, written) for number in node.column)
    return Measurement(node.name.text, title, source, written.dimension, values, None, node.name.span)
