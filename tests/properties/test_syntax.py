"""What must hold for any text: it is answered with a tree and diagnostics, whose places lie in it."""

from __future__ import annotations

import re
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING, Any

from hypothesis import assume, example, given
from hypothesis import strategies as st

from specc.diagnostics.render_json import render_json
from specc.diagnostics.render_text import render_text
from specc.source import DecodingFault, SourceFile
from specc.syntax import tree
from specc.syntax.show import show
from tests.unit.syntax.reading import STATEMENTS, nodes, read, sound

if TYPE_CHECKING:
    from collections.abc import Callable

ROOT = Path(__file__).resolve().parent.parent.parent
LIBRARY = ROOT / "specc/library"
SAMPLES = tuple(
    path.read_text(encoding="utf-8")
    for path in (
        STATEMENTS,
        ROOT / "examples/estuary-shell/estuary-shell.garment",
        LIBRARY / "misses.garment",
    )
)
# Pieces of text as a person would move them about: words, numbers, texts, signs, blanks, line ends.
_PARTS = re.compile(r'"[^"\n]*"|\w[\w.-]*|[ \t]+|\n|.', re.DOTALL)

ODD = (
    "{",
    "}",
    "(",
    ")",
    '"',
    "'",
    "“",
    "”",
    ";",
    "\n",
    "\n}\n",
    "\0",
    "\u202e",
    "\xa0",
    "1/0",
    "3 inch",
    "=",
    ">",
)
WORDS = st.sampled_from(
    (*sorted({part for text in SAMPLES for part in _PARTS.findall(text) if len(part) < 20}), *ODD)
)
TEXTS = st.one_of(
    st.text(), st.lists(WORDS, max_size=60).map(" ".join), st.lists(WORDS, max_size=60).map("".join)
)


@cache
def whole(sample: str) -> tree.Tree:
    """The tree of a sample."""
    return sound(sample)


@cache
def parts_of(sample: str) -> tuple[Any, ...]:
    """The nodes of a sample."""
    return tuple(node for node in nodes(whole(sample)) if not isinstance(node, tree.Tree))


def checked(text: str) -> tree.Tree:
    """Read `text`; the answer has the form that is promised for every text."""
    parsed, said = read(text)
    for diagnostic in said:
        assert diagnostic.span is not None
        assert diagnostic.span.file is parsed.file
        if diagnostic.fix is not None:
            ends = [(edit.span.start, edit.span.end) for edit in diagnostic.fix.edits]
            assert all(end <= start for (_, end), (start, _) in pairwise(ends))
    before = 0
    for declaration in parsed.declarations:
        assert declaration.span.start >= before
        before = declaration.span.end
    assert any(isinstance(node, tree.Broken) for node in nodes(parsed)) <= bool(said)
    render_text(said).encode()
    render_json(said).encode()
    show(parsed).encode()
    return parsed


@given(TEXTS)
@example("")
@example("\ud800")
@example('"')
@example("x {" * 50)
@example("}" * 50)
def test_any_text_is_answered_without_an_exception(text: str) -> None:
    checked(text)


@given(st.binary())
def test_any_bytes_are_answered_without_an_exception(data: bytes) -> None:
    source = SourceFile.read("test.garment", data)
    checked(source.span.file.text if isinstance(source, DecodingFault) else source.text)


def mutated(sample: str) -> st.SearchStrategy[str]:
    """The sample with a few parts left out, doubled, swapped, or replaced by others."""
    parts = _PARTS.findall(sample)
    places = st.integers(0, len(parts) - 2)

    def change(changes: list[tuple[int, Callable[[list[str], int], None]]]) -> str:
        text = list(parts)
        for place, how in changes:
            how(text, min(place, len(text) - 2))
        return "".join(text)

    def leave_out(text: list[str], place: int) -> None:
        del text[place]

    def double(text: list[str], place: int) -> None:
        text.insert(place, text[place])

    def swap(text: list[str], place: int) -> None:
        text[place], text[place + 1] = text[place + 1], text[place]

    replacements = WORDS.map(lambda word: lambda text, place: text.__setitem__(place, word))
    ways = st.one_of(st.sampled_from([leave_out, double, swap]), replacements)
    return st.lists(st.tuples(places, ways), min_size=1, max_size=6).map(change)


@given(st.sampled_from(SAMPLES).flatmap(mutated))
def test_a_text_with_slips_is_answered_without_an_exception(text: str) -> None:
    checked(text)


@given(st.sampled_from(SAMPLES), st.integers(0, 10**6))
def test_a_text_that_breaks_off_is_answered_without_an_exception(sample: str, length: int) -> None:
    checked(sample[: length % len(sample)])


# --- sound texts ---

GARBAGE = st.sampled_from(
    ["= 3", "@", "pocket patch", "seam x", "measure m = (", "hem h along", "cloth = {{}}", "((("]
)


@given(st.sampled_from(SAMPLES), st.integers(0, 10**6), GARBAGE)
def test_a_broken_declaration_leaves_all_others_as_they_are(sample: str, place: int, garbage: str) -> None:
    declarations = whole(sample).declarations
    spoilt = declarations[place % len(declarations)].span
    parsed = checked(sample[: spoilt.start] + garbage + sample[spoilt.end :])
    others = [each for each in declarations if each.span is not spoilt]
    left = [each for each in parsed.declarations if not isinstance(each, tree.Broken)]

    assert [each.span.text for each in left] == [each.span.text for each in others]
    assert sum(isinstance(each, tree.Broken) for each in parsed.declarations) == 1


