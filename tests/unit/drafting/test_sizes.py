from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.drafting import merged
from specc.source import SourceFile

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic

SHORT = declare("SPC998", "trial-short", Severity.ERROR, "{length} mm is too short")
FILE = SourceFile("trial.garment", "one two three")
ONE, TWO = FILE.span(0, 3), FILE.span(4, 7)


def told(*by_size: tuple[str, tuple[Diagnostic, ...]]) -> list[tuple[str, tuple[str, ...]]]:
    return [(said.message, said.notes) for said in merged(by_size)]


def test_what_is_wrong_alike_in_every_size_is_told_once() -> None:
    fault = SHORT.at(ONE, length=5)

    assert told(("S", (fault,)), ("L", (fault,))) == [("5 mm is too short", ("in every size",))]


def test_sizes_are_named_where_not_all_are_concerned() -> None:
    fault = SHORT.at(ONE, length=5)

    assert told(("S", ()), ("M", (fault,)), ("L", ())) == [("5 mm is too short", ("in size M",))]
    assert told(("S", (fault,)), ("M", ()), ("L", (fault,))) == [("5 mm is too short", ("in sizes S, L",))]


def test_what_differs_from_size_to_size_is_told_in_notes() -> None:
    found = told(("S", (SHORT.at(ONE, length=5),)), ("L", (SHORT.at(ONE, length=7),)))

    assert found == [("5 mm is too short", ("in every size", "size L: 7 mm is too short"))]


def test_two_places_are_two_faults() -> None:
    faults = (SHORT.at(ONE, length=5), SHORT.at(TWO, length=5))

    assert len(merged((("S", faults), ("L", faults)))) == 2


def test_nothing_wrong_is_nothing_told() -> None:
    assert merged((("S", ()), ("L", ()))) == ()


def test_of_many_sizes_that_differ_the_first_and_the_last_are_told() -> None:
    by_size = [(str(size), (SHORT.at(ONE, length=size),)) for size in (6, 8, 10, 12, 14)]

    assert told(*by_size) == [("6 mm is too short", ("in every size", "size 14: 14 mm is too short"))]
