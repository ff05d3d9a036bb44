"""What holds of any text: it is answered, and the order of what does not hang together is free."""

from __future__ import annotations

import re
from dataclasses import fields, is_dataclass
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from specc.diagnostics import Severity
from specc.source import SourceFile, Span
from tests.worlds import garment_of, resolved

ROOT = Path(__file__).resolve().parent.parent.parent.parent
TOKEN = re.compile(r'"[^"\n]*"|[\w-]+(?:\.\d+)?|\n|\S')
SOUND = (
    ROOT.joinpath("examples/estuary-shell/estuary-shell.garment").read_text(encoding="utf-8"),
    ROOT.joinpath("tests/structure/within/spec.garment").read_text(encoding="utf-8").replace("@@@", ""),
)
TOKENS = tuple(sorted({token for text in SOUND for token in TOKEN.findall(text)}))

# Each is of another kind than the others, so that their order says nothing.
DECLARATIONS = (
    'garment dress "Dress" { style "D-1"; sizes 8, 10 }',
    "use chart misses",
    "use block sheath { bust-ease 3 in }",
    "cloth lawn { fibre 100% cotton; price 9 USD per yd }",
    "trim edging { kind elastic; width 1 in }",
    "thread core { size Tex 27 }",
    "alter { leave out sleeve; release front.waist-dart }",
    "seam side joins front.side to back.side by french",
    "finish neck along back.neck, front.neck by elastic-bound { binding edging; hold 5% along front.neck }",
    "measure bust = girth at bust-line, tolerance 1/2 in",
    "expect girth at bust-line - bust >= 2 in",
    'accept SPC502 because "seen"',
    "care { wash 40 C }",
    'label main at back.neck { says "D-1" }',
    'note "Press." on front.hem',
)


@st.composite
def spoilt(draw: st.DrawFn) -> str:
    """A sound text in which tokens were taken out, doubled, exchanged or replaced by others."""
    tokens = [*TOKEN.findall(draw(st.sampled_from(SOUND)))]
    for _ in range(draw(st.integers(1, 4))):
        at = draw(st.integers(0, len(tokens) - 2))
        kind = draw(st.integers(0, 3))
        if kind == 0:
            del tokens[at]
        elif kind == 1:
            tokens.insert(at, tokens[at])
        elif kind == 2:
            tokens[at], tokens[at + 1] = tokens[at + 1], tokens[at]
        else:
            tokens[at] = draw(st.sampled_from(TOKENS))
    return " ".join(tokens)


@given(spoilt())
@settings(max_examples=14)
def test_a_spoilt_text_is_answered_and_nothing_is_said_twice_of_one_place(text: str) -> None:
    garment, said = resolved(text)
    places = [(each.code.id, each.message, each.span) for each in said]

    assert garment is not None or any(each.severity is Severity.ERROR for each in said)
    assert len(set(places)) == len(places)


def without_places(value: object) -> object:
    """The value as plain tuples, without the places where things were written."""
    if isinstance(value, Span | SourceFile):
        return type(value).__name__
    if isinstance(value, tuple):
        return tuple(without_places(item) for item in value)
    if is_dataclass(value):
        return (type(value).__name__, *(without_places(getattr(value, each.name)) for each in fields(value)))
    return value


@given(st.permutations(DECLARATIONS))
@settings(max_examples=10)
def test_the_order_of_declarations_of_different_kinds_is_free(declarations: list[str]) -> None:
    expected = without_places(garment_of("\n".join(DECLARATIONS)))

    assert without_places(garment_of("\n".join(declarations))) == expected
