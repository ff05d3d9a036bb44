"""What is attached must be cut as often as it is attached.

A pocket that is cut once and wanted left and right is missed when the garment is sewn; one that is cut twice
and attached once is cloth thrown away, or a place that was forgotten. Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.making.attached import Placed
from specc.pattern.lookup import piece_named

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.making.attached import Attached
    from specc.rules.subject import Subject
    from specc.source import Span

NOT_AS_CUT = declare(
    "SPC537",
    "attached-not-as-cut",
    Severity.WARNING,
    "`{what}` is cut {cut} and attached {places}",
)

_WORDS = ("", "once", "twice")


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a piece, or an end of one, that is not attached as often as it is cut."""
    places: dict[str, int] = {}
    origins: dict[str, Span] = {}
    size = subject.assembly.sizes[0]
    for asked, found in zip(subject.garment.attachments, size.attached, strict=True):
        what = _what(found)
        places[what] = places.get(what, 0) + found.places
        origins.setdefault(what, asked.origin)
    for what, count in places.items():
        piece = piece_named(size.pieces, what.partition(".")[0])
        if piece is not None and piece.cut != count:
            told = NOT_AS_CUT.at(origins[what], what=piece.name, cut=_often(piece.cut), places=_often(count))
            if piece.cut == 1 and count > 1:
                told = told.note("a piece that is cut twice or on the fold has a left and a right")
            cure = f"cut `{piece.name}` {_often(count)}"
            one_side = ", or say on which side: `left` or `right` before what takes it"
            yield told.help(f"{cure}{one_side}" if count > piece.cut else cure)


def _what(found: Attached) -> str:
    return found.piece if isinstance(found, Placed) else ", ".join(found.ends)


def _often(count: int) -> str:
    return _WORDS[count] if count < len(_WORDS) else f"{count} times"
