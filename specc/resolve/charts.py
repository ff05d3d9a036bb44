"""Owns giving size charts their meaning.

Knows nothing of blocks.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from specc.diagnostics import Severity, declare
from specc.model.chart import Chart, Measurement
from specc.model.expression import Constant
from specc.resolve.broken import has_broken
from specc.resolve.codes import EMPTY, name_taken, out_of_range
from specc.resolve.expressions import Scope, dimension_of, meaning, resolve_expression
from specc.resolve.header import listed_sizes
from specc.resolve.properties import Properties, titled
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity, unit

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.expression import Expression

COLUMN_LENGTH = declare(
    "SPC303", "column-length", Severity.ERROR, "`{name}` has {count} values for {sizes} sizes"
)
COLUMN_UNIT = declare("SPC214", "column-unit", Severity.ERROR, "a body is not measured in `{unit}`")

_MOST = Quantity.of(10, UNITS["m"])
_MEASURED = (Dimension.LENGTH, Dimension.ANGLE)


class Measured(NamedTuple):
    """The chart of a garment, if it has one, and the measurements with a fault, on which all is silent.

    `wanted`: whether the garment uses one, even if it is not to be had.
    """

    chart: Chart | None
    failed: frozenset[str] = frozenset()
    wanted: bool = True

    @property
    def values(self) -> dict[str, tuple[str, Dimension]]:
        """What an expression may speak of: the measurements by name, with their dimensions."""
        measurements = () if self.chart is None else self.chart.measurements
        return {one.name: (one.name, one.dimension) for one in measurements}


def resolve_chart(node: tree.Chart, say: Collector) -> Measured:
    """The chart; a measurement may be derived from those above it."""
    sheet = Properties(
        "a chart", node.name, node.body, known=("source", "sizes"), say=say, place=node.name.span
    )
    sizes = _sizes(sheet)
    items = [item for item in node.body if isinstance(item, tree.Measurement)]
    if not items and not has_broken(node.body):
        told = EMPTY.at(node.name.span, owner=f"chart `{node.name.text}`", parts="measurements")
        say.add(told.help('write a line `measurement NAME "title" = …` for each'))
    measurements: dict[str, Measurement] = {}
    failed: set[str] = set()
    for number, item in enumerate(items):
        name = item.name.text
        if name in measurements:
            say.add(name_taken(item.name.span, "a measurement", name, first=measurements[name].origin))
            continue
        known = {name: (name, measurement.dimension) for name, measurement in measurements.items()}
        below = frozenset(later.name.text for later in items[number:])
        scope = Scope(known, missing=frozenset(failed), below=below - known.keys())
        measurement = _measurement(item, sizes, scope, say)
        if measurement is None:
            failed.add(name)
        else:
            measurements[name] = measurement
    chart = Chart(
        node.name.text,
        titled(node.title, node.name.text),
        sheet.words("source", example="measured on …"),
        sizes or (),
        tuple(measurements.values()),
        node.name.span,
    )
    return Measured(chart, frozenset(failed - measurements.keys()))


def _sizes(sheet: Properties) -> tuple[str, ...] | None:
    """The names of the sizes, smallest first as they stand; None when they cannot be known."""
    listed = sheet.require("sizes", "8, 10, 12")
    return None if listed is None else listed_sizes(sheet, listed)


def _measurement(
    node: tree.Measurement, sizes: tuple[str, ...] | None, scope: Scope, say: Collector
) -> Measurement | None:
    name = node.name.text
    title, source = titled(node.title, name.replace("-", " ")), node.source.text if node.source else None
    if node.derived is not None:
        value = _derived(node.derived, name, scope, say)
        if value is None:
            return None
        return Measurement(name, title, source, dimension_of(value), (), value, node.name.span)
    column = _column(node, sizes, say)
    if column is None:
        return None
    return Measurement(name, title, source, column[0].dimension, column, None, node.name.span)


def _derived(node: tree.Expression, name: str, scope: Scope, say: Collector) -> Expression | None:
    """The value from others above it, or one number: of one person, or alike on all who are measured."""
    if not isinstance(node, tree.Number):
        return resolve_expression(node, scope, say)
    value = meaning(node, scope, say, what=f"`{name}`", wanted=_MEASURED)
    if not isinstance(value, Constant) or not _is_a_body(node, value.value, name, say):
        return None
    return value


def _column(
    node: tree.Measurement, sizes: tuple[str, ...] | None, say: Collector
) -> tuple[Quantity, ...] | None:
    """The values, one for each size."""
    name = node.name.text
    symbol = node.column[-1].unit or ""
    written = unit(symbol)
    if written is None or written.dimension not in _MEASURED:
        place = node.span.file.span(node.span.end - len(symbol), node.span.end)
        told = COLUMN_UNIT.at(place, unit=symbol)
        say.add(told.help("measurements are lengths, as in `34, 36 in`, or angles, as in `21, 22 deg`"))
        return None
    if sizes is not None and len(node.column) != len(sizes):
        told = COLUMN_LENGTH.at(node.name.span, name=name, count=len(node.column), sizes=len(sizes))
        say.add(told.help(f"write a value for each size: {', '.join(sizes)}"))
        return None
    values = tuple(Quantity.of(number.value, written) for number in node.column)
    rows = zip(node.column, values, strict=True)
    return values if all(_is_a_body(number, value, name, say) for number, value in rows) else None


def _is_a_body(number: tree.Number, value: Quantity, name: str, say: Collector) -> bool:
    """Whether a body may measure so much; what no body does is reported."""
    if value.value != 0 and not (value.dimension == Dimension.LENGTH and value.value > _MOST.value):
        return True
    bounds = f"more than nothing and at most {_MOST}"
    say.add(out_of_range(number.span, f"a value of `{name}`", bounds, found=value))
    return False
