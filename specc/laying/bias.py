"""Owns cutting bias strips: what a length of cloth yields at 45 degrees, in strips or as a tube; the joins.

Knows nothing of garments. Lengths are millimetres. A strip is as long as its shorter edge; its ends lie on
the straight grain, so a join slants across the strip.
"""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass
from math import floor, sqrt
from typing import TYPE_CHECKING, Final

from specc.model.spreading import JOINED, OFFCUTS, TUBED, WHOLE

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

_SLANT = sqrt(2.0)
_EXACT = 1e-9
_MOST_OFFCUTS = 400  # of which whole pieces are cut
_STEP = 5.0  # lengths of cloth are looked for in steps of so much
SHORTEST: Final = 150.0  # of a strip that is worth joining (common practice, no source)
CLEAR: Final = 50.0  # between a join and the end of a piece, or another join (common practice, no source)
ALLOWANCE: Final = 6.0  # of a join (common practice, no source)


@dataclass(frozen=True, slots=True)
class BiasCut:
    """Strips cut on the bias: `length` of cloth gives `strips` of `longest`, and shorter ones, in order.

    `joins` are, for each piece in the order asked, the places of the joins in it, from its beginning. Of a
    tube `side` is the side of the square, `squares` how many; a join comes every half of a turn. Of offcuts
    `strips` are those of the lays, and `rest` is how the pieces are cut, from length `length`, that are not
    among the first.
    """

    way: str
    length: float
    strips: tuple[float, ...]
    joins: tuple[tuple[float, ...], ...]
    side: float = 0.0
    squares: int = 0
    rest: BiasCut | None = None


def strips_of(width: float, length: float, wide: float) -> tuple[float, ...]:
    """The lengths of the strips, `wide` across, in a rectangle of cloth, the longest first.

    Full strips run from one of its longer edges to the other; each of the two corners beside them holds
    shorter ones.
    """
    short, long = sorted((width, length))
    full = floor((long - short) / (wide * _SLANT) + _EXACT)
    in_corner = [short * _SLANT - 2.0 * number * wide for number in range(1, floor(short / wide) + 1)]
    corners = [strip for strip in in_corner if strip >= SHORTEST for _ in range(2)]
    return (*(short * _SLANT for _ in range(full)), *corners)


def lost_by_join(allowance: float = ALLOWANCE) -> float:
    """The length of strip that a slanting join takes: both allowances, seen along the strip."""
    return 2.0 * _SLANT * allowance


def tube_length(side: float, wide: float, allowance: float = ALLOWANCE) -> float:
    """The length of strip of a tube from a square, cut round and round in whole turns."""
    inner = side - 2.0 * allowance
    return floor(inner / (wide * _SLANT) + _EXACT) * _SLANT * inner if inner > 0.0 else 0.0


def tube_side(total: float, wide: float, allowance: float = ALLOWANCE) -> float:
    """The side of the smallest square whose tube gives so much."""
    turns = range(1, floor(sqrt(total / (2.0 * wide))) + 2)
    inner = min(max(turn * wide * _SLANT, total / (turn * _SLANT)) for turn in turns)
    return inner + 2.0 * allowance


def bias_cuts(pieces: tuple[float, ...], width: float, wide: float) -> tuple[BiasCut, ...]:
    """The ways in which the pieces can be cut from cloth of that width, without offcuts, as in BIAS_WAYS.

    `wide` is the width of the strips, below that of the cloth. There must be a piece.
    """
    found = (_joined(pieces, width, wide), _whole(pieces, width, wide), _tube(pieces, width, wide))
    return tuple(cut for cut in found if cut is not None)


def from_offcuts(
    pieces: tuple[float, ...], offcuts: tuple[float, ...], cloth: tuple[float, float], *, whole: bool
) -> BiasCut | None:
    """The pieces cut from offcuts of these lengths, as many of the first as they give, the others from cloth.

    `cloth` is its width and that of the strips; `whole` pieces have no joins. None where no piece can be cut.
    """
    free = tuple(sorted(offcuts, reverse=True))[: _MOST_OFFCUTS if whole else None]
    most = min(len(pieces), _MOST_OFFCUTS) if whole else len(pieces)

    def joins(strips: int, number: int) -> tuple[tuple[float, ...], ...] | None:
        if whole:
            return ((),) * number if _fits(free[:strips], pieces[:number]) else None
        return _run(free[:strips], pieces[:number])

    number = bisect_left(range(1, most + 1), True, key=lambda count: joins(len(free), count) is None)
    if not number:
        return None
    used = 1 + bisect_left(range(1, len(free) + 1), True, key=lambda count: joins(count, number) is not None)
    rest = pieces[number:]
    bought = (_whole(rest, *cloth) if whole else _joined(rest, *cloth)) if rest else None
    if rest and bought is None:
        return None
    within = joins(used, number) or ()
    return BiasCut(
        OFFCUTS,
        bought.length if bought else 0.0,
        free[:used],
        (*within, *(bought.joins if bought else ())),
        rest=bought,
    )


