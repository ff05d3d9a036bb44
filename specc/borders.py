"""Owns what is printed of the value at each border between stages: one row a border.

Knows nothing of how the values came to be.
"""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from specc.pipeline import document, quantities
from specc.show import show

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from specc.pipeline import Result


def _tree(result: Result) -> str:
    from specc.syntax.show import show as show_tree  # noqa: PLC0415  only this border needs it

    return show_tree(result.gathered.spec) if result.gathered else ""


def _assembly(result: Result) -> str:
    """Without the pieces, which are printed at their own border."""
    if result.assembly is None:
        return ""
    bare = tuple(replace(size, drafted=(), stages=(), pieces=()) for size in result.assembly.sizes)
    return show(replace(result.assembly, sizes=bare, alterations=()))


def _document(result: Result) -> str:
    from specc.backends.record import text  # noqa: PLC0415  only this border needs paper

    made = document(result)
    return text(made) if made else ""


def _shown(value: object) -> str:
    return "" if value is None else show(value)


BORDERS: Mapping[str, Callable[[Result], str]] = MappingProxyType(
    {
        "tree": _tree,
        "garment": lambda result: _shown(result.garment),
        "pieces": lambda result: _shown(result.shaped),
        "assembly": _assembly,
        "quantities": lambda result: _shown(quantities(result)),
        "document": _document,
    }
)
"""Each prints nothing when its border was not reached."""
