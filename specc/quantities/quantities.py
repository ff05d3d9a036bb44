"""Owns what a garment takes and measures, in every size and for the order.

Knows nothing of how it is printed. Lengths are millimetres, areas square millimetres, money exact.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specc.laying import ClothLays
    from specc.laying.bias import BiasCut
    from specc.laying.offcuts import Offcuts
    from specc.making.assembly import CutPiece, Zone
    from specc.quantities.pieces import PieceCount
    from specc.units import Dimension


@dataclass(frozen=True, slots=True)
class Addition:
    """A length added to a trim: `what` is overlap, join, turned ends or ends beyond the edge."""

    what: str
    length: float


@dataclass(frozen=True, slots=True)
class TrimCut:
    """A length of trim to cut, `count` times a garment, for one finish or seam.

    `seam_length` is what it is sewn to, `held` what is saved by holding it in; `cut_length` = seam_length -
    held + additions. Where the length is `stated`, what is held is what the trim is shorter by, or less than
    nothing where it is longer. `cut_width` is None where the trim is used as bought.
    """

    trim: str
    used_on: str
    count: int
    closed: bool
    zones: tuple[Zone, ...]
    seam_length: float
    held: float
    stated: bool
    additions: tuple[Addition, ...]
    cut_length: float
    cut_width: float | None


@dataclass(frozen=True, slots=True)
class StripCut:
    """A strip cut from a cloth `count` times a garment: of the trim `name`, or the piece of that name.

    `wide` is its width, `length` without joins. `bias` says that it is cut at 45 degrees.
    """

    name: str
    cloth: str
    wide: float
    used_on: str
    length: float
    count: int
    bias: bool
    piece: bool


@dataclass(frozen=True, slots=True)
class ClothUse:
    """Area of the pieces cut from a cloth for one garment, allowances included.

    Mirrored halves and pairs counted.
    """

    cloth: str
    area: float


@dataclass(frozen=True, slots=True)
class ThreadUse:
    """The thread of one pass in one garment: pass `number` of `on`, over `length`, with an ISO 4915 stitch.

    `ratio` is thread over stitching, as `by` has it; both are None, and so are the lengths, where no figure
    is known. `needle` and `other` (bobbin, loopers, covers) are threads by name, None where none is declared
    for it. Lengths are without waste.
    """

    on: str
    number: int
    stitch: str
    length: float
    by: str | None
    ratio: float | None
    needle: str | None
    needle_length: float | None
    other: str | None
    other_length: float | None


@dataclass(frozen=True, slots=True)
class Measured:
    """A point of measure in one size, in base units (mm for lengths)."""

    name: str
    value: float


@dataclass(frozen=True, slots=True)
class SizeQuantities:
    """What one garment of a size takes and measures."""

    size: str
    cuts: tuple[CutPiece, ...]
    trims: tuple[TrimCut, ...]
    strips: tuple[StripCut, ...]
    pieces: tuple[PieceCount, ...]
    cloths: tuple[ClothUse, ...]
    threads: tuple[ThreadUse, ...]
    measures: tuple[Measured, ...]


@dataclass(frozen=True, slots=True)
class BiasPlan:
    """How the strips of the trim `name`, or of that `piece`, `wide` across, are cut on the bias of a cloth.

    `pieces` are those of the order (of one garment of each size where nothing is `ordered`): size, use,
    length; `cuts` the ways in which they can be cut, `chosen` the one that is: its joins are of the pieces.
    `per_garment` is the length of strip in one garment of each size. Cloth is bought longer by `grown`, since
    it shrinks. `offcuts` are those that are taken of each lay of the cloth; none where that is not the way.
    """

    name: str
    piece: bool
    cloth: str
    wide: float
    pieces: tuple[tuple[str, str, float], ...]
    cuts: tuple[BiasCut, ...]
    chosen: BiasCut
    ordered: bool
    per_garment: tuple[float, ...]
    grown: float
    offcuts: tuple[Offcuts, ...] = ()


@dataclass(frozen=True, slots=True)
class Term:
    """What a calculation asks for, as written, and what it came to in every size (base units)."""

    text: str
    dimension: Dimension
    values: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class PointOfMeasure:
    """A point of measure over the sizes; `values` and `steps` (to the next size) in base units.

    Tolerances are sizes. `terms` are those of which it is made, where it is more than one of them.
    """

    name: str
    title: str
    dimension: Dimension
    plus: float | None
    minus: float | None
    values: tuple[float, ...]
    steps: tuple[float, ...]
    terms: tuple[Term, ...] = ()


@dataclass(frozen=True, slots=True)
class BillLine:
    """A line of the bill of materials.

    `kind`: cloth, trim, thread, label. `per_garment` by size and `order` are net amounts in `unit` (yd, m,
    piece, ...); `buy` is what is bought, in `buy_unit`: whole rolls or packs where it is sold so, rounded up;
    one holds `in_one` of `unit`, and the `price` is of one. Amounts that are not computed are empty or None.
    `cost` is None without a price, and rounded to what can be paid. `waste` is the share added to `order` for
    what is lost, `gross` the order with it. `basis` says in words how the amount was found.
    `colourways` are those that take this colour, none where all take the same; `share` is theirs of the
    order.
    """

    kind: str
    name: str
    title: str
    used_on: tuple[str, ...]
    unit: str
    per_garment: tuple[float, ...]
    order: float | None
    buy: float | None
    buy_unit: str
    price: Fraction | None
    currency: str | None
    cost: Fraction | None
    basis: str
    waste: float = 0.0
    gross: float | None = None
    supplier: str | None = None
    reference: str | None = None
    colour: str | None = None
    in_one: float = 1.0
    colourways: tuple[str, ...] = ()
    share: Fraction = Fraction(1)


@dataclass(frozen=True, slots=True)
class Work:
    """Minutes of work on one garment; None is what nobody has stated."""

    sewing: float | None
    handling: float | None
    cutting: float | None
    finishing: float | None

    @property
    def total(self) -> float | None:
        """All that is stated; None where nothing is."""
        parts = (self.sewing, self.handling, self.cutting, self.finishing)
        stated = [part for part in parts if part is not None]
        return sum(stated) if stated else None


@dataclass(frozen=True, slots=True)
class SizeCost:
    """What one garment of a size costs, in the currency of all sums; None is what cannot be said."""

    size: str
    materials: Fraction | None
    minutes: Work
    work: Fraction | None
    total: Fraction | None
    price: Fraction | None


@dataclass(frozen=True, slots=True)
class Cost:
    """What the garment costs. `currency` is None where amounts in several have no rate.

    `order` is what the materials of the order cost as they are bought; `unpriced` are materials without a
    price, by their titles; `currencies` all in which there are prices.
    """

    currency: str | None
    sizes: tuple[SizeCost, ...]
    order: Fraction | None
    unpriced: tuple[str, ...]
    currencies: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ExpectResult:
    """A demand of the designer and what came out, by size (base units); `limits` if each size has its own."""

    text: str
    because: str | None
    dimension: Dimension
    left: tuple[float, ...]
    right: tuple[float, ...]
    met: tuple[bool, ...]
    limits: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Measures:
    """What the garment measures, and whether the designer's demands are met, in every size of its range."""

    points_of_measure: tuple[PointOfMeasure, ...]
    expects: tuple[ExpectResult, ...]


@dataclass(frozen=True, slots=True)
class Quantities:
    """What the garment takes and measures, in every size of its range and for the order.

    `lays` are those of the cloths whose width is known, where any were made; `bias` the strips cut from them.
    `cost` is None where nothing has a price. From amounts that are not `priced` all prices are taken out; the
    text of the spec has them, and is not to be shown.
    """

    sizes: tuple[SizeQuantities, ...]
    points_of_measure: tuple[PointOfMeasure, ...]
    lays: tuple[ClothLays, ...]
    bias: tuple[BiasPlan, ...]
    bill: tuple[BillLine, ...]
    cost: Cost | None
    expects: tuple[ExpectResult, ...]
    priced: bool = True
