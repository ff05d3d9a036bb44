"""Owns ways of making, and the seams and edges that are made.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from specc.syntax.tree.atoms import Broken, Property
from specc.syntax.tree.closures import Spacing
from specc.syntax.tree.sheets import Hold

if TYPE_CHECKING:
    from specc.source import Span
    from specc.syntax.tree.atoms import Number, Ref, Text, Word
    from specc.syntax.tree.closures import Laps, Lies, TakesPieces
    from specc.syntax.tree.expressions import Expression
    from specc.syntax.tree.values import Choice, Let, Parameter, When


class Material(NamedTuple):
    """A trim or cloth that a method needs by the name it has inside the method."""

    name: Word
    title: Text | None
    span: Span


class Allowance(NamedTuple):
    """The seam allowance that a method wants: on all sides, or `on` the first or second; for which choice.

    `folded` is what the upper of two folds over the lower, `trimmed` what allowances are trimmed to.
    """

    width: Expression
    on: Word | None
    folded: Expression | None
    trimmed: Expression | None
    when: When | None
    span: Span


class TurnedBy(NamedTuple):
    """The allowance that a method turns back: how deep, and what is turned under when it is turned twice."""

    deep: Expression
    under: Expression | None
    when: When | None
    span: Span


class Lying(NamedTuple):
    """How a trim lies on the edge, and to which side it is turned."""

    how: Word
    turned: Word | None


class Takes(NamedTuple):
    """Trim used along the edge, or of a length of its own; `beyond` is what it runs on past an open end."""

    material: Word
    cut_width: Expression
    lying: Lying | None
    long: Expression | None
    overlapping: Expression | None
    turning: Expression | None
    joining: Expression | None
    hanging: Expression | None
    beyond: Expression | None
    when: When | None
    span: Span


class ChosenProperty(NamedTuple):
    """A property of a method that holds for one choice."""

    property: Property
    when: When
    span: Span


class AllowanceOn(NamedTuple):
    """An allowance of some edges that differs from that of the others."""

    width: Expression
    edges: tuple[Ref, ...]
    span: Span


class CutLong(NamedTuple):
    """The length to which a material of the method is cut, before what joins it is added."""

    material: Word
    length: Expression
    span: Span


Setting = Property | Hold | Spacing | AllowanceOn | CutLong | Broken


class Pass(NamedTuple):
    """One operation.

    What is done, by which stitch, how far from which edge, through what; for which choice.
    """

    text: Text
    stitch: Number | None
    stitch_length: Expression | None
    inset: Expression | None
    inset_from: Text | None
    through: tuple[Word, ...]
    when: When | None
    span: Span


class Method(NamedTuple):
    """A way of making. `makes`: seam, finish, hem, closure."""

    name: Word
    title: Text | None
    makes: Word
    body: tuple[
        Property
        | ChosenProperty
        | Parameter
        | Choice
        | Let
        | Material
        | Allowance
        | TurnedBy
        | Laps
        | Takes
        | TakesPieces
        | Lies
        | Pass
        | Broken,
        ...,
    ]
    span: Span


class Seam(NamedTuple):
    """Edges joined to edges by a method; `others` are the chains of further plies in the same seam."""

    name: Word
    title: Text | None
    first: tuple[Ref, ...]
    second: tuple[Ref, ...]
    others: tuple[tuple[Ref, ...], ...]
    method: Word
    settings: tuple[Setting, ...]
    span: Span


class Finish(NamedTuple):
    """Edges finished by a method. `kind`: finish or hem."""

    kind: Word
    name: Word
    title: Text | None
    along: tuple[Ref, ...]
    method: Word
    settings: tuple[Setting, ...]
    span: Span
