"""Drawings of cross-sections: labels keep off each other and off all lines, and all lies on the paper."""

from __future__ import annotations

from itertools import combinations, pairwise
from typing import TYPE_CHECKING

import pytest

from specc.document.drawing import Label, Stroke
from specc.document.lengths import Lengths
from specc.document.line import LineKind
from specc.document.placement import box_of, flattened
from specc.document.section_drawing import section_drawing
from specc.document.section_key import section_key
from specc.document.section_paths import PITCH, THICK
from specc.library.methods import method_files
from tests.sections import SEAMS, section

if TYPE_CHECKING:
    from specc.document.drawing import Drawing
    from specc.geometry.point import Point

NAMES = {"first": "sleeve-lining", "second": "skirt-back, …", "third": "facing", "cloth": ""}
METHODS = [
    name for file, names in method_files() if file not in ("closures", "attachments") for name in names
]
CHOSEN = [
    ("waistband", "inner in-the-ditch"),
    ("rib-band", "topstitch cover"),
    ("closed-end", "way folded"),
    ("flat-felled", "fell inside"),
    ("lapped", "upper second"),
    ("double-turned", "deep 1/4 in; under 1/8 in"),
    ("single-turned", "deep 8 in"),
]
# Lines that a ply or a thread leaves, as they stand on paper: half of each lies beside its middle.
HALF = {LineKind.PLY: THICK / 2}


def drawn(method: str, settings: str = "", number: int = 12) -> Drawing:
    found = section(method, settings, seam=SEAMS.get(method, ""))
    return section_drawing(("s", "S"), found, number, NAMES, lengths=Lengths("in"))


def labels(drawing: Drawing) -> list[Label]:
    return [item for item in drawing.items if isinstance(item, Label)]


@pytest.mark.parametrize(("method", "settings"), [*((name, "") for name in METHODS), *CHOSEN])
def test_labels_lie_on_nothing(method: str, settings: str) -> None:
    drawing = drawn(method, settings)
    said = [(label.text, box_of(label)) for label in labels(drawing)]

    for (text, box), (other, there) in combinations(said, 2):
        assert not box.touches(there), f"{text} on {other}"
    for item in drawing.items:
        if isinstance(item, Stroke):
            for trace in item.traces:
                for start, end in pairwise(flattened(trace)):
                    hit = [text for text, box in said if box.meets(start, end)]
                    assert not hit, f"{hit} on {item.line} from {start} to {end}"


@pytest.mark.parametrize("method", METHODS)
def test_all_lies_on_the_paper(method: str) -> None:
    drawing = drawn(method)

    for item in drawing.items:
        if isinstance(item, Label):
            points = box_of(item).corners()
        else:
            half = HALF.get(item.line, 0.0)
            points = tuple(
                p + type(p)(dx, dy)
                for trace in item.traces
                for p in flattened(trace)
                for dx, dy in ((half, half), (-half, -half))
            )
        assert all(-0.6 <= p.x <= drawing.width + 0.6 for p in points), item
        assert all(-0.6 <= p.y <= drawing.height + 0.6 for p in points), item


@pytest.mark.parametrize("method", METHODS)
def test_plies_never_lie_in_each_other(method: str) -> None:
    """The middle lines of two plies, or of two stretches of one, keep a ply's thickness apart."""
    drawing = drawn(method)
    traces = [
        list(pairwise(flattened(trace)))
        for item in drawing.items
        if isinstance(item, Stroke) and item.line is LineKind.PLY
        for trace in item.traces
    ]
    middles = [[(a + b) * 0.5 for a, b in runs] for runs in traces]

    for one, other in combinations(range(len(traces)), 2):
        for a, b in traces[one]:
            for point in middles[other]:
                assert _distance(point, a, b) >= THICK - 0.05 or _butted(method), (method, point)


def _butted(method: str) -> bool:
    return method == "flat-knit"


def _distance(point: Point, a: Point, b: Point) -> float:
    along = b - a
    size = along.dot(along)
    share = 0.0 if size == 0.0 else min(max((point - a).dot(along) / size, 0.0), 1.0)
    return point.distance(a + along * share)


def test_a_deep_hem_is_drawn_as_wide_as_a_narrow_one() -> None:
    assert drawn("single-turned", "deep 8 in").width == drawn("single-turned", "deep 1/4 in").width


def test_layers_leave_room_for_threads_and_ticks() -> None:
    assert PITCH - THICK > 1.0


def test_the_key_has_a_sample_of_every_kind_of_line() -> None:
    drawing = section_key()
    kinds = {item.line for item in drawing.items if isinstance(item, Stroke)}

    assert kinds >= {
        LineKind.PLY,
        LineKind.PLY_WITHIN,
        LineKind.TRIM_WITHIN,
        LineKind.NEEDLE,
        LineKind.THREAD,
    }
    assert len(labels(drawing)) == 4
