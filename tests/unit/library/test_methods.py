"""Every method of the library can be used as it stands, and says what a stranger needs to sew it."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.drafting import Evaluator, FinishedPieces
from specc.library.seam_classes import seam_classes
from specc.library.stitches import stitches
from specc.source import SourceFile
from specc.syntax import parse, tree
from tests.drafting import garment

if TYPE_CHECKING:
    from specc.model.construction import Making
    from specc.model.expression import Expression

INCH = 25.4
TEXT = Path(__file__).parents[3].joinpath("specc/library/methods.garment").read_text(encoding="utf-8")
DECLARED = {
    declaration.name.text: declaration
    for declaration in parse(SourceFile("methods.garment", TEXT))[0].declarations
    if isinstance(declaration, tree.Method)
}
SEAMS = ("pressed-open", "pressed-to-one-side", "overlocked", "bound-outside", "french")
EDGES = ("elastic-bound", "bias-bound", "raw", "single-turned", "double-turned")


def made(method: str, settings: str = "") -> Making:
    """A method in use, its materials a fold-over elastic of 1 in and a bias strip."""
    materials = {
        "bound-outside": "binding edging",
        "elastic-bound": "binding edging",
        "bias-bound": "binding strip",
    }
    body = f"{{ {materials.get(method, '')}; {settings} }}"
    seam = DECLARED[method].makes.text == "seam"
    used = (
        f"seam s joins back.side to front.side by {method} {body}"
        if seam
        else f"finish f along back.neck, front.neck by {method} {body}"
    )
    found = garment(
        f"""garment t "T" {{ style "T"; sizes 12; sample 12; units in }}
        use chart misses
        use block sheath
        cloth lawn {{ fibre 100% cotton; width 44 in; weight 90 g/m2 }}
        trim edging "the edging" {{ kind fold-over elastic; width 1 in; stretch 60% }}
        trim strip "the strip" {{ kind bias strip; cut-from lawn }}
        {used}"""
    )
    return found.seams[0].making if seam else found.finishes[0].making


def inches(expression: Expression | None) -> float:
    assert expression is not None
    none: dict[str, float] = {}
    return Evaluator(none.__getitem__, FinishedPieces(())).value(expression) / INCH


def test_the_library_has_the_methods_that_are_promised() -> None:
    assert tuple(DECLARED) == (*SEAMS, *EDGES)
    assert {name: DECLARED[name].makes.text for name in SEAMS} == dict.fromkeys(SEAMS, "seam")


@pytest.mark.parametrize("method", [*SEAMS, *EDGES])
def test_a_method_speaks_of_known_stitches_and_classes_and_leaves_no_blank(method: str) -> None:
    making = made(method)
    numbers = {stitch.number for stitch in stitches()}
    letters = {each.letters: each for each in seam_classes()}

    assert making.passes
    assert {done.stitch for done in making.passes if done.stitch} <= numbers
    assert all(done.stitch_length is not None for done in making.passes if done.stitch)
    assert not any(re.search(r"[{}]", done.text + (done.inset_from or "")) for done in making.passes)
    if making.astm is not None:
        match = re.fullmatch(r"([A-Z]{2}[a-z]{1,2})-(\d)", making.astm)
        assert match
        known = letters[match[1]]
        assert making.iso in (None, known.iso)
        assert int(match[2]) <= sum(1 for done in making.passes if done.stitch)


@pytest.mark.parametrize("method", [*SEAMS, *EDGES])
def test_a_pass_reads_as_an_instruction(method: str) -> None:
    for done in made(method).passes:
        assert done.text[0].isupper()
        assert not done.text.endswith(".")  # the sheet ends it


@pytest.mark.parametrize(
    ("method", "settings", "allowance"),
    [
        ("pressed-open", "", 5 / 8),
        ("pressed-to-one-side", "allow 3/8 in", 3 / 8),
        ("overlocked", "", 3 / 8),
        ("bound-outside", "", 3 / 8),  # half of 1 in, less 1/8 in from the row to the open edges
        ("bound-outside", "inset 1/4 in", 1 / 4),
        ("french", "", 3 / 8),
        ("elastic-bound", "", 0),
        ("bias-bound", "", 0),
        ("raw", "", 0),
        ("single-turned", "deep 2 in", 2),
        ("double-turned", "deep 1 in; under 1/4 in", 5 / 4),
    ],
)
def test_allowances(method: str, settings: str, allowance: float) -> None:
    assert inches(made(method, settings).allowance) == pytest.approx(allowance)


@pytest.mark.parametrize("method", ["bound-outside", "elastic-bound"])
def test_elastic_is_sewn_with_long_stitches_well_inside_its_edge(method: str) -> None:
    """Common practice, no source: 3 mm or longer, the needle 1/8 to 1/4 in from the elastic's edge."""
    rows = [done for done in made(method).passes if done.stitch]

    assert len(rows) == (2 if method == "bound-outside" else 1)
    for row in rows:
        assert inches(row.stitch_length) * INCH >= 3.0
        assert 1 / 8 <= inches(row.inset) <= 1 / 4


def test_the_bound_seam_is_worked_in_its_order() -> None:
    making = made("bound-outside", "lay to front")
    words = [done.text for done in making.passes]

    assert making.faces == "wrong sides together"
    assert [bool(done.stitch) for done in making.passes] == [False, True, False, True]
    assert "wrong sides together" in words[0]
    assert "the edging" in words[1]
    assert "to front" in words[2]
    assert making.passes[3].inset_from == "the fold of the binding"
    assert making.shows
    assert making.raw_edge == "covered"


@pytest.mark.parametrize(
    ("threads", "stitch"), [("", "504"), ("threads three", "504"), ("threads four", "514")]
)
def test_the_overlock_has_the_stitch_of_its_threads(threads: str, stitch: str) -> None:
    rows = [done.stitch for done in made("overlocked", threads).passes if done.stitch]

    assert rows == [stitch]


@pytest.mark.parametrize("finished", [1 / 4, 1 / 2])
def test_a_bias_binding_is_cut_four_times_as_wide_as_it_finishes(finished: float) -> None:
    (taken,) = made("bias-bound", f"finished {finished} in").takes

    assert inches(taken.cut_width) == pytest.approx(4 * finished)


def test_what_becomes_of_raw_edges() -> None:
    fates = {method: made(method).raw_edge for method in (*SEAMS, *EDGES)}

    assert fates == {
        "pressed-open": "raw",
        "pressed-to-one-side": "raw",
        "overlocked": "overlocked",
        "bound-outside": "covered",
        "french": "enclosed",
        "elastic-bound": "covered",
        "bias-bound": "covered",
        "raw": "raw",
        "single-turned": "overlocked",
        "double-turned": "turned",
    }