def _joined(pieces: tuple[float, ...], width: float, wide: float) -> BiasCut:
    length = _least(lambda long: _run(strips_of(width, long, wide), pieces) is not None, pieces, width, wide)
    strips = strips_of(width, length, wide)
    joins = _run(strips, pieces)
    assert joins is not None
    return BiasCut(JOINED, length, strips, joins)


def _whole(pieces: tuple[float, ...], width: float, wide: float) -> BiasCut | None:
    if max(pieces) > width * _SLANT:
        return None
    length = _least(lambda long: _fits(strips_of(width, long, wide), pieces), pieces, width, wide)
    return BiasCut(WHOLE, length, strips_of(width, length, wide), tuple(() for _ in pieces))


def _tube(pieces: tuple[float, ...], width: float, wide: float) -> BiasCut | None:
    """As few squares as fit the width; a piece that runs over the end of one begins on the next."""
    total = sum(pieces)
    for squares in range(1, len(pieces) + 1):
        # Of each square but the last so much may be left over.
        spare = max(pieces) if squares > 1 else 0.0
        side = tube_side(total / squares + spare, wide)
        if side <= width:
            abreast = floor(width / side + _EXACT)
            rows = -(-squares // abreast)
            inner = side - 2.0 * ALLOWANCE
            turn = inner * _SLANT
            strips = (tube_length(side, wide),) * squares
            joins = tuple(_in_tube(pieces, strips[0], turn / 2.0))
            return BiasCut(TUBED, rows * side, strips, joins, side, squares)
    return None


def _in_tube(pieces: tuple[float, ...], run: float, apart: float) -> Iterator[tuple[float, ...]]:
    """The joins in each piece, cut one behind the other off runs with a join after every `apart`.

    A piece for which a run is too short begins the next.
    """
    start = 0.0
    for piece in pieces:
        if start + piece > run + _EXACT:
            start = 0.0
        first, last = floor(start / apart) + 1, floor((start + piece) / apart - _EXACT)
        yield tuple(apart * number - start for number in range(first, last + 1))
        start += piece


def _least(enough: Callable[[float], bool], pieces: tuple[float, ...], width: float, wide: float) -> float:
    """The shortest length of cloth, in steps, that is found to be enough; never less than the area asks."""
    low = floor(sum(pieces) * wide / width / _STEP)
    step = 1
    while not enough((low + step) * _STEP):
        low, step = low + step, step * 2
    high = low + step
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if enough(middle * _STEP) else (middle, high)
    return high * _STEP


def _fits(strips: tuple[float, ...], pieces: Iterable[float]) -> bool:
    """Whether every piece has a strip, the longest pieces going first, each into the first that has room."""
    left = list(strips)
    for piece in sorted(pieces, reverse=True):
        place = next((index for index, room in enumerate(left) if room >= piece - _EXACT), None)
        if place is None:
            return False
        left[place] -= piece
    return True


def _run(strips: tuple[float, ...], pieces: tuple[float, ...]) -> tuple[tuple[float, ...], ...] | None:
    """The joins in each piece when the pieces are cut from one run of strips; None when that is too short.

    A join that would come too near to an end of a piece is moved: what is too short of a strip is cut away.
    """
    left = list(reversed(strips))
    room = left.pop() if left else 0.0
    found: list[tuple[float, ...]] = []
    for piece in pieces:
        joins: list[float] = []
        done = 0.0
        while piece - done > room + _EXACT:
            # What this strip gives of the piece, so that the join is clear of both its ends.
            gives = min(room - lost_by_join() / 2.0, piece - done - CLEAR)
            if not left:
                return None
            if gives >= CLEAR:
                done += gives
                joins.append(done)
                room = left.pop() - lost_by_join() / 2.0
            elif done:
                return None
            else:
                room = left.pop()
        room -= piece - done
        found.append(tuple(joins))
    return tuple(found)
