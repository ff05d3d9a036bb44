"""Cross-sections of ways of making, held against what the letters and numbers of seam classes mean."""

from __future__ import annotations

from itertools import chain
from typing import TYPE_CHECKING

import pytest

from specc.making.section import ON
from tests.methods import inches, made
from tests.sections import SEAMS, section
from tests.sources import Known, against

if TYPE_CHECKING:
    from specc.making.section import Row, Section, Strand

INCH = 25.4
NAVY = "US Navy, NAVEDTRA 14218, ch. 10"
NEEDLES_EYE = "The Needle's Eye, on US Federal Standard 751a"
ISO_4916 = "ISO 4916:1991, classes"


def of(method: str, settings: str = "") -> Section:
    return section(method, settings, seam=SEAMS.get(method, ""))


def cloths(found: Section) -> tuple[Strand, ...]:
    return tuple(strand for strand in found.strands if not strand.trim)


def trims(found: Section) -> tuple[Strand, ...]:
    return tuple(strand for strand in found.strands if strand.trim)


def pierced(row: Row) -> set[str]:
    return set(chain.from_iterable(row.pierces))


def bounded(strand: Strand) -> int:
    """At how many of its ends a strand ends in the picture."""
    return sum(abs(node.x) != ON for node in (strand.nodes[0], strand.nodes[-1]))


# --- how many rows ---


# Left out are ways whose passes are not all rows of the seam: gathering and easing rows are drawn out or lie
# within, and a row that sews a finished binding down adorns it.
@against(Known.READ, NAVY, "the number behind the letters is that of rows of stitching")
@pytest.mark.parametrize(
    "method",
    [
        "pressed-open", "pressed-to-one-side", "overlocked", "topstitched", "lapped", "flat-knit", "stayed",
        "french", "flat-felled", "turned", "elastic-bound", "bias-bound", "single-turned", "double-turned",
        "rolled", "cover-stitched", "edge-overlocked", "rib-band", "turned-tube",
    ],
)  # fmt: skip
def test_as_many_rows_are_drawn_as_the_class_has(method: str) -> None:
    """An overlock counts where it is all that is sewn; otherwise it neatens raw edges."""
    astm = made(method).astm
    assert astm is not None
    found = of(method)

    assert len(found.rows) or len(found.overlocks)
    assert (len(found.rows) or len(found.overlocks)) == int(astm.partition("-")[2])


@against(Known.READ, NEEDLES_EYE, "SSe: a run stitch, then a topstitch")
def test_a_turned_and_topstitched_seam_has_a_row_within_and_one_through_the_outside() -> None:
    run, top = of("turned", "beside 1/8 in").rows

    assert (run.top, run.bottom) == (1, 2)
    assert (top.top, top.bottom) == (0, 3)


@against(Known.READ, NEEDLES_EYE, "SSf: a seam with a stay tape")
def test_the_row_of_a_stayed_seam_goes_through_its_tape_and_both_plies() -> None:
    (row,) = of("stayed").rows

    assert pierced(row) == {"first", "second", "tape"}


@against(Known.READ, NEEDLES_EYE, "SSk: a piping in the seam")
def test_the_row_of_a_piped_seam_goes_through_its_strip_and_both_plies() -> None:
    (row,) = of("piped").rows

    assert row.pierces == (("first", "piping", "piping", "second"),)


@against(Known.READ, "a web note on ASTM D6193", "the hem turned twice is an S-fold, sewn through both folds")
def test_a_hem_turned_twice_is_sewn_through_three_plies_of_one_cloth() -> None:
    found = of("double-turned")
    (strand,) = found.strands
    (row,) = found.rows

    assert row.pierces == (("cloth", "cloth", "cloth"),)
    assert len(strand.runs(0)) == 3


@against(Known.SECOND_HAND, "class notes on US Federal Standard 751a", "LS: plies overlap at the needle")
def test_plies_of_a_lapped_seam_overlap_at_the_needle() -> None:
    (row,) = of("lapped").rows

    assert pierced(row) == {"first", "second"}


