"""Owns the state of Lark's parser: what fits next, and going back to the start of a statement.

Knows nothing of texts or diagnostics.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from lark import Token
from lark.parsers.lalr_analysis import Shift

from specc.syntax.tables import parser

if TYPE_CHECKING:
    from lark import Tree as LarkTree

BROKEN = "_BROKEN"
END_OF_FILE = "$END"


class Stack:
    """What has been read of a text, as an LALR parser holds it."""

    def __init__(self) -> None:
        self._parsing = parser().parse_interactive()
        self._state = self._parsing.parser_state

    def fits(self, *kinds: str) -> bool:
        """Whether tokens of these kinds could follow, in this order. Nothing is changed."""
        states = self._state.parse_conf.states
        stack = list(self._state.state_stack)
        for kind in kinds:
            while True:
                action = states[stack[-1]].get(kind)
                if action is None:
                    return False
                if action[0] is Shift:
                    stack.append(action[1])
                    break
                rule = action[1]
                if rule.expansion:
                    del stack[-len(rule.expansion) :]
                stack.append(states[stack[-1]][rule.origin.name][1])
        return True

    def wanted(self) -> frozenset[str]:
        """The kinds of token that could follow, but for the end of the file and the broken statement."""
        return frozenset(
            kind
            for kind in self._state.parse_conf.states[self._state.position]
            if kind.isupper() and kind not in (BROKEN, END_OF_FILE) and self.fits(kind)
        )

    def feed(self, token: Token) -> None:
        """Take in a token that fits."""
        self._parsing.feed_token(token)

    def unwind(self) -> None:
        """Forget the statement that has been begun, so that another may stand in its place.

        A statement that has had its body is complete: an end of line belongs behind it before.
        """
        states = self._state.parse_conf.states
        while BROKEN not in states[self._state.position]:
            self._state.state_stack.pop()
            self._state.value_stack.pop()

    def finish(self) -> LarkTree[Token]:
        """Return the tree of a text that has come to its end."""
        parsed: LarkTree[Token] = self._parsing.feed_token(Token(END_OF_FILE, ""))
        return parsed
