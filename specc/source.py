"""Owns texts and places in them: files as they were read, and spans of characters that point into them.

Knows nothing of what the text says, nor of how a place is shown.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass, field

_BYTE_ORDER_MARK = b"\xef\xbb\xbf"
_OTHER_ENCODINGS = ((b"\xff\xfe", "UTF-16"), (b"\xfe\xff", "UTF-16"))


@dataclass(frozen=True, slots=True, eq=False)
class SourceFile:
    """A text and the name it goes by; two files are the same only when they are one object.

    `name` is the path relative to the project folder, with forward slashes; `called` is what the user called
    the file, where that differs, and is only for messages.
    Lines end at each line feed, so a carriage return before one belongs to the same line end
    (SARIF 2.1.0, 3.14.26, default `newlineSequences`).
    """

    name: str
    text: str = field(repr=False)
    called: str = field(default="", repr=False)
    _starts: tuple[int, ...] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        if self.name.startswith("/"):
            raise ValueError(f"a source file is named relative to its project, not {self.name!r}")
        starts = (0, *(offset + 1 for offset, letter in enumerate(self.text) if letter == "\n"))
        object.__setattr__(self, "_starts", starts)

    @staticmethod
    def read(name: str, data: bytes, called: str = "") -> SourceFile | DecodingFault:
        """Return the file whose text is `data` as UTF-8, or the first byte that is not.

        A byte order mark is left out. Carriage returns are kept, so that the text written out again is the
        text read.
        """
        body = data.removeprefix(_BYTE_ORDER_MARK)
        try:
            return SourceFile(name, body.decode("utf-8"), called)
        except UnicodeDecodeError as fault:
            readable = SourceFile(name, body.decode("utf-8", errors="replace"), called)
            start = len(body[: fault.start].decode("utf-8"))
            encodings = (encoding for mark, encoding in _OTHER_ENCODINGS if data.startswith(mark))
            return DecodingFault(readable.span(start, start + 1), body[fault.start], next(encodings, None))

    @property
    def shown(self) -> str:
        """What messages call the file."""
        return self.called or self.name

    @property
    def line_count(self) -> int:
        """The number of lines; a text that ends with a line feed has an empty last line."""
        return len(self._starts)

    def line(self, number: int) -> str:
        """Return line `number`, counted from 1, without its line end."""
        if not 1 <= number <= len(self._starts):
            raise ValueError(f"{self.name} has lines 1 to {len(self._starts)}, not {number}")
        end = self._starts[number] if number < len(self._starts) else len(self.text) + 1
        return self.text[self._starts[number - 1] : end - 1].removesuffix("\r")

    def position(self, offset: int) -> tuple[int, int]:
        """Return the line and column, both counted from 1 in code points, of the character at `offset`."""
        line = bisect_right(self._starts, offset)
        return line, offset - self._starts[line - 1] + 1

    def span(self, start: int, end: int) -> Span:
        """Return the span of the characters from `start` up to `end`, `end` left out."""
        return Span(self, start, end)


@dataclass(frozen=True, slots=True)
class Span:
    """A run of characters in one file: code-point offsets, `end` left out, possibly empty.

    Raises ValueError when the range does not lie inside the file.
    """

    file: SourceFile
    start: int
    end: int

    def __post_init__(self) -> None:
        if not 0 <= self.start <= self.end <= len(self.file.text):
            length = len(self.file.text)
            raise ValueError(f"{self.start} to {self.end} is not inside {self.file.name}, 0 to {length}")

    @property
    def text(self) -> str:
        """The characters themselves."""
        return self.file.text[self.start : self.end]

    @property
    def line(self) -> int:
        """The line of the first character, counted from 1."""
        return self.file.position(self.start)[0]

    @property
    def column(self) -> int:
        """The column of the first character, counted from 1 in code points."""
        return self.file.position(self.start)[1]

    @property
    def end_line(self) -> int:
        """The line of the place just behind the last character."""
        return self.file.position(self.end)[0]

    @property
    def end_column(self) -> int:
        """The column of the place just behind the last character."""
        return self.file.position(self.end)[1]

    def to(self, other: Span) -> Span:
        """Return the shortest span that holds both; raises ValueError when they lie in different files."""
        if other.file is not self.file:
            raise ValueError(f"{self.file.name} and {other.file.name} have no span in common")
        return Span(self.file, min(self.start, other.start), max(self.end, other.end))

    def __str__(self) -> str:
        """The place as `file:line:column`."""
        return f"{self.file.shown}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class DecodingFault:
    """The first byte of a file that is not UTF-8.

    `span` lies in the file as far as it can be read (each unreadable part is U+FFFD); `encoding` is the
    encoding that the file's byte order mark speaks of, if another one.
    """

    span: Span
    byte: int
    encoding: str | None
