"""Owns attaching what a garment attaches, in every size, and what the edges that are attached are for.

Knows nothing of where a single thing comes to lie.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.making.assembly import Round, Zone
from specc.making.attached import CaughtAt, Misplaced
from specc.making.catching import catch
from specc.making.sewing_on import lay
from specc.making.uses import USED_TWICE
from specc.model.attachment import SewnOn
from specc.pattern.lookup import piece_named
from specc.pattern.measure import stitched_length
from specc.units import format_length

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping

    from specc.diagnostics import Diagnostic
    from specc.making.assembly import EdgeUse
    from specc.making.attached import Attached
    from specc.model.attachment import Attachment
    from specc.model.expression import Expression, PartRef
    from specc.model.garment import Garment
    from specc.pattern.piece import Piece

NOTHING_HOLDS = declare(
    "SPC319", "nothing-holds-it", Severity.ERROR, "nothing sews `{what}` to `{to}`: {reason}"
)


def attach(
    garment: Garment, pieces: tuple[Piece, ...], evaluate: Callable[[Expression], float]
) -> tuple[tuple[Attached, ...], tuple[Misplaced, ...]]:
    """Everything attached in one size, in the order of the text, and what cannot be."""
    found = [_one(asked, garment, pieces, evaluate) for asked in garment.attachments]
    return (
        tuple(one for one in found if not isinstance(one, Misplaced)),
        tuple(one for one in found if isinstance(one, Misplaced)),
    )


def _one(
    asked: Attachment, garment: Garment, pieces: tuple[Piece, ...], evaluate: Callable[[Expression], float]
) -> Attached | Misplaced:
    if isinstance(asked, SewnOn):
        return lay(asked, pieces, sewn_edges(asked, garment, pieces), evaluate)
    return catch(asked, pieces, garment.seams, evaluate)


def sewn_edges(asked: SewnOn, garment: Garment, pieces: tuple[Piece, ...]) -> tuple[str, ...]:
    """The edges of the piece that are sewn down: those named, else those that nothing else takes."""
    if asked.along:
        return tuple(ref.name for ref in asked.along)
    piece = piece_named(pieces, asked.piece)
    if piece is None:
        raise KeyError(asked.piece)
    ends = {
        (ref.piece, ref.name)
        for one in garment.attachments
        if not isinstance(one, SewnOn)
        for ref in one.ends
    }
    taken = _taken(garment) | ends
    return tuple(
        edge.name for edge in piece.edges if edge.name != piece.fold and (piece.name, edge.name) not in taken
    )


def _taken(garment: Garment) -> set[tuple[str | None, str]]:
    """The edges that go into seams, finishes and hems."""
    refs: list[PartRef] = [ref for seam in garment.seams for side in seam.sides for ref in side]
    refs += [ref for finish in garment.finishes for ref in finish.along]
    return {(ref.piece, ref.name) for ref in refs}


# --- what holds, and what the edges are for ---


def unheld(garment: Garment, pieces: tuple[Piece, ...]) -> Iterable[Diagnostic]:
    """A fault for everything that no row of stitching would hold."""
    taken = _taken(garment)
    for asked in garment.attachments:
        if isinstance(asked, SewnOn):
            if not sewn_edges(asked, garment, pieces):
                told = NOTHING_HOLDS.at(
                    asked.origin,
                    what=asked.piece,
                    to=asked.on,
                    reason="all its edges are finished by themselves",
                )
                yield told.help("say which are sewn down: `along PIECE.EDGE, PIECE.EDGE by set-on`")
        elif asked.making is None and (asked.to.piece, asked.to.name) not in taken:
            edge = f"{asked.to.piece}.{asked.to.name}"
            what = " and ".join(f"{ref.piece}.{ref.name}" for ref in asked.ends)
            told = NOTHING_HOLDS.at(
                asked.origin, what=what, to=edge, reason="no seam and no finish goes along that edge"
            )
            yield told.help(f"sew `{edge}` in a seam or finish it, or say how the end is sewn: `by boxed`")


def attached_uses(
    garment: Garment,
    pieces: tuple[Piece, ...],
    uses: tuple[EdgeUse, ...],
    evaluate: Callable[[Expression], float],
) -> tuple[tuple[EdgeUse, ...], tuple[Diagnostic, ...]]:
    """The uses with those of attached edges, which had none.

    An end that is caught has the allowance of the edge that catches it. An edge that is finished by itself
    may be sewn down by a way that asks for no allowance.
    """
    found = {(use.piece, use.edge): use for use in uses}
    origins = {}
    said: list[Diagnostic] = []
    for asked in garment.attachments:
        for piece, edge in _edges_of(asked, garment, pieces):
            use = found[piece, edge]
            by_edge = None if isinstance(asked, SewnOn) else found.get((asked.to.piece or "", asked.to.name))
            allowance = (
                evaluate(asked.making.allowance) if asked.making else by_edge.allowance if by_edge else 0.0
            )
            turned = tuple(evaluate(depth) for depth in asked.making.turned) if asked.making else ()
            if use.kind == "none":
                found[piece, edge] = replace(
                    use, kind="attachment", by=asked.name, allowance=allowance, turned=turned
                )
                origins[piece, edge] = asked.origin
            elif allowance not in (0.0, use.allowance) or (use.kind != "attachment" and allowance):
                first, second = f"{use.kind} `{use.by}`", f"attachment `{asked.name}`"
                told = USED_TWICE.at(asked.origin, edge=f"{piece}.{edge}", first=first, second=second)
                said.append(
                    told.see(origins.get((piece, edge)), "first here").help("take it out of one of them")
                )
    return tuple(found.values()), tuple(said)


def _edges_of(asked: Attachment, garment: Garment, pieces: tuple[Piece, ...]) -> tuple[tuple[str, str], ...]:
    if isinstance(asked, SewnOn):
        return tuple((asked.piece, edge) for edge in sewn_edges(asked, garment, pieces))
    return tuple((ref.piece or "", ref.name) for ref in asked.ends)


def attached_edges(garment: Garment, pieces: tuple[Piece, ...]) -> frozenset[tuple[str, str]]:
    """The edges that are attached: they bound no opening of the garment."""
    return frozenset(edge for asked in garment.attachments for edge in _edges_of(asked, garment, pieces))


def attached_run(found: Attached, pieces: tuple[Piece, ...]) -> Round:
    """The edges sewn down, or the stretch that an end takes on its edge, as a trim goes along them."""
    if isinstance(found, CaughtAt):
        zone = Zone(found.piece, found.edge, found.start, found.end, 0.0)
        return Round(found.attachment, False, found.places, (zone,), found.end - found.start, 0.0)
    piece = piece_named(pieces, found.piece)
    if piece is None:
        raise KeyError(found.piece)
    edges = [edge for edge in piece.edges if edge.name in found.edges]
    halves = 2 if piece.fold else 1
    zones = tuple(Zone(piece.name, edge.name, 0.0, stitched_length(edge), 0.0) for edge in edges) * halves
    closed = all(edge in edges or edge.name == piece.fold for edge in piece.edges)
    turning = sum(abs(part.turning()) for edge in edges for part in edge.parts) * halves
    return Round(found.attachment, closed, found.places, zones, sum(zone.end for zone in zones), turning)


def refs_of(asked: Attachment) -> tuple[PartRef, ...]:
    """The edges that an attachment speaks of, all of which must be there."""
    if isinstance(asked, SewnOn):
        measured = () if asked.square_to is None else (asked.square_to,)
        return (*asked.along, *measured)
    return (*asked.ends, asked.to)


# --- faults of several sizes ---


def told(misplaced: Mapping[str, tuple[Misplaced, ...]], garment: Garment) -> tuple[Diagnostic, ...]:
    """One diagnostic a place and a kind of fault, with the figures of every size that has it."""
    grouped: dict[tuple[object, str], dict[Misplaced, list[str]]] = {}
    for size, faults in misplaced.items():
        for fault in faults:
            grouped.setdefault((fault.origin, fault.code.id), {}).setdefault(fault, []).append(size)
    said = []
    for rows in grouped.values():
        first = next(iter(rows))
        diagnostic = first.code.at(first.origin, **_facts(first, garment))
        if len(rows) > 1 or sum(map(len, rows.values())) < len(misplaced):
            for fault, sizes in rows.items():
                sentence = fault.code.message.format_map(_facts(fault, garment))
                diagnostic = diagnostic.note(f"size {', '.join(sizes)}: {sentence}")
        said.append(diagnostic.help(first.help))
    return tuple(said)


def _facts(fault: Misplaced, garment: Garment) -> dict[str, str]:
    return {
        name: fact if isinstance(fact, str) else _length(fact, garment.header.unit)
        for name, fact in fault.facts
    }


def _length(mm: float, unit: str) -> str:
    """A length that is something: in finer steps where it would be printed as nothing."""
    printed = format_length(mm, unit)
    return format_length(mm, "mm", decimals=2) if printed == format_length(0.0, unit) else printed
