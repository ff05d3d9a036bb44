"""How the edges of real pieces hang together once the seams are sewn."""

from __future__ import annotations

import pytest

from tests.made import SHOULDERS, codes, length, rounds, sheath, sizes, top

NECK = "finish neck along front.neck, back.neck by elastic-bound { binding edging }\n"
BOTTOM = "hem bottom along front.hem, back.hem by double-turned\n"
ARMHOLE = "finish armhole along front.armhole, back.armhole by elastic-bound { binding edging }\n"
SIDE = "seam side joins front.side to back.side by french\n"
CENTRE = "seam centre-back joins back.centre to back.centre by french\n"


def test_a_neckline_closes_over_the_fold_and_the_shoulders_and_is_there_once() -> None:
    result = top(NECK)

    (neck,) = rounds(result, "neck")

    assert (neck.closed, neck.count) == (True, 1)
    assert neck.length == pytest.approx(2 * (length(result, "front.neck") + length(result, "back.neck")))
    assert sorted(f"{zone.piece}.{zone.edge}" for zone in neck.zones) == [
        "back.neck", "back.neck", "front.neck", "front.neck",
    ]  # fmt: skip


def test_the_order_of_edges_in_the_text_changes_nothing() -> None:
    other = top(NECK.replace("front.neck, back.neck", "back.neck, front.neck"))

    (neck,), (turned,) = rounds(top(NECK), "neck"), rounds(other, "neck")

    assert (turned.closed, turned.count) == (neck.closed, neck.count)
    assert turned.length == pytest.approx(neck.length)


def test_armholes_are_closed_and_there_are_two() -> None:
    result = sheath(SHOULDERS + SIDE + ARMHOLE)

    (armhole,) = rounds(result, "armhole")

    assert (armhole.closed, armhole.count) == (True, 2)
    both = length(result, "front.armhole") + length(result, "back.armhole")
    assert armhole.length == pytest.approx(both)


def test_unsewn_sides_leave_the_hem_open() -> None:
    result = top(BOTTOM, seams=SHOULDERS)

    found = rounds(result, "bottom")

    assert [(one.closed, one.count) for one in found] == [(False, 1), (False, 1)]
    assert {one.length for one in found} == {2 * length(result, "front.hem")}


def test_a_centre_seam_closes_the_neck_and_without_it_the_neck_is_open() -> None:
    block = "back-centre seam"
    sewn = sheath(SHOULDERS + CENTRE + NECK, block=block)
    unsewn = sheath(SHOULDERS + NECK, block=block)

    (closed,), (opened,) = rounds(sewn, "neck"), rounds(unsewn, "neck")

    assert (closed.closed, opened.closed) == (True, False)
    assert closed.length == pytest.approx(opened.length)


def test_sleeves_are_set_in_by_chains_and_their_hems_are_two_rounds() -> None:
    result = sheath(
        SHOULDERS
        + SIDE
        + "seam sleeve joins sleeve.cap-back, sleeve.cap-front to back.armhole, front.armhole by french {\n"
        + "  ease 1 1/4 in\n}\n"
        + "seam underarm joins sleeve.seam-front to sleeve.seam-back by french\n"
        + "hem cuff along sleeve.hem by double-turned\n"
    )

    (cuff,) = rounds(result, "cuff")

    assert (cuff.closed, cuff.count) == (True, 2)
    assert "SPC501" not in codes(result)
    walk = next(walk for walk in sizes(result)[0].walks if walk.seam == "sleeve")
    assert walk.ease == pytest.approx(31.75)
    assert abs(walk.difference) < 0.1


@pytest.mark.parametrize(("longer", "shorter", "agrees"), [("front", "back", True), ("back", "front", False)])
def test_a_side_is_gathered_to_fit_if_it_is_the_longer_one(
    longer: str, shorter: str, *, agrees: bool
) -> None:
    result = sheath(
        "alter { lengthen front by 2 in at waist-line }\n"
        f"seam side joins {longer}.side to {shorter}.side by gathered {{ gathers to fit }}\n"
    )
    (walk,) = sizes(result)[0].walks

    assert walk.first_length - walk.second_length == pytest.approx(50.8 if agrees else -50.8, abs=0.1)
    assert walk.ease == pytest.approx(max(0.0, walk.first_length - walk.second_length))
    assert ("SPC501" not in codes(result)) is agrees


def test_openings_are_what_no_seam_joins() -> None:
    result = sheath(SHOULDERS + SIDE)

    found = {opening.edges: opening.central for opening in sizes(result)[0].openings}

    assert {tuple(sorted(edges)): central for edges, central in found.items()} == {
        ("back.neck", "front.neck"): True,
        ("back.hem", "front.hem"): True,
        ("back.armhole", "front.armhole"): False,
        ("sleeve.cap-back", "sleeve.cap-front", "sleeve.hem", "sleeve.seam-back", "sleeve.seam-front"): False,
    }


def test_a_divided_seam_leaves_an_opening_from_the_neck_down_one_side_and_up_the_other() -> None:
    back = "alter { divide back.centre at 10 in from centre-neck into placket, centre }\n"
    result = sheath(back + SHOULDERS + SIDE + CENTRE, block="back-centre seam")

    (neck,) = (opening for opening in sizes(result)[0].openings if "back.neck" in opening.edges)

    assert set(neck.edges) == {"back.neck", "front.neck", "back.placket"}
    around = 2 * (length(result, "front.neck") + length(result, "back.neck"))
    assert neck.flat == pytest.approx(around + 2 * 254.0)
    assert length(result, "back.placket") == pytest.approx(254.0)
