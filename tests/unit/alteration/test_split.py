"""Splitting, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace
from math import tan
from typing import TYPE_CHECKING

import pytest

from specc.alteration import leave_out, split
from specc.alteration.refusal import Refusal
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.alteration import LeaveOut
from specc.model.reshaping import Split, SplitEnd
from specc.pattern.lookup import line_named, point_named
from specc.pattern.measure import line_length, place_on_edge, stitched_length
from specc.pattern.outline import area
from specc.pattern.piece import (
    Dart,
    Edge,
    Fold,
    FoldKind,
    Gathers,
    NamedPoint,
    Notch,
    ReferenceLine,
    TwoPointedDart,
)
from tests.altering import (
    ORIGIN,
    at_length,
    at_share,
    edge,
    evaluate,
    is_whole,
    part,
    rectangle,
    refused,
    sewn,
    whole,
)
from tests.drafting import SIZES, in_size

if TYPE_CHECKING:
    from specc.model.alteration import Place
    from specc.pattern.piece import (
        Piece,
    )

SKIRT = rectangle(200.0, 300.0, fold="d")
MARKED = replace(SKIRT, points=(NamedPoint("inside", Point(100, 100)),))


def on(name: str, place: Place | None = None) -> SplitEnd:
    return SplitEnd(part(name), place)


def cut(
    piece: Piece,
    start: SplitEnd,
    end: SplitEnd,
    *through: str,
    into: tuple[str, str] = ("inner", "outer"),
    line: str = "seam",
    beside: tuple[Piece, ...] = (),
) -> tuple[Piece, ...] | Refusal:
    step = Split(whole(), line, start, tuple(part(name) for name in through), end, into, ORIGIN)
    return split.apply((*beside, piece), step, evaluate)


def two(result: tuple[Piece, ...] | Refusal) -> tuple[Piece, Piece]:
    assert isinstance(result, tuple), result
    first, second = result
    is_whole(first)
    is_whole(second)
    return first, second


ACROSS = on("a", at_share(0.6)), on("c", at_share(0.4))  # straight up, at 120 mm from the fold


def test_a_panel_beside_the_fold() -> None:
    piece = replace(
        SKIRT,
        lines=(
            ReferenceLine("hip-line", (Path.through(Point(0, 200), Point(200, 200)),)),
            ReferenceLine("side-mark", (Path.through(Point(150, 50), Point(180, 50)),)),
        ),
        points=(NamedPoint("pocket", Point(150, 250)), NamedPoint("mark", Point(50, 250))),
        notches=(Notch("a", 50.0), Notch("a", 150.0), Notch("b", 100.0)),
        grain=Path.through(Point(30, 50), Point(30, 250)),
        cut=1,
    )
    inner, outer = two(cut(piece, *ACROSS))
    assert (inner.name, inner.title, inner.fold, inner.cut) == ("inner", "inner", "d", 1)
    assert (outer.name, outer.fold, outer.cut) == ("outer", None, 2)
    assert [(e.name, e.start, e.end) for e in inner.edges] == [
        ("a", "A", "seam-start"),
        ("seam", "seam-start", "seam-end"),
        ("c", "seam-end", "D"),
        ("d", "D", "A"),
    ]
    assert [(e.name, e.start, e.end) for e in outer.edges] == [
        ("a", "seam-start", "B"),
        ("b", "B", "C"),
        ("c", "C", "seam-end"),
        ("seam", "seam-end", "seam-start"),
    ]
    assert (sewn(inner, "a"), sewn(outer, "a"), sewn(inner, "seam"), sewn(outer, "seam")) == (
        120,
        80,
        300,
        300,
    )
    hips = [line_named(each, "hip-line") for each in (inner, outer)]
    assert [line_length(inner, hip) for hip in hips if hip] == [120, 80]
    assert (line_named(inner, "side-mark"), point_named(inner, "pocket")) == (None, None)
    assert point_named(outer, "pocket") == Point(150, 250)
    assert inner.notches == (Notch("a", 50.0),)
    assert outer.notches == (Notch("a", 30.0), Notch("b", 100.0))
    # The grain goes with the part on which it was drawn; on the other it runs parallel through the middle.
    assert inner.grain == piece.grain
    assert outer.grain == Path.through(Point(160, 100), Point(160, 200))


def test_what_is_told_of_the_names() -> None:
    inner, outer = two(cut(replace(SKIRT, points=(NamedPoint("m", Point(50, 50)),)), *ACROSS))
    assert {(gone.name, gone.how) for gone in outer.gone} == {
        ("front", "split into `inner` and `outer` on line 41"),
        ("d", "left on `inner` on line 41"),
        ("A", "left on `inner` on line 41"),
        ("D", "left on `inner` on line 41"),
        ("m", "left on `inner` on line 41"),
    }
    result = leave_out.apply((inner, outer), LeaveOut((whole(),), ORIGIN), evaluate)
    assert refused(result) == "piece-changed"


def test_both_take_the_place_of_the_one() -> None:
    before, after = (replace(rectangle(10, 10), name=name) for name in ("before", "after"))
    step = Split(whole(), "seam", ACROSS[0], (), ACROSS[1], ("inner", "outer"), ORIGIN)
    result = split.apply((before, SKIRT, after), step, evaluate)
    assert isinstance(result, tuple)
    assert [piece.name for piece in result] == ["before", "inner", "outer", "after"]


def test_gathers_and_folds_go_with_their_stretch() -> None:
    """The bottom is gathered by 40 from 50 to 150 as sewn and has a tuck of 10 at 30: sewn 150 of 200."""
    edges = (
        replace(
            SKIRT.edges[0], gathers=(Gathers(50.0, 100.0, 40.0),), folds=(Fold(30.0, 10.0, FoldKind.TUCK),)
        ),
        *SKIRT.edges[1:],
    )
    inner, outer = two(cut(replace(SKIRT, edges=edges), on("a", at_length(75.0)), on("c", at_share(0.4))))
    assert edge(inner, "a").gathers == (Gathers(50.0, 75.0, 20.0),)
    assert edge(inner, "a").folds == (Fold(30.0, 10.0, FoldKind.TUCK),)
    assert edge(outer, "a").gathers == (Gathers(0.0, 25.0, 20.0),)
    assert not edge(outer, "a").folds
    assert sewn(inner, "a") == pytest.approx(75.0)
    assert sewn(outer, "a") == pytest.approx(75.0)


def test_a_line_from_corner_to_corner() -> None:
    lower, upper = two(cut(rectangle(200, 300), on("a", at_share(0.0)), on("b", at_share(1.0))))
    assert [e.name for e in lower.edges] == ["a", "b", "seam"]
    assert [e.name for e in upper.edges] == ["c", "d", "seam"]
    assert edge(lower, "a").start == edge(upper, "d").end == "seam-start"


def test_a_yoke_line_through_a_point_is_smooth_and_square_to_the_fold() -> None:
    piece = replace(SKIRT, points=(NamedPoint("through", Point(100, 180)),))
    lower, upper = two(cut(piece, on("b", at_share(0.8)), on("d", at_share(0.4)), "through"))
    assert lower.fold == upper.fold == "d"
    line = edge(upper, "seam").parts[0]
    ends = line.start_direction() if edge(upper, "seam").start == "seam-end" else line.end_direction()
    assert abs(ends.y) < 1e-9
    assert line.distance_to(Point(100, 180)) < 1e-9
    # A notch on either edge at the point.
    at = [next(n.at for n in each.notches if n.edge == "seam") for each in (lower, upper)]
    assert sum(at) == pytest.approx(sewn(lower, "seam"), abs=1e-9)
    assert area(lower) + area(upper) == pytest.approx(60_000.0, abs=1e-6)


HALF = Point(20, 120).angle_to(Point(0, 1))  # of the dart's angle


def darted(**changes: object) -> Piece:
    """A dart in the top of the rectangle, 40 wide and 120 deep, straight above the middle."""
    top = Edge(
        "c",
        "C",
        "D",
        (Path.through(Point(200, 300), Point(120, 300)), Path.through(Point(80, 300), Point(0, 300))),
        ("waist-dart",),
    )
    dart = Dart("waist-dart", "c", Point(120, 300), Point(80, 300), Point(100, 180), short=20.0)
    piece = replace(rectangle(200, 300), edges=(*SKIRT.edges[:2], top, SKIRT.edges[3]), darts=(dart,))
    return replace(piece, **changes)  # type: ignore[arg-type]


def test_from_a_corner_to_an_edge_and_to_a_corner() -> None:
    """A line from corner to corner leaves two triangles; one to an edge cuts that edge alone."""
    left, right = two(cut(replace(SKIRT, fold=None), on("A"), on("C")))
    assert [area(left), area(right)] == pytest.approx([30000.0, 30000.0])
    assert {e.name for e in left.edges} == {"a", "b", "seam"}
    assert {e.name for e in right.edges} == {"c", "d", "seam"}
    half, rest = two(cut(replace(SKIRT, fold=None), on("A"), on("c", at_share(0.5))))
    assert {e.name for e in half.edges} == {"a", "b", "c", "seam"}
    assert {e.name for e in rest.edges} == {"c", "d", "seam"}
    assert sewn(half, "seam") == pytest.approx(sewn(rest, "seam"))


def test_a_dart_vanishes_into_the_seam() -> None:
    """Each leg becomes the upper part of an edge: 180 straight up and then the leg."""
    left, right = two(cut(darted(), on("waist-dart"), on("a", at_share(0.5))))
    leg = Point(120, 300).distance(Point(100, 180))
    for each in (left, right):
        assert sewn(each, "seam") == pytest.approx(180.0 + leg, abs=1e-9)
        assert sewn(each, "c") == pytest.approx(80.0)
        assert not each.darts
        turned = abs(edge(each, "seam").parts[0].turning())
        assert turned == pytest.approx(HALF, abs=1e-9)
        # The kink of 9.5 degrees is drawn over: no joint turns visibly.
        path = edge(each, "seam").parts[0]
        for a, b in zip(path.segments, path.segments[1:], strict=False):
            assert abs(a.end_direction().angle_to(b.start_direction())) < 1e-9
        # It leaves the pivot by less than a quarter of the height of the triangle over its zone of 50 mm.
        assert 0.0 < path.distance_to(Point(100, 180)) < 50.0 * tan(0.5 * HALF) / 4.0
    assert {("waist-dart", "taken into `seam` on line 41")} <= {(g.name, g.how) for g in left.gone}


def test_a_dart_at_the_side_is_closed_by_turning() -> None:
    """The part below the dart stays, the part above comes down on it."""
    pivot = Point(100, 150)
    side = Edge(
        "b",
        "B",
        "C",
        (Path.through(Point(200, 0), Point(200, 140)), Path.through(Point(200, 160), Point(200, 300))),
        ("dart",),
    )
    piece = replace(
        rectangle(200, 300),
        edges=(SKIRT.edges[0], side, *SKIRT.edges[2:]),
        darts=(Dart("dart", "b", Point(200, 140), Point(200, 160), pivot),),
        points=(NamedPoint("pivot", pivot), NamedPoint("high", Point(180, 280))),
        grain=Path.through(Point(150, 20), Point(150, 100)),
    )
    left, right = two(cut(piece, on("c", at_share(0.5)), on("a", at_share(0.5)), "pivot"))
    assert sewn(left, "seam") == pytest.approx(300.0, abs=1e-6)
    assert sewn(right, "seam") == pytest.approx(300.0, abs=1e-6)
    assert sewn(right, "b") == pytest.approx(280.0, abs=1e-6)
    assert point_named(left, "high") is None
    high = point_named(right, "high")
    assert high is not None
    assert high.distance(pivot) == pytest.approx(Point(180, 280).distance(pivot), abs=1e-9)
    assert right.grain == piece.grain
    assert left.grain is not None
    # The pivot is a point of both, and on the edge of both.
    for each in (left, right):
        at = point_named(each, "pivot")
        assert at is not None
        assert edge(each, "seam").parts[0].distance_to(at) < 1e-9


INNER = TwoPointedDart("fish", Point(100, 250), Point(100, 100), Point(110, 200), Point(90, 200))


def test_a_dart_inside_is_shared_between_the_edges() -> None:
    piece = replace(rectangle(200, 300), two_pointed=(INNER,))
    left, right = two(cut(piece, on("c", at_share(0.5)), on("a", at_share(0.5)), "fish"))
    half = Point(100, 250).distance(Point(110, 200)) + Point(110, 200).distance(Point(100, 100))
    for each in (left, right):
        assert sewn(each, "seam") == pytest.approx(150.0 + half, abs=1e-9)
        assert not each.two_pointed
        assert len([n for n in each.notches if n.edge == "seam"]) == 2
    assert left.notches[0].at + right.notches[0].at == pytest.approx(150.0 + half, abs=1e-9)


@pytest.mark.parametrize(
    ("reason", "result"),
    [
        ("piece-gone", cut(replace(SKIRT, name="back"), *ACROSS)),
        (
            "piece-name-taken",
            cut(SKIRT, *ACROSS, into=("back", "side"), beside=(replace(SKIRT, name="back"),)),
        ),
        ("piece-name-taken", cut(SKIRT, *ACROSS, into=("side", "side"))),
        ("part-name-taken", cut(SKIRT, *ACROSS, line="b")),
        ("part-gone", cut(SKIRT, on("x", at_share(0.5)), ACROSS[1])),
        ("part-gone", cut(SKIRT, *ACROSS, "nowhere")),
        (
            "split-begins-inside",
            cut(replace(SKIRT, points=(NamedPoint("mark", Point(90, 90)),)), on("mark"), ACROSS[1]),
        ),
        ("split-at-end", cut(SKIRT, on("a", at_length(0.5)), ACROSS[1])),
        ("split-at-end", cut(darted(), on("c", at_length(79.5)), ACROSS[0])),
        ("split-cuts-edge-twice", cut(MARKED, on("a", at_share(0.2)), on("a", at_share(0.8)), "inside")),
        ("split-begins-inside", cut(replace(SKIRT, two_pointed=(INNER,)), on("fish"), ACROSS[1])),
        # 10 mm beside the pivot, and across the dart: the dart would be cut in two.
        ("split-crosses-dart", cut(darted(), on("b", at_length(200.0)), on("d", at_length(100.0)))),
        (
            "split-crosses-dart",
            cut(replace(SKIRT, two_pointed=(INNER,)), on("a", at_length(95.0)), on("c", at_length(95.0))),
        ),
        ("split-leaves-piece", cut(SKIRT, on("a", at_share(0.0)), on("d", at_share(0.5)))),
    ],
)
def test_refusals(reason: str, result: tuple[Piece, ...] | Refusal) -> None:
    assert refused(result) == reason


def test_how_far_a_dart_lies_beside_the_line() -> None:
    result = cut(darted(), on("b", at_length(200.0)), on("d", at_length(100.0)))
    assert isinstance(result, Refusal)
    assert dict(result.facts)["distance"] == pytest.approx(20.0)


def test_a_dart_of_two_lengths_is_no_seam() -> None:
    crooked = Dart("waist-dart", "c", Point(120, 300), Point(80, 300), Point(104, 180))
    result = cut(darted(darts=(crooked,)), on("waist-dart"), on("a", at_share(0.5)))
    assert refused(result) == "split-sides-unequal"


def test_a_line_that_turns_back_at_a_dart_is_no_seam() -> None:
    """From the pivot straight back up beside the dart: nothing smooth comes of that."""
    result = cut(darted(), on("waist-dart"), on("c", at_length(5.0)))
    assert refused(result) == "split-cuts-edge-twice"
    sharp = cut(darted(), on("waist-dart"), on("b", at_length(299.0)))
    assert refused(sharp) == "split-turns-sharply"


def test_a_place_is_told_by_the_corner_it_is_counted_from() -> None:
    first, _ = two(cut(SKIRT, on("a", at_length(60.0, "B")), on("c", at_share(0.4))))
    assert stitched_length(edge(first, "a")) == pytest.approx(140.0)
    assert place_on_edge(edge(first, "seam"), 0.0).at == Point(140, 0)


@pytest.mark.parametrize("size", SIZES)
def test_princess_lines_in_every_size_of_the_library(size: str) -> None:
    """Bust dart and waist dart go into the front's seam, shoulder dart and waist dart into the back's."""
    pieces = {piece.name: piece for piece in in_size("sheath", size).pieces}
    front = Split(
        whole("front"),
        "seam",
        SplitEnd(part("shoulder"), at_share(0.5)),
        (part("bust-point"), part("waist-dart")),
        SplitEnd(part("hem"), at_share(0.5)),
        ("centre-front", "side-front"),
        ORIGIN,
    )
    back = Split(
        whole("back"),
        "seam",
        SplitEnd(part("shoulder-dart"), None),
        (part("waist-dart"),),
        SplitEnd(part("hem"), at_share(0.5)),
        ("centre-back", "side-back"),
        ORIGIN,
    )
    for name, step in (("front", front), ("back", back)):
        piece = pieces[name]
        centre, side = two(split.apply((piece,), step, evaluate))
        assert sewn(centre, "seam") == pytest.approx(sewn(side, "seam"), abs=1e-6)
        assert not (*centre.darts, *side.darts, *centre.two_pointed, *side.two_pointed)
        for each in ("shoulder", "hem"):
            assert sewn(centre, each) + sewn(side, each) == pytest.approx(sewn(piece, each), abs=1e-6)
        # The side keeps its length; the waist stays as wide, but for the rounded kink.
        assert sewn(side, "side") == pytest.approx(sewn(piece, "side"), abs=1e-3)
        waist = line_named(piece, "waist-line")
        assert waist is not None
        parts = [(each, line_named(each, "waist-line")) for each in (centre, side)]
        width = sum(line_length(each, line) for each, line in parts if line is not None)
        assert width == pytest.approx(line_length(piece, waist), abs=1.0)
