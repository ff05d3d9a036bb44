"""Owns what is wrong with numbers, dates and units as they are written.

Knows nothing of what is measured.
"""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from specc.diagnostics import Applicability, Edit, Severity, declare
from specc.names import did_you_mean, nearest
from specc.syntax import wording
from specc.syntax.finding import Finding, as_kind, is_word, touches, written
from specc.syntax.lexer import start_of
from specc.units import CURRENCIES, parse_number
from specc.units import unit as unit_of

if TYPE_CHECKING:
    from lark import Token

    from specc.diagnostics import Diagnostic
    from specc.syntax.finding import Place

NOT_A_NUMBER = declare("SPC105", "not-a-number", Severity.ERROR, "`{number}` cannot be read: {reason}")
UNKNOWN_UNIT = declare("SPC106", "unknown-unit", Severity.ERROR, "`{unit}` is not a unit")
NOT_A_DATE = declare("SPC110", "not-a-date", Severity.ERROR, "`{date}` is not a date")

_UNITS = ("mm", "cm", "m", "in", "ft", "yd", "deg", "%", "g/m2", "oz/yd2")
# Other ways to write a unit that leave no doubt about what is meant.
_SPELLINGS = {
    spelling: unit
    for unit, spellings in (
        ("mm", "mms millimetre millimetres millimeter millimeters"),
        ("cm", "cms centimetre centimetres centimeter centimeters"),
        ("m", "metre metres meter meters"),
        ("in", "ins inch inches"),
        ("ft", "foot feet"),
        ("yd", "yds yard yards"),
        ("deg", "degs degree degrees"),
        ("%", "percent pct"),
        ("g/m2", "gsm"),
    )
    for spelling in spellings.split()
}
_MARKS = {'"': "in", "″": "in", "”": "in", "'": "ft", "′": "ft", "’": "ft"}


def number(token: Token, place: Place) -> Finding | None:
    """Judge a number."""
    try:
        parse_number(token)
    except ValueError as fault:
        known = token.replace("⁄", "/").isascii() or any(letter in wording.VULGAR for letter in token)
        reason = str(fault) if known else "numbers are written with the digits 0 to 9"
        said = NOT_A_NUMBER.at(place.span(token), number=wording.shortened(token), reason=reason)
        return Finding(said, None)
    return None


def day(token: Token, place: Place) -> Finding | None:
    """Judge a date: there must be such a day, written year-month-day with two digits for month and day."""
    said = NOT_A_DATE.at(place.span(token), date=str(token))
    try:
        year, month, day_of_month = (int(part) for part in token.split("-"))
        real = date(year, month, day_of_month).isoformat()
    except ValueError:
        said = said.note("the calendar has no such day").help("dates are written year-month-day: 2026-03-02")
        return Finding(said, None)
    if real == token:
        return None
    said = said.note("month and day have two digits")
    return Finding(written(said, place.span(token), real), (as_kind(token, "DATE", real),))


def mark(token: Token, place: Place) -> Finding | None:
    """Judge a sign for inches or feet directly behind a number; None when `token` is no such sign."""
    before = place.before
    if before is None or before.type != "NUMBER" or token[0] not in _MARKS or not touches(before, token):
        return None
    unit = _MARKS[token[0]]
    if token.type == "JUNK":
        return _meant(token, place, unit, instead=f" {unit}")
    # The sign was taken for the quote that begins a text.
    span = place.source.span(start_of(token), start_of(token) + 1)
    return Finding(written(UNKNOWN_UNIT.at(span, unit=token[0]), span, f" {unit}"), None)


def unit(token: Token, place: Place) -> Finding | None:
    """Judge what stands behind a number or its unit."""
    before = place.before
    if before is None:
        return None
    if before.type == "UNIT":
        return _abbreviated(token, before, place)
    if before.type != "NUMBER" or not place.stack.fits("UNIT"):
        return None
    if token.type == "UNIT":
        return None if unit_of(token) is not None else _unknown(token, place, did_you_mean(token, CURRENCIES))
    return _word(token, place)


def _word(token: Token, place: Place) -> Finding | None:
    """Judge a word where a unit could stand."""
    if not is_word(token) or (token.type != "NAME" and place.stack.fits(token.type)):
        return None
    folded = token.casefold()
    # `40 C` and the like are words of a property: a single letter is no misspelt unit.
    meant = _SPELLINGS.get(folded) or (folded if len(folded) > 1 and folded in _UNITS else None)
    if meant is not None:
        return _meant(token, place, meant)
    return None if place.stack.fits("NAME") else _misspelt(token, place)


def _abbreviated(token: Token, before: Token, place: Place) -> Finding | None:
    """Judge a point behind a unit, as `in.` has one."""
    if token.type != "DOT" or not touches(before, token):
        return None
    said = UNKNOWN_UNIT.at(place.span(before).to(place.span(token)), unit=f"{before}.")
    point = Edit(place.span(token), "")
    return Finding(said.with_fix(f"write `{before}`", point, applicability=Applicability.SAFE), ())


def _misspelt(token: Token, place: Place) -> Finding | None:
    """Judge a word behind a number where no name fits; None when it seems a misspelt word of the language."""
    words = {word for word, kind in wording.keywords().items() if place.stack.fits(kind)}
    near = nearest(token, (*words, *_UNITS, *_SPELLINGS))
    if not near:
        return _unknown(token, place, None)
    if near[0] in words:
        return None
    meant = _SPELLINGS.get(near[0], near[0])
    return Finding(_said(token, place).help(f"did you mean `{meant}`?"), (as_kind(token, "UNIT", meant),))


def _said(token: Token, place: Place) -> Diagnostic:
    return UNKNOWN_UNIT.at(place.span(token), unit=wording.shortened(token))


def _unknown(token: Token, place: Place, question: str | None) -> Finding:
    known = wording.listed(f"`{each}`" for each in _UNITS)
    money = "money has its ISO 4217 code, as in `14.50 USD`"
    return Finding(_said(token, place).help(question or f"units are {known}; {money}"), None)


def _meant(token: Token, place: Place, meant: str, *, instead: str | None = None) -> Finding:
    said = written(_said(token, place), place.span(token), instead or meant)
    return Finding(said, (as_kind(token, "UNIT", meant),))
