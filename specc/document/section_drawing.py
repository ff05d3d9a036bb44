"""Owns the drawings of cross-sections, and the key to them.

Knows nothing of pages, nor of how a section is found.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.document.drawing import Drawing, Label, Stroke, Trace
from specc.document.lettering import Lettering, width_of
from specc.document.line import LineKind
from specc.document.section_lines import OUT, flat, middle_of, section_strokes, upright
from specc.document.section_paths import THICK, Frame, apart, turns
from specc.geometry.point import Point
from specc.making.section import NEAR, ON

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from specc.document.lengths import Lengths
    from specc.making.section import Section

WIDE = 80.0  # of a drawing, millimetres of paper
_BODY = 15.0  # of a ply that goes on, before anything happens on it
_MARGIN = 2.0  # where nothing goes on, beyond its folds
_LARGEST = 2.2  # paper over cloth, along the plies; across them nothing is to scale
_SPEAKS = 4.6  # the height of a line of labels
_GAP = 2.0  # between labels of one line
_OFF = 1.4  # from the middle of a label to the line that leaves it


@dataclass(frozen=True, slots=True)
class Speaks:
    """A label with a line to what it speaks of; `above` is on which side of the plies it stands."""

    text: str
    at: Point
    above: bool


def section_drawing(
    called: tuple[str, str],
    section: Section,
    number: int,
    names: Mapping[str, str],
    *,
    lengths: Lengths,
) -> Drawing:
    """The section with its rows by number; `called` are name and title, `names` those of plies and trims."""
    speaking = [*_rows_said(section, number), *_strands_said(section, names)]
    above = any(one for _, _, one in speaking)
    below = any(not one for _, _, one in speaking)
    frame = _frame(section, _bodies(section, names), _SPEAKS + 1.6 if above else 3.7)
    bottom = section.layers[1]
    foot = frame.y(bottom) + THICK / 2 + 1.2
    ends = foot + (_SPEAKS if below else 0.0)
    strokes = section_strokes(section, frame)
    said = [Speaks(text, _aimed(frame, layer, x, above=one), one) for text, (x, layer), one in speaking]
    labels = (
        *_line(tuple(one for one in said if one.above), 1.4),
        *_line(tuple(one for one in said if not one.above), ends - 1.4),
        *_names(section, names, frame),
    )
    widths = tuple(_widths(section, frame, lengths, ends))
    height = ends + len(section.widths) * _SPEAKS + 0.4
    return Drawing(*called, WIDE, height, None, (*strokes, *labels, *widths))


def _bodies(section: Section, names: Mapping[str, str]) -> tuple[float, float]:
    """The room for plies that go on to the left and to the right: that of their names at least."""
    room = {-ON: 0.0, ON: 0.0}
    for strand in section.strands:
        for node in (strand.nodes[0], strand.nodes[-1]):
            if abs(node.x) == ON:
                said = width_of(names.get(strand.name, ""), Lettering.SMALL) if section.sided else 0.0
                room[node.x] = max(room[node.x], _BODY, said + _GAP + 1.0)
    return room[-ON], room[ON]


def _frame(section: Section, bodies: tuple[float, float], height: float) -> Frame:
    """As large as it may be, in the middle of what is left beside plies that go on."""
    xs = [node.x for strand in section.strands for node in strand.nodes]
    xs += [x for row in section.rows for x in row.places]
    fixed = [x for x in xs if abs(x) != ON]
    low, high = min(fixed), max(fixed)
    split = apart(section)
    beyond = max((t.bulge for strand in section.strands for t in turns(strand)), default=0.0) + _MARGIN
    left, right = (body or beyond for body in bodies)
    room = WIDE - left - right - 2 * split - 4.0
    scale = min(_LARGEST, room / (high - low)) if high > low else _LARGEST
    spare = room + 4.0 - (high - low) * scale
    # What does not go on keeps its end; what goes on takes what is spare.
    before = spare / 2 if all(bodies) or not any(bodies) else spare if bodies[0] else 0.0
    origin = left + before + split - low * scale
    return Frame(scale, origin, 1.0, WIDE - 1.0, height, section.layers[0], split)


Said = tuple[str, tuple[float, float], bool]


def _rows_said(section: Section, number: int) -> Iterator[Said]:
    """Every row and overlock by its number, and its stitch; beside the outermost layer it reaches."""
    top, bottom = section.layers
    for row in section.rows:
        above = row.top - top <= bottom - row.bottom
        layer = middle_of(section, row.places[0]) if row.across else row.top if above else row.bottom
        yield f"{number}.{row.operation + 1}: {row.stitch}", (row.places[0], layer), above
    for loops in section.overlocks:
        edge = loops.edges[-1]
        above = edge.top - top < bottom - edge.bottom
        inside = edge.x + 0.8 * edge.inward
        text = f"{number}.{loops.operation + 1}: {loops.stitch}"
        yield text, (inside, edge.top if above else edge.bottom), above


def _strands_said(section: Section, names: Mapping[str, str]) -> Iterator[Said]:
    """Every trim, and every ply that ends in the picture at both ends, once."""
    top, bottom = section.layers
    told: set[str] = set()
    for number, strand in enumerate(section.strands):
        goes_on = any(abs(node.x) == ON for node in strand.nodes)
        known = section.sided and strand.name in names
        if strand.name in told or not (strand.trim or (known and not goes_on)):
            continue
        told.add(strand.name)
        runs = strand.runs(number)
        outer = min(runs, key=lambda run: min(run.layer - top, bottom - run.layer))
        above = outer.layer - top <= bottom - outer.layer
        # Away from the rows, which lie near the ends of runs.
        middle = 0.35 * outer.start + 0.65 * outer.end
        yield names.get(strand.name, strand.name), (middle, outer.layer), above


def _aimed(frame: Frame, layer: float, x: float, *, above: bool) -> Point:
    """What a label points at: beside a ply, on the side of the label."""
    off = THICK / 2 + OUT
    return Point(frame.x(x), frame.y(layer) + (-off if above else off))


def _line(said: Sequence[Speaks], y: float) -> Iterator[Stroke | Label]:
    """Labels in one line, kept apart, each with a line to what it speaks of."""
    ordered = sorted(said, key=lambda one: one.at.x)
    wide = [width_of(one.text, Lettering.SMALL) for one in ordered]
    middles = _spread([one.at.x for one in ordered], wide)
    leaders = []
    for one, middle in zip(ordered, middles, strict=True):
        start = y + (_OFF if one.above else -_OFF)
        leaders.append(Trace(Point(middle, start), (one.at,)))
        yield Label(one.text, Point(middle, y), Lettering.SMALL)
    if leaders:
        yield Stroke(LineKind.THIN, tuple(leaders))


def _spread(wanted: list[float], wide: list[float]) -> list[float]:
    """Places near those wanted, in their order, at which nothing overlaps and all lie on the paper."""
    places = list(wanted)
    edge = 0.0
    for index, half in enumerate(each / 2 for each in wide):
        places[index] = max(places[index], edge + half)
        edge = places[index] + half + _GAP
    edge = WIDE
    for index in reversed(range(len(places))):
        half = wide[index] / 2
        places[index] = min(places[index], edge - half)
        edge = places[index] - half - _GAP
    return places


def _names(section: Section, names: Mapping[str, str], frame: Frame) -> Iterator[Label]:
    """The names of the plies that go on, at their ends, where it is known which is which."""
    if not section.sided:
        return
    for strand in section.strands:
        ends = [node for node in (strand.nodes[0], strand.nodes[-1]) if abs(node.x) == ON]
        text = names.get(strand.name, "")
        if not ends or strand.trim or not text:
            continue
        half = width_of(text, Lettering.SMALL) / 2
        x = frame.left + half if ends[0].x < 0 else frame.right - half
        below = ends[0].layer > section.layers[0]
        y = frame.y(ends[0].layer) + (2.5 if below else -2.5)
        yield Label(text, Point(x, y), Lettering.SMALL)


def _widths(section: Section, frame: Frame, lengths: Lengths, y: float) -> Iterator[Stroke | Label]:
    """What is declared as a width, one below the other, the narrowest first."""
    for place, width in enumerate(sorted(section.widths, key=lambda one: abs(one.end - one.start))):
        low, high = sorted((frame.x(width.start, _sign(width.end)), frame.x(width.end)))
        line = y + place * _SPEAKS + 1.0
        ticks = (upright(low, line - 0.7, line + 0.7), upright(high, line - 0.7, line + 0.7))
        yield Stroke(LineKind.THIN, (flat(low, high, line), *ticks))
        text = f"{width.what} {lengths.fine(abs(width.end - width.start))}"
        half = width_of(text, Lettering.SMALL) / 2
        middle = min(max((low + high) / 2, half), WIDE - half)
        yield Label(text, Point(middle, line + 2.1), Lettering.SMALL)


def _sign(x: float) -> int:
    return 0 if abs(x) < NEAR else 1 if x > 0 else -1
