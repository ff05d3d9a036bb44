"""The language reference names every word and every unit, and nothing that is neither."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from specc.syntax import wording
from specc.units import CURRENCIES, unit
from tests.unit.syntax.reading import read

if TYPE_CHECKING:
    from pathlib import Path

_QUOTED = re.compile(r"`([^`]+)`")


def table(root: Path, heading: str) -> list[list[str]]:
    """The rows of the first table below a heading of the reference, as cells."""
    section = root.joinpath("grammar/README.md").read_text(encoding="utf-8").split(f"## {heading}\n")[1]
    rows = [line for line in section.partition("\n## ")[0].splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in row.strip("|").split("|")] for row in rows[2:]]


def test_the_table_of_words_is_that_of_the_grammar(root: Path) -> None:
    told = [word for _, words in table(root, "All words") for word in _QUOTED.findall(words)]

    assert set(told) == set(wording.keywords())


def test_the_table_of_units_is_what_is_read_behind_a_number(root: Path) -> None:
    told = [symbol for symbols, _ in table(root, "Numbers and units") for symbol in _QUOTED.findall(symbols)]

    assert all(unit(symbol) for symbol in told)
    for symbol in (*told, "g/m²", "oz/yd²"):
        assert read(f"expect 1 {symbol} >= 2 {symbol}")[1] == (), symbol
    assert {symbol for symbol in told if symbol in CURRENCIES} == {"USD", "EUR", "JPY"}
