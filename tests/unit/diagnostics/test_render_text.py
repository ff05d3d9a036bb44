"""Diagnostics as people read them."""

from __future__ import annotations

import io
import re
from textwrap import dedent
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.diagnostics import Severity, declare
from specc.diagnostics.render_text import render_text, wants_colour
from specc.source import SourceFile

if TYPE_CHECKING:
    from specc.source import Span

DIFFER = declare(
    "SPC501",
    "seam-lengths-differ",
    Severity.ERROR,
    "seam `{seam}` joins two edges whose lengths differ by {difference}",
)
SAID = declare("SPC599", "something-said", Severity.WARNING, "{text}")
NOTED = declare("SPC598", "something-noted", Severity.NOTE, "{text}")


def place(file: SourceFile, text: str) -> Span:
    start = file.text.index(text)
    return file.span(start, start + len(text))


def shown(text: str) -> str:
    return dedent(text).removeprefix("\n")


SHIRT = SourceFile(
    "examples/shirt.garment",
    "piece back {\n  edge side 405 mm\n}\n\nseam side: front.side + back.side\n",
)


def test_labels_stand_in_the_order_of_the_text_with_facts_and_cures_below() -> None:
    diagnostic = (
        DIFFER.at(place(SHIRT, "front.side"), "412 mm", seam="side", difference="7 mm")
        .see(place(SHIRT, "side 405 mm"), "405 mm here")
        .note("a plain seam allows 3 mm of ease")
        .help("write `ease 7 mm` on the seam if the difference is meant")
    )

    assert render_text([diagnostic]) == shown("""
        error[SPC501]: seam `side` joins two edges whose lengths differ by 7 mm
         --> examples/shirt.garment:5:12
          |
        2 |   edge side 405 mm
          |        ----------- 405 mm here
        ...
        5 | seam side: front.side + back.side
          |            ^^^^^^^^^^ 412 mm
          = note: a plain seam allows 3 mm of ease
          = help: write `ease 7 mm` on the seam if the difference is meant

        1 error; specc explain SPC501 says more
        """)


def test_two_labels_on_one_line_show_the_line_once() -> None:
    diagnostic = SAID.at(place(SHIRT, "back.side"), "this", text="both").see(
        place(SHIRT, "front.side"), "that"
    )

    assert render_text([diagnostic]) == shown("""
        warning[SPC599]: both
         --> examples/shirt.garment:5:25
          |
        5 | seam side: front.side + back.side
          |            ---------- that
          |                         ^^^^^^^^^ this

        1 warning; specc explain SPC599 says more
        """)


def test_carets_stay_under_wide_letters_and_behind_tabs() -> None:
    file = SourceFile("a.garment", "\tpiece 前身頃 {\n")

    assert render_text([SAID.at(place(file, "前身頃"), "wide", text="name")]).splitlines()[3:5] == [
        "1 |     piece 前身頃 {",
        "  |           ^^^^^^ wide",
    ]


def test_a_span_over_several_lines_says_where_it_ends() -> None:
    assert render_text([SAID.at(SHIRT.span(0, 33), "this block", text="block")]).splitlines()[3:5] == [
        "1 | piece back {",
        "  | ^^^^^^^^^^^^ this block (to line 3)",
    ]


def test_the_end_of_the_file_gets_a_caret_of_its_own() -> None:
    file = SourceFile("a.garment", "piece {")

    assert render_text([SAID.at(file.span(7, 7), "`}` is missing", text="end")]).splitlines()[3:5] == [
        "1 | piece {",
        "  |        ^ `}` is missing",
    ]


def test_a_place_in_another_file_is_shown_below_with_its_own_name() -> None:
    other = SourceFile("blocks/a.garment", "block sheath {\n")
    diagnostic = SAID.at(place(SHIRT, "front.side"), text="x").see(place(other, "sheath"), "declared here")

    assert render_text([diagnostic]).splitlines()[1:9] == [
        " --> examples/shirt.garment:5:12",
        "  |",
        "5 | seam side: front.side + back.side",
        "  |            ^^^^^^^^^^",
        " --> blocks/a.garment:1:7",
        "  |",
        "1 | block sheath {",
        "  |       ------ declared here",
    ]


