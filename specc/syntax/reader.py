"""Owns reading a text to its end: it feeds Lark's parser, and goes on after each fault with the next statement.

Knows nothing of what the statements mean, nor of how a fault is worded.
"""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from lark import Token

from specc.diagnostics import Edit, Severity, declare
from specc.syntax import layout
from specc.syntax.faults import Finding, Place, as_kind, is_word, misread, misspelt_beginning, unexpected
from specc.syntax.letters import HIDDEN, TOO_LARGE, hidden_letters
from specc.syntax.stack import BROKEN, Stack
from specc.syntax.tables import parser

if TYPE_CHECKING:
    from collections.abc import Iterator

    from lark import Tree as LarkTree

    from specc.diagnostics import Diagnostic
    from specc.source import SourceFile

UNCLOSED_BODY = declare("SPC103", "unclosed-body", Severity.ERROR, "the body of `{head}` is not closed")
STRAY_BRACE = declare("SPC108", "stray-brace", Severity.ERROR, "`}}` closes nothing")
TOO_MANY = declare("SPC111", "too-many-faults", Severity.ERROR, "reading stopped after {most} faults")

MOST_FAULTS = 100
# Nothing that a person writes nests deeper; it bounds the recursion of all that works on expressions.
MOST_OPERATORS = 100

