"""Owns the page that is filled in by hand: the sample, what to change after a fitting, who approves.

The roles and what is asked of a sample are common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.document import Page
from specc.document.table import Column, Row, Table

if TYPE_CHECKING:
    from specc.document.sheet import Sheet

_COMMENTS = 8  # rows that fit on the page with all else
_SAMPLE = ("Sample received", "Sample measured", "Sample fitted")
_ROLES = ("Design", "Pattern", "Sample room", "Production")
_DATE = Column("Date", width=24.0, blank=True)


def build(sheet: Sheet) -> Page:
    """The page; it stands in every sheet."""
    lead = (
        f"To be filled in by hand, for the sample in size {sheet.header.sample}. What is agreed goes into the"
        " spec as a new revision, and the sheet is made anew."
    )
    return Page("approvals", "Comments and approvals", lead, (_sample(), _comments(), _approvals()))


def _sample() -> Table:
    columns = (
        Column("", width=36.0),
        _DATE,
        Column("By", width=36.0, blank=True),
        Column("Remarks", blank=True),
    )
    return Table("sample", "Sample", columns, tuple(Row((what, "", "", "")) for what in _SAMPLE))


def _comments() -> Table:
    columns = (
        _DATE,
        Column("Place on the garment", width=44.0, blank=True),
        Column("What to change", blank=True),
        Column("By", width=26.0, blank=True),
    )
    note = "A place as the sheet names it: a piece, an edge, a seam, or the letter of a point of measure."
    return Table("comments", "Comments after fitting", columns, (Row(("",) * 4),) * _COMMENTS, note=note)


def _approvals() -> Table:
    columns = (
        Column("", width=36.0),
        Column("Name", width=48.0, blank=True),
        _DATE,
        Column("Signature", blank=True),
    )
    return Table("approvals-signed", "Approvals", columns, tuple(Row((role, "", "", "")) for role in _ROLES))