def test_line_numbers_of_different_widths_keep_the_margin() -> None:
    file = SourceFile("a.garment", "\n" * 8 + "nine\nten\n")
    diagnostic = SAID.at(place(file, "ten"), text="x").see(place(file, "nine")).help("so")

    assert render_text([diagnostic]).splitlines()[1:8] == [
        "  --> a.garment:10:1",
        "   |",
        " 9 | nine",
        "   | ----",
        "10 | ten",
        "   | ^^^",
        "   = help: so",
    ]


def test_a_diagnostic_without_a_place_has_only_its_words() -> None:
    assert render_text([NOTED.at(None, text="nothing is priced").help("give prices\nor none")]) == shown("""
        note[SPC598]: nothing is priced
         = help: give prices
                 or none

        1 note; specc explain SPC598 says more
        """)


def test_a_fix_is_shown_as_a_cure() -> None:
    assert "= help: write `back`" in render_text([SAID.at(None, text="x").with_fix("write `back`")])


def test_the_totals_count_by_severity_and_name_the_worst() -> None:
    said = [
        SAID.at(None, text="a"),
        SAID.at(None, text="b"),
        DIFFER.at(None, seam="s", difference="1 mm"),
        NOTED.at(None, text="c"),
    ]

    assert render_text(said).splitlines()[-1] == "1 error, 2 warnings, 1 note; specc explain SPC501 says more"


def test_nothing_said_is_nothing_shown() -> None:
    assert render_text([]) == ""


def test_a_very_long_line_is_shown_around_its_label() -> None:
    file = SourceFile("a.garment", "x" * 5000 + "here" + "y" * 5000)
    line, carets = render_text([SAID.at(place(file, "here"), text="x")]).splitlines()[3:5]

    assert len(line) < 200
    assert line[carets.index("^") : carets.rindex("^") + 1] == "here"


HOSTILE = "a\x1b[31mb\x07c\x00d\x85e\u202ef\u2066g\u2028h\ud800i\rj"


def test_nothing_in_a_text_can_steer_the_terminal_or_turn_the_writing() -> None:
    file = SourceFile("a.garment", HOSTILE)
    diagnostic = SAID.at(file.span(0, len(HOSTILE)), HOSTILE, text=HOSTILE).note(HOSTILE).help(HOSTILE)
    written = render_text([diagnostic])

    assert not re.search(
        "[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\u2028\u2029\ud800-\udfff]", written
    )
    assert "a␛[31mb␇c␀d" in written


@given(st.text(max_size=60), st.data())
def test_any_text_and_any_place_can_be_shown(text: str, data: st.DataObject) -> None:
    file = SourceFile("a.garment", text)
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, len(text)))
    written = render_text([SAID.at(file.span(start, end), text, text=text).see(file.span(0, start), text)])

    assert written.encode()
    assert "^" in written


def test_colour_changes_nothing_but_colour() -> None:
    diagnostic = (
        DIFFER.at(place(SHIRT, "front.side"), "[bold]412 mm[/]", seam="side", difference="7 mm")
        .see(place(SHIRT, "side 405 mm"), "405 mm here")
        .help("x" * 300)
    )
    coloured = render_text([diagnostic], colour=True)

    assert "\x1b[1;31merror[SPC501]" in coloured
    without = re.sub("\x1b\\[[0-9;]*m", "", coloured)
    assert [line.rstrip() for line in without.splitlines()] == render_text([diagnostic]).splitlines()


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(
    ("stream", "environment", "wanted"),
    [
        (Terminal(), {}, True),
        (Terminal(), {"NO_COLOR": "1"}, False),
        (Terminal(), {"NO_COLOR": ""}, True),  # no-color.org: when present and not an empty string
        (Terminal(), {"TERM": "dumb"}, False),
        (io.StringIO(), {}, False),
    ],
)
def test_colour_is_for_terminals_whose_user_has_not_said_no(
    stream: io.StringIO, environment: dict[str, str], *, wanted: bool
) -> None:
    assert wants_colour(stream, environment) is wanted
