"""Owns a garment for the tests of the sheet: its words are read, its pieces are made by hand.

The front is a half front on the fold with curved neck and armhole and a bust dart, the back a half back; five
sizes grow by 1 inch of girth each. The shapes are plausible, no more: a test of the sheet needs pieces, not
fit.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import TYPE_CHECKING

from specc.alteration.shape import Shaped
from specc.diagnostics import Code, Severity
from specc.document.build import build
from specc.document.sheet import Sheet
from specc.flat import lay_flat
from specc.geometry.path import Path
from specc.geometry.point import Point
from specc.geometry.segment import Cubic, Line
from specc.laying import CutOut, lay
from specc.library.methods import method_files
from specc.making import assemble, cut
from specc.pattern.piece import Dart, Edge, NamedPoint, Notch, NotchKind, Piece, ReferenceLine
from specc.quantities.count import count
from specc.quantities.measure import measure
from specc.resolve import Gathered, resolve
from specc.source import SourceFile
from specc.syntax import parse
from tests.compiling import roughly

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.document.document import Document
    from specc.model.garment import Accept, Garment

SIZES = ("8", "10", "12", "14", "16")

SPEC = """\
# A pull-on overtop for the tests of the sheet.
garment skiff "Skiff overtop" {
  style     "SK-01"
  maker     "Saltmarsh Works"
  season    "summer"
  worn-by   adult
  puts-on   over the head
  sizes     8, 10, 12, 14, 16
  sample    12
  order     8: 4, 10: 8, 12: 10, 14: 6, 16: 2
  units     in
  paper     A4
  revision  A 2026-02-11 "first sample"
  revision  B 2026-03-02 "neck dropped 1/2 in after the first fitting"
}
use chart mini
use block plain
chart mini "mini" {
  sizes 8, 10, 12, 14, 16
  measurement bust "bust" = 31.5, 32.5, 34, 36, 38 in
}
block plain "plain half pieces" {
  piece front "front" {
    cut 1 on fold along centre
    point a at 0 in, 0 in
    point b at 5 in, 0 in
    point c at 5 in, 9 in
    point d at 0 in, 9 in
    point e at 4 in, 9 in
    point f at 5 in, 8 in
    edge hem from a { line to b }
    edge side from b { line to c }
    edge armhole from c { line to f }
    edge shoulder from f { line to e }
    edge neck from e { line to d }
    edge centre from d { line to a }
    line bust-line from a to b
  }
  piece back "back" {
    cut 1 on fold along centre
    point a at 0 in, 0 in
    point b at 5 in, 0 in
    point c at 5 in, 9 in
    point d at 0 in, 9 in
    point e at 4 in, 9 in
    point f at 5 in, 8 in
    edge hem from a { line to b }
    edge side from b { line to c }
    edge armhole from c { line to f }
    edge shoulder from f { line to e }
    edge neck from e { line to d }
    edge centre from d { line to a }
  }
}
cloth leno "cotton leno, open weave" {
  fibre     100% cotton
  width     54 in, usable 52 in
  weight    140 g/m2
  is        open, sheer, ravel-free
  price     14.50 USD per yd
}
trim edging "knitted fold-over elastic, rust red" {
  kind      fold-over elastic
  width     1 in
  stretch   60%
  price     0.38 USD per yd
  sold      in rolls of 25 yd
}
thread core "corespun polyester" {
  size      Tex 27
  for       all
}
seam shoulder joins front.shoulder to back.shoulder by bound-outside {
  binding   edging
  lay       to back
}
seam side joins front.side to back.side by overlocked { allow 3/8 in }
finish neckline along back.neck, front.neck by elastic-bound {
  binding   edging
  hold      6% along front.neck from 40% to 100%
}
hem bottom along front.hem, back.hem by raw
measure bust "bust, round, at the bust line" = girth at bust-line, tolerance 1/2 in
measure neck "neck opening, round, bound" = opening of neckline, tolerance plus 1/4 in minus 1/8 in
accept SPC501 on front.bust-dart because "the dart is the ornament & <b>shows</b>"
label main at back.neck { says "Saltmarsh Works", "size", "100% cotton" }
care {
  wash      40 C, mild
  dry       flat, in shade
}
note "Cut one ply at a time with a rotary cutter: open cloth shifts under shears."
"""


def _library(name: str) -> SourceFile:
    path = FilePath(__file__).parents[3] / "specc" / "library" / name
    return SourceFile(f"library/{name}", path.read_text(encoding="utf-8"))


def garment(spec: str = SPEC) -> Garment:
    tree, faults = parse(SourceFile("skiff.garment", spec))
    methods = tuple(parse(_library(f"{file}.garment"))[0] for file, _ in method_files())
    assert not list(faults), list(faults)
    found, said = resolve(Gathered(tree, (), methods))
    assert found is not None, said
    return found


def front(grow: float, *, dart: bool = True) -> Piece:
    """Half a front, the fold at the left; `grow` millimetres wider in the half."""
    hem_fold, hem_side = Point(0.0, 0.0), Point(258.0 + grow, 12.0)
    underarm, tip = Point(240.0 + grow, 350.0), Point(198.0 + grow / 2, 520.0)
    neck_point, neck = Point(98.0 + grow / 4, 548.0), Point(0.0, 430.0)
    low, high = Point(247.0 + grow, 262.0), Point(244.5 + grow, 292.0)
    pivot = Point(102.0 + grow / 3, 296.0)
    side = (
        (Path((Line(hem_side, low),)), Path((Line(high, underarm),)))
        if dart
        else (Path((Line(hem_side, underarm),)),)
    )
    edges = (
        Edge(
            "hem",
            "centre-hem",
            "hem-side",
            (Path((Cubic(hem_fold, Point(90, 0), Point(180 + grow, 4), hem_side),)),),
        ),
        Edge("side", "hem-side", "underarm", side, ("bust-dart",) if dart else ()),
        Edge(
            "armhole",
            "underarm",
            "shoulder-tip",
            (Path((Cubic(underarm, Point(182 + grow / 2, 352), Point(176 + grow / 2, 440), tip),)),),
        ),
        Edge("shoulder", "shoulder-tip", "neck-point", (Path((Line(tip, neck_point),)),)),
        Edge(
            "neck",
            "neck-point",
            "centre-neck",
            (Path((Cubic(neck_point, Point(84, 470), Point(54, 430), neck),)),),
        ),
        Edge("centre", "centre-neck", "centre-hem", (Path((Line(neck, hem_fold),)),)),
    )
    return Piece(
        "front",
        "Front",
        edges,
        darts=(Dart("bust-dart", "side", low, high, pivot, short=25.4),) if dart else (),
        lines=(ReferenceLine("bust-line", (Path((Line(Point(0, 300), Point(244 + grow, 300)),)),)),),
        points=(NamedPoint("bust-point", pivot),),
        notches=(Notch("armhole", 76.2), Notch("neck", 60.0)),
        grain=Path((Line(Point(60, 60), Point(60, 200)),)),
        fold="centre",
    )


def back(grow: float) -> Piece:
    """Half a back, the fold at the left."""
    hem_fold, hem_side = Point(0.0, 0.0), Point(250.0 + grow, 10.0)
    underarm, tip = Point(236.0 + grow, 328.0), Point(200.0 + grow / 2, 512.0)
    neck_point, neck = Point(98.0 + grow / 4, 545.0), Point(0.0, 515.0)
    edges = (
        Edge(
            "hem",
            "centre-hem",
            "hem-side",
            (Path((Cubic(hem_fold, Point(90, 0), Point(180 + grow, 3), hem_side),)),),
        ),
        Edge("side", "hem-side", "underarm", (Path((Line(hem_side, underarm),)),)),
        Edge(
            "armhole",
            "underarm",
            "shoulder-tip",
            (Path((Cubic(underarm, Point(186 + grow / 2, 330), Point(184 + grow / 2, 440), tip),)),),
        ),
        Edge("shoulder", "shoulder-tip", "neck-point", (Path((Line(tip, neck_point),)),)),
        Edge(
            "neck",
            "neck-point",
            "centre-neck",
            (Path((Cubic(neck_point, Point(80, 518), Point(50, 515), neck),)),),
        ),
        Edge("centre", "centre-neck", "centre-hem", (Path((Line(neck, hem_fold),)),)),
    )
    return Piece(
        "back",
        "Back",
        edges,
        lines=(ReferenceLine("bust-line", (Path((Line(Point(0, 300), Point(236 + grow, 300)),)),)),),
        notches=(Notch("armhole", 80.0, NotchKind.DOUBLE),),
        grain=Path((Line(Point(60, 60), Point(60, 200)),)),
        fold="centre",
    )


@dataclass(frozen=True, slots=True)
class Judgement:
    """As the rules would hand it on."""

    standing: tuple[Diagnostic, ...] = ()
    accepted: tuple[Accepted, ...] = ()


@dataclass(frozen=True, slots=True)
class Accepted:
    diagnostic: Diagnostic
    accept: Accept


SHOWS = Code("SPC501", "dart-shows", Severity.WARNING, "dart `{dart}` shows in open cloth")
GAPES = Code("SPC599", "neck-gapes", Severity.WARNING, "the neck may gape")


def sheet(spec: str = SPEC, *, laid: bool = True) -> Sheet:
    of = garment(spec)
    shaped = tuple(
        Shaped(size, {"bust": 860.0}, (front(g), back(g)), (), ())
        for size, g in zip(SIZES, (-12.7, -6.35, 0.0, 6.35, 12.7), strict=True)
    )
    made, said = assemble(of, shaped)
    assert made is not None, said
    measured, said = measure(of, shaped, made)
    assert measured is not None, said
    pieces = cut(made)
    lays, said = lay(of, made, pieces, None, roughly) if laid else ((), ())
    assert not said
    amounts = count(of, shaped, made, measured, CutOut(pieces, lays))
    judgement = Judgement(
        (GAPES.at(of.finishes[0].origin).help("hold the binding in along the curve"),),
        tuple(Accepted(SHOWS.at(each.origin, dart="front.bust-dart"), each) for each in of.accepts),
    )
    flat = lay_flat(of, made.sizes[SIZES.index("12")])
    return Sheet(of, made, amounts, judgement, flat, "0.1.0", of.sources[:1])


def document(spec: str = SPEC, *, laid: bool = True) -> Document:
    return build(sheet(spec, laid=laid))
