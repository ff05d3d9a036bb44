"""Owns the tree: a spec as it was written, every node with the place it was read from.

Knows nothing of what the words mean: names are not looked up, numbers have no dimension yet.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from specc.source import SourceFile, Span


@dataclass(frozen=True, slots=True)
class Word:
    """A name or a plain word."""

    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class Text:
    """A quoted text; `text` is what stands between the quotes."""

    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class Number:
    """A number with its unit, if it has one; `unit` is as written (`in`, `%`, `USD`)."""

    value: Fraction
    unit: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class Date:
    """A date as written, year-month-day."""

    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class Pair:
    """Two things with a colon between them: `8: 4`."""

    left: Number | Word
    right: Number | Word
    span: Span


Atom = Word | Text | Number | Date | Pair


@dataclass(frozen=True, slots=True)
class Ref:
    """A name, alone or with the piece it belongs to: `hem`, `front.hem`."""

    first: Word
    second: Word | None
    span: Span


@dataclass(frozen=True, slots=True)
class Property:
    """A line of a sheet: a name and its values; the values are separated by commas, each a run of atoms."""

    name: Word
    values: tuple[tuple[Atom, ...], ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Broken:
    """A statement that could not be read; it has been reported. `words` are the names that stand in its first line."""

    words: tuple[Word, ...]
    span: Span


# --- expressions ---


@dataclass(frozen=True, slots=True)
class Named:
    """A name in an expression."""

    name: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Compass:
    """`left`, `right`, `up` or `down` as a direction."""

    side: str
    span: Span


@dataclass(frozen=True, slots=True)
class Arithmetic:
    """`left operator right`, the operator one of `+ - * /`."""

    operator: str
    left: Expression
    right: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Signed:
    """`- value` or `+ value`."""

    sign: str
    value: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Asked:
    """A question to the pieces. `what`: length, drawn length, width, depth, opening, girth (one ref);
    distance, across, height, direction (two refs)."""

    what: str
    refs: tuple[Ref, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Applied:
    """A function of numbers. `function`: larger, smaller (two values); half, root, sine, cosine, tangent,
    arc-sine, arc-tangent, size (one)."""

    function: str
    values: tuple[Expression, ...]
    span: Span


Expression = Number | Named | Compass | Arithmetic | Signed | Asked | Applied


# --- sheets, notes, other files ---


@dataclass(frozen=True, slots=True)
class Sheet:
    """A declaration of properties. `kind`: garment, cloth, trim, thread, care."""

    kind: Word
    name: Word | None
    title: Text | None
    body: tuple[Property | Broken, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Label:
    """A label and the edge it is sewn in at."""

    name: Word
    at: Ref
    body: tuple[Property | Broken, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Note:
    """A remark for the maker, about the garment or about one part."""

    text: Text
    on: Ref | None
    span: Span


@dataclass(frozen=True, slots=True)
class UseFile:
    """Another file whose declarations are taken in; the path is relative to this file."""

    path: Text
    span: Span


@dataclass(frozen=True, slots=True)
class Hold:
    """A stretch of an edge where the trim is held in, as a share of the edge's length."""

    share: Expression
    along: Ref
    start: Expression | None
    end: Expression | None
    span: Span


@dataclass(frozen=True, slots=True)
class UseLibrary:
    """A chart or block by name (`kind`: chart, block), with parameters."""

    kind: Word
    name: Word
    settings: tuple[Property | Hold | Broken, ...]
    span: Span


# --- charts and blocks ---


@dataclass(frozen=True, slots=True)
class Measurement:
    """A body measurement: one number a size, or derived by an expression."""

    name: Word
    title: Text | None
    source: Text | None
    column: tuple[Number, ...]
    derived: Expression | None
    span: Span


