"""What is attached: which edges are sewn down, how often, where ends lie, what catches them."""

from __future__ import annotations

import pytest

from specc.making.assembly import NotchReason
from specc.pipeline import quantities
from tests.attaching import caught, placed, pocketed, use
from tests.made import codes, length, sizes, top

ON = "attach pocket on front with top-left at bust-line, 2 cm from centre by patch\n"
TIE = """use block rectangle as tie {{ wide 4 cm; long 60 cm; cutting {cutting} }}
seam tie-length joins tie.left-edge to tie.right-edge by turned-tube
finish tie-end along tie.top by closed-end
"""
NECK = "finish neck along front.neck, back.neck by elastic-bound { binding edging }\n"
HEM = "hem bottom along front.hem, back.hem by double-turned { deep 2 cm; under 1 cm }\n"


# --- pieces sewn onto pieces ---


def test_the_edges_that_nothing_else_takes_are_sewn_down() -> None:
    result = pocketed(ON)

    assert placed(result)[0].edges == ("left-edge", "bottom", "right-edge")
    assert use(result, "pocket.top").kind == "hem"
    for edge in ("left-edge", "bottom", "right-edge"):
        found = use(result, f"pocket.{edge}")
        assert (found.kind, found.by) == ("attachment", "pocket-on-front")
        assert found.allowance == pytest.approx(3 / 8 * 25.4)


def test_edges_that_are_named_keep_the_finish_that_they_have() -> None:
    edging = "finish rest along pocket.left-edge, pocket.bottom, pocket.right-edge by edge-overlocked\n"
    attach = ON.replace("by patch", "along pocket.left-edge, pocket.right-edge by set-on")
    result = pocketed(edging + attach)

    assert codes(result) == []
    assert placed(result)[0].edges == ("left-edge", "right-edge")
    assert (use(result, "pocket.left-edge").kind, use(result, "pocket.left-edge").by) == ("finish", "rest")


def test_an_edge_cannot_be_finished_and_turned_in() -> None:
    edging = "finish rest along pocket.left-edge, pocket.bottom, pocket.right-edge by edge-overlocked\n"
    result = pocketed(edging + ON.replace("by patch", "along pocket.bottom by patch"))

    (told,) = [each for each in result.diagnostics if each.code.id == "SPC513"]
    assert told.message == "`pocket.bottom` is both in finish `rest` and in attachment `pocket-on-front`"


@pytest.mark.parametrize(
    ("cutting", "attach", "places", "across"),
    [
        ("twice", ON, 2, False),
        ("once", ON.replace("on front", "on left front"), 1, False),
        # From 7 cm left of the centre to 7 cm right of it.
        ("once", "attach pocket on front with top-right at bust-line, 7 cm from centre by patch\n", 1, True),
        (
            "on-fold",
            "attach pocket on front with top-left at bust-line, 0 cm from centre by patch\n",
            1,
            True,
        ),
    ],
)
def test_there_are_as_many_as_the_piece_has_sides(
    cutting: str, attach: str, places: int, *, across: bool
) -> None:
    result = pocketed(attach, cutting=cutting)

    assert codes(result) == []
    for one in placed(result):
        assert (one.places, one.across_fold) == (places, across)


def test_a_pocket_on_the_fold_is_opened_out_across_the_fold() -> None:
    attach = "attach pocket on front with top-left at bust-line, 0 cm from centre by patch\n"
    outline = placed(pocketed(attach, cutting="on-fold", wide=90, long=120))[0].outline
    xs = [segment.start.x for segment in outline.segments]

    assert (min(xs), max(xs)) == pytest.approx((-90.0, 90.0))
    assert outline.length() == pytest.approx(2 * (180.0 + 120.0))


def test_a_pocket_that_lies_on_the_half_that_is_not_drawn_is_refused() -> None:
    attach = "attach pocket on front with top-right at bust-line, 0 cm from centre by patch\n"

    assert "SPC535" in codes(pocketed(attach))


@pytest.mark.parametrize(
    ("at", "spot"),
    [
        ("bust-line, 3 cm from centre", (30.0, 350.0)),
        ("4 cm below bust-line, 3 cm from centre", (30.0, 310.0)),
        ("4 cm above bust-line, 15 cm from side", (120.0, 390.0)),
        ("bust-centre", (0.0, 350.0)),
    ],
)
def test_a_spot_is_measured_on_the_level_into_the_piece(at: str, spot: tuple[float, float]) -> None:
    """In size S the front is 27 cm wide, its centre at 0, its bust line 35 cm up."""
    corner = "top-left" if "side" not in at else "top-right"
    one = placed(pocketed(f"attach pocket on front with {corner} at {at} by patch\n", wide=60, long=60))[0]

    assert (one.spot.x, one.spot.y) == pytest.approx(spot)


