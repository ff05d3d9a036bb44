"""Owns what is found about a token that cannot be read as it stands, and where such a token stands.

Knows nothing of what can be wrong with it.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, NamedTuple

from lark import Token

from specc.diagnostics import Applicability, Edit
from specc.syntax.lexer import end_of, start_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from specc.diagnostics import Diagnostic
    from specc.source import SourceFile, Span
    from specc.syntax.stack import Stack

_WORD = re.compile(r"[^\W\d_]\w*(?:-\w+)*")


class Finding(NamedTuple):
    """What is wrong with a token, and what is read instead: nothing if empty; None when nothing can be."""

    diagnostic: Diagnostic
    instead: tuple[Token, ...] | None


class Place(NamedTuple):
    """Where a token stands: what was read of its statement before, and the first word of its body's head."""

    source: SourceFile
    stack: Stack
    statement: Sequence[Token]
    body: Token | None

    def span(self, token: Token) -> Span:
        """The characters of `token`; for an end of line the point behind the statement."""
        before = self.before
        if token.type == "_END" and before is not None:
            return self.source.span(end_of(before), end_of(before))
        return self.source.span(start_of(token), end_of(token))

    @property
    def before(self) -> Token | None:
        """The token before it in its statement."""
        return self.statement[-1] if self.statement else None

    @property
    def kind(self) -> str:
        """What is called what stands here."""
        return "declaration" if self.body is None else f"line of `{self.body}`"


def as_kind(token: Token, kind: str, value: str | None = None) -> Token:
    """Return `token` as a token of another kind, with another value if one is given, in the same place."""
    return Token.new_borrow_pos(kind, str(token) if value is None else value, token)


def is_word(token: Token) -> bool:
    """Whether a token looks like a name, be it a word of the language or not."""
    return _WORD.fullmatch(token) is not None


def touches(first: Token, second: Token) -> bool:
    """Whether `second` begins where `first` ends."""
    return end_of(first) == start_of(second)


def written(diagnostic: Diagnostic, span: Span, text: str, *, sure: bool = True) -> Diagnostic:
    """Return `diagnostic` with a fix: `text` instead of `span`."""
    applicability = Applicability.SAFE if sure else Applicability.UNSAFE
    return diagnostic.with_fix(f"write `{text.strip()}`", Edit(span, text), applicability=applicability)
