"""Owns the choices of blocks and methods: the words offered, and the conditions that ask which was set.

Knows nothing of what depends on them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.resolve.codes import name_taken, unknown_name

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.source import Span
    from specc.syntax import tree


def report_same_options(choice: tree.Choice, say: Collector) -> None:
    """Report a word that a choice offers twice."""
    first: dict[str, Span] = {}
    for option in choice.options:
        if option.text in first:
            say.add(name_taken(option.span, "an option", option.text, first=first[option.text]))
        first.setdefault(option.text, option.span)


def holds(when: tree.When, choices: Mapping[str, tuple[tree.Choice, str]], say: Collector) -> bool | None:
    """Whether a choice has been set to the word; None when there is no such choice or word: reported."""
    if when.choice.text not in choices:
        say.add(unknown_name(when.choice.span, "choice", when.choice.text, known=choices))
        return None
    choice, option = choices[when.choice.text]
    options = [word.text for word in choice.options]
    if when.option.text not in options:
        where = f" of choice `{choice.name.text}`"
        say.add(unknown_name(when.option.span, "option", when.option.text, known=options, where=where))
        return None
    return option == when.option.text
