"""Every reason to refuse an alteration, with what is said of it; a refused step leaves the pieces alone."""

from __future__ import annotations

import pathlib
from dataclasses import replace
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

import pytest

from specc.alteration import VERBS
from specc.alteration.refusal import REASONS
from specc.alteration.run import alter
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.model.alteration import (
    Alteration,
    Crop,
    Form,
    LeaveOut,
    Lengthen,
    Level,
    MoveCorner,
    PieceRef,
    Place,
    Release,
    Swing,
    SwingTarget,
)
from specc.model.expression import PartRef
from specc.model.reshaping import Reshaping
from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_length
from specc.pattern.piece import Dart, Edge, Gone, ReferenceLine, TwoPointedDart

if TYPE_CHECKING:
    from specc.pattern.piece import Piece

# A bodice front of straight lines on the fold; the bust dart opens on the side, the neck dart at the top.
PIVOT = Point(100, 300)
NECK_FIRST, NECK_SECOND = Point(60, 500), Point(40, 500)
SIDE = (Point(250, 280), Point(250, 320))
ORIGIN: Any = SimpleNamespace(line=12)


def bodice() -> Piece:
    from specc.pattern.piece import Piece

    shoulder = Point(150, 500)
    pivot_neck = Point(50, 400)
    edges = (
        Edge("hem", "hem-centre", "hem-side", (Path.through(Point(0, 0), Point(250, 0)),)),
        Edge(
            "side",
            "hem-side",
            "underarm",
            (Path.through(Point(250, 0), SIDE[0]), Path.through(SIDE[1], Point(250, 380))),
            ("bust-dart",),
        ),
        Edge("armhole", "underarm", "shoulder", (Path.through(Point(250, 380), shoulder),)),
        Edge(
            "top",
            "shoulder",
            "neck",
            (Path.through(shoulder, NECK_FIRST), Path.through(NECK_SECOND, Point(0, 500))),
            ("neck-dart",),
        ),
        Edge("centre", "neck", "hem-centre", (Path.through(Point(0, 500), Point(0, 0)),)),
    )
    return Piece(
        "front",
        "Front",
        edges,
        darts=(
            Dart("bust-dart", "side", *SIDE, PIVOT),
            Dart("neck-dart", "top", NECK_FIRST, NECK_SECOND, pivot_neck),
        ),
        two_pointed=(
            TwoPointedDart("waist-dart", Point(100, 220), Point(100, 80), Point(92, 150), Point(108, 150)),
        ),
        lines=(
            ReferenceLine("waist-line", (Path.through(Point(0, 150), Point(250, 150)),)),
            ReferenceLine("dart-line", (Path.through(Point(0, 300), Point(240, 300)),)),
        ),
        grain=Path.through(Point(20, 50), Point(20, 250)),
        fold="centre",
    )


def number(value: float, *, length: bool = True) -> Any:
    return SimpleNamespace(number=float(value), dimension=SimpleNamespace(length=1 if length else 0))


def part(name: str, piece: str = "front") -> PartRef:
    return PartRef(piece, name, ORIGIN)


def swing(
    dart: str, into: str, *, at: float | None = None, share: float = 1.0, piece: str = "front"
) -> Swing:
    place = None if at is None else Place(number(at), ORIGIN)
    target = SwingTarget(part(into, piece), place, Form.FLARE, number(share, length=False))
    return Swing(part(dart), (target,), ORIGIN)


def crop(line: str, above: float) -> Crop:
    return Crop((PieceRef("front", ORIGIN),), Level(line, number(above), ORIGIN), ORIGIN)


def lengthen(by: float, at: str | Level, *, shorten: bool = False) -> Lengthen:
    return Lengthen((PieceRef("front", ORIGIN),), number(by), at, ORIGIN, shorten)


def corner(edge: str, name: str, by: float, verb: str = "lower") -> MoveCorner:
    return MoveCorner(verb, (part(edge),), name, number(by), ORIGIN)


WAIST = Level("waist-line", None, ORIGIN)

