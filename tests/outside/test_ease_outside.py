"""Ease where sources disagree: each of them, and what the blocks make of it."""

from __future__ import annotations

from itertools import pairwise

import pytest

from specc.pattern.lookup import line_named
from specc.pattern.measure import line_length
from tests.sources import Known, against
from tests.unit.library.blocks import IN, INCH, MISSES, WOMEN, body, girth, pieces
from tests.unit.library.quality import sewn

SIZES = IN[MISSES]


def cap_ease(block: str, size: str, settings: str = "") -> float:
    of = pieces(block, size, settings)
    armholes = sewn(of["front"], "armhole") + sewn(of["back"], "armhole")
    return (sewn(of["sleeve"], "cap-front", "cap-back") - armholes) / INCH


def waist_ease(block: str, size: str, settings: str = "") -> float:
    of = pieces(block, size, settings)
    around = 2.0 * (sewn(of["front"], "waist") + sewn(of["back"], "waist"))
    return (around - body(size, "waist")) / INCH


# Which of the two figures of a page belong together is not said there.
@against(Known.SECOND_HAND, "one source quoted on a page", "bust 2 in, waist 1 in, hip 2 in")
@against(Known.SECOND_HAND, "the other on the same page", "bust 2 1/2 in, waist 1 in, hip 3 in")
@pytest.mark.parametrize("asked", [("2 in", "1 in", "2 in"), ("2 1/2 in", "1 in", "3 in")])
def test_the_sheath_has_the_ease_that_either_source_asks_for(asked: tuple[str, str, str]) -> None:
    settings = "; ".join(
        f"{name}-ease {ease}" for name, ease in zip(("bust", "waist", "hip"), asked, strict=True)
    )
    for size in SIZES:
        for name, ease in zip(("bust", "waist", "hip"), asked, strict=True):
            wanted = sum(float(part) if "/" not in part else 0.5 for part in ease.split()[:-1])
            found = (girth("sheath", size, f"{name}-line", settings) - body(size, name)) / INCH
            assert found == pytest.approx(wanted, abs=1e-6)


@against(Known.SECOND_HAND, "textbooks, as two practitioners report", "1 to 1 1/2 in")
@pytest.mark.parametrize("block", ["sheath", "bodice"])
@pytest.mark.parametrize("size", SIZES)
def test_the_cap_is_drawn_with_the_ease_of_textbooks(block: str, size: str) -> None:
    assert 1.0 <= cap_ease(block, size) <= 1.5


@against(Known.SECOND_HAND, "the two practitioners themselves", "1/2 to 3/4 in is enough")
@pytest.mark.parametrize("block", ["sheath", "bodice"])
@pytest.mark.parametrize("size", SIZES)
def test_the_cap_can_be_drawn_with_the_ease_of_practitioners(block: str, size: str) -> None:
    assert 0.5 <= cap_ease(block, size, "cap-ease 5/8 in") <= 0.75


@against(Known.SECOND_HAND, "Armstrong, as reported", "cap 1 1/2 in on average, upper arm 2 in")
@pytest.mark.parametrize("block", ["sheath", "bodice"])
@pytest.mark.parametrize("size", SIZES)
def test_a_sleeve_can_be_drawn_with_the_ease_of_another_textbook(block: str, size: str) -> None:
    settings = "cap-ease 1 1/2 in; upper-arm-ease 2 in"
    sleeve = pieces(block, size, settings)["sleeve"]
    line = line_named(sleeve, "upper-arm-line")
    assert line is not None

    assert cap_ease(block, size, settings) == pytest.approx(1.5, abs=1e-6)
    assert (line_length(sleeve, line) - body(size, "upper-arm")) / INCH == pytest.approx(2.0, abs=1e-6)


@against(Known.READ, "Anthropometry, Apparel Sizing and Design, p. 228", "waist: half the step between sizes")
@pytest.mark.parametrize("block", ["straight-skirt", "trousers"])
def test_half_a_step_between_sizes_is_more_than_the_waist_has_in_large_sizes(block: str) -> None:
    """There steps are 2 in, and half of them more than the 1/2 to 3/4 in of the other source."""
    steps = {size: (body(after, "waist") - body(size, "waist")) / INCH for size, after in pairwise(SIZES)}
    short = {size for size, step in steps.items() if waist_ease(block, size) < step / 2.0 - 1e-6}

    assert short == {size for size, step in steps.items() if step > 1.75}
    assert all(
        waist_ease(block, size, "waist-ease 1 in") >= step / 2.0 - 1e-6 for size, step in steps.items()
    )


@against(Known.DERIVED, "cut to body / (1 + e), cloth stretched by e reaches the body")
@against(Known.PRACTICE)
@pytest.mark.parametrize(("chart", "stretch", "worn"), [(MISSES, 50, 10), (MISSES, 25, 50), (WOMEN, 100, 20)])
def test_a_knit_is_cut_smaller_by_no_more_than_its_stretch_makes_up(
    chart: str, stretch: int, worn: int
) -> None:
    """Between half and three quarters of the stretch at most are used; some is kept in reserve."""
    settings = f"stretch {stretch}%; stretch-worn {worn}%"
    for size in IN[chart]:
        around = girth("knit-top", size, "bust-line", settings, chart)
        bust = body(size, "bust", chart)
        assert around * (1.0 + stretch * worn / 1e4) == pytest.approx(bust, abs=1e-6)
        assert 1.0 - around / bust <= 0.75 * stretch / (100.0 + stretch)
