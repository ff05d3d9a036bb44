"""Dimensions of expressions, and what of them is known before anything is drafted."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest

from specc.diagnostics import Collector
from specc.model.expression import Arithmetic, Named
from specc.resolve.expressions import FIGURES, Scope, alike, dimension_of, meaning, resolve_expression
from specc.resolve.fixed import fixed, fixed_value
from specc.source import SourceFile
from specc.syntax import parse, tree
from specc.units import Dimension

if TYPE_CHECKING:
    from specc.model.expression import Constant

BUST = Scope({"bust": ("bust", Dimension.LENGTH), "slope": ("slope", Dimension.ANGLE)})


def written(text: str) -> tree.Expression:
    """The tree of an expression."""
    found, said = parse(SourceFile("e.garment", f"measure m = {text}\n"))
    (measure,) = found.declarations
    assert said == ()
    assert isinstance(measure, tree.Measure)
    return measure.value


def codes(text: str, scope: Scope = BUST) -> list[str]:
    say = Collector()
    resolve_expression(written(text), scope, say)
    return [each.code.id for each in say.diagnostics]


@pytest.mark.parametrize(
    ("text", "dimension"),
    [
        ("bust", Dimension.LENGTH),
        ("bust / 4 + 1 in", Dimension.LENGTH),
        ("bust * bust", Dimension.AREA),
        ("bust / 2 in", Dimension.NUMBER),
        ("10% * bust", Dimension.LENGTH),
        ("1 - 3%", Dimension.NUMBER),
        ("3% + 2%", Dimension.RATIO),
        ("root of (bust * bust)", Dimension.LENGTH),
        ("sine of slope", Dimension.NUMBER),
        ("arc-tangent of (bust / 2 in)", Dimension.ANGLE),
        ("arc-sine of 50%", Dimension.ANGLE),
        ("right + slope", Dimension.ANGLE),
        ("half of bust", Dimension.LENGTH),
        ("size of - bust", Dimension.LENGTH),
        ("larger of bust and 30 cm", Dimension.LENGTH),
        ("9 USD / 1 yd * bust", Dimension.money("USD")),
    ],
)
def test_the_dimension_follows_from_the_parts(text: str, dimension: Dimension) -> None:
    say = Collector()
    found = resolve_expression(written(text), BUST, say)

    assert say.diagnostics == ()
    assert found is not None
    assert dimension_of(found) == dimension


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("bust + 2", "SPC203"),
        ("bust - slope", "SPC203"),
        ("bust + 3%", "SPC203"),
        ("larger of bust and slope", "SPC203"),
        ("5 USD + 5 EUR", "SPC203"),
        ("root of bust", "SPC204"),
        ("cosine of bust", "SPC204"),
        ("arc-sine of slope", "SPC204"),
        ("waist", "SPC201"),
        ("length of front.hem", "SPC209"),
    ],
)
def test_what_has_no_meaning_is_told_once(text: str, code: str) -> None:
    assert codes(text) == [code]


def test_a_fault_in_a_part_is_not_told_again_of_the_whole() -> None:
    assert codes("root of (waist + 3 deg) + sine of (2 * waist)") == ["SPC201", "SPC201"]


def test_a_name_whose_declaration_failed_is_passed_over_in_silence() -> None:
    assert codes("2 * waist", Scope({}, missing=frozenset(("waist",)))) == []


def test_where_only_figures_can_stand_no_name_is_known() -> None:
    assert codes("bust", FIGURES) == ["SPC209"]


@pytest.mark.parametrize(
    ("scope", "text", "cure"),
    [
        (BUST, "bst", "did you mean `bust`?"),
        (BUST, "bust-slope", "an operator stands between spaces: `bust - slope`"),
        (BUST, "lenght", "did you mean `length of …`?"),
        (
            Scope({}, below=frozenset(("bust",))),
            "bust",
            "`bust` is not declared above this line; move it there, or take another",
        ),
    ],
)
def test_an_unknown_name_has_a_cure(scope: Scope, text: str, cure: str) -> None:
    say = Collector()
    resolve_expression(written(text), scope, say)

    assert say.diagnostics[0].helps == (cure,)


def test_a_bare_number_is_told_which_units_would_do() -> None:
    say = Collector()
    meaning(written("3/8"), BUST, say, what="an allowance", wanted=(Dimension.LENGTH,))

    assert [each.message for each in say.diagnostics] == ["an allowance must be a length, not a number"]
    assert say.diagnostics[0].helps == ("write a unit: `3/8 in`, `3/8 cm` or `3/8 mm`",)


def test_nothing_needs_no_unit() -> None:
    say = Collector()

    assert meaning(written("0"), BUST, say, what="x", wanted=(Dimension.LENGTH,)) is not None
    assert say.diagnostics == ()


def test_numbers_and_ratios_may_be_compared() -> None:
    assert alike(Dimension.RATIO) == alike(Dimension.NUMBER) == (Dimension.NUMBER, Dimension.RATIO)
    assert alike(Dimension.LENGTH) == (Dimension.LENGTH,)


# --- what is fixed ---


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("1 in", Fraction(254, 10)),
        ("1/8 in + 1/4 in", Fraction(3, 8) * Fraction(254, 10)),
        ("4 * 1/2 in", 2 * Fraction(254, 10)),
        ("half of (1 in - 2 mm)", Fraction(117, 10)),
        ("1 in / 2 in", Fraction(1, 2)),
        ("larger of 1 in and 3 cm", Fraction(30)),
        ("smaller of 1 in and 3 cm", Fraction(254, 10)),
        ("size of - 3 cm", Fraction(30)),
        ("root of (9 mm * 4 mm)", Fraction(6)),
        ("sine of 30 deg", Fraction(1, 2)),
        ("arc-tangent of 1", Fraction(45)),
        ("- (2 cm - 5 mm)", Fraction(-15)),
    ],
)
def test_constants_are_reckoned_exactly(text: str, value: Fraction) -> None:
    found = resolve_expression(written(text), Scope({}), Collector())

    assert found is not None
    assert fixed_value(found) == value


@pytest.mark.parametrize(
    ("text", "value"), [("circumference of 10 mm", 62.8318531), ("radius of 1 m", 159.1549431)]
)
def test_circles_of_constants_are_reckoned(text: str, value: float) -> None:
    found = resolve_expression(written(text), Scope({}), Collector())

    assert found is not None
    assert float(fixed_value(found) or 0) == pytest.approx(value)


@pytest.mark.parametrize("text", ["1 in / 0", "root of (3 - 4)", "arc-sine of 2", "bust", "2 * bust"])
def test_what_is_no_number_or_no_constant_is_not_fixed(text: str) -> None:
    found = resolve_expression(written(text), BUST, Collector())

    assert found is not None
    assert fixed_value(found) is None
    assert fixed(found) is None


def test_a_fixed_value_keeps_the_unit_of_its_first_part() -> None:
    found = resolve_expression(written("1/8 in + 5 mm"), Scope({}), Collector())
    assert found is not None
    known = fixed(found)

    assert known is not None
    assert known.value.unit.symbol == "in"
    assert known.value.value == Fraction(254, 80) + 5


def test_products_do_not_grow_without_end() -> None:
    """Seven squarings of a number of two digits are 850 bits: beyond all measure, and told as such."""
    value: Constant | None = fixed(resolve_expression(written("99"), Scope({}), Collector()))  # type: ignore[arg-type]
    for _ in range(7):
        assert value is not None
        square = resolve_expression(written("n * n"), Scope({}, fixed={"n": value}), Collector())
        assert square is not None
        value = fixed(square)
        if value is None:
            break

    assert value is None


def test_a_name_of_the_chart_stays_a_name() -> None:
    found = resolve_expression(written("bust / 4"), BUST, Collector())

    assert isinstance(found, Arithmetic)
    assert isinstance(found.left, Named)
