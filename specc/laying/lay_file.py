"""Owns the text of a lay file: layouts that were searched for, by their strips' keys.

Knows nothing of the pieces: whether a layout holds is checked where it is used.
"""

from __future__ import annotations

import json
from math import isfinite
from typing import TYPE_CHECKING, Any, Final

from specc.diagnostics import Severity, declare
from specc.geometry.point import Point
from specc.packing import Layout, Placed

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Diagnostic

UNREADABLE = declare("SPC603", "lay-file-unreadable", Severity.WARNING, "the lay file {name} cannot be read: {why}")

_FORM: Final = "lays 1"
_MOST: Final = 100_000  # placements: more is no lay file


def written(layouts: Mapping[str, tuple[str, Layout]]) -> str:
    """The text of a lay file: what each lay is called and its layout, by key; one placement a line."""
    lays = [_lay(key, called, layout) for key, (called, layout) in sorted(layouts.items())]
    return f'{{\n "form": {json.dumps(_FORM)},\n "lays": [\n{",\n".join(lays)}\n ]\n}}\n'


def _lay(key: str, called: str, layout: Layout) -> str:
    placed = ",\n".join(
        f"    {json.dumps([one.shape, one.angle, one.at.x, one.at.y], ensure_ascii=False)}"
        for one in layout.placed
    )
    head = f'"key": {json.dumps(key)}, "of": {json.dumps(called, ensure_ascii=False)}, "length": {layout.length}'
    return f'  {{{head}, "placed": [\n{placed}\n  ]}}'


def read(name: str, data: bytes) -> tuple[dict[str, tuple[str, Layout]], tuple[Diagnostic, ...]]:
    """The layouts of a lay file by key, each with what it is called; nothing, and a reason, when it is damaged."""
    try:
        told = json.loads(data.decode())
        if told["form"] != _FORM:
            raise ValueError("it is of another form")
        return {str(lay["key"]): (str(lay["of"]), _layout(lay)) for lay in told["lays"]}, ()
    except (ValueError, KeyError, TypeError, RecursionError) as fault:
        why = str(fault) if type(fault) is ValueError else "it is not what `specc lay` writes"
        told = UNREADABLE.at(None, name=name, why=why)
        return {}, (told.help("delete it, or run `specc lay` to write it anew"),)


def _layout(lay: dict[str, Any]) -> Layout:
    placed = tuple(
        Placed(str(shape), float(angle), Point(float(x), float(y))) for shape, angle, x, y in lay["placed"]
    )
    numbers = [lay["length"], *(number for one in placed for number in (one.angle, one.at.x, one.at.y))]
    if len(placed) > _MOST or not all(isfinite(number) and abs(number) < 1e9 for number in numbers):
        raise ValueError("a number in it is out of all bounds")
    return Layout(float(lay["length"]), placed)
