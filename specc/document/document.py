"""Owns what a document is: a title block and pages made of blocks.

Knows nothing of garments or of formats.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from specc.document.table import Table

if TYPE_CHECKING:
    from specc.document.data import DataTable, Members
    from specc.document.drawing import Drawing
    from specc.document.link import Link
    from specc.document.printed import Text
    from specc.source import SourceFile


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading inside a page; `number` stands before it where the things of a page are counted.

    What leads to it from elsewhere calls it by its `place`.
    """

    kind: ClassVar[str] = "heading"

    text: Text
    number: str = ""
    detail: Text = ""
    place: str = ""
    links: tuple[Link, ...] = ()


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph; `style` is `plain` or `note` (small)."""

    kind: ClassVar[str] = "paragraph"

    text: Text
    style: str = "plain"


@dataclass(frozen=True, slots=True)
class Fact:
    """A label and its value, which may lead to another place of the sheet."""

    label: str
    value: Text
    to: str = ""


@dataclass(frozen=True, slots=True)
class Facts:
    """Facts, one under the other."""

    kind: ClassVar[str] = "facts"

    rows: tuple[Fact, ...]


@dataclass(frozen=True, slots=True)
class Caution:
    """Something to beware of: what, what to do, the law or practice behind it."""

    kind: ClassVar[str] = "caution"

    title: str
    text: str
    law: str


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing and the line below it."""

    kind: ClassVar[str] = "figure"

    drawing: Drawing
    caption: Text = ""


@dataclass(frozen=True, slots=True)
class Listing:
    """Lines of text, numbered from 1, kept as they are."""

    kind: ClassVar[str] = "listing"

    name: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Group:
    """Blocks that belong together: `together` keeps them on one page, `stack` sets them one below the other.

    `beside` sets two of them side by side, the first `first` millimetres of paper wide.
    """

    kind: ClassVar[str] = "group"

    layout: str
    blocks: tuple[Block, ...]
    first: float = 0.0


Block = Heading | Paragraph | Facts | Caution | Figure | Table | Listing | Group
"""Whatever stands on a page."""


@dataclass(frozen=True, slots=True)
class Page:
    """A part of the sheet that begins on a new page; `kind` is the name of the module that made it."""

    kind: str
    title: str
    lead: Text
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """What is said on every page: which garment, which revision. `words` are to find the sheet by."""

    style: str
    title: str
    maker: str
    season: str
    revision: str
    date: str
    status: str
    program: str
    words: tuple[str, ...] = ()

    @property
    def state(self) -> str:
        """The revision in words, and how far the style has come."""
        revision = f"Revision {self.revision}, {self.date}" if self.revision else "No revision"
        return f"{revision}, {self.status}" if self.status else revision

    @property
    def subject(self) -> str:
        """What the sheet is about, in a line."""
        return f"Technical sheet, style {self.style}. {self.state}"

    @property
    def foot(self) -> str:
        """Who made it, for when, with what."""
        return ", ".join(part for part in (self.maker, self.season, self.program) if part)


@dataclass(frozen=True, slots=True)
class Document:
    """A whole sheet of a garment made in `sizes`. `paper` is A4 or Letter.

    `units` are those of its lengths, its own and the other one, each as a word.
    `drawings` are those that are also handed out as files. `tables` and `result` carry the same values for
    programs, as plain numbers. `enclosed` is the source that goes inside a file of the sheet, the spec first.
    """

    language: str
    paper: str
    units: tuple[str, str]
    sizes: tuple[str, ...]
    block: TitleBlock
    pages: tuple[Page, ...]
    drawings: tuple[Drawing, ...]
    tables: tuple[DataTable, ...]
    result: Members
    enclosed: tuple[SourceFile, ...] = ()
