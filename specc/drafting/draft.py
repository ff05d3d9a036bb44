"""Owns the stage: blocks and a chart in, the pieces of one size out.

Knows nothing of alterations: these are the pieces of the blocks as they are.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from types import MappingProxyType
from typing import TYPE_CHECKING, TypeVar

from specc.drafting.checks import unsound
from specc.drafting.darts import darts_of, unequal_legs
from specc.drafting.environment import Environment
from specc.drafting.evaluate import EvaluationError, Evaluator, in_floats
from specc.drafting.finished import FinishedPieces
from specc.geometry.path import Path
from specc.pattern.piece import NamedPoint, Notch, NotchKind, Piece

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from specc.diagnostics import Diagnostic
    from specc.model.block import Block, NotchDraft, PieceDraft
    from specc.model.chart import Chart

Found = TypeVar("Found")


@dataclass(frozen=True, slots=True)
class Drafted:
    """The pieces of one size; `measurements` are those of the chart in this size, in base units, by name."""

    size: str
    pieces: tuple[Piece, ...]
    measurements: Mapping[str, float]


def draft(
    blocks: tuple[Block, ...], chart: Chart | None, size: str
) -> tuple[Drafted | None, tuple[Diagnostic, ...]]:
    """The pieces of the blocks in one size, in the order of the text; None when one cannot be drafted.

    Every fault that does not follow from another is told. Raises ValueError when the chart has no such size.
    """
    told = _Told()
    environments: dict[str, Environment] = {}

    def in_size(wanted: str) -> Environment:
        if wanted not in environments:
            environments[wanted] = Environment(blocks, _measured(chart, wanted), wanted, in_size)
        return environments[wanted]

    environment = told.attempt(partial(in_size, size))
    if environment is None:
        return None, told.diagnostics
    for block in blocks:
        for definition in block.definitions:
            told.attempt(partial(environment.named, block.name, definition.name))
    pieces = [_drafted(piece, environment, told) for block in blocks for piece in block.pieces]
    if told.said:
        return None, told.diagnostics
    return Drafted(
        size, tuple(piece for piece in pieces if piece is not None), environment.measurements
    ), tuple(_remarks(blocks, environment))


class _Told:
    """The faults met so far, each once: many things fail of one fault."""

    def __init__(self) -> None:
        self.said: list[Diagnostic] = []

    def tell(self, diagnostic: Diagnostic) -> None:
        """Keep the fault unless it was met before."""
        if diagnostic not in self.said:
            self.said.append(diagnostic)

    def attempt(self, find: Callable[[], Found]) -> Found | None:
        """What is found, or None after the fault has been kept."""
        try:
            return find()
        except EvaluationError as error:
            self.tell(error.diagnostic)
            return None

    @property
    def diagnostics(self) -> tuple[Diagnostic, ...]:
        """The faults in the order in which they were met."""
        return tuple(self.said)


def _measured(chart: Chart | None, size: str) -> Mapping[str, float]:
    """The measurements of one size, derived ones from those above them; none without a chart.

    Raises EvaluationError at the first that has no value.
    """
    values: dict[str, float] = {}
    if chart is not None:
        column = chart.sizes.index(size)
        evaluator = Evaluator(values.__getitem__, FinishedPieces(()))
        for measurement in chart.measurements:
            values[measurement.name] = (
                in_floats(measurement.values[column])
                if measurement.derived is None
                else evaluator.value(measurement.derived)
            )
    return MappingProxyType(values)


def _remarks(blocks: tuple[Block, ...], environment: Environment) -> Iterator[Diagnostic]:
    """What is to be said of pieces that could be drafted."""
    for piece in (piece for block in blocks for piece in block.pieces if piece.traced is not None):
        for start, run in darts_of(piece):
            ends = [environment.measured_point(piece.name, name) for name in (start, run.to, run.pivot)]
            said = unequal_legs(run, (ends[0].distance(ends[2]), ends[1].distance(ends[2])))
            if said is not None:
                yield said


def _drafted(draft: PieceDraft, environment: Environment, told: _Told) -> Piece | None:
    """The piece, or None after its faults have been kept."""
    name = draft.name
    for point in draft.points:
        told.attempt(partial(environment.point_of, name, point.name))
    drawn = [told.attempt(partial(environment.edge_of, name, edge.name)) for edge in draft.edges]
    lines = [told.attempt(partial(environment.line_of, name, line.name)) for line in draft.lines]
    darts = [told.attempt(partial(environment.two_pointed_of, name, dart.name)) for dart in draft.two_pointed]
    notches = [told.attempt(partial(_notch, name, notch, environment)) for notch in draft.notches]
    if told.said:
        return None
    edges = tuple(found[0] for found in drawn if found is not None)
    corners = {corner for edge in edges for corner in (edge.start, edge.end)}
    piece = Piece(
        name,
        draft.title,
        edges,
        tuple(dart for found in drawn if found is not None for dart in found[1]),
        tuple(dart for dart in darts if dart is not None),
        tuple(line for line in lines if line is not None),
        tuple(
            NamedPoint(point.name, environment.point_of(name, point.name))
            for point in draft.points
            if point.name not in corners
        ),
        tuple(notch for notch in notches if notch is not None),
        _grain(draft, environment),
        draft.fold,
        draft.cut,
    )
    for fault in unsound(piece, draft):
        told.tell(fault)
    return piece


def _notch(piece: str, draft: NotchDraft, environment: Environment) -> Notch:
    at = environment.stitched_place(piece, draft.edge, draft.at, corner=draft.corner, origin=draft.origin)
    return Notch(draft.edge, at, NotchKind.DOUBLE if draft.double else NotchKind.SINGLE)


def _grain(draft: PieceDraft, environment: Environment) -> Path | None:
    if draft.grain is None:
        return None
    return Path.through(*(environment.point_of(draft.name, end) for end in draft.grain))
