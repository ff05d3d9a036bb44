"""Owns what a whole checked garment is.

Knows nothing of text, geometry or paper.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from specc.model.alteration import Alteration
    from specc.model.attachment import Attachment
    from specc.model.block import Block
    from specc.model.chart import Chart
    from specc.model.colourway import Colourway
    from specc.model.construction import Finish, Seam
    from specc.model.costing import Costing
    from specc.model.expression import Expression, PartRef
    from specc.model.material import Buying, Cloth, Packing, Price, Thread, Trim
    from specc.model.plies import CutAgain
    from specc.source import SourceFile, Span
    from specc.units import Dimension, Quantity

STATUSES: Final = ("draft", "for sampling", "approved")


@dataclass(frozen=True, slots=True)
class Revision:
    """One revision: its letter, its date as written (year-month-day), what changed."""

    name: str
    date: str
    text: str
    origin: Span


@dataclass(frozen=True, slots=True)
class Ordered:
    """How many are made of a size."""

    size: str
    count: int


@dataclass(frozen=True, slots=True)
class Header:
    """What stands in the title block.

    `status` is how far the style has come: one of STATUSES, or None where nothing is said of it. `unit` is
    the length unit of the sheet: in, cm or mm. `wearer`: adult, child.

    `cutting`: how the order is cut, one of CUTTINGS of the model of spreading. `thread_by`: what thread is
    reckoned by, one of THREAD_BY of the library.

    `puts_on`: `over the head`, `stepping in`, or None when the garment opens. `paper`: A4 or Letter.
    """

    name: str
    title: str
    style: str
    maker: str | None
    season: str | None
    status: str | None
    wearer: str
    puts_on: str | None
    sizes: tuple[str, ...]
    sample: str
    order: tuple[Ordered, ...]
    cutting: str
    thread_by: str
    unit: str
    paper: str
    revisions: tuple[Revision, ...]
    origin: Span


@dataclass(frozen=True, slots=True)
class Measure:
    """A point of measure: how it is computed, and what the made garment may differ by."""

    name: str
    title: str
    value: Expression
    dimension: Dimension
    plus: Expression | None
    minus: Expression | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Expect:
    """What the designer demands of the result in every size, in words; `compare` is `>=` or `<=`.

    `right` is one value for all sizes, or `by_size` one for each size that is made.
    """

    text: str
    left: Expression
    compare: str
    right: tuple[Expression, ...]
    dimension: Dimension
    because: str | None
    origin: Span
    by_size: bool = False


@dataclass(frozen=True, slots=True)
class Accept:
    """A code the designer accepts, everywhere or on one part (`on`, as written), and why."""

    code: str
    on: str | None
    because: str
    origin: Span


@dataclass(frozen=True, slots=True)
class CareLine:
    """One care instruction in words.

    `process` is wash, bleach, dry, iron or clean (the order of ISO 3758).
    """

    process: str
    text: str
    origin: Span


@dataclass(frozen=True, slots=True)
class Label:
    """A label, what it says, the edge it is sewn in at, and how it is bought where that is said."""

    name: str
    at: PartRef
    says: tuple[str, ...]
    price: Price | None
    sold_in: Quantity | None  # packs of so many
    buying: Buying
    supplier: str | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Note:
    """A remark, about the garment or one part (`on`, as written)."""

    text: str
    on: str | None
    origin: Span


@dataclass(frozen=True, slots=True)
class Used:
    """A chart, block or method that the garment is made by, or not; `origin` is the whole of its text."""

    kind: str
    name: str
    origin: Span


@dataclass(frozen=True, slots=True)
class Garment:
    """A checked garment.

    `sources` are the files it was read from, the spec first; `used` is what of charts, blocks and methods in
    them it speaks of, `unused` what its own files declare and nothing speaks of: there `origin` is the name.
    """

    header: Header
    chart: Chart | None
    blocks: tuple[Block, ...]
    cloths: tuple[Cloth, ...]
    cut_again: tuple[CutAgain, ...]
    trims: tuple[Trim, ...]
    threads: tuple[Thread, ...]
    alterations: tuple[Alteration, ...]
    seams: tuple[Seam, ...]
    finishes: tuple[Finish, ...]
    measures: tuple[Measure, ...]
    expects: tuple[Expect, ...]
    accepts: tuple[Accept, ...]
    care: tuple[CareLine, ...]
    labels: tuple[Label, ...]
    notes: tuple[Note, ...]
    sources: tuple[SourceFile, ...]
    costing: Costing | None = None
    attachments: tuple[Attachment, ...] = ()
    packing: tuple[Packing, ...] = ()
    colourways: tuple[Colourway, ...] = ()
    used: tuple[Used, ...] = ()
    unused: tuple[Used, ...] = ()
