"""Owns reading a text to its end: feeds Lark's parser, and behind each fault goes on with the next statement.

Knows nothing of what the statements mean, nor of how a fault is worded.
"""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from specc.diagnostics import Edit, Severity, declare
from specc.syntax import layout
from specc.syntax.braces import Opened, stray, unclosed
from specc.syntax.finding import Finding, Place, as_kind, is_word
from specc.syntax.letters import BLANK, HIDDEN, TOO_LARGE, hidden_letters
from specc.syntax.lexer import end_of, made, start_of, tokens
from specc.syntax.signs import misread
from specc.syntax.stack import BROKEN, Stack
from specc.syntax.wording import keywords
from specc.syntax.words import misspelt_beginning, unexpected

if TYPE_CHECKING:
    from lark import Token
    from lark import Tree as LarkTree

    from specc.diagnostics import Diagnostic
    from specc.source import SourceFile

TOO_MANY = declare("SPC111", "too-many-faults", Severity.ERROR, "reading stopped here, after {most} faults")

MOST_FAULTS = 50
# Nothing that a person writes nests deeper; it bounds the recursion of all that works on expressions.
MOST_OPERATORS = 100
_OPERATORS = frozenset(("LPAR", "SIGN", "SCALE", "OF"))

# Behind these an end of line means nothing, so that a long statement may be broken there.
_JOINING = frozenset(("LBRACE", "COMMA", "EQUAL", "LPAR", "SIGN", "SCALE", "COMPARE", "_END"))

_ELSEWHERE = -1  # hidden letters are said for the whole file at once


@dataclass(slots=True)
class _Statement:
    """What has been read of a statement; `said` is the place of its one diagnostic among all."""

    tokens: list[Token] = field(default_factory=list)
    said: int | None = None
    operators: int = 0


@dataclass(slots=True)
class _Body:
    """An open brace and the statement that it belongs to."""

    brace: Token
    head: _Statement


class _TooManyError(Exception):
    """More faults than anybody wants to read."""


