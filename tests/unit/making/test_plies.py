"""Seams of several plies, whole bands on half edges, and edges that stay open though a seam joins them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.made import SHOULDERS, SIDES, codes, length, sizes, top

if TYPE_CHECKING:
    from specc.making.assembly import Opening, Walk
    from specc.pipeline import Result

BAND = "alter {{ band {share}front.neck, back.neck by 4 cm as neckband }}\n"
BAND_END = "seam band-end joins neckband.start to neckband.end by overlocked\n"
ONCE = "seam neck joins front.neck, back.neck to neckband.bottom by overlocked\n"
FOLDED = ONCE.replace("by overlocked", "with neckband.top by rib-band {{ ease {ease} }}")
HEM = "hem bottom along front.hem, back.hem by double-turned\n"
FACINGS = """alter {
  face front.neck by 6 cm as front-facing
  face back.neck by 6 cm as back-facing
}
seam facing joins front-facing.shoulder to back-facing.shoulder by pressed-open
finish facing-edge along front-facing.neck-inner, back-facing.neck-inner by edge-overlocked
"""
FACED = "seam neck joins front.neck, back.neck to front-facing.neck, back-facing.neck by faced\n"
STABLE = 'cloth calico "calico" { width 150 cm; is stable }\n'
STRETCHY = 'cloth jersey "jersey" { width 150 cm; is knit; stretch 30% }\n'
RIB = STRETCHY + 'cloth rib "rib" { for neckband; width 100 cm; is knit; stretch 80% }\n'


def walked(result: Result, seam: str) -> Walk:
    return next(walk for walk in sizes(result)[0].walks if walk.seam == seam)


def neck(result: Result) -> float:
    """The round of the neck: two halves of front and back."""
    return 2 * (length(result, "front.neck") + length(result, "back.neck"))


def opening(result: Result, edge: str) -> Opening:
    return next(one for one in sizes(result)[0].openings if edge in one.edges)


# --- what is sewn to what ---


def test_a_whole_band_is_walked_against_both_halves() -> None:
    result = top(BAND.format(share="") + BAND_END + ONCE)
    walk = walked(result, "neck")

    assert (walk.count, [edge.times for edge in (*walk.first, *walk.second)]) == (1, [2, 2, 1])
    assert walk.first_length == pytest.approx(neck(result))
    assert walk.difference == pytest.approx(0.0, abs=1e-6)


def test_a_seam_between_left_and_right_is_walked_once_and_sewn_twice() -> None:
    walk = walked(top(""), "shoulder")

    assert (walk.count, walk.first[0].times) == (2, 1)


def test_a_band_folded_in_half_has_three_plies_that_all_are_as_long() -> None:
    result = top(BAND.format(share="80% of ") + BAND_END + FOLDED.format(ease="25%"))
    walk = walked(result, "neck")

    assert walk.first_length == pytest.approx(neck(result))
    assert walk.second_length == pytest.approx(0.8 * neck(result))
    assert [ply.length for ply in walk.others] == [pytest.approx(walk.second_length)]
    assert abs(walk.worst) < 1e-6
    assert "SPC501" not in codes(result)


def test_copies_that_lie_on_each_other_are_named_once_each() -> None:
    """A collar cut twice is as long as the whole neck, and both copies lie in the seam."""
    collar = """block collar {{
      piece collar "collar" {{
        cut 2
        let round = 2 * (length of front.neck + length of back.neck)
        point a at 0 cm, 0 cm
        point b at round, 0 cm
        point c at round, 7 cm
        point d at 0 cm, 7 cm
        edge neck from a {{ line to b }}
        edge right from b {{ line to c }}
        edge outer from c {{ line to d }}
        edge left from d {{ line to a }}
        grain from a to b
      }}
    }}
    use block collar
    seam outer joins collar.outer to collar.outer by turned
    seam ends joins collar.right, collar.left to collar.right, collar.left by turned
    seam neck joins front.neck, back.neck to collar.neck{more} by overlocked
    """
    both = top(collar.format(more=" with collar.neck"))
    one = top(collar.format(more=""))

    assert "SPC501" not in codes(both)
    assert walked(both, "neck").count == 1
    assert "SPC501" in codes(one)
    cures = [text for each in one.diagnostics if each.code.id == "SPC501" for text in each.helps]
    assert any("`with collar.neck`" in cure for cure in cures)


def test_a_gathered_frill_between_shell_and_facing_leaves_the_other_plies_flat() -> None:
    result = top(
        FACINGS.replace("}\n", "  band 160% of front.neck, back.neck by 5 cm as frill\n}\n", 1)
        + "seam frill-end joins frill.start to frill.end by french\n"
        + "hem frill-edge along frill.top by rolled\n"
        + "seam neck joins frill.bottom to front.neck, back.neck with front-facing.neck, back-facing.neck"
        + " by faced { gathers 60% }\n"
    )
    walk = walked(result, "neck")

    assert "SPC501" not in codes(result)
    assert walk.first_length == pytest.approx(1.6 * walk.second_length)
    assert [abs(ply.difference) < 0.5 for ply in walk.others] == [True]


# --- how often, and in which runs ---


def test_a_seam_round_the_neck_is_one_closed_round() -> None:
    result = top(BAND.format(share="") + BAND_END + ONCE)
    (laid,) = (one for one in sizes(result)[0].sewn if one.by == "neck")

    assert (laid.closed, laid.count) == (True, 1)
    assert laid.length == pytest.approx(neck(result))


def test_a_shoulder_is_two_open_runs_and_an_edge_sewn_to_itself_is_one() -> None:
    from tests.made import sheath

    block = "back-centre seam"
    result = sheath(SHOULDERS + "seam back joins back.centre to back.centre by french\n", block=block)
    found = {one.by: (one.closed, one.count) for one in sizes(result)[0].sewn}

    assert found == {"shoulder": (False, 2), "back": (False, 1)}


# --- what stays open ---


def test_a_faced_neck_is_still_the_opening_that_passes_the_head() -> None:
    result = top(FACINGS + FACED)
    found = opening(result, "front.neck")

    assert (found.central, found.by) == (True, ("neck",))
    assert found.flat == pytest.approx(neck(result))
    assert found.passes == pytest.approx(neck(result), abs=0.5)


def test_a_faced_neck_that_is_too_small_is_told_at_its_seam() -> None:
    small = "alter { raise front.neck at centre-neck by 6 cm }\n"
    result = top(small + FACINGS + FACED + HEM, head="puts-on over the head; ")
    (told,) = (each for each in result.diagnostics if each.code.id == "SPC505")

    assert told.span is not None
    assert told.span.text == "neck"
    assert "`front.neck` and `back.neck`" in told.message


def test_the_ply_that_gives_least_says_what_passes() -> None:
    woven = STRETCHY + 'cloth lawn "lawn" { for front-facing, back-facing; width 100 cm; is woven }\n'
    alike, stiff = (top(FACINGS + FACED, cloth=cloth) for cloth in (STRETCHY, woven))

    assert opening(alike, "front.neck").passes == pytest.approx(1.3 * neck(alike), rel=1e-3)
    assert opening(stiff, "front.neck").passes == pytest.approx(neck(stiff), rel=1e-3)


def test_the_inner_edge_of_a_facing_is_not_held_against_the_body() -> None:
    result = top(FACINGS + FACED + HEM, head="puts-on over the head; ")

    assert {"SPC506", "SPC520"}.isdisjoint(codes(result))


@pytest.mark.parametrize(
    ("cloth", "share", "ease", "least"),
    [
        (
            RIB,
            "80% of ",
            "25%",
            1.3,
        ),  # the neck of the jersey gives less than the rib, which is 0.8 * 1.8 = 1.44
        (STRETCHY, "80% of ", "25%", 0.8 * 1.3),  # a band of the cloth itself
    ],
)
def test_what_passes_a_folded_band_is_the_least_of_its_fold_and_its_seam(
    cloth: str, share: str, ease: str, least: float
) -> None:
    result = top(BAND.format(share=share) + BAND_END + FOLDED.format(ease=ease), cloth=cloth)
    found = [one for one in sizes(result)[0].openings if one.central and "neck" in one.by]

    assert min(one.passes for one in found) == pytest.approx(least * neck(result), rel=1e-6)


def test_the_ends_of_a_folded_band_are_no_round_of_the_body() -> None:
    result = top(BAND.format(share="80% of ") + BAND_END + FOLDED.format(ease="25%"), cloth=RIB)

    assert [one for one in sizes(result)[0].openings if "neckband.end" in one.edges] == []


def test_a_band_that_is_once_round_is_an_opening_where_its_free_edge_is() -> None:
    result = top(BAND.format(share="") + BAND_END + ONCE + "hem edge along neckband.top by raw\n")
    found = opening(result, "neckband.top")

    assert (found.central, found.by) == (True, ("edge",))
    assert found.flat == pytest.approx(neck(result))


def test_the_opening_of_a_faced_neck_may_be_demanded() -> None:
    demand = "expect opening of neck >= {wanted} cm\n"
    enough = top(FACINGS + FACED + demand.format(wanted=40))
    more = top(FACINGS + FACED + demand.format(wanted=400))

    assert "SPC516" not in codes(enough)
    assert "SPC516" in codes(more)


def test_a_pocket_sewn_to_nothing_is_no_opening_of_the_body() -> None:
    pocket = """block pocket {
      piece pocket "pocket" {
        cut 1
        point a at 0 cm, 0 cm
        point b at 12 cm, 0 cm
        point c at 12 cm, 14 cm
        point d at 0 cm, 14 cm
        edge low from a { line to b }
        edge right from b { line to c }
        edge top from c { line to d }
        edge left from d { line to a }
        grain from a to d
      }
    }
    use block pocket
    """
    assert not opening(top(pocket), "pocket.top").central


def test_unfolded_pieces_have_armholes_on_both_sides_and_one_neck() -> None:
    from tests.made import sheath

    result = sheath(
        "alter { unfold front, back }\n"
        "seam right joins front.side-right to back.side-right by french\n"
        "seam left joins front.side-left to back.side-left by french\n"
        "seam shoulder-right joins front.shoulder-right to back.shoulder-right by french\n"
        "seam shoulder-left joins front.shoulder-left to back.shoulder-left by french\n"
    )
    central = {edge: one.central for one in sizes(result)[0].openings for edge in one.edges}

    assert central["front.neck"]
    assert central["front.hem"]
    assert not central["front.armhole-right"]
    assert not central["front.armhole-left"]


def test_a_waist_seam_that_goes_round_has_to_pass_too() -> None:
    """A tight yoke: both its open edges are wide, the seam between is not."""
    tube = """block tube {
      piece cup "cup" {
        cut 1 on fold along centre
        point a at 0 cm, 0 cm
        point b at 10 cm, 0 cm
        point c at 40 cm, 20 cm
        point d at 0 cm, 20 cm
        edge low from a { line to b }
        edge side from b { line to c }
        edge high from c { line to d }
        edge centre from d { line to a }
        grain from a to d
      }
      piece foot "foot" {
        cut 1 on fold along centre
        point a at 0 cm, 0 cm
        point b at 40 cm, 0 cm
        point c at 10 cm, 20 cm
        point d at 0 cm, 20 cm
        edge low from a { line to b }
        edge side from b { line to c }
        edge high from c { line to d }
        edge centre from d { line to a }
        grain from a to d
      }
    }
    use block tube
    seam cup joins cup.side to cup.side by french
    seam foot joins foot.side to foot.side by french
    seam middle joins cup.low to foot.high by french
    """
    result = top(SHOULDERS + SIDES + tube, seams="", head="puts-on over the head; ")
    (told,) = (each for each in result.diagnostics if each.code.id == "SPC505")

    assert told.message.startswith("the round of seam `middle` does not pass the head")


def test_the_end_of_a_folded_band_goes_round_nothing() -> None:
    """Its two corners meet, since the band is folded there."""
    result = top(BAND.format(share="80% of ") + BAND_END + FOLDED.format(ease="25%"), cloth=RIB)

    assert {one.seam for one in sizes(result)[0].openings} == {None, "neck"}
