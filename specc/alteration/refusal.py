"""Owns why an alteration was not carried out, as facts and a cure; knows nothing of printing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.pattern.lookup import piece_named

if TYPE_CHECKING:
    from specc.model.expression import PartRef
    from specc.pattern.piece import Piece
    from specc.source import Span


Facts = tuple[tuple[str, object], ...]
"""What a refusal says of itself: names and values."""


@dataclass(frozen=True, slots=True)
class Refusal:
    """An alteration that was not carried out: the pieces stayed as they were.

    `code_name` is a row of REASONS. `help` is a template over `facts` too; floats among the facts are
    millimetres, but for `angle`, which is in radians, and `share`, a ratio.
    """

    code_name: str
    facts: Facts
    origin: Span
    help: str


@dataclass(frozen=True, slots=True)
class Reason:
    """A kind of refusal: its name and the sentence that its facts complete."""

    name: str
    message: str


REASONS: Final = (
    Reason("piece-gone", "`{piece}` is no longer made"),
    Reason("part-gone", "`{piece}.{name}` is no longer there: it was {how}"),
    Reason("not-an-edge-dart", "`{piece}.{dart}` lies inside the piece and has no mouth to swing"),
    Reason("not-an-edge", "`{piece}.{name}` is not an edge"),
    Reason("swing-into-other-piece", "`{piece}.{dart}` cannot be swung into `{other}`, another piece"),
    Reason(
        "share-out-of-range", "a dart is swung by more than nothing and at most the whole, not by {share}"
    ),
    Reason("pivots-apart", "the pivots of `{dart}` and `{target}` lie {distance} apart"),
    Reason("slash-at-end", "the slash would meet `{piece}.{edge}` at its end or at a dart"),
    Reason("slash-crosses-dart", "the slash from `{dart}` to `{edge}` would cut into `{crossed}`"),
    Reason("slash-leaves-piece", "the slash from `{dart}` to `{edge}` would leave the piece on the way"),
    Reason("slash-into-fold", "`{piece}.{edge}` lies on the fold and must stay one straight run"),
    Reason("dart-legs-unequal", "the legs of `{dart}` differ by {distance}"),
    Reason(
        "level-outside-piece", "the level lies outside `{piece}`, which reaches from {lowest} to {highest}"
    ),
    Reason("level-crosses-twice", "the level runs through `{piece}` in more than one stretch"),
    Reason("level-cuts-one-edge", "below the level `{piece}` has nothing but a stretch of `{edge}`"),
    Reason("level-cuts-dart", "the level cuts through `{piece}.{dart}`"),
    Reason("fold-cut-away", "the fold edge of `{piece}` lies below the level"),
    Reason("band-holds-part", "the band that would be taken out of `{piece}` holds `{name}`"),
    Reason("edge-cannot-move", "`{piece}.{edge}` cannot move by {by}: `{neighbour}` does not reach it there"),
    Reason("not-a-corner-of-edge", "`{corner}` is not a corner of `{piece}.{edge}`"),
    Reason("trim-too-long", "`{piece}.{neighbour}` can be trimmed by less than {available}, not by {by}"),
    Reason("amount-not-positive", "the amount must be more than nothing, not {by}"),
    Reason(
        "corner-would-turn-over", "`{piece}.{edge}` cannot keep its directions when `{corner}` moves by {by}"
    ),
    Reason("piece-changed", "`{piece}` is no longer there: it was {how}"),
    Reason("piece-name-taken", "there is a piece `{name}` already"),
    Reason("part-name-taken", "`{piece}` has a part `{name}` already"),
    Reason("split-begins-inside", "`{piece}.{name}` lies inside the piece, where no line can begin or end"),
    Reason("split-at-end", "the line `{line}` would meet `{name}` {distance} from its end or from a dart"),
    Reason("split-cuts-edge-twice", "the line `{line}` would cut `{piece}.{edge}` into three"),
    Reason(
        "split-crosses-dart",
        "the line `{line}` would cut into `{piece}.{dart}`, which lies {distance} from it",
    ),
    Reason("split-leaves-piece", "the line `{line}` would leave `{piece}` or cross itself on the way"),
    Reason("split-sides-unequal", "the two sides of the line `{line}` would differ by {distance}"),
    Reason("split-turns-sharply", "the line `{line}` turns too sharply at a dart to become a smooth seam"),
    Reason("edge-not-flat", "`{piece}.{name}` is no plain edge: it is gathered or folded, or has no ends"),
    Reason("join-to-itself", "`{piece}` cannot be joined with itself"),
    Reason("join-along-fold", "`{piece}.{edge}` lies on the fold, where nothing can be joined"),
    Reason("cut-unequally", "`{piece}` is there {first} times in a garment and `{other}` {second} times"),
    Reason("edges-unequal", "`{piece}.{edge}` is {first} long and `{other}` {second}"),
    Reason("edges-unlike", "`{piece}.{edge}` and `{other}` lie up to {distance} apart when laid together"),
    Reason("dart-unmatched", "`{piece}.{dart}` opens on the joined edge, and no dart of `{other}` meets it"),
    Reason("folds-apart", "the fold edges of `{piece}` and `{other}` would not lie on one line"),
    Reason("pieces-overlap", "`{other}` would lie on `{piece}` when laid to its edge"),
    Reason("not-on-fold", "`{piece}` is not cut on the fold"),
    Reason("dart-on-fold", "`{piece}.{dart}` opens on the fold edge"),
    Reason("face-other-piece", "`{other}` is not on `{piece}`, and a facing lies on one piece"),
    Reason("face-along-fold", "`{piece}.{name}` is the fold, which has no facing"),
    Reason("face-gathered", "`{piece}.{name}` is drawn in or folded, and a facing lies flat"),
    Reason("face-not-a-row", "these edges of `{piece}` do not follow one another, or go all the way round"),
    Reason("facing-meets-dart", "`{piece}.{dart}` reaches under a facing {by} deep"),
    Reason("facing-too-tight", "`{piece}.{edge}` bends with a radius of {radius}, less than the depth {by}"),
    Reason("facing-too-deep", "a facing {by} deep along `{piece}.{edge}` does not fit on the piece"),
    Reason("would-cross-itself", "the outline of `{piece}` would cross itself"),
    Reason("edge-on-fold", "`{piece}.{edge}` lies on the fold"),
    Reason("slash-to-other-piece", "the slash cannot go from `{piece}.{edge}` to `{other}`, another piece"),
    Reason("form-not-for-verb", "`{verb}` cannot be done `as {form}`"),
    Reason("slash-on-one-edge", "the slash would begin and end on `{piece}.{edge}`"),
    Reason(
        "spread-too-far", "a slash of {length} cannot open by {by} at one end and by {other} at the other"
    ),
    Reason("corner-is-smooth", "`{piece}` has no angle at `{corner}`"),
    Reason("edge-not-plain", "`{piece}.{edge}` has {what} in it"),
    Reason("scallop-too-deep", "a scallop {length} long can be at most {deepest} deep, not {by}"),
    Reason("place-beyond-edge", "`{piece}.{edge}` is {length} long and does not reach to the place"),
    Reason("divided-at-end", "`{piece}.{edge}` cannot be divided at an end, a dart or a fold"),
    Reason("level-does-not-divide", "the level meets `{piece}.{edge}` {where}, not in one place"),
    Reason("no-step-to-slant", "`{piece}.{edge}` makes no step with a neighbour that goes straight on"),
    Reason(
        "edge-along-grain", "`{piece}.{edge}` runs along the grain, and no slash along the grain begins there"
    ),
    Reason("pleats-too-close", "pleats {distance} apart along `{piece}.{edge}` need at least {least}"),
    Reason("stretch-too-short", "a stretch of {length} of `{piece}.{edge}` is too short to be gathered"),
    Reason(
        "seam-sides-unlike", "at an end `{piece}.{edge}` is bent by {angle} more or less than the other edge"
    ),
    Reason("seam-through-dart", "the moved seam would not run across the legs of `{piece}.{dart}`"),
    Reason("fold-would-bend", "`{piece}.{edge}` lies on the fold and would no longer be straight"),
    Reason("slash-begins-inside", "`{piece}.{name}` lies inside the piece, where no slash begins or ends"),
    Reason("corner-would-open", "a slash at the corner `{piece}.{name}` can only be hinged there"),
    Reason("curve-too-full", "a curve can be full up to {most}, not {share}"),
    Reason("moves-level", "`{piece}.{neighbour}` runs level at `{corner}`, which moves neither up nor down"),
    Reason("share-of-band", "a band is cut to a share of more than nothing, not {share}"),
)


def line_of(origin: Span) -> str:
    """The place of an alteration as it is told in what became of a name."""
    return f"on line {origin.line}"


def found(pieces: tuple[Piece, ...], piece: str | None, origin: Span) -> Piece | Refusal:
    """The piece of that name, or why it is not there."""
    known = piece_named(pieces, piece or "")
    if known is None:
        rows = (gone for other in pieces for gone in other.gone if gone.name == piece)
        row = next(rows, None)
        if row is not None:
            facts = (("piece", piece), ("how", row.how))
            cure = "put this alteration before that one, or name another piece"
            return Refusal("piece-changed", facts, origin, cure)
        return Refusal(
            "piece-gone", (("piece", piece),), origin, "drop this alteration, or put it before `leave out`"
        )
    return known


def missing(piece: Piece, ref: PartRef) -> Refusal:
    """Why a name of the piece is not there: what an earlier alteration did with it."""
    how = next((gone.how for gone in piece.gone if gone.name == ref.name), "never there")
    facts: Facts = (("piece", piece.name), ("name", ref.name), ("how", how))
    return Refusal(
        "part-gone", facts, ref.origin, "put this alteration before that one, or name another part"
    )
