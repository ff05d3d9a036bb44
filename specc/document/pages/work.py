"""Owns the page of the order of work: every step with its place on the garment, and what comes before it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.document.attachments import titled, what
from specc.document.document import Fact, Facts, Figure, Group, Heading, Page, Paragraph
from specc.document.link import Link
from specc.document.links import made
from specc.document.sheet import part
from specc.document.work_drawing import work_drawing
from specc.geometry.point import Point
from specc.making.work import Kind, order_of_work

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.document.document import Block
    from specc.document.sheet import Sheet
    from specc.making.work import Step
    from specc.model.construction import Making

_ROOM = Point(64.0, 34.0)
_DRAWN = 70.0  # the column of the drawings, millimetres of paper
_LIES = {"flat": "flat", "round": "in the round", "": ""}
_LEAD = (
    "Steps in the order in which they are sewn, derived from the seams and finishes: darts and what is sewn"
    " onto pieces first, then what makes other edges one run. Each seam, finish and hem is told in full on"
    " the page of seams, finishes and hems. In the drawings wide lines are what the step works on."
)
# Common practice, no source.
_LAST = "Trim the ends of threads, press, and measure the garment against the points of measure."


def build(sheet: Sheet) -> Page | None:
    """The steps, numbered; nothing where nothing is sewn."""
    steps = order_of_work(sheet.garment, sheet.sample.pieces)
    if not steps:
        return None
    blocks: list[Block] = [_step(sheet, step, number) for number, step in enumerate(steps, start=1)]
    labels = [f"Sew in the label {each.name} at {part(each.at)}." for each in sheet.garment.labels]
    if labels:
        heading = Heading("Labels", str(len(steps) + 1))
        blocks.append(Group("together", (heading, Paragraph(" ".join(labels)))))
    last = len(steps) + (2 if labels else 1)
    blocks.append(Group("together", (Heading("Finish", str(last)), Paragraph(_LAST))))
    return Page("work", "Order of work", _LEAD, tuple(blocks))


def _step(sheet: Sheet, step: Step, number: int) -> Block:
    title, detail, making = _named(sheet, step)
    links = () if step.kind in (Kind.DARTS, Kind.ATTACHMENT) else (Link(0, 0, len(title), made(step.name)),)
    heading = Heading(title, str(number), detail, links=links)
    facts = Facts(tuple(Fact(label, value) for label, value in _facts(step, making) if value))
    called = (f"work-{number}", f"Step {number}: {title}")
    drawing = work_drawing(called, sheet.flat, sheet.sample.pieces, frozenset(step.edges), room=_ROOM)
    return Group("beside", (Figure(drawing), Group("stack", (heading, facts))), first=_DRAWN)


def _named(sheet: Sheet, step: Step) -> tuple[str, str, Making | None]:
    """What a step is called, which edges it works on, and how it is made."""
    if step.kind is Kind.DARTS:
        piece = next(each.title for each in sheet.sample.pieces if each.name == step.name)
        return f"Darts of the {piece}", ", ".join(f"{name}.{dart}" for name, dart in step.edges), None
    if step.kind is Kind.ATTACHMENT:
        asked = next(each for each in sheet.garment.attachments if each.name == step.name)
        return _capital(titled(sheet, asked)), what(asked), asked.making
    each = next(each for each in sheet.made if each.name == step.name)
    edges = ", ".join(f"{piece}.{edge}" for piece, edge in step.edges)
    return f"{_capital(each.title or each.name)}: {each.making.title}", edges, each.making


def _facts(step: Step, making: Making | None) -> Iterator[tuple[str, str]]:
    yield "Sewn", _LIES[step.lies]
    yield "After", ", ".join(map(str, step.after)) and f"step {', '.join(map(str, step.after))}"
    if making is not None:
        stitches = dict.fromkeys(each.stitch for each in making.passes if each.stitch)
        yield "Stitch", ", ".join(stitches)
        yield "Machine", making.machine or ""
    elif step.kind is Kind.DARTS:
        # Common practice, no source.
        yield (
            "How",
            "from the edge to the tip, the last stitches along the fold; knot the ends",
        )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
