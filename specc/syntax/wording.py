"""Owns how tokens and kinds of token are called in messages.

Knows nothing of faults: it only has the words.
"""

from __future__ import annotations

from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from specc.syntax.tables import parser

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from lark import Token

_LONGEST = 40

VULGAR = "¼½¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚"

# Where each word may stand, for those that are written in the wrong place.
PLACES = {
    "the body of `alter`": (
        "leave", "take", "swing", "release", "crop", "lengthen", "shorten", "lower", "raise", "widen",
        "spread", "extend", "sew", "round", "scallop", "band", "split", "join", "unfold", "mirror", "face",
        "divide", "pleat", "tuck", "gather", "shape", "move",
    ),
    "the body of a `piece`": (
        "point", "edge", "grain", "notch", "two-pointed", "traced", "outline",
    ),
    "the body of an `edge`": ("curve", "arc", "along", "dart"),
    "the body of a `block` or a `piece`": ("find",),
    "the body of a `block` or a `method`": ("parameter", "choice"),
    "the body of a `method`": ("material", "turned", "laps", "takes", "lies", "pass"),
    "the body of a `chart`": ("measurement",),
    "the braces behind a method's or a block's name": ("hold", "places"),
    "the outermost level of a file": (
        "garment", "cloth", "trim", "thread", "packing", "colourway", "care", "cost", "also", "label", "note",
        "use", "chart", "block",
        "grade", "method", "alter", "seam", "finish", "hem", "closure", "attach", "measure",
        "expect", "accept",
    ),
}  # fmt: skip

# What a value may begin with, beside a name, a number, a sign or a bracket.
_VALUE_WORDS = (
    "left", "right", "up", "down", "length", "drawn", "width", "depth", "diameter", "thickness", "opening",
    "girth", "distance", "across", "height", "direction", "larger", "smaller", "root", "sine", "cosine",
    "tangent", "arc-sine", "arc-tangent", "size", "radius", "circumference", "half",
)  # fmt: skip
_PLAIN_VALUE = frozenset(("NAME", "NUMBER", "TEXT", "DATE"))

_CALLED = {
    "NAME": "a name",
    "NUMBER": "a number",
    "UNIT": "a unit",
    "TEXT": "a text in quotes",
    "DATE": "a date",
    "COMPARE": "`>=` or `<=`",
    "_END": "the end of the line",
}
_OPERATORS = {"SIGN": ("`+`", "`-`"), "SCALE": ("`*`", "`/`")}


@cache
def keywords() -> Mapping[str, str]:
    """The words of the language and the kind of token that each is."""
    return MappingProxyType(
        {
            terminal.pattern.value: terminal.name
            for terminal in parser().terminals
            if terminal.pattern.type == "str" and terminal.pattern.value[0].isalpha()
        }
    )


@cache
def value_kinds() -> frozenset[str]:
    """The kinds of token that a value may begin with."""
    return frozenset(("NAME", "NUMBER", "LPAR", "SIGN", *(keywords()[word] for word in _VALUE_WORDS)))


def written(kind: str) -> str:
    """The word or sign that a token of this kind is; the name of the kind when it is many words."""
    pattern = parser().get_terminal(kind).pattern
    return str(pattern.value) if pattern.type == "str" else kind


def listed(parts: Iterable[str]) -> str:
    """`a, b or c`."""
    *most, last = parts
    return f"{', '.join(most)} or {last}" if most else last


def called(kinds: frozenset[str]) -> str:
    """What could stand in a place, in words: `into`, a name or the end of the line."""
    rest = set(kinds)
    parts = []
    for value in (value_kinds(), _PLAIN_VALUE):
        if value <= rest:
            rest -= value
            parts.append("a value")
    if "_END" in rest:
        rest.discard("RBRACE")
    parts.extend(_CALLED[kind] for kind in ("NAME", "NUMBER", "UNIT", "TEXT", "DATE") if kind in rest)
    # A value can always go on with an operator; that is worth saying only where nothing else can follow.
    operators = [sign for kind, signs in _OPERATORS.items() if kind in rest for sign in signs]
    rest -= _OPERATORS.keys()
    plain = sorted(written(kind) for kind in rest if kind not in _CALLED)
    parts.extend(f"`{word}`" for word in sorted(plain, key=lambda word: (not word[0].isalpha(), word)))
    parts.extend(_CALLED[kind] for kind in ("COMPARE", "_END") if kind in rest)
    return listed(dict.fromkeys(parts or operators))


def quoted(token: Token) -> str:
    """A token as a message names it."""
    match token.type:
        case "_END" if not token:
            return "the end of the file"
        case "_END" if "\n" in token:
            return "the end of the line"
        case "TEXT" | "UNCLOSED" | "QUOTED":
            return shortened(token)
        case _:
            return f"`{shortened(token)}`"


def shortened(text: str) -> str:
    """`text` on one line, its end left out when it is long, letters that cannot be shown replaced."""
    flat = " ".join(text.split())
    cut = flat if len(flat) <= _LONGEST else f"{flat[: _LONGEST - 1]}…"
    return "".join(letter if letter.isprintable() else "\N{REPLACEMENT CHARACTER}" for letter in cut)


def ending(text: str) -> str:
    """`text` on one line, its beginning left out when it is long."""
    flat = " ".join(text.split())
    if len(flat) > _LONGEST:
        flat = f"… {flat[len(flat) - _LONGEST + 2 :].partition(' ')[2] or flat[-_LONGEST:]}"
    return "".join(letter if letter.isprintable() else "\N{REPLACEMENT CHARACTER}" for letter in flat)
