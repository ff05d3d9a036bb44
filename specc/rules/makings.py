"""Owns going through all that is sewn: every seam, finish and attachment with its way of making.

Knows no rule.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.model.construction import Making
    from specc.rules.subject import Subject
    from specc.source import Span


@dataclass(frozen=True, slots=True)
class Sewn:
    """What is sewn: `kind` is `seam`, `finish`, `hem`, `closure` or `attachment`."""

    kind: str
    name: str
    making: Making
    pieces: tuple[str, ...]
    origin: Span


def all_sewn(subject: Subject) -> Iterator[Sewn]:
    """Seams, then finishes, then attachments, each in the order of the text; pieces each once."""
    for seam in subject.garment.seams:
        pieces = dict.fromkeys(ref.piece or "" for side in seam.sides for ref in side)
        yield Sewn("seam", seam.name, seam.making, tuple(pieces), seam.origin)
    for finish in subject.garment.finishes:
        pieces = dict.fromkeys(ref.piece or "" for ref in finish.along)
        yield Sewn(finish.kind, finish.name, finish.making, tuple(pieces), finish.origin)
    for name, making, edges, origin in subject.attached():
        pieces = dict.fromkeys(ref.piece or "" for ref in edges)
        yield Sewn("attachment", name, making, tuple(pieces), origin)


def trims_used(subject: Subject) -> frozenset[str]:
    """The names of trims that something sewn takes."""
    makings = [sewn.making for sewn in all_sewn(subject)]
    laid = {takes.trim for making in makings for takes in making.takes}
    return frozenset(laid | {takes.trim for making in makings for takes in making.pieces})


def cloths_used(subject: Subject) -> frozenset[str]:
    """The names of cloths that a piece, or a trim in use, is cut from."""
    garment, trims = subject.garment, trims_used(subject)
    pieces = {piece.name for piece in subject.pieces()}
    found = {cloth.name for piece in pieces if (cloth := subject.cloth(piece)) is not None}
    found |= {ply.cloth for ply in garment.cut_again if ply.piece in pieces}
    return frozenset(
        found | {trim.cut_from for trim in garment.trims if trim.cut_from and trim.name in trims}
    )
