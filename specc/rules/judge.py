"""Owns passing judgement: every rule is asked, and what the designer accepts is set apart with the reason.

Knows nothing of what the rules look at.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from specc.diagnostics import Diagnostic, Severity, declare

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from specc.model.garment import Accept
    from specc.rules.subject import Subject

NOTHING_TO_ACCEPT = declare(
    "SPC517", "nothing-to-accept", Severity.WARNING, "there is no warning {code}{on} to accept"
)
ERROR_ACCEPTED = declare(
    "SPC518", "error-accepted", Severity.ERROR, "{code} is an error and cannot be accepted"
)


@dataclass(frozen=True, slots=True)
class Accepted:
    """A warning that the designer accepts, and where and why."""

    diagnostic: Diagnostic
    accept: Accept


@dataclass(frozen=True, slots=True)
class Judgement:
    """What the rules say: what stands, and what was accepted."""

    standing: tuple[Diagnostic, ...]
    accepted: tuple[Accepted, ...]


def judge(subject: Subject, rules: Iterable[Callable[[Subject], Iterable[Diagnostic]]]) -> Judgement:
    """What every rule says.

    An `accept` answers warnings and notes of its code, and only those about its part if it names one.
    """
    standing: list[Diagnostic] = []
    accepted: list[Accepted] = []
    accepts = subject.garment.accepts
    for diagnostic in (said for rule in rules for said in rule(subject)):
        answer = next((accept for accept in accepts if _answers(accept, diagnostic)), None)
        if answer is None or diagnostic.severity is Severity.ERROR:
            standing.append(diagnostic)
        else:
            accepted.append(Accepted(diagnostic, answer))
    standing += _idle(accepts, standing, accepted)
    return Judgement(tuple(sorted(standing, key=Diagnostic.sort_key)), tuple(accepted))


def _answers(accept: Accept, diagnostic: Diagnostic) -> bool:
    if accept.code != diagnostic.code.id:
        return False
    # A fact is the part itself, or words that name it: "the girth at `bust-line`".
    on = accept.on
    return on is None or any(fact == on or f"`{on}`" in str(fact) for _, fact in diagnostic.facts)


def _idle(
    accepts: tuple[Accept, ...], standing: list[Diagnostic], accepted: list[Accepted]
) -> Iterator[Diagnostic]:
    """A word on every `accept` that answers nothing."""
    used = {id(one.accept) for one in accepted}
    for accept in accepts:
        if id(accept) in used:
            continue
        if any(_answers(accept, diagnostic) for diagnostic in standing):
            yield ERROR_ACCEPTED.at(accept.origin, code=accept.code).help("change the garment instead")
        else:
            on = f" on `{accept.on}`" if accept.on else ""
            told = NOTHING_TO_ACCEPT.at(accept.origin, code=accept.code, on=on)
            yield told.help("take the line out, or correct the code or the part")
