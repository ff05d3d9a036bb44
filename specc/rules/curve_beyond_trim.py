"""A trim laid along a curve has a longer and a shorter edge, and must give by what they differ.

Two lines along a curve, so far apart, differ by that distance times the angle turned (geometry): at a radius
r of the sewn edge, with a trim that reaches in by w, the longer is w / r longer than the shorter where the
edge curves inward, w / (r - w) where it curves outward. What has no room makes folds, what is too short cups
the edge. Over a stretch as long as the trim is cut wide, and never less than 2 cm, what it gives spreads
evenly (common practice, no source): the radius is that of such a stretch.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import inf
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.geometry.tolerance import SAME
from specc.quantities.trims import trim_runs
from specc.rules.curves import NOTHING_LEFT, NOTICED, at_most, by_sizes, curves
from specc.units import format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.model.attachment import Attachment
    from specc.model.construction import Finish, Seam, Takes
    from specc.model.material import Trim
    from specc.rules.curves import Curve
    from specc.rules.subject import Subject

    _Made = Seam | Finish | Attachment

BEYOND_TRIM = declare(
    "SPC560",
    "curve-beyond-trim",
    Severity.WARNING,
    "`{made}` lays `{trim}` along `{edge}`, where {asks}; it takes {takes}",
)

BIAS_TAKES: Final = 1.0 / 3.0
"""A binding on the bias that finishes 1/4 in wide goes round a rounded corner of 1 in.

That is common practice, no source. It asks that one edge be stretched by 15 % and the other eased by as much;
of threads that do not stretch, a strip at 45 degrees is then 18 % narrower where it is stretched (trellis:
the squares of its new length and width, as shares of the old, sum up to 2).
"""

STRAIGHT_TAKES: Final = 0.02
"""What pressing shapes in a trim that does not stretch: common practice, no source."""

_OF_ITS_WIDTH: Final = {"folded-binding": 1 / 2, "binding": 1 / 4, "doubled-binding": 1 / 6, "tape": 1.0}
_CUT_ON_THE_BIAS = ("bias strip", "piping")
_EVENED = 20.0  # mm along which what a trim gives spreads, at least
_NARROWEST = 3.0  # mm: less is not proposed
_MOST_STRETCH = 1.0  # more is not proposed
_ROUNDEST = 1000.0  # mm: a curve rounder than that is not proposed


@dataclass(frozen=True, slots=True)
class _Laid:
    """A trim that reaches in by `reach` millimetres on a curve, held in by the share `held`."""

    size: str
    curve: Curve
    reach: float
    held: float

    @property
    def asks(self) -> float:
        """By what share it has to stretch along its longer edge; endless where none is left of the other."""
        if self.curve.inward:
            return (1.0 + self.reach / self.curve.radius) / (1.0 - self.held) - 1.0
        room = self.curve.radius - self.reach
        return self.reach / room if room > NOTHING_LEFT * self.reach else inf

    def share(self, takes: float) -> float:
        """The share of the radius by which a trim that takes so much may reach in."""
        return (1.0 + takes) * (1.0 - self.held) - 1.0 if self.curve.inward else takes / (1.0 + takes)

    def __str__(self) -> str:
        """What becomes of the trim, in words."""
        if self.asks == inf:
            return "next to nothing is left of its inner edge"
        longer, shorter = ("inner", "outer") if self.curve.inward else ("outer", "inner")
        held = ", held in," if self.curve.inward and self.held else ""
        return f"its {longer} edge{held} is {format_ratio(self.asks)} longer than its {shorter} one"


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a trim and an edge, with the tightest place in every size that asks too much."""
    trims = {trim.name: trim for trim in subject.garment.trims}
    found: dict[tuple[str, str, str], dict[str, _Laid]] = {}
    for made, name, edge, laid in _laid(subject, trims):
        takes = takes_of(trims[name])
        # What is held in too much by itself is told by a rule of its own.
        if laid.share(takes) > NOTICED and laid.asks > takes + NOTICED:
            tight = found.setdefault((made, name, edge), {})
            tight[laid.size] = max(tight.get(laid.size, laid), laid, key=_by_need)
    for (made, name, edge), tight in found.items():
        yield _told(subject, made, trims[name], edge, tuple(tight.values()))


