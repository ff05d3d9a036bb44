"""Owns printing the value at a border between stages as text: for finding faults, and for golden tests.

Knows the shape of frozen values, not what they mean: fields by name, floats to a hundredth, places by line.
"""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from typing import TYPE_CHECKING

from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.segment import Line
from specc.source import SourceFile, Span
from specc.units import Dimension, Quantity

if TYPE_CHECKING:
    from collections.abc import Iterator

_INDENT = "  "
_WIDEST = 100


def show(value: object) -> str:
    """The value as indented text, one line for what fits on one; the same on every machine."""
    return "\n".join(_lines("", value, 0)) + "\n"


def _lines(label: str, value: object, depth: int) -> Iterator[str]:
    lead = _INDENT * depth + (f"{label}: " if label else "")
    short = _short(value)
    if short is not None and len(lead) + len(short) <= _WIDEST:
        yield lead + short
    elif isinstance(value, tuple | list):
        yield lead.rstrip()
        for item in value:
            yield from _lines("-", item, depth + 1)
    elif is_dataclass(value):
        yield f"{lead}{type(value).__name__}"
        for name, inner in _fields(value):
            yield from _lines(name.replace("_", " "), inner, depth + 1)
    elif hasattr(value, "items"):
        yield lead.rstrip()
        for name, inner in value.items():
            yield from _lines(str(name), inner, depth + 1)
    else:
        yield lead + (short if short is not None else repr(value))


def _fields(value: object) -> Iterator[tuple[str, object]]:
    """The fields that say something: none that are empty, no places, which `origin` tells by line."""
    for field in fields(value):  # type: ignore[arg-type]
        inner = getattr(value, field.name)
        if inner is not None and inner != () and not field.name.startswith("_"):
            yield field.name, inner


def _short(value: object) -> str | None:
    """The value on one line, if it has such a form."""
    if isinstance(value, Path):
        return _path(value)
    if isinstance(value, frozenset):
        return _short(tuple(sorted(value, key=str)))
    if isinstance(value, tuple):
        parts = [part for item in value if (part := _short(item)) is not None]
        return f"[{', '.join(parts)}]" if len(parts) == len(value) else None
    plain = _plain(value)
    if plain is not None or not is_dataclass(value):
        return plain
    told = []
    for name, inner in _fields(value):
        short = _short(inner)
        if short is None:
            return None
        told.append(f"{name} {short}")
    return f"{type(value).__name__}({'; '.join(told)})"


def _plain(value: object) -> str | None:  # noqa: PLR0911 one line a kind of value
    """A value that has no parts, as it is read; None for any other."""
    match value:
        case bool() | int() | Quantity() | Dimension():
            return str(value)
        case float():
            return _number(value)
        case str():
            return value if "\n" not in value else repr(value)
        case Span():
            return f"line {value.line}"
        case SourceFile():
            return value.name
        case Point():
            return f"({_number(value.x)}, {_number(value.y)})"
        case _:
            return None if is_dataclass(value) or hasattr(value, "items") else str(value)


def _path(path: Path) -> str:
    stops = (
        f"{'line' if isinstance(segment, Line) else 'curve'} {_plain(segment.end)}"
        for segment in path.segments
    )
    return f"from {_plain(path.start)} {' '.join(stops)}, {_number(path.length())} long"


def _number(value: float) -> str:
    printed = f"{value:.2f}"
    return "0.00" if printed == "-0.00" else printed
