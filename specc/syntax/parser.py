"""Owns reading a text into its tree and saying what could not be read.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.source import SourceFile
    from specc.syntax.tree import Tree

UNEXPECTED = declare("SPC101", "unexpected-word", Severity.ERROR, "`{found}` does not fit here")
_JOINING = ("LBRACE", "COMMA", "EQUAL", "LPAR", "SIGN", "SCALE", "COMPARE", "_END", None)


def parse(source: SourceFile) -> tuple[Tree, tuple[Diagnostic, ...]]:
    """Return the tree of `source` and what is wrong in it."""
    from lark import UnexpectedToken  # noqa: PLC0415  only a run that reads a text pays for Lark

    from specc.syntax.lower import lower  # noqa: PLC0415
    from specc.syntax.tables import parser  # noqa: PLC0415
    from specc.syntax.tree import Tree  # noqa: PLC0415

    reading = parser().parse_interactive(source.text)
    before = None
    try:
        for token in reading.lexer_thread.lex(reading.parser_state):
            if token.type != "_END" or before not in _JOINING:
                reading.feed_token(token)
                before = token.type
        return lower(source, reading.feed_eof()), ()
    except UnexpectedToken as fault:
        start = fault.token.start_pos or 0
        span = source.span(start, min(start + len(fault.token), len(source.text)))
        return Tree(source, ()), (UNEXPECTED.at(span, found=str(fault.token)),)
