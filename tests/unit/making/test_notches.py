"""Which notches the pieces get: carried over, alike on both sides, and where sewing needs them."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.making.assembly import NotchReason
from specc.making.balance import LONGEST, SHORTEST, balance_points
from tests.made import made, panels, sizes, top

if TYPE_CHECKING:
    from specc.making.assembly import NotchMark
    from specc.pipeline import Result

GARMENTS = Path(__file__).parents[2] / "garments"
DOUBLE, SINGLE = True, False


def garment(name: str) -> Result:
    return made((GARMENTS / f"{name}.garment").read_text(encoding="utf-8"))


def on(result: Result, edge: str, *, size: int = 0) -> list[NotchMark]:
    """The notches of an edge `piece.edge`."""
    return [notch for notch in sizes(result)[size].notches if f"{notch.piece}.{notch.edge}" == edge]


def reasons(result: Result, edge: str) -> list[NotchReason]:
    return [notch.reason for notch in on(result, edge)]


def test_a_notch_of_one_piece_is_carried_to_the_other_from_the_corner_that_meets() -> None:
    result = panels(on_front="notch side at 15 cm from b")

    assert [(round(n.at, 6), n.double) for n in on(result, "front.side")] == [(150.0, SINGLE)]
    # The back's side runs the other way: from `c` down to `b`.
    assert [(round(n.at, 6), n.double) for n in on(result, "back.side")] == [(250.0, SINGLE)]
    assert reasons(result, "back.side") == [NotchReason.MATCH]


def test_notches_that_meet_look_alike() -> None:
    result = panels(on_front="notch side at 15 cm from b", on_back="notch side at 15 cm from b, double")

    assert [n.double for n in on(result, "front.side")] == [DOUBLE]
    assert [n.double for n in on(result, "back.side")] == [DOUBLE]


def test_notches_of_both_pieces_stand_on_both() -> None:
    result = panels(on_front="notch side at 10 cm from b", on_back="notch side at 30 cm from b, double")

    assert [(round(n.at), n.double) for n in on(result, "front.side")] == [(100, SINGLE), (300, DOUBLE)]
    assert [(round(n.at), n.double) for n in on(result, "back.side")] == [(100, DOUBLE), (300, SINGLE)]


def test_a_seam_without_notches_gets_one_in_its_middle() -> None:
    result = panels()

    for edge in ("front.side", "back.side"):
        assert [(round(n.at, 6), n.reason) for n in on(result, edge)] == [(200.0, NotchReason.BALANCE)]


def test_a_seam_of_the_back_alone_has_double_notches() -> None:
    result = panels("seam centre joins back.centre to back.centre by french")

    assert [n.double for n in on(result, "back.centre")] == [DOUBLE]
    assert not on(result, "front.centre")


def test_a_short_seam_has_none_and_a_long_one_several() -> None:
    assert list(balance_points(SHORTEST - 1, [], gathered=False)) == []
    assert list(balance_points(SHORTEST, [], gathered=False)) == [SHORTEST / 2]
    assert list(balance_points(LONGEST, [10.0], gathered=False)) == []
    assert list(balance_points(3 * LONGEST, [], gathered=False)) == [LONGEST, 2 * LONGEST]
    assert list(balance_points(900, [700.0], gathered=False)) == [350.0]
    assert list(balance_points(400, [200.0], gathered=True)) == [100.0, 300.0]


def test_notches_that_nearly_meet_are_told_and_that_of_the_first_side_stands() -> None:
    result = panels(on_front="notch side at 15 cm from b", on_back="notch side at 14.6 cm from b")

    assert [n.at for n in on(result, "front.side")] == [pytest.approx(150.0)]
    assert [n.at for n in on(result, "back.side")] == [pytest.approx(250.0)]
    (apart,) = sizes(result)[0].apart
    assert (apart.seam, apart.edges) == ("side", ("front.side", "back.side"))
    assert apart.distance == pytest.approx(4.0)


def test_ease_lies_between_the_outermost_notches_that_both_sides_have() -> None:
    """The front is 2 cm fuller: outside the notches equal lengths meet, between them shares."""
    eased = "seam side joins front.side to back.side by french { ease 2 cm }"
    result = panels(
        eased,
        front="42 cm",
        on_front="notch side at 10 cm from b\n notch side at 5 cm from b\n notch side at 10 cm from c",
        on_back="notch side at 10 cm from b\n notch side at 20 cm from b\n notch side at 10 cm from c",
    )

    front = [round(n.at, 6) for n in on(result, "front.side")]
    back = [round(400.0 - n.at, 6) for n in on(result, "back.side")][::-1]
    assert front == [50.0, 100.0, 210.0, 320.0]
    assert back == [50.0, 100.0, 200.0, 300.0]
    assert not sizes(result)[0].apart


def test_gathers_are_shared_out_at_halves_and_quarters() -> None:
    gathered = "seam side joins front.side to back.side by gathered { gathers 100% }"
    result = panels(gathered, front="80 cm", on_front="notch side at 50%")

    assert [round(n.at) for n in on(result, "front.side")] == [200, 400, 600]
    assert [round(n.at) for n in on(result, "back.side")] == [100, 200, 300]


def test_where_an_alteration_gathers_an_edge_both_sides_are_notched() -> None:
    spread = "alter { spread from front.side at 50% to front.centre at 50% by 6 cm and 0 cm as gathers }\n"
    result = panels(f"{spread}seam side joins front.side to back.side by french")

    marks = [n for n in on(result, "front.side") if n.reason is NotchReason.GATHERS]
    opposite = [n for n in on(result, "back.side") if n.reason is NotchReason.GATHERS]
    assert [n.at for n in marks] == [pytest.approx(100.0), pytest.approx(300.0)]
    assert [400.0 - n.at for n in opposite][::-1] == [pytest.approx(n.at) for n in marks]


def test_a_pleat_is_notched_where_it_begins_and_ends() -> None:
    spread = "alter { spread from front.low at 50% to front.top at 50% by 6 cm as pleat }\n"
    result = panels(spread)

    assert [(round(n.at), round(n.within)) for n in on(result, "front.top")] == [(100, 0), (100, 60)]
    assert reasons(result, "front.top") == [NotchReason.PLEAT] * 2


def test_where_a_trim_is_held_in_is_notched() -> None:
    neck = (
        "finish neck along front.neck, back.neck by elastic-bound {{"
        " binding edging; hold 6% along front.neck {} }}\n"
    )
    part = top(neck.format("from 40% to centre-neck"))

    held = [n for n in on(part, "front.neck") if n.reason is NotchReason.HELD]
    assert len(held) == 1
    assert held[0].at == pytest.approx(0.4 * sum(z.end - z.start for z in _zones(part, "front.neck")) / 2)
    whole = top(neck.format(""))
    assert NotchReason.HELD not in reasons(whole, "front.neck")


def _zones(result: Result, edge: str) -> list:  # type: ignore[type-arg]
    return [z for r in sizes(result)[0].rounds for z in r.zones if f"{z.piece}.{z.edge}" == edge]


def test_the_centre_is_notched_where_a_piece_lies_on_the_fold() -> None:
    neck = "finish neck along front.neck, back.neck by elastic-bound { binding edging }\n"
    turned = top(neck + "hem bottom along front.hem, back.hem by double-turned\n")
    raw = top("hem bottom along front.hem, back.hem by raw\n")

    assert reasons(turned, "front.neck") == reasons(turned, "back.neck") == [NotchReason.CENTRE]
    assert [(n.at, n.reason) for n in on(turned, "front.hem")] == [(0.0, NotchReason.CENTRE)]
    assert not on(raw, "front.hem")
    assert not on(raw, "front.neck")


def test_the_crown_of_a_sleeve_meets_the_shoulder_and_its_notches_those_of_the_armhole() -> None:
    result = garment("bodice")
    size = sizes(result)[0]

    (back,) = on(result, "back.armhole")
    (front,) = on(result, "front.armhole")
    lower, crown = on(result, "sleeve.cap-back")
    assert (back.double, front.double) == (DOUBLE, SINGLE)
    assert (round(lower.at, 6), lower.double) == (round(back.at, 6), DOUBLE)
    cap = next(e for p in size.pieces if p.name == "sleeve" for e in p.edges if e.name == "cap-back")
    assert crown.at == pytest.approx(sum(part.length() for part in cap.parts))
    # The shoulder seam itself marks the armhole there.
    assert len(on(result, "sleeve.cap-front")) == 1


def test_a_waistband_is_notched_where_the_side_seam_and_the_quarters_meet_it() -> None:
    result = garment("gathered-skirt")

    band = on(result, "waistband.bottom")
    assert reasons(result, "waistband.bottom").count(NotchReason.SEAM) == 1
    whole = sum(
        e.length * e.times for e in next(w for w in sizes(result)[0].walks if w.seam == "waist").second
    )
    assert [round(n.at / whole, 6) for n in band] == [0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875]


def test_a_band_round_a_neck_is_notched_for_the_shoulders() -> None:
    result = garment("methods-top")

    assert NotchReason.SEAM in reasons(result, "neckband.inner")


@pytest.mark.parametrize("name", sorted(path.stem for path in GARMENTS.glob("*.garment")))
def test_the_notches_of_all_blocks_meet(name: str) -> None:
    for size in sizes(garment(name)):
        assert size.apart == ()
        for piece in size.pieces:
            for edge in piece.edges:
                placed = [n for n in size.notches if (n.piece, n.edge) == (piece.name, edge.name)]
                assert placed == sorted(placed, key=lambda n: (n.at, n.within))


def test_where_a_hip_line_comes_to_a_seam_both_sides_are_notched() -> None:
    lines = "line level-line from {} to {}\n point {} at {} cm, 12 cm\n"
    result = panels(on_front=lines.format("left", "right", "left", 0) + " point right at 20 cm, 12 cm")

    assert [(round(n.at), n.reason) for n in on(result, "front.side")] == [(120, NotchReason.LINE)]
    assert [(round(n.at), n.reason) for n in on(result, "back.side")] == [(280, NotchReason.LINE)]


def test_a_line_that_ends_beside_a_notch_gets_none() -> None:
    line = "line level-line from left to right\n point left at 0 cm, 12 cm\n point right at 20 cm, 12 cm\n"
    result = panels(on_front=line, on_back="notch side at 13 cm from b")

    assert reasons(result, "front.side") == reasons(result, "back.side") == [NotchReason.MATCH]
