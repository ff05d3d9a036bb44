"""Owns the command that says more about a code."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

from specc.cli.console import OK, UsageError, say

if TYPE_CHECKING:
    import argparse

HELP = "say more about a code"


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("code", metavar="CODE", help="such as SPC501")


def run(options: argparse.Namespace) -> int:
    """Print the page of the code."""
    from specc.diagnostics import explained, explanation  # noqa: PLC0415

    code = options.code.strip().upper()
    page = explanation(code)
    if page is None:
        from specc.names import did_you_mean  # noqa: PLC0415

        near = did_you_mean(code, explained())
        raise UsageError(f"there is no code {options.code}" + (f"; {near}" if near else ""))
    say(page, sys.stdout)
    return OK
