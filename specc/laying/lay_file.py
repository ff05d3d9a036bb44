"""Owns the text of a lay file: layouts that were searched for, by their strips' keys.

Knows nothing of the pieces: whether a layout holds is checked where it is used.
"""

from __future__ import annotations

import json
from math import isfinite
from pathlib import PurePosixPath
from typing import TYPE_CHECKING, Any, Final

from specc.diagnostics import Severity, declare
from specc.geometry.point import Point
from specc.packing import Layout, Placed

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Diagnostic
    from specc.laying.cloth import Wanted
    from specc.source import SourceFile

UNREADABLE = declare(
    "SPC603", "lay-file-unreadable", Severity.WARNING, "the lay file `{name}` cannot be read: {why}"
)

_WITHOUT: Final = "the lays are planned without it, in a hurry"
_FORM: Final = "lays 1"
_MOST: Final = 100_000  # placements: more is no lay file


def written(layouts: Iterable[tuple[Wanted, Layout]]) -> bytes:
    """A lay file: each lay with what it is called and its layout, one placement a line."""
    listed = ",\n".join(_lay(wanted, layout) for wanted, layout in layouts)
    return f'{{\n "form": "{_FORM}",\n "lays": [\n{listed}\n ]\n}}\n'.encode()


def _lay(wanted: Wanted, layout: Layout) -> str:
    placed = ",\n".join(
        f"   {json.dumps([one.shape, one.angle, one.at.x, one.at.y], ensure_ascii=False)}"
        for one in layout.placed
    )
    called = json.dumps(wanted.called, ensure_ascii=False)
    head = f'"of": {called}, "key": "{wanted.key}", "length": {layout.length}'
    return f'  {{{head}, "placed": [\n{placed}\n  ]}}'


def beside(name: str) -> str:
    """The path of the lay file that belongs to a spec of that path."""
    return str(PurePosixPath(name).with_suffix(".lay"))


def read(file: SourceFile) -> tuple[dict[str, Layout] | None, tuple[Diagnostic, ...]]:
    """The layouts of a lay file, by the keys of their strips; None when it is damaged, and why."""
    try:
        told = json.loads(file.text)
        if told["form"] == _FORM:
            return {str(lay["key"]): _layout(lay) for lay in told["lays"]}, ()
    except (ValueError, KeyError, TypeError, OverflowError, RecursionError):
        return None, (unreadable(file.name, "it is not what `specc lay` writes"),)
    return None, (unreadable(file.name, "it is of another form than this version writes"),)


def unreadable(name: str, why: str) -> Diagnostic:
    """What is said of a lay file that is not to be had; the garment is then planned without it."""
    told = UNREADABLE.at(None, name=name, why=why)
    return told.note(_WITHOUT).help("delete it, or let `specc lay` write it anew")


def _layout(lay: dict[str, Any]) -> Layout:
    placed = tuple(
        Placed(str(shape), float(angle), Point(float(x), float(y))) for shape, angle, x, y in lay["placed"]
    )
    numbers = [lay["length"], *(number for one in placed for number in (one.angle, one.at.x, one.at.y))]
    if len(placed) > _MOST or not all(isfinite(number) and abs(number) < 1e9 for number in numbers):
        raise ValueError(numbers)
    return Layout(float(lay["length"]), placed)
