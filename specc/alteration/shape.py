"""Owns shaping a garment's pieces in every size: drafted from the block, then altered step by step.

Knows nothing of how pieces are joined.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import degrees
from typing import TYPE_CHECKING

from specc.alteration.refusal import REASONS
from specc.alteration.run import Altered, alter
from specc.diagnostics import Collector, Severity, declare
from specc.drafting import EvaluationError, Evaluator, FinishedPieces, draft, merged
from specc.units import format_angle, format_length, format_ratio

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from specc.alteration.record import Record
    from specc.alteration.refusal import Refusal
    from specc.diagnostics import Diagnostic
    from specc.drafting import Drafted
    from specc.model.expression import Expression
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece

CANNOT_ALTER = declare("SPC450", "alteration-refused", Severity.ERROR, "{reason}")


@dataclass(frozen=True, slots=True)
class Shaped:
    """The pieces of one size: as drafted, after each alteration (`stages`), and in the end.

    `measurements` are the body measurements of the size by name, in base units (lengths in millimetres).
    """

    size: str
    measurements: Mapping[str, float]
    drafted: tuple[Piece, ...]
    stages: tuple[tuple[Piece, ...], ...]
    records: tuple[Record, ...]

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """The pieces after all alterations."""
        return self.stages[-1] if self.stages else self.drafted

    def evaluator(
        self, openings: Mapping[str, float] | None = None, inside: frozenset[str] = frozenset()
    ) -> Evaluator:
        """What evaluates an expression over the finished pieces of this size.

        `openings` are those of finishes, `inside` the pieces that lie inside others.
        """
        return _evaluator(self.measurements, self.pieces, openings or {}, inside)


def shape(garment: Garment) -> tuple[tuple[Shaped, ...] | None, tuple[Diagnostic, ...]]:
    """The pieces in every size of the garment.

    None when one could not be drafted or an alteration was refused.
    """
    say = Collector()
    outcomes = [(size, *draft(garment.blocks, garment.chart, size)) for size in garment.header.sizes]
    say.add(*merged((size, faults) for size, _, faults in outcomes))
    drafted = tuple(found for _, found, _ in outcomes if found is not None)
    if say.failed:
        return None, say.diagnostics
    refused: dict[Refusal, list[str]] = {}
    shaped, faults = [], []
    for one in drafted:
        altered = _altered(one, garment)
        if isinstance(altered, Altered):
            shaped.append(Shaped(one.size, one.measurements, one.pieces, altered.stages, altered.records))
            for refusal in altered.refusals:
                refused.setdefault(refusal, []).append(one.size)
        else:
            faults.append((one.size, (altered,)))
    say.add(*merged(faults), *_told(refused, garment))
    return (None if faults or refused else tuple(shaped)), say.diagnostics


def _altered(drafted: Drafted, garment: Garment) -> Altered | Diagnostic:
    """The altered pieces, or why an amount has no value."""

    def evaluator(current: tuple[Piece, ...]) -> Callable[[Expression], float]:
        return _evaluator(drafted.measurements, current, {}).value

    try:
        return alter(drafted.pieces, garment.alterations, evaluator)
    except EvaluationError as error:
        return error.diagnostic


def _evaluator(
    measurements: Mapping[str, float],
    pieces: tuple[Piece, ...],
    openings: Mapping[str, float],
    inside: frozenset[str] = frozenset(),
) -> Evaluator:
    return Evaluator(measurements.__getitem__, FinishedPieces(pieces, openings, inside))


def _told(refused: Mapping[Refusal, list[str]], garment: Garment) -> tuple[Diagnostic, ...]:
    """One diagnostic for each place and reason, with the figures of every size that was refused."""
    grouped: dict[tuple[object, str], list[tuple[Refusal, list[str]]]] = {}
    for refusal, sizes in refused.items():
        grouped.setdefault((refusal.origin, refusal.code_name), []).append((refusal, sizes))
    reasons = {reason.name: reason.message for reason in REASONS}
    said = []
    for rows in grouped.values():
        first, _ = rows[0]
        told = CANNOT_ALTER.at(
            first.origin, reason=reasons[first.code_name].format_map(_facts(first, garment))
        )
        every = sum(len(sizes) for _, sizes in rows) == len(garment.header.sizes)
        if len(rows) > 1 or not every:
            for refusal, sizes in rows:
                sentence = reasons[refusal.code_name].format_map(_facts(refusal, garment))
                told = told.note(f"size {', '.join(sizes)}: {sentence}")
        said.append(told.help(first.help.format_map(_facts(first, garment))))
    return tuple(said)


def _facts(refusal: Refusal, garment: Garment) -> dict[str, str]:
    """The facts of a refusal as printed: lengths in the garment's unit."""
    printed = {}
    for name, value in refusal.facts:
        if not isinstance(value, float):
            printed[name] = str(value)
        elif name == "angle":
            printed[name] = format_angle(degrees(value))
        elif name == "share":
            printed[name] = format_ratio(value)
        else:
            printed[name] = format_length(value, garment.header.unit)
    return printed
