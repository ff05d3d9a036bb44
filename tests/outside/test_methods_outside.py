"""Ways of making."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.pattern.lookup import piece_named
from specc.pipeline import quantities
from tests.made import made as checked
from tests.made import sizes
from tests.methods import inches, made
from tests.sources import ARMY_REPAIR, HEM_DEPTHS, Known, against

if TYPE_CHECKING:
    from specc.model.construction import Making
    from specc.pipeline import Result

INCH = 25.4
NEAR = 1e-9  # lengths are floats here
GARMENTS = Path(__file__).parents[1] / "garments"


def text_of(name: str) -> str:
    return (GARMENTS / f"methods-{name}.garment").read_text(encoding="utf-8")


def trial(name: str) -> Result:
    return checked(text_of(name))


def set_to(making: Making, name: str) -> float:
    """What a setting printed in inches is set to."""
    (value,) = (setting.value for setting in making.settings if setting.name == name)
    number, unit = value.rsplit(" ", 1)
    assert unit == "in"
    return float(sum(Fraction(part) for part in number.split()))


# --- seams ---


@against(Known.DERIVED, "allowance = first row + second row")
@pytest.mark.parametrize(("first", "second"), [(1 / 8, 1 / 4), (1 / 8, 3 / 8), (3 / 16, 1 / 4)])
def test_a_french_seam_takes_what_both_its_rows_take(first: float, second: float) -> None:
    """The turn of the cloth is left out."""
    making = made("french", f"first {first} in; second {second} in")

    assert inches(making.allowance) == pytest.approx(first + second)


@against(
    Known.READ,
    "L. Conover, A Complete Course in Dressmaking, vol. 1 (1922)",
    "first row 1/8 in, second 1/4 in",
)
def test_the_french_seam_of_an_old_course() -> None:
    rows = [inches(done.inset) for done in made("french").passes if done.stitch]

    assert rows == [pytest.approx(1 / 8), pytest.approx(1 / 4)]
    assert inches(made("french").allowance) == pytest.approx(3 / 8)


@against(Known.READ, "Utah State University Extension", "trimmed to 1/8 in, second row 3/8 in")
def test_the_french_seam_of_a_bulletin() -> None:
    """1/2 in of the cloth are used."""
    assert inches(made("french", "second 3/8 in").allowance) == pytest.approx(1 / 2)


@against(Known.SECOND_HAND, "an encyclopaedia article", "allowance + 1/4 in, sewn 1/8 in from the edge")
@pytest.mark.parametrize(("allow", "strip"), [(5 / 8, 7 / 8), (1 / 2, 3 / 4)])
def test_a_hong_kong_strip_is_a_quarter_inch_wider_than_the_allowance(allow: float, strip: float) -> None:
    making = made("hong-kong", f"allow {allow} in")

    assert [inches(taken.cut_width) for taken in making.takes] == [pytest.approx(strip)] * 2
    assert inches(making.passes[2].inset) == pytest.approx(1 / 8)


@against(Known.DERIVED, "each allowance is as long as the seam")
def test_the_strips_of_a_hong_kong_seam_go_along_both_allowances() -> None:
    """The side seam is there twice."""
    found = quantities(trial("jacket"))
    assert found is not None
    strips = [cut for cut in found.sizes[0].trims if cut.used_on == "side"]

    assert [cut.count for cut in strips] == [2, 2]
    assert all(cut.cut_length == pytest.approx(cut.seam_length) for cut in strips)


@against(Known.DERIVED, "fell = allowance - folded in")
@against(Known.SECOND_HAND, "a handbook on the web", "under allowance trimmed to half, 1/8 in folded over it")
@against(Known.PRACTICE)
@pytest.mark.parametrize(
    ("settings", "trimmed", "fell"),
    [
        ("", 1 / 4, 3 / 8),  # the handbook
        ("allow 5/8 in", 5 / 16, 1 / 2),
        ("trimmed 1/8 in; under 1/4 in", 1 / 8, 1 / 4),  # common practice, no source
    ],
)
def test_a_fell_covers_the_allowance_that_it_is_folded_over(
    settings: str, trimmed: float, fell: float
) -> None:
    """It is wider than what is trimmed."""
    making = made("flat-felled", settings)

    assert set_to(making, "trimmed") == pytest.approx(trimmed)
    assert inches(making.allowance) - set_to(making, "under") == pytest.approx(fell)
    assert set_to(making, "trimmed") < inches(making.allowance) - set_to(making, "under")


@against(Known.SECOND_HAND, "course cards on ASTM D6193", "straight seams 1/2 in")
@against(Known.READ, "a sewing reference, Ribbed edges", "1/4 in")
@against(Known.PRACTICE)
@pytest.mark.parametrize(
    ("method", "least", "most"),
    [
        ("pressed-open", 5 / 8, 5 / 8),  # usual in home patterns: common practice, no source
        ("pressed-to-one-side", 1 / 2, 1 / 2),  # straight seams in the trade: course cards on ASTM D6193
        ("overlocked", 1 / 4, 3 / 8),  # knits: common practice, no source
        ("rib-band", 1 / 4, 1 / 4),  # a sewing reference, Ribbed edges
        ("elastic-bound", 0, 0),  # the binding covers the raw edge: common practice, no source
        ("bias-bound", 0, 0),
    ],
)
def test_allowances_are_the_usual_ones(method: str, least: float, most: float) -> None:
    assert least - NEAR <= inches(made(method).allowance) <= most + NEAR


@against(Known.READ, "Apparel Design, Textiles & Construction (2012), p. 451")
@pytest.mark.parametrize("method", ["turned", "faced", "waistband"])
def test_enclosed_allowances_are_trimmed_to_an_eighth_or_a_quarter(method: str) -> None:
    assert 1 / 8 <= set_to(made(method), "trimmed") <= 1 / 4


@against(Known.READ, "a sewing manual of the US Army and Air Force", "1/4 in, to 3/8 in on heavy cloth")
@pytest.mark.parametrize("method", ["topstitched", "turned", "patch"])
def test_a_second_row_lies_a_quarter_inch_beside(method: str) -> None:
    making = made(method, "rows two" if method == "patch" else "")
    beside = [inches(done.inset) for done in making.passes if done.stitch == "301"][-1]

    assert 1 / 4 - NEAR <= beside <= 3 / 8 + NEAR


@against(
    Known.READ, "a sewing manual of the US Army and Air Force", "1/16 in on light, 1/8 in on heavy cloth"
)
@pytest.mark.parametrize("method", ["lapped", "flat-felled", "patch", "folded-strap"])
def test_a_folded_edge_is_sewn_a_sixteenth_or_an_eighth_from_its_fold(method: str) -> None:
    last = [done for done in made(method).passes if done.inset is not None][-1]

    assert 1 / 16 - NEAR <= inches(last.inset) <= 1 / 8 + NEAR


@against(Known.READ, "MIL-DTL-44105C, 3.7.3", "at least 1/4 in")
@against(Known.READ, "US Army TM 10-8415-210-13&P", "at least 1/2 in")
def test_the_row_of_a_pocket_is_secured_at_its_ends() -> None:
    assert set_to(made("patch"), "back") >= 1 / 4
    assert set_to(made("patch", "back 1/2 in"), "back") >= 1 / 2


# --- stitches an inch ---


@against(Known.READ, ARMY_REPAIR, "301 10 to 12, overedge 6 to 10")
@against(Known.READ, "American & Efird", "jersey 10 to 12")
@against(Known.MEMORY, "blind stitches 3 to 5")
@pytest.mark.parametrize(
    ("method", "stitch", "least", "most"),
    [
        ("overlocked", "504", 6, 10),  # overedge 6 to 10: US Army TM 10-8400-201-23, table 3-1
        ("rib-band", "514", 6, 12),  # the same; jersey 10 to 12: American & Efird
        ("flat-knit", "607", 10, 12),  # jersey tops: American & Efird
        ("cover-stitched", "406", 10, 12),
        ("pressed-open", "301", 10, 12),  # general seams: US Army TM 10-8400-201-23, table 3-1
        ("waistband", "301", 10, 12),
        ("blind", "103", 3, 5),  # from memory
    ],
)
def test_stitches_an_inch(method: str, stitch: str, least: float, most: float) -> None:
    (row, *_) = (done for done in made(method).passes if done.stitch == stitch)

    assert least - 0.01 <= 1 / inches(row.stitch_length) <= most + 0.2


@against(Known.SECOND_HAND, "sewing charts", "4 to 5 mm for gathering and basting")
@pytest.mark.parametrize("method", ["gathered", "set-in"])
def test_rows_to_draw_in_have_long_stitches(method: str) -> None:
    (first, second, *_) = (done for done in made(method).passes if done.stitch)

    for row in (first, second):
        assert 4 - NEAR <= inches(row.stitch_length) * INCH <= 5 + NEAR


# --- bindings and facings ---


@against(Known.MEMORY, "couture handbooks", "6 times, and up to 1/4 in")
@pytest.mark.parametrize(("finished", "cut"), [(1 / 4, 3 / 2), (3 / 8, 9 / 4)])
def test_a_doubled_binding_is_cut_six_times_its_finished_width(finished: float, cut: float) -> None:
    (taken,) = made("double-bias-bound", f"finished {finished} in").takes
    (thick,) = made("double-bias-bound", f"finished {finished} in; turn-of-cloth 1/4 in").takes

    assert inches(taken.cut_width) == pytest.approx(cut)
    assert inches(thick.cut_width) == pytest.approx(cut + 1 / 4)


@against(Known.PRACTICE)
@pytest.mark.parametrize(("seen", "allow"), [(3 / 4, 1 / 4), (1, 3 / 8)])
def test_a_bias_facing_is_cut_as_wide_as_is_seen_and_two_allowances(seen: float, allow: float) -> None:
    (taken,) = made("bias-faced", f"seen {seen} in; allow {allow} in").takes

    assert inches(taken.cut_width) == pytest.approx(seen + 2 * allow)


# --- hems ---


@against(
    Known.READ,
    HEM_DEPTHS,
    "skirts 2 to 3 in, pullovers 3/8 to 1 1/4, slacks 5/8 to 1 1/4, blouses 3/8 to 3/4",
)
@against(Known.READ, "4-H bulletins", "1/4 in turned under")
@pytest.mark.parametrize(
    ("method", "least", "most"),
    [
        ("blind", 2, 3),  # straight and A-line skirts: American Sewing Guild
        ("cover-stitched", 3 / 8, 5 / 4),  # pullovers: American Sewing Guild
        ("single-turned", 5 / 8, 5 / 4),  # women's slacks and shorts: American Sewing Guild
        ("double-turned", 3 / 8, 3 / 4),  # untucked blouses: American Sewing Guild
    ],
)
def test_hems_are_as_deep_as_is_usual(method: str, least: float, most: float) -> None:
    making = made(method)
    under = 1 / 4 if method == "double-turned" else 0  # 1/4 in is typical: 4-H bulletins

    assert least - NEAR <= inches(making.allowance) - under <= most + NEAR


# A hem for each published depth: what is cut on is the depth, and 1/4 in where it is turned twice.
@against(Known.READ, HEM_DEPTHS, "dresses, coats 1 1/2 to 2 in; men's trousers 2; flared skirts 1/4 to 3/8")
@against(
    Known.READ, "T. Johnson, 4-H bulletin (Michigan State)", "flared skirts 1 1/2 in, circles 1/4, sheer to 4"
)
@against(
    Known.READ, "Texas A&M Extension L-359", "fairly straight skirts 2 1/2 in, gored 2, circular 1/4 to 2"
)
@against(Known.READ, "Nebraska 4-H Clothing Leaflet 8 (1964)", "gathered sheer skirts 3 to 7 in")
@pytest.mark.parametrize("method", ["single-turned", "double-turned"])
@pytest.mark.parametrize("deep", ["1/4", "1 1/2", "2 1/2", "4", "7"])
def test_hems_can_be_made_as_deep_as_each_source_has_them(method: str, deep: str) -> None:
    making = made(method, f"deep {deep} in")
    under = 1 / 4 if method == "double-turned" else 0

    assert inches(making.allowance) - under == pytest.approx(float(sum(map(Fraction, deep.split()))))


@against(
    Known.READ,
    "a course on the web",
    "a narrow hem turned twice takes at most 1.5 cm, a deep one more than 2 cm",
)
def test_the_hem_turned_twice_is_narrow_and_the_blind_hem_deep() -> None:
    assert set_to(made("double-turned"), "deep") * INCH <= 15
    assert set_to(made("blind"), "deep") * INCH > 20


@against(Known.READ, "a course on the web", "at most 3 mm")
@against(Known.DERIVED, "rolled twice it takes twice that")
def test_a_rolled_hem_is_three_millimetres_or_less() -> None:
    assert inches(made("rolled").allowance) * INCH <= 2 * 3 + NEAR


# --- casings ---


@against(Known.READ, "Sewing & Craft Alliance, guideline 12.150", "elastic + 1/4 in, 1/4 in pressed under")
@pytest.mark.parametrize("width", [1 / 2, 3 / 4, 1])
def test_a_casing_is_a_quarter_inch_wider_than_its_elastic(width: float) -> None:
    """Cut to the width, what is sewn is the allowance less what is turned under."""
    result = checked(text_of("skirt").replace("width 25 mm", f"width {width} in"))
    (allowance,) = (use.allowance for use in sizes(result)[0].uses if use.by == "under-waist")

    assert allowance / INCH - 1 / 4 == pytest.approx(width + 1 / 4)


@against(Known.SECOND_HAND, "sewing pages", "firm elastic 0 to 1 in less")
@against(Known.SECOND_HAND, "sewing pages", "soft elastic 3 to 5 in less")
@against(Known.SECOND_HAND, "sewing references", "overlap 1/2 to 1 in")
def test_elastic_at_the_waist_is_up_to_five_inches_shorter_than_the_waist() -> None:
    result = trial("skirt")
    found = quantities(result)
    assert found is not None

    for size in found.sizes:
        (elastic,) = (cut for cut in size.trims if cut.used_on == "under-waist")
        waist = {"S": 680.0, "L": 840.0}[size.size]
        relaxed = elastic.cut_length - sum(addition.length for addition in elastic.additions)
        assert 0 <= (waist - relaxed) / INCH <= 5
        assert 1 / 2 - NEAR <= sum(addition.length for addition in elastic.additions) / INCH <= 1 + NEAR


# --- rib ---


@against(Known.READ, "sewing.org", "2/3 to 3/4, as 12 in to 16 in")
def test_a_rib_band_is_two_thirds_to_three_quarters_of_its_opening() -> None:
    for size in sizes(trial("top")):
        (walk,) = (walk for walk in size.walks if walk.seam == "neck")

        assert 2 / 3 <= walk.second_length / walk.first_length <= 3 / 4 + 1e-9


@against(Known.READ, "sewing.org", "16 in to 12 in of rib")
@against(Known.SECOND_HAND, "a sewing studio's page", "66 cm to 60 cm of the cloth itself")
@against(Known.DERIVED, "ease = 1 / share - 1")
@pytest.mark.parametrize(
    ("opening", "band", "ease", "walks"),
    [
        (16, 12, "33.33%", True),  # of rib
        (66, 60, "10%", True),  # of the cloth itself, 25 % stretch
        (66, 60, "33.33%", False),
    ],
)
def test_the_ease_of_a_band_is_opening_over_band_less_one(
    opening: float, band: float, ease: str, *, walks: bool
) -> None:
    """Then the seam walks."""
    text = text_of("top").replace("= 75%", f"= {band} / {opening}").replace("33.33%", ease)
    found = checked(text)

    assert all(
        (abs(walk.difference) <= walk.tolerance) is (walks or walk.seam != "neck")
        for size in sizes(found)
        for walk in size.walks
    )


@against(Known.READ, "a sewing reference, Ribbed edges", "two allowances of 1/4 in")
def test_a_rib_band_is_cut_twice_its_finished_width_and_half_an_inch() -> None:
    """Ours finishes 3/4 in wide."""
    size = sizes(trial("top"))[0]
    band = piece_named(size.pieces, "neckband")
    assert band is not None
    width = next(edge for edge in band.edges if edge.name == "end").parts[0].length()
    cut_on = sum(
        use.allowance for use in size.uses if use.piece == "neckband" and use.edge in {"inner", "neck"}
    )

    assert (width + cut_on) / INCH == pytest.approx(2 * 3 / 4 + 1 / 2)


# --- sleeves ---


@against(Known.SECOND_HAND, "textbooks, as two practitioners report", "1 to 1 1/2 in")
def test_the_ease_of_a_set_in_cap() -> None:
    for size in sizes(trial("jacket")):
        (walk,) = (walk for walk in size.walks if walk.seam == "armhole")

        assert 1 <= (walk.first_length - walk.second_length) / INCH <= 1.5