# Behind these an end of line means nothing, so that a long statement may be broken there.
_JOINING = frozenset(("LBRACE", "COMMA", "EQUAL", "LPAR", "SIGN", "SCALE", "COMPARE", "_END"))
_ELSEWHERE = -1  # a hidden letter: said with all others of the file
_OPERATORS = frozenset(("LPAR", "SIGN", "SCALE", "OF"))


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
        self._coming = _tokens(source.text)
        self._ahead: deque[Token] = deque()  # taken from `_coming` but not yet read
        self._stack = Stack()
        self._statement = _Statement()
        self._bodies: list[_Body] = []
        self._before = "_END"  # the kind of the last token that was read
        self._behind = 0  # where it ends
        self._broken_before = False
        self._said: list[Diagnostic] = []

    def read(self) -> tuple[LarkTree[Token], tuple[Diagnostic, ...]]:
        """Return the tree, in which `broken` stands for each statement that cannot be read, and what was wrong."""
        try:
            while True:
                token = self._next()
                if token is not None:
                    self._take(token)
                elif self._statement.tokens:
                    self._close_statement()
                else:
                    break
        except _TooManyError:
            self._stop()
        self._close_bodies()
        hidden = tuple(hidden_letters(self._source, most=MOST_FAULTS)) if HIDDEN.search(self._text) else ()
        return self._stack.finish(), (*hidden, *self._said)

    # --- tokens ---

    def _next(self) -> Token | None:
        return self._ahead.popleft() if self._ahead else next(self._coming, None)

    def _peek(self) -> Token | None:
        """The next token that is not an end of line."""
        place = 0
        while True:
            if place == len(self._ahead):
                token = next(self._coming, None)
                if token is None:
                    return None
                self._ahead.append(token)
            if self._ahead[place].type != "_END":
                return self._ahead[place]
            place += 1

    def _end(self, position: int) -> Token:
        """An end of line of our own, of no width."""
        written = "\n" if position < len(self._text) else ""
        return Token("_END", written, start_pos=position, end_pos=position)

    def _place(self) -> Place:
        body = self._bodies[-1].head.tokens[0] if self._bodies else None
        return Place(self._source, self._stack, self._statement.tokens, body)

    # --- reading on ---

    def _take(self, token: Token) -> None:
        if token.type == "_END":
            self._take_end(token)
            return
        if layout.begins_line(self._text, _start(token)) and self._heed_layout(token):
            return
        if token.type == "RBRACE" and not self._bodies:
            self._stray(token)
            return
        if token.type == "JUNK" and HIDDEN.match(token):
            self._statement.said = _ELSEWHERE
            return
        finding = misread(token, self._place())
        if finding is None:
            fitting = self._fitting(token)
            if fitting is not None:
                self._shift(fitting, token)
                return
            finding = self._begun_behind(token) or unexpected(token, self._place())
        self._heed(finding, token)

    def _fitting(self, token: Token) -> Token | None:
        """Return the token as it fits: a word of the language or a unit is a name where it does not fit itself."""
        if self._stack.fits(token.type):
            return token
        if token.type != "NAME" and is_word(token) and self._stack.fits("NAME"):
            return as_kind(token, "NAME")
        return None

    def _shift(self, token: Token, written: Token | None = None) -> None:
        """Feed a token that fits; `written` is the same token as the lexer had it."""
        statement = self._statement
        if token.type in _OPERATORS:
            statement.operators += 1
            if statement.operators > MOST_OPERATORS:
                span = self._place().span(token)
                said = TOO_LARGE.at(span, what="the statement", count="more operators", most=MOST_OPERATORS)
                self._heed(Finding(said.help("give names to parts of it with `let`"), None), token)
                return
        self._stack.feed(token)
        self._before = token.type
        if token.type == "_END":
            self._statement = _Statement()
            return
        self._behind = _stop(token)
        self._broken_before = False
        if token.type == "RBRACE":
            self._statement = self._bodies.pop().head
        self._statement.tokens.append(token if written is None else written)
        if token.type == "LBRACE":
            self._bodies.append(_Body(token, statement))
            self._statement = _Statement()

    def _take_end(self, token: Token) -> None:
        if self._before in _JOINING:
            return
        if self._stack.fits("_END"):
            self._shift(token)
            return
        finding = unexpected(token, self._place())
        following = self._peek()
        if following is not None and self._stack.fits("LBRACE"):
            end = self._source.span(_start(token), _start(token))
            finding = Finding(finding.diagnostic.with_fix("write `{` here", Edit(end, " {")), ())
            if following.type == "LBRACE":
                self._heed(finding._replace(diagnostic=replace(finding.diagnostic, fix=None)), token)
                return
            first = self._statement.tokens[0]
            if layout.column(self._text, _start(following)) > layout.column(self._text, _start(first)):
                self._heed(finding, token)
                self._shift(Token("LBRACE", "{", start_pos=_start(token), end_pos=_start(token)))
                return
        self._heed(finding._replace(instead=None), token)

    # --- faults ---

    def _heed(self, finding: Finding, token: Token) -> None:
        """Say what was found, and read on with what stands instead of `token` or behind the statement."""
        if finding.instead is None:
            self._skip(finding.diagnostic, token)
            return
        self._say(finding.diagnostic, spoils=bool(finding.instead))
        for instead in finding.instead:
            fitting = self._fitting(instead)
            if fitting is None:
                self._skip(finding.diagnostic, token)
                return
            self._shift(fitting, instead)

    def _say(self, diagnostic: Diagnostic, *, spoils: bool = True) -> None:
        """Keep the first diagnostic of a statement. A second fault shows that the cure of the first is not all."""
        said = self._statement.said
        if said is None:
            if len(self._said) == MOST_FAULTS:
                raise _TooManyError
            self._statement.said = len(self._said)
            self._said.append(diagnostic)
        elif said != _ELSEWHERE and spoils and (fix := self._said[said].fix) is not None:
            self._said[said] = replace(self._said[said], fix=None).help(f"{fix.title}?")

    def _skip(self, diagnostic: Diagnostic, token: Token) -> None:
        """Put a broken statement in the place of the one that is being read, and stop before the next."""
        statement = self._statement
        if statement.said is None and statement.tokens:
            self._stack.unwind()
            beginning = misspelt_beginning(self._place())
            if beginning is not None and beginning.instead:
                self._say(beginning.diagnostic)
                self._ahead.extendleft(reversed((*beginning.instead, *statement.tokens[1:], token)))
                self._statement = _Statement(said=statement.said)
                self._before = "_END"
                return
        self._say(diagnostic)
        self._stack.unwind()
        start = _start(statement.tokens[0] if statement.tokens else token)
        end = self._skipped_to(token, astray=not statement.tokens or token.type == "_END")
        self._put_broken(start, end)

    def _put_broken(self, start: int, end: int) -> None:
        self._stack.feed(Token(BROKEN, "", start_pos=start, end_pos=end))
        self._before = BROKEN
        self._behind = end
        self._broken_before = not self._bodies
        self._statement = _Statement()

    def _skipped_to(self, token: Token, *, astray: bool) -> int:
        """Pass over the rest of a statement, with the bodies that it opens; return where it ends.

        `astray`: the statement broke off with its line, or begins with a word of no statement; then the lines that
        stand deeper belong to it too.
        """
        first = self._statement.tokens[0] if self._statement.tokens else token
        end = _stop(self._statement.tokens[-1]) if self._statement.tokens else _start(token)
        depth = 0
        before = ""
        coming: Token | None = token
        while coming is not None:
            if coming.type == "RBRACE" and not depth and self._bodies:
                break
            if coming.type == "_END" and not depth and before not in _JOINING:
                following = self._peek()
                if following is None or not (astray and self._belongs(following, first)):
                    break
            if depth and before == "_END" and self._begins_declaration(coming):
                self._ahead.appendleft(coming)
                coming = self._end(end)
                break
            depth += {"LBRACE": 1, "RBRACE": -1}.get(coming.type, 0)
            depth = max(depth, 0)
            end = end if coming.type == "_END" else _stop(coming)
            before = coming.type
            coming = self._next()
        if coming is not None:
            self._ahead.appendleft(coming)
        return end

    def _belongs(self, following: Token, first: Token) -> bool:
        """Whether the line of `following` looks as if it belonged to the broken statement that begins with `first`."""
        if self._begins_declaration(following):
            return False
        if following.type == "RBRACE":
            return not self._bodies
        here, there = layout.column(self._text, _start(first)), layout.column(self._text, _start(following))
        return there > here or (there == here > 0 and not self._bodies)

    def _begins_declaration(self, token: Token) -> bool:
        start = _start(token)
        return layout.begins_line(self._text, start) and layout.begins_declaration(self._text, start)

    def _begun_behind(self, token: Token) -> Finding | None:
        """End the statement if another one begins behind it in its line, and return what is to be said about that."""
        if not self._statement.tokens or not self._stack.fits("_END"):
            return None
        if self._before != "RBRACE" and not layout.begins_declaration(self._text, _start(token)):
            return None
        said = replace(unexpected(token, self._place()).diagnostic, fix=None, helps=())
        self._shift(self._end(_start(token)))
        fitting = self._fitting(token)
        return Finding(said.help("a new statement begins on a new line"), None if fitting is None else (fitting,))

    # --- braces ---

    def _stray(self, token: Token) -> None:
        """Pass over a brace that closes nothing; behind a broken statement it is no news."""
        span = self._place().span(token)
        if not self._broken_before:
            self._say(STRAY_BRACE.at(span).with_fix("take it out", Edit(span, "")))
        if not self._statement.tokens:
            self._statement = _Statement()

    def _heed_layout(self, token: Token) -> bool:
        """Before the first token of a line: end what was left open if something outside of it plainly begins here.

        Return whether `token` must be taken anew.
        """
        begins = layout.begins_declaration(self._text, _start(token))
        if begins and self._statement.tokens and not self._stack.fits(token.type):
            self._ahead.appendleft(token)
            end = self._end(self._behind)
            self._heed(Finding(unexpected(end, self._place()).diagnostic, None), end)
            return True
        if not self._bodies or self._statement.tokens or self._before == BROKEN:
            return False
        closed = len(self._bodies) if begins else self._closed_by(token)
        if closed:
            self._say_unclosed(self._bodies[-closed:], token)
            self._shut(closed)
            self._shift(self._end(_start(token)))
        return False

    def _closed_by(self, token: Token) -> int:
        """Return how many bodies must have been meant to be closed for `token` to begin a statement; 0 when none."""
        if not is_word(token) or self._stack.fits("NAME") or self._stack.fits(token.type):
            return 0
        for count in range(1, len(self._bodies) + 1):
            head = self._bodies[-count].head.tokens[0]
            if layout.column(self._text, _start(token)) > layout.column(self._text, _start(head)):
                return 0
            if self._stack.fits(*["RBRACE"] * count, "_END", token.type):
                return count
        return 0

    def _say_unclosed(self, bodies: list[_Body], token: Token | None) -> None:
        """Say once that bodies are not closed: before `token`, or at the end of the file."""
        outer, *others = bodies
        place = self._place()
        head = " ".join(outer.head.tokens[:2]) if len(outer.head.tokens) > 2 else str(outer.head.tokens[0])
        said = UNCLOSED_BODY.at(place.span(outer.brace), "opened here", head=head)
        for other in others:
            said = said.see(place.span(other.brace), "nor is this one")
        braces = "".join(
            f"{layout.indentation(self._text, _start(body.head.tokens[0]))}}}\n" for body in reversed(bodies)
        )
        if token is None:
            behind = self._source.span(len(self._text), len(self._text))
            braces = braces if self._text.endswith("\n") else f"\n{braces}"
            said = said.see(behind, "the file ends here")
        else:
            start = _start(token) - layout.column(self._text, _start(token))
            behind = self._source.span(start, start)
            said = said.see(place.span(token), "this begins outside of it")
        said = said.with_fix("put `}` where the body ends", Edit(behind, braces))
        if len(self._said) == MOST_FAULTS:
            raise _TooManyError
        self._said.append(said)

    def _shut(self, count: int) -> None:
        for _ in range(count):
            self._shift(Token("RBRACE", "", start_pos=self._behind, end_pos=self._behind))

    # --- the end ---

    def _close_statement(self) -> None:
        """At the end of the file: end the last statement, or say what it lacks."""
        end = self._end(len(self._text))
        if self._stack.fits("_END"):
            self._shift(end)
        else:
            self._heed(Finding(unexpected(end, self._place()).diagnostic, None), end)

    def _close_bodies(self) -> None:
        if self._bodies:
            if len(self._said) < MOST_FAULTS:
                self._say_unclosed(self._bodies, None)
            self._shut(len(self._bodies))

    def _stop(self) -> None:
        """Leave the rest of the file unread."""
        self._said.append(TOO_MANY.at(self._source.span(self._behind, self._behind), most=MOST_FAULTS))
        self._stack.unwind()
        start = _start(self._statement.tokens[0]) if self._statement.tokens else self._behind
        self._put_broken(start, len(self._text))


def _start(token: Token) -> int:
    return token.start_pos or 0


def _stop(token: Token) -> int:
    return token.end_pos or 0


def _tokens(text: str) -> Iterator[Token]:
    """The tokens of `text`, from one lexer; a text that is not closed ends where it most likely was meant to."""
    reading = parser().parse_interactive(text)
    lexer = reading.lexer_thread
    for token in lexer.lex(reading.parser_state):
        if token.type == "UNCLOSED" and lexer.state is not None:
            start = _start(token)
            end = layout.end_of_unclosed(text, start)
            lexer.state.line_ctr.char_pos = end
            yield Token("UNCLOSED", text[start:end], start_pos=start, end_pos=end)
        else:
            yield token
