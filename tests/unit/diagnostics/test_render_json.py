"""Diagnostics as programs read them."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import TYPE_CHECKING

from specc.diagnostics import Applicability, Edit, Severity, declare
from specc.diagnostics.render_json import render_json
from specc.source import SourceFile

if TYPE_CHECKING:
    from pathlib import Path

    from tests.goldens import Golden

UNKNOWN = declare("SPC201", "unknown-name", Severity.ERROR, "there is no piece `{name}`")
FILE = SourceFile("shirt.garment", "# 漢\nseam side: front.side + bakc.side\n")


def test_the_shape_is_frozen(golden: Golden, root: Path) -> None:
    """A change of this file is a change of the format's version."""
    at = FILE.text.index("bakc")
    diagnostic = (
        UNKNOWN.at(
            FILE.span(at, at + 4), "no such piece", name="bakc", known=("back", "front"), share=Fraction(1, 3)
        )
        .see(FILE.span(4, 8), "in this seam")
        .note("the block has two pieces")
        .help("did you mean `back`?")
        .with_fix("write `back`", Edit(FILE.span(at, at + 4), "back"), applicability=Applicability.SAFE)
    )

    golden(
        root / "tests/unit/diagnostics/frozen.json",
        render_json([diagnostic, UNKNOWN.at(None, name="sleeve")]),
    )


def test_a_lone_surrogate_is_escaped_so_that_the_result_is_utf8() -> None:
    written = render_json([UNKNOWN.at(None, name="\ud800é")])

    assert written.encode()
    assert json.loads(written)["diagnostics"][0]["facts"]["name"] == "\ud800é"


def test_numbers_stay_numbers_and_infinity_is_no_json() -> None:
    facts = json.loads(render_json([UNKNOWN.at(None, name="", a=1, b=2.5, c=True, d=None, e=float("inf"))]))

    assert facts["diagnostics"][0]["facts"] == {
        "name": "",
        "a": 1,
        "b": 2.5,
        "c": True,
        "d": None,
        "e": "inf",
    }


def test_nothing_said_is_an_empty_list() -> None:
    assert json.loads(render_json([])) == {"version": 1, "diagnostics": []}
