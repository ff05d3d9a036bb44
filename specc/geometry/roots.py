"""Owns the real roots of polynomials up to the third degree on the unit interval; knows nothing of curves."""

from __future__ import annotations

from math import sqrt


def quadratic_roots(a: float, b: float, c: float) -> tuple[float, ...]:
    """The real roots of a*t^2 + b*t + c, in rising order; none where it is constant."""
    if a == 0.0:
        return (-c / b,) if b != 0.0 else ()
    inner = b * b - 4.0 * a * c
    if inner < 0.0:
        return ()
    # The form that loses no digits when b*b is much larger than 4*a*c.
    q = -0.5 * (b + (sqrt(inner) if b >= 0.0 else -sqrt(inner)))
    roots = (q / a,) if q == 0.0 else (q / a, c / q)
    return tuple(sorted(roots))


def unit_roots(a: float, b: float, c: float, d: float, *, zero: float) -> tuple[float, ...]:
    """The roots of a*t^3 + b*t^2 + c*t + d with 0 <= t <= 1, in rising order.

    Values no larger than `zero` at the ends and at turning points count as roots; a polynomial that stays
    that small throughout has none.
    """
    if abs(a) + abs(b) + abs(c) <= zero:
        return ()

    def value(t: float) -> float:
        return ((a * t + b) * t + c) * t + d

    stops = [0.0, *(t for t in quadratic_roots(3.0 * a, 2.0 * b, c) if 0.0 < t < 1.0), 1.0]
    values = [value(t) for t in stops]
    roots = [t for t, f in zip(stops, values, strict=True) if abs(f) <= zero]
    for low, high, f_low, f_high in zip(stops, stops[1:], values, values[1:], strict=False):
        if abs(f_low) > zero and abs(f_high) > zero and (f_low < 0.0) != (f_high < 0.0):
            roots.append(_refined(a, b, c, d, low=low, high=high))
    return tuple(sorted(roots))


def _refined(a: float, b: float, c: float, d: float, *, low: float, high: float) -> float:  # noqa: PLR0913 - four coefficients
    """The root between two places of opposite sign: Newton's steps, halving where they leave it."""
    rising = ((a * low + b) * low + c) * low + d < 0.0
    t = 0.5 * (low + high)
    for _ in range(80):
        f = ((a * t + b) * t + c) * t + d
        if f == 0.0:
            return t
        if (f < 0.0) == rising:
            low = t
        else:
            high = t
        slope = (3.0 * a * t + 2.0 * b) * t + c
        step = t - f / slope if slope != 0.0 else low
        following = step if low < step < high else 0.5 * (low + high)
        if abs(following - t) <= 1e-15:
            return following
        t = following
    return t
