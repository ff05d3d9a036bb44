"""A garment put on over the head needs every opening round the body's middle to let the head through.

A closed opening of length P whose cloth and binding stretch by e passes a head of girth H when P (1 + e) >= H
(geometry). Head girth comes from the chart.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.making.assembly import Opening
    from specc.rules.subject import Subject

DOES_NOT_PASS = declare(
    "SPC505",
    "head-does-not-pass",
    Severity.ERROR,
    "{what} does not pass the head in {sizes}; it lacks up to {lack}",
)
NO_HEAD = declare(
    "SPC519",
    "head-girth-unknown",
    Severity.WARNING,
    "{there} no `head-girth`, so no opening was held against it",
)

NEAR = 1.0  # mm: less is lost in sewing


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic an opening, with what passes and the head girth in each size that fails."""
    header = subject.garment.header
    if header.puts_on != "over the head":
        return
    failed: dict[str, list[tuple[str, Opening, float]]] = {}
    for size in subject.assembly.sizes:
        head = subject.measurement("head-girth", size.size)
        if head is None:
            chart = subject.garment.chart
            if chart is None:
                told = NO_HEAD.at(header.origin, there="without a size chart there is")
                yield told.help("use a chart with a `measurement head-girth`")
            else:
                told = NO_HEAD.at(header.origin, there=f"chart `{chart.name}` has")
                yield told.help("give the chart a `measurement head-girth`")
            return
        for opening in size.openings:
            if opening.central and opening.passes < head - NEAR:
                failed.setdefault(opening.called, []).append((size.size, opening, head))
    for what, sizes in failed.items():
        edges = sizes[0][1].edges
        lack = max(head - opening.passes for _, opening, head in sizes)
        told = DOES_NOT_PASS.at(
            subject.place_of(edges, edges[0].partition(".")[0]),
            what=what,
            sizes=subject.sizes(name for name, _, _ in sizes),
            lack=subject.difference(lack),
        )
        for name, opening, head in sizes:
            through, girth = subject.lengths(opening.passes, head)
            told = told.note(f"size {name}: {through} passes, the head is {girth}")
        cure = "lower or widen the opening"
        if any(_trim_holds(subject, opening) for _, opening, _ in sizes):
            cure += ", hold its trim in less or take one that stretches more"
        yield told.help(f"{cure}, or {subject.opened_further(edges)}")


def _trim_holds(subject: Subject, opening: Opening) -> bool:
    """Whether the cloth alone would stretch further than its trim lets it."""
    cloths = (subject.cloth(edge.partition(".")[0]) for edge in opening.edges)
    stretch = min(float(cloth.stretch) if cloth else 0.0 for cloth in cloths)
    return opening.passes < opening.flat * (1.0 + stretch) - NEAR
