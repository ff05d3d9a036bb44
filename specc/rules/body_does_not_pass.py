"""A garment without a closure must let the body through on its way on.

Over the head, what lies at or below the bust must pass the bust and the shoulders; stepped into, what lies
at or above the hip must pass the hip. What only the feet or the head go through is another matter: a pegged
hem may be narrower than the hip. Shoulders measure less with the arms raised, one after the other, so falling
short of them is a warning where falling short of bust or hip is an error. Common practice, no source.

Where a place lies is read from the lines `bust-line`, `waist-line` and `hip-line` of its pieces. An opening
of pieces without them is taken for the way in when it lies in the upper half of its pieces (stepping in) or
in the lower half (over the head); of a line without them nothing is said.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.rules.girths import girths

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Code, Diagnostic
    from specc.rules.girths import Girth
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
    """One diagnostic a narrow place, about the part of the body that it is least likely to pass."""
    puts_on = subject.garment.header.puts_on or ""
    told: set[str] = set()
    for measurement, body, code in _PASSES.get(puts_on, ()):
        # Shell and lining are two ways round at one line: the narrower is told.
        failed: dict[str, dict[str, tuple[str, Girth, float]]] = {}
        for size in subject.assembly.sizes:
            needed = subject.measurement(measurement, size.size)
            if needed is None:
                continue
            for girth in girths(subject, size):
                if girth.passes < needed - NEAR and _on_the_way(girth, upward=puts_on == "stepping in"):
                    rows = failed.setdefault(girth.name, {})
                    if size.size not in rows or girth.passes < rows[size.size][1].passes:
                        rows[size.size] = size.size, girth, needed
        for name, rows in failed.items():
            if name not in told:
                yield _told(subject, code, body, list(rows.values()))
        told.update(failed)


def _told(subject: Subject, code: Code, body: str, rows: list[tuple[str, Girth, float]]) -> Diagnostic:
    girth = rows[0][1]
    said = code.at(
        subject.place_of(girth.edges, girth.pieces[0]),
        what=girth.name,
        body=body,
        sizes=subject.sizes(size for size, _, _ in rows),
        lack=subject.difference(max(needed - one.passes for _, one, needed in rows)),
    )
    for size, one, needed in rows:
        passes, wanted = subject.lengths(one.passes, needed)
        said = said.note(f"size {size}: {passes} passes, the {body} {_VERB[body]} {wanted}")
    return said.help(f"make it wider there, or {subject.opened_further(girth.edges)}")


_VERB = {"bust": "is", "hip": "is", "shoulders": "are"}


def _on_the_way(girth: Girth, *, upward: bool) -> bool:
    """Whether the part of the body has to go through the place.

    A landmark that is itself on the way has the place on its far side, or level with it.
    """
    sign = 1.0 if upward else -1.0
    landmarks = [(height, mark) for height, _, marks in girth.heights for mark in marks]
    if landmarks:
        return any(sign * (height - mark) > -NEAR for height, mark in landmarks)
    return bool(girth.edges) and all(sign * (height - middle) > 0.0 for height, middle, _ in girth.heights)
