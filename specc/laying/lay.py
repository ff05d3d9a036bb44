"""Owns the stage: cut pieces and an order in, lays out.

Knows nothing of files, nor of how layouts are searched: known ones are handed in, others are asked for.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.laying.key import key
from specc.laying.orders import spreads
from specc.laying.plan import ClothLays, LaidPiece, Lay, Ratio, Way
from specc.laying.shapes import area, shapes
from specc.model.spreading import CUTTINGS, FOLDED
from specc.packing import Strip, faults, outline_of, too_large

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from specc.diagnostics import Diagnostic
    from specc.laying.orders import Spread
    from specc.laying.shapes import Laid
    from specc.making.assembly import CutPiece
    from specc.model.garment import Garment
    from specc.model.material import Cloth
    from specc.packing import Layout
    from specc.pattern.piece import Piece

    Cut = tuple[Piece, CutPiece, int]

TOO_NARROW = declare(
    "SPC601", "cloth-too-narrow", Severity.ERROR, "`{piece}` is wider than the cloth `{cloth}` as it is spread"
)
UNSOUND = declare("SPC602", "lay-does-not-hold", Severity.WARNING, "the lay file's lay of {lay} is wrong: {fault}")

_CLOSE = 0.75  # of a lay covered, for the guess whether it fits the table (common practice, no source)


@dataclass(frozen=True, slots=True)
class Wanted:
    """A lay to be found: the strip, its key, and what it is called."""

    key: str
    called: str
    strip: Strip


@dataclass(frozen=True, slots=True)
class SizeCuts:
    """What is cut of a cloth for one garment of a size: pieces, their cut outlines, how many of each."""

    size: str
    pieces: tuple[Cut, ...]


class ClothLayer:
    """The lays of one cloth; its usable width must be known."""

    def __init__(self, cloth: Cloth, sizes: tuple[SizeCuts, ...], order: tuple[Ratio, ...]) -> None:
        """`order` names sizes of `sizes`; an empty one stands for one garment of each size."""
        assert cloth.usable is not None
        self._cloth = cloth
        self._sizes = {each.size: each.pieces for each in sizes}
        self._ordered = bool(order)
        self._order = order or tuple(Ratio(each.size, 1) for each in sizes)
        self._spreading = cloth.spreading
        self._width = float(cloth.usable.value) / (2.0 if self._spreading.spread == FOLDED else 1.0)

    def too_narrow(self) -> tuple[Diagnostic, ...]:
        """The pieces that do not go on the cloth, each once, with what would do."""
        found: dict[str, list[tuple[str, float]]] = {}
        for size in self._sizes:
            laid = self._laid((Ratio(size, 1),))
            for shape, needed in too_large(self._strip(laid)):
                piece = next(one.piece for one in laid if one.shape.name == shape.name)
                found.setdefault(piece, []).append((size, needed))
        return tuple(self._told(piece, sizes) for piece, sizes in found.items())

    def _told(self, piece: str, sizes: list[tuple[str, float]]) -> Diagnostic:
        twice = 2.0 if self._spreading.spread == FOLDED else 1.0
        said = TOO_NARROW.at(self._cloth.origin, piece=piece, cloth=self._cloth.name)
        for size, needed in sizes:
            lacks = (needed - self._width) * twice
            said = said.note(f"size {size}: it needs {needed * twice:.0f} mm of usable width, {lacks:.0f} mm more")
        return said.help("take a wider cloth, spread it open, or divide the piece with `split`")

    def wanted(self, cutting: str) -> Iterator[tuple[Spread, Wanted]]:
        """The lays of a way of cutting, in the order of the work."""
        for spread in spreads(cutting, self._order, self._fits, plies=self._spreading.plies):
            strip = self._strip(self._laid(spread.ratio))
            sizes = ", ".join(f"{each.count} of size {each.size}" for each in spread.ratio)
            yield spread, Wanted(key(strip), f"`{self._cloth.name}`, {sizes}", strip)

    def lay(self, cutting: str, layouts: Mapping[str, Layout], known: frozenset[str]) -> ClothLays:
        """The lays of a way of cutting; `layouts` has each that is wanted, those of `known` from a lay file."""
        lays = tuple(
            self._lay(spread, wanted, layouts[wanted.key], searched=wanted.key in known)
            for spread, wanted in self.wanted(cutting)
        )
        ways = tuple(Way(way, self._length(way, layouts)) for way in CUTTINGS) if self._ordered else ()
        order = self._length(cutting, layouts) if self._ordered else None
        per_garment = tuple(self._share(size, lays) for size in self._sizes)
        return ClothLays(self._cloth.name, cutting, self._spreading.spread, lays, per_garment, order, ways)

    def _lay(self, spread: Spread, wanted: Wanted, layout: Layout, *, searched: bool) -> Lay:
        named = {one.shape.name: one for one in self._laid(spread.ratio)}
        pieces = []
        for placed in layout.placed:
            laid = named[placed.shape]
            outline = outline_of(wanted.strip, placed)
            pieces.append(LaidPiece(laid.size, laid.piece, laid.mirrored, laid.shape.pinned, outline))
        length = self._with_ends(layout)
        share = wanted.strip.area / (length * self._width)
        return Lay(spread.ratio, spread.plies, spread.times, self._width, length, share, searched, tuple(pieces))

    def _length(self, cutting: str, layouts: Mapping[str, Layout]) -> float | None:
        """The cloth that a way of cutting takes; None where one of its lays is not known."""
        total = 0.0
        for spread, wanted in self.wanted(cutting):
            if wanted.key not in layouts:
                return None
            total += self._with_ends(layouts[wanted.key]) * spread.plies * spread.times
        return total

    def _share(self, size: str, lays: tuple[Lay, ...]) -> float:
        """The length that a garment of the size takes: the lays' lengths divided among garments by area."""
        own = area(self._laid((Ratio(size, 1),)))
        length = garments = 0.0
        for lay in lays:
            count = next((each.count for each in lay.ratio if each.size == size), 0) * lay.plies * lay.times
            length += count * own / area(self._laid(lay.ratio)) * lay.length
            garments += count
        return length / garments if garments else 0.0

    def _with_ends(self, layout: Layout) -> float:
        return layout.length + float(self._spreading.ends.value)

    def _fits(self, ratio: tuple[Ratio, ...]) -> bool:
        """Whether the lay would be short enough for the table, going by its area."""
        return area(self._laid(ratio)) / (self._width * _CLOSE) <= float(self._spreading.table.value)

    def _laid(self, ratio: tuple[Ratio, ...]) -> tuple[Laid, ...]:
        return tuple(
            laid for each in ratio for laid in shapes(each.size, self._cloth, self._sizes[each.size], each.count)
        )

    def _strip(self, laid: tuple[Laid, ...]) -> Strip:
        return Strip(self._width, float(self._spreading.gap.value), tuple(one.shape for one in laid))


