"""Closures laid out on real pieces: sides, places, buttonholes, and what is open and what is worn."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from specc.making.assembly import NotchReason
from specc.pattern.lookup import corner_named, piece_named
from tests.made import SHOULDERS, SIDES, codes, length, made, sizes, top

if TYPE_CHECKING:
    from specc.making.assembly import Opening
    from specc.making.closed import Closed
    from specc.pipeline import Result

INCH = 25.4
SKIRT = """garment skirt "Skirt" {{ style "S"; {head}sizes 8, 12; units in }}
use chart misses
use block a-line-skirt
cloth twill "twill" {{ width 58 in; is stable }}
trim zip "zip" {{ kind zip; lengths 7 in, 8 in }}
trim button "button" {{ kind button; diameter 5/8 in; thickness 1/8 in }}
trim hook "hook and bar" {{ kind hook and eye }}
alter {{ divide back.centre at 7 1/2 in from centre-waist into opening, centre
{alter} }}
seam centre joins back.centre to back.centre by pressed-open
seam side joins front.side to back.side by pressed-open
hem bottom along front.hem, back.hem by double-turned
"""
BAND = "band front.waist, back.waist by 2 1/2 in, lapping 1 1/4 in as waistband"
WAIST = """seam waist joins front.waist, back.waist to waistband.bottom with waistband.top by waistband
seam lap joins waistband.bottom-lap to waistband.top-lap by turned
closure zip along back.opening by zip-centred { zip zip }
closure hook along waistband.start to waistband.end by hook-and-eye {
  hook hook
  places 1, first 5/8 in from bottom-start
}
"""


def skirt(rest: str, *, alter: str = "", head: str = "") -> Result:
    return made(SKIRT.format(alter=alter, head=head) + rest)


def closed(result: Result, name: str) -> Closed:
    (found,) = (one for one in sizes(result)[0].closures if one.closure == name)
    return found


def along(openings: tuple[Opening, ...], edge: str) -> Opening:
    (found,) = (one for one in openings if edge in one.edges)
    return found


def test_a_zip_closes_the_left_on_the_right() -> None:
    result = skirt("closure zip along back.opening by zip-centred { zip zip }\n")

    zip_ = closed(result, "zip")

    assert (zip_.count, zip_.places) == (1, ())
    assert zip_.first == zip_.second == pytest.approx(7.5 * INCH)


def test_open_the_edge_goes_down_and_up_again_and_closed_it_is_the_waist() -> None:
    result = skirt("closure zip along back.opening by zip-centred { zip zip }\n")
    size = sizes(result)[0]
    waist = 2 * (length(result, "front.waist") + length(result, "back.waist"))

    assert along(size.openings, "back.waist").passes == pytest.approx(waist + 15 * INCH)
    assert along(size.worn, "back.waist").passes == pytest.approx(waist)
    assert along(size.worn, "back.hem") == along(size.openings, "back.hem")


def test_between_two_closures_the_waist_goes_on_behind_each() -> None:
    """Centre back and both sides open: one way round, of which the waist is left when all are closed."""
    alter = "divide front.side, back.side at 5 in from waist-side into placket, side\n"
    body = "{ button button; places 2; stand 1/2 in }"
    result = skirt(
        "closure zip along back.opening by zip-centred { zip zip }\n"
        f"closure row along front.placket to back.placket by buttoned {body}\n",
        alter=alter,
    )
    size = sizes(result)[0]
    waist = 2 * (length(result, "front.waist") + length(result, "back.waist"))

    assert along(size.openings, "back.waist").passes == pytest.approx(waist + 15 * INCH + 4 * 5 * INCH)
    # Each side laps by twice its stand.
    assert along(size.worn, "back.waist").passes == pytest.approx(waist - 2 * INCH)
    assert set(along(size.worn, "back.waist").edges) == {"back.waist", "front.waist"}


def test_a_skirt_buttoned_all_the_way_down_leaves_a_waist_and_a_hem() -> None:
    """Open, it is one round: waist, down the one side, hem, up the other."""
    body = "{ button button; places 9 }"
    text = SKIRT.format(alter="", head="")
    unsewn = "".join(line for line in text.splitlines(keepends=True) if not line.startswith("seam centre"))
    result = made(unsewn + f"closure row along back.opening, back.centre by buttoned {body}\n")
    size = sizes(result)[0]
    (whole,) = size.openings
    waist = 2 * (length(result, "front.waist") + length(result, "back.waist"))
    hem = 2 * (length(result, "front.hem") + length(result, "back.hem"))

    assert whole.flat == pytest.approx(
        waist + hem + 2 * (length(result, "back.opening") + length(result, "back.centre"))
    )
    assert along(size.worn, "back.waist").flat == pytest.approx(waist - 1.5 * INCH)
    assert along(size.worn, "back.hem").flat == pytest.approx(hem - 1.5 * INCH)


def test_a_lapped_waistband_is_as_long_as_the_waist_when_it_is_hooked() -> None:
    """Its lap leads nowhere, and its folded ends lie on no round: what passes is told without them."""
    result = skirt(WAIST, alter=BAND)
    size = sizes(result)[0]
    waist = 2 * (length(result, "front.waist") + length(result, "back.waist"))

    assert length(result, "waistband.bottom") == pytest.approx(waist)
    assert length(result, "waistband.bottom-lap") == pytest.approx(1.25 * INCH)
    assert along(size.openings, "waistband.top").passes == pytest.approx(waist + 15 * INCH)
    assert along(size.worn, "waistband.top").sewn == pytest.approx(waist)


def test_the_hook_and_the_eye_meet_where_the_band_laps() -> None:
    """The upper end lies on the band where the lap begins; the hook 3/8 in inside of it."""
    result = skirt(WAIST, alter=BAND)
    band = piece_named(sizes(result)[0].pieces, "waistband")
    assert band is not None
    hook, eye = closed(result, "hook").places
    start, lap = corner_named(band, "bottom-start"), corner_named(band, "lap-bottom")
    assert start is not None
    assert lap is not None

    assert (hook.number, eye.number) == (1, 1)
    assert (hook.edge, eye.edge) == ("start", "end")
    assert hook.at.x - start.x == pytest.approx(3 / 8 * INCH)
    assert eye.at.x - lap.x == pytest.approx(3 / 8 * INCH)
    assert hook.at.y == pytest.approx(eye.at.y) == pytest.approx(start.y + 5 / 8 * INCH)


def test_buttonholes_across_begin_beyond_the_place_toward_the_edge() -> None:
    """5/8 in and 1/8 in make 3/4 in; 1/8 in of them lie beyond the centre line."""
    body = "{ button button; places 3, first 1 in from centre-waist, last 1 in from opening-centre }"
    result = skirt(f"closure front along back.opening by buttoned {body}\n")
    places = closed(result, "front").places
    back = piece_named(sizes(result)[0].pieces, "back")
    assert back is not None
    waist = corner_named(back, "centre-waist")
    assert waist is not None

    assert [place.along for place in places] == pytest.approx([1 * INCH, 3.75 * INCH, 6.5 * INCH])
    for place in places:
        # The back grows to the right of its centre.
        assert place.at.x - waist.x == pytest.approx(3 / 4 * INCH)
        assert waist.y - place.at.y == pytest.approx(place.along)
        assert place.hole is not None
        begin, end = place.hole
        assert begin.distance(end) == pytest.approx(3 / 4 * INCH)
        assert place.at.x - begin.x == pytest.approx(1 / 8 * INCH)
        assert begin.y == pytest.approx(end.y) == pytest.approx(place.at.y)


def test_buttonholes_along_begin_above_their_place() -> None:
    ends = "first 1 in from centre-waist, last 1 in from opening-centre"
    body = f"{{ button button; holes along; places 2, {ends} }}"
    places = closed(skirt(f"closure front along back.opening by buttoned {body}\n"), "front").places

    for place in places:
        assert place.hole is not None
        begin, end = place.hole
        assert begin.y - place.at.y == pytest.approx(1 / 8 * INCH)
        assert begin.y - end.y == pytest.approx(3 / 4 * INCH)
        assert begin.x == pytest.approx(end.x) == pytest.approx(place.at.x)


def test_one_lies_at_a_reference_line() -> None:
    """On a side of two edges, counted on from one to the other."""
    ends = "first 1 in from centre-waist, last 3 in from hem-centre"
    body = f"{{ button button; places 5, {ends}, one at hip-line }}"
    result = skirt(f"closure front along back.opening, back.centre by buttoned {body}\n")
    back = piece_named(sizes(result)[0].pieces, "back")
    assert back is not None
    (hip,) = (line for line in back.lines if line.name == "hip-line")

    places = closed(result, "front").places
    height = hip.parts[0].start.y
    assert any(abs(place.at.y - height) < 1e-6 for place in places)
    assert {place.edge for place in places} == {"opening", "centre"}
    assert places[0].along == pytest.approx(INCH)
    assert places[-1].along == pytest.approx(
        length(result, "back.opening") + length(result, "back.centre") - 3 * INCH
    )


def test_on_two_pieces_the_same_number_meets() -> None:
    """Front and back sides run in opposite directions round their pieces; numbers go from the waist down."""
    alter = "divide front.side, back.side at 6 in from waist-side into placket, side\n"
    body = "{ button button; places 2, first 1 in from waist-side, last 2 in from placket-side }"
    result = skirt(f"closure row along front.placket to back.placket by buttoned {body}\n", alter=alter)
    row = closed(result, "row")
    pieces = sizes(result)[0].pieces

    assert row.count == 2
    assert [(place.piece, place.number) for place in row.places] == [
        ("front", 1), ("front", 2), ("back", 1), ("back", 2),
    ]  # fmt: skip
    assert [place.hole is not None for place in row.places] == [True, True, False, False]
    for name in ("front", "back"):
        piece = piece_named(pieces, name)
        assert piece is not None
        waist = corner_named(piece, "waist-side")
        assert waist is not None
        first, second = (place for place in row.places if place.piece == name)
        assert first.at.distance(waist) < second.at.distance(waist)


def test_opening_of_a_finish_is_measured_closed_and_of_a_closure_open() -> None:
    rest = (
        "closure zip along back.opening by zip-centred { zip zip }\n"
        "finish top along front.waist, back.waist by edge-overlocked\n"
        'measure closed "closed" = opening of top\n'
        'measure open "open" = opening of zip\n'
    )
    result = skirt(rest)
    waist = 2 * (length(result, "front.waist") + length(result, "back.waist"))
    assert result.measures is not None
    values = {point.name: point.values[0] for point in result.measures.points_of_measure}

    assert values["closed"] == pytest.approx(waist)
    assert values["open"] == pytest.approx(waist + 15 * INCH)


def test_a_skirt_is_stepped_into_by_its_zip() -> None:
    top_edge = "hem top along front.waist, back.waist by raw\n"
    zip_ = "closure zip along back.opening by zip-centred { zip zip }\n"
    sewn = "seam sewn joins back.opening to back.opening by pressed-open\n"
    stepping = "puts-on stepping in; "

    assert "SPC506" not in codes(skirt(top_edge + zip_, head=stepping))
    assert "SPC506" in codes(skirt(top_edge + sewn, head=stepping))


def test_an_edge_that_is_faced_may_be_closed_besides() -> None:
    rest = (
        'trim button "button" { kind button; diameter 1 cm; thickness 2 mm }\n'
        "alter { face front.shoulder by 3 cm as facing }\n"
        "seam edge joins front.shoulder to facing.shoulder by faced\n"
        "closure row along front.shoulder to back.shoulder by buttoned { button button; places 2 }\n"
    )
    result = top(rest, seams=SIDES)

    assert "SPC513" not in codes(result)
    uses = {(use.piece, use.edge): use.by for use in sizes(result)[0].uses}
    assert uses["front", "shoulder"] == "edge"
    assert uses["back", "shoulder"] == "row"


def test_the_end_of_an_opening_is_notched_though_the_seam_below_ends_there() -> None:
    """It cannot be seen on the cut piece; the corner at the waist can."""
    alter = "divide front.side, back.side at 7 in from hem-side into slit, side\n"
    result = skirt(
        "closure zip along back.opening by zip-centred { zip zip }\n"
        "finish slit along front.slit, back.slit by slit-turned\n",
        alter=alter,
    )
    ends = {
        (mark.piece, mark.edge, round(mark.at / INCH, 3))
        for mark in sizes(result)[0].notches
        if mark.reason is NotchReason.ENDS
    }

    assert ends == {("back", "opening", 7.5), ("front", "slit", 7.0), ("back", "slit", 7.0)}


def test_edges_of_one_seam_need_no_notch_between_them() -> None:
    """The top's side is divided and sewn in one seam all the same."""
    alter = "alter { divide front.side, back.side at 10 cm from waist-side into upper, lower }\n"
    lower_and_upper = "seam side joins front.lower, front.upper to back.lower, back.upper by french\n"
    apart = (
        "seam low joins front.upper to back.upper by french\n"
        "seam high joins front.lower to back.lower by french\n"
    )
    flank = "seam flank joins front.flank to back.flank by french\n"

    def ends(seams: str) -> set[str]:
        found = sizes(top(alter, seams=SHOULDERS + flank + seams))[0].notches
        return {mark.edge for mark in found if mark.reason is NotchReason.ENDS}

    # Where the flank goes over into the side the outline is straight as well.
    assert ends(lower_and_upper) == {"flank"}
    assert ends(apart) == {"flank", "upper"}
