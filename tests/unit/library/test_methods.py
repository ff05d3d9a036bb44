"""Every method of the library can be used as it stands, and says what a stranger needs to sew it."""

from __future__ import annotations

import re
from math import pi
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.diagnostics import Severity
from specc.library.methods import file_of, method_files
from specc.library.seam_classes import seam_classes
from specc.library.stitches import stitches
from specc.source import SourceFile
from specc.syntax import parse, tree
from specc.units import UNITS
from tests.compiling import said
from tests.methods import inches, made

if TYPE_CHECKING:
    from specc.model.construction import Making

ROOT = Path(__file__).parents[3]
LIBRARY = ROOT / "specc" / "library"
GARMENTS = sorted((ROOT / "tests" / "garments").glob("methods-*.garment"))


def parsed(path: Path) -> tree.Tree:
    found, faults = parse(SourceFile(path.name, path.read_text(encoding="utf-8")))
    assert [fault.message for fault in faults] == []
    return found


DECLARED = {
    path.stem: tuple(each for each in parsed(path).declarations if isinstance(each, tree.Method))
    for path in sorted(LIBRARY.glob("*.garment"))
}
METHODS = [method.name.text for methods in DECLARED.values() for method in methods]


# --- where they are ---


def test_the_table_of_methods_says_where_each_is() -> None:
    there = {
        file: tuple(method.name.text for method in methods) for file, methods in DECLARED.items() if methods
    }

    assert dict(method_files()) == there
    assert len(METHODS) == len(set(METHODS))


def test_a_method_that_the_library_lacks_has_no_file() -> None:
    assert file_of("french") == "enclosed-seams"
    assert file_of("frensh") is None


def test_a_file_holds_one_kind_of_method() -> None:
    makes = {file: {method.makes.text for method in methods} for file, methods in DECLARED.items() if methods}

    assert makes["seams"] == makes["enclosed-seams"] == {"seam"}
    assert makes["edges"] == {"finish"}
    assert makes["hems"] == {"hem"}
    assert makes["closures"] == {"closure"}
    assert makes["slits"] == {"finish"}


# --- what they say ---


@pytest.mark.parametrize("method", METHODS)
def test_a_method_speaks_of_known_stitches_and_classes_and_leaves_no_blank(method: str) -> None:
    making = made(method)
    numbers = {stitch.number for stitch in stitches()}
    letters = {each.letters: each for each in seam_classes()}

    assert making.passes
    assert {done.stitch for done in making.passes if done.stitch} <= numbers
    assert all(done.stitch_length is not None for done in making.passes if done.stitch)
    assert not any(re.search(r"[{}]", done.text + (done.inset_from or "")) for done in making.passes)
    assert making.iso is None or re.fullmatch(r"[1-8]\.\d\d\.\d\d", making.iso)
    if making.astm is not None:
        match = re.fullmatch(r"([A-Z]{2}[a-z]{1,2})-(\d)", making.astm)
        assert match
        known = letters[match[1]]
        # EFa with stitch 406 is 6.02.07: Lee and Ha, Human Ecology Research 58(3), 2020.
        assert making.iso in ({"6.02.07"} if method == "cover-stitched" else {None, known.iso})
        assert int(match[2]) <= sum(1 for done in making.passes if done.stitch)


@pytest.mark.parametrize("method", METHODS)
def test_a_pass_reads_as_an_instruction(method: str) -> None:
    for done in made(method).passes:
        assert done.text[0].isupper()
        assert not done.text.endswith(".")  # the sheet ends it


@pytest.mark.parametrize("method", METHODS)
def test_a_method_says_what_it_needs_and_on_which_machine(method: str) -> None:
    making = made(method)

    assert making.needs
    assert making.machine
    assert making.title != method


CHOICES = [
    (method.name.text, item)
    for methods in DECLARED.values()
    for method in methods
    for item in method.body
    if isinstance(item, tree.Choice)
]


@pytest.mark.parametrize(
    ("method", "choice"), CHOICES, ids=[f"{method}-{choice.name.text}" for method, choice in CHOICES]
)
def test_every_option_is_worked_in_its_own_way_and_leaves_no_blank(method: str, choice: tree.Choice) -> None:
    ways = set()
    for option in choice.options:
        making = made(method, f"{choice.name.text} {option.text}")
        words = "; ".join(f"{done.text} {done.stitch}" for done in making.passes)
        assert words
        assert "{" not in words
        ways.add(words)

    assert len(ways) == len(choice.options)


