"""Places in texts: lines, columns, spans, and reading bytes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.source import DecodingFault, SourceFile, Span

TEXTS = st.text(alphabet=st.sampled_from("ab\n\r\té漢😀"), max_size=40)


def test_lines_and_columns_count_from_one_in_code_points() -> None:
    file = SourceFile("a.garment", "é漢😀x\nsecond\n")
    span = file.span(3, 4)

    assert span.text == "x"
    assert (span.line, span.column) == (1, 4)
    assert (span.end_line, span.end_column) == (1, 5)
    assert str(span) == "a.garment:1:4"


def test_carriage_return_and_line_feed_are_one_line_end() -> None:
    file = SourceFile("a.garment", "one\r\ntwo\r\nthree")

    assert file.line_count == 3
    assert [file.line(number) for number in (1, 2, 3)] == ["one", "two", "three"]
    assert file.position(5) == (2, 1)


def test_a_text_ending_in_a_line_feed_has_an_empty_last_line() -> None:
    file = SourceFile("a.garment", "one\n")

    assert file.line_count == 2
    assert file.line(2) == ""


@pytest.mark.parametrize("number", [0, 3, -1])
def test_there_is_no_line_outside_the_text(number: int) -> None:
    with pytest.raises(ValueError, match="lines 1 to 2"):
        SourceFile("a.garment", "one\ntwo").line(number)


@pytest.mark.parametrize(("start", "end"), [(-1, 2), (2, 1), (0, 4)])
def test_a_span_outside_its_file_is_refused(start: int, end: int) -> None:
    with pytest.raises(ValueError, match="not inside"):
        Span(SourceFile("a.garment", "abc"), start, end)


def test_two_spans_join_to_the_shortest_that_holds_both() -> None:
    file = SourceFile("a.garment", "abcdefgh")

    assert file.span(5, 6).to(file.span(1, 3)) == file.span(1, 6)


def test_spans_of_two_files_do_not_join_even_when_their_texts_agree() -> None:
    one, other = SourceFile("a.garment", "abc"), SourceFile("a.garment", "abc")

    assert one.span(0, 1) != other.span(0, 1)
    with pytest.raises(ValueError, match="no span in common"):
        one.span(0, 1).to(other.span(1, 2))


def test_an_absolute_name_is_refused() -> None:
    with pytest.raises(ValueError, match="relative"):
        SourceFile("/home/someone/a.garment", "")


def test_the_byte_order_mark_is_no_part_of_the_text() -> None:
    file = SourceFile.read("a.garment", b"\xef\xbb\xbfgarment")

    assert isinstance(file, SourceFile)
    assert file.text == "garment"


def test_a_byte_that_is_not_utf8_is_found_behind_letters_of_several_bytes() -> None:
    fault = SourceFile.read("a.garment", "é漢\n".encode() + b"ab\xe9c")

    assert isinstance(fault, DecodingFault)
    assert (fault.span.line, fault.span.column, fault.byte) == (2, 3, 0xE9)
    assert fault.encoding is None


def test_a_file_in_utf16_is_recognised_by_its_mark() -> None:
    fault = SourceFile.read("a.garment", "garment".encode("utf-16"))

    assert isinstance(fault, DecodingFault)
    assert fault.encoding == "UTF-16"


@given(st.binary(max_size=60))
def test_any_bytes_give_a_file_or_a_fault_with_a_place(data: bytes) -> None:
    outcome = SourceFile.read("a.garment", data)

    if isinstance(outcome, DecodingFault):
        assert outcome.span.text == "\N{REPLACEMENT CHARACTER}"
    else:
        assert outcome.text.encode() == data.removeprefix(b"\xef\xbb\xbf")


@given(TEXTS, st.data())
def test_a_position_leads_back_to_its_character(text: str, data: st.DataObject) -> None:
    file = SourceFile("a.garment", text)
    offset = data.draw(st.integers(0, len(text)))
    line, column = file.position(offset)

    assert sum(len(part) + 1 for part in text.split("\n")[: line - 1]) + column - 1 == offset


@given(TEXTS)
def test_the_lines_are_those_between_line_feeds(text: str) -> None:
    file = SourceFile("a.garment", text)
    lines = [file.line(number) for number in range(1, file.line_count + 1)]

    assert lines == [line.removesuffix("\r") for line in text.split("\n")]
