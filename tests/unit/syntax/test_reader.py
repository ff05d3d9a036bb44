"""Reading goes on after every fault: one diagnostic for each, and all that is sound stands in the tree."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.diagnostics import Applicability
from specc.syntax import tree
from specc.syntax.letters import MOST_LETTERS, MOST_LINES
from specc.syntax.reader import MOST_FAULTS, MOST_OPERATORS
from specc.syntax.show import show
from tests.unit.syntax.reading import nodes, only, read, sound, told

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic

FAULTY = Path(__file__).parent / "faulty.garment"


def test_twelve_mistakes_give_twelve_diagnostics_in_their_places() -> None:
    said = read(FAULTY.read_text(encoding="utf-8"))[1]

    assert [(each.span and each.span.line, each.code.id, each.span and each.span.text) for each in said] == [
        (5, "SPC104", '"'),
        (9, "SPC112", "cloht"),
        (10, "SPC106", "inches"),
        (14, "SPC103", "{"),
        (16, "SPC102", "“"),
        (19, "SPC105", "1/0"),
        (25, "SPC101", "front"),
        (27, "SPC101", ""),
        (30, "SPC101", "+"),
        (35, "SPC102", "@"),
        (37, "SPC108", "}"),
        (38, "SPC112", "pocket"),
    ]


def test_what_stands_between_mistakes_is_in_the_tree() -> None:
    parsed, _ = read(FAULTY.read_text(encoding="utf-8"))

    kinds = " ".join(type(each).__name__ for each in parsed.declarations)

    assert kinds == (
        "Sheet UseLibrary Sheet Sheet Sheet UseLibrary Alter Broken Seam Broken Measure Broken Finish Note"
    )
    shown = show(parsed)
    for sound_line in (
        "Property weight: 90 g/m2",
        "Property width: 54 in",
        "Property stretch: 60 %",
        "Release darts: front.waist-dart",
        "MoveCorner verb: lower",
        "Seam name: side",
        "Measure name: hip",
        'Note text: "the end"',
    ):
        assert sound_line in shown


def broken(text: str) -> list[str]:
    """The texts of the statements in `text` that could not be read."""
    return [node.span.text for node in nodes(read(text)[0]) if isinstance(node, tree.Broken)]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("measure = 3\nuse chart c", ["measure = 3"]),
        ("alter { swing ; leave out a }", ["swing"]),
        ("seam s joins a.b, c.d {\n lay x\n}\nuse chart c", ["seam s joins a.b, c.d {\n lay x\n}"]),
        ("seam s {\n a { b {} }\n}\nuse chart c", ["seam s {\n a { b {} }\n}"]),
        ("block b { piece p { cut x; cut 1 } }", ["cut x"]),
        ("pocket a\n  b c\n  d e\nuse chart c", ["pocket a\n  b c\n  d e"]),
        ("seam s joins a.b\n  to c.d by m\nuse chart c", ["seam s joins a.b\n  to c.d by m"]),
        ("expect a <= ", ["expect a <="]),
        ("{", ["{"]),
        ("care {} @ x", ["@ x"]),
        ("care {} 1/0", ["1/0"]),
        ('block b { piece p { cut 1 } " }\nuse chart c', ['"']),
    ],
)
def test_a_broken_statement_ends_with_itself(text: str, expected: list[str]) -> None:
    assert broken(text) == expected
    assert len(read(text)[1]) == 1


def test_a_broken_statement_keeps_the_names_of_its_first_line() -> None:
    (declaration,) = read('seam side-1 "no name" joins a.b from c {  # nor this\n  lay x\n}')[0].declarations

    assert isinstance(declaration, tree.Broken)
    assert [word.text for word in declaration.words] == ["seam", "side-1", "joins", "a", "b", "from", "c"]
    assert [word.span.text for word in declaration.words] == [word.text for word in declaration.words]


# --- words that are meant ---


@pytest.mark.parametrize(
    ("text", "replacement"),
    [
        ("alter { swing a.b inot c.d }", "into"),
        ("alter { swingg a.b into c.d }", "swing"),
        ("Seam s joins a.b to c.d by m", "seam"),
        ("block b { paramter p = 3 cm }", "parameter"),
        ("measure m = 3 Inches", "in"),
        ("measure m = 3 CM", "cm"),
        ("note “soft”", '"soft"'),
        ("measure m = a × b", "*"),
        ("garment g { revision A 2026-3-2 }", "2026-03-02"),
    ],
)
def test_what_is_meant_beyond_doubt_is_read_so_and_has_a_safe_fix(text: str, replacement: str) -> None:
    parsed, (said,) = read(text)

    assert said.fix is not None
    assert said.fix.applicability is Applicability.SAFE
    assert [edit.replacement for edit in said.fix.edits] == [replacement]
    assert show(parsed) == show(sound(applied(text, said)))


@pytest.mark.parametrize(
    "text",
    [
        "alter { swing a.b c.d }",  # a word is missing, not misspelt
        "alter { swingg a.b inot c.d }",  # something else is wrong as well
        "expect a > 3 cm",  # `>=` says something else
    ],
)
def test_what_is_only_likely_has_no_safe_fix(text: str) -> None:
    (said,) = read(text)[1]

    assert said.fix is None or said.fix.applicability is not Applicability.SAFE


def applied(text: str, said: Diagnostic) -> str:
    assert said.fix is not None
    for edit in sorted(said.fix.edits, key=lambda edit: edit.span.start, reverse=True):
        text = text[: edit.span.start] + edit.replacement + text[edit.span.end :]
    return text


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "alter { swing front.bust-dart in front.hem }",
            "after `swing front.bust-dart` comes `into`, not `in`",
        ),
        ("measure m = @", "`@` has no place in the language"),
        ("alter { point p at 0, 0 }", "no line of `alter` begins with `point`"),
        ("measure m =", "after `measure m =` comes a value, not the end of the file"),
        (
            "measure m = 3 cm; hem h",
            "after `hem h` comes a text in quotes or `along`, not the end of the file",
        ),
        ("expect a = 3", "after `expect a` comes `>=` or `<=`, not `=`"),
        ("block b { let x = width + 1 }", "after `let x = width` comes `of`, not `+`"),
        ("thread t { size = 3 }", "after `size` comes a value, not `=`"),
        ("use 3", "after `use` comes a text in quotes, `block` or `chart`, not `3`"),
    ],
)
def test_messages_say_what_stands_there_and_what_could(text: str, message: str) -> None:
    assert [each.message for each in read(text)[1]] == [message]


def test_a_message_shows_no_more_of_a_long_statement_than_helps() -> None:
    (said,) = read("measure m = " + "bust-ease + " * 30 + "@ 1 §")[1]

    assert len(said.message) < 160


# --- braces and quotes ---


def test_a_declaration_ends_the_body_that_was_not_closed() -> None:
    parsed, said = read(
        "garment g {\n  style x\n\nuse chart c\nuse block b {\n  a 3\nseam s joins a.b to c.d by m\n"
    )

    assert [each.code.id for each in said] == ["SPC103", "SPC103"]
    assert [type(each).__name__ for each in parsed.declarations] == [
        "Sheet",
        "UseLibrary",
        "UseLibrary",
        "Seam",
    ]


def test_inner_bodies_end_where_the_layout_says_so() -> None:
    text = (
        "block b {\n  piece p {\n    edge e from a {\n      line to b\n"
        "    edge f from b {\n      line to c\n    }\n  piece q {\n    cut 1\n  }\n}\n"
    )
    parsed, said = read(text)

    assert [each.code.id for each in said] == ["SPC103", "SPC103"]
    (block,) = parsed.declarations
    assert isinstance(block, tree.Block)
    assert [type(each).__name__ for each in block.body] == ["Piece", "Piece"]
    assert isinstance(block.body[0], tree.Piece)
    assert [type(each).__name__ for each in block.body[0].body] == ["Edge", "Edge"]


def test_all_bodies_that_the_end_of_the_file_leaves_open_are_one_mistake() -> None:
    (said,) = read("block b {\n  piece p {\n    edge e from a {\n      line to b")[1]

    assert (said.code.id, said.span and said.span.line, len(said.related)) == ("SPC103", 1, 3)
    assert show(sound(applied(said.span.file.text, said))) if said.span else False


def test_a_property_may_have_the_name_of_a_declaration() -> None:
    sheet = only("trim t {\nthread core\nseam 3 mm\nnote soft\nhem no\n}")

    assert isinstance(sheet, tree.Sheet)
    assert len(sheet.body) == 4


def test_braces_that_close_nothing_spoil_nothing() -> None:
    parsed, said = read("}\nuse chart c }\n}\nuse block b\n")

    assert [each.code.id for each in said] == ["SPC108"] * 3
    assert len(parsed.declarations) == 2


def test_a_brace_behind_a_broken_statement_is_no_news() -> None:
    assert told("garment g {\n  style x }\n  maker y\n  season z\n}\nuse chart c\n") == [("SPC112", "maker")]


@pytest.mark.parametrize(
    ("text", "blamed", "rest"),
    [
        ('note "abc\nuse chart c', '"abc', 1),
        ('note "abc # no remark\nuse chart c', '"abc # no remark', 1),
        ('cloth c "abc {\n  width 3 cm\n}\nuse chart c', '"abc', 1),
        ('label l at a.b { says "abc }\nuse chart c', '"abc', 1),
        ('note "abc\n  def"\nuse chart c', '"abc\n  def"', 1),
        ('note "abc\\"\nuse chart c', '"abc\\"', 1),
        ('note "', '"', 0),
    ],
)
def test_a_text_that_is_not_closed_ends_where_it_was_meant_to(text: str, blamed: str, rest: int) -> None:
    parsed, _ = read(text)

    assert told(text) == [("SPC104", blamed)]
    assert len(parsed.declarations) == 1 + rest
    assert not broken(text)


# --- letters ---


@pytest.mark.parametrize(
    "letter", ["\0", "\x07", "\x7f", "\x85", "\u2028", "\u202e", "\u2066", "\ud800", "\r"]
)
@pytest.mark.parametrize("text", ["use {}chart c", "# {}remark", 'note "a{}b"'])
def test_letters_that_cannot_be_seen_are_reported_wherever_they_stand(text: str, letter: str) -> None:
    faulty = text.format(letter)
    parsed, (said,) = read(faulty)

    assert (said.code.id, said.span and said.span.text) == ("SPC102", letter)
    assert letter not in said.message
    assert read(applied(faulty, said))[1] == ()
    assert not broken(faulty)
    show(parsed).encode()


def test_hidden_letters_are_reported_once_a_line() -> None:
    assert len(read("# \0\0\0\n\0\0\nuse \0 chart \0 c\n")[1]) == 3


@pytest.mark.parametrize(
    "text", ["note \u201ca\u201d", "note 'a'", "note \u00aba\u00bb", "note \u201ea\u201c"]
)
def test_texts_in_other_quotes_are_texts(text: str) -> None:
    (note,) = read(text)[0].declarations

    assert isinstance(note, tree.Note)
    assert note.text.text == "a"


def test_marks_that_scripts_need_are_letters_like_any_other() -> None:
    assert read('note "\u05d0\u200f\u05d1 \u0915\u094d\u200d\u0937"')[1] == ()


# --- bounds ---


def test_a_text_that_is_too_large_is_not_read() -> None:
    for text in ("#" * (MOST_LETTERS + 1), "\n" * MOST_LINES):
        parsed, (said,) = read(text)

        assert said.code.id == "SPC107"
        assert [type(each) for each in parsed.declarations] == [tree.Broken]


def test_a_text_that_just_fits_is_read() -> None:
    assert read("#" * MOST_LETTERS)[1] == ()
    assert read("\n" * (MOST_LINES - 1))[1] == ()


@pytest.mark.parametrize("opening", ["(", "- ", "half of ", "1 + "])
def test_expressions_are_no_deeper_than_can_be_worked_on(opening: str) -> None:
    assert told(f"measure m = {opening * MOST_OPERATORS * 2}1")[0][0] == "SPC107"
    deep = f"measure m = {opening * MOST_OPERATORS}1{')' * MOST_OPERATORS if opening == '(' else ''}"
    assert isinstance(only(deep), tree.Measure)


def test_reading_stops_after_enough_faults() -> None:
    parsed, said = read("pocket\n" * (MOST_FAULTS * 3) + "use chart c\n")

    assert len(said) == MOST_FAULTS + 1
    assert said[-1].code.id == "SPC111"
    assert parsed.declarations[-1].span.end == len(parsed.file.text)


@pytest.mark.parametrize("text", ["care {} }", "block b { piece p { cut 1 } @ }", "note 'a' }", "cloth c {"])
def test_reading_may_stop_anywhere(text: str) -> None:
    said = read("pocket\n" * MOST_FAULTS + text)[1]

    assert [each.code.id for each in said[-1:]] == ["SPC111"]
