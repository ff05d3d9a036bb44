"""Cross-sections of every way of making in the library, as a person reads them, and what holds of all."""

from __future__ import annotations

from itertools import pairwise
from math import isfinite
from typing import TYPE_CHECKING

import pytest

from specc.library.methods import method_files
from specc.making.section import ON, Node
from specc.making.sections import section_of
from specc.model.construction import Finish, Seam
from tests.methods import used
from tests.sections import SEAMS, section, told

if TYPE_CHECKING:
    from pathlib import Path

    from specc.making.section import Section, Strand
    from tests.goldens import Golden

# Ways of making whose choices change how they lie.
CHOSEN = (
    ("flat-felled", "fell inside"),
    ("flat-felled", "narrow first"),
    ("flat-felled", "narrow second"),
    ("lapped", "upper second"),
    ("waistband", "inner in-the-ditch"),
    ("rib-band", "topstitch cover"),
    ("closed-end", "way folded"),
    ("double-bias-bound", "last hand"),
    ("bias-faced", "seen 3/8 in"),
    ("overlocked", "threads four"),
)
FILES = {file: names for file, names in method_files() if file not in ("closures", "attachments")}
ALL = [(name, "") for names in FILES.values() for name in names] + list(CHOSEN)


def one(method: str, settings: str) -> Section:
    return section(method, settings, seam=SEAMS.get(method, ""))


@pytest.mark.parametrize("file", sorted(FILES))
def test_the_sections_of_the_library(root: Path, golden: Golden, file: str) -> None:
    lines = [
        f"{name}{f', {settings}' if settings else ''}\n{told(one(name, settings))}\n"
        for name, settings in ALL
        if name in FILES[file]
    ]
    golden(root / "tests" / "golden" / "sections" / f"{file}.txt", "\n".join(lines))


@pytest.mark.parametrize(("method", "settings"), ALL)
def test_every_stitch_stands_in_the_section_exactly_once(method: str, settings: str) -> None:
    made = used(method, settings, seam=SEAMS.get(method, ""))
    found = one(method, settings)
    making = made.making
    assert making is not None

    declared = [(place, done.stitch) for place, done in enumerate(making.passes) if done.stitch]
    shown = [(row.operation, row.stitch) for row in found.rows]
    shown += [(loops.operation, loops.stitch) for loops in found.overlocks]
    left_out = [(place, making.passes[place].stitch) for place in found.unplaced]

    assert sorted(shown + left_out) == declared


@pytest.mark.parametrize(("method", "settings"), ALL)
def test_a_strand_is_flat_or_turned_and_no_two_lie_in_one_place(method: str, settings: str) -> None:
    found = one(method, settings)

    for strand in found.strands:
        kinds = [(a.x == b.x, a.layer == b.layer) for a, b in pairwise(strand.nodes)]
        assert all(upright != flat for upright, flat in kinds)
        assert all(isfinite(node.x) for node in strand.nodes[1:-1])
    runs = found.runs
    for place, run in enumerate(runs):
        low, high = sorted((run.start, run.end))
        for other in runs[place + 1 :]:
            start, end = sorted((other.start, other.end))
            apart = run.layer != other.layer or high <= start + 1e-6 or end <= low + 1e-6
            assert apart, f"{run} and {other}"


@pytest.mark.parametrize(("method", "settings"), ALL)
def test_a_row_goes_through_what_lies_at_its_place(method: str, settings: str) -> None:
    found = one(method, settings)
    names = [strand.name for strand in found.strands]

    for row in found.rows:
        assert all(row.pierces)
        for x, pierced in zip(row.places, row.pierces, strict=True):
            there = [run for run in found.runs if run.holds(x) and row.top <= run.layer <= row.bottom]
            assert set(pierced) <= {names[run.strand] for run in there}


@pytest.mark.parametrize("method", ["pressed-open", "hong-kong"])
def test_a_seam_laid_open_is_its_own_mirror_image(method: str) -> None:
    found = one(method, "")

    def as_drawn(strand: Strand, sign: int) -> tuple[Node, ...]:
        return tuple(Node(sign * node.x + 0.0, node.layer) for node in strand.nodes)

    assert {as_drawn(strand, 1) for strand in found.strands} == {
        as_drawn(strand, -1) for strand in found.strands
    }
    assert all(sorted(row.places) == sorted(-x for x in row.places) for row in found.rows)


def ends(found: Section) -> int:
    """How many strands go on out of the picture."""
    return sum(abs(node.x) == ON for strand in found.strands for node in (strand.nodes[0], strand.nodes[-1]))


def test_plies_go_on_to_both_sides_of_a_seam_and_to_one_of_an_edge() -> None:
    assert ends(one("french", "")) == 2
    assert ends(one("turned-tube", "")) == 0
    assert ends(one("double-turned", "")) == 1


def test_allowances_lie_on_the_side_that_is_said() -> None:
    first, second = one("set-in", ""), one("gathered", "")

    assert first.widths[0].end < 0 < second.widths[0].end
    assert not one("overlocked", "").sided


def test_wrong_sides_together_the_allowances_stand_outside() -> None:
    inside, outside = one("flat-felled", "fell inside"), one("flat-felled", "")

    def body(found: Section) -> float:
        return found.strands[0].nodes[0].layer

    assert body(inside) == inside.layers[0]
    assert body(outside) == outside.layers[1]


def test_a_method_that_says_nothing_of_it_is_drawn_as_it_is_sewn() -> None:
    made = used("pressed-open")
    assert isinstance(made, Seam)
    found = section_of(made)
    assert found is not None
    assert found.laid

    three = section("faced", seam="back.neck, front.neck to band.bottom with band.top")

    assert not three.laid
    assert [strand.name for strand in three.strands] == ["first", "second", "third"]


def test_a_closure_has_no_section() -> None:
    made = used("buttoned")
    assert isinstance(made, Finish)
    assert section_of(made) is None