def test_it_lies_square_to_a_slanting_edge() -> None:
    """The shoulder of the square top is level; made slanting, the pocket slants with it."""
    slant = "let out front.shoulder, back.shoulder by 3 cm at neck-point and 0 cm at shoulder-tip"
    attach = (
        "attach pocket on front with top-left at bust-line, 8 cm from centre, square to shoulder by patch"
    )
    result = pocketed(f"alter {{ {slant} }}\n{attach}\n", wide=60, long=60)
    for made, one in zip(sizes(result), placed(result), strict=True):
        front = next(piece for piece in made.pieces if piece.name == "front")
        shoulder = next(edge for edge in front.edges if edge.name == "shoulder").parts[0]
        slope = shoulder.start_direction()
        top_edge = one.outline.segments[0]
        assert abs(top_edge.start_direction().cross(slope)) == pytest.approx(0.0, abs=1e-9)
        assert abs(slope.y) > 0.1


# --- ends caught at an edge ---


def tied(attach: str, *, cutting: str = "twice") -> str:
    return NECK + HEM + TIE.format(cutting=cutting) + attach


def test_the_end_of_a_tube_is_half_as_wide_as_it_is_drawn() -> None:
    result = top(tied("attach tie.bottom to front.hem at 3 cm from hem-centre\n"))

    assert codes(result) == []
    for one in caught(result):
        assert (one.start, one.end) == pytest.approx((30.0, 50.0))
        assert one.places == 2


def test_an_end_on_the_fold_is_twice_as_wide_as_it_is_drawn() -> None:
    tie = TIE.format(cutting="twice-on-fold").replace(
        "seam tie-length joins tie.left-edge to tie.right-edge by turned-tube",
        "finish tie-length along tie.right-edge by edge-overlocked",
    )
    one = caught(top(NECK + HEM + tie + "attach tie.bottom to front.hem at 50%\n"))[0]

    assert one.end - one.start == pytest.approx(80.0)


def test_a_corner_alone_is_the_middle_and_at_the_fold_lies_across_it() -> None:
    result = top(tied("attach tie.bottom to back.neck at centre-neck\n", cutting="once"))

    assert codes(result) == []
    for index, one in enumerate(caught(result)):
        assert one.across_fold
        assert one.places == 1
        whole = length(result, "back.neck", size=index)
        assert (one.start, one.end) == pytest.approx((whole - 10.0, whole + 10.0))


def test_only_one_side_takes_it() -> None:
    attach = "attach tie.bottom to left front.hem at 3 cm from hem-centre\n"

    assert [one.places for one in caught(top(tied(attach, cutting="once")))] == [1, 1]


def test_a_caught_end_has_the_allowance_of_what_catches_it() -> None:
    caught_by_seam = top(tied("attach tie.bottom to front.side at 3 cm from waist-side\n"))
    by_itself = top(tied("attach tie.bottom to front.hem at 3 cm from hem-centre by boxed { allow 8 mm }\n"))

    assert use(caught_by_seam, "tie.bottom").allowance == use(caught_by_seam, "front.side").allowance > 0.0
    assert use(by_itself, "tie.bottom").allowance == pytest.approx(8.0)
    assert use(by_itself, "tie.bottom").turned == pytest.approx((8.0,))


def test_both_sides_of_an_end_are_notched_where_the_piece_is_drawn() -> None:
    """Across the fold there is but one notch on the half that is drawn."""
    result = top(
        tied(
            "attach tie.bottom to front.hem at 3 cm from hem-centre\n"
            "attach tie.bottom to back.hem at hem-centre by boxed\n",
            cutting="three times",
        )
    )
    marks = (mark for mark in sizes(result)[0].notches if mark.reason is NotchReason.ATTACHED)
    own = [(mark.piece, mark.edge, round(mark.at, 6)) for mark in marks]

    assert own == [("front", "hem", 30.0), ("front", "hem", 50.0), ("back", "hem", 10.0)]


def test_several_ends_lie_on_each_other() -> None:
    loop = """use block rectangle as loop { wide 2 cm; long 8 cm }
    seam loop-length joins loop.left-edge to loop.right-edge by folded-strap
    attach loop.top, loop.bottom to back.neck at centre-neck
    """
    result = top(NECK + HEM + loop)

    assert codes(result) == []
    assert caught(result)[0].ends == ("loop.top", "loop.bottom")
    assert use(result, "loop.top").by == use(result, "loop.bottom").by == "loop-to-back-neck"


# --- what it does to the rest ---


def test_what_is_attached_leaves_no_opening() -> None:
    plain, attached = top(NECK + HEM), pocketed(ON)

    found, wanted = ([one.edges for one in sizes(result)[0].openings] for result in (attached, plain))
    assert found == wanted


def test_a_trim_goes_along_the_edges_that_are_sewn_down() -> None:
    method = """method braided "edges under a braid" makes attachment {
      material  braid "flat braid"
      allowance 0 mm
      takes     braid, cut 1 cm wide, turning 5 mm
      raw-edge  covered
    }
    trim flat "flat braid" { kind braid; width 1 cm }
    """
    found = quantities(pocketed(method + ON.replace("by patch", "by braided { braid flat }")))
    assert found is not None
    (cut,) = [cut for cut in found.sizes[0].trims if cut.trim == "flat"]

    assert (cut.used_on, cut.count, cut.closed) == ("pocket-on-front", 2, False)
    assert cut.seam_length == pytest.approx(150.0 + 140.0 + 150.0)
    assert cut.cut_length == pytest.approx(440.0 + 2 * 5.0)
