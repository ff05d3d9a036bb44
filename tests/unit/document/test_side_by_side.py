"""Figures side by side: in rows, at the largest scale that fits, names level and on the paper."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from specc.document.lettering import Lettering, width_of
from specc.document.side_by_side import Figure, side_by_side
from specc.document.view import SCALES
from specc.geometry.point import Point

ROOM = Point(118.0, 112.0)
sizes = st.floats(30.0, 1500.0)
figures = st.lists(
    st.builds(Figure, st.sampled_from(["Back", "Patch pocket", "Sleeve, left out"]), sizes, sizes),
    min_size=1,
    max_size=12,
)


def test_figures_that_fit_stand_in_one_row_with_their_names_level() -> None:
    laid = side_by_side([Figure("Back", 400.0, 600.0), Figure("Front", 500.0, 300.0)], room=ROOM)
    first, second = laid.stands

    assert laid.scale == SCALES[7]  # 1:10: at 1:8 they are wider than the room
    assert first.corner.y == second.corner.y
    assert first.name.y == second.name.y == first.corner.y + 60.0 + 4.0


def test_a_name_wider_than_its_figure_keeps_the_next_one_away() -> None:
    laid = side_by_side([Figure("Patch pocket", 30.0, 30.0)] * 2, room=Point(70.0, 200.0))
    wide = width_of("Patch pocket", Lettering.NAME)

    assert abs(laid.stands[1].name.x - laid.stands[0].name.x) >= wide


@given(figures)
def test_no_figure_and_no_name_lies_on_another_or_off_the_paper(each: list[Figure]) -> None:
    laid = side_by_side(each, room=ROOM)
    boxes = []
    for figure, stand in zip(each, laid.stands, strict=True):
        half = max(figure.wide * float(laid.scale), width_of(figure.name, Lettering.NAME)) / 2.0
        boxes.append((stand.name.x - half, stand.corner.y, stand.name.x + half, stand.name.y + 1.0))
        assert stand.corner.y + figure.high * float(laid.scale) < stand.name.y
    for left, top, right, bottom in boxes:
        assert 0.0 < left < right < laid.width + 1e-9
        assert 0.0 < top < bottom < laid.height
    for a, b in combinations(boxes, 2):
        assert a[2] < b[0] or b[2] < a[0] or a[3] < b[1] or b[3] < a[1]


@given(figures)
def test_they_fit_into_the_room_wherever_a_usual_scale_lets_them(each: list[Figure]) -> None:
    laid = side_by_side(each, room=ROOM)

    assert laid.scale == SCALES[-1] or (laid.width <= ROOM.x and laid.height <= ROOM.y)
