"""Owns what the layout of a text tells when its braces or quotes do not: where lines and declarations begin.

Knows nothing of the parser. The language itself gives layout no meaning: this only keeps one forgotten brace
from spoiling all that follows.
"""

from __future__ import annotations

import re

_NAME = r"[^\W\d_][\w-]*"
_TITLE = r'(?:[ \t]+"[^"\n]*")?'
# First words that make a line a declaration whatever body it stands in: no line of a body looks like this.
_DECLARATION = re.compile(
    rf"""(?:garment|cloth|trim|thread|packing|colourway|care|cost|chart|block|method|alter|label)\b
      [^\n{{}}"]*+(?:"[^"\n]*"[^\n{{}}"]*+)?\{{
    | seam[ \t]+{_NAME}{_TITLE}[ \t]+joins\b
    | (?:finish|hem|closure)[ \t]+{_NAME}{_TITLE}[ \t]+along\b
    | also[ \t]+cut[ \t]
    | attach[ \t]+{_NAME}[^\n{{}}"]*?{_TITLE}[ \t]+(?:on|to)\b
    | use[ \t]+(?:"|(?:chart|block)\b)
    | grade[ \t]+{_NAME}[ \t]*(?:=|\{{)
    | measure[ \t]+{_NAME}{_TITLE}[ \t]*=
    | expect\b[^\n]*[<>]=
    | expect[ \t]+within\b
    | accept[ \t]+SPC\d
    """,
    re.VERBOSE,
)
_NOTE = re.compile(r'note[ \t]+"')  # a property may be called so
_CLOSING = re.compile(r'"[ \t]*(?:[{},;#\n\r]|$|(?:on|at|from|stitch|because|when)\b)')
_LONGEST_TEXT = 6  # lines that a text is taken to run over when its closing quote stands on a later line


def begins_line(text: str, start: int) -> bool:
    """Whether nothing but blanks stands before `start` in its line."""
    while start and text[start - 1] in " \t\f":
        start -= 1
    return not start or text[start - 1] == "\n"


def column(text: str, start: int) -> int:
    """How far `start` is from the beginning of its line, in characters."""
    return start - text.rfind("\n", 0, start) - 1


def indentation(text: str, start: int) -> str:
    """The blanks at the beginning of the line of `start`."""
    line = text[text.rfind("\n", 0, start) + 1 : start]
    return line[: len(line) - len(line.lstrip(" \t"))]


def begins_declaration(text: str, start: int, *, inside: bool) -> bool:
    """Whether a declaration begins at `start`, to judge by the look of its line; `inside` a body or not."""
    found = _DECLARATION.match(text, start) or (None if inside else _NOTE.match(text, start))
    return found is not None


def end_of_unclosed(text: str, start: int) -> int:
    """Return where the text that is opened at `start` and not closed in its line was most likely to end.

    On one of the next lines, if the next quote there looks like a closing one; else in its own line, before
    a brace at that line's end.
    """
    line_end = text.find("\n", start)
    if line_end < 0:
        line_end = len(text)
    limit = line_end
    for _ in range(_LONGEST_TEXT - 1):
        following = text.find("\n", limit + 1)
        limit = following if following >= 0 else len(text)
    quote = text.find('"', line_end, limit)
    if quote >= 0:
        on_line = text[text.rfind("\n", 0, quote) + 1 : limit].partition("\n")[0]
        between = text[line_end + 1 : quote].split("\n")
        if (
            on_line.count('"') % 2
            and _CLOSING.match(text, quote)
            and not any(_DECLARATION.match(line.lstrip()) for line in between)
        ):
            return quote + 1
    content = text[start:line_end].rstrip()
    if len(content) > 1 and content[-1] in "{}":
        content = content[:-1].rstrip()
    return start + len(content)
