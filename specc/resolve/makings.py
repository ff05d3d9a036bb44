"""Owns filling in a method for one use: settings, materials, the words between braces.

Knows nothing of the edges it is used on.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.construction import Making, Setting
from specc.resolve.filling import Filling
from specc.resolve.properties import Properties, titled
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.model.material import Trim
    from specc.resolve.settings import Settings

MAKES_OTHER = declare(
    "SPC216", "method-makes-other", Severity.ERROR, "method `{method}` makes {made}, not {wanted}"
)
NO_CLOSURE = declare(
    "SPC316",
    "fastening-without-closure",
    Severity.ERROR,
    "`{word}` is for closures, and method `{method}` makes {made}",
)
_KNOWN = ("raw-edge", "shows", "turns", "faces", "astm", "iso", "press", "machine", "foot", "needs")
_FACES = ("right sides together", "wrong sides together", "both right sides up")
_RAW_EDGE = ("covered", "overlocked", "enclosed", "turned", "raw")


def resolve_making(
    node: tree.Method, settings: Settings, trims: Mapping[str, Trim | None], say: Collector
) -> Making | None:
    """The method as it is used here; None when it lacks what it needs."""
    name = node.name.text
    filled = Filling(node, settings, trims, say)
    for item in node.body:
        filled.take(item)
    properties = Properties("a method", node.name, node.body, known=_KNOWN, say=say, place=node.name.span)
    properties.require("raw-edge", "raw")
    raw_edge = properties.word("raw-edge", _RAW_EDGE, kind="what becomes of a raw edge")
    shows = properties.word("shows", ("yes", "no"), kind="yes or no")
    turns = properties.word("turns", ("yes", "no"), kind="yes or no")
    faces = properties.word("faces", _FACES, kind="how plies lie")
    allowance, turned = filled.allowance()
    if raw_edge == "turned" and node.makes.text != "seam" and allowance is not None and not turned:
        filled.report_not_turned()
    if node.makes.text != "closure":
        _report_fastenings(node, say)
    laps = filled.laps()
    passes, takes = filled.passes(), filled.takes()
    pieces, places = filled.pieces(), filled.places()
    if filled.failed or allowance is None:
        return None
    return Making(
        name,
        titled(node.title, name),
        allowance,
        turned,
        raw_edge or "raw",
        shows == "yes",
        turns == "yes",
        faces,
        properties.words("astm", example="SSa-1"),
        properties.words("iso", example="1.01.01"),
        filled.text_of(properties.get("press")),
        filled.text_of(properties.get("machine")),
        filled.text_of(properties.get("foot")),
        filled.text_of(properties.get("needs")),
        passes,
        takes,
        pieces,
        laps,
        places,
        tuple(Setting(setting, value) for setting, value in filled.words.items()),
        settings.place,
    )


def with_article(made: str) -> str:
    """`a seam`, `an attachment`: what a method makes."""
    return f"an {made}" if made[0] in "aeiou" else f"a {made}"


def _report_fastenings(node: tree.Method, say: Collector) -> None:
    """Say that what only closures have stands in a method that makes something else."""
    words = {tree.Laps: "laps", tree.TakesPieces: "takes … piece", tree.Lies: "lies"}
    for item in node.body:
        word = words.get(type(item))
        if word is not None:
            made = with_article(node.makes.text)
            told = NO_CLOSURE.at(item.span, word=word, method=node.name.text, made=made)
            say.add(told.help("write `makes closure`, or take the line out"))
