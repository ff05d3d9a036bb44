"""Marks on the drawing of a piece: notches, folds of hems, what labels keep off."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path as FilePath
from typing import TYPE_CHECKING

import pytest

from specc.document.drawing import Label, Stroke
from specc.document.lengths import Lengths
from specc.document.line import LineKind
from specc.document.piece_drawing import Cutting, piece_drawing
from specc.document.placement import box_of, flattened
from specc.geometry.allowance import Allowed, cut_line
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.segment import Line
from specc.making.assembly import CutPiece, EdgeUse, NotchMark, NotchReason
from specc.pattern.piece import Edge, Piece
from specc.pipeline import document as document_of
from tests.made import made

if TYPE_CHECKING:
    from specc.document.drawing import Drawing

GARMENTS = FilePath(__file__).parents[2] / "garments"


def strokes(drawing: Drawing, kind: LineKind) -> list[Stroke]:
    return [item for item in drawing.items if isinstance(item, Stroke) and item.line is kind]


def hemmed(*turned: float, slant: float = 30.0) -> Drawing:
    """A panel of 300 by 200 mm whose right side leans outward, hemmed below, notched at its side and top."""
    corners = [Point(0, 0), Point(300 + slant, 0), Point(300, 200), Point(0, 200)]
    names = ("hem", "side", "top", "fold")
    edges = tuple(
        Edge(name, name, following, (Path((Line(a, b),)),))
        for name, following, a, b in zip(
            names, names[1:] + names[:1], corners, corners[1:] + corners[:1], strict=True
        )
    )
    piece = Piece("panel", "panel", edges, fold="fold")
    widths = {"hem": sum(turned), "side": 12.0, "top": 0.0, "fold": 0.0}
    uses = {
        name: EdgeUse(
            "panel", name, "fold" if name == "fold" else "seam", None, width, turned if name == "hem" else ()
        )
        for name, width in widths.items()
    }
    cut = cut_line(
        tuple(
            Allowed(edge.parts[0], widths[edge.name], uses[edge.name].turned, on_fold=edge.name == "fold")
            for edge in edges
        )
    )
    marks = (
        NotchMark("panel", "side", 100.0, False, NotchReason.MATCH),
        NotchMark("panel", "top", 150.0, True, NotchReason.MATCH),
    )
    cutting = Cutting(piece, CutPiece("panel", (), cut, 0.0, 0.0), marks, uses, ("Panel", "cut 1"))
    return piece_drawing(cutting, Lengths("cm"), room=Point(200.0, 200.0))


def test_a_notch_is_a_short_stroke_from_the_cut_edge_inward() -> None:
    drawing = hemmed(20.0)
    (cut,), (notches,) = strokes(drawing, LineKind.CUT), strokes(drawing, LineKind.NOTCH)
    outline = Path.through(*(point for trace in cut.traces for point in flattened(trace)))

    assert len(notches.traces) == 3  # one single, one double
    for trace in notches.traces:
        start, end = flattened(trace)
        assert outline.distance_to(start) < 0.01
        assert 1.5 < start.distance(end) < 4.0
        assert end.distance(Point(80, 80)) < start.distance(Point(80, 80))


def test_the_folds_of_a_hem_are_dotted_as_far_as_the_cut_edge() -> None:
    once, twice = hemmed(20.0), hemmed(20.0, 10.0)

    (fold,) = strokes(once, LineKind.DART_MIDDLE)[0].traces
    upper, lower = strokes(twice, LineKind.DART_MIDDLE)[0].traces
    (stitch,) = strokes(once, LineKind.STITCH)
    assert len(stitch.traces) == 2  # side and top; the hem is folded, not stitched, along its line
    assert flattened(fold)[0].distance(flattened(fold)[-1]) == pytest.approx(330 * float(once.scale or 0))
    assert flattened(upper)[0].distance(flattened(upper)[-1]) == pytest.approx(330 * float(twice.scale or 0))
    (cut,) = strokes(twice, LineKind.CUT)
    outline = Path.through(*(point for trace in cut.traces for point in flattened(trace)))
    far = max(flattened(lower), key=lambda point: point.x)
    assert outline.distance_to(far) < 0.01
    assert flattened(lower)[0].y - flattened(upper)[0].y == pytest.approx(20 * float(twice.scale or 0))


NEVER_UNDER_A_LABEL = (LineKind.CUT, LineKind.STITCH, LineKind.DART, LineKind.NOTCH, LineKind.MARK)


@pytest.mark.parametrize("name", ["bodice", "trousers", "gathered-skirt", "knit-top", "methods-top"])
def test_no_label_of_a_piece_lies_on_a_line_that_is_cut_sewn_or_marked(name: str) -> None:
    built = document_of(made((GARMENTS / f"{name}.garment").read_text(encoding="utf-8")))
    assert built is not None
    drawings = [drawing for drawing in built.drawings if drawing.name.startswith("piece-")]
    assert drawings
    for drawing in drawings:
        runs = [
            run
            for kind in NEVER_UNDER_A_LABEL
            for stroke in strokes(drawing, kind)
            for trace in stroke.traces
            for run in pairwise(flattened(trace))
        ]
        for label in (item for item in drawing.items if isinstance(item, Label)):
            assert not [run for run in runs if box_of(label).meets(*run)], (drawing.name, label.text)
