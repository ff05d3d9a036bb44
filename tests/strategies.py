"""Owns strategies for curves, outlines and plausible pattern pieces; knows no tests."""

from __future__ import annotations

from math import pi

from hypothesis import strategies as st

from specc.geometry.fit import curve
from specc.geometry.path import Path
from specc.geometry.point import Point, Rigid
from specc.geometry.segment import Cubic, Line
from specc.pattern.piece import (
    Dart,
    Edge,
    NamedPoint,
    Notch,
    Piece,
    ReferenceLine,
    TwoPointedDart,
)

LEFT, RIGHT, UP, DOWN = Point(-1.0, 0.0), Point(1.0, 0.0), Point(0.0, 1.0), Point(0.0, -1.0)


def lengths(low: float, high: float) -> st.SearchStrategy[float]:
    """Millimetres between two bounds, in whole tenths, as a person would write them."""
    return st.integers(round(low * 10), round(high * 10)).map(lambda tenths: tenths / 10)


def points(reach: float = 500.0) -> st.SearchStrategy[Point]:
    return st.builds(Point, lengths(-reach, reach), lengths(-reach, reach))


def lines() -> st.SearchStrategy[Line]:
    return st.builds(Line, points(), points()).filter(lambda line: line.length() > 1.0)


def cubics() -> st.SearchStrategy[Cubic]:
    """Any cubics at all, loops and cusps among them."""
    return st.builds(Cubic, points(), points(), points(), points()).filter(
        lambda c: (
            c.start.distance(c.end) > 1.0
            and c.start.distance(c.leaving) > 1.0
            and c.arriving.distance(c.end) > 1.0
        )
    )


def garment_curves() -> st.SearchStrategy[Cubic]:
    """Cubics as garments have them: between two directions that differ by less than a third of a turn."""

    def build(start: Point, chord: float, heading: float, bend: float, first: float, last: float) -> Cubic:
        leaving = RIGHT.turned(heading - bend)
        arriving = RIGHT.turned(heading + bend)
        end = start + RIGHT.turned(heading) * chord
        return Cubic(start, start + leaving * (first * chord), end - arriving * (last * chord), end)

    share = st.floats(0.15, 0.45)
    return st.builds(
        build, points(), lengths(20, 600), st.floats(-pi, pi), st.floats(-1.0, 1.0), share, share
    )


def rigid_motions() -> st.SearchStrategy[Rigid]:
    turning = st.builds(Rigid.turning, points(), st.floats(-pi, pi))
    moving = st.builds(Rigid.moving, points())
    mirroring = st.builds(
        lambda on, angle: Rigid.mirroring(on, RIGHT.turned(angle)), points(), st.floats(-pi, pi)
    )
    return turning | moving | mirroring


@st.composite
def fronts(draw: st.DrawFn, *, waist_dart: bool = False, straight_hem: bool = False) -> Piece:
    """Half a front on the fold: neck, shoulder, armhole, side with a bust dart, hem; centre front at x = 0.

    The outline goes down the fold's other way: hem to the right, up the side, armhole, shoulder, neck, down
    the fold.
    """
    half = draw(lengths(210, 320))  # half front at the bust line
    hip = half + draw(lengths(-5, 40))
    length = draw(lengths(850, 1200))  # neck point to hem
    neck_width, neck_depth = draw(lengths(60, 95)), draw(lengths(60, 130))
    shoulder, slope = draw(lengths(90, 140)), draw(lengths(25, 50))
    bust_depth = draw(lengths(240, 290))
    bust_out = draw(lengths(80, 110))
    scye = bust_depth - draw(lengths(30, 55))  # depth of the underarm below the neck point
    width, drop = draw(lengths(15, 45)), draw(lengths(15, 60))
    hem_rise = 0.0 if straight_hem else draw(lengths(0, 12))

    neck_point = Point(neck_width, 0.0)
    centre_neck = Point(0.0, -neck_depth)
    shoulder_point = Point(neck_width + shoulder, -slope)
    underarm = Point(half, -scye)
    hem_centre = Point(0.0, -length)
    hem_side = Point(hip, -length + hem_rise)
    pivot = Point(bust_out, -bust_depth)

    # The dart: its upper leg meets the side `drop` below the underarm, its lower leg is as long.
    side = (hem_side - underarm).unit()
    first_leg = underarm + side * drop
    reach = first_leg.distance(pivot)
    foot = underarm + side * (pivot - underarm).dot(side)
    beyond = foot + (
        foot - first_leg
    )  # mirrored in the foot: the other place on the side's line at that reach
    closing = 2.0 * (foot - first_leg).norm()
    if closing < width + 1.0 or (foot - first_leg).dot(side) < 0.0:
        second_leg = pivot + (first_leg - pivot).turned(-width / reach)
    else:
        second_leg = beyond if closing <= 60.0 else pivot + (first_leg - pivot).turned(-width / reach)
    hem = Line(hem_centre, hem_side) if hem_rise == 0.0 else curve(hem_centre, RIGHT, hem_side, side.left())
    armhole = curve(underarm, LEFT, shoulder_point, Point(slope, shoulder).unit())
    neck = curve(neck_point, Point(-slope, -shoulder).unit(), centre_neck, LEFT)
    edges = (
        Edge("hem", "hem-centre", "hem-side", (Path((hem,)),)),
        Edge(
            "side",
            "hem-side",
            "underarm",
            (Path((Line(hem_side, second_leg),)), Path((Line(first_leg, underarm),))),
            ("bust-dart",),
        ),
        Edge("armhole", "underarm", "shoulder-point", (Path((armhole,)),)),
        Edge("shoulder", "shoulder-point", "neck-point", (Path((Line(shoulder_point, neck_point),)),)),
        Edge("neck", "neck-point", "centre-neck", (Path((neck,)),)),
        Edge("centre", "centre-neck", "hem-centre", (Path((Line(centre_neck, hem_centre),)),)),
    )
    dart = Dart("bust-dart", "side", second_leg, first_leg, pivot, short=draw(lengths(0, 25)))
    hip_level = -length + draw(lengths(200, 320))
    lower_side = edges[1].parts[0]
    share = (hip_level - hem_side.y) / (second_leg.y - hem_side.y)
    hip_end = lower_side.start.toward(lower_side.end, share)
    hip_line = ReferenceLine("hip-line", (Path((Line(Point(0.0, hip_level), hip_end),)),))
    bust_line = ReferenceLine(
        "bust-line", (Path((Line(Point(0.0, pivot.y), pivot), Line(pivot, first_leg))),)
    )
    inner: tuple[TwoPointedDart, ...] = ()
    if waist_dart:
        middle = Point(pivot.x + draw(lengths(20, 40)), -draw(lengths(400, 430)))
        opening = draw(lengths(8, 20))
        inner = (
            TwoPointedDart(
                "waist-dart",
                middle + UP * 90.0,
                middle + DOWN * 110.0,
                middle + LEFT * (opening / 2),
                middle + RIGHT * (opening / 2),
            ),
        )
    return Piece(
        "front",
        "Front",
        edges,
        darts=(dart,),
        two_pointed=inner,
        lines=(bust_line, hip_line),
        points=(NamedPoint("bust-point", pivot),),
        notches=(Notch("side", 100.0), Notch("hem", 20.0)),
        grain=Path((Line(Point(30.0, -length + 100.0), Point(30.0, -length + 400.0)),)),
        fold="centre",
    )
