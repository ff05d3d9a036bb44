"""Owns the alterations, one module a verb: pieces in, altered pieces or a refusal out.

Knows nothing of paper.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

from specc.alteration import (
    band,
    crop,
    divide,
    extend,
    face,
    gather,
    join,
    leave_out,
    lengthen,
    mirror,
    move_corner,
    move_seam,
    pleat,
    release,
    round_corner,
    scallop,
    sew_as,
    shape_edge,
    split,
    spread,
    swing,
    taper,
    unfold,
)
from specc.model.alteration import Crop, LeaveOut, Lengthen, MoveCorner, Release, Swing
from specc.model.dividing import Divide
from specc.model.fullness import Gather, Pleat
from specc.model.recutting import MoveSeam, Shape
from specc.model.reshaping import (
    Band,
    Extend,
    Face,
    Join,
    Mirror,
    RoundCorner,
    Scallop,
    SewAs,
    Split,
    Spread,
    Taper,
    Unfold,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.alteration.refusal import Refusal
    from specc.model.expression import Expression
    from specc.pattern.piece import Piece

    # Each verb takes its own kind of step, which `run` looks it up by.
    Verb = Callable[[tuple[Piece, ...], Any, Callable[[Expression], float]], tuple[Piece, ...] | Refusal]

VERBS: Final[tuple[tuple[type, Verb], ...]] = (
    (LeaveOut, leave_out.apply),
    (Swing, swing.apply),
    (Release, release.apply),
    (Crop, crop.apply),
    (Lengthen, lengthen.apply),
    (MoveCorner, move_corner.apply),
    (Spread, spread.apply),
    (Taper, taper.apply),
    (Extend, extend.apply),
    (SewAs, sew_as.apply),
    (RoundCorner, round_corner.apply),
    (Scallop, scallop.apply),
    (Band, band.apply),
    (Split, split.apply),
    (Join, join.apply),
    (Unfold, unfold.apply),
    (Mirror, mirror.apply),
    (Face, face.apply),
    (Pleat, pleat.apply),
    (Gather, gather.apply),
    (Shape, shape_edge.apply),
    (MoveSeam, move_seam.apply),
    (Divide, divide.apply),
)
