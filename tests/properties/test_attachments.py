"""Laws of what is attached: it keeps its shape, lies where it was asked for, and lies on the piece."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, degrees, radians, sin
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import Point as Place
from shapely import Polygon

from specc.pattern.lookup import corner_named, piece_named, point_named
from specc.pattern.outline import unfolded_outline
from tests.attaching import caught, placed, pocketed
from tests.made import codes, length, sizes, top
from tests.strategies import lengths

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.geometry.point import Point
    from specc.pipeline import Result


@dataclass(frozen=True, slots=True)
class Asked:
    """A pocket: which corner lies where, by how many degrees it is turned, how large it is (mm)."""

    corner: str
    below: int
    across: int
    angle: int
    wide: int
    long: int
    rounded: bool

    @property
    def text(self) -> str:
        """The statements."""
        side = "below" if self.below >= 0 else "above"
        turned = f"turned {self.angle} deg".replace("-", "- ")
        rounding = "alter { round pocket at bottom-left by 15 mm; round pocket at bottom-right by 15 mm }\n"
        return (rounding if self.rounded else "") + (
            f"attach pocket on front with {self.corner} at {abs(self.below)} mm {side} bust-line,"
            f" {self.across} mm from centre, {turned} by patch\n"
        )

    def made(self) -> Result:
        """The square top with it."""
        return pocketed(self.text, wide=self.wide, long=self.long)


ASKED = st.builds(
    Asked,
    corner=st.sampled_from(("top-left", "top-right", "bottom-left", "bottom-right")),
    below=st.integers(-60, 250),
    across=st.integers(0, 200),
    angle=st.integers(-50, 50),
    wide=st.integers(40, 200),
    long=st.integers(40, 200),
    rounded=st.booleans(),
).filter(lambda asked: not asked.rounded or "bottom" not in asked.corner)  # that corner is rounded away
BUST = 350.0  # of the square top: millimetres above its hem
CHEST = {"S": 880.0, "L": 1000.0}


def polygon(points: Iterable[Point]) -> Polygon:
    return Polygon([(point.x, point.y) for point in points])


@settings(max_examples=18)
@given(ASKED)
def test_what_is_sewn_on_keeps_its_shape_and_lies_where_it_was_asked(asked: Asked) -> None:
    result = asked.made()
    if result.assembly is None:
        assert set(codes(result)) == {"SPC535"}
        return
    for made, one in zip(sizes(result), placed(result), strict=True):
        own, front = piece_named(made.pieces, "pocket"), piece_named(made.pieces, "front")
        assert own is not None
        assert front is not None
        before, after = unfolded_outline(own), one.outline
        # Congruent: every run is as long as it was, and turns as it turned.
        assert [run.length() for run in after.segments] == pytest.approx(
            [run.length() for run in before.segments], abs=1e-6
        )
        assert after.turning() == pytest.approx(before.turning(), abs=1e-9)
        assert polygon(after.flattened()).area == pytest.approx(polygon(before.flattened()).area, abs=1e-3)
        # Where it was asked: the centre is x = 0.
        corner = point_named(own, asked.corner)
        assert corner is not None
        assert (one.spot.x, one.spot.y) == pytest.approx((asked.across, BUST - asked.below))
        turn = before.segments[0].start_direction().angle_to(after.segments[0].start_direction())
        assert degrees(turn) == pytest.approx(asked.angle, abs=1e-6)
        moved = (before.segments[0].start - corner).turned(radians(asked.angle)) + one.spot
        assert moved.distance(after.segments[0].start) < 1e-6
        # On the piece, as shapely sees it.
        whole = polygon(unfolded_outline(front).flattened())
        assert whole.buffer(0.2).covers(polygon(after.flattened()))


@settings(max_examples=12)
@given(ASKED)
def test_drill_marks_lie_inside_of_the_corners(asked: Asked) -> None:
    result = asked.made()
    assume(result.assembly is not None)
    for one in placed(result):
        outline = polygon(one.outline.flattened())
        assert len(one.drills) == (2 if asked.rounded else 4)
        for drill in one.drills:
            assert outline.contains(Place(drill.x, drill.y))
            assert outline.exterior.distance(Place(drill.x, drill.y)) == pytest.approx(25.4 / 8, abs=1e-6)


@settings(max_examples=12)
@given(ASKED)
def test_what_does_not_lie_on_the_piece_is_told(asked: Asked) -> None:
    """The corners of a turned rectangle, reckoned by hand, against the half that is drawn."""
    asked = replace(asked, rounded=False)
    wide = asked.wide if asked.corner.endswith("left") else -asked.wide
    long = asked.long if asked.corner.startswith("bottom") else -asked.long
    c, s = cos(radians(asked.angle)), sin(radians(asked.angle))
    turned = [(x * c - y * s, x * s + y * c) for x, y in ((0, 0), (wide, 0), (wide, long), (0, long))]
    xs = [asked.across + x for x, _ in turned]
    ys = [BUST - asked.below + y for _, y in turned]
    assume(min(xs) >= 0.0 and max(ys) <= 400.0)  # not over the fold, nor near the neck
    beyond = max(max(xs) - (CHEST["S"] + 200.0) / 4.0, -min(ys))

    assert ("SPC535" in codes(asked.made())) is (beyond > 0.1)


@settings(max_examples=10)
@given(lengths(0.0, 60.0), st.integers(0, 200), st.integers(0, 100))
def test_it_moves_with_the_alterations(longer: float, below: int, across: int) -> None:
    """`alter` may stand behind it: what is attached finds the pieces as they are in the end."""
    place = f"{below} mm below bust-line, {across} mm from centre"
    attach = f"attach pocket on front with top-left at {place} by patch\n"
    plain = pocketed(attach, wide=80, long=80)
    altered = pocketed(
        f"{attach}alter {{ lengthen front, back by {longer} mm at 2 cm below bust-line }}\n", wide=80, long=80
    )
    for one, other in zip(placed(plain), placed(altered), strict=True):
        assert (one.spot.x, one.spot.y) == pytest.approx((other.spot.x, other.spot.y), abs=1e-6)
    for made, one in zip(sizes(altered), placed(altered), strict=True):
        front = piece_named(made.pieces, "front")
        assert front is not None
        line = next(line for line in front.lines if line.name == "bust-line")
        assert line.parts[0].start.y - one.spot.y == pytest.approx(below, abs=1e-6)


STRAP = """use block rectangle as strap {{ wide {wide} mm; long 300 mm; cutting twice }}
hem strap-sides along strap.left-edge, strap.right-edge by double-turned {{ deep 5 mm; under 5 mm }}
hem strap-end along strap.top by double-turned {{ deep 5 mm; under 5 mm }}
attach strap.bottom to front.hem at {at}
finish neck along front.neck, back.neck by elastic-bound {{ binding edging }}
hem bottom along front.hem, back.hem by double-turned {{ deep 2 cm; under 1 cm }}
"""


@settings(max_examples=12)
@given(st.integers(10, 120), st.integers(0, 300), st.sampled_from(("hem-centre", "hem-side")))
def test_an_end_begins_as_far_from_the_corner_as_was_asked(wide: int, along: int, corner: str) -> None:
    result = top(STRAP.format(wide=wide, at=f"{along} mm from {corner}"))
    if result.assembly is None:
        assert set(codes(result)) == {"SPC434"}
        assert along + wide > length_of_hem("S")
        return
    for index, one in enumerate(caught(result)):
        whole = length(result, "front.hem", size=index)
        near, far = (one.start, one.end) if corner == "hem-centre" else (whole - one.end, whole - one.start)
        assert (near, far) == pytest.approx((along, along + wide))


@settings(max_examples=10)
@given(st.integers(10, 120), st.integers(25, 75))
def test_the_middle_of_an_end_lies_at_the_share_that_was_asked(wide: int, share: int) -> None:
    result = top(STRAP.format(wide=wide, at=f"{share}%"))
    for index, one in enumerate(caught(result)):
        whole = length(result, "front.hem", size=index)
        assert (one.start + one.end) / 2 == pytest.approx(whole * share / 100)
        assert one.end - one.start == pytest.approx(wide)


def length_of_hem(size: str) -> float:
    """A quarter of the chest and its ease."""
    return (CHEST[size] + 200.0) / 4.0


def test_the_front_of_the_square_top_begins_at_the_centre() -> None:
    """What these laws reckon with."""
    result = pocketed("attach pocket on front with top-left at bust-line, 2 cm from centre by patch\n")
    front = piece_named(sizes(result)[0].pieces, "front")
    assert front is not None
    corner = corner_named(front, "hem-centre")
    assert corner is not None
    assert (corner.x, corner.y) == (0.0, 0.0)