def takes_of(trim: Trim) -> float:
    """By what share one edge of a trim can be made longer than the other."""
    return max(float(trim.stretch), BIAS_TAKES if trim.kind in _CUT_ON_THE_BIAS else STRAIGHT_TAKES)


def _by_need(laid: _Laid) -> tuple[float, float]:
    return laid.asks, -laid.curve.radius


def _laid(subject: Subject, trims: dict[str, Trim]) -> Iterator[tuple[str, str, str, _Laid]]:
    """Every trim on the tightest curves of every edge: what it belongs to, its name, the edge."""
    every = _every(subject)
    for size in subject.assembly.sizes:
        for made, takes, run in trim_runs(subject.garment, size):
            reach = _reach(subject, every[made], takes, trims[takes.trim])
            if takes.hanging is not None or reach is None or reach <= SAME:
                continue
            over = max(subject.evaluate(takes.cut_width), _EVENED)
            for zone in dict.fromkeys(run.zones):
                edge, between = (zone.piece, zone.edge), (zone.start, zone.end)
                for curve in curves(subject, size, edge, between, over=over):
                    yield made, takes.trim, ".".join(edge), _Laid(size.size, curve, reach, zone.held)


def _every(subject: Subject) -> dict[str, _Made]:
    garment = subject.garment
    return {one.name: one for one in (*garment.seams, *garment.finishes, *garment.attachments)}


def _reach(subject: Subject, made: _Made, takes: Takes, trim: Trim) -> float | None:
    """How far a trim reaches in from the edge, by how it lies there.

    A binding is folded to a quarter of its width, or to a half; of a facing the seam is lost, and as much
    turned under. Where nobody says how it lies it is as wide as it is bought; None where it is not.
    """
    if trim.kind == "cord":
        return None  # it is round, and bends any way
    width = subject.evaluate(takes.cut_width)
    if takes.lies == "facing" and made.making is not None:
        return width - 2.0 * subject.evaluate(made.making.allowance)
    if takes.lies is not None:
        return width * _OF_ITS_WIDTH[takes.lies] if takes.lies in _OF_ITS_WIDTH else None
    as_bought = trim.width is not None and abs(width - float(trim.width.value)) <= SAME
    return width * (0.5 if trim.kind == "fold-over elastic" else 1.0) if as_bought else None


def _told(subject: Subject, made: str, trim: Trim, edge: str, tight: tuple[_Laid, ...]) -> Diagnostic:
    worst = max(tight, key=_by_need)
    told = BEYOND_TRIM.at(
        _every(subject)[made].origin,
        made=made,
        trim=trim.name,
        edge=edge,
        asks=str(worst),
        takes=format_ratio(takes_of(trim)),
    ).see(trim.origin, "declared here")
    for note in by_sizes((laid.size, _figures(subject, laid)) for laid in tight):
        told = told.note(note)
    for cure in _cures(subject, trim, worst, tight):
        told = told.help(cure)
    return told


def _figures(subject: Subject, laid: _Laid) -> str:
    radius, reach = subject.lengths(laid.curve.radius, laid.reach)
    return f"a radius of {radius}, {laid.curve.place}, under a trim that lies {reach} deep; {laid}"


def _cures(subject: Subject, trim: Trim, worst: _Laid, tight: tuple[_Laid, ...]) -> Iterator[str]:
    """What would do in every size, each by itself."""
    takes = takes_of(trim)
    deep = min(laid.curve.radius * laid.share(takes) for laid in tight)
    if deep >= _NARROWEST:
        yield f"let it lie {at_most(deep, subject.garment.header.unit)} deep or less"
    if worst.held and all(laid.reach <= takes * laid.curve.radius for laid in tight):
        yield "hold it in less there"
    if takes < BIAS_TAKES and worst.asks <= BIAS_TAKES:
        yield f"take a strip cut on the bias, which takes {format_ratio(BIAS_TAKES)}"
    if worst.asks <= _MOST_STRETCH:
        yield f"take a trim that stretches by {format_ratio(worst.asks)}, and write its `stretch`"
    wide = max(laid.reach / laid.share(takes) for laid in tight)
    if wide <= _ROUNDEST:
        yield f"draw the curve rounder, to a radius of {subject.length(wide)} or more"
