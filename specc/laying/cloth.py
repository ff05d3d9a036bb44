"""Owns the lays of one cloth: what lies in each, whether it fits, what comes of its layouts.

Knows nothing of files, nor of how layouts are searched.
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
from specc.packing import Strip, lain, outline_of, too_large
from specc.units import format_length

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from specc.diagnostics import Diagnostic
    from specc.laying.cutting import Cut, SizeCuts
    from specc.laying.orders import Spread
    from specc.laying.shapes import Laid
    from specc.model.material import Cloth
    from specc.packing import Layout

TOO_NARROW = declare(
    "SPC601",
    "cloth-too-narrow",
    Severity.ERROR,
    "`{piece}` is wider than the cloth `{cloth}` as it is spread",
)
ROLL_TOO_SHORT = declare(
    "SPC605",
    "roll-shorter-than-lay",
    Severity.ERROR,
    "a roll of `{cloth}` is {roll} long, and the lay of {sizes} takes {length} in one length",
)
_CLOSE = 0.75  # of a lay covered, for the guess whether it fits the table (common practice, no source)


@dataclass(frozen=True, slots=True)
class Wanted:
    """A lay to be found: the strip, its key, and what it is called."""

    key: str
    called: str
    strip: Strip


class ClothLayer:
    """The lays of one cloth; its usable width must be known."""

    def __init__(self, cloth: Cloth, sizes: tuple[SizeCuts, ...], order: tuple[Ratio, ...]) -> None:
        """`order` names sizes of `sizes`; one of nothing stands for one garment of each size."""
        assert cloth.usable is not None
        self.cloth = cloth
        self._sizes: dict[str, tuple[Cut, ...]] = {each.size: each.cuts for each in sizes}
        ordered = tuple(each for each in order if each.count)
        self._ordered = bool(ordered)
        self._order = ordered or tuple(Ratio(each.size, 1) for each in sizes)
        self._spreading = cloth.spreading
        self._width = float(cloth.usable.value) / (2.0 if self._spreading.spread == FOLDED else 1.0)
        self._areas = {size: area(self._laid((Ratio(size, 1),))) for size in self._sizes}

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
        assert self.cloth.usable is not None
        twice = 2.0 if self._spreading.spread == FOLDED else 1.0
        unit = self.cloth.usable.unit.symbol
        said = TOO_NARROW.at(self.cloth.origin, piece=piece, cloth=self.cloth.name)
        for size, needed in sizes:
            wide, more = (format_length(each * twice, unit) for each in (needed, needed - self._width))
            said = said.note(f"size {size} needs {wide} of usable width, {more} more")
        return said.help("take a wider cloth, spread it open, or divide the piece with `split`")

    def beyond_roll(self, lays: ClothLays) -> Iterator[Diagnostic]:
        """One diagnostic where lays are longer than a roll of the cloth, with the longest and the others."""
        roll = self.cloth.sold_in
        if roll is None:
            return
        longer = [lay for lay in lays.lays if lay.length > float(roll.value)]
        longer.sort(key=lambda lay: -lay.length)
        said = [(_sizes(lay.ratio), format_length(lay.length, roll.unit.symbol)) for lay in longer]
        if said:
            (sizes, length), *others = dict.fromkeys(said)
            told = ROLL_TOO_SHORT.at(
                self.cloth.origin, cloth=self.cloth.name, roll=str(roll), sizes=sizes, length=length
            )
            for of, long in others:
                told = told.note(f"{of}: {long}")
            yield told.help("say the length of the rolls it is really sold in, or lay it otherwise")

    def wanted(self, cutting: str) -> Iterator[tuple[Spread, Wanted]]:
        """The lays of a way of cutting, in the order of the work."""
        for spread in spreads(cutting, self._order, self._fits, plies=self._spreading.plies):
            strip = self._strip(self._laid(spread.ratio))
            yield spread, Wanted(key(strip), f"`{self.cloth.name}`, {_sizes(spread.ratio)}", strip)

    def lay(self, cutting: str, layouts: Mapping[str, Layout], known: frozenset[str]) -> ClothLays:
        """The lays of a way of cutting; `layouts` has each that is wanted, `known` are from a lay file."""
        lays = tuple(
            self._lay(spread, wanted, layouts[wanted.key], searched=wanted.key in known)
            for spread, wanted in self.wanted(cutting)
        )
        ways = tuple(Way(way, self._length(way, layouts)) for way in CUTTINGS) if self._ordered else ()
        order = self._length(cutting, layouts) if self._ordered else None
        per_garment = tuple(self._share(size, lays) for size in self._sizes)
        return ClothLays(self.cloth.name, cutting, self._spreading.spread, lays, per_garment, order, ways)

    def _lay(self, spread: Spread, wanted: Wanted, layout: Layout, *, searched: bool) -> Lay:
        named = {one.shape.name: one for one in self._laid(spread.ratio)}
        pieces = []
        for placed in layout.placed:
            laid = named[placed.shape]
            outline = outline_of(wanted.strip, placed)
            grain = tuple(lain(end, placed) for end in laid.grain)
            pieces.append(LaidPiece(laid.size, laid.piece, laid.mirrored, laid.shape.pinned, outline, grain))
        length = self._with_ends(layout)
        share = wanted.strip.area / (length * self._width)
        return Lay(
            spread.ratio, spread.plies, spread.times, self._width, length, share, searched, tuple(pieces)
        )

    def _length(self, cutting: str, layouts: Mapping[str, Layout]) -> float | None:
        """The cloth that a way of cutting takes; None where one of its lays is not known."""
        total = 0.0
        for spread, wanted in self.wanted(cutting):
            if wanted.key not in layouts:
                return None
            total += self._with_ends(layouts[wanted.key]) * spread.plies * spread.times
        return total

    def _share(self, size: str, lays: tuple[Lay, ...]) -> float:
        """The length that a garment of the size takes: the lays' lengths divided among garments by area.

        A size that is in no lay takes what it would take at their average.
        """
        own, length, garments = self._areas[size], 0.0, 0
        for lay in lays:
            count = next((each.count for each in lay.ratio if each.size == size), 0) * lay.plies * lay.times
            length += count * lay.length * own / self._area(lay.ratio)
            garments += count
        if garments:
            return length / garments
        laid = sum(lay.length * lay.plies * lay.times for lay in lays)
        return own * laid / sum(self._area(lay.ratio) * lay.plies * lay.times for lay in lays)

    def _area(self, ratio: tuple[Ratio, ...]) -> float:
        return sum(self._areas[each.size] * each.count for each in ratio)

    def _with_ends(self, layout: Layout) -> float:
        return layout.length + float(self._spreading.ends.value)

    def _fits(self, ratio: tuple[Ratio, ...]) -> bool:
        """Whether the lay would be short enough for the table and for a roll, going by its area."""
        roll = self.cloth.sold_in
        longest = min(float(each.value) for each in (self._spreading.table, roll) if each is not None)
        return self._area(ratio) / (self._width * _CLOSE) <= longest

    def _laid(self, ratio: tuple[Ratio, ...]) -> tuple[Laid, ...]:
        return tuple(
            laid
            for each in ratio
            for laid in shapes(each.size, self.cloth, self._sizes[each.size], each.count)
        )

    def _strip(self, laid: tuple[Laid, ...]) -> Strip:
        return Strip(self._width, float(self._spreading.gap.value), tuple(one.shape for one in laid))


def _sizes(ratio: tuple[Ratio, ...]) -> str:
    return ", ".join(f"{each.count} of size {each.size}" for each in ratio)