@pytest.mark.parametrize(
    ("method", "settings", "allowance"),
    [
        ("pressed-open", "", 5 / 8),
        ("pressed-to-one-side", "allow 3/8 in", 3 / 8),
        ("overlocked", "", 3 / 8),
        ("topstitched", "", 1 / 2),
        ("lapped", "allow 3/8 in", 3 / 8),
        ("flat-knit", "trim 1/4 in", 1 / 4),
        ("gathered", "", 1 / 2),
        ("set-in", "", 1 / 2),
        ("stayed", "", 3 / 8),
        ("bound-outside", "", 3 / 8),  # half of 1 in, less 1/8 in from the row to the open edges
        ("bound-outside", "inset 1/4 in", 1 / 4),
        ("french", "", 3 / 8),
        ("flat-felled", "", 1 / 2),
        ("hong-kong", "", 5 / 8),
        ("piped", "", 1 / 2),
        ("turned", "", 3 / 8),
        ("faced", "", 3 / 8),
        ("elastic-bound", "", 0),
        ("bias-bound", "", 0),
        ("double-bias-bound", "", 0),
        ("bias-faced", "", 1 / 4),
        ("edge-overlocked", "", 0),
        ("raw", "", 0),
        ("single-turned", "deep 2 in", 2),
        ("double-turned", "deep 1 in; under 1/4 in", 5 / 4),
        ("rolled", "deep 1/8 in", 1 / 4),
        ("overlock-rolled", "", 1 / 4),
        ("blind", "deep 3 in", 3),
        ("cover-stitched", "deep 1 in", 1),
        ("elastic-casing", "", 3 / 2),  # 1 in elastic, 1/4 in play, 1/4 in turned under
        ("drawstring-casing", "", 3 / 4),  # 1/4 in cord, and the same
        ("waistband", "", 1 / 2),
        ("caught-down", "", 3 / 8),
        ("rib-band", "", 1 / 4),
        ("elastic-waistband", "", 3 / 8),
        ("bagged-out", "", 3 / 8),
        ("closed-end", "", 1 / 4),
        ("turned-tube", "", 1 / 4),
        ("folded-strap", "", 3 / 8),
        ("patch", "", 3 / 8),
        ("set-on", "", 0),
        ("flap", "", 3 / 8),
        ("boxed", "allow 1/2 in", 1 / 2),
        ("bar-tacked", "", 1 / 4),
        ("zip-centred", "", 3 / 4),
        ("zip-lapped", "", 3 / 4),
        ("zip-concealed", "allow 3/4 in", 3 / 4),
        ("buttoned", "", 5 / 8),
        ("buttoned-grown-on", "facing 3 in", 3),
        ("buttoned-strip", "", 1 + 3 / 8),
        ("hook-and-eye", "", 5 / 8),
        ("snapped", "", 5 / 8),
        ("slit-turned", "", 5 / 8),  # 3/8 in deep, 1/4 in turned under
        ("continuous-bound", "", 1 / 4),
        ("vent-mitred", "", 1 / 4),
    ],
)
def test_allowances(method: str, settings: str, allowance: float) -> None:
    assert inches(made(method, settings).allowance) == pytest.approx(allowance)


def test_what_becomes_of_raw_edges() -> None:
    fates: dict[str, list[str]] = {}
    for method in METHODS:
        fates.setdefault(made(method).raw_edge, []).append(method)

    assert {fate: sorted(methods) for fate, methods in fates.items()} == {
        "raw": ["pressed-open", "pressed-to-one-side", "raw"],
        "overlocked": [
            "blind",
            "buttoned-grown-on",
            "edge-overlocked",
            "elastic-waistband",
            "gathered",
            "lapped",
            "overlock-rolled",
            "overlocked",
            "piped",
            "rib-band",
            "set-in",
            "single-turned",
            "stayed",
            "topstitched",
            "zip-centred",
            "zip-concealed",
            "zip-lapped",
        ],
        "covered": [
            "bias-bound",
            "bias-faced",
            "bound-outside",
            "cover-stitched",
            "double-bias-bound",
            "elastic-bound",
            "flat-knit",
            "hong-kong",
            "set-on",
        ],
        "enclosed": [
            "bagged-out",
            "buttoned",
            "caught-down",
            "closed-end",
            "continuous-bound",
            "faced",
            "flap",
            "flat-felled",
            "folded-strap",
            "french",
            "hook-and-eye",
            "patch",
            "snapped",
            "turned",
            "turned-tube",
            "waistband",
        ],
        "turned": [
            "bar-tacked",
            "boxed",
            "buttoned-strip",
            "double-turned",
            "drawstring-casing",
            "elastic-casing",
            "rolled",
            "slit-turned",
            "vent-mitred",
        ],
    }


