"""Owns what is left of an opening when the closures along it are closed: the rounds as they are worn.

Knows nothing of lengths but how far closures lap.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

from specc.making.topology import Run

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from specc.making.topology import Stretch
    from specc.model.closing import Closing
    from specc.model.construction import Finish


@dataclass(frozen=True, slots=True)
class _Side:
    """A side of a closure on one side of the garment, and the one that it meets when it is closed."""

    closure: str
    own: tuple[str, int]
    other: tuple[str, int]


def closed_parts(
    run: Run, finishes: tuple[Finish, ...], laps: Mapping[str, float]
) -> Iterator[tuple[Run, float]]:
    """The rounds that a closed run leaves when its closures are closed, and how much each laps in all.

    The run goes down one side of a closure and up the other: closed, what comes before the one goes on behind
    the other. What would go on in a second closure (an underlap between zip and hook) is hidden and left out.
    A round without a closure stays as it is.
    """
    groups = _grouped(run, finishes, laps)
    if not any(side for side, _ in groups):
        yield run, 0.0
        return
    behind = {(side.closure, side.own): index + 1 for index, (side, _) in enumerate(groups) if side}
    left = [index for index, (side, _) in enumerate(groups) if side is None]
    while left:
        round_, lap, index = [], 0.0, left[0]
        while index in left:
            left.remove(index)
            round_ += groups[index][1]
            following = groups[(index + 1) % len(groups)][0]
            assert following is not None  # stretches that follow one another are one group
            lap += laps[following.closure]
            index = behind.get((following.closure, following.other), -1)
            index = index % len(groups) if index >= 0 else -1
        if index >= 0 and groups[index][1][0] == round_[0]:
            yield Run(tuple(round_), closed=True), lap


def _grouped(
    run: Run, finishes: tuple[Finish, ...], laps: Mapping[str, float]
) -> list[tuple[_Side | None, list[Stretch]]]:
    """The stretches in order, those together that are one side of a closure, or lie between two."""
    told = [(_side_of(stretch, finishes, laps), stretch) for stretch in run.stretches]
    # The run may begin within a group: it is told from where another one begins.
    changes = [index for index in range(len(told)) if told[index][0] != told[index - 1][0]]
    begin = changes[0] if changes else 0
    turned = told[begin:] + told[:begin]
    return [
        (side, [stretch for _, stretch in group]) for side, group in groupby(turned, key=lambda one: one[0])
    ]


def _side_of(stretch: Stretch, finishes: tuple[Finish, ...], laps: Mapping[str, float]) -> _Side | None:
    """The side of a closure that the stretch is part of; of several closures the one that laps most."""
    found = [
        (laps[finish.name], side)
        for finish in finishes
        if finish.closing is not None and finish.name in laps
        for side in _sides(finish.name, finish.closing, stretch)
    ]
    return max(found, key=lambda one: one[0])[1] if found else None


def _sides(name: str, closing: Closing, stretch: Stretch) -> Iterator[_Side]:
    chains = {"first": closing.first, "second": closing.second}
    for which, refs in chains.items():
        if any((ref.piece, ref.name) == (stretch.piece, stretch.edge) for ref in refs):
            if closing.on_itself:
                yield _Side(name, ("first", stretch.side), ("first", 1 - stretch.side))
                return
            other = "second" if which == "first" else "first"
            yield _Side(name, (which, stretch.side), (other, stretch.side))
