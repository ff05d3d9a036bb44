"""The garment laid flat: its lengths and widths are those of the pieces, where a drawing can keep them."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.flat import lay_flat
from specc.flat.chains import distinct, length_of
from specc.flat.hung import UPPER
from specc.flat.laid import Mark, Role
from specc.gather import read
from specc.geometry.region import crosses_itself
from specc.pattern.lookup import edge_named, piece_named
from specc.pattern.measure import stitched_length
from specc.pipeline import check
from specc.source import SourceFile
from tests.compiling import Here

if TYPE_CHECKING:
    from specc.flat.laid import Flat, LaidPiece, Side
    from specc.making.assembly import SizeAssembly

ROOT = Path(__file__).parents[3]
EXAMPLES = sorted(path.stem for path in (ROOT / "examples").glob("*/*.garment"))
NEAR = 0.5  # mm: curves are drawn by straight runs


@cache
def laid(name: str) -> tuple[SizeAssembly, Flat]:
    path = next((ROOT / "examples").glob(f"*/{name}.garment"))
    source, faults = read(path.name, path.read_bytes())
    assert not faults
    result = check(source, Here(path.parent))
    assert result.garment is not None
    assert result.assembly is not None
    sizes = {size.size: size for size in result.assembly.sizes}
    size = sizes[result.garment.header.sample]
    return size, lay_flat(result.garment, size)


def side(name: str, which: str) -> Side:
    return next(side for side in laid(name)[1].sides if side.name == which)


def piece(name: str, which: str, called: str) -> LaidPiece:
    found = side(name, which).piece(called)
    assert found is not None
    return found


def sewn(name: str, called: str, edge: str) -> float:
    found = piece_named(laid(name)[0].pieces, called)
    assert found is not None
    there = edge_named(found, edge)
    assert there is not None
    return stitched_length(there)


def drawn(name: str, which: str, called: str, edge: str) -> float:
    found = piece(name, which, called).edge(edge)
    assert found is not None
    return length_of(found.points)


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_piece_is_drawn_across_itself_or_beyond_the_middle(name: str) -> None:
    for seen in laid(name)[1].sides:
        for each in seen.pieces:
            outline = distinct(each.outline)
            assert not crosses_itself(outline), each.name
            assert min(point.x for point in outline) > -20.0, each.name


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_side_of_a_garment_is_drawn_and_every_shell_piece_is_on_one(name: str) -> None:
    size, flat = laid(name)
    assert [seen.name for seen in flat.sides] == ([""] if name == "galley-apron" else ["front", "back"])
    left_out = {"galley-apron": {"waist tie", "neck strap", "towel loop"}}
    assert set(flat.left_out) == left_out.get(name, set())
    assert size.pieces


@pytest.mark.parametrize(
    ("name", "called", "edges"),
    [
        ("estuary-shell", "front", ("neck", "shoulder", "armhole", "side", "hem")),
        ("heron-skirt", "front", ("side", "hem")),
        ("slipway-tee", "front", ("neck", "shoulder", "armhole", "side", "hem")),
        ("galley-apron", "apron", ("bib", "armhole", "side", "hem")),
    ],
)
def test_a_piece_without_darts_is_drawn_as_it_is(name: str, called: str, edges: tuple[str, ...]) -> None:
    which = "" if name == "galley-apron" else "front"
    for edge in edges:
        if edge == "side" and name == "heron-skirt":
            continue  # its waist has darts, and closing them slants the side
        assert drawn(name, which, called, edge) == pytest.approx(sewn(name, called, edge), abs=NEAR), edge


@pytest.mark.parametrize(
    ("name", "which", "called", "edge"),
    [
        ("heron-skirt", "front", "front", "waist"),
        ("heron-skirt", "back", "back", "waist"),
        ("capstan-skirt", "back", "back", "waist"),
        ("loft-waistcoat", "front", "front", "side"),
        ("reedbed-dress", "back", "back", "shoulder"),
        ("reedbed-dress", "front", "front", "waist"),
    ],
)
def test_an_edge_with_a_dart_is_drawn_as_long_as_it_is_sewn(
    name: str, which: str, called: str, edge: str
) -> None:
    """A drawing of what is round is not exact; a fiftieth is less than can be seen."""
    assert drawn(name, which, called, edge) == pytest.approx(sewn(name, called, edge), rel=0.02)
    lines = {line.name for line in piece(name, which, called).lines if line.mark is Mark.DART}
    assert lines


def test_a_gathered_skirt_begins_as_wide_as_the_bodice_and_ends_as_wide_as_it_is_cut() -> None:
    waist = drawn("reedbed-dress", "front", "skirt-front", "waist")
    assert waist == pytest.approx(drawn("reedbed-dress", "front", "front", "waist"), abs=NEAR)
    hem = piece("reedbed-dress", "front", "skirt-front").edge("hem")
    assert hem is not None
    assert max(point.x for point in hem.points) == pytest.approx(
        sewn("reedbed-dress", "skirt-front", "hem"), abs=NEAR
    )


def test_a_sleeve_hangs_so_that_its_seam_its_fold_and_its_hem_keep_their_lengths() -> None:
    for which, seam in (("front", "seam-front"), ("back", "seam-back")):
        hung = piece("slipway-tee", which, "sleeve")
        assert drawn("slipway-tee", which, "sleeve", seam) == pytest.approx(
            sewn("slipway-tee", "sleeve", seam), abs=2.0
        )
        assert 2 * drawn("slipway-tee", which, "sleeve", "hem") == pytest.approx(
            sewn("slipway-tee", "sleeve", "hem"), abs=NEAR
        )
        fold = hung.edge(UPPER)
        assert fold is not None
        assert fold.points[0].x > fold.points[-1].x  # away from the body
        assert fold.points[0].y < fold.points[-1].y  # and down


def test_a_band_is_as_deep_as_it_finishes() -> None:
    """`band` cuts 4 cm for the neck and 8 cm for the waist, and both are folded in half."""
    for name, which, called, deep in (
        ("slipway-tee", "front", "neckband", 20.0),
        ("heron-skirt", "front", "waistband", 40.0),
    ):
        band = piece(name, which, called)
        inner, outer = band.edges[0].points[0], band.edges[2].points[-1]
        assert inner.distance(outer) == pytest.approx(deep, abs=1.0)


def test_the_legs_of_trousers_meet_at_the_fork() -> None:
    for which, edge in (("front", "crotch"), ("back", "crotch")):
        crotch = piece("mudlark-trousers", which, which).edge(edge)
        assert crotch is not None
        assert crotch.role is Role.MIDDLE
        assert all(abs(point.x) < NEAR for point in crotch.points)


def test_the_back_neck_is_seen_above_a_lower_front_neck_only() -> None:
    (front,) = side("slipway-tee", "front").beyond
    assert front.edge[0].y > min(point.y for point in front.outline)
    assert not side("slipway-tee", "back").beyond


def test_a_piece_that_is_there_once_is_drawn_once_across_the_middle() -> None:
    text = re.search(r"```garment\n(garment scarf.*?)```", (ROOT / "DEVELOPERS.md").read_text(), re.DOTALL)
    assert text is not None
    result = check(SourceFile("scarf.garment", text[1]), Here(ROOT))
    assert result.garment is not None
    assert result.assembly is not None
    (seen,) = lay_flat(result.garment, result.assembly.sizes[0]).sides
    (scarf,) = seen.pieces
    assert scarf.whole
    assert {abs(point.x) for point in scarf.outline} == {350.0}
