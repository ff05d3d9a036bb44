"""Owns how much thread stitches take: ratios and formulas, each as its source has it.

Knows nothing of what is sewn.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Final

from specc.library.rows import rows

TABLE, GUIDE, FORMULAS = "ratio table", "ratio guide", "formulas"
THREAD_BY: Final = (TABLE, GUIDE, FORMULAS)
"""What thread may be reckoned by; what the one does not know is asked of the others in this order."""


@dataclass(frozen=True, slots=True)
class Stitching:
    """A row of stitches: their number in ISO 4915, how many to the inch, thickness of cloth in inches.

    None is what nobody has said.
    """

    stitch: str
    per_inch: float | None
    thick: float | None


@dataclass(frozen=True, slots=True)
class Consumption:
    """Thread over stitching: of the needles, and of bobbin, loopers and covers; and whose figure it is.

    Without a known share `needle` is None, and `ratio` of all threads together.
    """

    ratio: float
    needle: float | None
    by: str


@dataclass(frozen=True, slots=True)
class Ratio:
    """A ratio of a table."""

    table: str
    stitch: str
    ratio: float
    needle: float | None


@dataclass(frozen=True, slots=True)
class Formula:
    """Thread over stitching: constant + thick * S * T + wide * S * W, in stitches to the inch and inches."""

    stitch: str
    constant: float
    thick: float
    wide: float
    width: float
    needle: float | None
    source: str

    def ratio(self, per_inch: float, thick: float, width: float | None = None) -> float:
        """Thread over stitching; `width` is the formula's own where it is not told."""
        own = self.width if width is None else width
        return self.constant + self.thick * per_inch * thick + self.wide * per_inch * own


@cache
def ratios() -> tuple[Ratio, ...]:
    """The ratios of all tables."""
    return tuple(
        Ratio(row["table"], row["stitch"], row["ratio"], row.get("needle"))
        for row in rows("thread.toml", "ratio")
    )


@cache
def formulas() -> tuple[Formula, ...]:
    """The formulas, one a stitch type."""
    return tuple(
        Formula(
            row["stitch"],
            row["constant"],
            row["thick"],
            row.get("wide", 0.0),
            row.get("width", 0.0),
            row.get("needle"),
            row["source"],
        )
        for row in rows("thread.toml", "formula")
    )


@cache
def sources() -> tuple[tuple[str, str], ...]:
    """What each of THREAD_BY is from."""
    tables = tuple((row["name"], row["source"]) for row in rows("thread.toml", "table"))
    names = dict.fromkeys(formula.source.partition(";")[0] for formula in formulas())
    return (*tables, (FORMULAS, ", ".join(dict.fromkeys(", ".join(names).split(", ")))))


@cache
def usual_waste() -> float:
    """The share that is added for what is lost, where the thread does not say."""
    (row,) = rows("thread.toml", "waste")
    return float(row["share"])


def consumption(stitching: Stitching, by: str) -> Consumption | None:
    """What the stitching takes, asked of `by` first, one of THREAD_BY; None where none of them knows."""
    for source in (by, *(other for other in THREAD_BY if other != by)):
        found = _by_formula(stitching) if source == FORMULAS else _by_table(stitching, source)
        if found is not None:
            return found
    return None


def _by_table(stitching: Stitching, table: str) -> Consumption | None:
    for row in ratios():
        if (row.table, row.stitch) == (table, stitching.stitch):
            return Consumption(row.ratio, _needle(row.needle, stitching.stitch), table)
    return None


def _by_formula(stitching: Stitching) -> Consumption | None:
    if stitching.per_inch is None or stitching.thick is None:
        return None
    for formula in formulas():
        if formula.stitch == stitching.stitch:
            ratio = formula.ratio(stitching.per_inch, stitching.thick)
            return Consumption(ratio, _needle(formula.needle, stitching.stitch), FORMULAS)
    return None


def _needle(share: float | None, stitch: str) -> float | None:
    """Stitches of class 100 have no thread but the needle's (ISO 4915)."""
    return 1.0 if stitch.startswith("1") else share
