"""Owns how a piece comes to lie beside one that lies already: seam line on seam line.

Knows nothing of which pieces these are. Each point goes where its nearest point on the seam line goes, so
that no width across the seam is changed. Where the seam gathers, the piece goes on from there to its full
width.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from specc.flat.chains import measured
from specc.geometry.region import centroid

if TYPE_CHECKING:
    from collections.abc import Callable

    from specc.flat.laid import Chain, LaidPiece
    from specc.geometry.point import Point

GATHERED: Final = 0.03  # a seam line longer than the one it is sewn to by more is gathered, not eased


def laid_beside(piece: LaidPiece, own: Chain, onto: Chain) -> LaidPiece:
    """The piece laid beside the chain `onto` with its own chain `own`, whichever way each of them runs."""
    if (own[-1] - own[0]).dot(onto[-1] - onto[0]) < 0.0:
        own = own[::-1]
    return piece.mapped(_move(own, onto, reach=_reach(piece, own)))


def _reach(piece: LaidPiece, own: Chain) -> float:
    """How far the piece reaches from its chain."""
    line = measured(own)
    return max((line.nearest(point)[1] for point in piece.outline), default=0.0)


def _move(own: Chain, onto: Chain, *, reach: float) -> Callable[[Point], Point]:
    here, there = measured(own), measured(onto)
    gathered = here.length > there.length * (1.0 + GATHERED)
    # Below the gathers the cloth falls from where the middle of the garment is.
    inner = min((0.0, 1.0), key=lambda share: abs(there.at(share * there.length).x))
    far = there.at(inner * there.length) - here.at(inner * here.length)

    def move(point: Point) -> Point:
        along, off = here.nearest(point)
        share = along / here.length
        shift = there.at(share * there.length) - here.at(along)
        fallen = off / reach if gathered and reach else 0.0
        return point + shift * (1.0 - fallen) + far * fallen

    return move


def lies_beyond(piece: LaidPiece, chain: Chain, other: LaidPiece) -> bool:
    """Whether the two pieces lie on different sides of the chain."""
    way = chain[-1] - chain[0]
    one, two = (centroid(each.outline) - chain[0] for each in (piece, other))
    return way.cross(one) * way.cross(two) < 0.0
