"""Owns what is wrong with a token wherever it stands: foreign letters and quotes, texts that are not closed.

Knows nothing of what may follow what.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Applicability, Edit, Severity, declare
from specc.syntax import figures, wording
from specc.syntax.finding import Finding, as_kind, written
from specc.syntax.letters import BLANK, CHARACTER, character, foreign_blanks
from specc.syntax.lexer import end_of, start_of

if TYPE_CHECKING:
    from lark import Token

    from specc.syntax.finding import Place

UNCLOSED_TEXT = declare("SPC104", "unclosed-text", Severity.ERROR, "a text is opened here and not closed")

# Signs as other programs and keyboards write them, and the kinds of token they stand for.
_SIGNS = {
    letter: (kind, sign)
    for letters, kind, sign in (
        ("−–—", "SIGN", "-"),
        ("×·∗", "SCALE", "*"),
        ("÷∕", "SCALE", "/"),
        ("≥>", "COMPARE", ">="),
        ("≤<", "COMPARE", "<="),
        ("，", "COMMA", ","),
        ("：", "COLON", ":"),
        ("（", "LPAR", "("),
        ("）", "RPAR", ")"),
        ("｛", "LBRACE", "{"),
        ("｝", "RBRACE", "}"),
    )
    for letter in letters
}
_MONEY = {"$": "USD", "€": "EUR", "£": "GBP", "¥": "JPY"}


def misread(token: Token, place: Place) -> Finding | None:
    """Return what is wrong with the token itself; None when it only depends on what may follow."""
    if token.type == "NUMBER":
        return figures.number(token, place)
    if token.type == "DATE":
        return figures.day(token, place)
    if token.type in ("JUNK", "UNCLOSED", "QUOTED", "TEXT") and (found := figures.mark(token, place)):
        return found
    judge = {"UNCLOSED": _unclosed, "QUOTED": _quoted, "JUNK": _junk}.get(token.type, figures.unit)
    return judge(token, place)


def _unclosed(token: Token, place: Place) -> Finding:
    end = place.source.span(end_of(token), end_of(token))
    said = UNCLOSED_TEXT.at(place.span(token), text=wording.shortened(token))
    said = said.note("a text ends in the line where it begins")
    return Finding(
        said.with_fix("put a quote where the text ends", Edit(end, '"')),
        (as_kind(token, "TEXT", f'{token}"'),),
    )


def _quoted(token: Token, place: Place) -> Finding:
    quote = place.source.span(start_of(token), start_of(token) + 1)
    straight = f'"{token[1:-1].replace(chr(34), chr(0x201D))}"'
    said = CHARACTER.at(quote, character=character(token[0]), where="the language")
    said = said.note("a text stands in straight double quotes")
    return Finding(written(said, place.span(token), straight), (as_kind(token, "TEXT", straight),))


def _junk(token: Token, place: Place) -> Finding:
    span = place.span(token)
    said = CHARACTER.at(span, character=character(token), where="the language")
    if BLANK.match(token):
        edits = foreign_blanks(place.source, start_of(token))
        return Finding(said.with_fix("write a plain blank", *edits, applicability=Applicability.SAFE), ())
    if token in _SIGNS:
        kind, sign = _SIGNS[token]
        # Whether `a > b` may be `a >= b` is for the writer to say.
        return Finding(written(said, span, sign, sure=not token.isascii()), (as_kind(token, kind, sign),))
    if token in _MONEY:
        said = said.help(f"money is written with its ISO 4217 code: `14.50 {_MONEY[token]}`")
    return Finding(said, None)
