"""Owns showing pieces, assembly and amounts as readable text, to look at a border between two stages.

Decides nothing. Lengths are millimetres with two decimals, areas square centimetres.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.pattern.measure import dart_depth, dart_width, drawn_length, line_length, stitched_length
from specc.pattern.outline import area

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.making.assembly import Assembly, Round, SizeAssembly, Walk, Zone
    from specc.pattern.piece import Dart, Piece, TwoPointedDart
    from specc.quantities.quantities import Quantities, SizeQuantities, TrimCut


def pieces(sizes: tuple[tuple[str, tuple[Piece, ...]], ...]) -> str:
    """Every piece of every size: edges, darts, lines, points, notches."""
    return _text(line for size, made in sizes for piece in made for line in _piece(size, piece))


def assembly(value: Assembly) -> str:
    """Every size put together: seams, uses of edges, rounds, openings; then what each alteration did."""
    lines = [line for size in value.sizes for line in _assembled(size)]
    for step in value.alterations:
        lines.append(f"line {step.line}: {step.sentence}")
        for size, record in zip(value.sizes, step.records, strict=True):
            lines += (
                f"  {size.size} {edge.piece}.{edge.edge} {_mm(edge.before)} -> {_mm(edge.after)}"
                for edge in record.edges
            )
    return _text(lines)


def quantities(value: Quantities) -> str:
    """Trims, cloths and measures of every size, then the bill and the demands."""
    lines = [line for size in value.sizes for line in _counted(size)]
    for item in value.bill:
        amounts = " ".join(f"{amount:.4f}" for amount in item.per_garment) or "-"
        buy = "-" if item.buy is None else f"{item.buy:.4f}"
        lines.append(f"bill {item.kind} {item.name}: {amounts} {item.unit}, buy {buy}, cost {item.cost}")
    for demand in value.expects:
        found = " ".join(f"{left:.2f}" for left in demand.left)
        lines.append(f"expect {demand.text}: {found} {'met' if all(demand.met) else 'not met'}")
    return _text(lines)


def _text(lines: Iterator[str] | list[str]) -> str:
    return "".join(f"{line}\n" for line in lines)


def _piece(size: str, piece: Piece) -> Iterator[str]:
    fold = f", {piece.fold} on the fold" if piece.fold else ""
    yield f"size {size} piece {piece.name}: cut {piece.cut}{fold}, {area(piece) / 100:.2f} cm2"
    for edge in piece.edges:
        opens = f" with {', '.join(edge.darts)}" if edge.darts else ""
        lengths = f"{stitched_length(edge):.2f} sewn, {drawn_length(edge):.2f} drawn"
        yield f"  edge {edge.name} from {edge.start} to {edge.end}: {lengths}{opens}"
    darts: tuple[Dart | TwoPointedDart, ...] = (*piece.darts, *piece.two_pointed)
    for dart in darts:
        yield f"  dart {dart.name}: {dart_width(dart):.2f} wide, {dart_depth(dart):.2f} deep"
    for line in piece.lines:
        yield f"  line {line.name}: {line_length(piece, line):.2f}"
    for point in piece.points:
        yield f"  point {point.name}: {point.at.x + 0.0:.2f}, {point.at.y + 0.0:.2f}"
    for notch in piece.notches:
        yield f"  notch {notch.edge} at {notch.at:.2f}, {notch.kind}"
    for gone in piece.gone:
        yield f"  gone {gone.name}: {gone.how}"


def _assembled(size: SizeAssembly) -> Iterator[str]:
    yield f"size {size.size}"
    yield from (f"  {_walk(walk)}" for walk in size.walks)
    for use in size.uses:
        by = f" {use.by}" if use.by else ""
        yield f"  {use.piece}.{use.edge}: {use.kind}{by}, allowance {use.allowance:.2f}"
    yield from (f"  {_round(laid)}" for laid in size.rounds)
    for opening in size.openings:
        yield f"  opening {', '.join(opening.edges)}: {opening.flat:.2f} flat, {opening.sewn:.2f} sewn"


def _walk(walk: Walk) -> str:
    sides = f"{walk.first_length:.2f} to {walk.second_length:.2f}"
    return f"seam {walk.seam}: {sides}, ease {walk.ease:.2f}, left {walk.difference + 0.0:.2f}"


def _round(laid: Round) -> str:
    how = "closed" if laid.closed else "open"
    return (
        f"round {laid.finish}: {laid.count} x {laid.length:.2f}, {how}; {'; '.join(map(_zone, laid.zones))}"
    )


def _zone(zone: Zone) -> str:
    return f"{zone.piece}.{zone.edge} {zone.start:.2f} to {zone.end:.2f} held {zone.held:.4f}"


def _counted(size: SizeQuantities) -> Iterator[str]:
    yield f"size {size.size}"
    for cut in size.cuts:
        yield f"  piece {cut.piece}: net {cut.net_area / 100:.2f} cm2, cut {cut.cut_area / 100:.2f} cm2"
    yield from (f"  {_trim(cut)}" for cut in size.trims)
    for use in size.cloths:
        yield f"  cloth {use.cloth}: {use.area / 100:.2f} cm2"
    for measure in size.measures:
        yield f"  measure {measure.name}: {measure.value:.2f}"


def _trim(cut: TrimCut) -> str:
    added = "".join(f" + {each.length:.2f} {each.what}" for each in cut.additions)
    sum_ = f"{cut.seam_length:.2f} - {cut.held:.2f} held{added}"
    return f"trim {cut.trim} on {cut.used_on}: {cut.count} x {cut.cut_length:.2f} = {sum_}"


def _mm(value: float | None) -> str:
    return "-" if value is None else f"{value:.2f}"
