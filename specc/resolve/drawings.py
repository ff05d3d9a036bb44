"""Owns what a piece takes from a drawing: that there is one, at which scale, and the paths it speaks of.

Knows nothing of where a path runs.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from specc.diagnostics import Severity, declare
from specc.model.tracing import Drawing, DrawnPath
from specc.resolve.codes import MISSING, MORE_THAN_ONE, out_of_range, unknown_name, wrong_value
from specc.resolve.grading import Grades
from specc.resolve.properties import as_quantity
from specc.syntax import tree
from specc.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector

UNUSABLE = declare(
    "SPC231", "drawn-path-unusable", Severity.ERROR, "path `{path}` of `{file}` cannot be used: {reason}"
)


class Paper(NamedTuple):
    """What pieces on paper may speak of: grade rules, and the drawings by where their names are written."""

    grades: Grades = Grades()
    drawings: Mapping[tree.Text, tree.Drawing] = {}


class PieceDrawing:
    """The drawing of one piece, while its statements are resolved."""

    def __init__(self, node: tree.Piece, paper: Paper, say: Collector) -> None:
        statements = [item for item in node.body if isinstance(item, tree.Outline)]
        self._piece = node.name
        self._say = say
        self._statement = statements[0] if statements else None
        self._found = paper.drawings.get(statements[0].path) if statements else None
        self._used: dict[str, DrawnPath] = {}
        if len(statements) > 1:
            owner = f"piece `{node.name.text}`"
            told = MORE_THAN_ONE.at(statements[1].span, owner=owner, what="`outline`")
            say.add(told.see(statements[0].span, "the first"))

    def path(self, word: tree.Text) -> str | None:
        """The id of a path that the drawing has and that can be used; anything else is reported."""
        if self._statement is None:
            told = MISSING.at(word.span, owner=f"piece `{self._piece.text}`", name="outline")
            example = '`outline from "front.svg", 1 unit is 1 mm`'
            self._say.add(told.help(f"write a line such as {example}"))
            return None
        if self._found is None:
            return None
        drawn = self._found.paths.get(word.text)
        file = self._found.file.name
        if drawn is None:
            known = self._found.paths
            self._say.add(unknown_name(word.span, "path", word.text, known=known, where=f" in `{file}`"))
            return None
        if drawn.fault is not None:
            told = UNUSABLE.at(word.span, path=word.text, file=file, reason=drawn.fault)
            self._say.add(
                told.see(drawn.span, "drawn here").help(
                    "let it be one path of its own, its points where they are drawn"
                )
            )
            return None
        self._used.setdefault(
            word.text, DrawnPath(word.text, drawn.data, drawn.transforms, word.span, drawn.span)
        )
        return word.text

    def drawing(self) -> Drawing | None:
        """What was spoken of; None where nothing was, or where the scale is none."""
        if self._statement is None:
            return None
        units, length = self._statement.units, as_quantity(self._statement.length)
        if length is None or length.dimension != Dimension.LENGTH:
            self._say.add(wrong_value(self._statement.length.span, "outline", "a length, such as `1 mm`"))
            return None
        if units.value == 0 or length.value == 0:
            place = units.span if units.value == 0 else self._statement.length.span
            self._say.add(
                out_of_range(place, "the scale of a drawing", "more than nothing", found=place.text)
            )
            return None
        if self._found is None:
            return None
        unit = float(length.value / units.value)
        return Drawing(self._found.file.name, unit, tuple(self._used.values()))