def test_a_raw_edge_that_is_overlocked_has_an_overedge_row() -> None:
    """Stitches of class 500 are overedge stitches (ISO 4915:1981)."""
    for method in METHODS:
        making = made(method)
        overedge = any((done.stitch or "").startswith("5") for done in making.passes)
        assert overedge is (making.raw_edge == "overlocked"), method


def test_rows_within_an_allowance_stay_within_it() -> None:
    """A row measured from the raw edges before the seam row is sewn lies between those edges and the seam."""
    for method in ("gathered", "set-in"):
        making = made(method)
        insets = [inches(done.inset) for done in making.passes if done.inset is not None]
        assert insets == sorted(insets)
        assert insets[-1] == pytest.approx(inches(making.allowance))


# --- single methods ---


@pytest.mark.parametrize("method", ["bound-outside", "elastic-bound"])
def test_elastic_is_sewn_with_long_stitches_well_inside_its_edge(method: str) -> None:
    """Common practice, no source: 3 mm or longer, the needle 1/8 to 1/4 in from the elastic's edge."""
    rows = [done for done in made(method).passes if done.stitch]

    assert len(rows) == (2 if method == "bound-outside" else 1)
    for row in rows:
        assert inches(row.stitch_length) * float(UNITS["in"].size) >= 3.0
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


def rows_of(making: Making) -> list[str]:
    return [done.stitch for done in making.passes if done.stitch]


@pytest.mark.parametrize(
    ("method", "settings", "rows"),
    [
        ("overlocked", "", ["504"]),
        ("overlocked", "threads three", ["504"]),
        ("overlocked", "threads four", ["514"]),
        ("stayed", "threads four", ["301", "514"]),
        ("rib-band", "", ["514"]),
        ("rib-band", "threads three; topstitch cover", ["504", "406"]),
        ("flat-knit", "", ["607"]),
        ("cover-stitched", "", ["406"]),
        ("blind", "", ["504", "103"]),
        ("blind", "by hand", ["504"]),
        ("gathered", "", ["301", "301", "301", "504"]),
        ("flat-felled", "fell inside", ["301", "301"]),
        ("patch", "rows two", ["301", "301"]),
        ("flap", "", ["301", "301"]),
        ("boxed", "", ["301"]),
        ("bar-tacked", "", ["304"]),
        ("closed-end", "way folded", ["301"]),
    ],
)
def test_rows_of_stitches_in_their_order(method: str, settings: str, rows: list[str]) -> None:
    assert rows_of(made(method, settings)) == rows


@pytest.mark.parametrize(("fell", "faces"), [("outside", "wrong sides"), ("inside", "right sides")])
def test_a_fell_lies_on_the_side_on_which_the_allowances_stand(fell: str, faces: str) -> None:
    making = made("flat-felled", f"fell {fell}")

    assert making.faces == f"{faces} together"
    assert f"{faces} together" in making.passes[0].text


def test_both_allowances_of_a_hong_kong_seam_are_bound() -> None:
    assert [taken.material for taken in made("hong-kong").takes] == ["binding", "binding"]


def test_the_drawstring_says_the_caution_for_children() -> None:
    making = made("drawstring-casing")
    words = " ".join(done.text for done in making.passes)

    for text in (words, making.needs or ""):
        assert "check your local law" in text
        assert "16 CFR 1120" in text
        assert "EN 14682" in text


# --- in garments ---


@pytest.mark.parametrize("path", GARMENTS, ids=lambda path: path.stem)
def test_a_garment_of_these_methods_compiles_without_errors(path: Path) -> None:
    found = said(path.read_bytes(), folder=path.parent, name=path.name)

    assert [each.message for each in found if each.severity is Severity.ERROR] == []


def test_every_method_is_used_by_a_garment() -> None:
    used = {
        each.method.text
        for path in GARMENTS
        for each in parsed(path).declarations
        if isinstance(each, tree.Seam | tree.Finish | tree.Closure | tree.SewOn | tree.Catch) and each.method
    }

    assert set(METHODS) - used == set()


def test_the_strip_of_a_piping_goes_round_the_cord_and_has_both_allowances() -> None:
    """A cord of 1/4 in is 0.785 in round; two allowances of 1/2 in."""
    strip, cord = made("piped").takes

    assert inches(strip.cut_width) == pytest.approx(1.0 + pi / 4.0)
    assert inches(cord.cut_width) == pytest.approx(1 / 4)
