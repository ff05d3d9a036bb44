"""A garment without a closure must let the body through on its way on.

Over the head, what lies below the bust must pass the bust and the shoulders; stepped into, what lies above
the hip must pass the hip. Shoulders measure less with the arms raised, one after the other, so falling short
of them is a warning where falling short of bust or hip is an error. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.pattern.lookup import line_named
from specc.pattern.measure import line_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Code, Diagnostic
    from specc.making.assembly import SizeAssembly
    from specc.rules.subject import Subject

BODY = declare(
    "SPC506",
    "body-does-not-pass",
    Severity.ERROR,
    "{what} does not pass the {body} in {sizes}; it lacks up to {lack}",
)
SHOULDERS = declare(
    "SPC520",
    "shoulders-hardly-pass",
    Severity.WARNING,
    "{what} hardly passes the {body} in {sizes}; it lacks up to {lack}",
)

NEAR = 1.0  # mm: less is lost in sewing

_PASSES: dict[str, tuple[tuple[str, str, Code], ...]] = {
    "over the head": (("bust", "bust", BODY), ("shoulder-girth", "shoulders", SHOULDERS)),
    "stepping in": (("hip", "hip", BODY),),
}


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic for each narrow place and each part of the body."""
    for measurement, body, code in _PASSES.get(subject.garment.header.puts_on or "", ()):
        failed: dict[str, list[tuple[str, float, float]]] = {}
        for size in subject.assembly.sizes:
            needed = subject.measurement(measurement, size.size)
            for place, passes in _girths(subject, size):
                if needed is not None and passes < needed - NEAR:
                    failed.setdefault(place, []).append((size.size, passes, needed))
        for place, sizes in failed.items():
            lack = max(needed - passes for _, passes, needed in sizes)
            told = code.at(
                subject.garment.header.origin,
                what=place,
                body=body,
                sizes=subject.sizes(name for name, _, _ in sizes),
                lack=subject.length(lack),
            )
            for name, passes, needed in sizes:
                told = told.note(f"size {name}: {subject.length(passes)} against {subject.length(needed)}")
            yield told.help("give it more ease there, crop above it, or give the garment a closure")


def _round_body(size: SizeAssembly) -> frozenset[str]:
    """The pieces that go round the body, not round an arm or a leg alone.

    They lie on the fold, are sewn left to right, or end in an opening round the body's middle.
    """
    central = {edge.partition(".")[0] for one in size.openings if one.central for edge in one.edges}
    folded = {piece.name for piece in size.pieces if piece.fold}
    sewn = {walk.first[0].piece for walk in size.walks if walk.first == walk.second}
    return frozenset(central | folded | sewn)


def _girths(subject: Subject, size: SizeAssembly) -> Iterator[tuple[str, float]]:
    """Every reference line that goes round the body, with the girth that passes it at full stretch."""
    body = _round_body(size)
    pieces = [piece for piece in size.pieces if piece.name in body]
    names = dict.fromkeys(line.name for piece in pieces for line in piece.lines)
    for name in names:
        girth = 0.0
        for piece in pieces:
            line = line_named(piece, name)
            if line is not None:
                cloth = subject.cloth(piece.name)
                copies = piece.cut * (2 if piece.fold else 1)
                girth += line_length(piece, line) * copies * (1.0 + float(cloth.stretch if cloth else 0))
        yield f"the girth at `{name}`", girth
    for opening in size.openings:
        if opening.central and not any(edge.endswith(".neck") for edge in opening.edges):
            yield f"the opening of {' and '.join(f'`{edge}`' for edge in opening.edges)}", opening.passes
