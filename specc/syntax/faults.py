"""Owns what is said about a token that cannot be read as it stands, and what it can be read as instead.

Knows nothing of how reading goes on after it.
"""

from __future__ import annotations

import re
from datetime import date
from typing import TYPE_CHECKING, NamedTuple

from lark import Token

from specc.diagnostics import Applicability, Edit, Severity, declare
from specc.names import did_you_mean, nearest
from specc.syntax import wording
from specc.syntax.letters import BLANK, CHARACTER, character, foreign_blanks
from specc.units import CURRENCIES, parse_number
from specc.units import unit as unit_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from specc.diagnostics import Diagnostic
    from specc.source import SourceFile, Span
    from specc.syntax.stack import Stack

UNEXPECTED = declare(
    "SPC101", "unexpected-word", Severity.ERROR, "after `{after}` comes {wanted}, not {found}"
)
UNCLOSED_TEXT = declare("SPC104", "unclosed-text", Severity.ERROR, "a text is opened here and not closed")
NOT_A_NUMBER = declare("SPC105", "not-a-number", Severity.ERROR, "`{number}` cannot be read: {reason}")
UNKNOWN_UNIT = declare("SPC106", "unknown-unit", Severity.ERROR, "`{unit}` is not a unit")
UNKNOWN_STATEMENT = declare("SPC109", "unknown-statement", Severity.ERROR, "no {kind} begins with {found}")
NOT_A_DATE = declare("SPC110", "not-a-date", Severity.ERROR, "`{date}` is no day of the calendar")

_WORD = re.compile(r"[^\W\d_]\w*(?:-\w+)*")

# Other ways to write a unit, beyond any doubt about what is meant.
_SPELLINGS = {
    "inch": "in", "inches": "in", "ins": "in", "foot": "ft", "feet": "ft", "yard": "yd", "yards": "yd", "yds": "yd",
    "mms": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
    "cms": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
    "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "degree": "deg", "degrees": "deg", "degs": "deg", "percent": "%", "pct": "%", "gsm": "g/m2",
}  # fmt: skip
_MARKS = {'"': "in", "″": "in", "”": "in", "'": "ft", "′": "ft", "’": "ft"}
_UNITS = ("mm", "cm", "m", "in", "ft", "yd", "deg", "%", "g/m2", "oz/yd2")
# Signs as other programs and keyboards write them.
_SIGNS = {
    "−": "-", "–": "-", "—": "-", "×": "*", "·": "*", "÷": "/", "≥": ">=", "≤": "<=", ">": ">=", "<": "<=",
    "，": ",", "：": ":", "（": "(", "）": ")", "｛": "{", "｝": "}",
}  # fmt: skip
_KINDS = {"-": "SIGN", "*": "SCALE", "/": "SCALE", ">=": "COMPARE", "<=": "COMPARE", ",": "COMMA", ":": "COLON",
          "(": "LPAR", ")": "RPAR", "{": "LBRACE", "}": "RBRACE"}  # fmt: skip
_MONEY = {"$": "USD", "€": "EUR", "£": "GBP", "¥": "JPY"}


class Finding(NamedTuple):
    """What is wrong with a token. `instead` is read in its place: nothing if empty; None when nothing can be."""

    diagnostic: Diagnostic
    instead: tuple[Token, ...] | None


class Place(NamedTuple):
    """Where a token stands: what has been read of its statement, and the first word of what the body belongs to."""

    source: SourceFile
    stack: Stack
    statement: Sequence[Token]
    body: Token | None

    def span(self, token: Token) -> Span:
        """The characters of `token`; for an end of line the point behind the statement."""
        before = self.before
        if token.type == "_END" and before is not None:
            return self.source.span(before.end_pos or 0, before.end_pos or 0)
        return self.source.span(token.start_pos or 0, token.end_pos or 0)

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


def misread(token: Token, place: Place) -> Finding | None:
    """Return what is wrong with the token itself, wherever it stands; None when nothing is."""
    match token.type:
        case "NUMBER":
            return _number(token, place)
        case "DATE":
            return _date(token, place)
        case "JUNK" | "UNCLOSED" | "QUOTED" | "TEXT" if _is_mark(token, place):
            return _unit(token, place, _MARKS[token[0]])
        case "UNCLOSED":
            end = token.end_pos or 0
            return Finding(
                UNCLOSED_TEXT.at(place.span(token), text=wording.shortened(token))
                .help("a text ends in the line where it begins")
                .with_fix("put a quote where the text ends", Edit(place.source.span(end, end), '"')),
                (as_kind(token, "TEXT", f'{token}"'),),
            )
        case "QUOTED":
            return _quoted(token, place)
        case "JUNK":
            return _junk(token, place)
        case _:
            return _unit_or_not(token, place)


