"""What drafting finds by trying."""

from __future__ import annotations

from math import cos, exp, log, tan
from typing import TYPE_CHECKING

import pytest
from scipy.optimize import brentq

from specc.drafting.roots import root
from tests.sources import Known, against

if TYPE_CHECKING:
    from collections.abc import Callable

FUNCTIONS: tuple[tuple[str, Callable[[float], float], float, float], ...] = (
    ("cubic", lambda x: x**3 - 2.0 * x - 5.0, 2.0, 3.0),
    ("cosine", lambda x: cos(x) - x, 0.0, 1.0),
    ("flat and steep", lambda x: exp(x) - 100.0, -50.0, 6.0),
    ("nearly a step", lambda x: tan(1.5 * x) - 8.0, -1.0, 1.04),
    ("ninth power", lambda x: (x - 1.0) ** 9, -3.0, 4.0),
    ("logarithm", lambda x: log(x) + 3.0, 1e-6, 500.0),
)


@against(Known.PROGRAM, "scipy.optimize.brentq")
@pytest.mark.parametrize(
    ("function", "low", "high"), [case[1:] for case in FUNCTIONS], ids=[c[0] for c in FUNCTIONS]
)
def test_roots_agree_with_scipy(function: Callable[[float], float], low: float, high: float) -> None:
    assert root(function, low, high) == pytest.approx(
        brentq(function, low, high, xtol=1e-12, maxiter=1000), abs=3e-9
    )
