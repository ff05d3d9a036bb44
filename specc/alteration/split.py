"""Owns the verb `split`: a piece is cut along a line into two that sew together; knows no other verb."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from specc.alteration.bending import without_kinks
from specc.alteration.cutting_line import ON, cutting_line
from specc.alteration.fitting import fitted_inside
from specc.alteration.grain import grain_across
from specc.alteration.parting import joints_of, parts_of
from specc.alteration.refusal import Refusal, found, line_of
from specc.alteration.runs import edges_from
from specc.geometry.path import Path
from specc.geometry.region import crosses_itself
from specc.pattern.lookup import dart_named, names_of
from specc.pattern.outline import flat_outline, grain_direction
from specc.pattern.piece import Edge, Gone, NamedPoint, Notch

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.cutting_line import CuttingLine
    from specc.alteration.parting import Part
    from specc.alteration.refusal import Facts
    from specc.geometry.point import Point
    from specc.model.expression import Expression
    from specc.model.reshaping import Split
    from specc.pattern.piece import Piece

LEGS_APART: Final = 0.5  # mm by which the two sides of a dart may differ


def apply(
    pieces: tuple[Piece, ...], step: Split, evaluate: Callable[[Expression], float]
) -> tuple[Piece, ...] | Refusal:
    """The pieces with two in place of one; the new edges bear the line's name and are equally long."""
    piece = found(pieces, step.piece.piece, step.piece.origin)
    if isinstance(piece, Refusal):
        return piece
    refused = _names_taken(pieces, piece, step)
    if refused is not None:
        return refused
    line = cutting_line(piece, step, evaluate)
    if isinstance(line, Refusal):
        return line
    parts = parts_of(piece, line)
    if isinstance(parts, str):
        facts: Facts = (("piece", piece.name), ("line", line.name), ("edge", parts))
        cure = "begin and end on different edges"
        return Refusal("split-cuts-edge-twice", facts, step.origin, cure)
    joints = joints_of(line)
    parts = _closed(parts[0], line, joints), _closed(parts[1], line, joints)
    made = _made(piece, line, parts, step)
    if isinstance(made, Refusal):
        return made
    named = _named(piece, made, step)
    return tuple(new for old in pieces for new in (named if old is piece else (old,)))


def _names_taken(pieces: tuple[Piece, ...], piece: Piece, step: Split) -> Refusal | None:
    """Why a name that the split would give is not free."""
    others = {other.name for other in pieces if other is not piece}
    taken = next((name for name in step.into if name in others), None)
    if step.into[0] == step.into[1]:
        taken = step.into[0]
    if taken is not None:
        return Refusal("piece-name-taken", (("name", taken),), step.origin, "take another name")
    known = frozenset(names_of(piece))
    part = next((n for n in (step.line, f"{step.line}-start", f"{step.line}-end") if n in known), None)
    if part is None:
        return None
    facts = (("piece", piece.name), ("name", part))
    return Refusal("part-name-taken", facts, step.origin, "give the line another name")


def _closed(part: Part, line: CuttingLine, joints: tuple[str, ...]) -> Part:
    """The part with every dart closed that opens on it and points at a point of the line."""
    for dart in part.inside.darts:
        at = next(
            (joint for joint, p in zip(joints, line.points(), strict=True) if p.distance(dart.pivot) <= ON),
            None,
        )
        if at is not None:
            part = part.closing(dart.name, at)
    return part


def _made(
    piece: Piece, line: CuttingLine, parts: tuple[Part, Part], step: Split
) -> tuple[Piece, Piece] | Refusal:
    """The two pieces: new edges without kinks, equally long, notched at the line's points."""
    drawn = tuple(part.line_paths() for part in parts)
    lengths = [sum(path.length() for path in paths) for paths in drawn]
    facts: Facts = (("piece", piece.name), ("line", line.name))
    apart = abs(lengths[0] - lengths[1])
    if apart > LEGS_APART:
        more = (*facts, ("distance", apart))
        return Refusal("split-sides-unequal", more, step.origin, "draw darts with sides of equal length")
    length = 0.5 * (lengths[0] + lengths[1])
    places = _places(drawn, joints_of(line))
    along = grain_direction(piece) if piece.grain else None
    made = []
    for part, paths in zip(parts, drawn, strict=True):
        edge = without_kinks(paths, length=length)
        if edge is None:
            cure = "run it through points that lead more smoothly out of the darts"
            return Refusal("split-turns-sharply", facts, step.origin, cure)
        new = _piece(part, line, edge, places=places, along=along)
        if crosses_itself(flat_outline(new)):
            return Refusal("split-leaves-piece", facts, step.origin, "run it through other points")
        made.append(new)
    return made[0], made[1]


