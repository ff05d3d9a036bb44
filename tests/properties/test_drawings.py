"""Whatever stands in a drawing: it is read, or it is said why not; it never throws."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.geometry.along import carried, stretch
from specc.geometry.point import Point
from specc.geometry.svg import UnreadableError, drawn_path
from specc.source import SourceFile
from specc.syntax.drawing import read_drawing

TOKENS = st.sampled_from(
    [
        *"MmZzLlHhVvCcSsQqTtAa",
        "0",
        "1",
        "-3",
        ".5",
        "10",
        "2e3",
        "1e-9",
        "1e300",
        "-7.25",
        ",",
        " ",
        "x",
        "--",
        ".",
    ]
)
MARKUP = st.sampled_from(
    [
        "<svg>", "</svg>", "<g>", "</g>", '<g transform="scale(2)">', '<path id="a" d="M 0 0 H 1"/>', "<!--",
        "<symbol>", "</symbol>", "-->", "<![CDATA[", "]]>", "&lt;", "&x;", "<style>transform", "</style>",
        '<!DOCTYPE svg [<!ENTITY x "y">]>', '<?xml version="1.0" encoding="latin-1"?>', "<", ">", '"', "\n",
        "\x00", "é",
    ]
)  # fmt: skip


@given(st.lists(MARKUP, max_size=12).map("".join))
def test_a_drawing_is_read_or_refused(text: str) -> None:
    source = SourceFile("any.svg", text)
    found, said = read_drawing(source)

    assert (found is None) == (len(said) == 1)
    for each in said:
        assert each.span is not None
        assert each.span.file is source


@given(st.text(max_size=60))
def test_any_text_is_read_or_refused(text: str) -> None:
    found, said = read_drawing(SourceFile("any.svg", f"<svg>{text}</svg>"))

    assert (found is None) == (len(said) == 1)


@given(st.lists(TOKENS, max_size=30).map(" ".join))
def test_any_data_are_followed_or_refused(data: str) -> None:
    try:
        drawn = drawn_path(f"M 0 0 {data}", ())
    except UnreadableError:
        return
    assert drawn.stops[0] == Point(0.0, 0.0)
    assert drawn.path.segments


@given(st.text("abcdefghijklmnopqrstuvwxyzXY()0123456789.,- ", max_size=40))
def test_any_transform_is_heeded_or_refused(written: str) -> None:
    try:
        drawn = drawn_path("M 0 0 L 3 4", (written,))
    except UnreadableError:
        return
    assert len(drawn.stops) == 2


COORDINATE = st.integers(-300, 300)


@given(st.lists(st.tuples(COORDINATE, COORDINATE), min_size=3, max_size=8, unique=True), st.data())
def test_two_stretches_between_corners_make_up_a_closed_line(
    corners: list[tuple[int, int]], data: st.DataObject
) -> None:
    drawn = drawn_path("M " + " L ".join(f"{x} {y}" for x, y in corners) + " Z", ())
    start, end = data.draw(st.sampled_from(drawn.stops)), data.draw(st.sampled_from(drawn.stops))
    first, second = stretch(drawn.path, start, end, ()), stretch(drawn.path, end, start, ())

    assert (first.start, first.end) == (start, end)
    whole = drawn.path.length()
    # A corner that the line passes twice is found where it is passed first.
    assert first.length() + second.length() == pytest.approx(whole if start != end else 2.0 * whole, rel=1e-9)


@given(
    st.lists(st.tuples(COORDINATE, COORDINATE), min_size=2, max_size=8, unique=True), COORDINATE, COORDINATE
)
def test_what_is_carried_there_and_back_is_where_it_was(
    corners: list[tuple[int, int]], x: int, y: int
) -> None:
    old = drawn_path("M " + " L ".join(f"{a} {b}" for a, b in corners), ()).path
    moved = carried(old, old.start + Point(x, y), old.end + Point(x, y))
    back = carried(moved, old.start, old.end)

    for before, after in zip(old.segments, back.segments, strict=True):
        assert before.start.distance(after.start) < 1e-9
        assert before.end.distance(after.end) < 1e-9