@against(
    Known.SECOND_HAND,
    "a web note on ASTM D6193",
    "BS: a separate strip encloses the edge; not sewn with overedge",
)
@pytest.mark.parametrize("method", ["elastic-bound", "bias-bound", "double-bias-bound", "continuous-bound"])
def test_a_binding_lies_on_both_sides_of_the_raw_edge_and_beyond_it(method: str) -> None:
    found = of(method)
    (cloth,), (binding,) = cloths(found), trims(found)
    layer = cloth.nodes[0].layer
    layers = {node.layer for node in binding.nodes}

    assert min(layers) < layer < max(layers)
    assert max(node.x for node in binding.nodes) >= max(node.x for node in cloth.nodes)
    assert found.overlocks == ()


@against(Known.MEMORY, ISO_4916, "4: two edges butted on one level")
def test_the_plies_of_a_flat_seam_meet_on_one_level() -> None:
    first, second = cloths(of("flat-knit"))

    assert made("flat-knit").iso == "4.01.01"
    assert first.nodes[-1] == second.nodes[-1]
    assert {node.layer for node in (*first.nodes, *second.nodes)} == {0}


@against(Known.MEMORY, ISO_4916, "1: two or more plies bounded on the same side")
@pytest.mark.parametrize(
    "method",
    ["pressed-open", "pressed-to-one-side", "overlocked", "gathered", "set-in", "french", "turned"],
)
def test_the_plies_of_a_superimposed_seam_each_end_on_one_side(method: str) -> None:
    iso = made(method).iso
    assert iso is not None
    assert iso.startswith("1.")
    plies = cloths(of(method))

    assert len(plies) == 2
    assert [bounded(ply) for ply in plies] == [1, 1]


@against(Known.MEMORY, ISO_4916, "3: a ply bounded on one side, a second bounded on both that wraps it")
@pytest.mark.parametrize(("method", "plies"), [("elastic-bound", 1), ("bound-outside", 2)])
def test_a_bound_edge_has_a_trim_that_ends_on_both_sides(method: str, plies: int) -> None:
    iso = made(method).iso
    assert iso is not None
    assert iso.startswith("3.")
    found = of(method)

    assert [bounded(cloth) for cloth in cloths(found)] == [1] * plies
    assert [bounded(trim) for trim in trims(found)] == [2]


@against(Known.MEMORY, ISO_4916, "6: one ply bounded on one side")
@pytest.mark.parametrize(
    "method", ["single-turned", "double-turned", "rolled", "blind", "cover-stitched", "edge-overlocked"]
)
def test_a_hem_is_one_ply_that_ends_on_one_side(method: str) -> None:
    iso = made(method).iso
    assert iso is not None
    assert iso.startswith("6.")

    assert [bounded(strand) for strand in of(method).strands] == [1]


# --- what widths must be ---


@against(Known.DERIVED, "the upper allowance less what is folded in covers what is left of the lower")
@pytest.mark.parametrize("settings", ["", "allow 5/8 in; trimmed 1/8 in; under 1/4 in", "narrow second"])
def test_a_fell_covers_the_raw_edge_below_it(settings: str) -> None:
    under, over = of("flat-felled", settings).strands

    assert max(node.x for node in over.nodes) >= under.nodes[-1].x
    assert over.nodes[-1].layer != over.nodes[-3].layer


@against(Known.DERIVED, "what is wrapped twice and sewn in and turned under is the whole strip")
@pytest.mark.parametrize("finished", ["1/4 in", "3/8 in", "1/2 in"])
def test_a_bias_binding_takes_the_whole_of_its_strip(finished: str) -> None:
    (binding,) = trims(of("bias-bound", f"finished {finished}"))
    whole = sum(abs(run.end - run.start) for run in binding.runs(0))

    (takes,) = made("bias-bound", f"finished {finished}").takes
    assert whole == pytest.approx(INCH * inches(takes.cut_width))


@against(Known.DERIVED, "finished width three times, in two layers")
def test_a_doubled_binding_takes_the_whole_of_its_strip() -> None:
    """But for the fold, which is drawn beyond the row that catches it."""
    (binding,) = trims(of("double-bias-bound"))
    whole = sum(abs(run.end - run.start) for run in binding.runs(0))
    (takes,) = made("double-bias-bound").takes

    assert whole == pytest.approx(INCH * inches(takes.cut_width) + 2 * 1.6)
