"""Colourways and packing on the bill: each colour for itself, cartons by what they hold."""

from __future__ import annotations

import json
from fractions import Fraction
from importlib.resources import files
from typing import TYPE_CHECKING

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.backends import write
from specc.model.material import Packing
from specc.pipeline import document, quantities
from specc.quantities.bill_packing import packing_line
from specc.resolve.buying import NOTHING_SAID
from specc.source import SourceFile
from specc.units import UNITS, Quantity
from specc.what_if import with_order
from tests.made import top

if TYPE_CHECKING:
    from specc.document.document import Page
    from specc.pipeline import Result
    from specc.quantities.quantities import BillLine

HERE = SourceFile("test.garment", "x").span(0, 1)
SOFT = (
    "finish neck along front.neck, back.neck by elastic-bound { binding soft }\n"
    'trim soft "soft" { kind fold-over elastic; width 20 mm; stretch 60%; price 2 EUR per m;'
    " sold in rolls of 5 m; colour white }\n"
)


def coloured(*bodies: str, head: str = "") -> Result:
    told = "".join(f"colourway c{place} {{ {body} }}\n" for place, body in enumerate(bodies))
    return top(SOFT + told, head=head)


def lines(result: Result, name: str) -> list[BillLine]:
    found = quantities(result)
    assert found is not None, [each.message for each in result.diagnostics]
    return [each for each in found.bill if each.name == name]


def test_each_colour_is_bought_for_itself() -> None:
    """A neck takes about 0.65 m: three take 2 m and six 4 m, a roll of each colour."""
    one, other = lines(coloured("order S: 3; soft rust", "order S: 2, L: 4; soft slate"), "soft")
    whole = lines(top(SOFT, head="order S: 5, L: 4; "), "soft")[0]
    assert (one.colour, other.colour) == ("rust", "slate")
    assert (one.colourways, other.colourways) == (("c0",), ("c1",))
    assert (one.order or 0) + (other.order or 0) == pytest.approx(whole.order)
    assert (one.buy, other.buy) == (5.0, 5.0)
    assert one.share + other.share == 1
    assert one.share == Fraction(3, 9)


def test_colourways_that_share_a_colour_share_its_rolls() -> None:
    """What a colourway does not name keeps the colour it has."""
    one, other = lines(coloured("order S: 1", "order S: 1; soft rust", "order S: 1; soft white"), "soft")
    assert (one.colour, one.colourways, one.share) == ("white", ("c0", "c2"), Fraction(2, 3))
    assert (other.colour, other.colourways) == ("rust", ("c1",))


def test_one_colour_throughout_is_one_line() -> None:
    (line,) = lines(coloured("order S: 1; soft rust", "order L: 1; soft rust"), "soft")
    assert (line.colour, line.colourways, line.share) == ("rust", (), Fraction(1))


def test_one_garment_costs_the_same_in_any_number_of_colours() -> None:
    plain = quantities(top(SOFT, head="order S: 3, L: 3; "))
    many = quantities(coloured("order S: 3; soft rust", "order L: 3; soft slate"))
    assert plain is not None
    assert many is not None
    assert plain.cost is not None
    assert many.cost is not None
    for one, other in zip(plain.cost.sizes, many.cost.sizes, strict=True):
        assert one.materials is not None
        assert other.materials is not None
        assert abs(one.materials - other.materials) <= Fraction(1, 100), "rounded line by line"


def test_the_table_adds_up_to_the_order() -> None:
    made = document(coloured("order S: 3; soft rust", "order S: 2, L: 4; soft slate"))
    assert made is not None
    (page,) = (each for each in made.pages if each.kind == "bill")
    rows = rows_of(page)
    assert rows["Garments, size S"] == ("3", "2")
    assert rows["Garments, size L"] == ("0", "4")
    assert rows["Garments in all"] == ("3", "6")
    assert rows["soft"][0].startswith("rust: ")
    assert rows["soft"][1].startswith("slate: ")


def rows_of(page: Page) -> dict[str, tuple[str, ...]]:
    (table,) = (block for block in page.blocks if getattr(block, "name", "") == "colourways")
    return {str(row.cells[0]): tuple(map(str, row.cells[1:])) for row in table.rows}  # type: ignore[union-attr]


def test_another_order_is_of_one_colour() -> None:
    asked = with_order(coloured("order S: 3; soft rust", "order S: 2; soft slate"), {"S": 7})
    (line,) = lines(asked, "soft")
    assert line.order == pytest.approx(7 * line.per_garment[0])


@given(st.integers(0, 5000), st.integers(0, 300), st.integers(1, 60), st.integers(1, 200))
def test_cartons_hold_the_order(total: int, more: int, holds: int, pack: int) -> None:
    sold = Quantity.of(Fraction(pack), UNITS[""])
    carton = Packing("carton", "carton", holds, None, sold, NOTHING_SAID, None, None, HERE)
    line, other = packing_line(carton, 2, total), packing_line(carton, 2, total + more)
    assert line.order is not None
    assert line.buy is not None
    assert other.buy is not None
    assert (line.order - 1) * holds < total <= line.order * holds or line.order == total == 0
    assert line.order <= line.buy < line.order + pack
    assert line.buy % pack == 0
    assert line.buy <= other.buy


def test_labels_have_prices() -> None:
    label = (
        'label main at back.neck { says "Saltmarsh Works"; price 0.10 EUR per piece; sold in packs of 50 }\n'
    )
    (line,) = lines(top(SOFT + label, head="order S: 60; "), "main")
    assert (line.order, line.buy, line.cost) == (60.0, 100.0, Fraction(10))


def test_the_result_of_colours_and_packing_keeps_to_its_schema() -> None:
    colours = "colourway c { order S: 1; soft rust }\ncolourway d { order S: 1; soft slate }\n"
    made = document(top(SOFT + colours + "packing bag { holds 2 }\n"))
    assert made is not None
    (file,) = write(made, ("json",))
    schema = json.loads(files("specc.backends").joinpath("result.schema.json").read_text(encoding="utf-8"))
    jsonschema.validate(json.loads(file.data), schema)
