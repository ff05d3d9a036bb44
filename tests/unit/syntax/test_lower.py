"""Every statement becomes its node, with its values and the place it was read from."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest

from specc.syntax import tree
from specc.syntax.lower import Lowering
from specc.syntax.show import show
from specc.syntax.tables import parser
from tests.unit.syntax.reading import STATEMENTS, nodes, only, sound

if TYPE_CHECKING:
    from tests.goldens import Golden


def test_every_statement_is_read_as_what_it_is(golden: Golden) -> None:
    golden(STATEMENTS.with_suffix(".txt"), show(sound(STATEMENTS.read_text(encoding="utf-8"))))


def test_the_sample_has_every_kind_of_node() -> None:
    read = {type(node).__name__ for node in nodes(sound(STATEMENTS.read_text(encoding="utf-8")))}
    kinds = {name for name in tree.__all__ if isinstance(getattr(tree, name), type)}

    assert kinds - read == {"Broken", "Drawing", "DrawnPath"}


def test_every_rule_has_a_method_and_every_method_a_rule() -> None:
    """A rule that Lark replaces by its only child (`?`) needs none, but its named alternatives do."""
    rules = {
        str(rule.alias or rule.origin.name)
        for rule in parser().rules
        if not rule.origin.name.startswith("_") and (rule.alias or not rule.options.expand1)
    }
    owners = (owner for owner in Lowering.__mro__ if owner.__module__.startswith("specc."))
    written = {name for owner in owners for name in vars(owner)}
    methods = {name for name in written if name.islower() and not name.startswith("_")}

    assert rules == methods


def expression(text: str) -> tree.Expression:
    declaration = only(f"measure m = {text}")
    assert isinstance(declaration, tree.Measure)
    return declaration.value


@pytest.mark.parametrize(
    ("written", "value", "unit"),
    [
        ("12", Fraction(12), None),
        ("1.5 cm", Fraction(3, 2), "cm"),
        (".5 m", Fraction(1, 2), "m"),
        ("1/3 in", Fraction(1, 3), "in"),
        ("2 1/4 in", Fraction(9, 4), "in"),
        ("2-1/4in", Fraction(9, 4), "in"),
        ("2½ yd", Fraction(5, 2), "yd"),
        ("¾ ft", Fraction(3, 4), "ft"),
        ("60%", Fraction(60), "%"),
        ("90 deg", Fraction(90), "deg"),
        ("45°", Fraction(45), "°"),
        ("140 g/m2", Fraction(140), "g/m2"),
        ("4 oz/yd2", Fraction(4), "oz/yd2"),
        ("14.50 USD", Fraction(29, 2), "USD"),
    ],
)
def test_numbers_are_exact_and_keep_their_unit(written: str, value: Fraction, unit: str | None) -> None:
    number = expression(written)

    assert isinstance(number, tree.Number)
    assert (number.value, number.unit, number.span.text) == (value, unit, written)


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("a + b * c", "(a + (b * c))"),
        ("a - b - c", "((a - b) - c)"),
        ("a / b / c", "((a / b) / c)"),
        ("(a + b) * c", "((a + b) * c)"),
        ("- a + b", "((-a) + b)"),
        ("half of a + b", "((half of a) + b)"),
        ("half of (a + b)", "(half of (a + b))"),
        ("length of p.e * 2", "((length of p.e) * 2)"),
        ("larger of a and b + c", "((larger of a and b) + c)"),
        ("size of half of - a", "(size of (half of (-a)))"),
        ("direction from a to b + 90 deg", "((direction from a to b) + 90 deg)"),
        ("bust-ease", "bust-ease"),
    ],
)
def test_operators_bind_as_in_arithmetic_and_functions_bind_tightest(written: str, shown: str) -> None:
    assert f"value: {shown}" in show(sound(f"measure m = {written}"))


def test_a_word_of_the_language_is_a_name_where_it_does_not_fit_as_itself() -> None:
    declaration = only("seam seam joins into.to to by.in by along")

    assert isinstance(declaration, tree.Seam)
    assert [ref.span.text for ref in (*declaration.first, *declaration.second)] == ["into.to", "by.in"]
    assert (declaration.name.text, declaration.method.text) == ("seam", "along")


def test_a_text_stands_for_itself_but_for_a_quote_and_a_backslash() -> None:
    declaration = only(r'note "a \"b\" c:\\d e\f # no remark"')

    assert isinstance(declaration, tree.Note)
    assert declaration.text.text == r'a "b" c:\d e\f # no remark'


def test_every_number_of_a_column_has_the_unit_at_its_end() -> None:
    chart = only("chart c { measurement bust = 34, 35 1/2, 37 in }")

    assert isinstance(chart, tree.Chart)
    (measurement,) = chart.body
    assert isinstance(measurement, tree.Measurement)
    assert [(number.value, number.unit, number.span.text) for number in measurement.column] == [
        (34, "in", "34"),
        (Fraction(71, 2), "in", "35 1/2"),
        (37, "in", "37"),
    ]


def test_one_tolerance_is_meant_both_ways() -> None:
    declaration = only("measure m = a, tolerance 1 cm")

    assert isinstance(declaration, tree.Measure)
    assert declaration.plus == declaration.minus is not None


@pytest.mark.parametrize(
    "text",
    [
        "",
        "\n\n# only a remark",
        ";;\n ; \r\n",
        "care {}",
        "care {\n}",
        "care { # remark\n ; \n }",
        "use chart c;use block b",
        "\r\nuse chart c\r\nuse block b\r\n",
        "\fuse chart c",
        "measure m =\n\n  1 +\n  2",
        "seam s joins a.b,\n  a.c to\t b.d by m",
    ],
)
def test_blank_lines_remarks_and_broken_lines_do_no_harm(text: str) -> None:
    sound(text)


def test_a_span_runs_from_the_first_character_to_the_last() -> None:
    text = '\n  seam side "t" joins a.b to c.d by m { lay to back ; }  # remark\n'
    seam = only(text)

    assert isinstance(seam, tree.Seam)
    assert seam.span.text == 'seam side "t" joins a.b to c.d by m { lay to back ; }'
    assert [setting.span.text for setting in seam.settings] == ["lay to back"]


def test_brackets_belong_to_what_is_around_them() -> None:
    product = expression("((a + b)) * (c)")

    assert isinstance(product, tree.Arithmetic)
    assert [part.span.text for part in (product, product.left, product.right)] == [
        "((a + b)) * (c)",
        "a + b",
        "c",
    ]
