"""Owns the run through a garment's alterations, step by step; knows not how any verb works."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.alteration import VERBS
from specc.alteration.record import recorded
from specc.alteration.refusal import Refusal

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.record import Record
    from specc.model.alteration import Alteration
    from specc.model.expression import Expression
    from specc.pattern.piece import Piece


@dataclass(frozen=True, slots=True)
class Altered:
    """The pieces after all steps and after each, what each step changed, and the steps refused."""

    pieces: tuple[Piece, ...]
    stages: tuple[tuple[Piece, ...], ...]
    records: tuple[Record, ...]
    refusals: tuple[Refusal, ...]


def alter(
    pieces: tuple[Piece, ...],
    steps: tuple[Alteration, ...],
    evaluator: Callable[[tuple[Piece, ...]], Callable[[Expression], float]],
) -> Altered:
    """The pieces altered step by step; a refused step leaves them as they were and the run goes on.

    `evaluator` gives, for the pieces as they are, what evaluates an expression: millimetres, radians, or a
    ratio.
    """
    records: list[Record] = []
    refusals: list[Refusal] = []
    stages: list[tuple[Piece, ...]] = []
    verbs = dict(VERBS)
    for index, step in enumerate(steps):
        result = verbs[type(step)](pieces, step, evaluator(pieces))
        if isinstance(result, Refusal):
            refusals.append(result)
            result = pieces
        records.append(recorded(index, pieces, result))
        pieces = result
        stages.append(pieces)
    return Altered(pieces, tuple(stages), tuple(records), tuple(refusals))
