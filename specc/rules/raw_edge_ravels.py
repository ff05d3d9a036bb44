"""An edge may stay raw only in cloth that does not ravel.

A leno or a knit holds its threads, a plain weave does not.

Plain weave ravels more than twill or satin, and these more than knit. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.construction import Making
    from specc.model.expression import PartRef
    from specc.model.material import Cloth
    from specc.rules.subject import Subject
    from specc.source import Span

RAVELS = declare(
    "SPC504",
    "raw-edge-ravels",
    Severity.WARNING,
    "{kind} `{name}` leaves a raw edge in cloth `{cloth}`, which ravels",
)

_HOLDS = ("ravel-free", "knit")


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a seam, finish, hem or attachment and cloth where an edge is left raw.

    The allowances of a seam lie inside and are worn less: there the cloth must be said to ravel.
    """
    for kind, name, making, edges, origin in _made(subject):
        if making.raw_edge != "raw":
            continue
        found = (subject.cloth(ref.piece or "") for ref in edges)
        for cloth in dict.fromkeys(cloth for cloth in found if cloth is not None):
            if "ravels" in cloth.traits:
                told = _told(kind, name, cloth, origin).see(cloth.origin, "said to ravel")
                yield told.help(_CURES[kind])
            elif kind != "seam" and not any(trait in cloth.traits for trait in _HOLDS):
                told = _told(kind, name, cloth, origin).see(cloth.origin, "not said to be `ravel-free`")
                yield told.help(
                    f"{_CURES[kind]}, or write `ravel-free` under `is` if the cloth holds its threads"
                )


_CURES = {
    "seam": "enclose its edges, such as `by french`",
    "finish": "bind it, such as `by bias-bound`",
    "hem": "turn it twice, `by double-turned`",
    "attachment": "take a way that turns the edges in, such as `by patch`",
    "closure": "take a way of closing that overlocks or encloses the edges",
}


def _told(kind: str, name: str, cloth: Cloth, origin: Span) -> Diagnostic:
    return RAVELS.at(origin, kind=kind, name=name, cloth=cloth.name)


def _made(subject: Subject) -> Iterator[tuple[str, str, Making, tuple[PartRef, ...], Span]]:
    for seam in subject.garment.seams:
        yield "seam", seam.name, seam.making, tuple(ref for side in seam.sides for ref in side), seam.origin
    for finish in subject.garment.finishes:
        yield finish.kind, finish.name, finish.making, finish.along, finish.origin
    for name, making, edges, origin in subject.attached():
        yield "attachment", name, making, edges, origin
