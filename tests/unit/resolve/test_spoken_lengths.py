"""Lengths in the words of a method are of the kind of unit that the sheet is printed in."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specc.resolve.spoken_lengths import length_told, spoken_length
from specc.units import UNITS, Quantity


@pytest.mark.parametrize(
    ("number", "unit", "sheet", "said"),
    [
        ("1/4", "in", "in", "1/4 in"),
        ("1/4", "in", "cm", "6.4 mm"),
        ("1/2", "in", "mm", "12.7 mm"),
        ("2", "in", "cm", "5.1 cm"),
        ("2", "in", "mm", "50.8 mm"),
        ("1", "yd", "cm", "91.4 cm"),
        ("6", "mm", "cm", "6 mm"),
        ("2.5", "cm", "mm", "2.5 cm"),
        ("0.635", "cm", "cm", "6.4 mm"),
        ("6", "mm", "in", "1/4 in"),
        ("5", "cm", "in", "1 15/16 in"),
        ("6", "%", "cm", "6%"),
    ],
)
def test_a_length_is_told_in_the_unit_of_the_sheet(number: str, unit: str, sheet: str, said: str) -> None:
    assert spoken_length(Quantity.of(Fraction(number), UNITS[unit]), sheet) == said


@pytest.mark.parametrize("words", ["1/4 in", "6 mm", "1 1/2 in", "0.5 cm"])
def test_a_length_is_known_by_its_unit(words: str) -> None:
    found = length_told(words)
    assert found is not None
    assert found.value > 0


@pytest.mark.parametrize("words", ["over", "stitch-length", "6", "6 deg", "1/0 in", "in", "a in"])
def test_other_words_are_no_length(words: str) -> None:
    assert length_told(words) is None
