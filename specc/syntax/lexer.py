"""Owns the tokens of a text, as Lark's lexer finds them.

Knows nothing of what may follow what.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from lark import Token

from specc.syntax import layout
from specc.syntax.tables import parser

if TYPE_CHECKING:
    from collections.abc import Iterator


def tokens(text: str) -> Iterator[Token]:
    """The tokens of `text`; a text that is not closed ends where it most likely was meant to."""
    reading = parser().parse_interactive(text)
    lexer = reading.lexer_thread
    found: Iterator[Token] = lexer.lex(reading.parser_state)  # type: ignore[no-untyped-call]
    for token in found:
        if token.type == "UNCLOSED" and lexer.state is not None:
            end = layout.end_of_unclosed(text, start_of(token))
            lexer.state.line_ctr.char_pos = end
            yield made("UNCLOSED", text[start_of(token) : end], at=start_of(token))
        else:
            yield token


def made(kind: str, text: str, *, at: int) -> Token:
    """Return a token of our own: `text` as it stands at `at`."""
    return Token(kind, text, start_pos=at, end_pos=at + len(text))


def start_of(token: Token) -> int:
    """Where a token begins."""
    return token.start_pos or 0


def end_of(token: Token) -> int:
    """Where a token ends."""
    return token.end_pos or 0
