"""Cloths, trims and threads, and their prices."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specc.model.material import FibreShare, Price
from specc.units import UNITS, Quantity
from tests.worlds import garment_of, told

REST = """
garment dress { }
use chart misses
use block sheath
cloth lawn { fibre 100% cotton }
"""


def cloth(body: str) -> str:
    return f"{REST}cloth silk {{\nfor lining\n{body}\n}}\n"


def trim(body: str) -> str:
    return f"{REST}trim tape {{\n{body}\n}}\n"


def test_a_cloth_is_what_it_says() -> None:
    body = """fibre 60% silk, 40% sea island cotton
      width 54 in, usable 52 in
      weight 4 oz/yd2
      is open, bias cut
      shrinks 2% width, 3% length
      stretch 5%
      price 14.50 USD per yd
      colour "rust red"
    """
    silk = garment_of(cloth(body)).cloths[1]

    assert silk.fibres == (
        FibreShare("silk", Fraction(3, 5)),
        FibreShare("sea island cotton", Fraction(2, 5)),
    )
    assert silk.width == Quantity.of(54, UNITS["in"])
    assert silk.usable == Quantity.of(52, UNITS["in"])
    assert silk.weight == Quantity.of(4, UNITS["oz/yd2"])
    assert silk.traits == ("open", "bias-cut")
    assert (silk.shrinks_length, silk.shrinks_width) == (Fraction(3, 100), Fraction(2, 100))
    assert silk.stretch == Fraction(5, 100)
    assert silk.price == Price(Fraction(29, 2), "USD", "yd")
    assert (silk.use, silk.title, silk.colour) == ("lining", "silk", "rust red")


def test_all_of_a_width_is_usable_unless_it_is_said() -> None:
    assert garment_of(cloth("width 1.5 m")).cloths[1].usable == Quantity.of(Fraction(3, 2), UNITS["m"])


def test_a_cloth_is_for_the_shell_unless_it_says_otherwise() -> None:
    assert garment_of(REST).cloths[0].use == "shell"


@pytest.mark.parametrize(
    ("body", "answer"),
    [
        ("fibre 90% silk", ("SPC306", "90% silk")),
        ("fibre 60% silk, 41% wool", ("SPC306", "60% silk, 41% wool")),
        ("fibre silk", ("SPC207", "silk")),
        ("fibre silk 100%", ("SPC207", "silk 100%")),
        ("fibre 100 silk", ("SPC207", "100 silk")),
        ("fibre 100%", ("SPC207", "100%")),
        ("fibre 100 g silk", ("SPC207", "100 g silk")),
        ("fibre 50% silk, 50% silk", ("SPC202", "50% silk")),
        ("fibre 100% silk, 0% wool", ("SPC211", "0% wool")),
        ("width 54", ("SPC207", "54")),
        ("width 54 g", ("SPC207", "54 g")),
        ("width 0 in", ("SPC211", "0 in")),
        ("width 11 m", ("SPC211", "11 m")),
        ("width 54 in usable 52 in", ("SPC207", "54 in usable 52 in")),
        ("width 54 in, useable 52 in", ("SPC210", "useable")),
        ("width 54 in, 52 in", ("SPC207", "52 in")),
        ("width 54 in, usable 55 in", ("SPC211", "55 in")),
        ("width 54 in, usable 52 in, 50 in", ("SPC207", "54 in, usable 52 in, 50 in")),
        ("weight 140", ("SPC207", "140")),
        ("weight 140 g", ("SPC207", "140 g")),
        ("weight 20000 g/m2", ("SPC211", "20000 g/m2")),
        ("is shear", ("SPC210", "shear")),
        ("is open sheer", ("SPC207", "open sheer")),
        ("is open, open", ("SPC202", "open")),
        ("is ravels, ravel-free", ("SPC213", "ravel-free")),
        ("is woven, knit", ("SPC213", "knit")),
        ("shrinks 3%", ("SPC207", "3%")),
        ("shrinks 3 length", ("SPC207", "3 length")),
        ("shrinks 3% lenght", ("SPC210", "lenght")),
        ("shrinks 3% length, 2% length", ("SPC202", "2% length")),
        ("shrinks 100% length", ("SPC211", "100%")),
        ("stretch 60", ("SPC207", "60")),
        ("stretch 1001%", ("SPC211", "1001%")),
        ("price 14.50 USD", ("SPC207", "14.50 USD")),
        ("price 14.50 per yd", ("SPC207", "14.50 per yd")),
        ("price 14.50 usd per yd", ("SPC210", "usd")),
        ("price 14.50 US per yd", ("SPC210", "US")),
        ("price 14.50 USD per yard", ("SPC210", "yard")),
        ("price 14.50 USD per roll", ("SPC210", "roll")),
        ("price 14.50 USD per piece", ("SPC210", "piece")),
        ("price 14.50 USD per yd, 3 EUR per m", ("SPC207", "3 EUR per m")),
        ("at-least 50", ("SPC207", "50")),
        ("price 2000000 USD per yd", ("SPC211", "2000000 USD")),
        ('colour ""', ("SPC207", '""')),
        ("kind tape", ("SPC206", "kind")),
    ],
)
def test_a_slip_in_a_cloth_is_told_at_its_own_place(body: str, answer: tuple[str, str]) -> None:
    assert told(cloth(body)) == [answer]


@pytest.mark.parametrize(
    ("body", "answer"),
    [
        ("width 1 in", ("SPC302", "tape")),
        ("kind ribon", ("SPC210", "ribon")),
        ("kind tape\ncut-from lwan", ("SPC201", "lwan")),
        ("kind tape\ncut-from tape", ("SPC201", "tape")),
        ("kind tape\nsold 25 yd", ("SPC207", "25 yd")),
        ("kind tape\nsold in rolls of 25", ("SPC207", "25")),
        ("kind tape\nsold in rolls of 0 yd", ("SPC211", "0 yd")),
        ("kind tape\nis open", ("SPC206", "is")),
    ],
)
def test_a_slip_in_a_trim_is_told_at_its_own_place(body: str, answer: tuple[str, str]) -> None:
    assert told(trim(body)) == [answer]


def test_a_trim_is_what_it_says() -> None:
    body = "kind fold over elastic\nwidth 1 in\nsold in rolls of 25 yd\nprice 0.20 EUR per piece"
    (tape,) = garment_of(trim(body)).trims

    assert (tape.kind, tape.cut_from) == ("fold-over elastic", None)
    assert tape.sold_in == Quantity.of(25, UNITS["yd"])
    assert tape.price == Price(Fraction(1, 5), "EUR", "piece")


@pytest.mark.parametrize(
    ("written", "mended"),
    [
        ("fibre silk 100%", "100% silk"),
        ("fibre 100 sea island cotton", "100% sea island cotton"),
        ("is open sheer", "open, sheer"),
        ("price 3 usd per yd", "USD"),
        ("price 3 USD per metre", "m"),
    ],
)
def test_what_was_meant_beyond_doubt_is_mended(written: str, mended: str) -> None:
    from specc.diagnostics import Applicability
    from tests.worlds import resolved

    (answer,) = resolved(cloth(written))[1]

    assert answer.fix is not None
    assert answer.fix.applicability is Applicability.SAFE
    assert [edit.replacement for edit in answer.fix.edits] == [mended]