def _number(token: Token, place: Place) -> Finding | None:
    try:
        parse_number(token)
    except ValueError as reason:
        why = str(reason) if token.isascii() else "numbers are written with the digits 0 to 9"
        return Finding(NOT_A_NUMBER.at(place.span(token), number=wording.shortened(token), reason=why), None)
    return None


def _date(token: Token, place: Place) -> Finding | None:
    year, month, day = (int(part) for part in token.split("-"))
    try:
        real = date(year, month, day).isoformat()
    except ValueError:
        said = NOT_A_DATE.at(place.span(token), date=str(token))
        return Finding(said.help("dates are written year-month-day: 2026-03-02"), None)
    if real == token:
        return None
    said = NOT_A_DATE.at(place.span(token), date=str(token)).note("month and day have two digits")
    return Finding(_written(said, place.span(token), real), (as_kind(token, "DATE", real),))


def _written(diagnostic: Diagnostic, span: Span, text: str, *, sure: bool = True) -> Diagnostic:
    return diagnostic.with_fix(
        f"write `{text.strip()}`",
        Edit(span, text),
        applicability=Applicability.SAFE if sure else Applicability.UNSAFE,
    )


# --- letters ---


def _is_mark(token: Token, place: Place) -> bool:
    """Whether a sign for inches or feet stands directly behind a number."""
    before = place.before
    return (
        before is not None
        and before.type == "NUMBER"
        and before.end_pos == token.start_pos
        and token[0] in _MARKS
        and place.stack.fits("UNIT")
    )


def _quoted(token: Token, place: Place) -> Finding:
    inner = token[1:-1].replace('"', "”")
    said = CHARACTER.at(
        place.source.span(token.start_pos or 0, (token.start_pos or 0) + 1),
        character=character(token[0]),
        where="the language",
    ).note("a text stands in straight double quotes")
    return Finding(_written(said, place.span(token), f'"{inner}"'), (as_kind(token, "TEXT", f'"{inner}"'),))


def _junk(token: Token, place: Place) -> Finding:
    said = CHARACTER.at(place.span(token), character=character(token), where="the language")
    if BLANK.match(token) or token.isspace():
        edits = foreign_blanks(place.source, token.start_pos or 0) or (Edit(place.span(token), " "),)
        return Finding(said.with_fix("write a plain blank", *edits, applicability=Applicability.SAFE), ())
    if token in _SIGNS:
        sign = _SIGNS[token]
        kind = _KINDS[sign]
        sure = token not in "<>"
        return Finding(_written(said, place.span(token), sign, sure=sure), (as_kind(token, kind, sign),))
    if token in _MONEY:
        return Finding(said.help(f"money is written with its ISO 4217 code: `14.50 {_MONEY[token]}`"), None)
    return Finding(said, None)


# --- units ---


def _unit_or_not(token: Token, place: Place) -> Finding | None:
    """Judge a word directly behind a number."""
    before = place.before
    if before is None:
        return None
    if before.type == "UNIT" and token.type == "DOT" and before.end_pos == token.start_pos:
        said = UNKNOWN_UNIT.at(place.span(before).to(place.span(token)), unit=f"{before}.")
        fix = said.with_fix(f"write `{before}`", Edit(place.span(token), ""), applicability=Applicability.SAFE)
        return Finding(fix, ())
    if before.type != "NUMBER" or not place.stack.fits("UNIT"):
        return None
    if token.type == "UNIT":
        if unit_of(token) is not None:
            return None
        said = UNKNOWN_UNIT.at(place.span(token), unit=str(token))
        return Finding(said.help(did_you_mean(token, CURRENCIES) or _known_units()), None)
    if not is_word(token) or place.stack.fits(token.type) and token.type != "NAME":
        return None
    folded = token.casefold()
    meant = _SPELLINGS.get(folded) or (folded if len(folded) > 1 and folded in _UNITS else None)
    if meant is not None:
        return _unit(token, place, meant)
    if place.stack.fits("NAME"):
        return None
    words = {word for word, kind in wording.keywords().items() if place.stack.fits(kind)}
    near = nearest(token, (*words, *_UNITS, *_SPELLINGS))
    if near and near[0] in words:
        return None
    said = UNKNOWN_UNIT.at(place.span(token), unit=wording.shortened(token))
    if not near:
        return Finding(said.help(_known_units()), None)
    unit = _SPELLINGS.get(near[0], near[0])
    return Finding(said.help(f"did you mean `{unit}`?"), (as_kind(token, "UNIT", unit),))