def sound(wanted: Wanted, layout: Layout) -> Diagnostic | None:
    """What is wrong with a layout that is known; None when it can be cut."""
    found = faults(wanted.strip, layout)
    if not found:
        return None
    told = UNSOUND.at(None, lay=wanted.called, fault=found[0])
    for fault in found[1:4]:
        told = told.note(fault)
    return told.help("it is left alone and a quick plan made; `specc lay` writes the file anew")


def lay(
    garment: Garment,
    cut_from: Mapping[str, tuple[SizeCuts, ...]],
    known: Mapping[str, Layout],
    plan: Callable[[Strip], Layout],
) -> tuple[tuple[ClothLays, ...], tuple[Diagnostic, ...]]:
    """The lays of every cloth whose width is known; `cut_from` says what is cut of each, by its name.

    Layouts of `known`, by their strips' keys, are used where they hold; all others are asked of `plan`.
    """
    said: list[Diagnostic] = []
    found: list[ClothLays] = []
    order = tuple(Ratio(each.size, each.count) for each in garment.header.order)
    for cloth in garment.cloths:
        sizes = cut_from.get(cloth.name, ())
        if cloth.usable is None or not any(each.pieces for each in sizes):
            continue
        layer = ClothLayer(cloth, sizes, order)
        narrow = layer.too_narrow()
        if narrow:
            said += narrow
            continue
        layouts: dict[str, Layout] = {}
        for cutting in CUTTINGS:
            for _, wanted in layer.wanted(cutting):
                if wanted.key in known and wanted.key not in layouts:
                    wrong = sound(wanted, known[wanted.key])
                    if wrong is None:
                        layouts[wanted.key] = known[wanted.key]
                    else:
                        said.append(wrong)
        searched = frozenset(layouts)
        for _, wanted in layer.wanted(garment.header.cutting):
            if wanted.key not in layouts:
                layouts[wanted.key] = plan(wanted.strip)
        found.append(layer.lay(garment.header.cutting, layouts, searched))
    return tuple(found), tuple(said)
