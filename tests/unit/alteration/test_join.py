"""Joining, on pieces that can be followed with a pencil."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from specc.alteration import join
from specc.alteration.edges import piece_backward
from specc.alteration.refusal import Refusal
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.model.reshaping import Join
from specc.pattern.lookup import line_named, point_named
from specc.pattern.outline import area, transformed
from specc.pattern.piece import Dart, Edge, Gathers, NamedPoint, Notch, ReferenceLine
from tests.altering import ORIGIN, edge, evaluate, is_whole, part, polygon, rectangle, refused, sewn

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

FRONT = rectangle(200.0, 300.0)
# The same names would clash throughout: the back calls its edges e, f, g, h and its corners by great letters.
BACK = replace(
    rectangle(100.0, 300.0),
    name="back",
    edges=tuple(
        replace(e, name=n, start=n.upper(), end=m.upper())
        for e, n, m in zip(rectangle(100.0, 300.0).edges, "efgh", "fghe", strict=True)
    ),
)


def joined(
    first: Piece, second: Piece, edges: tuple[str, str], name: str = "panel"
) -> tuple[Piece, ...] | Refusal:
    step = Join(part(edges[0], first.name), part(edges[1], second.name), name, ORIGIN)
    return join.apply((first, second) if first is not second else (first,), step, evaluate)


def one(result: tuple[Piece, ...] | Refusal) -> Piece:
    assert isinstance(result, tuple), result
    (piece,) = result
    is_whole(piece)
    return piece


def test_two_panels_side_by_side() -> None:
    """The left edge of the back lies on the right edge of the front: 300 wide, bottom and top in two each."""
    panel = one(joined(FRONT, BACK, ("b", "h")))
    assert (panel.name, panel.title, panel.cut, panel.fold) == ("panel", "panel", 1, None)
    assert [(e.name, e.start, e.end) for e in panel.edges] == [
        ("a", "A", "B"),
        ("e", "B", "F"),
        ("f", "F", "G"),
        ("g", "G", "C"),
        ("c", "C", "D"),
        ("d", "D", "A"),
    ]
    assert area(panel) == pytest.approx(90_000.0)
    assert edge(panel, "f").parts[0].start == Point(300, 0)
    assert {(gone.name, gone.how) for gone in panel.gone} == {
        ("front", "joined with `back` into `panel` on line 41"),
        ("back", "joined with `front` into `panel` on line 41"),
        ("b", "joined with `back.h` on line 41"),
        ("h", "joined with `front.b` on line 41"),
        ("E", "named `B` on line 41"),
        ("H", "named `C` on line 41"),
    }


def darted(piece: Piece, name: str, dart: Dart) -> Piece:
    """The piece with a dart on a straight edge."""
    old = edge(piece, name)
    parts = (Path.through(old.parts[0].start, dart.first), Path.through(dart.second, old.parts[0].end))
    new = replace(old, parts=parts, darts=(*old.darts, dart.name))
    return replace(
        piece, edges=tuple(new if e.name == name else e for e in piece.edges), darts=(*piece.darts, dart)
    )


BODICE = darted(
    replace(FRONT, name="bodice"), "a", Dart("dart", "a", Point(90, 0), Point(110, 0), Point(100, 120), 20.0)
)
SKIRT = darted(
    replace(
        BACK,
        name="skirt",
        edges=tuple(
            replace(e, parts=tuple(p.mapped(lambda q: Point(2 * q.x, q.y)) for p in e.parts))
            for e in BACK.edges
        ),
    ),
    "g",
    Dart("dart", "g", Point(111, 300), Point(90, 300), Point(100, 200)),
)


def test_darts_that_meet_become_one_inside() -> None:
    """Bodice and skirt with their waist darts: a dart with two points, stitched from tip to tip."""
    dress = one(joined(BODICE, SKIRT, ("a", "g"), "dress"))
    assert not dress.darts
    (dart,) = dress.two_pointed
    assert dart.name == "dart"
    assert dart.top == Point(100, 100)
    assert dart.bottom.distance(Point(100, -100)) < 1e-9
    assert dart.first.distance(Point(110.5, 0)) < 1e-9
    assert dart.second.distance(Point(90, 0)) < 1e-9
    assert area(dress) == pytest.approx(200.0 * 600.0)
    other = replace(SKIRT, darts=(replace(SKIRT.darts[0], name="other"),))
    other = replace(
        other, edges=tuple(replace(e, darts=("other",)) if e.name == "g" else e for e in other.edges)
    )
    named = one(joined(BODICE, other, ("a", "g"), "dress"))
    assert [d.name for d in named.two_pointed] == ["dart"]
    assert ("other", "joined into darts inside on line 41") in {(g.name, g.how) for g in named.gone}


def test_a_dart_that_meets_none_is_told() -> None:
    plain = replace(
        SKIRT,
        darts=(),
        edges=tuple(
            replace(e, parts=(Path.through(e.parts[0].start, e.parts[-1].end),), darts=())
            for e in SKIRT.edges
        ),
    )
    assert refused(joined(BODICE, plain, ("a", "g"))) == "dart-unmatched"
    assert refused(joined(plain, BODICE, ("g", "a"))) == "dart-unmatched"
    aside = darted(plain, "g", Dart("dart", "g", Point(130, 300), Point(110, 300), Point(120, 200)))
    assert refused(joined(BODICE, aside, ("a", "g"))) == "dart-unmatched"


@pytest.mark.parametrize("angle", [0.0, 1.0, 2.5, -3.0])
def test_the_second_is_turned_and_what_lies_on_it_too(angle: float) -> None:
    drawn = replace(
        BACK,
        points=(NamedPoint("mark", Point(50, 100)),),
        lines=(ReferenceLine("hip", (Path.through(Point(0, 200), Point(100, 200)),)),),
        notches=(Notch("f", 100.0), Notch("h", 20.0)),
        grain=Path.through(Point(50, 50), Point(50, 250)),
    )
    front = replace(FRONT, lines=(ReferenceLine("hip", (Path.through(Point(0, 200), Point(200, 200)),)),))
    turned = transformed(drawn, Rigid.turning(Point(30, 70), angle))
    for back in (turned, piece_backward(turned)):
        panel = one(joined(front, back, ("b", "h")))
        mark = point_named(panel, "mark")
        assert mark is not None
        assert mark.distance(Point(250, 100)) < 1e-9
        hip = line_named(panel, "hip")
        assert hip is not None
        assert len(hip.parts) == 1
        assert hip.parts[0].length() == pytest.approx(300.0)
        assert [n.edge for n in panel.notches] == ["f"]
        assert panel.notches[0].at == pytest.approx(100.0)
        assert panel.grain is not None
        assert panel.grain.start.distance(Point(250, 50)) < 1e-9


def test_names_that_clash_get_their_pieces_before_them() -> None:
    twin = replace(
        transformed(FRONT, Rigid.moving(Point(500, 0))), name="back", points=(NamedPoint("m", Point(600, 9)),)
    )
    front = replace(FRONT, points=(NamedPoint("m", Point(9, 9)),), fold="d", cut=1)
    panel = one(joined(front, replace(twin, cut=2), ("b", "d")))
    assert [e.name for e in panel.edges] == ["front-a", "back-a", "b", "back-c", "front-c", "d"]
    assert (panel.fold, panel.cut) == ("d", 1)
    assert {point.name for point in panel.points} == {"front-m", "back-m"}
    assert ("m", "named `front-m` on line 41") in {(gone.name, gone.how) for gone in panel.gone}


def test_two_folds_in_one_line_become_one() -> None:
    lower = rectangle(200.0, 100.0, fold="d")
    upper = replace(rectangle(200.0, 50.0, fold="d"), name="yoke")
    whole = one(joined(lower, upper, ("c", "a"), "front"))
    assert whole.fold == "d"
    assert sewn(whole, "d") == pytest.approx(150.0)
    assert len(edge(whole, "d").parts[0].segments) == 1
    assert [e.name for e in whole.edges] == ["a", "front-b", "yoke-b", "c", "d"]
    assert whole.gone
    assert "front" not in {gone.name for gone in whole.gone}


def test_edges_that_differ_by_less_than_a_millimetre_are_joined() -> None:
    short = transformed(
        replace(rectangle(100.0, 299.2), name="back", edges=rectangle(100.0, 299.2).edges),
        Rigid.moving(Point(9, 9)),
    )
    panel = one(joined(FRONT, short, ("b", "d")))
    assert area(panel) == pytest.approx(60_000.0 + 100.0 * 299.6, abs=1.0)


CURVED = polygon(Point(0, 0), Point(100, 0), Point(98, 150), Point(100, 300), Point(0, 300))
WITH_DART = Edge("h", "H", "E", (Path.through(Point(0, 300), Point(0, 0)),), gathers=(Gathers(0, 100, 50),))
AROUND = polygon(
    Point(0, 0), Point(30, 0), Point(30, 300), Point(0, 300), Point(-300, 500), Point(-300, -200)
)


@pytest.mark.parametrize(
    ("reason", "result"),
    [
        ("join-to-itself", joined(FRONT, FRONT, ("b", "d"))),
        ("join-along-fold", joined(replace(FRONT, fold="b"), replace(BACK, cut=2), ("b", "h"))),
        ("cut-unequally", joined(FRONT, replace(BACK, cut=2), ("b", "h"))),
        ("cut-unequally", joined(replace(FRONT, fold="d"), BACK, ("b", "h"))),
        ("edges-unequal", joined(FRONT, BACK, ("b", "e"))),
        ("edge-not-flat", joined(FRONT, replace(BACK, edges=(*BACK.edges[:3], WITH_DART)), ("b", "h"))),
        ("not-an-edge", joined(FRONT, BACK, ("B", "h"))),
        ("part-gone", joined(FRONT, BACK, ("b", "nowhere"))),
        ("folds-apart", joined(replace(FRONT, fold="d"), replace(BACK, fold="e"), ("b", "h"))),
    ],
)
def test_refusals(reason: str, result: tuple[Piece, ...] | Refusal) -> None:
    assert refused(result) == reason


def test_the_numbers_are_told() -> None:
    result = joined(FRONT, BACK, ("b", "e"))
    assert isinstance(result, Refusal)
    assert (dict(result.facts)["first"], dict(result.facts)["second"]) == (300.0, 100.0)
    hollow = Edge("h", "H", "E", (Path.through(Point(0, 300), Point(5, 150), Point(0, 0)),))
    bent = joined(FRONT, replace(BACK, edges=(*BACK.edges[:3], hollow)), ("b", "h"))
    assert refused(bent) == "edges-unlike"
    assert isinstance(bent, Refusal)
    assert dict(bent.facts)["distance"] == pytest.approx(5.0, abs=0.1)


def test_pieces_that_would_lie_on_each_other() -> None:
    """A hook that reaches round its own edge."""
    hook = replace(
        polygon(Point(0, 0), Point(60, 0), Point(60, 400), Point(-300, 400), Point(-300, 350), Point(0, 350)),
        name="back",
    )
    front = rectangle(200.0, 350.0)
    top = replace(front.edges[2], parts=(Path.through(Point(200, 350), Point(100, 450), Point(0, 350)),))
    high = replace(front, edges=(*front.edges[:2], top, front.edges[3]))
    assert refused(joined(high, hook, ("b", "f"))) == "pieces-overlap"


def test_names_that_are_taken() -> None:
    third = replace(FRONT, name="panel")
    step = Join(part("b"), part("h", "back"), "panel", ORIGIN)
    assert refused(join.apply((FRONT, BACK, third), step, evaluate)) == "piece-name-taken"
    twin = replace(transformed(FRONT, Rigid.moving(Point(500, 0))), name="back")
    front = replace(FRONT, points=(NamedPoint("back-a", Point(9, 9)),))
    assert refused(joined(front, twin, ("b", "d"))) == "part-name-taken"
