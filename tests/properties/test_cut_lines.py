"""Laws of cut lines, whatever the outline: they hold it, stay near it and never cross themselves."""

from __future__ import annotations

from math import hypot

import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from specc.geometry.allowance import Allowed, cut_line
from specc.geometry.corner import MITRE_LIMIT
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.region import crosses_itself
from specc.geometry.segment import Cubic, Line
from specc.geometry.tolerance import FLATTEN, GRID
from tests.strategies import lengths

ORIGIN = Point(0.0, 0.0)


@st.composite
def outlines(draw: st.DrawFn) -> tuple[Path, ...]:
    """Closed outlines of 3 to 8 runs, star-shaped round the origin, straight or bent either way."""
    count = draw(st.integers(3, 8))
    shares = [draw(st.floats(0.3, 1.0)) for _ in range(count)]
    whole, at, corners = sum(shares), 0.0, []
    for share in shares:
        corners.append(Point(draw(lengths(30, 400)), 0.0).turned(at))
        at += 2.0 * 3.141592653589793 * share / whole
    runs = []
    for a, b in zip(corners, (*corners[1:], corners[0]), strict=True):
        bend = draw(st.sampled_from([0.0, 0.0, 0.0, -0.6, -0.3, 0.3, 0.6]))
        d = b - a
        runs.append(
            Path(
                (
                    Line(a, b)
                    if bend == 0.0
                    else Cubic(a, a + d.turned(bend) * 0.35, b - d.turned(-bend) * 0.35, b),
                )
            )
        )
    return tuple(runs) if draw(st.booleans()) else tuple(run.reversed() for run in reversed(runs))


@st.composite
def allowances(draw: st.DrawFn, run: Path) -> Allowed:
    """Any allowance: none, plain, squared at an end, turned once or twice, or the fold of the cloth."""
    width = draw(st.sampled_from([0.0, 3.0, 6.0, 10.0, 15.0, 25.0, 40.0]))
    kind = draw(st.sampled_from(["plain", "plain", "squared", "turned", "turned twice", "fold"]))
    match kind:
        case "squared":
            return Allowed(run, width, square_start=draw(st.booleans()), square_end=draw(st.booleans()))
        case "turned" if width:
            return Allowed(run, width, (width,))
        case "turned twice" if width:
            under = draw(st.floats(0.1, 0.5)) * width
            return Allowed(run, width, (width - under, under))
        case "fold":
            return Allowed(run, 0.0, on_fold=True)
    return Allowed(run, width)


def polygon(points: tuple[Point, ...] | list[Point]) -> shapely.Polygon:
    return shapely.Polygon([(p.x, p.y) for p in points])


@settings(max_examples=600)
@given(st.data(), outlines())
def test_a_cut_line_holds_the_outline_stays_near_it_and_is_simple(
    data: st.DataObject, runs: tuple[Path, ...]
) -> None:
    net = [point for run in runs for point in run.flattened()[:-1]]
    if crosses_itself(net):
        return
    outline = tuple(data.draw(allowances(run)) for run in runs)
    cut = cut_line(outline)
    whole, inner = polygon(cut), polygon(net)
    assert whole.is_valid
    assert not crosses_itself(cut)
    assert inner.difference(whole).area <= GRID * inner.length
    # A mitre is cut off square at its limit, at most the allowance to either side of its middle. A turned end
    # reaches aside by its depth times its slant.
    widest = max(allowed.width for allowed in outline)
    aside = 0.0 if not any(allowed.turned for allowed in outline) else 2.0 * widest
    reach = max(inner.distance(shapely.Point(p.x, p.y)) for p in cut)
    assert reach <= hypot(MITRE_LIMIT, 1.0) * widest + aside + FLATTEN