def _unit(token: Token, place: Place, meant: str) -> Finding:
    if token.type in ("TEXT", "UNCLOSED", "QUOTED"):
        start = token.start_pos or 0
        span = place.source.span(start, start + 1)
        said = UNKNOWN_UNIT.at(span, unit=token[0])
        return Finding(_written(said, span, f" {meant}"), None)
    span = place.span(token)
    written = f" {meant}" if token.type == "JUNK" else meant
    return Finding(
        _written(UNKNOWN_UNIT.at(span, unit=str(token)), span, written), (as_kind(token, "UNIT", meant),)
    )


def _known_units() -> str:
    return f"units are {wording.listed(f'`{unit}`' for unit in _UNITS)}; money has its ISO 4217 code, as in `14.50 USD`"


# --- words ---


def unexpected(token: Token, place: Place) -> Finding:
    """Return what is to be said about a token that does not fit where it stands."""
    wanted = place.stack.wanted()
    if not place.statement:
        return _unknown_statement(token, place, wanted)
    words = {word: kind for word, kind in wording.keywords().items() if kind in wanted}
    end = place.statement[-1].end_pos or 0
    start = max(place.statement[0].start_pos or 0, end - 200)
    said = UNEXPECTED.at(
        place.span(token),
        after=wording.ending(place.source.text[start:end]),
        wanted=wording.called(wanted),
        found=wording.quoted(token),
    )
    before = place.statement[-1]
    if is_word(token):
        near = nearest(token, words)
        if len(near) == 1 or (not near and len(wanted) == 1 and words):
            word = near[0] if near else next(iter(words))
            fixed = _written(said, place.span(token), word, sure=bool(near))
            return Finding(fixed, (as_kind(token, words[word], word),))
        said = said.help(did_you_mean(token, words))
    if wanted == {wording.keywords()["of"]} and is_word(before):
        said = said.note(f"`{before}` is a word of the language here: a value of your own needs another name")
    if _is_decimal_comma(token, place):
        said = said.help("decimals are written with a point: 1.5")
    if token.type == "EQUAL" and "COMPARE" in wanted:
        said = said.help("a demand compares with `>=` or `<=`")
    return Finding(said, None)


def _is_decimal_comma(token: Token, place: Place) -> bool:
    """Whether `token` ends something like `1,5`, written without a blank."""
    written = [*place.statement[-2:], token][-3:]
    ends = [each.end_pos for each in written[:-1]]
    begins = [each.start_pos for each in written[1:]]
    return [each.type for each in written] == ["NUMBER", "COMMA", "NUMBER"] and ends == begins


def _unknown_statement(token: Token, place: Place, wanted: frozenset[str]) -> Finding:
    said = UNKNOWN_STATEMENT.at(place.span(token), kind=place.kind, found=wording.quoted(token))
    words = {word: kind for word, kind in wording.keywords().items() if kind in wanted}
    if is_word(token):
        near = nearest(token, words)
        if len(near) == 1:
            return Finding(
                _written(said, place.span(token), near[0]), (as_kind(token, words[near[0]], near[0]),)
            )
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
    """Return what is to be said when the first word of a faulty statement was taken for the name of a property but is
    a misspelt word of the language; the stack stands before the statement. None when it is not."""
    first = place.statement[0]
    words = {word: kind for word, kind in wording.keywords().items() if place.stack.fits(kind)}
    near = nearest(first, words) if first.type == "NAME" else ()
    if len(near) != 1:
        return None
    said = UNKNOWN_STATEMENT.at(place.span(first), kind=place.kind, found=f"`{wording.shortened(first)}`")
    return Finding(_written(said, place.span(first), near[0]), (as_kind(first, words[near[0]], near[0]),))
