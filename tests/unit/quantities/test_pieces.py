"""Fastenings by the piece: how many, in which length, and what they cost, to the last fraction."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specc.pipeline import quantities
from tests.made import made

SPEC = """garment skirt "Skirt" {{ style "S"; sizes 8, 12, 16; order 8: 2, 12: 5, 16: 3; units in }}
use chart misses
use block a-line-skirt
cloth twill "twill" {{ width 58 in; is stable }}
trim zip "zip" {{ kind zip; {zip} }}
trim button "button" {{ kind button; diameter 5/8 in; thickness 1/8 in; {button} }}
alter {{ divide back.centre at {opening} from centre-waist into opening, centre }}
seam centre joins back.centre to back.centre by pressed-open
seam side joins front.side to back.side by pressed-open
hem bottom along front.hem, back.hem by double-turned
hem top along front.waist, back.waist by raw
closure zip along back.opening by zip-centred {{ zip zip; {settings} }}
closure row along back.opening by buttoned {{ button button; places {places} }}
"""
GROWING = "waist / 4"  # 6 in, 6 5/8 in, 7 1/2 in


def lines(
    *,
    zip_: str = "lengths 7 in, 8 in",
    button: str = "",
    opening: str = "7 1/2 in",
    settings: str = "",
    places: str = "3",
) -> dict[str, tuple[tuple[float, ...], float | None, Fraction | None]]:
    """The bill's lines of trims by title: by size, bought, cost."""
    text = SPEC.format(zip=zip_, button=button, opening=opening, settings=settings, places=places)
    found = quantities(made(text))
    assert found is not None
    return {line.title: (line.per_garment, line.buy, line.cost) for line in found.bill if line.kind == "trim"}


def test_a_zip_is_bought_in_the_length_that_is_sold() -> None:
    found = lines(zip_="lengths 7 in, 8 in; price 1.25 USD per piece")

    assert found["zip, 8 in"] == ((1.0, 1.0, 1.0), 10.0, Fraction("12.50"))


def test_an_opening_as_long_as_a_length_takes_that_length() -> None:
    assert set(lines(opening="7 in")) == {"zip, 7 in", "button"}
    assert set(lines(opening="7 in", settings="zip-length next-shorter")) == {"zip, 7 in", "button"}


def test_the_next_shorter() -> None:
    assert set(lines(settings="zip-length next-shorter")) == {"zip, 7 in", "button"}


def test_sizes_whose_openings_differ_take_lengths_that_differ() -> None:
    found = lines(zip_="lengths 6 in, 7 in, 8 in; price 1 USD per piece", opening=GROWING)

    assert {title: line[0] for title, line in found.items() if title != "button"} == {
        "zip, 6 in": (1.0, 0.0, 0.0),
        "zip, 7 in": (0.0, 1.0, 0.0),
        "zip, 8 in": (0.0, 0.0, 1.0),
    }
    assert [line[1] for title, line in found.items() if title != "button"] == [2.0, 5.0, 3.0]


def test_buttons_are_counted_by_their_places_and_bought_in_packs() -> None:
    """Ten garments with three each are thirty; packs of twelve make thirty-six."""
    assert lines(button="price 1/3 USD per piece")["button"] == ((3.0, 3.0, 3.0), 30.0, Fraction(10))
    packed = lines(button="price 1/3 USD per piece; sold in packs of 12")["button"]
    assert packed == ((3.0, 3.0, 3.0), 36.0, Fraction(12))


def test_buttons_every_so_far_are_as_many_as_fit_in_each_size() -> None:
    """On 6, 6 5/8 and 7 1/2 in at 1 1/2 in: 4, 4 and 5."""
    assert lines(opening=GROWING, places="every 1 1/2 in")["button"][0] == (4.0, 4.0, 5.0)


def test_a_zip_by_the_metre_is_as_long_as_its_opening() -> None:
    found = lines(zip_="price 4 EUR per m")["zip"]

    assert found[0] == pytest.approx((0.1905, 0.1905, 0.1905))
    assert found[1:] == (2.0, Fraction(8))  # 1.905 m, to the next quarter


def test_without_a_price_there_is_no_cost() -> None:
    assert lines()["button"][2] is None
