"""Owns what is said about braces that are not closed, or that close nothing.

Knows nothing of how reading goes on after them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from specc.diagnostics import Edit, Severity, declare
from specc.syntax import layout
from specc.syntax.lexer import end_of, start_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from lark import Token

    from specc.diagnostics import Diagnostic
    from specc.source import SourceFile

UNCLOSED_BODY = declare("SPC103", "unclosed-body", Severity.ERROR, "the body of `{head}` is not closed")
STRAY_BRACE = declare("SPC108", "stray-brace", Severity.ERROR, "`}}` closes nothing")


class Opened(NamedTuple):
    """A brace that is open, and the first words of what it belongs to."""

    brace: Token
    head: Sequence[Token]


def unclosed(source: SourceFile, bodies: Sequence[Opened], before: Token | None) -> Diagnostic:
    """Return what is to be said about bodies, outermost first, that ought to end before the token `before`.

    None stands for the end of the file.
    """
    outer, *others = bodies
    head = " ".join(outer.head[: 2 if len(outer.head) > 2 else 1])
    said = UNCLOSED_BODY.at(source.span(start_of(outer.brace), end_of(outer.brace)), "opened here", head=head)
    for other in others:
        said = said.see(source.span(start_of(other.brace), end_of(other.brace)), "nor is this one")
    braces = "".join(
        f"{layout.indentation(source.text, start_of(body.head[0]))}}}\n" for body in reversed(bodies)
    )
    if before is None:
        behind = source.span(len(source.text), len(source.text))
        said = said.see(behind, "the file ends here")
        if not source.text.endswith("\n"):
            braces = f"\n{braces}"
    else:
        line = start_of(before) - layout.column(source.text, start_of(before))
        behind = source.span(line, line)
        said = said.see(source.span(start_of(before), end_of(before)), "this begins outside of it")
    return said.with_fix("put `}` where the body ends", Edit(behind, braces))


def stray(source: SourceFile, brace: Token) -> Diagnostic:
    """Return what is to be said about a brace that closes nothing."""
    span = source.span(start_of(brace), end_of(brace))
    return STRAY_BRACE.at(span).with_fix("take it out", Edit(span, ""))