CASES: tuple[tuple[str, Alteration, str], ...] = (
    ("piece-gone", LeaveOut((PieceRef("sleeve", ORIGIN),), ORIGIN), "`sleeve` is no longer made"),
    (
        "part-gone",
        Release((part("hip-dart"),), ORIGIN),
        "`front.hip-dart` is no longer there: it was sewn up",
    ),
    ("part-gone", crop("hip-line", 0.0), "`front.hip-line` is no longer there: it was never there"),
    ("part-gone", lengthen(10, "cuff"), "`front.cuff` is no longer there: it was never there"),
    (
        "not-an-edge-dart",
        swing("waist-dart", "hem"),
        "`front.waist-dart` lies inside the piece and has no mouth to swing",
    ),
    ("not-an-edge", swing("bust-dart", "waist-dart"), "`front.waist-dart` is not an edge"),
    (
        "swing-into-other-piece",
        swing("bust-dart", "hem", piece="back"),
        "`front.bust-dart` cannot be swung into `back.hem`, another piece",
    ),
    (
        "share-out-of-range",
        swing("bust-dart", "hem", share=1.5),
        "a dart is swung by more than nothing and at most the whole, not by 1.5",
    ),
    (
        "pivots-apart",
        swing("bust-dart", "neck-dart"),
        f"the pivots of `bust-dart` and `neck-dart` lie {PIVOT.distance(Point(50, 400))} apart",
    ),
    (
        "slash-at-end",
        swing("bust-dart", "hem", at=0.2),
        "the slash would meet `front.hem` at its end or at a dart",
    ),
    (
        "slash-crosses-dart",
        swing("bust-dart", "hem"),
        "the slash from `bust-dart` to `hem` would cut into `waist-dart`",
    ),
    (
        "slash-crosses-dart",
        swing("bust-dart", "top", at=115.0),
        "the slash from `bust-dart` to `top` would cut into `neck-dart`",
    ),
    (
        "slash-into-fold",
        swing("bust-dart", "centre"),
        "`front.centre` lies on the fold and must stay one straight run",
    ),
    (
        "level-outside-piece",
        crop("waist-line", 400.0),
        "the level lies outside `front`, which reaches from -550.0 to -50.0",
    ),
    ("level-cuts-dart", crop("dart-line", 0.0), "the level cuts through `front.bust-dart`"),
    ("level-cuts-dart", crop("waist-line", -30.0), "the level cuts through `front.waist-dart`"),
    (
        "band-holds-part",
        lengthen(70, Level("dart-line", number(40.0), ORIGIN), shorten=True),
        "the band that would be taken out of `front` holds `bust-dart`",
    ),
    (
        "edge-cannot-move",
        lengthen(400, "hem", shorten=True),
        "`front.hem` cannot move by -400.0: `side` does not reach it there",
    ),
    ("not-a-corner-of-edge", corner("top", "underarm", 5.0), "`underarm` is not a corner of `front.top`"),
    (
        "trim-too-long",
        corner("armhole", "underarm", 70.0),
        "`front.side` can be trimmed by less than 60.0, not by 70.0",
    ),
    (
        "amount-not-positive",
        corner("armhole", "underarm", -5.0),
        "the amount must be more than nothing, not -5.0",
    ),
    ("amount-not-positive", lengthen(-5, WAIST), "the amount must be more than nothing, not -5.0"),
)


@pytest.mark.parametrize(
    ("name", "step", "sentence"), CASES, ids=[f"{i}-{case[0]}" for i, case in enumerate(CASES)]
)
def test_refusals(name: str, step: Alteration, sentence: str) -> None:
    piece = replace(bodice(), gone=(Gone("hip-dart", "sewn up"),))
    altered = alter((piece,), (step,), lambda _pieces: lambda expression: expression.number)  # type: ignore[union-attr]
    (refusal,) = altered.refusals
    assert refusal.code_name == name
    message = next(reason.message for reason in REASONS if reason.name == name)
    assert message.format_map(dict(refusal.facts)) == sentence
    assert refusal.help.format_map(dict(refusal.facts))
    assert altered.pieces == (piece,)
    (record,) = altered.records
    assert (record.edges, record.darts, record.areas) == ((), (), ())


def refused(piece: Piece, step: Alteration) -> str:
    altered = alter((piece,), (step,), lambda _pieces: lambda expression: expression.number)  # type: ignore[union-attr]
    return altered.refusals[0].code_name


