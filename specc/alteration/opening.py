"""Owns what becomes of an opening in an edge: drawn over smoothly, or folded; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from specc.alteration.blending import flared, smoothed
from specc.alteration.marks import behind, with_marks
from specc.alteration.runs import NEAR, Run, linked
from specc.geometry.crossing import line_crossings
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.segment import Line
from specc.geometry.tolerance import SAME
from specc.model.alteration import Form
from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_length
from specc.pattern.outline import laid_onto_second
from specc.pattern.piece import Fold, FoldKind, Gathers, ReferenceLine

if TYPE_CHECKING:
    from specc.geometry.point import Point
    from specc.pattern.piece import Dart, Piece

ON_LEG: Final = 0.01  # mm; a line that ends this near to a dart's leg ends at it
UNDERLAY: Final = 4.0  # a fold whose underlay runs further than so many openings is drawn straight across
FOLDED: Final = {Form.PLEAT: FoldKind.PLEAT, Form.TUCK: FoldKind.TUCK}


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening between two runs of an edge, named among the darts between them as `name`.

    `at` is its stitched place on the edge before it is filled. `pivot` is what one side was turned about, or
    None if it was moved parallel. `inner` are the inner ends of its two sides, as the outline goes.
    """

    name: str
    at: float
    pivot: Point | None
    inner: tuple[Point, Point]


def filled(
    piece: Piece, runs: tuple[Run, ...], opening: Opening, form: Form
) -> tuple[Piece, tuple[Run, ...]]:
    """The piece and its runs with the opening drawn over.

    With flare the edge grows; otherwise it stays as long as sewn, by gathers or ease over the inner halves of
    the two runs, or by a fold. The edges of the piece are still to be made of the runs.
    """
    index = next(index for index, run in enumerate(runs) if run.dart == opening.name)
    before, after = runs[index], runs[index + 1]
    if form in FOLDED:
        onto_after = laid_onto_second(piece, before.path.end, after.path.start)
        path = _folded(before.path, after.path, opening.inner, onto_after=onto_after)
    else:
        path = _smooth(before.path, after.path, opening.pivot)
    first, second = before.path.length(), after.path.length()
    growth = path.length() - first - second
    runs = (*runs[:index], Run(after.edge, path, after.dart), *runs[index + 2 :])
    edge = edge_named(piece, before.edge)
    assert edge is not None
    if form is Form.FLARE:
        return with_marks(piece, edge.name, behind(opening.at, growth)), runs
    if growth <= SAME:
        return piece, runs
    if form in FOLDED:
        taken = replace(edge, folds=(*edge.folds, Fold(opening.at, growth, FOLDED[form])))
    else:
        low = max(0.0, opening.at - 0.5 * first)
        high = min(stitched_length(edge), opening.at + 0.5 * second)
        drawn = Gathers(low, high, growth, eased=form is Form.EASE)
        taken = replace(edge, gathers=(*edge.gathers, drawn))
    return replace(piece, edges=tuple(taken if e.name == edge.name else e for e in piece.edges)), runs


def _smooth(before: Path, after: Path, pivot: Point | None) -> Path:
    """One smooth run; straight across where a smooth one would be shorter than the two were."""
    path = smoothed(before, after) if pivot is None else flared(before, after, pivot)
    whole = before.length() + after.length()
    return path if path.length() >= whole else linked((before, after))


def _folded(before: Path, after: Path, inner: tuple[Point, Point], *, onto_after: bool) -> Path:
    """The run with the edge of a fold between the two: laid, its layers end with the run they lie on.

    Its upper half is the mirror image, in the line of the fold, of the run onto which it is laid; its lower
    half is the mirror image of that in the middle of the fold.
    """
    if onto_after:
        turned = _folded(after.reversed(), before.reversed(), inner[::-1], onto_after=False)
        return turned.reversed()
    start, end = before.end, after.start
    gap = start.distance(end)
    if gap <= NEAR:
        return linked((before, after))
    middle = start.toward(end, 0.5)
    axis = inner[0].toward(inner[1], 0.5) - middle
    onto = before.transformed(Rigid.mirroring(start, inner[0] - start)).reversed()
    onto = onto.between_points(start, onto.end)
    met = line_crossings(onto.extended(0.0, gap), middle, axis)
    if not met or met[0].along > UNDERLAY * gap:
        return linked((before, after))
    upper = onto.extended(0.0, gap).between(0.0, met[0].along)
    lower = upper.transformed(Rigid.mirroring(middle, axis)).reversed()
    return linked((before, upper, lower, after))


def lines_over(piece: Piece, dart: Dart) -> tuple[ReferenceLine, ...]:
    """The lines of the piece, those that an edge dart parted joined straight across it."""
    return tuple(ReferenceLine(line.name, _bridged(line.parts, dart)) for line in piece.lines)


def _bridged(parts: tuple[Path, ...], dart: Dart) -> tuple[Path, ...]:
    """The parts of a line with the two on either side of the dart joined straight across it."""
    first, second = Path.through(dart.pivot, dart.first), Path.through(dart.pivot, dart.second)
    kept = [parts[0]]
    for part in parts[1:]:
        before = kept[-1]
        across = any(
            a.distance_to(before.end) <= ON_LEG and b.distance_to(part.start) <= ON_LEG
            for a, b in ((first, second), (second, first))
        )
        if not across:
            kept.append(part)
            continue
        if before.end.distance(part.start) > NEAR:
            before = before.joined(Path((Line(before.end, part.start),)))
        kept[-1] = before.joined(part.between_points(before.end, part.end))
    return tuple(kept)
