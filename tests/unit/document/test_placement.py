"""Labels take the place that disturbs least, and the same one every time."""

from __future__ import annotations

from math import pi, radians

from hypothesis import given
from hypothesis import strategies as st

from specc.document.drawing import Bend, Trace
from specc.document.lettering import Lettering, height_of, width_of
from specc.document.placement import Box, Place, Placer, box_of, flattened
from specc.geometry.point import Point

SQUARE = Box(Point(0.0, 0.0), 2.0, 1.0, 0.0)


def test_a_run_through_beside_and_inside_a_box() -> None:
    assert SQUARE.meets(Point(-5, 0), Point(5, 0))
    assert SQUARE.meets(Point(0, 0), Point(0.1, 0.1))
    assert not SQUARE.meets(Point(-5, 2), Point(5, 2))
    assert not SQUARE.meets(Point(3, -1), Point(3, 1))


def test_a_turned_box_is_met_where_it_is() -> None:
    upright = Box(Point(0.0, 0.0), 2.0, 1.0, pi / 2)

    assert upright.meets(Point(-5, 1.9), Point(5, 1.9))
    assert not upright.meets(Point(1.1, -5), Point(1.1, 5))


def test_boxes_corner_to_corner() -> None:
    turned = Box(Point(3.3, 0.0), 1.0, 1.0, radians(45))

    assert SQUARE.touches(turned)
    assert not SQUARE.touches(Box(Point(3.5, 0.0), 1.0, 1.0, radians(45)))


@given(
    st.tuples(st.floats(-4, 4), st.floats(-4, 4), st.floats(-3, 3)),
    st.tuples(st.floats(0.1, 3), st.floats(0.1, 3)),
)
def test_touching_is_mutual(place: tuple[float, float, float], size: tuple[float, float]) -> None:
    other = Box(Point(place[0], place[1]), size[0], size[1], place[2])

    assert SQUARE.touches(other) == other.touches(SQUARE)


def test_a_label_keeps_off_a_line_and_off_a_label() -> None:
    placer = Placer(100.0, 100.0)
    placer.avoid((Trace(Point(0, 50), (Point(100, 50),)),), 2.0)
    on, above, further = Place(Point(50, 50)), Place(Point(50, 40), cost=0.1), Place(Point(50, 30), cost=0.2)

    first = placer.place("neck 9 1/4", Lettering.VALUE, (on, above, further))
    second = placer.place("side 12", Lettering.VALUE, (on, above, further))

    assert first.at == above.at
    assert second.at == further.at
    assert not box_of(first).touches(box_of(second))


def test_a_label_stays_on_the_paper_where_it_can() -> None:
    placer = Placer(40.0, 40.0)

    label = placer.place("a rather long name", Lettering.NAME, (Place(Point(2, 20)), Place(Point(20, 20))))

    assert label.at == Point(20, 20)


def test_lines_of_a_stack_stand_below_each_other() -> None:
    placer = Placer(60.0, 60.0)
    stack = placer.place_stack(
        (("Front", Lettering.TITLE), ("cut 1", Lettering.SMALL)), (Place(Point(30, 30)),), leading=4.0
    )

    assert [label.at for label in stack] == [Point(30, 30), Point(30, 34)]


def test_a_bend_is_followed_closely_enough_to_be_avoided() -> None:
    quarter = Bend(Point(0, 5.523), Point(4.477, 10), Point(10, 10))
    points = flattened(Trace(Point(0, 0), (quarter,)))

    assert points[0] == Point(0, 0)
    assert points[-1] == Point(10, 10)
    assert all(abs(point.distance(Point(10, 0)) - 10.0) < 0.01 for point in points)


def test_letters_have_a_size() -> None:
    assert width_of("", Lettering.SMALL) == 0.0
    assert width_of("ii", Lettering.SMALL) < width_of("mm", Lettering.SMALL)
    assert height_of(Lettering.SMALL) < height_of(Lettering.TITLE)
