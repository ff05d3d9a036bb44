"""Closures: zips, buttons, slits."""

from __future__ import annotations

from itertools import pairwise

import pytest

from specc.making.spacing import Spread, spread
from specc.pipeline import quantities
from tests.made import made as checked
from tests.made import sizes
from tests.methods import inches, made
from tests.sources import ARMY_REPAIR, Known, against

INCH = 25.4
SKIRT = """garment skirt "Skirt" {{ style "S"; sizes 12; units in }}
use chart misses
use block a-line-skirt
cloth twill "twill" {{ width 58 in; is stable }}
trim button "button" {{ kind button; diameter {diameter}; thickness {thickness} }}
trim strip "strip" {{ kind bias strip; cut-from twill }}
alter {{ divide back.centre at {opening} from centre-waist into opening, centre }}
seam centre joins back.centre to back.centre by pressed-open
seam side joins front.side to back.side by pressed-open
{made}
"""


def hole(diameter: str, thickness: str, settings: str = "stand 1 in") -> tuple[float, float]:
    """How far a buttonhole reaches beyond its place toward the edge, and inward, in inches."""
    row = f"closure row along back.opening by buttoned {{ button button; places 1; {settings} }}"
    text = SKIRT.format(diameter=diameter, thickness=thickness, opening="7 in", made=row)
    (closed,) = sizes(checked(text))[0].closures
    (place,) = closed.places
    assert place.hole is not None
    return tuple(place.at.distance(end) / INCH for end in place.hole)  # type: ignore[return-value]


@against(
    Known.READ,
    "a sewing guide on the web (1999), on placing buttonholes",
    "button 1 in wide, 1/4 in thick: 1 1/8 in on one side of the centre, 1/8 in toward the edge",
)
def test_a_buttonhole_across_the_centre_line() -> None:
    assert hole("1 in", "1/4 in") == pytest.approx((1 / 8, 1 + 1 / 8))


@against(
    Known.READ, "a sewing machine's manual, on buttonholes", "extends 1/8 in (3 mm) beyond the centre line"
)
@pytest.mark.parametrize("diameter", ["1/2 in", "5/8 in", "3/4 in"])
def test_a_buttonhole_begins_beyond_the_centre_line(diameter: str) -> None:
    assert hole(diameter, "1/8 in")[0] == pytest.approx(1 / 8)


@against(
    Known.READ,
    "a pattern maker's page on buttons",
    "1/2 in button 5/8 in hole, 5/8 in button 3/4 in, 3/4 in button 7/8 in",
)
@pytest.mark.parametrize(("diameter", "length"), [("1/2 in", 5 / 8), ("5/8 in", 3 / 4), ("3/4 in", 7 / 8)])
def test_a_buttonhole_is_an_eighth_longer_than_a_flat_button(diameter: str, length: float) -> None:
    """Their flat buttons are about 1/8 in thick."""
    assert sum(hole(diameter, "1/8 in")) == pytest.approx(length)


@against(
    Known.READ,
    "a teacher's page on buttonholes (2010)",
    "diameter + thickness + 3 mm (1/8 in)",
)
def test_others_add_an_eighth_besides() -> None:
    """Sources differ; what is added is a setting."""
    assert sum(hole("5/8 in", "1/8 in", "stand 1 in; loose 1/8 in")) == pytest.approx(7 / 8)


@against(Known.READ, "an embroidery teacher's page (2023)", "18 in and 6 buttons: 18 / 5 = 3.6 in apart")
def test_buttons_evenly_from_the_first_to_the_last() -> None:
    places = spread(Spread(20.0, 6, None, 1.0, 19.0, None))
    assert isinstance(places, tuple)
    assert [b - a for a, b in pairwise(places)] == pytest.approx([3.6] * 5)


@against(
    Known.READ,
    "American Sewing Guild, Placket pointers",
    "strip 1 1/4 in wide, twice the opening and 1 in long, sewn at 1/4 in",
)
def test_the_strip_of_a_continuous_placket() -> None:
    finish = "finish slit along back.opening by continuous-bound { strip strip }"
    text = SKIRT.format(diameter="1/2 in", thickness="1/8 in", opening="3 in", made=finish)
    found = quantities(checked(text))
    assert found is not None
    (strip,) = found.sizes[0].trims

    assert strip.cut_length == pytest.approx((2 * 3 + 1) * INCH)
    assert strip.cut_width == pytest.approx(1.25 * INCH)
    assert inches(made("continuous-bound").allowance) == pytest.approx(1 / 4)


@against(Known.SECOND_HAND, "a dressmaking page", "strip 1 in wide, sewn at 6 mm: 6 mm finished")
def test_a_narrower_strip() -> None:
    """2 * 6 mm and 2 * 6 mm are 24 mm; they cut 25 mm."""
    (strip,) = made("continuous-bound", "finished 6 mm; seam 6 mm").takes

    assert inches(strip.cut_width) * INCH == pytest.approx(24.0)


@against(Known.READ, ARMY_REPAIR, "button 20-24 stitches")
def test_stitches_of_a_button() -> None:
    (sewn,) = (done for done in made("buttoned").passes if "a button at each place" in done.text)

    assert "20 to 24 stitches" in sewn.text


@against(Known.PRACTICE)
def test_a_hook_meets_its_eye() -> None:
    """The upper end lies where the underlap begins; hook and eye lie equally far from it."""
    places = made("hook-and-eye").places
    assert places is not None

    laps = inches(made("hook-and-eye").laps)
    assert laps == pytest.approx(inches(places.inset) + inches(places.other))
