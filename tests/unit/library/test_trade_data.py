from __future__ import annotations

import re

from specc.library.seam_classes import seam_classes
from specc.library.stitches import stitches


def test_stitches_are_in_order_each_once() -> None:
    numbers = [stitch.number for stitch in stitches()]

    assert numbers == sorted(set(numbers))
    assert all(re.fullmatch(r"[1-6]\d\d", number) for number in numbers)


def test_a_stitch_has_a_thread_for_every_needle() -> None:
    assert all(1 <= stitch.needles <= stitch.threads for stitch in stitches())


def test_every_row_has_words() -> None:
    assert all(stitch.name and stitch.use for stitch in stitches())
    assert all(each.words for each in seam_classes())


def test_seam_classes_are_named_as_the_standards_name_them() -> None:
    letters = [each.letters for each in seam_classes()]

    assert len(letters) == len(set(letters))
    assert all(re.fullmatch(r"(SS|LS|BS|FS|EF|OS)[a-z]{1,3}", each) for each in letters)
    assert all(each.iso is None or re.fullmatch(r"[1-8]\.\d\d\.\d\d", each.iso) for each in seam_classes())


def test_only_edge_finishing_and_ornament_are_no_seams() -> None:
    for each in seam_classes():
        assert (each.kind == "stitching") == each.letters.startswith(("EF", "OS"))
