"""Owns the parts of one piece's draft by their names; knows nothing of how they are found."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.drafting.darts import darts_of
from specc.model.block import DartRun

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from specc.model.block import EdgeDraft, LevelDraft, LineDraft, PieceDraft, PointDraft, TwoPointedDraft


@dataclass(frozen=True, slots=True)
class Drafts:
    """The parts of one piece by name, and the block it belongs to."""

    piece: PieceDraft
    block: str
    points: Mapping[str, PointDraft]
    edges: Mapping[str, EdgeDraft]
    lines: Mapping[str, LineDraft | LevelDraft]
    two_pointed: Mapping[str, TwoPointedDraft]
    edge_of_dart: Mapping[str, str]
    mouths: Mapping[str, tuple[str, str]]  # for each end of a dart's mouth, the other end and the pivot

    def on_edges(self) -> Iterator[str]:
        """The points that edges run from and to."""
        for edge in self.piece.edges:
            yield edge.start
            yield from (run.to for run in edge.runs)

    def trues(self, point: str) -> bool:
        """Whether a leg ends at the point whose length was measured, and is to be made that of the other."""
        return self.piece.traced is not None and point in self.mouths

    @staticmethod
    def of(piece: PieceDraft, block: str) -> Drafts:
        """The parts of a piece of a block."""
        runs = [(edge, run) for edge in piece.edges for run in edge.runs]
        return Drafts(
            piece,
            block,
            {draft.name: draft for draft in piece.points},
            {draft.name: draft for draft in piece.edges},
            {draft.name: draft for draft in piece.lines},
            {draft.name: draft for draft in piece.two_pointed},
            {run.name: edge.name for edge, run in runs if isinstance(run, DartRun)},
            {
                end: (other, run.pivot)
                for first, run in darts_of(piece)
                for end, other in ((first, run.to), (run.to, first))
            },
        )