class Reader:
    """Reads one text, once."""

    def __init__(self, source: SourceFile) -> None:
        self._source = source
        self._text = source.text
        self._coming = tokens(source.text)
        self._ahead: deque[Token] = deque()  # taken from `_coming` but not yet read
        self._stack = Stack()
        self._statement = _Statement()
        self._bodies: list[_Body] = []
        self._before = "_END"  # the kind of the last token that was read
        self._behind = 0  # where it ends
        self._broken_before = False  # whether a broken statement ends there, outside of all bodies
        self._said: list[Diagnostic] = []

    def read(self) -> tuple[LarkTree[Token], tuple[Diagnostic, ...]]:
        """Return the tree, `broken` standing for each statement that cannot be read, and what was wrong."""
        try:
            while (token := self._next()) is not None or self._statement.tokens:
                if token is None:
                    self._close_statement()
                else:
                    self._take(token)
            if self._bodies:
                self._say_unclosed(self._bodies, None)
        except _TooManyError:
            self._leave_rest()
        self._shut(len(self._bodies))
        hidden = tuple(hidden_letters(self._source, most=MOST_FAULTS)) if HIDDEN.search(self._text) else ()
        return self._stack.finish(), (*hidden, *self._said)

    # --- tokens ---

    def _next(self) -> Token | None:
        return self._ahead.popleft() if self._ahead else next(self._coming, None)

    def _peek(self) -> Token | None:
        """The next token that is not an end of line."""
        for token in self._ahead:
            if token.type != "_END":
                return token
        for token in self._coming:
            self._ahead.append(token)
            if token.type != "_END":
                return token
        return None

    def _line_end(self, place: int) -> Token:
        """An end of line of our own, or the end of the file."""
        token = made("_END", "" if place == len(self._text) else "\n", at=place)
        token.end_pos = place
        return token

    def _place(self) -> Place:
        body = self._bodies[-1].head.tokens[0] if self._bodies else None
        return Place(self._source, self._stack, self._statement.tokens, body)

    # --- reading on ---

    def _take(self, token: Token) -> None:
        if token.type == "_END":
            self._take_line_end(token)
        elif layout.begins_line(self._text, start_of(token)) and self._broke_off_before(token):
            self._ahead.appendleft(token)
            self._close_statement()
        elif token.type == "RBRACE" and not self._bodies:
            self._take_stray(token)
        elif token.type == "JUNK" and self._is_passed_over(token):
            pass
        else:
            self._take_word(token)

    def _is_passed_over(self, token: Token) -> bool:
        """Whether a letter is left out without a word: it cannot be seen, and that has been said."""
        if HIDDEN.match(token):
            self._statement.said = _ELSEWHERE
            return True
        return self._statement.said is not None and BLANK.match(token) is not None

    def _take_word(self, token: Token) -> None:
        finding = misread(token, self._place())
        if finding is None:
            fitting = self._fitting(token)
            if fitting is not None:
                self._shift(fitting, token)
                return
        if finding is None or finding.instead != ():
            finding = self._begun_behind(token) or finding or unexpected(token, self._place())
        self._heed(finding, token)

    def _fitting(self, token: Token) -> Token | None:
        """Return the token as it fits: a word of the language or a unit is a name where it does not fit."""
        if self._stack.fits(token.type):
            return token
        # `in` is a unit behind a number, and a word of the language behind `take`.
        word = keywords().get(str(token)) if token.type == "UNIT" else None
        if word is not None and self._stack.fits(word):
            return as_kind(token, word)
        if token.type != "NAME" and is_word(token) and self._stack.fits("NAME"):
            return as_kind(token, "NAME")
        return None

    def _shift(self, token: Token, written: Token | None = None) -> None:
        """Feed a token that fits; `written` is the same token as the lexer had it."""
        statement = self._statement
        statement.operators += token.type in _OPERATORS
        if statement.operators > MOST_OPERATORS:
            span = self._place().span(token)
            said = TOO_LARGE.at(span, what="the statement", most=MOST_OPERATORS, of="operators")
            self._skip(said.help("give names to parts of it with `let`"), token)
            return
        self._stack.feed(token)
        self._before = token.type
        if token.type == "_END":
            self._statement = _Statement()
            return
        self._behind = end_of(token)
        self._broken_before = False
        if token.type == "RBRACE":
            self._statement = self._bodies.pop().head
        self._statement.tokens.append(token if written is None else written)
        if token.type == "LBRACE":
            self._bodies.append(_Body(token, statement))
            self._statement = _Statement()

    def _take_line_end(self, token: Token) -> None:
        if self._before in _JOINING:
            return
        if self._stack.fits("_END"):
            self._shift(token)
            return
        said = unexpected(token, self._place()).diagnostic
        following = self._peek()
        deeper = following and self._column(following) > self._column(self._statement.tokens[0])
        if self._stack.fits("LBRACE") and following and following.type == "LBRACE":
            self._say(said.help("`{` stands in the line of what it opens"))
        elif self._stack.fits("LBRACE") and deeper:
            point = self._source.span(self._behind, self._behind)
            self._say(said.with_fix("write `{` here", Edit(point, " {")))
            self._shift(made("LBRACE", "", at=self._behind))
        else:
            way = "a statement may go on in the next line behind `,`, `=`, `(` or an operator"
            self._skip(said.help(way) if deeper else said, token)

    def _close_statement(self) -> None:
        """End a statement where the file ends, or where another plainly begins; say what it lacks."""
        end = self._line_end(self._behind if self._ahead else len(self._text))
        if self._stack.fits("_END"):
            self._shift(end)
        else:
            self._skip(unexpected(end, self._place()).diagnostic, end)

    # --- faults ---

    def _heed(self, finding: Finding, token: Token) -> None:
        """Say what was found, and read on with what stands instead of `token`, or behind the statement."""
        if finding.instead is None:
            self._skip(finding.diagnostic, token)
            return
        self._say(finding.diagnostic, adds=bool(finding.instead))
        for instead in finding.instead:
            fitting = self._fitting(instead)
            if fitting is None:
                self._skip(finding.diagnostic, token)
                return
            self._shift(fitting, instead)

    def _say(self, diagnostic: Diagnostic, *, adds: bool = True) -> None:
        """Keep the first diagnostic of a statement; a second fault (`adds`) casts doubt on its cure."""
        said = self._statement.said
        if said is None:
            if len(self._said) == MOST_FAULTS:
                raise _TooManyError
            self._statement.said = len(self._said)
            self._said.append(diagnostic)
        elif said != _ELSEWHERE and adds and (fix := self._said[said].fix) is not None:
            self._said[said] = replace(self._said[said], fix=None).help(f"did you mean to {fix.title}?")

    def _skip(self, diagnostic: Diagnostic, token: Token) -> None:
        """Put a broken statement in the place of the one that `token` does not fit, and stop before the next.

        If its first word turns out to be a misspelt one, read it anew instead.
        """
        statement = self._statement
        self._stack.unwind()
        if statement.said is None and statement.tokens:
            beginning = misspelt_beginning(self._place())
            if beginning is not None and beginning.instead:
                self._say(beginning.diagnostic)
                self._ahead.extendleft(reversed((*beginning.instead, *statement.tokens[1:], token)))
                self._statement = _Statement(said=statement.said)
                self._before = "_END"
                return
        self._say(diagnostic)
        first = statement.tokens[0] if statement.tokens else token
        astray = not statement.tokens or token.type == "_END"
        self._put_broken(start_of(first), self._skipped_to(token, first, astray=astray))

    def _put_broken(self, start: int, end: int) -> None:
        broken = made(BROKEN, "", at=start)
        broken.end_pos = end
        self._stack.feed(broken)
        self._before = BROKEN
        self._behind = end
        self._broken_before = not self._bodies
        self._statement = _Statement()

    def _skipped_to(self, token: Token, first: Token, *, astray: bool) -> int:
        """Pass over the rest of a statement, with the bodies that it opens; return where it ends.

        `astray`: it broke off with its line, or begins like no statement; then deeper lines belong to it.
        """
        end = self._behind if self._statement.tokens else start_of(token)
        depth = 0
        before = ""
        coming: Token | None = token
        while coming is not None:
            if coming.type == "RBRACE" and not depth and self._bodies:
                break
            if coming.type == "_END" and not depth:
                following = self._peek()
                if following is None or self._begins_declaration(following):
                    break
                if before not in _JOINING and not (astray and self._belongs(following, first)):
                    break
            if depth and before == "_END" and self._begins_declaration(coming):
                self._ahead.appendleft(coming)
                coming = self._line_end(end)
                break
            depth = max(depth + {"LBRACE": 1, "RBRACE": -1}.get(coming.type, 0), 0)
            before = coming.type
            if before != "_END":
                end = end_of(coming)
            coming = self._next()
        if coming is not None:
            self._ahead.appendleft(coming)
        return end

    # --- what layout tells ---

    def _column(self, token: Token) -> int:
        return layout.column(self._text, start_of(token))

    def _begins_declaration(self, token: Token) -> bool:
        return layout.begins_line(self._text, start_of(token)) and self._looks_begun(token)

    def _looks_begun(self, token: Token) -> bool:
        return layout.begins_declaration(self._text, start_of(token), inside=bool(self._bodies))

    def _belongs(self, following: Token, first: Token) -> bool:
        """Whether the line of `following` seems to go on the broken statement that begins with `first`."""
        if following.type == "RBRACE":
            return not self._bodies
        if not layout.begins_line(self._text, start_of(following)):
            return False
        here, there = self._column(first), self._column(following)
        return there > here or (there == here > 0 and not self._bodies)

    def _begun_behind(self, token: Token) -> Finding | None:
        """End the statement if another begins behind it in its line; return what is to be said."""
        if not self._statement.tokens or not self._stack.fits("_END"):
            return None
        if self._before != "RBRACE" and not self._looks_begun(token):
            return None
        said = replace(unexpected(token, self._place()).diagnostic, fix=None, helps=())
        self._shift(self._line_end(self._behind))
        fitting = self._fitting(token)
        said = said.help("a new statement begins on a new line")
        return Finding(said, None if fitting is None else (fitting,))

    def _broke_off_before(self, token: Token) -> bool:
        """Whether the statement breaks off before the line of `token`, where another plainly begins.

        Bodies that ought to have been closed before are closed.
        """
        begins = self._looks_begun(token)
        if self._statement.tokens:
            return begins and not self._stack.fits(token.type)
        if not self._bodies or self._before == BROKEN:
            return False
        closed = len(self._bodies) if begins else self._closed_by(token)
        if closed:
            self._say_unclosed(self._bodies[-closed:], token)
            self._shut(closed)
            self._shift(self._line_end(self._behind))
        return False

    def _closed_by(self, token: Token) -> int:
        """Return how many bodies must have been meant to end for `token` to begin a statement."""
        if not is_word(token) or self._stack.fits("NAME") or self._stack.fits(token.type):
            return 0
        for count in range(1, len(self._bodies) + 1):
            if self._column(token) > self._column(self._bodies[-count].head.tokens[0]):
                return 0
            if self._stack.fits(*["RBRACE"] * count, "_END", token.type):
                return count
        return 0

    # --- braces, and the end ---

    def _take_stray(self, token: Token) -> None:
        """Pass over a brace that closes nothing; behind a broken statement it is no news."""
        if not self._broken_before:
            self._say(stray(self._source, token))
        if not self._statement.tokens:
            self._statement = _Statement()

    def _say_unclosed(self, bodies: list[_Body], before: Token | None) -> None:
        if len(self._said) == MOST_FAULTS:
            raise _TooManyError
        opened = tuple(Opened(body.brace, body.head.tokens) for body in bodies)
        self._said.append(unclosed(self._source, opened, before))

    def _shut(self, count: int) -> None:
        for _ in range(count):
            self._shift(made("RBRACE", "", at=self._behind))

    def _leave_rest(self) -> None:
        """Leave the rest of the file unread."""
        self._said.append(TOO_MANY.at(self._source.span(self._behind, self._behind), most=MOST_FAULTS))
        if self._stack.fits("_END"):
            self._shift(self._line_end(self._behind))
        self._stack.unwind()
        first = self._statement.tokens[0] if self._statement.tokens else None
        self._put_broken(self._behind if first is None else start_of(first), len(self._text))
