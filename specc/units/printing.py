"""Owns how values are printed: the one place where anything is rounded.

Knows nothing of tables or pages. Lengths, angles, ratios and weights round half away from zero; money rounds
half to even, so that the rounded cells of a long bill do not all lean one way. A float carries geometry's
tolerance, so it is first read on a grid of 1e-6 of its base unit: a half that is off in its last bits still
counts as a half on every machine.
"""

from __future__ import annotations

from fractions import Fraction

from specc.units.currencies import CURRENCIES
from specc.units.unit import UNITS

_FLOAT_GRID = 10**6
_USUAL_DECIMALS = {"mm": 0, "cm": 1, "m": 2, "ft": 2, "yd": 2}
# Denominators on a tape measure and, beyond 16, on a pattern ruler.
_INCH_DENOMINATORS = (2, 4, 8, 16, 32, 64)


def format_number(value: Fraction | float, *, decimals: int | None = None) -> str:
    """Return `value` with that many decimals; without `decimals` exactly, as a decimal or a mixed fraction.

    `parse_number` reads an exactly printed Fraction back as the same value.
    """
    exact = _exact(value)
    if decimals is not None:
        return _decimal(_away(exact * 10**decimals), decimals)
    places = _decimal_places(exact.denominator)
    return _mixed(exact) if places is None else _decimal(int(exact * 10**places), places)


def format_length(
    mm: Fraction | float,
    unit: str,
    *,
    denominator: int = 8,
    decimals: int | None = None,
    with_unit: bool = True,
) -> str:
    """Return a length of `mm` in `unit`: inches as mixed fractions in steps of 1/denominator, else decimals.

    `decimals` replaces the usual number of them (mm 0, cm 1, m, ft and yd 2), or prints inches as a decimal.
    """
    amount = _exact(mm) / UNITS[unit].size
    if unit == "in" and decimals is None:
        printed = _mixed(Fraction(_away(amount * denominator), denominator))
    else:
        printed = format_number(
            amount, decimals=_USUAL_DECIMALS.get(unit, 2) if decimals is None else decimals
        )
    return f"{printed} {unit}" if with_unit else printed


def format_angle(degrees: Fraction | float, *, decimals: int = 1) -> str:
    """Return an angle in degrees, such as `12.5°`."""
    return f"{format_number(degrees, decimals=decimals)}°"


def format_ratio(ratio: Fraction | float, *, decimals: int = 1) -> str:
    """Return a ratio in percent, such as `6%` or `62.5%`; zeros at the end are left out."""
    return f"{_trimmed(format_number(_exact(ratio) * 100, decimals=decimals))}%"


def format_area_weight(grams_per_m2: Fraction | float, unit: str) -> str:
    """Return a weight per area in `g/m2` (whole) or `oz/yd2` (one decimal)."""
    amount = _exact(grams_per_m2) / UNITS[unit].size
    return f"{format_number(amount, decimals=1 if unit == 'oz/yd2' else 0)} {unit}"


def format_money(amount: Fraction | float, currency: str) -> str:
    """Return `amount` with the decimals that ISO 4217 gives `currency` (mostly 2), rounded half to even."""
    decimals = CURRENCIES[currency]
    return f"{_decimal(round(_exact(amount) * 10**decimals), decimals)} {currency}"


def format_written(value: Fraction, symbol: str) -> str:
    """Return an exact number of units `symbol` as people write it: `2 1/4 in`, `6%`, `14.50 USD per yd`."""
    if symbol == "in" and value.denominator in _INCH_DENOMINATORS:
        return f"{_mixed(value)} in"
    head, _, tail = symbol.partition(" per ")
    if head in CURRENCIES and (value * 10 ** CURRENCIES[head]).denominator == 1:
        return f"{format_money(value, head)} per {tail}" if tail else format_money(value, head)
    separator = "" if symbol in ("", "%") else " "
    return f"{format_number(value)}{separator}{symbol}"


def _exact(value: Fraction | float) -> Fraction:
    if isinstance(value, float):
        return Fraction(round(Fraction(value) * _FLOAT_GRID), _FLOAT_GRID)
    return Fraction(value)


def _away(value: Fraction) -> int:
    """Return the nearest whole number, halves away from zero."""
    nearest = int(abs(value) + Fraction(1, 2))
    return -nearest if value < 0 else nearest


def _decimal(scaled: int, decimals: int) -> str:
    digits = str(abs(scaled)).rjust(decimals + 1, "0")
    sign = "-" if scaled < 0 else ""
    return f"{sign}{digits[:-decimals]}.{digits[-decimals:]}" if decimals else f"{sign}{digits}"


def _mixed(value: Fraction) -> str:
    sign = "-" if value < 0 else ""
    whole, rest = divmod(abs(value), 1)
    if not rest:
        return f"{sign}{whole}"
    return f"{sign}{whole} {rest}" if whole else f"{sign}{rest}"


def _trimmed(decimal: str) -> str:
    return decimal.rstrip("0").rstrip(".") if "." in decimal else decimal


def _decimal_places(denominator: int) -> int | None:
    """Return how many decimals write a fraction over `denominator` exactly; None when none do."""
    counts = []
    rest = denominator
    for prime in (2, 5):
        count = 0
        while rest % prime == 0:
            rest //= prime
            count += 1
        counts.append(count)
    return max(counts) if rest == 1 else None
