"""Stitch types and seam classes of the library, and the ways of making that name them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

import pytest

from specc.assets import library_texts
from specc.library.methods import method_files
from specc.library.seam_classes import seam_classes
from specc.library.stitches import stitches
from specc.source import SourceFile
from specc.syntax import parse, tree
from tests.methods import made
from tests.sources import Known, against

if TYPE_CHECKING:
    from collections.abc import Iterator

STITCHES = {stitch.number: stitch for stitch in stitches()}
CLASSES = {row.letters: row for row in seam_classes()}

# Numbers are those of ISO 4915; what the words of a name tell of the class that the first figure states.
ISO_4915 = {
    "1": "chain|blind",
    "2": "running",
    "3": "lockstitch",
    "4": "chain|cover",
    "5": "edge|safety",
    "6": "cover|flat",
}
# By the class in ASTM D6193: class of ISO 4916. A patch is lapped, and its edge a component laid on another.
ISO_4916 = {"SS": "1", "LS": "25", "BS": "3", "FS": "4", "EF": "6", "OS": "5"}
NOTATION = re.compile(r"(SS|LS|BS|FS|EF|OS)[a-z]{1,3}(-\d)?")


@dataclass(frozen=True, slots=True)
class Written:
    """A way of making as its text has it: what it makes, its codes, the stitches of its passes in order."""

    name: str
    makes: str
    astm: str
    iso: str
    stitches: tuple[str, ...]


def written(method: tree.Method) -> Written:
    said: dict[str, str] = {}
    for line in method.body:
        if isinstance(line, tree.Property) and isinstance(line.values[0][0], tree.Text):
            said[line.name.text] = line.values[0][0].text
    return Written(
        method.name.text,
        method.makes.text,
        said.get("astm", ""),
        said.get("iso", ""),
        tuple(str(each.stitch.value) for each in method.body if isinstance(each, tree.Pass) and each.stitch),
    )


def library() -> Iterator[Written]:
    for file, _ in method_files():
        text = library_texts()[file].read_text(encoding="utf-8")
        found, _ = parse(SourceFile(file, text))
        yield from (written(each) for each in found.declarations if isinstance(each, tree.Method))


METHODS = tuple(library())
CODED = tuple(method for method in METHODS if method.astm)


@against(
    Known.READ,
    "GB 4515-84 (ISO 4915:1981)",
    "classes 100 chain, 200 hand, 300 lock, 400 chain, 500 overedge, 600 cover",
)
@pytest.mark.parametrize("number", STITCHES)
def test_a_stitch_is_of_the_class_that_its_number_says(number: str) -> None:
    assert re.search(ISO_4915[number[0]], STITCHES[number].name)


@against(
    Known.READ,
    "Coats stitch guide (copy); ICAR e-course",
    "103 blindstitch, 209 running, 301 lockstitch, 503 two, 504 three, 514 four threads",
)
@pytest.mark.parametrize(
    ("number", "words"),
    [
        ("103", "blindstitch"), ("209", "running"), ("301", "lockstitch"), ("503", "two-thread overedge"),
        ("504", "three-thread overedge"), ("514", "four-thread overedge"),
    ],
)  # fmt: skip
def test_stitches_have_the_names_of_the_guides(number: str, words: str) -> None:
    assert words in STITCHES[number].name


@against(Known.MEMORY, "ISO 4915", "515 is 401 and 503, 516 is 401 and 504")
@against(
    Known.READ,
    "ICAR e-course, which disagrees",
    "515 is 401 and 504: then its threads were five, as those of 516",
)
@pytest.mark.parametrize(("safety", "overedge"), [("515", "503"), ("516", "504")])
def test_a_safety_stitch_has_the_needles_and_threads_of_its_two_parts(safety: str, overedge: str) -> None:
    chain, edge, both = STITCHES["401"], STITCHES[overedge], STITCHES[safety]

    assert both.needles == chain.needles + edge.needles
    assert both.threads == chain.threads + edge.threads


@against(
    Known.READ, "Navy NAVEDTRA 14218, ch. 10", "two capitals, small letters, a hyphen, the rows of stitching"
)
def test_seam_classes_are_written_as_the_navy_writes_them() -> None:
    for method in CODED:
        assert NOTATION.fullmatch(method.astm)
        assert method.astm.partition("-")[0] in CLASSES
    assert all(NOTATION.fullmatch(letters) for letters in CLASSES)


@against(
    Known.MEMORY,
    "ISO 4916:1991",
    "class 1 superimposed, 2 lapped, 3 bound, 4 flat, 5 laid on, 6 an edge finished",
)
def test_both_standards_are_of_one_class() -> None:
    both = [(letters, row.iso) for letters, row in CLASSES.items()] + [
        (method.astm, method.iso) for method in CODED
    ]
    for letters, number in both:
        if number:
            assert re.fullmatch(r"\d\.\d\d\.\d\d", number)
            assert number[0] in ISO_4916[letters[:2]]


@against(
    Known.READ,
    "The Needle's Eye, K. Sandow, after NAVEDTRA 14218",
    "a seam joins plies; EF and OS are stitchings",
)
def test_only_a_seam_has_a_class_of_seams() -> None:
    for method in CODED:
        assert method.astm[:2] not in {"EF", "OS"} or method.makes != "seam", method.name
    assert {letters for letters, row in CLASSES.items() if row.kind == "stitching"} == {
        letters for letters in CLASSES if letters[:2] in {"EF", "OS"}
    }


@against(
    Known.READ,
    "class notes on Federal Standard 751a; a note on ASTM D6193",
    "lapped and bound are not sewn with overedge",
)
@against(Known.MEMORY, "ASTM D6193", "flat seams are joined by a covering stitch")
def test_lapped_and_bound_seams_are_closed_by_no_overedge() -> None:
    for method in CODED:
        if method.astm[:2] in {"LS", "BS"}:
            assert method.stitches[-1][0] in "34", method.name
        if method.astm[:2] == "FS":
            assert method.stitches[-1][0] == "6", method.name


@against(
    Known.READ, "Navy NAVEDTRA 14218, ch. 10", "the figure behind the hyphen counts the rows of stitching"
)
@pytest.mark.parametrize("name", ["french", "flat-felled", "turned", "topstitched", "bias-bound"])
def test_a_class_with_two_rows_has_two_rows(name: str) -> None:
    """A row that neatens the allowances is no row of the seam."""
    making = made(name)

    assert (making.astm or "").endswith("-2")
    assert [done.stitch for done in making.passes if done.stitch and done.stitch[0] != "5"] == ["301", "301"]


@against(Known.READ, "Lee and Ha, Human Ecology Research 58(3), 2020", "6.02.07 is sewn with 406 most often")
def test_the_hem_of_knits_is_the_commonest_one() -> None:
    method = next(method for method in METHODS if method.name == "cover-stitched")

    assert (method.iso, method.stitches) == ("6.02.07", ("406",))


@against(
    Known.READ,
    "ICAR e-course; class notes on seam types",
    "504 seams knits, 607 butts them; 301 gives little",
)
@pytest.mark.parametrize("name", ["overlocked", "flat-knit", "rib-band", "cover-stitched"])
def test_what_is_meant_for_knits_is_not_sewn_with_a_lockstitch(name: str) -> None:
    assert "301" not in next(method for method in METHODS if method.name == name).stitches
