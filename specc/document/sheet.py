"""Owns what every page is built from: the garment, what was computed of it, what was said about it.

Knows nothing of any one page.
"""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Protocol

from specc.document.lengths import Lengths
from specc.document.printed import Origin
from specc.document.table import Align, Column

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.document.printed import Text
    from specc.flat.laid import Flat
    from specc.making.assembly import Assembly, EdgeUse, SizeAssembly
    from specc.model.construction import Finish, Seam
    from specc.model.expression import PartRef
    from specc.model.garment import Accept, Garment, Header, Label
    from specc.model.material import Cloth, Packing, Thread, Trim
    from specc.pattern.piece import Piece
    from specc.quantities.quantities import Quantities, SizeQuantities
    from specc.source import SourceFile, Span

_PAGE_HEIGHTS = MappingProxyType({"A4": 297.0, "Letter": 279.4})  # ISO 216; ANSI/ASME Y14.1
_PAGE_MARGINS = 44.0  # above and below together, as in templates/css/page.css
_MANY = 6  # sizes that fit beside words at the usual width


class Answered(Protocol):
    """A warning that the designer accepts in the source."""

    @property
    def diagnostic(self) -> Diagnostic:
        """What is warned of."""

    @property
    def accept(self) -> Accept:
        """The answer."""


class Judged(Protocol):
    """What the rules say of the garment: warnings that stand, and those that are answered."""

    @property
    def standing(self) -> tuple[Diagnostic, ...]:
        """What stands."""

    @property
    def accepted(self) -> tuple[Answered, ...]:
        """What is answered."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """The values that the pages show; amounts of the same sizes, in the same order, as the assembly.

    `flat` is the garment in the sample size, `version` is the program's; `project` are the files of the
    project that the garment was made of, the spec first, a lay file last.
    """

    garment: Garment
    assembly: Assembly
    quantities: Quantities
    judgement: Judged
    flat: Flat
    version: str
    project: tuple[SourceFile, ...] = ()

    @property
    def header(self) -> Header:
        """The garment's title block as declared."""
        return self.garment.header

    @property
    def files(self) -> tuple[SourceFile, ...]:
        """Every text that the sheet comes from, the spec first, a lay file last."""
        return tuple(dict.fromkeys((*self.garment.sources, *self.project)))

    @property
    def lengths(self) -> Lengths:
        """Lengths in the garment's unit."""
        return Lengths(self.garment.header.unit)

    @property
    def page_height(self) -> float:
        """The height of a page between its margins, in millimetres of paper."""
        return _PAGE_HEIGHTS[self.header.paper] - _PAGE_MARGINS

    @property
    def sizes(self) -> tuple[str, ...]:
        """The sizes, in order."""
        return tuple(each.size for each in self.assembly.sizes)

    @property
    def sample_index(self) -> int:
        """Where the sample size stands among the sizes."""
        return self.sizes.index(self.header.sample)

    @property
    def sample(self) -> SizeAssembly:
        """The garment in the sample size."""
        return self.assembly.sizes[self.sample_index]

    @property
    def sample_quantities(self) -> SizeQuantities:
        """What one garment of the sample size takes."""
        return self.quantities.sizes[self.sample_index]

    def in_sizes(self, name: str) -> tuple[Piece, ...]:
        """The piece of that name in every size."""
        return tuple(piece for each in self.assembly.sizes for piece in each.pieces if piece.name == name)

    def size_columns(self, over: Text = "", width: float = 15.0) -> tuple[Column, ...]:
        """A column of figures for every size, the sample size's strong; narrower where there are many."""
        room = width if len(self.sizes) <= _MANY else 0.0
        return tuple(
            Column(size, Align.RIGHT, over=over, width=room, strong=size == self.header.sample, size=size)
            for size in self.sizes
        )

    def origin(self, words: Text, asked: Span) -> Origin:
        """Where a number comes from that the text asks for at that place; its line, if it is on the sheet."""
        spec, line = self.garment.sources[0], asked.line
        if asked.file is not spec:
            return Origin(words, f"Line {line} of {asked.file.name}")
        return Origin(words, f"Line {line}", line if self.quantities.priced else 0)

    def asked(self, name: str) -> Span:
        """Where a seam, finish, hem, closure or attachment of that name stands."""
        garment = self.garment
        made = (*garment.seams, *garment.finishes, *garment.attachments)
        return next(each.origin for each in made if each.name == name)

    def declared(self, kind: str, name: str) -> Span:
        """Where a material of the bill stands; `kind` as its lines have it."""
        garment = self.garment
        of_kind: dict[str, tuple[Cloth | Trim | Thread | Packing | Label, ...]] = {
            "cloth": garment.cloths,
            "trim": garment.trims,
            "thread": garment.threads,
            "packing": garment.packing,
            "label": garment.labels,
        }
        return next(each.origin for each in of_kind[kind] if each.name == name)

    def use_of(self, piece: str, edge: str) -> EdgeUse | None:
        """What an edge is for, in the sample size."""
        return next((use for use in self.sample.uses if (use.piece, use.edge) == (piece, edge)), None)

    def title_of(self, name: str | None) -> str:
        """The title of a seam, finish, hem, cloth, trim or thread by its name; the name where it has none."""
        garment = self.garment
        named: tuple[Seam | Finish | Cloth | Trim | Thread, ...] = (
            *garment.seams,
            *garment.finishes,
            *garment.cloths,
            *garment.trims,
            *garment.threads,
        )
        return next((each.title for each in named if each.name == name), name or "")

    def trim_called(self, name: str) -> str:
        """The title of a trim by its name."""
        return next((each.title for each in self.garment.trims if each.name == name), name)

    @property
    def made(self) -> tuple[Seam | Finish, ...]:
        """All seams, then all finishes and hems, as the page that shows them counts them."""
        return (*self.garment.seams, *self.garment.finishes)

    def made_by(self, name: str | None) -> Seam | Finish | None:
        """The seam, finish or hem of that name."""
        return next((each for each in self.made if each.name == name), None)


def part(ref: PartRef) -> str:
    """An edge or line as it is written: `front.neck`."""
    return f"{ref.piece}.{ref.name}" if ref.piece else ref.name


def chain(refs: tuple[PartRef, ...]) -> str:
    """Edges that follow each other."""
    return ", ".join(part(ref) for ref in refs)


def plural(count: int, thing: str) -> str:
    """`1 size`, `5 sizes`."""
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"
