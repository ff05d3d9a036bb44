"""An edge turned back along a curve is sewn to a line that is longer or shorter than itself.

Turned back by d at a radius r, the turned edge was cut d outside of the fold and comes to lie d inside of it:
it is (r + d) / (r - d) times as long as the line that it is sewn to where the edge curves outward, and so
much too short where it curves inward (geometry). The one has to be eased in, the other to be stretched. What
a trim draws in, a casing, shows neither.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import inf
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.pattern.lookup import part_of
from specc.pattern.measure import stitched_length
from specc.rules.curves import NOTHING_LEFT, NOTICED, at_most, by_sizes, curves
from specc.units import format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.making.assembly import EdgeUse, SizeAssembly
    from specc.rules.curves import Curve
    from specc.rules.subject import Subject

BEYOND_HEM = declare(
    "SPC561",
    "curve-beyond-hem",
    Severity.WARNING,
    "`{made}` turns `{edge}` back by {deep}, where {asks}; {takes} can be worked in",
)

WORKED_IN: Final = 0.10
"""What can be eased in or stretched when an edge is turned back; a cloth that stretches gives its stretch.

Published depths ask for as much: a hem of 2 in on a gored skirt 60 to 70 in round (Texas A&M Extension,
L-359) is 9 to 11 % longer than its line. That this is the most: common practice, no source.
"""

_EVENED = 50.0  # mm along which fullness spreads, at least: common practice, no source
_ROLLED = 3.0  # mm: a roll no deeper gives way by itself (common practice, no source)


@dataclass(frozen=True, slots=True)
class _Turned:
    """An edge turned back by `deep` millimetres on a curve; all along it differs by `whole` millimetres."""

    size: str
    curve: Curve
    deep: float
    whole: float

    @property
    def asks(self) -> float:
        """By what share one of the two lines is longer; endless where nothing is left of the other."""
        room = self.curve.radius - self.deep
        return 2.0 * self.deep / room if room > NOTHING_LEFT * self.deep else inf

    def __str__(self) -> str:
        """What becomes of the turned edge, in words."""
        sewn = "the line that it is sewn to"
        if self.asks == inf:
            return f"next to nothing is left of {'the turned edge' if self.curve.inward else sewn}"
        share = format_ratio(self.asks)
        if self.curve.inward:
            return f"the turned edge has to stretch by {share} to {sewn}"
        return f"the turned edge is {share} longer than {sewn}"


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic an edge, with the tightest place in every size that asks too much."""
    drawn_in = {finish.name for finish in subject.garment.finishes if finish.making.takes}
    found: dict[tuple[str, str, str], dict[str, _Turned]] = {}
    for size in subject.assembly.sizes:
        for use in size.uses:
            if use.by in drawn_in or not use.turned or use.turned[0] <= _ROLLED:
                continue
            takes = _takes(subject, use.piece)
            for turned in _turned(subject, size, use):
                if turned.asks > takes + NOTICED:
                    tight = found.setdefault((use.by or "", use.piece, use.edge), {})
                    tight[size.size] = max(tight.get(size.size, turned), turned, key=_by_need)
    for (made, piece, edge), tight in found.items():
        yield _told(subject, made, (piece, edge), tuple(tight.values()))


def _takes(subject: Subject, piece: str) -> float:
    cloth = subject.cloth(piece)
    return max(WORKED_IN, float(cloth.stretch) if cloth else 0.0)


def _by_need(turned: _Turned) -> tuple[float, float]:
    return turned.asks, -turned.curve.radius


def _turned(subject: Subject, size: SizeAssembly, use: EdgeUse) -> Iterator[_Turned]:
    edge = part_of(size.pieces, use.piece, use.edge)[1]
    deep = use.turned[0]
    whole = 2.0 * deep * abs(sum(part.turning() for part in edge.parts))
    between = (0.0, stitched_length(edge))
    for curve in curves(subject, size, (use.piece, use.edge), between, over=max(2.0 * deep, _EVENED)):
        yield _Turned(size.size, curve, deep, whole)


def _told(subject: Subject, made: str, edge: tuple[str, str], tight: tuple[_Turned, ...]) -> Diagnostic:
    garment = subject.garment
    origins = {one.name: one.origin for one in (*garment.finishes, *garment.attachments)}
    worst, takes = max(tight, key=_by_need), _takes(subject, edge[0])
    told = BEYOND_HEM.at(
        origins[made],
        made=made,
        edge=".".join(edge),
        deep=subject.length(worst.deep),
        asks=str(worst),
        takes=format_ratio(takes),
    )
    for note in by_sizes((turned.size, _figures(subject, turned)) for turned in tight):
        told = told.note(note)
    deep = min(turned.curve.radius * takes / (2.0 + takes) for turned in tight)
    if deep >= _ROLLED:
        told = told.help(f"turn it back by {at_most(deep, garment.header.unit)} or less")
    return told.help("face it with a strip on the bias, such as `by bias-faced`, or bind it, `by bias-bound`")


def _figures(subject: Subject, turned: _Turned) -> str:
    more = "shorter" if turned.curve.inward else "longer"
    return (
        f"a radius of {subject.length(turned.curve.radius)}, {turned.curve.place}; {turned};"
        f" {subject.difference(turned.whole)} {more} in all"
    )
