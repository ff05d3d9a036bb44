"""Zones along edges, and what passes through the openings they leave."""

from __future__ import annotations

import pytest

from tests.made import length, rounds, sizes, top

NECK = "finish neck along front.neck, back.neck by elastic-bound {{ binding edging; {hold} }}\n"


def zones(hold: str) -> list[tuple[object, ...]]:
    (neck,) = rounds(top(NECK.format(hold=hold)), "neck")
    front = dict.fromkeys(
        (zone.start, zone.end, zone.held)
        for zone in neck.zones
        if zone.edge == "neck" and zone.piece == "front"
    )
    return sorted(front)


def test_a_hold_by_shares_leaves_the_rest_flat() -> None:
    whole = length(top(""), "front.neck")

    assert zones("hold 6% along front.neck from 40% to 90%") == [
        (0.0, pytest.approx(0.4 * whole), 0.0),
        (pytest.approx(0.4 * whole), pytest.approx(0.9 * whole), pytest.approx(0.06)),
        (pytest.approx(0.9 * whole), pytest.approx(whole), 0.0),
    ]


def test_lengths_corners_and_the_other_direction_mean_the_same_stretch() -> None:
    whole = length(top(""), "front.neck")
    stretch = [
        (0.0, pytest.approx(50.0), 0.0),
        (pytest.approx(50.0), pytest.approx(whole), pytest.approx(0.08)),
    ]

    assert zones("hold 8% along front.neck from 5 cm to centre-neck") == stretch
    assert zones("hold 8% along front.neck from centre-neck to 5 cm") == stretch


def test_a_hold_without_limits_takes_the_whole_edge() -> None:
    assert zones("hold 8% along front.neck") == [
        (0.0, pytest.approx(length(top(""), "front.neck")), pytest.approx(0.08))
    ]


def test_both_halves_have_the_zones() -> None:
    (neck,) = rounds(top(NECK.format(hold="hold 8% along front.neck from 50% to 100%")), "neck")

    assert sum(1 for zone in neck.zones if zone.held) == 2
    assert sum(zone.end - zone.start for zone in neck.zones) == pytest.approx(neck.length)


def opening(rest: str, cloth: str) -> float:
    found = sizes(top(rest, cloth=cloth))[0].openings
    return next(one.passes for one in found if "front.neck" in one.edges)


STABLE = 'cloth calico "calico" { width 150 cm; is stable }\n'
STRETCHY = 'cloth jersey "jersey" { width 150 cm; is knit; stretch 30% }\n'


def test_stable_cloth_passes_its_length_whatever_its_binding_stretches() -> None:
    flat = opening("", STABLE)

    assert opening(NECK.format(hold="hold 10% along front.neck"), STABLE) == pytest.approx(flat)


def test_knit_passes_as_far_as_cloth_and_binding_both_stretch() -> None:
    flat = opening("", STABLE)
    rigid = 'trim tape "tape" { kind tape; width 20 mm }\n' + NECK.replace("edging", "tape").format(hold="")

    assert opening("", STRETCHY) == pytest.approx(1.3 * flat)
    assert opening(NECK.format(hold=""), STRETCHY) == pytest.approx(1.3 * flat)
    assert opening(rigid, STRETCHY) == pytest.approx(flat)
