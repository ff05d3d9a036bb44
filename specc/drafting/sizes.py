"""Owns telling once what is wrong in several sizes; knows nothing of what is wrong."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Diagnostic


MOST: Final = 3
"""So many notes are read; more hide what is said."""


def merged(by_size: Iterable[tuple[str, tuple[Diagnostic, ...]]]) -> tuple[Diagnostic, ...]:
    """One diagnostic for each kind and place, in the order in which they were met, its sizes in a note.

    Where the sizes differ in what is said, the first stands for them and the others are told in notes; of
    more than MOST others, only the last.
    """
    sizes: list[str] = []
    groups: dict[tuple[object, ...], list[tuple[str, Diagnostic]]] = {}
    for size, diagnostics in by_size:
        sizes.append(size)
        for diagnostic in diagnostics:
            span = diagnostic.span
            place = None if span is None else (span.file.name, span.start, span.end)
            groups.setdefault((diagnostic.code.id, place), []).append((size, diagnostic))
    return tuple(_told(group, sizes) for group in groups.values())


def _told(group: list[tuple[str, Diagnostic]], sizes: list[str]) -> Diagnostic:
    _, first = group[0]
    alike = tuple(dict.fromkeys(size for size, _ in group))
    said = first.note(
        "in every size" if list(alike) == sizes else f"in size{'s' * (len(alike) > 1)} {', '.join(alike)}"
    )
    other: dict[str, None] = {}
    for size, diagnostic in group[1:]:
        if diagnostic.message != first.message:
            other.setdefault(f"size {size}: {diagnostic.message}")
    notes = tuple(other)
    for note in notes if len(notes) <= MOST else notes[-1:]:
        said = said.note(note)
    return said
