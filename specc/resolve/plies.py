"""Owns giving pieces that are cut again their meaning, and seeing that each piece has one cloth of its own.

Knows nothing of amounts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.plies import CutAgain
from specc.resolve.codes import name_taken, out_of_range, unknown_name

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Collector
    from specc.model.material import Cloth
    from specc.resolve.parts import Parts
    from specc.syntax import tree

TWO_CLOTHS = declare(
    "SPC317", "two-cloths", Severity.ERROR, "cloths `{first}` and `{second}` are both for {what}"
)

_MOST = 100
_SHELL = "shell"


def resolve_also_cut(
    node: tree.AlsoCut, cloths: tuple[Cloth, ...], parts: Parts, say: Collector
) -> tuple[CutAgain, ...]:
    """The pieces, each cut once more; those that are not to be had are reported."""
    cloth = next((cloth for cloth in cloths if cloth.name == node.cloth.text), None)
    if cloth is None:
        known = tuple(cloth.name for cloth in cloths)
        say.add(unknown_name(node.cloth.span, "cloth", node.cloth.text, known=known))
    count = None
    if node.times is not None:
        count = int(node.times.value)
        if node.times.value != count or not 1 <= count <= _MOST:
            bounds = f"a whole number from 1 to {_MOST}"
            say.add(
                out_of_range(node.times.span, "how often a piece is cut", bounds, found=node.times.span.text)
            )
    there = [word for word in node.pieces if parts.piece(word, say)]
    if cloth is None:
        return ()
    return tuple(CutAgain(word.text, cloth.name, count, node.bare, word.span) for word in there)


def report_cut_twice(again: Iterable[CutAgain], say: Collector) -> None:
    """Report a piece that is cut again from the same cloth twice."""
    seen: dict[tuple[str, str], CutAgain] = {}
    for ply in again:
        key = (ply.piece, ply.cloth)
        if key in seen:
            kind, where = "a ply of", f" from `{ply.cloth}`"
            say.add(name_taken(ply.origin, kind, ply.piece, first=seen[key].origin, where=where))
        seen.setdefault(key, ply)


def report_two_cloths(cloths: tuple[Cloth, ...], parts: Parts, say: Collector) -> None:
    """Report two cloths that are for the same piece, or both for all pieces that no other is for."""
    owners: dict[str, Cloth] = {}
    for cloth in cloths:
        for use in dict.fromkeys(cloth.use.split(", ")):
            if use != _SHELL and use not in parts.pieces:
                continue
            first = owners.setdefault(use, cloth)
            if first.name != cloth.name:
                what = "the shell" if use == _SHELL else f"piece `{use}`"
                told = TWO_CLOTHS.at(cloth.origin, first=first.name, second=cloth.name, what=what)
                say.add(
                    told.see(first.origin, "the first").help(
                        "say what one of them is for: `for` and the pieces, or `for lining` and"
                        f" `also cut … from {cloth.name}` where a piece is cut from both"
                    )
                )
