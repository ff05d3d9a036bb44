"""Owns tables whose cells are finished strings. Knows nothing of what stands in them."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar


class Align(StrEnum):
    """How the cells of a column stand."""

    LEFT = "left"
    RIGHT = "right"
    CENTRE = "centre"


@dataclass(frozen=True, slots=True)
class Column:
    """A column: its heading, how its cells stand, `over` for a heading that it shares with its neighbours.

    `numbers` says that its cells hold figures, to be set one under the other. A column to be filled in by hand is
    `blank`; `strong` sets the cells of the one column that matters most.
    """

    heading: str
    align: Align = Align.LEFT
    over: str = ""
    blank: bool = False
    strong: bool = False

    @property
    def numbers(self) -> bool:
        """Whether figures stand in it."""
        return self.align is Align.RIGHT


@dataclass(frozen=True, slots=True)
class Row:
    """A row of as many cells as there are columns; `strong` for the row that sums up or matters most."""

    cells: tuple[str, ...]
    strong: bool = False


@dataclass(frozen=True, slots=True)
class Table:
    """A table; `name` is unique in the document, `note` stands below it and says units and steps."""

    kind: ClassVar[str] = "table"

    name: str
    caption: str
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    note: str = ""

    def __post_init__(self) -> None:
        """Every row has a cell for every column; anything else is a fault of the program."""
        assert all(len(row.cells) == len(self.columns) for row in self.rows), self.name
