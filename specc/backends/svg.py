"""Owns writing a drawing as SVG, alone as a file or as part of a page.

Decides nothing: the drawing says it all.
"""

from __future__ import annotations

from math import degrees
from typing import TYPE_CHECKING

from markupsafe import Markup, escape

from specc.backends.lettered import fit, to_plain
from specc.backends.output import OutputFile
from specc.document.drawing import Bend, Stroke
from specc.document.lettering import LETTERINGS, height_of, width_of
from specc.document.line import LINES

if TYPE_CHECKING:
    from specc.document.document import Document
    from specc.document.drawing import Drawing, Label, Trace
    from specc.geometry.point import Point

_ALONE = "'Source Sans Pro', 'Source Sans 3', Helvetica, Arial, sans-serif"
_MARGIN = 0.5  # of the white ground round a label, millimetres


def write(document: Document, _pages: object) -> tuple[OutputFile, ...]:
    """The drawings of the document, one file each."""
    return tuple(
        OutputFile(f"drawings/{drawing.name}.svg", f"{alone(drawing)}\n".encode())
        for drawing in document.drawings
    )


def alone(drawing: Drawing) -> str:
    """The drawing as a file of its own."""
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{_svg(drawing, _ALONE)}'


def inline(drawing: Drawing, family: str) -> Markup:
    """The drawing as part of a page whose font is `family`."""
    return Markup(_svg(drawing, family))  # noqa: S704 - every text in it is escaped


def _svg(drawing: Drawing, family: str) -> str:
    width, height = _number(drawing.width), _number(drawing.height)
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm"'
        f' viewBox="0 0 {width} {height}" role="img" font-family="{escape(family)}"'
        f' stroke-linecap="butt" stroke-linejoin="round" text-anchor="middle">'
        f"<title>{escape(fit(drawing.title))}</title>"
    )
    body = "\n".join(_stroke(item) if isinstance(item, Stroke) else _label(item) for item in drawing.items)
    return f"{head}\n{body}\n</svg>"


def _stroke(stroke: Stroke) -> str:
    style = LINES[stroke.line]
    fill = "none" if style.fill is None else _grey(style.fill)
    line = ""
    if style.width:
        line = f' stroke="{_grey(style.grey)}" stroke-width="{_number(style.width)}"'
    if style.dashes:
        line += f' stroke-dasharray="{" ".join(map(_number, style.dashes))}"'
    path = "".join(_trace(trace) for trace in stroke.traces)
    return f'<path class="{stroke.line}" fill="{fill}"{line} d="{path}"/>'


def _trace(trace: Trace) -> str:
    parts = [f"M{_at(trace.start)}"]
    for run in trace.runs:
        if isinstance(run, Bend):
            parts.append(f"C{_at(run.first)} {_at(run.second)} {_at(run.to)}")
        else:
            parts.append(f"L{_at(run)}")
    return "".join((*parts, "Z" if trace.closed else ""))


def _label(label: Label) -> str:
    style = LETTERINGS[label.lettering]
    x, y = _number(label.at.x), _number(label.at.y)
    turn = f' transform="rotate({_number(degrees(label.angle))} {x} {y})"' if label.angle else ""
    weight = f' font-weight="{style.weight}"' if style.weight != 400 else ""
    base = _number(label.at.y + height_of(label.lettering) / 2)
    text = (
        f'<text class="{label.lettering}" x="{x}" y="{base}" font-size="{_number(style.size)}"{weight}{turn}>'
        f"{escape(to_plain(label.text))}</text>"
    )
    return f"{_ground(label, turn)}{text}" if label.ground else text


def _ground(label: Label, turn: str) -> str:
    width = width_of(label.text, label.lettering) + 2 * _MARGIN
    height = LETTERINGS[label.lettering].size
    x, y = _number(label.at.x - width / 2), _number(label.at.y - height / 2)
    return f'<rect x="{x}" y="{y}" width="{_number(width)}" height="{_number(height)}" fill="#fff"{turn}/>'


def _at(point: Point) -> str:
    return f"{_number(point.x)} {_number(point.y)}"


def _number(value: float) -> str:
    """Thousandths of a millimetre or of a degree, zeros at the end left out, never `-0`."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _grey(value: float) -> str:
    level = round(value * 255)
    return f"#{level:02x}{level:02x}{level:02x}"