@dataclass(frozen=True, slots=True)
class Chart:
    """A size chart."""

    name: Word
    title: Text | None
    body: tuple[Property | Measurement | Broken, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Parameter:
    """A value that the user of a block or method may set, with what it is otherwise."""

    name: Word
    title: Text | None
    default: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Choice:
    """A word out of several that the user may set; the first is the default."""

    name: Word
    title: Text | None
    options: tuple[Word, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Let:
    """A named value."""

    name: Word
    value: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Find:
    """A named value between two bounds, such that `left` equals `right`."""

    name: Word
    low: Expression
    high: Expression
    left: Expression
    right: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class When:
    """A condition: a choice has been set to a word."""

    choice: Word
    option: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Cut:
    """How many are cut, and on which fold."""

    count: Number
    fold: Word | None
    when: When | None
    span: Span


@dataclass(frozen=True, slots=True)
class At:
    """Right of and above the origin."""

    across: Expression
    up: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Step:
    """A move to one side: left, right, up, down."""

    side: str
    by: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Going:
    """A move in a direction."""

    direction: Expression
    by: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Toward:
    """A move toward another point."""

    target: Ref
    by: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Moved:
    """From a point by moves, one after the other."""

    origin: Ref
    moves: tuple[Step | Going | Toward, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Turned:
    """A point turned about another, counter-clockwise."""

    point: Ref
    angle: Expression
    around: Ref
    span: Span


@dataclass(frozen=True, slots=True)
class On:
    """A place on an edge or line, measured from its start or from a corner."""

    edge: Ref
    at: Expression
    corner: Word | None
    span: Span


@dataclass(frozen=True, slots=True)
class PointStatement:
    """A named point."""

    name: Word
    position: At | Moved | Turned | On
    span: Span


@dataclass(frozen=True, slots=True)
class Straight:
    """A straight run of an edge."""

    to: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Bearing:
    """A direction at the end of a curve, with the length of its handle if it was given."""

    direction: Expression
    handle: Expression | None
    span: Span


@dataclass(frozen=True, slots=True)
class Curve:
    """A curved run of an edge."""

    to: Word
    leaving: Bearing
    arriving: Bearing
    full: Expression | None
    through: Ref | None
    span: Span


@dataclass(frozen=True, slots=True)
class DartRun:
    """A dart in an edge: the edge goes on at `to`."""

    name: Word
    to: Word
    pivot: Word
    short: Expression | None
    span: Span


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge from a point through its runs."""

    name: Word
    start: Word
    hidden: bool
    runs: tuple[Straight | Curve | DartRun | Broken, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class TwoPointed:
    """A dart inside the piece."""

    name: Word
    top: Word
    bottom: Word
    width: Expression
    middle: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Line:
    """A reference line."""

    name: Word
    start: Word
    end: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Grain:
    """The grain line."""

    start: Word
    end: Word
    span: Span


@dataclass(frozen=True, slots=True)
class Notch:
    """A notch on an edge."""

    edge: Word
    at: Expression
    corner: Word | None
    double: bool
    span: Span


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a block."""

    name: Word
    title: Text | None
    body: tuple[Cut | Let | Find | PointStatement | Edge | TwoPointed | Line | Grain | Notch | Broken, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Block:
    """A block."""

    name: Word
    title: Text | None
    body: tuple[Property | Parameter | Choice | Let | Find | Piece | Broken, ...]
    span: Span


# --- alterations ---


@dataclass(frozen=True, slots=True)
class LeaveOut:
    """Pieces that are not made."""

    pieces: tuple[Word, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Place:
    """A place on an edge."""

    at: Expression
    corner: Word | None
    span: Span


@dataclass(frozen=True, slots=True)
class Swing:
    """A dart swung to another place; `share` None means all of it."""

    share: Number | None
    dart: Ref
    target: Ref
    place: Place | None
    form: Word | None
    span: Span


@dataclass(frozen=True, slots=True)
class Release:
    """Darts left unsewn."""

    darts: tuple[Ref, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Level:
    """A line (or edge), or a distance `side` (above, below) of it."""

    line: Word
    offset: Expression | None
    side: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class Crop:
    """Pieces cut off at a level."""

    pieces: tuple[Word, ...]
    at: Level
    span: Span


@dataclass(frozen=True, slots=True)
class Lengthen:
    """`verb`: lengthen or shorten."""

    verb: Word
    pieces: tuple[Word, ...]
    by: Expression
    at: Level
    span: Span


@dataclass(frozen=True, slots=True)
class MoveCorner:
    """`verb`: lower, raise or widen."""

    verb: Word
    edges: tuple[Ref, ...]
    corner: Word
    by: Expression
    span: Span


AlterStep = LeaveOut | Swing | Release | Crop | Lengthen | MoveCorner


@dataclass(frozen=True, slots=True)
class Alter:
    """The alterations, in order."""

    steps: tuple[AlterStep | Broken, ...]
    span: Span


# --- making ---


@dataclass(frozen=True, slots=True)
class Material:
    """A trim or cloth that a method needs by the name it has inside the method."""

    name: Word
    title: Text | None
    span: Span


@dataclass(frozen=True, slots=True)
class Allowance:
    """The seam allowance that a method wants."""

    width: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Takes:
    """Trim used along the edge."""

    material: Word
    cut_width: Expression
    overlapping: Expression | None
    turning: Expression | None
    joining: Expression | None
    span: Span


@dataclass(frozen=True, slots=True)
class Pass:
    """One operation: what is done, by which stitch at which length, how far from which edge, for which choice."""

    text: Text
    stitch: Number | None
    stitch_length: Expression | None
    inset: Expression | None
    inset_from: Text | None
    when: When | None
    span: Span


@dataclass(frozen=True, slots=True)
class Method:
    """A way of making. `makes`: seam, finish, hem."""

    name: Word
    title: Text | None
    makes: Word
    body: tuple[Property | Parameter | Choice | Material | Allowance | Takes | Pass | Broken, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Seam:
    """Edges joined to edges by a method."""

    name: Word
    title: Text | None
    first: tuple[Ref, ...]
    second: tuple[Ref, ...]
    method: Word
    settings: tuple[Property | Hold | Broken, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Finish:
    """Edges finished by a method. `kind`: finish or hem."""

    kind: Word
    name: Word
    title: Text | None
    along: tuple[Ref, ...]
    method: Word
    settings: tuple[Property | Hold | Broken, ...]
    span: Span


# --- measured, demanded, accepted ---


@dataclass(frozen=True, slots=True)
class Measure:
    """A point of measure; tolerance `plus`, `minus` or neither."""

    name: Word
    title: Text | None
    value: Expression
    plus: Expression | None
    minus: Expression | None
    span: Span


@dataclass(frozen=True, slots=True)
class Expect:
    """What the designer demands; `compare` is `>=` or `<=`."""

    left: Expression
    compare: str
    right: Expression
    because: Text | None
    span: Span


@dataclass(frozen=True, slots=True)
class Accept:
    """A code that the designer accepts, everywhere or on one part, with the reason."""

    code: Word
    on: Ref | None
    because: Text
    span: Span


Declaration = (
    Sheet
    | Label
    | Note
    | UseFile
    | UseLibrary
    | Chart
    | Block
    | Method
    | Alter
    | Seam
    | Finish
    | Measure
    | Expect
    | Accept
    | Broken
)


@dataclass(frozen=True, slots=True)
class Tree:
    """A whole file."""

    file: SourceFile
    declarations: tuple[Declaration, ...]
