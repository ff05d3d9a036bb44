"""Owns tables whose cells are finished texts. Knows nothing of what stands in them."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING, ClassVar

if TYPE_CHECKING:
    from specc.document.link import Link
    from specc.document.printed import Text


class Align(StrEnum):
    """How the cells of a column stand."""

    LEFT = "left"
    RIGHT = "right"
    CENTRE = "centre"


@dataclass(frozen=True, slots=True)
class Column:
    """A column: its heading, how its cells stand, `over` for a heading that it shares with its neighbours.

    `width` is in millimetres of paper, 0 for what is left, shared out as the cells need. A column to be
    filled in by hand is `blank`; `strong` sets the cells of the one column that matters most. A column of one
    size of the garment names the `size`.
    """

    heading: Text
    align: Align = Align.LEFT
    over: Text = ""
    width: float = 0.0
    blank: bool = False
    strong: bool = False
    size: str = ""


@dataclass(frozen=True, slots=True)
class Row:
    """A row of as many texts as there are columns.

    `strong` is the row that sums up or matters most; a row `with_next` belongs to the one below it. What
    leads to it from elsewhere calls it by its `place`.
    """

    texts: tuple[Text, ...]
    strong: bool = False
    with_next: bool = False
    place: str = ""
    links: tuple[Link, ...] = ()

    @property
    def cells(self) -> tuple[str, ...]:
        """The texts as the sheet prints them."""
        return tuple(map(str, self.texts))


@dataclass(frozen=True, slots=True)
class Table:
    """A table; `name` is unique in the document, `note` stands below it and says units and steps."""

    kind: ClassVar[str] = "table"

    name: str
    caption: Text
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    note: Text = ""

    @property
    def naming(self) -> int:
        """Which column names the rows: the first that has a heading, the first of all where none has."""
        return next((place for place, column in enumerate(self.columns) if column.heading), 0)

    @property
    def is_fixed(self) -> bool:
        """Whether one column takes what the others, all of a stated width, leave."""
        return sum(column.width == 0.0 for column in self.columns) == 1

    def __post_init__(self) -> None:
        """Every row has a cell for every column; anything else is a fault of the program."""
        assert all(len(row.texts) == len(self.columns) for row in self.rows), self.name
