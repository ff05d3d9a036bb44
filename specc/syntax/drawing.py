"""Owns the way from the text of an SVG file to the lines in it that have an id.

Knows nothing of where a line runs. Only what stands in the file itself is read: nothing that it points to,
and no entity, so that a file from a stranger costs no more than its own length.
"""

from __future__ import annotations

from typing import TYPE_CHECKING
from xml.parsers import expat

from specc.diagnostics import Severity, declare
from specc.syntax.tree.drawings import Drawing, DrawnPath

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.source import SourceFile, Span

NOT_SVG = declare("SPC230", "drawing-unreadable", Severity.ERROR, "`{file}` cannot be read as SVG: {reason}")

MOST_ELEMENTS = 100_000
DEEPEST = 100
LONGEST_DATA = 200_000  # characters of one path
_SHOWN = 60  # characters of a line that a fault is found in

_SVG = "http://www.w3.org/2000/svg"
# What these hold is drawn elsewhere, or at another scale (SVG 1.1, 5.5, 7.9, 11.6, 13.3).
_APART = frozenset(("svg", "symbol", "marker", "pattern"))
_SHAPES = frozenset(("rect", "circle", "ellipse"))
_BY_CSS = "it is moved by CSS"


def read_drawing(source: SourceFile) -> tuple[Drawing | None, tuple[Diagnostic, ...]]:
    """The drawing of an SVG file, or why it is none."""
    reading = _Reading(source)
    try:
        reading.parser.Parse(reading.text, True)
    except expat.ExpatError:
        reading.refuse("it is not well-formed XML here")
    except _RefusedError:
        pass
    if reading.refused is not None:
        return None, (reading.refused,)
    return Drawing(source, reading.drawn()), ()


class _RefusedError(Exception):
    """Reading stops: `_Reading.refused` says why."""


class _Reading:
    """One run through the file."""

    def __init__(self, source: SourceFile) -> None:
        self.refused: Diagnostic | None = None
        self.parser = expat.ParserCreate("utf-8", " ")
        self.parser.StartElementHandler = self._start
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = self._characters
        self.parser.EntityDeclHandler = self._entity
        self._source = source
        self.text = source.text.encode("utf-8", errors="surrogatepass")
        self._read = (0, 0)  # so many bytes, which are so many characters
        self._open: list[str] = []
        self._transforms: list[str | None] = []
        self._apart: list[str] = []
        self._moved_by_css = False
        self._count = 0
        self._paths: dict[str, DrawnPath] = {}

    def refuse(self, reason: str) -> None:
        """Keep why the file is no drawing, and where."""
        said = NOT_SVG.at(self._line(), file=self._source.name, reason=reason)
        self.refused = said.help("save it as plain SVG")

    def drawn(self) -> dict[str, DrawnPath]:
        """The lines by their ids."""
        if not self._moved_by_css:
            return self._paths
        return {name: path._replace(fault=path.fault or _BY_CSS) for name, path in self._paths.items()}

    def _stop(self, reason: str) -> None:
        self.refuse(reason)
        raise _RefusedError

    def _here(self) -> Span:
        """The place that the parser has come to: the character there."""
        index = max(0, min(self.parser.CurrentByteIndex, len(self.text)))
        behind, passed = self._read
        if index < behind:
            behind, passed = 0, 0
        passed += len(self.text[behind:index].decode("utf-8", errors="ignore"))
        self._read = index, passed
        start = min(passed, len(self._source.text))
        return self._source.span(start, min(start + 1, len(self._source.text)))

    def _line(self) -> Span:
        """The line that the parser has come to: where in it a fault is found differs by version."""
        text, here = self._source.text, self._here().start
        start = text.rfind("\n", 0, here) + 1
        line = text[start:].partition("\n")[0]
        start += len(line) - len(line.lstrip())
        return self._source.span(start, start + min(len(line.strip()), _SHOWN))

    def _entity(self, name: str, *_rest: object) -> None:
        self._stop(f"it declares the entity `{name}`, and no entity is read")

    def _characters(self, data: str) -> None:
        if self._open and self._open[-1] == "style" and "transform" in data:
            self._moved_by_css = True

    def _start(self, element: str, attributes: dict[str, str]) -> None:
        name = element.removeprefix(f"{_SVG} ")
        self._count += 1
        if not self._open and name != "svg":
            self._stop(f"its outermost element is `{element.rpartition(' ')[2]}`, not `svg`")
        if self._count > MOST_ELEMENTS or len(self._open) >= DEEPEST:
            self._stop(f"it has more than {MOST_ELEMENTS:,} elements, or nests them deeper than {DEEPEST}")
        if self._open and name in _APART:
            self._apart.append(name)
        self._open.append(name)
        by_css = "transform" in attributes.get("style", "")
        self._transforms.append(None if by_css else attributes.get("transform", ""))
        if "id" in attributes and (data := _data(name, attributes)) is not None:
            self._keep(attributes["id"], name, data)

    def _keep(self, name: str, element: str, data: str) -> None:
        fault = None
        if name in self._paths:
            fault = "its id stands more than once in the drawing"
        elif element in _SHAPES:
            fault = f"it is a `{element}`: turn it into a path"
        elif self._apart:
            fault = f"it stands within `{self._apart[-1]}`"
        elif None in self._transforms:
            fault = _BY_CSS
        elif len(data) > LONGEST_DATA:
            fault = f"it is longer than {LONGEST_DATA:,} characters"
        transforms = tuple(one for one in self._transforms if one)
        self._paths[name] = DrawnPath(data, transforms, fault, self._here())

    def _end(self, _element: str) -> None:
        name = self._open.pop()
        self._transforms.pop()
        if self._apart and name in _APART:
            self._apart.pop()


def _data(element: str, attributes: dict[str, str]) -> str | None:
    """What an element draws as the data of a path; None when it draws no line."""
    match element:
        case "path":
            return attributes.get("d", "")
        case "line":
            x1, y1, x2, y2 = (attributes.get(name, "0") for name in ("x1", "y1", "x2", "y2"))
            return f"M {x1} {y1} L {x2} {y2}"
        case "polyline":
            return f"M {attributes.get('points', '')}"
        case "polygon":
            return f"M {attributes.get('points', '')} Z"
        case _:
            return "" if element in _SHAPES else None