def test_refusals_of_uncommon_pieces() -> None:
    piece = bodice()
    crooked = replace(piece, darts=(replace(piece.darts[0], pivot=Point(100, 310)), piece.darts[1]))
    assert refused(crooked, swing("bust-dart", "hem", at=50.0)) == "dart-legs-unequal"
    on_side = replace(piece, fold="side")
    assert refused(replace(on_side, fold="hem"), crop("waist-line", 60.0)) == "fold-cut-away"
    # A hollow in the side, between the pivot and the hem's corner, which the slash would cross.
    hollow = Path.through(Point(250, 0), Point(250, 60), Point(140, 160), Point(250, 170), SIDE[0])
    edges = tuple(replace(e, parts=(hollow, e.parts[1])) if e.name == "side" else e for e in piece.edges)
    dented = replace(piece, edges=edges, two_pointed=())
    assert refused(dented, swing("bust-dart", "hem", at=200.0)) == "slash-leaves-piece"
    legs = Path.through(Point(0, 0), Point(100, 0), Point(120, 60), Point(140, 0), Point(250, 0))
    forked = replace(
        piece, edges=tuple(replace(e, parts=(legs,)) if e.name == "hem" else e for e in piece.edges)
    )
    assert refused(forked, crop("waist-line", -120.0)) == "level-crosses-twice"
    # Nothing lies below but a stretch of the one edge that goes round.
    round_hem = Path.through(Point(0, 200), Point(0, 0), Point(250, 0), SIDE[0])
    edges = (
        replace(
            piece.edges[0], parts=(round_hem, piece.edges[1].parts[1]), darts=("bust-dart",), end="underarm"
        ),
        *piece.edges[2:4],
        replace(piece.edges[4], parts=(Path.through(Point(0, 500), Point(0, 200)),)),
    )
    darts = (replace(piece.darts[0], edge="hem"), piece.darts[1])
    assert refused(replace(piece, edges=edges, darts=darts), crop("waist-line", 0.0)) == "level-cuts-one-edge"


def test_a_corner_that_would_turn_over() -> None:
    from specc.geometry.fit import curve

    piece = bodice()
    scooped = curve(Point(250, 380), Point(-1, 0), Point(150, 500), Point(0, 1))
    edges = tuple(replace(e, parts=(Path((scooped,)),)) if e.name == "armhole" else e for e in piece.edges)
    # The shoulder would pass the underarm, from which the curve leaves the other way.
    moved = corner("armhole", "shoulder", 120.0, "raise")
    assert refused(replace(piece, edges=edges), moved) == "corner-would-turn-over"


def test_the_run_goes_on_after_a_refusal() -> None:
    steps = (
        swing("bust-dart", "hem"),  # the waist dart is in the way
        Release((part("waist-dart"),), ORIGIN),
        swing("bust-dart", "hem"),
        LeaveOut((PieceRef("sleeve", ORIGIN),), ORIGIN),
    )
    sleeve = replace(bodice(), name="sleeve")
    altered = alter((bodice(), sleeve), steps, lambda _pieces: lambda expression: expression.number)  # type: ignore[union-attr]
    assert [refusal.code_name for refusal in altered.refusals] == ["slash-crosses-dart"]
    (front,) = altered.pieces
    assert [gone.name for gone in front.gone] == ["waist-dart", "bust-dart"]
    assert [len(record.edges) for record in altered.records] == [0, 0, 2, 5]
    hem = edge_named(front, "hem")
    assert hem is not None
    assert stitched_length(hem) > 250.0


def test_an_amount_is_evaluated_on_the_pieces_as_they_are() -> None:
    seen: list[tuple[Piece, ...]] = []

    def evaluator(pieces: tuple[Piece, ...]) -> Any:
        seen.append(pieces)
        return lambda expression: expression.number

    first = Release((part("waist-dart"),), ORIGIN)
    altered = alter((bodice(),), (first, swing("bust-dart", "hem")), evaluator)
    assert seen[0][0].two_pointed
    assert not seen[1][0].two_pointed
    assert not altered.refusals


def test_every_reason_is_tried() -> None:
    """Some test beside this one names it as what was said."""
    tests = "".join(
        path.read_text(encoding="utf-8") for path in sorted(pathlib.Path(__file__).parent.glob("*.py"))
    )
    assert [reason.name for reason in REASONS if f'"{reason.name}"' not in tests] == []


def test_every_verb_has_its_row() -> None:
    kinds = {kind for kind, _ in VERBS}
    assert set(Alteration.__args__) <= kinds <= set(Alteration.__args__) | set(Reshaping.__args__)
