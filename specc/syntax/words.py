"""Owns what is said about a token that is sound but does not fit where it stands.

Knows nothing of how reading goes on after it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.names import did_you_mean, nearest
from specc.syntax import wording
from specc.syntax.finding import Finding, as_kind, is_word, touches, written
from specc.syntax.lexer import end_of, start_of

if TYPE_CHECKING:
    from lark import Token

    from specc.diagnostics import Diagnostic
    from specc.syntax.finding import Place

UNEXPECTED = declare(
    "SPC101", "unexpected-word", Severity.ERROR, "after `{after}` comes {wanted}, not {found}"
)
UNKNOWN_STATEMENT = declare("SPC112", "unknown-statement", Severity.ERROR, "no {kind} begins with {found}")

_SHOWN = 200  # characters of a statement that are looked at to say what stands before


def unexpected(token: Token, place: Place) -> Finding:
    """Return what is to be said about a token that does not fit, and the word that it may stand for."""
    wanted = place.stack.wanted()
    if not place.statement:
        return _unknown_statement(token, place, wanted)
    words = {word: kind for word, kind in wording.keywords().items() if kind in wanted}
    said = _unexpected(token, place, wanted)
    if not is_word(token):
        return Finding(said, None)
    near = nearest(token, words)
    if len(near) == 1:
        return _replaced(said, token, place, near[0], sure=True)
    if not near and len(wanted) == 1 and words:
        return _replaced(said, token, place, next(iter(words)), sure=False)
    return Finding(said.help(did_you_mean(token, words)), None)


def _unexpected(token: Token, place: Place, wanted: frozenset[str]) -> Diagnostic:
    before = place.statement[-1]
    start = max(start_of(place.statement[0]), end_of(before) - _SHOWN)
    said = UNEXPECTED.at(
        place.span(token),
        after=wording.ending(place.source.text[start : end_of(before)]),
        wanted=wording.called(wanted),
        found=wording.quoted(token),
    )
    if wanted == {wording.keywords()["of"]} and is_word(before):
        note = f"`{before}` is a word of the language here: a value of your own needs another name"
        said = said.note(note)
    if _is_decimal_comma(token, place):
        said = said.help("decimals are written with a point: 1.5")
    if token.type == "EQUAL" and "COMPARE" in wanted:
        said = said.help("a demand compares with `>=` or `<=`")
    return said


def _replaced(said: Diagnostic, token: Token, place: Place, word: str, *, sure: bool) -> Finding:
    kind = wording.keywords()[word]
    return Finding(written(said, place.span(token), word, sure=sure), (as_kind(token, kind, word),))


def _is_decimal_comma(token: Token, place: Place) -> bool:
    """Whether `token` ends something like `1,5`, written without a blank."""
    last = (*place.statement[-2:], token)
    return (
        tuple(each.type for each in last) == ("NUMBER", "COMMA", "NUMBER")
        and touches(last[0], last[1])
        and touches(last[1], last[2])
    )


def _unknown_statement(token: Token, place: Place, wanted: frozenset[str]) -> Finding:
    said = UNKNOWN_STATEMENT.at(place.span(token), kind=place.kind, found=wording.quoted(token))
    words = {word for word, kind in wording.keywords().items() if kind in wanted}
    near = nearest(token, words) if is_word(token) else ()
    if len(near) == 1:
        return _replaced(said, token, place, near[0], sure=True)
    if near:
        return Finding(said.help(did_you_mean(token, words)), None)
    places = [where for where, here in wording.PLACES.items() if str(token) in here]
    if places:
        said = said.help(f"`{token}` stands in {wording.listed(places)}")
    elif token.type == "LBRACE":
        return Finding(said.help("`{` stands in the line of what it opens"), None)
    elif token.type in ("SCALE", "SIGN"):
        said = said.help("a remark begins with `#`")
    return Finding(said.note(f"it begins with {wording.called(wanted - {'RBRACE'})}"), None)


def misspelt_beginning(place: Place) -> Finding | None:
    """Return what is to be said when a faulty statement begins with a misspelt word of the language.

    It was taken for the name of a property then. The stack stands before the statement. None when it is not
    misspelt.
    """
    first = place.statement[0]
    words = {word for word, kind in wording.keywords().items() if place.stack.fits(kind)}
    near = nearest(first, words) if first.type == "NAME" else ()
    if len(near) != 1:
        return None
    said = UNKNOWN_STATEMENT.at(place.span(first), kind=place.kind, found=wording.quoted(first))
    return _replaced(said, first, place, near[0], sure=True)
