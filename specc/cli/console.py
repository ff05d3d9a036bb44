"""Owns what is printed, and where: the only module that prints.

Knows nothing of commands.
"""

from __future__ import annotations

import os
import sys
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, TextIO

from specc import __version__

if TYPE_CHECKING:
    from collections.abc import Sequence

    from specc.diagnostics import Diagnostic

OK, WRONG, USAGE, OUR_FAULT = 0, 1, 2, 70


class UsageError(Exception):
    """Something cannot be carried out as it was asked for."""


@dataclass(slots=True)
class Outcome:
    """What one run has to say in the end, and how it ended."""

    said: list[Diagnostic] = field(default_factory=list)
    problems: list[str] = field(default_factory=list)
    status: int = OK

    def worsen(self, status: int) -> None:
        """The worst status is that of the run."""
        self.status = max(self.status, status)

    def add(self, diagnostics: Sequence[Diagnostic]) -> None:
        """Keep the diagnostics of a file."""
        self.said += diagnostics
        if any(diagnostic.severity.name == "ERROR" for diagnostic in diagnostics):
            self.worsen(WRONG)


def tell(said: Sequence[Diagnostic], form: str, stream: TextIO | None) -> None:
    """Print the diagnostics in the form asked for."""
    if form == "json":
        from specc.diagnostics.render_json import render_json  # noqa: PLC0415

        text = render_json(said)
    elif form == "sarif":
        from specc.catalog import CODES  # noqa: PLC0415
        from specc.diagnostics.render_sarif import render_sarif  # noqa: PLC0415

        text = render_sarif(said, CODES, version=__version__)
    elif said:
        from specc.diagnostics.render_text import render_text, wants_colour  # noqa: PLC0415

        text = render_text(said, colour=stream is not None and wants_colour(stream, os.environ))
    else:
        return
    if stream is not None and form != "text" and hasattr(stream, "reconfigure"):
        stream.reconfigure(encoding="utf-8")  # RFC 8259, 8.1
    say(text, stream)


def say(text: str, stream: TextIO | None) -> None:
    """Print the text, at once, so that it is known here whether it could be."""
    if stream is None:  # it was closed before we began
        return
    try:
        print(text, end="", file=stream, flush=True)
    except BrokenPipeError:
        raise
    except OSError as fault:
        raise UsageError(f"cannot write what there is to say: {fault.strerror or fault}") from fault


def complain(message: str) -> None:
    """Say beside the output why something could not be carried out."""
    print(f"specc: {visible(message)}", file=sys.stderr)


def passing(line: str) -> None:
    """Progress, on a terminal alone, in place of what was passing before; an empty line ends it."""
    if is_terminal(sys.stderr):
        print(f"\r\033[K{line}", end="", file=sys.stderr, flush=True)


def progress(line: str) -> None:
    """Progress that stays, in place of what was passing."""
    passing("")
    print(line, file=sys.stderr, flush=True)


def visible(text: str) -> str:
    """The text with all that could steer a terminal shown as a number."""
    return "".join(letter if letter.isprintable() else ascii(letter)[1:-1] for letter in text)


def is_terminal(stream: TextIO | None) -> bool:
    """Whether somebody looks at the stream, who may be shown colour and what passes."""
    return stream is not None and stream.isatty() and os.environ.get("TERM") != "dumb"


def leave_reader() -> None:
    """Let what is still on its way to a reader who has gone go nowhere, so that Python ends in silence."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    for stream in (sys.stdout, sys.stderr):
        if stream is not None:
            os.dup2(nowhere, stream.fileno())
    os.close(nowhere)
