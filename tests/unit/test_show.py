"""Values at the borders between stages as text."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType

from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.segment import Cubic, Line
from specc.show import show
from specc.source import SourceFile, Span
from specc.units import UNITS, Dimension, Quantity

FILE = SourceFile("a.garment", "one\ntwo\n")


class Colour(StrEnum):
    RED = "red"


@dataclass(frozen=True, slots=True)
class Small:
    name: str
    amount: float
    nothing: None = None
    none: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Large:
    title: str
    parts: tuple[Small, ...]
    by_name: MappingProxyType[str, float]


def test_a_small_value_stands_on_one_line_without_what_is_empty() -> None:
    assert show(Small("hem", 1.005)) == "Small(name hem; amount 1.00)\n"


def test_a_large_value_is_indented() -> None:
    large = Large("x" * 90, (Small("hem", 1.0), Small("neck", -0.001)), MappingProxyType({"bust": 900.0}))

    assert show(large) == (
        f"Large\n  title: {'x' * 90}\n"
        "  parts: [Small(name hem; amount 1.00), Small(name neck; amount 0.00)]\n"
        "  by name:\n    bust: 900.00\n"
    )


def test_a_long_list_has_a_line_for_each() -> None:
    assert show(tuple(Small("n" * 30, 1.0) for _ in range(3))) == (
        "\n" + f"  - Small(name {'n' * 30}; amount 1.00)\n" * 3
    ).replace("  - ", "  -: ")


def test_values_without_parts_are_read_as_the_trade_reads_them() -> None:
    assert show(Quantity.of(Fraction(9, 4), UNITS["in"])) == "2 1/4 in\n"
    assert show(Dimension.LENGTH) == "length\n"
    assert show(Span(FILE, 4, 7)) == "line 2\n"
    assert show(FILE) == "a.garment\n"
    assert show(Point(1.0, -2.5)) == "(1.00, -2.50)\n"
    assert show(Colour.RED) == "red\n"
    assert show(True) == "True\n"
    assert show("two\nlines") == "'two\\nlines'\n"


def test_a_path_is_told_by_its_stops() -> None:
    path = Path(
        (
            Line(Point(0.0, 0.0), Point(10.0, 0.0)),
            Cubic(Point(10.0, 0.0), Point(11.0, 0.0), Point(12.0, 0.0), Point(13.0, 0.0)),
        )
    )

    assert show(path) == "from (0.00, 0.00) line (10.00, 0.00) curve (13.00, 0.00), 13.00 long\n"


def test_what_has_no_order_is_put_into_one() -> None:
    assert show(frozenset(("waist", "bust", "hip"))) == "[bust, hip, waist]\n"


def test_nothing_of_a_text_is_a_path_of_this_machine() -> None:
    assert show(SourceFile("a.garment", "", "/home/somebody/a.garment")) == "a.garment\n"
