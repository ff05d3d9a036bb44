"""Owns what becomes of an opening in an edge: drawn over smoothly, or folded; knows no verb."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from specc.alteration.blending import flared, smoothed
from specc.alteration.marks import behind, with_marks
from specc.alteration.runs import NEAR, Run, linked
from specc.geometry.path import Path
from specc.geometry.point import Rigid
from specc.geometry.segment import Line
from specc.geometry.tolerance import SAME
from specc.model.alteration import Form
from specc.pattern.folding import fold_edge
from specc.pattern.lookup import edge_named
from specc.pattern.measure import stitched_length
from specc.pattern.outline import laid_onto_second
from specc.pattern.piece import Fold, FoldKind, Gathers, ReferenceLine

if TYPE_CHECKING:
    from specc.geometry.point import Point
    from specc.pattern.piece import Dart, Piece

ON_LEG: Final = 0.01  # mm; a line that ends this near to a dart's leg ends at it
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


@dataclass(frozen=True, slots=True)
class Filling:
    """What an opening becomes; for a fold, whether its underlay lies along the run after it.

    Several folds share the opening evenly, in the order of the cloth. None means one, pressed as darts are.
    """

    form: Form
    onto_after: tuple[bool, ...] = ()

    def backward(self) -> Filling:
        """The same for an edge that is travelled the other way."""
        return Filling(self.form, tuple(not onto for onto in reversed(self.onto_after)))


def filled(
    piece: Piece, runs: tuple[Run, ...], opening: Opening, filling: Filling
) -> tuple[Piece, tuple[Run, ...]]:
    """The piece and its runs with the opening drawn over.

    With flare the edge grows; otherwise it stays as long as sewn, by gathers or ease over the inner halves of
    the two runs, or by folds. The edges of the piece are still to be made of the runs.
    """
    index = next(index for index, run in enumerate(runs) if run.dart == opening.name)
    before, after = runs[index], runs[index + 1]
    folds: tuple[tuple[Path, bool], ...] = ()
    if filling.form in FOLDED:
        folds = _folds(piece, before.path, after.path, opening, filling)
        path = linked((before.path, *(fold for fold, _ in folds), after.path))
    else:
        path = _smooth(before.path, after.path, opening.pivot)
    first, second = before.path.length(), after.path.length()
    growth = path.length() - first - second
    runs = (*runs[:index], Run(after.edge, path, after.dart), *runs[index + 2 :])
    edge = edge_named(piece, before.edge)
    assert edge is not None
    if filling.form is Form.FLARE:
        return with_marks(piece, edge.name, behind(opening.at, growth)), runs
    if growth <= SAME:
        return piece, runs
    if folds:
        kind = FOLDED[filling.form]
        laid = [Fold(opening.at, fold.length(), kind, onto_after) for fold, onto_after in folds]
        taken = replace(edge, folds=tuple(sorted((*laid, *edge.folds), key=lambda fold: fold.at)))
    else:
        low = max(0.0, opening.at - 0.5 * first)
        high = min(stitched_length(edge), opening.at + 0.5 * second)
        drawn = Gathers(low, high, growth, eased=filling.form is Form.EASE)
        taken = replace(edge, gathers=(*edge.gathers, drawn))
    return replace(piece, edges=tuple(taken if e.name == edge.name else e for e in piece.edges)), runs


def _smooth(before: Path, after: Path, pivot: Point | None) -> Path:
    """One smooth run; straight across where a smooth one would be shorter than the two were."""
    path = smoothed(before, after) if pivot is None else flared(before, after, pivot)
    whole = before.length() + after.length()
    return path if path.length() >= whole else linked((before, after))


def _folds(
    piece: Piece, before: Path, after: Path, opening: Opening, filling: Filling
) -> tuple[tuple[Path, bool], ...]:
    """The edges of the folds in the opening, each with the way in which its underlay lies."""
    start, end = before.end, after.start
    if start.distance(end) <= NEAR:
        return ()
    laid = filling.onto_after or (laid_onto_second(piece, start, end),)
    outer = _between(start, end, opening.pivot, len(laid))
    inner = _between(*opening.inner, opening.pivot, len(laid))
    folds = []
    for onto_after, (a, b), (c, d) in zip(laid, pairwise(outer), pairwise(inner), strict=True):
        if onto_after:
            fold = fold_edge(after, b, a, (d, c)).reversed()
        else:
            fold = fold_edge(before.reversed(), a, b, (c, d))
        folds.append((fold, onto_after))
    return tuple(folds)


def _between(start: Point, end: Point, pivot: Point | None, count: int) -> list[Point]:
    """The points at which folds part, ends included: on the arc about the pivot, if there is one."""
    shares = [number / count for number in range(1, count)]
    if pivot is None or min(start.distance(pivot), end.distance(pivot)) <= SAME:
        return [start, *(start.toward(end, share) for share in shares), end]
    angle = (start - pivot).angle_to(end - pivot)
    return [start, *(Rigid.turning(pivot, angle * share)(start) for share in shares), end]


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
