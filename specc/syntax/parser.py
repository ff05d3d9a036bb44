"""Owns the border of the syntax stage: a text goes in, its tree and what is wrong in it come out.

Knows nothing of how a text is read.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.syntax.letters import too_large
from specc.syntax.tree import Broken, Tree

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.source import SourceFile


def parse(source: SourceFile) -> tuple[Tree, tuple[Diagnostic, ...]]:
    """Return the tree of `source` and what is wrong in it, whatever its text.

    A statement that cannot be read has one diagnostic and stands in the tree as `Broken`; all others stand
    there as they are. Lark is loaded here, so that a run that reads no text does not pay for it.
    """
    said = too_large(source)
    if said is not None:
        return Tree(source, (Broken((), source.span(0, len(source.text))),)), (said,)
    from specc.syntax.lower import lower  # noqa: PLC0415
    from specc.syntax.reader import Reader  # noqa: PLC0415

    parsed, diagnostics = Reader(source).read()
    return lower(source, parsed), tuple(sorted(diagnostics, key=lambda each: each.sort_key()))
