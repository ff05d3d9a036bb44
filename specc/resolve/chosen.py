"""Owns which statements of a block stand: those whose choice has been set to the word they ask for.

Knows nothing of what the statements say.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from specc.resolve.choices import holds
from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from specc.diagnostics import Collector

Item = TypeVar("Item")

# `cut` asks its own question: there must be one for every option.
_CHOSEN = (
    tree.Let,
    tree.Find,
    tree.Piece,
    tree.PointStatement,
    tree.Edge,
    tree.Straight,
    tree.Curve,
    tree.ArcRun,
    tree.Along,
    tree.DartRun,
    tree.TwoPointed,
    tree.Line,
    tree.LevelLine,
    tree.Notch,
    tree.NotchAtPoint,
)


class Chosen:
    """The statements that stand by the choices; the names of those left out, each with its condition."""

    def __init__(self, choices: Mapping[str, tuple[tree.Choice, str]], say: Collector) -> None:
        self.left_out: dict[str, str] = {}
        self._choices = choices
        self._say = say

    def of(self, body: Iterable[Item]) -> tuple[Item, ...]:
        """The statements of a body that stand.

        A condition on no choice or no option is reported, and its statement stands.
        """
        standing: list[Item] = []
        for item in body:
            when = item.when if isinstance(item, _CHOSEN) else None
            if when is not None and holds(when, self._choices, self._say) is False:
                self._leave_out(item, when)
            else:
                standing.append(item)
        return tuple(standing)

    def piece(self, node: tree.Piece) -> tree.Piece:
        """The piece with those of its statements that stand, and of those of its edges."""
        body = (
            item._replace(runs=self.of(item.runs)) if isinstance(item, tree.Edge) else item
            for item in self.of(node.body)
        )
        return node._replace(body=tuple(body))

    def _leave_out(self, item: object, when: tree.When) -> None:
        name = getattr(item, "name", None)
        if isinstance(name, tree.Word):
            self.left_out[name.text] = f"when `{when.choice.text}` is `{when.option.text}`"