def _places(drawn: tuple[tuple[Path, ...], ...], joints: tuple[str, ...]) -> tuple[float, ...]:
    """How far along the new edges the line's points are, the same on both."""
    places = []
    for joint in joints:
        number = int(joint[1:])
        walked = [sum(path.length() for path in paths[:number]) for paths in drawn]
        places.append(0.5 * (walked[0] + walked[1]))
    return tuple(places)


def _piece(
    part: Part, line: CuttingLine, edge: Path, *, places: tuple[float, ...], along: Point | None
) -> Piece:
    """The part as a piece under its old name; a named point of the line lies on the new edge.

    `along` is the direction of the grain, for a part without a grain line.
    """
    inside, name = part.inside, line.name
    start, end = f"{name}-start", f"{name}-end"
    path = edge if part.forward else edge.reversed()
    ends = (start, end) if part.forward else (end, start)
    outline = list(edges_from(inside, part.outline))
    outline[-1] = replace(outline[-1], end=ends[0])
    outline[0] = replace(outline[0], start=ends[1])
    kinked = Path(tuple(segment for run in part.line for segment in run.path.segments))
    order = {each.name: index for index, each in enumerate(inside.edges)}
    first = min(range(len(outline)), key=lambda index: order[outline[index].name])
    # A cut through the piece's first edge leaves its beginning on one part and its end on the other.
    new = Edge(name, *ends, (path,))
    edges = (*outline[first:], new, *outline[:first])
    was = replace(inside, edges=tuple(replace(e, parts=(kinked,)) if e.name == name else e for e in edges))
    whole = path.length()
    fitted = fitted_inside(was, replace(was, edges=edges))
    walked = list(zip(_old_points(part, line), places, strict=True))
    points = []
    for point in was.points:
        on = next((at for old, at in walked if old.distance(point.at) <= ON), None)
        if on is not None:
            points.append(NamedPoint(point.name, path.point_at(on if part.forward else whole - on)))
        elif point in fitted.points:
            points.append(point)
    marks = tuple(Notch(name, at if part.forward else whole - at) for at in places)
    grain = fitted.grain
    if grain is None and along is not None:
        grain = grain_across(flat_outline(fitted), along)
    return replace(fitted, points=tuple(points), notches=(*fitted.notches, *marks), grain=grain)


def _old_points(part: Part, line: CuttingLine) -> tuple[Point, ...]:
    """Where the line's points lie on the part before its edge is drawn without kinks."""
    paths = part.line_paths()
    return tuple(paths[int(joint[1:]) - 1].end for joint in joints_of(line))


def _named(piece: Piece, made: tuple[Piece, Piece], step: Split) -> tuple[Piece, Piece]:
    """Both pieces under their names, in order, with what became of the names that each has no longer."""
    corner = piece.edges[0].start
    at = piece.edges[0].parts[0].start

    def leads(new: Piece) -> tuple[bool, bool, bool]:
        first = any(e.start == corner or e.parts[0].start.distance(at) <= ON for e in new.edges)
        # A cut through that very corner leaves it to the part with the first edge.
        return new.fold is not None, first, any(e.name == piece.edges[0].name for e in new.edges)

    ordered = made if leads(made[0]) >= leads(made[1]) else (made[1], made[0])
    line = line_of(step.origin)
    how = f"split into `{step.into[0]}` and `{step.into[1]}` {line}"
    named = []
    for new, other, name, beside in zip(ordered, ordered[::-1], step.into, step.into[::-1], strict=True):
        kept, left = frozenset(names_of(new)), frozenset(names_of(other))
        gone = [Gone(piece.name, how)]
        for lost in names_of(piece):
            if lost not in kept:
                taken = "taken into" if dart_named(piece, lost) else "cut away along"
                where = f"left on `{beside}`" if lost in left else f"{taken} `{step.line}`"
                gone.append(Gone(lost, f"{where} {line}"))
        on_fold = piece.fold is not None and new.fold is None
        named.append(
            replace(
                new,
                name=name,
                title=name.replace("-", " "),
                cut=2 * piece.cut if on_fold else piece.cut,
                gone=(*piece.gone, *gone),
            )
        )
    return named[0], named[1]
