from __future__ import annotations

import itertools
from functools import partial
from typing import TYPE_CHECKING

import pytest

from specc.diagnostics import Severity, declare
from specc.drafting.evaluate import EvaluationError
from specc.drafting.lazy import DEEPEST, Lazy
from specc.drafting.roots import root

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.diagnostics import Diagnostic
    from specc.drafting.lazy import Key

CIRCLE = declare("SPC999", "trial-circle", Severity.ERROR, "{names}")


class Sheet:
    """Values by name, each a function of others; counts how often each is computed."""

    def __init__(self, **formulas: float | Callable[[Sheet], float]) -> None:
        self.formulas = formulas
        self.computed: list[str] = []
        self.lazy = Lazy(self._compute, self._told, self._told)

    def get(self, name: str) -> float:
        found = self.lazy.get(self.key(name))
        assert isinstance(found, float)
        return found

    @staticmethod
    def key(name: str) -> Key:
        return ("value", "sheet", name)

    def _compute(self, key: Key) -> object:
        self.computed.append(key[2])
        formula = self.formulas[key[2]]
        return formula(self) if callable(formula) else formula

    def _told(self, keys: tuple[Key, ...]) -> Diagnostic:
        return CIRCLE.at(None, names=" ".join(key[2] for key in keys))

    def found(self, name: str, difference: str, low: float, high: float) -> float:
        with self.lazy.on_trial(self.key(name), lambda: self.get(difference)) as tried:
            value = root(tried, low, high)
        assert isinstance(value, float)
        return value


def test_each_value_is_computed_once() -> None:
    sheet = Sheet(a=2.0, b=lambda s: s.get("a") * 3.0, c=lambda s: s.get("a") + s.get("b"))

    assert (sheet.get("c"), sheet.get("b"), sheet.get("c")) == (8.0, 6.0, 8.0)
    assert sorted(sheet.computed) == ["a", "b", "c"]


def test_on_trial_only_what_depends_on_the_unknown_is_computed_again() -> None:
    sheet = Sheet(
        far=5.0,
        steady=lambda s: s.get("far") * 2.0,
        moving=lambda s: s.get("x") ** 2 - s.get("steady"),
        x=lambda s: s.found("x", "moving", 0.0, 10.0),
    )

    assert sheet.get("x") == pytest.approx(10.0**0.5, abs=1e-8)
    assert sheet.computed.count("steady") == 1
    assert sheet.computed.count("moving") > 2


def test_after_a_trial_what_depends_on_the_unknown_has_its_final_value() -> None:
    sheet = Sheet(
        moving=lambda s: s.get("x") - 3.0,
        x=lambda s: s.found("x", "moving", 0.0, 10.0),
        twice=lambda s: 2.0 * s.get("x"),
    )

    assert sheet.get("twice") == pytest.approx(6.0, abs=1e-8)
    assert sheet.get("moving") == pytest.approx(0.0, abs=1e-8)


@pytest.mark.parametrize("order", [("x", "y"), ("y", "x"), ("sum", "x"), ("ratio", "y")])
def test_two_unknowns_that_need_each_other_are_found_from_either_end(order: tuple[str, str]) -> None:
    """x + y / 2 = 10 and y = x / 4 + 1: x is 76/9 and y is 28/9, whichever is asked for first."""
    sheet = Sheet(
        sum=lambda s: s.get("x") + s.get("y") / 2.0 - 10.0,
        ratio=lambda s: s.get("y") - s.get("x") / 4.0 - 1.0,
        x=lambda s: s.found("x", "sum", -100.0, 100.0),
        y=lambda s: s.found("y", "ratio", -100.0, 100.0),
    )
    for name in order:
        sheet.get(name)

    assert sheet.get("x") == pytest.approx(76 / 9, abs=1e-6)
    assert sheet.get("y") == pytest.approx(28 / 9, abs=1e-6)


def test_a_circle_is_named_from_where_it_closes() -> None:
    sheet = Sheet(a=lambda s: s.get("b"), b=lambda s: s.get("c"), c=lambda s: s.get("b"))

    with pytest.raises(EvaluationError) as caught:
        sheet.get("a")
    assert caught.value.diagnostic.message == "b c"


def test_a_fault_is_kept_and_told_alike_to_everyone_who_asks() -> None:
    sheet = Sheet(a=lambda s: s.get("a"), b=lambda s: s.get("a"), c=lambda s: s.get("a"))
    told = []
    for name in ("b", "c", "a"):
        with pytest.raises(EvaluationError) as caught:
            sheet.get(name)
        told.append(caught.value.diagnostic)

    assert told == [told[0]] * 3
    assert sheet.computed.count("a") == 1


def test_a_chain_that_runs_backwards_has_a_bound() -> None:
    names = [f"n{i}" for i in range(DEEPEST + 15)]
    formulas: dict[str, float | Callable[[Sheet], float]] = {
        name: partial(Sheet.get, name=following) for name, following in itertools.pairwise(names)
    }
    formulas[names[-1]] = 1.0
    sheet = Sheet(**formulas)

    assert sheet.get(names[-10]) == 1.0
    with pytest.raises(EvaluationError):
        sheet.get("n0")