# The text of a node in a place where it can stand; the longest kinds of place come last.
WITHIN = {
    (
        tree.Sheet,
        tree.Label,
        tree.Note,
        tree.UseFile,
        tree.UseLibrary,
        tree.Chart,
        tree.Block,
        tree.Method,
        tree.Grade,
    ): "{}",
    (tree.SewOn, tree.Catch): "{}",
    (tree.AtPoint, tree.OnLevel): "attach a on b with c at {} by m",
    (tree.Turn,): "attach a on b with c at d, 1 in from e{} by m",
    (tree.Alter, tree.Seam, tree.Finish, tree.Measure, tree.Expect, tree.Accept): "{}",
    (tree.LeaveOut, tree.Swing, tree.Release, tree.Crop, tree.Lengthen, tree.MoveCorner): "alter {{ {} }}",
    (tree.Level,): "alter {{ crop a at {} }}",
    (tree.Place,): "alter {{ swing a.b into c.d at {} }}",
    (
        tree.Spread,
        tree.Taper,
        tree.Extend,
        tree.SewAs,
        tree.RoundCorner,
        tree.Scallop,
        tree.Band,
        tree.Split,
        tree.Join,
        tree.Unfold,
        tree.Mirror,
        tree.Face,
    ): "alter {{ {} }}",
    (tree.SplitEnd,): "alter {{ split a along l from {} to b into c, d }}",
    (tree.Pleat, tree.Gather, tree.Shape, tree.MoveSeam, tree.Divide): "alter {{ {} }}",
    (tree.Lay, tree.Slashed): "alter {{ pleat a.b at 10%, 1 in deep, {} }}",
    (tree.EndShift,): "alter {{ shape a.b {} }}",
    (tree.Tapering,): "alter {{ take in a.b by 1 in {} }}",
    (tree.Parameter, tree.Choice, tree.Let, tree.Find, tree.Piece): "block b {{ {} }}",
    (tree.Measurement,): "chart c {{ {} }}",
    (tree.ExpectWithin,): "{}",
    (tree.Limit, tree.Without): "expect within c {{ {} }}",
    (tree.Hold, tree.Property): "use block b {{ {} }}",
    (
        tree.Cut,
        tree.Traced,
        tree.Outline,
        tree.PointStatement,
        tree.Edge,
        tree.TwoPointed,
        tree.Line,
        tree.LevelLine,
        tree.Grain,
        tree.Notch,
        tree.NotchAtPoint,
    ): "block b {{ piece p {{ {} }} }}",
    (
        tree.At,
        tree.Moved,
        tree.Turned,
        tree.On,
        tree.Meeting,
        tree.Near,
    ): "block b {{ piece p {{ point q {} }} }}",
    (tree.Graded,): "block b {{ piece p {{ point q from r left 1 m {} }} }}",
    (tree.Shift,): "grade g = {}",
    (tree.Stretch,): "grade g {{ {} }}",
    (tree.Step, tree.Going, tree.Toward): "block b {{ piece p {{ point q from r {} }} }}",
    (tree.When,): "block b {{ piece p {{ cut 1 {} }} }}",
    (
        tree.Straight,
        tree.Curve,
        tree.ArcRun,
        tree.Along,
        tree.DartRun,
    ): "block b {{ piece p {{ edge e from a {{ {} }} }} }}",
    (tree.Bearing,): "block b {{ piece p {{ edge e from a {{ curve to b, leaving {}, arriving down }} }} }}",
    (tree.Material, tree.Allowance, tree.Takes, tree.Pass): "method m makes seam {{ {} }}",
    (tree.TurnedBy, tree.ChosenProperty): "method m makes seam {{ {} }}",
    (tree.Laps, tree.Lies, tree.TakesPieces): "method m makes closure {{ {} }}",
    (tree.AllowanceOn, tree.CutLong): "seam s joins a.b to c.d by m {{ {} }}",
    (tree.AlsoCut, tree.Closure): "{}",
    (tree.Spacing,): "closure c along a.b by m {{ {} }}",
    (tree.FromCorner,): "closure c along a.b by m {{ places 5, {} }}",
    (tree.Arithmetic, tree.Signed, tree.Asked, tree.Applied, tree.Named, tree.Compass): "measure m = {}",
    (tree.Rest,): "alter {{ swing half of a.b into c.d, {} into e.f }}",
    (tree.Renaming,): "use block b {}",
    (tree.Reckoned,): "use block b {{ p {} }}",
    (tree.Word, tree.Date, tree.Pair, tree.Text): "trim t {{ p {} }}",
    (tree.Number,): "alter {{ swing {} of a.b into c.d }}",
    (tree.Ref,): "finish f along {} by m",
}
FRAMES = {kind: frame for kinds, frame in WITHIN.items() for kind in kinds}


@given(st.sampled_from(SAMPLES), st.integers(0, 10**6))
def test_the_place_of_a_node_is_what_it_was_read_from(sample: str, place: int) -> None:
    found = parts_of(sample)
    node = found[place % len(found)]
    assume(not isinstance(node, tree.SwingTarget))  # the share of the first stands before the dart
    text = node.span.text
    if isinstance(node, tree.Number) and node.unit and node.unit not in text:
        node = node._replace(unit=None)  # the unit of a column stands at its end
    again: list[Any] = [
        each for each in nodes(sound(FRAMES[type(node)].format(text))) if type(each) is type(node)
    ]

    assert (text, likeness(node)) in [(each.span.text, likeness(each)) for each in again]


def likeness(node: object) -> object:
    """What a node says, without the places."""
    if not isinstance(node, tuple):
        return node
    if not hasattr(node, "_fields"):
        return tuple(likeness(item) for item in node)
    return type(node), *(likeness(getattr(node, name)) for name in node._fields if name != "span")
